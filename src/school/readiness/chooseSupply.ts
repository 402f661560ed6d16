// Which supply the teams of a lesson use: the first of what the school owns that carries the lesson and is there in number.
//
// The laptop's own port comes first, because the board is joined to it anyway; then what lies in the cupboard, most first.
// A supply that some teams could have and others not is not chosen: all teams work alike, and the rest is told as a remedy.
// Does not know: how a supply was rehearsed, prices.
import type { SupplyResult } from "../../bench/rehearsal/index.ts";
import type { ItemKey } from "../file/index.ts";

export interface SupplyChoice {
  /** Carries the lesson and there is one for each team; null if there is none. */
  readonly supply: ItemKey | null;
  /** Others that carry it and are there in number. */
  readonly others: readonly ItemKey[];
  /** What the teams would have without a change, and why it does not do. */
  readonly usual: ItemKey;
  readonly why: readonly string[];
  /** Supplies that carry the lesson, with how many are missing; the one with the fewest missing first. */
  readonly helps: readonly { readonly supply: ItemKey; readonly missing: number }[];
}

/**
 * @param results every supply that was rehearsed. @param owned how many of each there are. @param teams number of teams.
 * @param decided what the teacher settled, tried first; null if nothing.
 */
export function chooseSupply(
  results: readonly SupplyResult[],
  owned: (item: ItemKey) => number,
  teams: number,
  usual: ItemKey,
  decided: ItemKey | null,
): SupplyChoice {
  const fitting = results.filter((r) => r.fits === "fits").map((r) => r.supply);
  const rank = (item: ItemKey) => (item === decided ? 0 : item === usual ? 1 : item.startsWith("usb-port") ? 2 : 3);
  const there = fitting.filter((item) => owned(item) >= teams).sort((a, b) => rank(a) - rank(b) || owned(b) - owned(a));
  const [supply = null, ...others] = there;
  return {
    supply,
    others,
    usual,
    why: results.find((r) => r.supply === usual)?.why ?? [],
    helps: fitting
      // A laptop's port is not a thing that can be bought for a lesson.
      .filter((item) => !item.startsWith("usb-port"))
      .map((item) => ({ supply: item, missing: Math.max(0, teams - owned(item)) }))
      .sort((a, b) => a.missing - b.missing),
  };
}
