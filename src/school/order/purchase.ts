// A purchase: what to order from whom, what it costs, how sure it is that nothing is cheaper, and why each line is there.
//
// Does not know: how it was found.
import type { Day, Money } from "../../base/index.ts";
import type { ItemKey } from "../file/index.ts";

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

/**
 * How an order came out, in one word: nothing is missing; everything will be held; money is short; there is no supplier at
 * all; something is sold by nobody (or not enough of it); something would come too late. The first that applies from
 * "budget short" on.
 */
export type OrderOutcome = "nothing needed" | "all held" | "budget short" | "no suppliers" | "not for sale" | "too late";

export interface OrderLine extends PurchaseLine {
  /** The last day on which ordering it still serves the first lesson that needs it. */
  readonly orderBy: Day;
  /** It is bought only because the sum then is sent free, which costs less; `why` is empty. */
  readonly fillsUp: boolean;
}

/** What `planOrder` answers: a purchase, and what a teacher asks next. */
export interface OrderPlan extends Purchase {
  readonly outcome: OrderOutcome;
  readonly lines: readonly OrderLine[];
  /**
   * Held sittings whose chance stays below the class's wish because of things that nobody sells, or not enough of. What is
   * sold is then bought as if that were all that could fail. `items` are what holds the chance down, worst first.
   */
  readonly below: readonly { readonly sitting: string; readonly chance: number; readonly items: readonly ItemKey[] }[];
  /** No purchase within the budget holds more sittings than this. */
  readonly heldAtMost: number;
  /** When the budget is short: the least sum that holds one lesson more, and which lessons it then holds besides. */
  readonly next: { readonly cost: Money; readonly sittings: readonly string[] } | null;
}
