// Days of the calendar, without clock and without zone.
//
// A lesson is held on a day at a school's own wall time; a zone would only add ways to be wrong. Temporal.PlainDate does the
// arithmetic and knows the leap years. Days are text `YYYY-MM-DD` everywhere in data, so they sort as text.
// Does not know: today.
import { Temporal } from "temporal-polyfill";

/** A day as `YYYY-MM-DD`. */
export type Day = string & { readonly brand: "Day" };

/** @returns the day, or null if the text is not a day that exists, such as 2027-02-30. */
export function parseDay(text: string): Day | null {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return null;
  try {
    return Temporal.PlainDate.from(text, { overflow: "reject" }).toString() as Day;
  } catch {
    return null;
  }
}

/** @returns the day that many days later; negative counts go back. */
export function addDays(day: Day, days: number): Day {
  return Temporal.PlainDate.from(day).add({ days }).toString() as Day;
}

/** @returns how many days `to` comes after `from`; negative if it comes before. */
export function daysBetween(from: Day, to: Day): number {
  return Temporal.PlainDate.from(from).until(Temporal.PlainDate.from(to), { largestUnit: "days" }).days;
}

/** @returns 1 for Monday to 7 for Sunday (ISO 8601). */
export function weekday(day: Day): number {
  return Temporal.PlainDate.from(day).dayOfWeek;
}
