// What to prepare, and by when: for one lesson on Tuesday 12 January 2027, looked at on different days.
import { expect, test } from "vitest";
import type { Day } from "../../base/index.ts";
import type { ClassFile } from "../file/index.ts";
import type { PlannedLesson, Reason, Remedy } from "./plan.ts";
import { prepare } from "./prepare.ts";

const lesson = (reasons: readonly Reason[] = [], remedies: readonly Remedy[] = [], more: Partial<PlannedLesson> = {}) =>
  ({
    id: "7b/lighthouse/2027-01-12",
    class: "7b",
    lesson: "lighthouse",
    date: "2027-01-12",
    teams: [{}, {}, {}],
    trays: [{}, {}, {}],
    reasons,
    remedies,
    ...more,
  }) as unknown as PlannedLesson;
const ask = (lessons: readonly PlannedLesson[], today = "2026-12-01") =>
  prepare(lessons, { language: "en" } as ClassFile, new Map(), new Map(), today as Day).map((p) => [p.date, p.code, p.data]);

test("a week for trying it, two days for the boards, the day before for paper and trays: one sheet a team and the run sheet", () =>
  expect(ask([lesson()])).toEqual([
    ["2027-01-05", "try-it-yourself", { lesson: "lighthouse" }],
    ["2027-01-10", "check-devices", { count: 3 }],
    ["2027-01-11", "print-papers", { count: 4 }],
    ["2027-01-11", "set-out-trays", { count: 3 }],
  ]));
test("what is short is ordered on the last day that helps", () =>
  expect(
    ask([lesson([], [{ code: "order", data: { item: "photoresistor", count: 3 }, by: "2027-01-06" as Day }])]),
  ).toContainEqual(["2027-01-06", "order-by", { item: "photoresistor", count: 3 }]));
test("nothing lies in the past: what is late is for today", () => {
  const days = ask([lesson()], "2027-01-11").map(([date]) => date);
  expect(days.every((d) => String(d) >= "2027-01-11")).toBe(true);
});
test("a substitute is told on the day itself", () =>
  expect(
    ask([
      lesson([
        {
          verdict: "ready",
          code: "substitute-used",
          data: { part: "R1", item: "resistor 330", insteadOf: "resistor 220", count: 1, teams: [7] },
        },
      ]),
    ])
      .at(-1)
      ?.slice(0, 2),
  ).toEqual(["2027-01-12", "tell-substitutes"]));
test("a lesson that two classes hold is tried once", () => {
  const other = lesson([], [], { id: "7c/lighthouse/2027-01-14", class: "7c", date: "2027-01-14" as Day });
  expect(ask([lesson(), other]).filter(([, code]) => code === "try-it-yourself")).toHaveLength(1);
});
test("the list is in the order of the days", () => {
  const days = ask([lesson([], [], { date: "2027-02-01" as Day, id: "7b/x/2027-02-01", lesson: "x" }), lesson()]).map(([date]) =>
    String(date),
  );
  expect(days).toEqual([...days].sort());
});
