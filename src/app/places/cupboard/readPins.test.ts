// Dead pins as people type them.
import { expect, test } from "vitest";
import { boardLegs } from "../../../bench/parts/index.ts";
import { readPins } from "./readPins.ts";

const cases: [typed: string, pins: string[] | null][] = [
  ["", []],
  ["D5", ["D5"]],
  ["d5, a0", ["D5", "A0"]],
  ["5 13", ["D5", "D13"]],
  ["A0;D13;D2", ["D2", "D13", "A0"]],
  ["D5 D5", ["D5"]],
  ["D14", null],
  ["A6", null],
  ["GND", null],
  ["<b>", null],
];
for (const [typed, pins] of cases) test(`“${typed}”`, () => expect(readPins(typed)).toEqual(pins));

test("every pin of the board is read", () => {
  const pins = boardLegs.filter((leg) => /^[DA]\d+$/.test(leg));
  expect(pins.length).toBeGreaterThanOrEqual(20);
  expect(readPins(pins.join(" "))?.sort()).toEqual([...pins].sort());
});
