// The rows of a course: what was taught, what is to come, and where its verdict stands in the legend.
//
// Does not know: words, how a verdict is found.
import type { Day } from "../../../base/index.ts";
import { type ReadinessWord, verdicts } from "../../../bench/rehearsal/index.ts";
import { type ClassGroup, type LessonDate, meetingsOf } from "../../../school/file/index.ts";
import type { Plan, PlannedLesson } from "../../../school/readiness/index.ts";

export interface CourseRow {
  readonly meeting: LessonDate;
  /** From 1, in the order of the days. */
  readonly number: number;
  readonly isPast: boolean;
  readonly planned: PlannedLesson | null;
}

export function courseRows(group: ClassGroup, plan: Plan | null, today: Day): readonly CourseRow[] {
  return meetingsOf(group).map((meeting, i) => ({
    meeting,
    number: i + 1,
    isPast: meeting.date < today,
    planned: plan?.lessons.find((l) => l.class === group.id && l.lesson === meeting.lesson && l.date === meeting.date) ?? null,
  }));
}

export interface LegendEntry {
  readonly word: ReadinessWord;
  readonly count: number;
}

/** How many lessons to come stand under each word, best first; words that nobody has are left out. */
export function legendOf(rows: readonly CourseRow[]): readonly LegendEntry[] {
  const words = rows.flatMap(({ isPast, planned }) => (isPast || planned === null ? [] : [planned.verdict]));
  return [...verdicts]
    .reverse()
    .map((word) => ({ word, count: words.filter((w) => w === word).length }))
    .filter(({ count }) => count > 0);
}

const bought = new Set(["order", "order-spares", "get-supply"]);

/** The first day by which something must be ordered for the lessons to come, or null. */
export function firstOrderDay(rows: readonly CourseRow[]): Day | null {
  const days = rows
    .filter((row) => !row.isPast)
    .flatMap((row) => row.planned?.remedies ?? [])
    .flatMap(({ code, by }) => (bought.has(code) && by !== null ? [by] : []));
  return [...days].sort()[0] ?? null;
}

/**
 * The lessons of a class with one moved a place earlier (-1) or later (1); null where it cannot go there: at an end of the
 * course, or over into what was taught already.
 */
export function swapped(rows: readonly CourseRow[], at: number, by: -1 | 1): readonly string[] | null {
  const [from, to] = [rows[at], rows[at + by]];
  if (!from || !to || from.isPast || to.isPast) return null;
  const lessons = rows.map((row) => row.meeting.lesson);
  lessons[at] = to.meeting.lesson;
  lessons[at + by] = from.meeting.lesson;
  return lessons;
}
