// What a class file holds, counted by hand in the demo.
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import type { Day } from "../../../base/index.ts";
import { type ClassFile, readClassFile } from "../../../school/file/index.ts";
import { compareFiles, type Held, lookInto, onlyIn } from "./lookInto.ts";

const demo = readClassFile("harbour.json", readFileSync("demo/harbour.json", "utf8")).value as ClassFile;

// Counted by hand in demo/harbour.json.
const cases: [what: Held, today: string, count: number][] = [
  ["classes", "2026-11-25", 2],
  ["pupils", "2026-11-25", 54],
  ["lessonsToCome", "2026-11-25", 8],
  ["lessonsToCome", "2027-01-28", 5],
  ["lessonsOver", "2027-01-28", 3],
  ["boxes", "2026-11-25", 10],
  ["stockLines", "2026-11-25", 8],
  ["devices", "2026-11-25", 34],
  ["suppliers", "2026-11-25", 2],
  ["countIns", "2026-11-25", 4],
  ["logEntries", "2026-11-25", 3],
];
for (const [what, today, count] of cases)
  test(`${what} on ${today}`, () => expect(lookInto(demo, today as Day).get(what)).toBe(count));

test("a lesson on another day, another power cut and another decision are seen though as many stand there", () => {
  const [group, ...groups] = demo.classes;
  const [lesson, ...lessons] = group!.lessons;
  const moved = { ...lesson!, date: "2027-06-01" as Day };
  const cut = { date: "2027-01-14" as Day, from: 540, to: 600 };
  const skip = { kind: "skip", lesson: "barrier", class: "7b", date: "2027-01-14" as Day } as const;
  const then: ClassFile = { ...demo, powerCuts: [cut], decisions: [skip] };
  const now: ClassFile = {
    ...demo,
    classes: [{ ...group!, lessons: [moved, ...lessons] }, ...groups],
    powerCuts: [{ ...cut, to: 660 }],
    decisions: [{ date: skip.date, class: "7b", lesson: "barrier", kind: "skip" }],
  };
  const of = ({ lesson, start }: { lesson: string; start: number }, date: Day) => ({ class: group!.id, lesson, date, start });
  // The same decision with its fields in another order is no other decision.
  expect(onlyIn(then, now)).toEqual({ lessons: [of(lesson!, lesson!.date)], powerCuts: [cut], decisions: [] });
  expect(onlyIn(now, then)).toEqual({ lessons: [of(moved, moved.date)], powerCuts: [{ ...cut, to: 660 }], decisions: [] });
  expect(onlyIn(then, { ...then, decisions: [] }).decisions).toEqual([skip]);
});

test("what differs stands first, what neither has is left out", () => {
  const poorer = { ...demo, kits: [], log: [], counts: [] };
  const rows = compareFiles(poorer, { ...demo, counts: [] }, "2026-11-25" as Day);
  expect(rows.slice(0, 2)).toEqual([
    { what: "boxes", there: 0, here: 10 },
    { what: "logEntries", there: 0, here: 3 },
  ]);
  expect(rows.some((row) => row.what === "countIns" || row.what === "lessonsOver")).toBe(false);
});
