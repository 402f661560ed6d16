// Substitutes are proven by rehearsal and by nothing else: the lighthouse with resistors of many values.
//
// What must come out follows from Ohm's law with the catalogue's red LED (2.00 V at 20 mA, 1.70 V at 2 mA) and the pin's
// 25 Ω: 330 Ω gives about 9 mA, clearly lit; 10 kΩ gives 0.3 mA, dim; 22 Ω gives over 40 mA, the pin's absolute maximum.
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { finish } from "../../base/index.ts";
import { readLesson } from "../../bench/lesson/index.ts";
import type { ClassFile } from "../file/index.ts";
import { proveItems } from "./proveItems.ts";

const root = new URL("../../..", import.meta.url).pathname;
function lesson(id: string) {
  const folder = join(root, "lessons", id);
  const read = readLesson({
    folder: `lessons/${id}`,
    read: (path) => readFileSync(join(folder, path), "utf8"),
    list: (path) => readdirSync(join(folder, path)),
  });
  if (read.value === null) throw new Error(JSON.stringify(read.problems[0]));
  return read.value;
}
const noDecisions = { decisions: [] } as unknown as ClassFile;
const remembering = () => {
  const kept = new Map<string, unknown>();
  return {
    remember: <V>(key: string, compute: () => V): V => {
      if (!kept.has(key)) kept.set(key, compute());
      return kept.get(key) as V;
    },
  };
};
const proven = (id: string, items: string[], classFile = noDecisions) =>
  finish(proveItems(lesson(id), items, "usb-port 500mA", classFile, remembering(), 1, { done: 0, total: 1, doing: "rehearse" }));

test("a value that passes stands in, the nearest first; one that is too weak or burns the pin does not", () => {
  const { substitutes } = proven("lighthouse", ["resistor 22", "resistor 470", "resistor 330", "resistor 10k", "resistor 220"]);
  expect(substitutes.get("R1")).toEqual(["resistor 330", "resistor 470"]);
});
test("what the teacher settled comes first, if it passes", () => {
  const decided = (item: string) =>
    ({ decisions: [{ kind: "substitute", lesson: "lighthouse", part: "R1", item, date: "2027-01-01" }] }) as unknown as ClassFile;
  expect(proven("lighthouse", ["resistor 330", "resistor 470"], decided("resistor 470")).substitutes.get("R1")?.[0]).toBe(
    "resistor 470",
  );
  expect(proven("lighthouse", ["resistor 330"], decided("resistor 10k")).substitutes.get("R1")).toEqual(["resistor 330"]);
});
test("a lamp of another colour may stand in for the only lamp, but not where colours say something", () => {
  expect(proven("lighthouse", ["led green"]).substitutes.get("LED1")).toEqual(["led green"]);
  expect(proven("barrier", ["led yellow"]).substitutes.get("LED1")).toEqual([]);
});
