// Days against Temporal, which knows the calendar: every day of four centuries, days that do not exist, and long ways.
import { Temporal } from "temporal-polyfill";
import { expect, test } from "vitest";
import { sample } from "../../test/sample.ts";
import { addDays, type Day, dayNumber, daysBetween, parseDay, weekday } from "./day.ts";

test("every day from 1899 to 2300: its number, its weekday, the next one", () => {
  let plain = Temporal.PlainDate.from("1899-12-31");
  let number = dayNumber("1899-12-31" as Day);
  const wrong: string[] = [];
  for (; plain.year < 2300; number += 1) {
    const day = plain.toString() as Day;
    plain = plain.add({ days: 1 });
    const isRight = dayNumber(day) === number && parseDay(day) === day && addDays(day, 1) === plain.toString();
    if (!isRight || weekday(day) !== ((plain.dayOfWeek + 5) % 7) + 1) wrong.push(day);
  }
  expect(wrong).toEqual([]);
});

test("day 0 is 1 January 1970, a Thursday (POSIX)", () => {
  expect(dayNumber("1970-01-01" as Day)).toBe(0);
  expect(weekday("1970-01-01" as Day)).toBe(4);
});

const notDays = ["2027-02-29", "2027-02-30", "1900-02-29", "2027-04-31", "2027-00-10", "2027-13-01", "2027-01-00", "2027-01-32"];
for (const text of [...notDays, "2027-1-1", "27-01-01", "2027-01-01T00", " 2027-01-01", "", "today", "２027-01-01"])
  test(`"${text}" is no day`, () => expect(parseDay(text)).toBeNull());
for (const text of ["2000-02-29", "2028-02-29", "2400-02-29", "0001-01-01", "9999-12-31"])
  test(`${text} is a day`, () => expect(parseDay(text)).toBe(text));

test("long ways there and back, as Temporal goes them", () => {
  let seed = 1;
  const next = (most: number) => {
    seed = (seed * 1_103_515_245 + 12_345) % 2_147_483_648;
    return seed % most;
  };
  for (let i = 0; i < sample(2000, 100_000); i += 1) {
    const from = Temporal.PlainDate.from({ year: 1600 + next(800), month: 1 + next(12), day: 1 + next(28) });
    const days = next(400_000) - 200_000;
    const to = from.add({ days });
    expect(addDays(from.toString() as Day, days)).toBe(to.toString());
    expect(daysBetween(from.toString() as Day, to.toString() as Day)).toBe(days);
  }
});
