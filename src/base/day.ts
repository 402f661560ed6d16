// Days of the calendar, without clock and without zone.
//
// A lesson is held on a day at a school's own wall time; a zone would only add ways to be wrong. Days are text `YYYY-MM-DD`
// everywhere in data, so they sort as text. The arithmetic is our own, because a library for it is larger than the rest of what
// a page starts with (Temporal is not in every browser yet); day.test.ts holds it against one, day by day.
// Does not know: today.

/** A day as `YYYY-MM-DD`. */
export type Day = string & { readonly brand: "Day" };

/** @returns the day, or null if the text is not a day that exists, such as 2027-02-30. */
export function parseDay(text: string): Day | null {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return null;
  // A month or a day that does not exist comes back as another day.
  return dayOf(dayNumber(text as Day)) === text ? (text as Day) : null;
}

/** @returns the day that many days later; negative counts go back. Days of the years 0 to 9999. */
export function addDays(day: Day, days: number): Day {
  return dayOf(dayNumber(day) + days);
}

/** @returns how many days `to` comes after `from`; negative if it comes before. */
export function daysBetween(from: Day, to: Day): number {
  return dayNumber(to) - dayNumber(from);
}

/** @returns 1 for Monday to 7 for Sunday (ISO 8601). */
export function weekday(day: Day): number {
  // Day 0 is a Thursday.
  return ((((dayNumber(day) + 3) % 7) + 7) % 7) + 1;
}

/** Days in 400 years of the Gregorian calendar: 97 of them are leap years. */
const era = 400 * 365 + 97;
/** From 0000-03-01 to 1970-01-01. */
const epoch = 719_468;

/**
 * Days since 1970-01-01, in the Gregorian calendar in all years (ISO 8601). Years are counted from March on, so that the leap
 * day is a year's last; months then have 30.6 days on the average, which gives 31, 30, 31, 30, 31 and again.
 */
export function dayNumber(day: Day): number {
  const [year = 0, month = 0, date = 0] = day.split("-").map(Number);
  const years = year - (month <= 2 ? 1 : 0);
  const months = (month + 9) % 12;
  const eras = Math.floor(years / 400);
  const inEra = years - eras * 400;
  const inYear = Math.floor((153 * months + 2) / 5) + date - 1;
  return eras * era + inEra * 365 + Math.floor(inEra / 4) - Math.floor(inEra / 100) + inYear - epoch;
}

/** The day of a number. */
function dayOf(number: number): Day {
  const since = number + epoch;
  const eras = Math.floor(since / era);
  const inEra = since - eras * era;
  const years = Math.floor((inEra - Math.floor(inEra / 1460) + Math.floor(inEra / 36_524) - Math.floor(inEra / (era - 1))) / 365);
  const inYear = inEra - (365 * years + Math.floor(years / 4) - Math.floor(years / 100));
  const months = Math.floor((5 * inYear + 2) / 153);
  const month = months < 10 ? months + 3 : months - 9;
  const date = inYear - Math.floor((153 * months + 2) / 5) + 1;
  const year = years + eras * 400 + (month <= 2 ? 1 : 0);
  return [String(year).padStart(4, "0"), String(month).padStart(2, "0"), String(date).padStart(2, "0")].join("-") as Day;
}
