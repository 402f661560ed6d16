// Days written short, for the narrow column before the bench line and for lists of months.
//
// Full dates are written by `formatDay` of language; these two forms have no use on paper.
// Does not know: today.
import type { Day } from "../../base/index.ts";
import type { Language } from "../../language/index.ts";

/** "11 Feb". */
export function shortDay(language: Language, day: Day): string {
  return new Intl.DateTimeFormat(language.intl, { day: "numeric", month: "short", timeZone: "UTC" }).format(new Date(day));
}

/** "Thu". */
export function shortWeekday(language: Language, day: Day): string {
  return new Intl.DateTimeFormat(language.intl, { weekday: "short", timeZone: "UTC" }).format(new Date(day));
}

/** "January" for 1. */
export function monthName(language: Language, month: number): string {
  return new Intl.DateTimeFormat(language.intl, { month: "long", timeZone: "UTC" }).format(Date.UTC(2027, month - 1, 15));
}
