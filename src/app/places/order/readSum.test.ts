// Sums of money as people type them, with comma and point.
import { expect, test } from "vitest";
import { readSum } from "./readSum.ts";

const cases: [typed: string, decimals: number, sum: number | null][] = [
  ["3.40", 2, 340],
  ["3,40", 2, 340],
  ["3,4", 2, 340],
  ["12", 2, 1200],
  [" 12 ", 2, 1200],
  ["0", 2, 0],
  ["€ 3,40", 2, 340],
  ["€3.40", 2, 340],
  ["3,40 €", 2, 340],
  ["KES 120", 2, 12000],
  ["120 Sh", 2, 12000],
  ["1.234,50", 2, 123450],
  ["1,234.50", 2, 123450],
  ["1 234,50", 2, 123450],
  ["1\u202f234,50", 2, 123450],
  ["1'234.50", 2, 123450],
  ["1.234.567", 2, 123456700],
  ["12,34,567.50", 2, 123456750],
  ["٣٫٤", 2, null], // the Arabic decimal mark is not read; the digits are
  ["٣.٤", 2, 340],
  // One thousand or one and a bit: refused where both can be meant.
  ["1.234", 2, null],
  ["1,230", 2, null],
  ["0.123", 2, null], // finer than the currency
  ["1.234", 3, 1234], // dinars have three decimals: a group of three is what they write
  ["1,234", 0, 1234], // yen have none
  ["1.5", 0, null],
  ["3.456", 2, null],
  ["", 2, null],
  ["-3", 2, null],
  ["3.40.50", 2, null],
  ["1,2,3", 2, null],
  ["three", 2, null],
  ["=3+4", 2, null],
  ["3 4", 2, null],
  ["<b>3</b>", 2, null],
];
for (const [typed, decimals, sum] of cases)
  test(`“${typed}” with ${decimals} decimals`, () => expect(readSum(typed, decimals)).toBe(sum));
