// The demo holds what its README promises, and is right down to the last warning.
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { weekday } from "../../src/base/index.ts";
import { type Kit, readClassFile, readKit } from "../../src/school/file/index.ts";

const root = new URL("../../", import.meta.url);
const text = (path: string) => readFileSync(new URL(path, root), "utf8");
const kits = new Map<string, Kit>();
for (const id of ["harbour-basic", "harbour-plain"]) kits.set(id, readKit(`${id}.yaml`, text(`kits/${id}.yaml`)).value!);
/** Minutes as the lessons' own files say. */
const lessonMinutes = new Map(
  ["lighthouse", "signal-lamp", "quay-lamp-at-dusk", "barrier"].map((id) => [
    id,
    Number(/^minutes: (\d+)$/m.exec(text(`lessons/${id}/lesson.yaml`))?.[1]),
  ]),
);
const { value: demo, problems } = readClassFile("harbour.json", text("demo/harbour.json"), { kits, lessonMinutes });

test("it is read without a word", () => expect(problems).toEqual([]));

test("it says that it is invented", () => expect(demo?.about).toMatch(/^Invented/));

test("thirty pupils and twenty-four share the sets, no name twice", () => {
  expect(demo?.classes.map((group) => [group.id, group.pupils.length, group.teamSize])).toEqual([
    ["7b", 30, 3],
    ["7c", 24, 3],
  ]);
  const names = demo?.classes.flatMap((group) => group.pupils.map((pupil) => pupil.name)) ?? [];
  expect(new Set(names).size).toBe(54);
});

test("both classes have the four lessons, on school days, never at the same time", () => {
  const dates = demo?.classes.flatMap((group) => group.lessons) ?? [];
  for (const group of demo?.classes ?? [])
    expect(group.lessons.map((date) => date.lesson)).toEqual(["lighthouse", "signal-lamp", "quay-lamp-at-dusk", "barrier"]);
  expect(dates.every(({ date }) => date >= "2027-01-01" && date <= "2027-03-31" && weekday(date) <= 5)).toBe(true);
  expect(new Set(dates.map(({ date }) => date)).size).toBe(8);
});

test("the power cut falls into one lesson", () => {
  const hit = (demo?.powerCuts ?? []).flatMap((cut) =>
    (demo?.classes ?? []).flatMap((group) =>
      group.lessons
        .filter((l) => l.date === cut.date && l.start < cut.to && cut.from < l.start + (lessonMinutes.get(l.lesson) ?? 0))
        .map((l) => `${group.id} ${l.lesson}`),
    ),
  );
  expect(hit).toEqual(["7c barrier"]);
});

/** Counted by hand from the two kits, the loose stock and the movements. */
const inTheCupboard: [item: string, count: number][] = [
  ["resistor 220", 6 * 3 - 12],
  ["resistor 330", 4 * 10],
  ["photoresistor", 6 + 4 - 4 + 1],
  ["led red", 6 * 5 + 4 * 3 + 12 - 6],
  ["servo", 10],
];
test("ten teams find six resistors of 220 Ω, and seven photoresistors", () => {
  const there = new Map<string, number>();
  const add = (item: string, count: number) => there.set(item, (there.get(item) ?? 0) + count);
  for (const { kit, count } of demo?.kits ?? [])
    for (const [item, each] of kits.get(kit)?.contents ?? []) add(item, each * count);
  for (const { item, count } of demo?.stock ?? []) add(item, count);
  for (const { item, change } of demo?.movements ?? []) add(item, change);
  for (const [item, count] of inTheCupboard) expect([item, there.get(item)]).toEqual([item, count]);
  expect(kits.get("harbour-plain")?.contents.has("resistor 220")).toBe(false);
});

test("devices are as the README says", () => {
  expect(demo?.boards.filter((board) => board.works).length).toBe(10);
  expect(demo?.boards.flatMap((board) => board.deadPins)).toEqual(["D5"]);
  expect(demo?.cables.filter((cable) => cable.works).length).toBe(10);
  expect(demo?.computers.length).toBe(11);
  expect(demo?.computers.every((computer) => computer.usbMilliamps === 500)).toBe(true);
  expect(demo?.supplies.some(({ item }) => item.startsWith("adapter"))).toBe(false);
  expect(demo?.decisions).toEqual([]);
});
