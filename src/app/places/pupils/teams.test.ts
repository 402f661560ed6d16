// Teams of a lesson as the list shows them.
import { expect, test } from "vitest";
import type { Day } from "../../../base/index.ts";
import type { ClassGroup } from "../../../school/file/index.ts";
import type { Plan, PlannedLesson } from "../../../school/readiness/index.ts";
import { markColumns, pairsOf, teamsByLesson, wishesOf } from "./teams.ts";

const pupil = (id: string, marks: Record<string, number> = {}) => ({ id, name: id.toUpperCase(), marks });
const group: ClassGroup = {
  id: "7b",
  name: "7b",
  teamSize: 3,
  pupils: [pupil("ada", { reads: 1 }), pupil("ben", { writes: 2, reads: 3 }), pupil("cai"), pupil("dee")],
  apart: [["ada", "dee"]],
  together: [["ben", "cai"]],
  balance: null,
  lessons: [{ lesson: "lamp", date: "2027-01-26" as Day, start: 540, absent: ["cai"] }],
};
const planned = (more: Partial<PlannedLesson>): PlannedLesson => ({
  id: "7b/lamp/2027-01-26",
  class: "7b",
  lesson: "lamp",
  date: "2027-01-26" as Day,
  start: 540,
  verdict: "ready",
  reasons: [],
  remedies: [],
  chance: 1,
  short: [],
  teams: [],
  moved: [],
  trays: [],
  stock: { sitting: "", coverage: [], chance: 1, teams: [], units: [] },
  rehearsal: null,
  supply: null,
  ...more,
});
const planOf = (...lessons: Partial<PlannedLesson>[]): Pick<Plan, "lessons"> => ({ lessons: lessons.map(planned) });

test("names, all roles of a pupil, who presents, who was moved, who is away", () => {
  const roles = [
    { pupil: "ada", role: "builder" as const },
    { pupil: "ben", role: "programmer" as const },
    { pupil: "ada", role: "checker" as const },
  ];
  const [lesson] = teamsByLesson(
    planOf({ moved: ["ben"], teams: [{ number: 1, pupils: ["ada", "ben"], roles, presenter: "ben" }] }),
    group,
  );
  const members = lesson!.teams[0]!.members.map((m) => [m.pupil.name, m.roles, m.presents, m.moved]);
  expect(members).toEqual([
    ["ADA", ["builder", "checker"], false, false],
    ["BEN", ["programmer"], true, true],
  ]);
  expect([lesson!.away, lesson!.moved].map((list) => list.map((p) => p.id))).toEqual([["cai"], ["ben"]]);
});

test("lessons of this class alone, in the order of days and hours", () => {
  const lessons = teamsByLesson(
    planOf(
      { id: "late", date: "2027-03-09" as Day },
      { id: "noon", start: 720 },
      { id: "morning", start: 540 },
      { id: "of another class", class: "7c" },
    ),
    group,
  );
  expect(lessons.map((l) => l.id)).toEqual(["morning", "noon", "late"]);
});

test("who has left the class is in no team", () => {
  const [lesson] = teamsByLesson(planOf({ teams: [{ number: 1, pupils: ["ada", "gone"], roles: [] }] }), group);
  expect(lesson!.teams[0]!.members.map((m) => m.pupil.id)).toEqual(["ada"]);
});

test("wishes by name", () => {
  expect(wishesOf(group).map((w) => [w.kind, ...w.pupils.map((p) => p.name)])).toEqual([
    ["apart", "ADA", "DEE"],
    ["together", "BEN", "CAI"],
  ]);
});

// n pupils make n(n-1)/2 pairs.
for (const n of [2, 3, 4, 7])
  test(`${n} pupils make ${(n * (n - 1)) / 2} pairs, none twice`, () => {
    const pairs = pairsOf(Array.from({ length: n }, (_, i) => `p${i}`));
    expect(new Set(pairs.map((p) => [...p].sort().join())).size).toBe((n * (n - 1)) / 2);
    expect(pairs.every(([a, b]) => a !== b)).toBe(true);
  });

test("columns in the order in which they first stand", () => expect(markColumns(group.pupils)).toEqual(["reads", "writes"]));
