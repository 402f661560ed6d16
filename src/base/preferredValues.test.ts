// Expected values: IEC 60063:2015, table 1, as reproduced in public copies that agree.
import { expect, test } from "vitest";
import { isPreferred, nearestPreferred, preferredDigits, preferredValues, type Series } from "./preferredValues.ts";

test("E24 is not the rounded powers: eight of its values differ, as the standard has them", () => {
  const rounded = Array.from({ length: 24 }, (_, k) => Math.round(10 * 10 ** (k / 24)));
  const different = preferredDigits.E24.filter((value, k) => value !== rounded[k]);
  expect(different).toEqual([27, 30, 33, 36, 39, 43, 47, 82]);
});
test("each series is every second value of the next (IEC 60063)", () => {
  const everySecond = (values: readonly number[]) => values.filter((_, i) => i % 2 === 0);
  expect(everySecond(preferredDigits.E24)).toEqual(preferredDigits.E12);
  expect(everySecond(preferredDigits.E12)).toEqual(preferredDigits.E6);
});

const nearest: [series: Series, value: number, expected: number | null][] = [
  ["E6", 220, 220],
  ["E6", 100_000, 100_000],
  ["E12", 250, 270], // 250/220 = 1.136, 270/250 = 1.08
  ["E12", 4000, 3900],
  ["E24", 42, 43],
  ["E24", 99, 100],
  ["E24", 0.97, 1],
  ["E24", 1e-7, 1e-7],
  ["E12", 0, null],
  ["E12", -5, null],
  ["E12", Number.NaN, null],
];
for (const [series, value, expected] of nearest)
  test(`nearest to ${value} in ${series}`, () => expect(nearestPreferred(series, value)).toBe(expected));

test("values within a span", () => {
  expect(preferredValues("E6", 100, 1000)).toEqual([100, 150, 220, 330, 470, 680, 1000]);
  expect(preferredValues("E12", 4, 6)).toEqual([4.7, 5.6]);
  expect(preferredValues("E12", 0, 10)).toEqual([]);
});
test("belonging", () => {
  expect([220, 4700, 0.47, 1e-7].map((v) => isPreferred("E12", v))).toEqual([true, true, true, true]);
  expect([4200, 200, 35].map((v) => isPreferred("E12", v))).toEqual([false, false, false]);
});
