// Which supply the teams of a lesson use: the first of what the school owns that carries the lesson and goes round.
//
// The laptop's own port comes first, because the board is joined to it anyway; then what lies in the cupboard, most first.
// Where no one supply goes round, several may together, each of which carries the lesson.
// Does not know: how a supply was rehearsed, prices.
import type { SupplyResult } from "../../bench/rehearsal/index.ts";
import type { ItemKey } from "../file/index.ts";

export interface SupplyChoice {
  /** Carries the lesson; with `others` there is one for each team, or it is the usual port. Null if nothing on hand does. */
  readonly supply: ItemKey | null;
  /** Others on hand that carry it, used where the first does not go round. */
  readonly others: readonly ItemKey[];
  /** What the teams would have without a change, and why it does not do. */
  readonly usual: ItemKey;
  readonly why: readonly string[];
  /** How many of all supplies that carry it there are. */
  readonly owned: number;
  /** Supplies that carry the lesson and could be had; those that a supplier sells first, then those there are most of. */
  readonly helps: readonly ItemKey[];
}

/**
 * @param results every supply that was rehearsed. @param owned how many of each there are. @param teams number of teams.
 * @param decided what the teacher settled, tried first; null if nothing. @param sold whether a supplier sells it.
 */
export function chooseSupply(
  results: readonly SupplyResult[],
  owned: (item: ItemKey) => number,
  teams: number,
  usual: ItemKey,
  decided: ItemKey | null,
  sold: (item: ItemKey) => boolean,
): SupplyChoice {
  const fitting = results.filter((r) => r.fits === "fits").map((r) => r.supply);
  const rank = (item: ItemKey) => (item === decided ? 0 : item === usual ? 1 : item.startsWith("usb-port") ? 2 : 3);
  const there = fitting.filter((item) => owned(item) > 0).sort((a, b) => rank(a) - rank(b) || owned(b) - owned(a));
  const total = there.reduce((sum, item) => sum + owned(item), 0);
  const first = there.find((item) => owned(item) >= teams) ?? there[0] ?? null;
  // Where the usual port carries the lesson and only ports are too few, no other supply is called for.
  const supply = total >= teams ? first : fitting.includes(usual) ? usual : null;
  return {
    supply,
    others: there.filter((item) => item !== supply),
    usual,
    why: results.find((r) => r.supply === usual)?.why ?? [],
    owned: total,
    // A laptop's port is not a thing that can be bought for a lesson.
    helps: fitting
      .filter((item) => !item.startsWith("usb-port"))
      .sort((a, b) => Number(sold(b)) - Number(sold(a)) || owned(b) - owned(a)),
  };
}
