// What a class file holds, counted by hand in the demo.
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import type { Day } from "../../../base/index.ts";
import { type ClassFile, readClassFile } from "../../../school/file/index.ts";
import { compareFiles, type Held, lookInto } from "./lookInto.ts";

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

test("what differs stands first, what neither has is left out", () => {
  const poorer = { ...demo, kits: [], log: [], counts: [] };
  const rows = compareFiles(poorer, { ...demo, counts: [] }, "2026-11-25" as Day);
  expect(rows.slice(0, 2)).toEqual([
    { what: "boxes", there: 0, here: 10 },
    { what: "logEntries", there: 0, here: 3 },
  ]);
  expect(rows.some((row) => row.what === "countIns" || row.what === "lessonsOver")).toBe(false);
});
