// Counts and numbers as people type them.
import { expect, test } from "vitest";
import { readClock, readCount, readDay } from "./readTyped.ts";

const counts: [typed: string, count: number | null][] = [
  ["12", 12],
  [" 12 ", 12],
  ["0", 0],
  ["007", 7],
  ["١٢", 12], // Arabic-Indic
  ["۱۲", 12], // Persian
  ["१२", 12], // Devanagari
  ["１２", 12], // full width
  ["𝟗𝟘", 90], // the digits of mathematics stand five tens in a row
  ["5²", null],
  ["1000000", 1_000_000],
  ["1000001", null],
  ["", null],
  ["-1", null],
  ["1.5", null],
  ["1,000", null],
  ["12 pieces", null],
  ["=1+1", null],
];
for (const [typed, count] of counts) test(`count “${typed}”`, () => expect(readCount(typed)).toBe(count));

test("every digit of every script that ICU writes numbers in", () => {
  for (const script of [
    "arab",
    "arabext",
    "beng",
    "deva",
    "gujr",
    "khmr",
    "knda",
    "laoo",
    "mlym",
    "mymr",
    "tamldec",
    "telu",
    "thai",
    "tibt",
  ])
    for (let n = 0; n < 10; n += 1)
      expect([script, readCount(new Intl.NumberFormat(`en-u-nu-${script}`).format(n))]).toEqual([script, n]);
});

const clocks: [typed: string, minutes: number | null][] = [
  ["9", 540],
  ["9:00", 540],
  ["09.05", 545],
  ["9h05", 545],
  ["9h", 540],
  ["0905", 545],
  ["23:59", 1439],
  ["24:00", null],
  ["9:60", null],
  ["9:5", null],
  ["noon", null],
  ["", null],
];
for (const [typed, minutes] of clocks) test(`clock “${typed}”`, () => expect(readClock(typed)).toBe(minutes));

const days: [day: string, month: number, year: string, found: string | null][] = [
  ["11", 3, "2027", "2027-03-11"],
  ["29", 2, "2028", "2028-02-29"],
  ["29", 2, "2027", null],
  ["0", 1, "2027", null],
  ["1", 1, "27", null],
  ["x", 1, "2027", null],
];
for (const [day, month, year, found] of days)
  test(`day ${day} ${month} ${year}`, () => expect(readDay(day, month, year)).toBe(found));
