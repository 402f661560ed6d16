// How far a value may go: edges by formula. A divider's edge follows from the share that the program asks for, an LED's from the
// current at which it looks too bright or only dim.
import { describe, expect, test } from "vitest";
import { finish } from "../../base/index.ts";
import type { Lesson } from "../lesson/index.ts";
import { ledColour } from "../parts/index.ts";
import { smallLesson } from "./lesson.fixture.ts";
import { rehearse } from "./rehearse.ts";

const marginOf = (lesson: Lesson, part: string) =>
  finish(rehearse(lesson, { corners: false, margins: true })).margins.find((m) => m.part === part)!;
/** Within the 1 % to which an edge is sought, and on the failing side of it. */
const expectEdge = (found: number | null, share: number, side: "down" | "up") => {
  expect(found).not.toBeNull();
  const ratio = (found ?? 0) / share;
  expect(side === "up" ? ratio : 1 / ratio).toBeGreaterThan(1 - 0.003);
  expect(side === "up" ? ratio : 1 / ratio).toBeLessThan(1.013);
};

describe("a divider whose voltage has to be 2.5 V within 5 %", () => {
  // U = 5 V · R2 / (R1 + R2): R1 / R2 between 5 / 2.625 − 1 and 5 / 2.375 − 1. A supply of 5 V behind 1 mΩ.
  const lesson = smallLesson(
    `PS1: { part: adapter, volts: 5, milliamps: 20000, ohms: 1m }
     R1: { part: resistor, ohms: 1k }
     R2: { part: resistor, ohms: 1k }`,
    "PS1.plus board.5V R1.1\n R1.2 R2.1\n R2.2 PS1.minus board.GND",
    "{ at: 500ms, expect: { volts: { at: R1.2, is: 2.5, tolerance: 5% } } }",
    "void setup() {} void loop() { delay(10); }",
  );
  const [least, most] = [5 / 2.625 - 1, 5 / 2.375 - 1];
  test("the upper resistor", () => {
    const margin = marginOf(lesson, "R1");
    expectEdge(margin.down, least, "down");
    expectEdge(margin.up, most, "up");
    expect([margin.is, margin.unit]).toEqual([1000, "Ω"]);
  });
  test("the lower resistor: the inverse shares", () => {
    const margin = marginOf(lesson, "R2");
    expectEdge(margin.down, 1 / most, "down");
    expectEdge(margin.up, 1 / least, "up");
  });
});

describe("a divider that a program compares with a number", () => {
  // Code = floor(1024 · R2 / (R1 + R2)): 512 at equal resistors; the lamp is lit from `from` on, so R1 / R2 < 1024 / from − 1.
  for (const from of [200, 300, 450])
    test(`lit from ${from} on`, () => {
      const lesson = smallLesson(
        `R1: { part: resistor, ohms: 1k }
         R2: { part: resistor, ohms: 1k }
         R3: { part: resistor, ohms: 330 }
         LED1: { part: led, colour: red }`,
        "board.5V R1.1\n R1.2 R2.1 board.A0\n board.D9 R3.1\n R3.2 LED1.anode\n R2.2 LED1.cathode board.GND",
        "{ at: 500ms, expect: { LED1: lit } }",
        `void setup() { pinMode(9, OUTPUT); } void loop() { digitalWrite(9, analogRead(A0) >= ${from}); delay(10); }`,
      );
      expectEdge(marginOf(lesson, "R1").up, 1024 / from - 1, "up");
      expectEdge(marginOf(lesson, "R2").down, 1 / (1024 / from - 1), "down");
    });
});

test("an LED's resistor: too bright from 20 mA on, dim below 1 mA", () => {
  const { saturationAmps, emission, seriesOhms } = ledColour("red");
  const ohmsAt = (amps: number) => (5 - emission * 0.025864917 * Math.log(amps / saturationAmps + 1)) / amps - seriesOhms;
  const lesson = smallLesson(
    `PS1: { part: adapter, volts: 5, milliamps: 20000, ohms: 1m }
     R1: { part: resistor, ohms: 680 }
     LED1: { part: led, colour: red }`,
    "PS1.plus board.5V R1.1\n R1.2 LED1.anode\n LED1.cathode PS1.minus board.GND",
    "{ at: 500ms, expect: { LED1: lit } }",
    "void setup() {} void loop() { delay(10); }",
  );
  const margin = marginOf(lesson, "R1");
  expectEdge(margin.down, ohmsAt(0.02) / 680, "down");
  expectEdge(margin.up, ohmsAt(0.001) / 680, "up");
});

test("what does not matter may go ten times either way", () => {
  const lesson = smallLesson(
    "B1: { part: button }\n R1: { part: resistor, ohms: 10k }",
    "board.D2 B1.1 R1.1\n board.5V B1.2\n R1.2 board.GND",
    "{ at: 500ms, expect: { board: running } }",
    "void setup() {} void loop() { delay(10); }",
  );
  expect(marginOf(lesson, "R1")).toMatchObject({ down: null, up: null });
});
