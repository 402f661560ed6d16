// Shares the units of a cupboard out among the needs of one lesson, so that the joint chance is the greatest there is.
//
// Needs compete where they accept the same item. The vectors of units that can be given form a polymatroid (units flow from
// items to needs), and the logarithm of the joint chance is a sum of concave functions, one a need; on a polymatroid giving
// the next unit where it helps most is exactly optimal. A need that is full may pass a unit on for another kind of unit, so
// "can it be given" is a search for an augmenting path.
// Source: Federgruen & Groenevelt, The greedy procedure for resource allocation problems, Operations Research 34 (1986),
// from memory; the tests compare with all ways to share.
// Does not know: teams, days.

import { logChanceEnough } from "../../base/index.ts";
import type { ItemKey } from "../file/index.ts";

/** What sharing needs to know of a need. */
export interface ShareNeed {
  readonly wanted: number;
  readonly works: number;
  /** Best first: a need takes these in this order as far as the chance allows. */
  readonly accepts: readonly ItemKey[];
}

export interface Share {
  /** `given[n]`: units of each item for need n. Every unit that any need accepts is given to one. */
  readonly given: readonly ReadonlyMap<ItemKey, number>[];
  readonly totals: readonly number[];
  /** ln of the chance of each need; −Infinity where units are short. */
  readonly logChances: readonly number[];
}

/** A gain below this is no gain: the chance is 1 to the last digit. */
const noGain = 1e-14;

/** @param counts units of each item; an item that is missing counts 0. */
export function shareOut(needs: readonly ShareNeed[], counts: ReadonlyMap<ItemKey, number>): Share {
  const given = needs.map(() => new Map<ItemKey, number>());
  const totals = needs.map(() => 0);
  const free = new Map(counts);
  const give = (n: number, item: ItemKey, count: number) => given[n]!.set(item, (given[n]!.get(item) ?? 0) + count);
  const rivals = rivalsOf(needs);
  // Only needs that compete have to be weighed against each other; the others take what only they can use.
  const alone = needs.map((need) => need.accepts.every((item) => rivals.get(item)!.length === 1));

  needs.forEach((need, n) => {
    if (!alone[n]) return;
    for (const item of need.accepts) {
      const count = free.get(item) ?? 0;
      if (count > 0) give(n, item, count);
      totals[n] = totals[n]! + count;
    }
  });

  const competing = needs.map((_, n) => n).filter((n) => !alone[n]);
  const giveOne = (n: number): boolean => {
    const path = augmentingPath(n, needs, rivals, given, free);
    if (path === null) return false;
    path.forEach(({ need, item }, step) => {
      give(need, item, 1);
      const next = path[step + 1];
      // The item came from the next need in the chain, or from the cupboard.
      if (next) give(next.need, item, -1);
      else free.set(item, free.get(item)! - 1);
    });
    totals[n] = totals[n]! + 1;
    return true;
  };

  // First what is wanted; a need that cannot grow now never can (the rank function only gets tighter).
  for (const n of competing) while (totals[n]! < needs[n]!.wanted && giveOne(n));
  const logChance = (n: number, more = 0) => logChanceEnough(needs[n]!.wanted, totals[n]! + more, needs[n]!.works);
  const gain = (n: number) => (totals[n]! < needs[n]!.wanted ? 0 : logChance(n, 1) - logChance(n));
  const gains = new Map(competing.map((n) => [n, gain(n)]));
  while (gains.size > 0) {
    const [best, most] = [...gains].reduce((a, b) => (b[1] > a[1] ? b : a));
    if (most <= noGain) break;
    if (giveOne(best)) gains.set(best, gain(best));
    else gains.delete(best);
  }
  for (const n of competing)
    for (const item of needs[n]!.accepts) {
      const count = free.get(item) ?? 0;
      if (count === 0) continue;
      give(n, item, count);
      free.set(item, 0);
      totals[n] = totals[n]! + count;
    }
  for (const here of given) for (const [item, count] of here) if (count === 0) here.delete(item);
  return { given, totals, logChances: needs.map((_, n) => logChance(n)) };
}

/** For each item: the needs that accept it. */
function rivalsOf(needs: readonly ShareNeed[]): Map<ItemKey, number[]> {
  const rivals = new Map<ItemKey, number[]>();
  needs.forEach((need, n) => {
    for (const item of need.accepts) rivals.set(item, [...(rivals.get(item) ?? []), n]);
  });
  return rivals;
}

/**
 * The shortest chain by which need `start` gets one unit more: it takes an item from another need, which takes one from the
 * next, until one comes from the cupboard.
 */
function augmentingPath(
  start: number,
  needs: readonly ShareNeed[],
  rivals: ReadonlyMap<ItemKey, readonly number[]>,
  given: readonly ReadonlyMap<ItemKey, number>[],
  free: ReadonlyMap<ItemKey, number>,
): { need: number; item: ItemKey }[] | null {
  const reachedBy = new Map<number, { need: number; item: ItemKey } | null>([[start, null]]);
  for (const n of reachedBy.keys()) {
    for (const item of needs[n]!.accepts) {
      if ((free.get(item) ?? 0) > 0) {
        const path = [{ need: n, item }];
        for (let from = reachedBy.get(n)!; from !== null; from = reachedBy.get(from.need)!) path.unshift(from);
        return path;
      }
      for (const m of rivals.get(item)!)
        if (!reachedBy.has(m) && (given[m]!.get(item) ?? 0) > 0) reachedBy.set(m, { need: n, item });
    }
  }
  return null;
}
