// The twelve lessons of the harbour: ready with what they ask for, and rightly something else with what cannot carry them.
//
// A small transistor is burnt by a motor: the motor's start takes (5 V − 0.2 V) / 12 Ω = 0.4 A, a BC547 bears 0.1 A (its data sheet).
// A port of 500 mA does not carry the start of a servo, 0.7 A (data pages of 9 g servos). Four half-empty cells hold 4.4 V, less
// 0.9 V in the driver: 3.5 V at a coil of 5 V.
import { readdirSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { finish } from "../../base/index.ts";
import { ourLesson, smallLesson } from "./lesson.fixture.ts";
import { rehearse } from "./rehearse.ts";
import { rehearseOnce } from "./rehearseOnce.ts";

/** What each asks for where it is not a laptop's port of 500 mA. */
const supplies: Readonly<Record<string, string>> = { barrier: "adapter 2000mA" };
const harbour = [
  "barrier",
  "crane",
  "dimmer",
  "ferry-fan",
  "foghorn",
  "lighthouse",
  "quay-lamp-at-dusk",
  "quay-lights",
  "signal-lamp",
  "tide-gauge",
  "water-temperature",
  "whole-harbour",
];

test("these twelve stand in lessons/", () => {
  const folders = readdirSync(new URL("../../../lessons", import.meta.url)).filter((name) => !name.includes("."));
  expect(folders.sort()).toEqual(harbour);
});
for (const id of harbour)
  test(`${id} is ready`, () => {
    const supply = supplies[id];
    const result = rehearseOnce(ourLesson(id), supply === undefined ? {} : { supply });
    expect({ verdict: result.verdict, failed: result.checks.filter((c) => !c.passed), unsafe: result.hazards }).toEqual({
      verdict: "ready",
      failed: [],
      unsafe: result.hazards.filter((h) => h.severity === "caution"),
    });
  });

const others: [what: string, lesson: string, options: Parameters<typeof rehearseOnce>[1], verdict: string, hazard?: string][] = [
  ["a small transistor at the motor", "ferry-fan", { items: new Map([["Q1", "npn BC547"]]) }, "unsafe", "transistor-overcurrent"],
  ["a port of 500 mA for the servo", "whole-harbour", { supply: "usb-port 500mA" }, "needs another supply"],
  ["a resistor of 10 Ω before a lamp", "tide-gauge", { items: new Map([["R3", "resistor 10"]]) }, "unsafe"],
  ["a resistor of 100 kΩ before a lamp", "tide-gauge", { items: new Map([["R2", "resistor 100k"]]) }, "fails its rehearsal"],
  ["a photoresistor's divider with 220 Ω", "whole-harbour", { items: new Map([["R2", "resistor 220"]]) }, "fails its rehearsal"],
];
for (const [what, lesson, options, verdict, hazard] of others)
  test(`${lesson} with ${what}: ${verdict}`, () => {
    const result = rehearseOnce(ourLesson(lesson), options);
    expect(result.verdict).toBe(verdict);
    if (hazard) expect(result.hazards.map((h) => h.code)).toContain(hazard);
  });

test("a small diode across the motor is told: it catches the current of a start, 0.4 A, and bears 0.15 A (data sheet 1N4148)", () => {
  const hazards = (item: string) =>
    rehearseOnce(ourLesson("ferry-fan"), { items: new Map([["D1", item]]) }).hazards.filter((h) => h.part === "D1");
  expect(hazards("diode 1N4148").map((h) => [h.code, h.severity, h.limit])).toEqual([["part-overcurrent", "caution", 0.15]]);
  expect(hazards("diode 1N4148")[0]!.value).toBeCloseTo(0.38, 1);
  expect(hazards("diode 1N4007")).toEqual([]);
});

describe("a stepper behind its driver", () => {
  const parts = `
    U1: { part: ULN2003A }
    M1: { part: stepper }
    BAT1: { part: battery-4aa, type: nimh }`;
  const nets = `
    board.D8 U1.IN1
    board.D9 U1.IN2
    board.D10 U1.IN3
    board.D11 U1.IN4
    U1.OUT1 M1.a
    U1.OUT2 M1.b
    U1.OUT3 M1.c
    U1.OUT4 M1.d
    BAT1.plus M1.common U1.COM
    U1.GND BAT1.minus board.GND`;
  const program = (order: string, wait: string) => `
    const int pins[] = {8, 9, 10, 11};
    const int order[] = {${order}};
    void setup() { for (int i = 0; i < 4; i++) pinMode(pins[i], OUTPUT); }
    void loop() {
      for (int s = 0; s < 4; s++) {
        for (int c = 0; c < 4; c++) digitalWrite(pins[c], c == order[s] || c == (order[s] + 1) % 4);
        ${wait}
      }
    }`;
  const seen = (order: string, wait: string, wiring = nets) => {
    const lesson = smallLesson(parts, wiring, "{ from: 200ms, to: 1s, expect: { M1: turning } }", program(order, wait));
    return finish(rehearse(lesson, { corners: false, margins: false })).checks[0]!.seen;
  };
  test("3 ms a step: it turns", () => expect(seen("0, 1, 2, 3", "delay(3);")).toBe("turning"));
  test("the other order: it turns back", () => expect(seen("3, 2, 1, 0", "delay(3);")).toBe("turning back"));
  test("1 ms a step: it hums and stands", () => expect(seen("0, 1, 2, 3", "delay(1);")).toBe("stalled"));
  test("the coils' driver without the batteries' GND: nothing turns", () =>
    expect(seen("0, 1, 2, 3", "delay(3);", nets.replace("U1.GND BAT1.minus board.GND", "U1.GND board.GND"))).not.toBe("turning"));
});
