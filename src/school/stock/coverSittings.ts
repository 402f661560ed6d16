// Every lesson on its day against the cupboard: what each team gets, what is short, how likely all of it works.
//
// Things come back after a lesson; what goes is only what is lost. So two classes share one cupboard, and every lesson sees
// all of it, older by the losses until then. The joint chance takes the needs as independent and shares competing units out
// beforehand (shareOut.ts): swapping during the lesson can only do better.
// Does not know: prices, whether a substitute passes its rehearsal.
import type { ItemKey } from "../file/index.ts";
import type { Cupboard } from "./cupboard.ts";
import type { Coverage, Sitting, SittingStock } from "./demand.ts";
import { handOut } from "./handOut.ts";
import type { LossRates } from "./lossRates.ts";
import { shareOut } from "./shareOut.ts";
import { unitsFor, type WeighedSitting, weighSittings } from "./weighSittings.ts";

/**
 * @param sittings all lessons that share the cupboard, in any order. @param store of today, with what is still to come.
 * @returns one entry a sitting, in the order given.
 */
export function coverSittings(sittings: readonly Sitting[], store: Cupboard, rates: LossRates): SittingStock[] {
  const weighed = weighSittings(sittings, store.day, rates, [...store.items.keys(), ...store.coming.map((c) => c.item)]);
  const byId = new Map(weighed.map((w) => [w.sitting.id, coverSitting(w, unitsFor(w, store))]));
  return sittings.map((s) => byId.get(s.id)!);
}

/** One sitting against given units of each item. */
export function coverSitting({ sitting, needs }: WeighedSitting, counts: ReadonlyMap<ItemKey, number>): SittingStock {
  const share = shareOut(needs, counts);
  const coverage = needs.map(({ need, wanted, works }, n): Coverage => {
    const total = share.totals[n]!;
    return {
      need,
      wanted,
      have: [...share.given[n]!].map(([item, count]) => ({ item, count })),
      short: Math.max(0, wanted - total),
      works,
      chance: Math.exp(share.logChances[n]!),
    };
  });
  const handed = handOut(
    needs.map(({ wanted, accepts }, n) => ({ units: Math.min(wanted, share.totals[n]!), accepts })),
    counts,
  );
  const units = Array.from({ length: sitting.teams }, (_, team) =>
    needs.map(({ need }, n) => {
      const row = [...handed[n]!].flatMap(([item, count]) => new Array<ItemKey>(count).fill(item));
      return teamUnits(need.each, team).map((u) => row[u] ?? null);
    }),
  );
  return {
    sitting: sitting.id,
    coverage,
    chance: Math.exp(share.logChances.reduce((sum, log) => sum + log, 0)),
    teams: units.map((needsOfTeam) => needsOfTeam.map(mostOf)),
    units,
  };
}

/** Which units of the row a team gets: the next `each`, or a shared one where several teams share. */
function teamUnits(each: number, team: number): number[] {
  if (each < 1) return [Math.floor(team * each + 1e-9)];
  return Array.from({ length: Math.round(each) }, (_, u) => team * Math.round(each) + u);
}

/** The item that a team gets most of; null only where it gets none. */
function mostOf(list: readonly (ItemKey | null)[]): ItemKey | null {
  const counts = new Map<ItemKey, number>();
  for (const item of list) if (item !== null) counts.set(item, (counts.get(item) ?? 0) + 1);
  return [...counts].reduce<readonly [ItemKey | null, number]>((a, b) => (b[1] > a[1] ? b : a), [null, 0])[0];
}
