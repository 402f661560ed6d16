// Each lesson on its day, ready to be weighed: how many of what, how likely one unit still works then, what may serve.
//
// Losses. A unit is taken to be used in every earlier lesson that uses its item, because spares are swapped in and out and
// nobody knows which unit lay in the box; so its chance to work is (1 − rate)^(uses before + 1), this lesson included. That is
// an upper estimate of the losses, and it does not depend on how many there are. A substitute counts as the item that it
// stands in for.
// Does not know: how units are shared out, what can be bought.
import type { Day } from "../../base/index.ts";
import { parseItemKey } from "../../bench/parts/index.ts";
import type { ItemKey } from "../file/index.ts";
import { type Cupboard, countOn } from "./cupboard.ts";
import type { Need, Sitting } from "./demand.ts";
import { type LossRates, rateOf } from "./lossRates.ts";

export interface WeighedNeed {
  readonly need: Need;
  /** Units that all teams together need: each × teams, rounded up. */
  readonly wanted: number;
  readonly works: number;
  /** Items that may serve, best first: the item itself, a stronger port, then the proven substitutes. */
  readonly accepts: readonly ItemKey[];
}

export interface WeighedSitting {
  readonly sitting: Sitting;
  readonly needs: readonly WeighedNeed[];
}

/** Sittings in the order in which they are held. */
export function inOrder(sittings: readonly Sitting[]): Sitting[] {
  return [...sittings].sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : (a.start ?? 0) - (b.start ?? 0)));
}

/**
 * @param day the day of the cupboard: lessons before it wear nothing out any more, because what they cost is counted.
 * @param items every item that there is or could be bought, so that stronger ports are found.
 * @returns the sittings in the order in which they are held.
 */
export function weighSittings(
  sittings: readonly Sitting[],
  day: Day,
  rates: LossRates,
  items: Iterable<ItemKey>,
): WeighedSitting[] {
  const known = [...new Set(items)].sort();
  const uses = new Map<ItemKey, number>();
  return inOrder(sittings).map((sitting) => {
    const needs = sitting.needs.map((need): WeighedNeed => {
      const before = uses.get(need.item) ?? 0;
      return {
        need,
        // The small term keeps 10 × 0.1 from becoming 2.
        wanted: Math.ceil(need.each * sitting.teams - 1e-9),
        works: (1 - rateOf(rates, need.item).mean) ** (before + 1),
        accepts: [...new Set([need.item, ...strongerPorts(need.item, known), ...need.substitutes])],
      };
    });
    if (sitting.date >= day)
      for (const item of new Set(sitting.needs.map((n) => n.item))) uses.set(item, (uses.get(item) ?? 0) + 1);
    return { sitting, needs };
  });
}

/** A port that can give more is the same port to a circuit that takes less (USB 3 ports hold to the USB 2 voltage limits). */
function strongerPorts(item: ItemKey, known: readonly ItemKey[]): ItemKey[] {
  const milliamps = (key: ItemKey) => {
    const parsed = parseItemKey(key);
    return parsed?.kind === "usb-port" ? Number(parsed.values.milliamps) : null;
  };
  const asked = milliamps(item);
  if (asked === null) return [];
  return known.filter((key) => key !== item && (milliamps(key) ?? 0) >= asked).sort((a, b) => milliamps(a)! - milliamps(b)!);
}

/** How many units of each accepted item there are for a sitting; boards that lack a pin of the lesson are left out. */
export function unitsFor({ sitting, needs }: WeighedSitting, store: Cupboard): Map<ItemKey, number> {
  const counts = new Map<ItemKey, number>();
  for (const { accepts } of needs) for (const item of accepts) counts.set(item, countOn(store, item, sitting.date));
  for (const { need } of needs) {
    if (need.item !== "board" || need.pins === undefined) continue;
    const useless = store.deadPins.filter((dead) => dead.some((pin) => need.pins!.includes(pin))).length;
    counts.set("board", Math.max(0, (counts.get("board") ?? 0) - useless));
  }
  return counts;
}
