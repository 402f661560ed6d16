// What the print place is asked for by its address, and which lesson is the next one.
import { expect, test } from "vitest";
import type { Day } from "../../../base/index.ts";
import type { ClassFile, ClassGroup } from "../../../school/file/index.ts";
import { addressOf, type Choice, choiceAt, meetingsToCome } from "./choosePapers.ts";

const choices: [address: string, choice: Choice | null][] = [
  ["", null],
  ["all/7b/barrier/2027-03-09", { what: "all", sitting: "7b/barrier/2027-03-09" }],
  ["tray/7b/barrier/2027-03-09", { what: "tray", sitting: "7b/barrier/2027-03-09" }],
  ["run-sheet/7b/barrier/2027-03-09", { what: "run-sheet", sitting: "7b/barrier/2027-03-09" }],
  ["rota/7b", { what: "rota", class: "7b" }],
  ["label", { what: "label" }],
  ["order", { what: "order" }],
  ["all/7b/barrier", null],
  ["rota", null],
  ["poem/7b", null],
];
for (const [address, choice] of choices) {
  test(`#/print/${address}`, () => expect(choiceAt(address === "" ? [] : address.split("/"))).toEqual(choice));
  if (choice !== null) test(`address of ${address}`, () => expect(addressOf(choice)).toBe(`/print/${address}`));
}
test("a class with a slash-free but odd name keeps its address", () =>
  expect(addressOf({ what: "rota", class: "7 b?" })).toBe("/print/rota/7%20b%3F"));

const group = (id: string, ...lessons: [lesson: string, date: string, start: number][]) =>
  ({ id, lessons: lessons.map(([lesson, date, start]) => ({ lesson, date, start, absent: [] })) }) as unknown as ClassGroup;
const a = group("a", ["two", "2027-01-19", 540], ["one", "2027-01-12", 540]);
const b = group("b", ["one", "2027-01-12", 645]);
const file = (decisions: unknown[] = []) => ({ decisions }) as unknown as ClassFile;
const skipped = file([{ kind: "skip", lesson: "one", class: "a", date: "2027-01-10" }]);

const meetings: [name: string, file: ClassFile, groups: ClassGroup[], today: string, clock: number, to: string[]][] = [
  ["all before the first", file(), [a], "2026-11-25", 600, ["a/one/2027-01-12", "a/two/2027-01-19"]],
  ["two classes by the clock", file(), [a, b], "2027-01-12", 0, ["a/one/2027-01-12", "b/one/2027-01-12", "a/two/2027-01-19"]],
  ["one that is under way counts", file(), [a], "2027-01-12", 619, ["a/one/2027-01-12", "a/two/2027-01-19"]],
  ["one that is over does not", file(), [a], "2027-01-12", 620, ["a/two/2027-01-19"]],
  ["one that was left out does not", skipped, [a, b], "2027-01-12", 0, ["b/one/2027-01-12", "a/two/2027-01-19"]],
  ["none is left", file(), [a, b], "2027-02-01", 0, []],
];
for (const [name, classFile, groups, today, clock, to] of meetings)
  test(name, () => expect(meetingsToCome(classFile, groups, today as Day, clock, () => 80).map((m) => m.sitting)).toEqual(to));
