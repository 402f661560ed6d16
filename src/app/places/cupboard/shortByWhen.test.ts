// What is short by when, from plans made by hand.
import { expect, test } from "vitest";
import type { Day } from "../../../base/index.ts";
import type { Plan, PlannedLesson } from "../../../school/readiness/index.ts";
import { mostNeeded, shortByWhen } from "./shortByWhen.ts";

const today = "2027-01-04" as Day;

/** "date lesson: item count by, …": what a lesson of class 7b lacks. Without a count, some to spare would be wise. */
function planOf(...rows: string[]): Pick<Plan, "lessons"> {
  const lessons = rows.map((row): PlannedLesson => {
    const [, date = "", lesson = "", rest = ""] = /^(\S+) (\S+): ?(.*)$/.exec(row) ?? [];
    const things = rest.split(", ").filter((text) => text !== "");
    const remedies = things.map((text) => {
      const [, item = "", count, by] = /^(.*?)(?: (\d+))?(?: by (\S+))?$/.exec(text) ?? [];
      return count === undefined
        ? { code: "order-spares" as const, data: { item }, by: (by as Day) ?? null }
        : { code: "order" as const, data: { item, count: Number(count) }, by: (by as Day) ?? null };
    });
    return {
      id: `7b/${lesson}/${date}`,
      class: "7b",
      lesson,
      date: date as Day,
      start: 540,
      verdict: "ready",
      reasons: [],
      remedies,
      chance: 1,
      short: [],
      teams: [],
      moved: [],
      trays: [],
      stock: { sitting: "", coverage: [], chance: 1, teams: [], units: [] },
      rehearsal: null,
      supply: null,
    };
  });
  return { lessons };
}

/** As "item count date by others". */
const shown = (plan: Pick<Plan, "lessons">) =>
  shortByWhen(plan, today).map((t) => `${t.item} ${t.count ?? "spare"} ${t.sitting.date} ${t.by ?? "-"} +${t.others}`);

const cases: [name: string, rows: string[], short: string[]][] = [
  ["nothing is short", ["2027-01-12 lighthouse:"], []],
  ["one thing for one lesson", ["2027-02-16 dusk: photo 3 by 2027-02-10"], ["photo 3 2027-02-16 2027-02-10 +0"]],
  [
    "the largest gap counts, not the sum; the first lesson sets the day",
    ["2027-02-16 dusk: photo 3 by 2027-02-10", "2027-02-18 dusk: photo 5 by 2027-02-12"],
    ["photo 5 2027-02-16 2027-02-10 +1"],
  ],
  ["a lesson that is over needs nothing", ["2027-01-03 dusk: photo 3 by 2026-12-28"], []],
  ["a lesson of today does", ["2027-01-04 dusk: photo 3"], ["photo 3 2027-01-04 - +0"]],
  [
    "the earliest day stands first, wishes for spares stand last",
    ["2027-01-26 lamp: board by 2027-01-20", "2027-02-16 dusk: servo 1 by 2027-02-12, photo 3 by 2027-02-10"],
    ["photo 3 2027-02-16 2027-02-10 +0", "servo 1 2027-02-16 2027-02-12 +0", "board spare 2027-01-26 2027-01-20 +0"],
  ],
  [
    "what is missing anyway is not told again as a spare",
    ["2027-01-26 lamp: led by 2027-01-20", "2027-02-16 dusk: led 2 by 2027-02-10"],
    ["led 2 2027-02-16 2027-02-10 +0"],
  ],
];
for (const [name, rows, short] of cases) test(name, () => expect(shown(planOf(...rows))).toEqual(short));

test("a lesson's own list of what is short counts without a remedy", () => {
  const [lesson] = planOf("2027-02-16 dusk:").lessons;
  const plan = { lessons: [{ ...lesson!, short: [{ part: "button", count: 4 }] }] };
  expect(shown(plan)).toEqual(["button 4 2027-02-16 - +0"]);
});

test("the most that one lesson needs: summed within a lesson, not over lessons", () => {
  const [one, two] = planOf("2027-02-16 dusk:", "2027-02-18 dusk:").lessons;
  const coverage = (wanted: number) => ({
    need: { for: [], item: "led red", each: 1, substitutes: [] },
    wanted,
    have: [],
    short: 0,
    works: 1,
    chance: 1,
  });
  const stock = (...wanted: number[]) => ({ ...one!.stock, coverage: wanted.map(coverage) });
  const plan = {
    lessons: [
      { ...one!, stock: stock(10, 10) },
      { ...two!, stock: stock(12) },
    ],
  };
  expect(mostNeeded(plan, today).get("led red")).toBe(20);
});
