// Stretches of a lesson without mains, and which computers last through them.
//
// Does not know: charging, boards.
import type { Day } from "../../base/index.ts";
import type { Computer, PowerCut } from "../file/index.ts";

/** A lesson on its day. Minutes after midnight. */
export interface LessonTime {
  readonly date: Day;
  readonly start: number;
  readonly minutes: number;
}

export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** The parts of [from, to] on a day in which a cut is known, joined where they touch. */
export function cutsWithin(cuts: readonly PowerCut[], date: Day, from: number, to: number): Stretch[] {
  const inside = cuts
    .filter((cut) => cut.date === date && cut.from < to && cut.to > from)
    .map((cut) => ({ from: Math.max(cut.from, from), to: Math.min(cut.to, to) }))
    .sort((a, b) => a.from - b.from);
  const joined: Stretch[] = [];
  for (const cut of inside) {
    const last = joined.at(-1);
    if (last && cut.from <= last.to) joined[joined.length - 1] = { from: last.from, to: Math.max(last.to, cut.to) };
    else joined.push(cut);
  }
  return joined;
}

/**
 * Share of the minutes a battery was once seen to last that is counted on. Batteries lost 12 to 24 % in 500 cycles
 * (measurements of 2003, Wikipedia "Capacity loss"), and a board on the port with uploads draws more than a quiet try.
 * The figure itself: common practice, no source.
 */
export const batteryMargin = 0.8;

/** Minutes of battery that a computer is counted on for when it is full; null where nobody tried. */
export function countedMinutes(computer: Pick<Computer, "batteryMinutes">): number | null {
  return computer.batteryMinutes === null ? null : computer.batteryMinutes * batteryMargin;
}
