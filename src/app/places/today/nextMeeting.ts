// Which lesson Today is about, and which one is still to be counted in.
//
// A lesson that is under way is the next one until it is over.
// Does not know: how a lesson is planned.
import type { Day } from "../../../base/index.ts";
import { daysBetween } from "../../../base/index.ts";
import { type ClassFile, type ClassGroup, type LessonDate, meetingsOf } from "../../../school/file/index.ts";

export interface Now {
  readonly today: Day;
  /** Minutes after midnight. */
  readonly clock: number;
}

export type Distance =
  | { readonly kind: "running"; readonly minutes: number }
  | { readonly kind: "minutes"; readonly minutes: number }
  | { readonly kind: "today"; readonly hours: number }
  | { readonly kind: "tomorrow" }
  | { readonly kind: "days"; readonly days: number };

const isOver = (meeting: LessonDate, minutes: number, { today, clock }: Now): boolean =>
  meeting.date < today || (meeting.date === today && meeting.start + minutes <= clock);

/** @returns the first lesson that is not over, or null. */
export function nextMeeting(group: ClassGroup, minutesOf: (lesson: string) => number, now: Now): LessonDate | null {
  return meetingsOf(group).find((meeting) => !isOver(meeting, minutesOf(meeting.lesson), now)) ?? null;
}

/** @returns the last lesson that was held, or null where it was counted in already. */
export function meetingToCount(
  classFile: ClassFile,
  group: ClassGroup,
  minutesOf: (lesson: string) => number,
  now: Now,
): LessonDate | null {
  const held = meetingsOf(group).filter((meeting) => isOver(meeting, minutesOf(meeting.lesson), now));
  const last = held.at(-1) ?? null;
  const isCounted =
    last !== null && classFile.counts.some((c) => c.class === group.id && c.lesson === last.lesson && c.date === last.date);
  return isCounted ? null : last;
}

/** How far off a lesson is. */
export function distanceTo(meeting: LessonDate, minutes: number, { today, clock }: Now): Distance {
  const days = daysBetween(today, meeting.date);
  if (days > 1) return { kind: "days", days };
  if (days === 1) return { kind: "tomorrow" };
  const away = meeting.start - clock;
  if (away <= 0) return { kind: "running", minutes: minutes + away };
  return away < 100 ? { kind: "minutes", minutes: away } : { kind: "today", hours: Math.round(away / 60) };
}
