// A purchase: what to order from whom, what it costs, how sure it is that nothing is cheaper, and why each line is there.
//
// Does not know: how it was found.
import type { Money } from "../../base/index.ts";

export interface PurchaseLine {
  readonly supplier: string;
  readonly offer: string;
  readonly packets: number;
  readonly cost: Money;
  /** Lessons (sitting ids) that need it, with the item and how many of them it brings. */
  readonly why: readonly {
    readonly sitting: string;
    readonly item: string;
    readonly count: number;
    readonly reason: "missing" | "spare" | "substitute" | "supply";
  }[];
}

export interface Purchase {
  readonly status: "optimal" | "feasible" | "infeasible";
  readonly cost: Money;
  /** No purchase that does the same can cost less than this. */
  readonly bound: Money;
  /** (cost − bound) / cost; 0 when proven. */
  readonly gap: number;
  readonly lines: readonly PurchaseLine[];
  readonly shipping: readonly { readonly supplier: string; readonly cost: Money }[];
  /** Sittings that can be held with this purchase, and those that cannot, with the reason. */
  readonly held: readonly string[];
  readonly notHeld: readonly {
    readonly sitting: string;
    readonly reason: "budget" | "no offer" | "too late";
    readonly items: readonly string[];
  }[];
  /** Chance that every team works, for each held sitting. */
  readonly chances: readonly { readonly sitting: string; readonly chance: number }[];
  /** What the purchase would cost if every lesson were to be held, or null if no money can do it. */
  readonly costOfAll: Money | null;
}
