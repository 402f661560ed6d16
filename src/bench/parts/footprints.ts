// Holes that legs need, for the shapes that several kinds share. The pitch of a breadboard is 2.54 mm (common practice, no
// source); from e to f across the ditch it is three pitches, 7.62 mm, which is the width of chips.
// Does not know: any kind.
import type { Footprint, LegName } from "./partKind.ts";

/** Two wires that are bent to any two rows. */
export function freeLegs(legs: readonly LegName[], rows: number, source: string): Footprint {
  return { style: "free", legs: legs.map((leg, i) => ({ leg, row: i * rows, column: 0 })), source };
}

/** Stiff legs in one column, each `rows` below the one before. */
export function inLine(legs: readonly LegName[], rows: number, source: string): Footprint {
  return { style: "fixed", legs: legs.map((leg, i) => ({ leg, row: i * rows, column: 0 })), source };
}

/** A body over the ditch: the left legs downwards, and the right ones opposite them, also downwards. */
export function overDitch(left: readonly LegName[], right: readonly LegName[], rows: number, source: string): Footprint {
  const side = (legs: readonly LegName[], column: number) => legs.map((leg, i) => ({ leg, row: i * rows, column }));
  return { style: "ditch", legs: [...side(left, 0), ...side(right, 3)], source };
}

/** Not on the breadboard. */
export function beside(legs: readonly LegName[], source: string): Footprint {
  return { style: "beside", legs: legs.map((leg) => ({ leg, row: 0, column: 0 })), source };
}
