// Sharing units out and handing them to teams, against all ways to do it.
import { expect, test } from "vitest";
import { sample } from "../../../test/sample.ts";
import { logChanceEnough, type Random, seededRandom } from "../../base/index.ts";
import { handOut } from "./handOut.ts";
import { type ShareNeed, shareOut } from "./shareOut.ts";

/** All ways to split `count` units among `ways` takers. */
function* splits(count: number, ways: number): Generator<number[]> {
  if (ways <= 1) {
    yield ways === 1 ? [count] : [];
    return;
  }
  for (let mine = 0; mine <= count; mine += 1) for (const rest of splits(count - mine, ways - 1)) yield [mine, ...rest];
}

interface Way {
  readonly totals: readonly number[];
  /** Places lost: 0 for each unit of a need's first item, 1 for the second … */
  readonly places: number;
}

/** All ways to give each item's units to the needs that accept it; with `mayKeep` some may stay in the cupboard. */
function allWays(
  needs: readonly { readonly accepts: readonly string[] }[],
  counts: ReadonlyMap<string, number>,
  mayKeep: boolean,
): Way[] {
  let ways: Way[] = [{ totals: needs.map(() => 0), places: 0 }];
  for (const [item, count] of counts) {
    const takers = needs.map((_, n) => n).filter((n) => needs[n]!.accepts.includes(item));
    const all = [...splits(count, takers.length + (mayKeep ? 1 : 0))];
    ways = ways.flatMap((way) =>
      all.map((split) => ({
        totals: way.totals.map((total, n) => total + (split[takers.indexOf(n)] ?? 0)),
        places: takers.reduce((sum, n, t) => sum + split[t]! * needs[n]!.accepts.indexOf(item), way.places),
      })),
    );
  }
  return ways;
}

function randomCase(random: Random): { needs: ShareNeed[]; counts: Map<string, number> } {
  const items = ["a", "b", "c"].slice(0, random.int(1, 3));
  const needs = Array.from({ length: random.int(1, 3) }, () => ({
    wanted: random.int(1, 3),
    works: 0.6 + 0.39 * random.next(),
    accepts: random.shuffled(items).slice(0, random.int(1, items.length)),
  }));
  return { needs, counts: new Map(items.map((item) => [item, random.int(0, 5)])) };
}

for (let seed = 1; seed <= sample(60, 1500); seed += 1)
  test(`no way to share gives a greater joint chance or covers more, seed ${seed}`, () => {
    const { needs, counts } = randomCase(seededRandom(seed, "share"));
    const share = shareOut(needs, counts);
    const used = new Map<string, number>();
    share.given.forEach((given, n) => {
      for (const [item, count] of given) {
        expect(needs[n]!.accepts).toContain(item);
        used.set(item, (used.get(item) ?? 0) + count);
      }
      expect([...given.values()].reduce((a, b) => a + b, 0)).toBe(share.totals[n]);
    });
    for (const [item, count] of used) expect(count).toBeLessThanOrEqual(counts.get(item)!);

    let mostCovered = 0;
    let bestLog = Number.NEGATIVE_INFINITY;
    const covered = (totals: readonly number[]) => needs.reduce((sum, need, n) => sum + Math.min(need.wanted, totals[n]!), 0);
    for (const { totals } of allWays(needs, counts, false)) {
      mostCovered = Math.max(mostCovered, covered(totals));
      bestLog = Math.max(
        bestLog,
        needs.reduce((sum, need, n) => sum + logChanceEnough(need.wanted, totals[n]!, need.works), 0),
      );
    }
    expect(covered(share.totals)).toBe(mostCovered);
    const ours = share.logChances.reduce((a, b) => a + b, 0);
    if (Number.isFinite(bestLog)) expect(ours).toBeCloseTo(bestLog, 12);
    else expect(ours).toBe(bestLog);
  });

for (let seed = 1; seed <= sample(60, 1500); seed += 1)
  test(`no way to hand out serves more, or as many with better items, seed ${seed}`, () => {
    const { needs: drawn, counts } = randomCase(seededRandom(seed, "hand"));
    const needs = drawn.map(({ wanted, accepts }) => ({ units: wanted, accepts }));
    const handed = handOut(needs, counts);
    const served = handed.reduce((sum, given) => sum + [...given.values()].reduce((a, b) => a + b, 0), 0);
    const places = handed.reduce(
      (sum, given, n) => sum + [...given].reduce((a, [item, count]) => a + count * needs[n]!.accepts.indexOf(item), 0),
      0,
    );
    let most = 0;
    let fewest = 0;
    for (const { totals, places: lost } of allWays(needs, counts, true)) {
      if (totals.some((total, n) => total > needs[n]!.units)) continue;
      const count = totals.reduce((a, b) => a + b, 0);
      if (count > most || (count === most && lost < fewest)) [most, fewest] = [count, lost];
    }
    expect(served).toBe(most);
    expect(places).toBe(fewest);
  });
