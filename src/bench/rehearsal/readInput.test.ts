// What the chip reads. Expected: ATmega328P data sheet, table 29-1 (0.3 V_CC, 0.6 V_CC, 1 µA, pull-up 20–50 kΩ) and the
// converter's formula code = floor(V · 1024 / V_CC); dividers by Ohm's law.
import { expect, test } from "vitest";
import { makeBuild } from "./build.ts";
import { smallLesson } from "./lesson.fixture.ts";
import { converterCode, judgeLevel, judgeNumber } from "./readInput.ts";
import { setTable, type TableState } from "./table.ts";

const nothing = "void setup() {} void loop() {}";
const step = "{ at: 1s, expect: { board: running } }";

const state = (drives: string, more: Partial<TableState> = {}): TableState => ({
  drives,
  states: new Map(),
  doing: new Map(),
  supplyOn: true,
  limited: false,
  ...more,
});

function tableOf(parts: string, nets: string) {
  const { build } = makeBuild(smallLesson(parts, nets, step, nothing));
  if (!build) throw new Error("no build");
  return setTable(build);
}

const key = () => tableOf("B1: { part: button }", "board.D2 B1.1\n B1.2 board.GND");
const pressed = new Map([["B1", { pressed: true }]]);

const levels: [name: string, drives: string, isPressed: boolean, level: 0 | 1 | null][] = [
  ["with the pull-up a key that is up reads high", "u", false, 1],
  ["with the pull-up a key that is down reads low", "u", true, 0],
  ["without the pull-up a key that is up floats", "i", false, null],
  ["without the pull-up a key that is down reads low", "i", true, 0],
];
for (const [name, drives, isPressed, level] of levels)
  test(name, () => expect(judgeLevel(key(), state(drives, isPressed ? { states: pressed } : {}), "D2")).toBe(level));

test("a pin that nothing is wired to floats", () => expect(judgeLevel(key(), state("u"), "D7")).toBeNull());

/** The lower resistor of a divider from 5V with 10 kΩ above: its share of the supply is R / (R + 10 kΩ). */
const dividers: [ohms: string, level: 0 | 1 | null, why: string][] = [
  ["2k2", 0, "0.18"],
  ["3k9", 0, "0.28"],
  ["4k7", null, "0.32: between the levels"],
  ["10k", null, "0.50: between the levels"],
  ["13k", null, "0.565: between the levels"],
  ["18k", 1, "0.64"],
  ["100k", 1, "0.91"],
];
for (const [ohms, level, why] of dividers)
  test(`a divider of 10 kΩ and ${ohms} reads ${level} (${why})`, () => {
    const table = tableOf(
      `R1: { part: resistor, ohms: 10k }\n R2: { part: resistor, ohms: ${ohms} }`,
      "board.5V R1.1\n R1.2 R2.1 board.D4\n R2.2 board.GND",
    );
    expect(judgeLevel(table, state("i"), "D4")).toBe(level);
  });

test("1 µA of leakage through 3.9 MΩ decides what is read: 5 V less 3.9 V is no high", () => {
  const pulled = (ohms: string) => tableOf(`R1: { part: resistor, ohms: ${ohms} }`, "board.5V R1.1\n R1.2 board.D4");
  expect(judgeLevel(pulled("3.9M"), state("i"), "D4")).toBeNull();
  // 1 µA · 1 MΩ is 1 V: 4 V are still above 0.6 · 5 V.
  expect(judgeLevel(pulled("1M"), state("i"), "D4")).toBe(1);
});

const codes: [volts: number, code: number][] = [
  [0, 0],
  [2.5, 512],
  [1.0, 204],
  [4.999, 1023],
  [5.0, 1023],
  [-0.2, 0],
  [5.4, 1023],
];
for (const [volts, code] of codes) test(`${volts} V of 5 V is ${code}`, () => expect(converterCode(volts, 5)).toBe(code));

test("a divider is read as its share of 1024, whatever the supply has", () => {
  for (const [lower, code] of [
    ["10k", 512],
    ["1k", Math.floor((1 / 11) * 1024)],
    ["22k", Math.floor((22 / 32) * 1024)],
  ] as const) {
    const table = tableOf(
      `R1: { part: resistor, ohms: 10k }\n R2: { part: resistor, ohms: ${lower} }`,
      "board.5V R1.1\n R1.2 R2.1 board.A0\n R2.2 board.GND",
    );
    expect(judgeNumber(table, state("i"), "A0")).toBe(code);
  }
});

test("an analog input that hangs on nothing is undetermined", () => {
  const table = tableOf("R1: { part: resistor, ohms: 10k }", "R1.1 board.A0");
  expect(judgeNumber(table, state("i"), "A0")).toBeNull();
  expect(judgeNumber(table, state("i"), "A3")).toBeNull();
});

test("two outputs that fight read what their resistances make of it: neither", () => {
  const table = tableOf("R1: { part: resistor, ohms: 10k }", "board.D4 board.D5 R1.1\n R1.2 board.GND");
  expect(judgeLevel(table, state("10"), "D4")).toBeNull();
});
