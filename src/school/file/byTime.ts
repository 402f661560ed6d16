// The order of time: what has a day and a beginning stands after what comes before it.
//
// Days are written year first, so their texts sort as the days do.
// Does not know: plans, what today is.
import type { Day } from "../../base/index.ts";
import type { ClassGroup, LessonDate } from "./classFile.ts";

/** Compares two for `sort`: negative where `a` is earlier, 0 where both begin at once. `start` in minutes after midnight. */
export function byTime(
  a: { readonly date: Day; readonly start: number },
  b: { readonly date: Day; readonly start: number },
): number {
  return a.date === b.date ? a.start - b.start : a.date < b.date ? -1 : 1;
}

/** The lessons of a class, earliest first; those that begin at once stay as the file has them. */
export function meetingsOf(group: ClassGroup): readonly LessonDate[] {
  return [...group.lessons].sort(byTime);
}
