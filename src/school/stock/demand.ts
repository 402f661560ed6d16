// What a lesson on a day takes from the cupboard, and how likely it is that all of it works.
//
// Does not know: prices, suppliers, how a lesson is rehearsed (proven substitutes come to it as data).
import type { Day } from "../../base/index.ts";
import type { ItemKey } from "../file/index.ts";

/** One thing that every team needs for a lesson. */
export interface Need {
  /** Part names in the circuit that it serves ("R2"), or what it is for: "board", "usb-cable", "breadboard", "wire", "computer", "supply". */
  readonly for: readonly string[];
  readonly item: ItemKey;
  /** How many one team needs; 0.5 where two teams share one. */
  readonly each: number;
  /** Items that a rehearsal proved in its place, best first. */
  readonly substitutes: readonly ItemKey[];
  /** Pins of the board that the lesson uses ("D9"): a board on which one of them is dead does not serve. */
  readonly pins?: readonly string[];
}

/** A lesson of a class on its day. */
export interface Sitting {
  /** "7b/barrier/2027-03-04": unique in a class file. */
  readonly id: string;
  readonly class: string;
  readonly lesson: string;
  readonly date: Day;
  /** Minutes after midnight; orders two sittings of one day. */
  readonly start?: number;
  readonly teams: number;
  readonly needs: readonly Need[];
}

/** What stands against one need on one day. */
export interface Coverage {
  readonly need: Need;
  /** Units that all teams together need. */
  readonly wanted: number;
  /** Units in the cupboard that can serve it, by item, after the other needs of the lesson took theirs. */
  readonly have: readonly { readonly item: ItemKey; readonly count: number }[];
  /** wanted − have, at least 0. */
  readonly short: number;
  /** Chance that a unit works at this lesson, losses until then counted. */
  readonly works: number;
  /** Chance that enough units work: P(Bin(have, works) ≥ wanted). */
  readonly chance: number;
}

export interface SittingStock {
  readonly sitting: string;
  readonly coverage: readonly Coverage[];
  /** Chance that every team works: the product over all needs. */
  readonly chance: number;
  /**
   * Which item each team gets for each need: `teams[t][n]` belongs to `coverage[n]`; null where nothing is left. Where a
   * team gets several items for one need it is the one that it gets most of.
   */
  readonly teams: readonly (readonly (ItemKey | null)[])[];
  /** The same unit by unit: `units[t][n]` has one entry for each of the `need.each` units (in the order of `need.for`). */
  readonly units: readonly (readonly (readonly (ItemKey | null)[])[])[];
}
