// How many spares for a stated chance: one need alone, and several needs that must all be met.
//
// The event is always the same: of n + s units, each of which works on its own with chance `works`, at least n work. So the
// spares can fail too. "At most s of the n in use fail" would be another event and gives fewer spares: for 30 units with one
// failure in ten it gives 6 at 95 %, ours 7 (R 4.2.2, recorded in reference/spares).
// Does not know: lessons, prices beyond a number a unit, the cupboard.
import { logChanceEnough } from "../../base/index.ts";

/** More spares than this mean that the part is no use, not that more are needed. */
const mostSpares = 10_000;

/**
 * The smallest s with P(Bin(wanted + s, works) ≥ wanted) ≥ chance.
 *
 * @param works chance that one unit works, above 0. @param chance 0 to 1. @returns null where no number reaches it.
 */
export function sparesFor(wanted: number, works: number, chance: number): number | null {
  if (chance <= 0) return 0;
  for (let s = 0; s <= mostSpares; s += 1) if (logChanceEnough(wanted, wanted + s, works) >= Math.log(chance)) return s;
  return null;
}

/** One of several needs that must all be met. */
export interface SpareNeed {
  readonly wanted: number;
  readonly works: number;
  /** Cost of one unit more, above 0. */
  readonly price: number;
}

/**
 * Marginal analysis: adds one spare at a time where it brings the most logarithm of chance for its price, until the joint
 * chance is reached.
 *
 * The chance of each need is log-concave in its spares (it is the distribution function of a negative binomial), so every
 * step lies on the frontier: nothing of the same or a lower cost has a greater joint chance. The last step may overshoot
 * the wished chance, so the cost is an upper bound of the optimum, and the cost before that step a lower one.
 * Source: Fox, Discrete optimization via marginal analysis, Management Science 13 (1966), from memory.
 */
export function marginalSpares(
  needs: readonly SpareNeed[],
  chance: number,
): { spares: number[]; chance: number; cost: number; costBefore: number } | null {
  const spares = needs.map(() => 0);
  const at = (n: number, more: number) => {
    const need = needs[n]!;
    return logChanceEnough(need.wanted, need.wanted + spares[n]! + more, need.works);
  };
  let cost = 0;
  let costBefore = 0;
  for (let step = 0; step <= mostSpares; step += 1) {
    const joint = needs.reduce((total, _, n) => total + at(n, 0), 0);
    if (joint >= Math.log(chance)) return { spares, chance: Math.exp(joint), cost, costBefore };
    let best = -1;
    let bestGain = 0;
    needs.forEach((need, n) => {
      const gain = (at(n, 1) - at(n, 0)) / need.price;
      if (gain > bestGain) [best, bestGain] = [n, gain];
    });
    if (best < 0) return null;
    spares[best] = spares[best]! + 1;
    costBefore = cost;
    cost += needs[best]!.price;
  }
  return null;
}
