// Which lesson comes next, how far off it is, and which is still to be counted: dates and times worked out by hand.
import { describe, expect, test } from "vitest";
import type { Day } from "../../../base/index.ts";
import type { ClassFile, ClassGroup } from "../../../school/file/index.ts";
import type { PlannedLesson } from "../../../school/readiness/index.ts";
import { countsOf, handedOut } from "./handedOut.ts";
import { type Distance, distanceTo, meetingToCount, nextMeeting, otherLessonsOf } from "./nextMeeting.ts";
import { stretchAt, stretches } from "./stretches.ts";

const at = (date: string, start: number, lesson = date) => ({ lesson, date: date as Day, start, absent: [] });
/** 9:00 on 12 and 26 January, written in the wrong order on purpose. */
const group = { id: "7b", lessons: [at("2027-01-26", 540, "signal"), at("2027-01-12", 540, "light")] } as unknown as ClassGroup;
const minutes = () => 80;
const now = (today: string, clock: number) => ({ today: today as Day, clock });

const cases: readonly [day: string, clock: number, next: string | null, toCount: string | null][] = [
  ["2027-01-11", 700, "light", null],
  ["2027-01-12", 500, "light", null],
  ["2027-01-12", 619, "light", null],
  ["2027-01-12", 620, "signal", "light"],
  ["2027-01-26", 620, null, "signal"],
  ["2027-02-01", 0, null, "signal"],
];
for (const [day, clock, next, toCount] of cases)
  test(`on ${day} at ${clock} min: next ${next}, to count ${toCount}`, () => {
    const file = { counts: [] } as unknown as ClassFile;
    expect(nextMeeting(group, minutes, now(day, clock))?.lesson ?? null).toBe(next);
    expect(meetingToCount(file, group, minutes, now(day, clock))?.lesson ?? null).toBe(toCount);
  });

test("a lesson that was counted is not asked for again; the one before it is, for four weeks", () => {
  const count = (lesson: string, date: string) => ({ class: "7b", lesson, date, item: "wire", out: 1, back: 1, broken: 0 });
  const later = { counts: [count("signal", "2027-01-26")] } as unknown as ClassFile;
  expect(meetingToCount(later, group, minutes, now("2027-02-01", 0))?.lesson).toBe("light");
  expect(meetingToCount(later, group, minutes, now("2027-02-09", 0))?.lesson).toBe("light");
  expect(meetingToCount(later, group, minutes, now("2027-02-10", 0))).toBeNull();
  const both = { counts: [...later.counts, count("light", "2027-01-12")] } as unknown as ClassFile;
  expect(meetingToCount(both, group, minutes, now("2027-02-01", 0))).toBeNull();
});

test("lessons of the other classes on the days asked for, in the order of time, while they are not over", () => {
  const other = { id: "7c", lessons: [at("2027-01-12", 660, "b"), at("2027-01-12", 480, "a"), at("2027-01-13", 480)] };
  const file = { classes: [group, other] } as unknown as ClassFile;
  const found = (days: string[], clock: number) =>
    otherLessonsOf(days as Day[], file, group, minutes, now("2027-01-12", clock)).map(({ meeting }) => meeting.lesson);
  expect(found(["2027-01-12"], 400)).toEqual(["a", "b"]);
  expect(found(["2027-01-12"], 560)).toEqual(["b"]);
  expect(found(["2027-01-13", "2027-01-12"], 400)).toEqual(["a", "b", "2027-01-13"]);
  expect(found(["2027-01-26"], 400)).toEqual([]);
});

const distances: readonly [day: string, clock: number, distance: Distance][] = [
  ["2026-12-01", 0, { kind: "days", days: 42 }],
  ["2027-01-11", 0, { kind: "tomorrow" }],
  ["2027-01-12", 420, { kind: "today", hours: 2 }],
  ["2027-01-12", 515, { kind: "minutes", minutes: 25 }],
  ["2027-01-12", 550, { kind: "running", minutes: 70 }],
];
for (const [day, clock, distance] of distances)
  test(`seen on ${day} at ${clock} min`, () => expect(distanceTo(at("2027-01-12", 540), 80, now(day, clock))).toEqual(distance));

describe("the clock of the plan", () => {
  const plan = [
    { what: "hand-out", minutes: 5, mayBeDropped: false, note: null },
    { what: "build", minutes: 25, mayBeDropped: false, note: null },
    { what: "count-in", minutes: 10, mayBeDropped: false, note: null },
  ] as const;
  const parts = stretches(plan, 630);
  test("one stretch begins where the one before ends", () => expect(parts.map((p) => p.start)).toEqual([630, 635, 660]));
  for (const [clock, place] of [
    [629, -1],
    [630, 0],
    [634, 0],
    [635, 1],
    [669, 2],
    [670, 3],
  ] as const)
    test(`at ${clock} min it is at ${place}`, () => expect(stretchAt(parts, clock)).toBe(place));
});

test("trays are added up item by item, and what is not named came back whole", () => {
  const tray = (team: number, items: readonly (readonly [string, number])[]) => ({
    team,
    items: items.map(([item, count]) => ({ item, count, parts: [], insteadOf: null, box: "" })),
    missing: [],
  });
  const planned = {
    trays: [
      tray(1, [
        ["wire", 9],
        ["resistor 220", 1],
      ]),
      tray(2, [
        ["wire", 9],
        ["resistor 330", 1],
      ]),
    ],
  } as unknown as PlannedLesson;
  const out = handedOut(planned);
  expect(out).toEqual([
    { item: "wire", count: 18 },
    { item: "resistor 220", count: 1 },
    { item: "resistor 330", count: 1 },
  ]);
  const sitting = { class: "7b", lesson: "light", date: "2027-01-12" as Day };
  expect(countsOf(sitting, out, new Map([["wire", { missing: 2, broken: 1 }]])).map((c) => [c.out, c.back, c.broken])).toEqual([
    [18, 15, 1],
    [1, 1, 0],
    [1, 1, 0],
  ]);
});
