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

/** Days after which nobody remembers what came back. */
const countedWithin = 28;

/** @returns the last lesson that was held and not counted in, or null. */
export function meetingToCount(
  classFile: ClassFile,
  group: ClassGroup,
  minutesOf: (lesson: string) => number,
  now: Now,
): LessonDate | null {
  const isCounted = ({ lesson, date }: LessonDate) =>
    classFile.counts.some((c) => c.class === group.id && c.lesson === lesson && c.date === date);
  const open = meetingsOf(group).filter(
    (meeting) =>
      isOver(meeting, minutesOf(meeting.lesson), now) &&
      daysBetween(meeting.date, now.today) <= countedWithin &&
      !isCounted(meeting),
  );
  return open.at(-1) ?? null;
}

export interface OtherLesson {
  readonly group: ClassGroup;
  readonly meeting: LessonDate;
}

/** @returns lessons that the other classes of the file have on these days and that are not over, in the order of time. */
export function otherLessonsOf(
  days: readonly Day[],
  classFile: ClassFile,
  group: ClassGroup,
  minutesOf: (lesson: string) => number,
  now: Now,
): readonly OtherLesson[] {
  return classFile.classes
    .filter((other) => other.id !== group.id)
    .flatMap((other) => meetingsOf(other).map((meeting) => ({ group: other, meeting })))
    .filter(({ meeting }) => days.includes(meeting.date) && !isOver(meeting, minutesOf(meeting.lesson), now))
    .sort((a, b) => daysBetween(b.meeting.date, a.meeting.date) || a.meeting.start - b.meeting.start);
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
