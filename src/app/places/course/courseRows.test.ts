// Rows of a course, its legend, and what changing places does: worked out by hand on a course of four.
import { expect, test } from "vitest";
import type { Day } from "../../../base/index.ts";
import type { ClassGroup } from "../../../school/file/index.ts";
import type { Plan } from "../../../school/readiness/index.ts";
import { courseRows, firstOrderDay, legendOf, swapped } from "./courseRows.ts";

const days = ["2027-01-12", "2027-01-26", "2027-02-16", "2027-03-09"];
const group = {
  id: "7b",
  lessons: ["a", "b", "c", "d"].map((lesson, i) => ({ lesson, date: days[i], start: 540, absent: [] })),
} as unknown as ClassGroup;
const remedy = (code: string, by: string | null) => ({ code, by, data: {} });
const plan = {
  lessons: [
    { verdict: "ready", remedies: [remedy("order", "2026-01-01")] },
    { verdict: "ready", remedies: [remedy("order-spares", "2027-01-20"), remedy("move-away-from-cut", "2027-01-02")] },
    { verdict: "short of parts", remedies: [remedy("order", "2027-02-10"), remedy("get-supply", null)] },
    { verdict: "unsafe", remedies: [] },
  ].map((l, i) => ({ ...l, class: "7b", lesson: "abcd"[i], date: days[i] })),
} as unknown as Plan;
const rows = courseRows(group, plan, "2027-01-20" as Day);

test("rows stand in the order of their days and know what is past", () =>
  expect(rows.map((r) => [r.number, r.meeting.lesson, r.isPast])).toEqual([
    [1, "a", true],
    [2, "b", false],
    [3, "c", false],
    [4, "d", false],
  ]));
test("the legend counts what is to come, best first", () =>
  expect(legendOf(rows)).toEqual([
    { word: "ready", count: 1 },
    { word: "short of parts", count: 1 },
    { word: "unsafe", count: 1 },
  ]));
test("the first day to order by is that of something to buy for a lesson to come", () =>
  expect(firstOrderDay(rows)).toBe("2027-01-20"));

const swaps: readonly [at: number, by: -1 | 1, after: string | null][] = [
  [1, 1, "acbd"],
  [2, -1, "acbd"],
  [3, 1, null],
  [1, -1, null], // over into what was taught
  [0, 1, null],
];
for (const [at, by, after] of swaps)
  test(`row ${at} by ${by} gives ${after}`, () => expect(swapped(rows, at, by)?.join("") ?? null).toBe(after));
