// A lesson's plan with its clock times.
//
// Does not know: words.
import type { Activity, PlanItem } from "../../../bench/lesson/index.ts";

export interface Stretch {
  readonly what: Activity;
  /** Minutes after midnight. */
  readonly start: number;
  readonly minutes: number;
  readonly mayBeDropped: boolean;
}

/** @param start minutes after midnight at which the lesson begins. */
export function stretches(plan: readonly PlanItem[], start: number): readonly Stretch[] {
  let at = start;
  return plan.map(({ what, minutes, mayBeDropped }) => {
    const stretch = { what, start: at, minutes, mayBeDropped };
    at += minutes;
    return stretch;
  });
}

/** @returns the place of what is done at that minute; -1 before the lesson, the number of stretches after it. */
export function stretchAt(parts: readonly Stretch[], clock: number): number {
  const first = parts[0];
  if (first === undefined || clock < first.start) return -1;
  const at = parts.findIndex((p) => clock < p.start + p.minutes);
  return at === -1 ? parts.length : at;
}
