// Joining a copy: the state from which it went its own way is found, and every clash can be settled either way.
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import type { Day } from "../../../base/index.ts";
import { mergeFiles } from "../../../school/changes/index.ts";
import { type ClassFile, readClassFile, writeClassFile } from "../../../school/file/index.ts";
import { commonBase, linesApart } from "./commonBase.ts";
import { settleClash } from "./settleClash.ts";

const demo = readClassFile("harbour.json", readFileSync("demo/harbour.json", "utf8")).value as ClassFile;
const [first, second] = demo.classes as [ClassFile["classes"][number], ClassFile["classes"][number]];
const withFirst = (change: Partial<ClassFile["classes"][number]>): ClassFile => ({
  ...demo,
  classes: [{ ...first, ...change }, second],
});
const renamed = (name: string) => withFirst({ pupils: first.pupils.map((p) => (p.id === "p01" ? { ...p, name } : p)) });
const moved = (date: string) =>
  withFirst({ lessons: first.lessons.map((l) => (l.lesson === "barrier" ? { ...l, date: date as Day } : l)) });
const boxed = (count: number) => ({ ...demo, kits: demo.kits.map((k) => (k.kit === "harbour-basic" ? { ...k, count } : k)) });

const clashes: [name: string, mine: ClassFile, theirs: ClassFile][] = [
  ["a sum", { ...demo, budget: 20_000 }, { ...demo, budget: null }],
  ["the room", { ...demo, room: { ...demo.room, sockets: 8 } }, { ...demo, room: { ...demo.room, sockets: 10 } }],
  ["a pupil's name", renamed("A"), renamed("B")],
  ["a day", moved("2027-03-16"), moved("2027-03-23")],
  ["a count of boxes", boxed(7), boxed(8)],
  [
    "a new line of stock",
    { ...demo, stock: [...demo.stock, { item: "servo", count: 1, box: "x" }] },
    { ...demo, stock: [...demo.stock, { item: "servo", count: 2, box: "x" }] },
  ],
  [
    "a line taken away here and changed there",
    { ...demo, stock: demo.stock.slice(1) },
    { ...demo, stock: demo.stock.map((s, n) => (n === 0 ? { ...s, count: 99 } : s)) },
  ],
  [
    "a shop",
    { ...demo, suppliers: demo.suppliers.map((s, n) => (n === 0 ? { ...s, days: 1 } : s)) },
    { ...demo, suppliers: demo.suppliers.map((s, n) => (n === 0 ? { ...s, days: 2 } : s)) },
  ],
];
for (const [name, mine, theirs] of clashes)
  test(`${name}: one clash; settled either way it is the copy that was chosen`, () => {
    const merged = mergeFiles(demo, mine, theirs);
    expect(merged.clashes).toHaveLength(1);
    // Only this differs, so the whole file must then be that copy.
    for (const [choice, copy] of [
      ["mine", mine],
      ["theirs", theirs],
    ] as const) {
      const settled = settleClash(merged.value, merged.clashes[0]!, choice);
      expect(settled && sortedText(settled)).toBe(sortedText(copy));
    }
  });

/** Entries that were added stand at the end, so lines are compared without their order. */
const sortedText = (file: ClassFile) => writeClassFile(file).replaceAll(",\n", "\n").split("\n").sort().join("\n");

test("a place that is not there any more settles nothing", () =>
  expect(settleClash(demo, { path: ["classes", "9z", "name"], base: "a", mine: "b", theirs: "c" }, "mine")).toBe(null));

const states = (files: readonly ClassFile[]) => files.map(writeClassFile);
const bases: [name: string, copy: ClassFile, kept: readonly ClassFile[], base: number | null][] = [
  ["no state is kept", demo, [], null],
  ["the copy was not changed", demo, [renamed("A"), demo], 1],
  // We renamed a pupil since; the colleague changed the boxes of the state before.
  ["both went on", boxed(8), [renamed("A"), demo], 1],
  [
    "we did much since, they little",
    boxed(8),
    [{ ...renamed("A"), budget: 1, stock: [] }, renamed("A"), demo, { ...demo, log: [] }],
    2,
  ],
  ["equally near: the older", boxed(8), [demo, demo], 1],
  ["both changed the same thing: the state before, so that it is asked", boxed(8), [boxed(7), demo], 1],
];
for (const [name, copy, kept, base] of bases) test(name, () => expect(commonBase(writeClassFile(copy), states(kept))).toBe(base));

test("lines apart are counted on both sides, and as often as they stand there", () => {
  expect(linesApart("a\nb\nb", "b\nc")).toBe(3);
  expect(linesApart("a\nb", "b\na")).toBe(0);
});
