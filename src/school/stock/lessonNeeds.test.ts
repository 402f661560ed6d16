// What one team needs: parts grouped by item, and what any circuit needs. Wire counts are worked out by hand beside each net.
import { expect, test } from "vitest";
import type { Lesson, LessonPart, Net } from "../../bench/lesson/index.ts";
import { lessonNeeds, wiresOfNet } from "./lessonNeeds.ts";

const place = { file: "lesson.yaml", line: 1, column: 1 };

function part(name: string, kind: string, item: string = kind): LessonPart {
  return { name, kind, values: {}, mayBe: [], item, place };
}

function net(...legs: string[]): Net {
  return { place, legs: legs.map((leg) => ({ part: leg.split(".")[0]!, leg: leg.split(".")[1]! })) };
}

function lesson(parts: readonly LessonPart[], nets: readonly Net[]): Lesson {
  return {
    format: "benchday-lesson/1",
    id: "test",
    minutes: 40,
    needs: [],
    parts: new Map([part("board", "board"), ...parts].map((p) => [p.name, p])),
    nets,
    stimuli: [],
    checks: [],
    tools: [],
    plan: [],
    media: [],
    program: { file: "program.cpp", text: "" },
    texts: new Map(),
  };
}

const duskLamp = lesson(
  [
    part("LDR1", "photoresistor"),
    part("R1", "resistor", "resistor 10k"),
    part("R2", "resistor", "resistor 220"),
    part("R3", "resistor", "resistor 220"),
    part("LED1", "led", "led yellow"),
  ],
  [
    net("board.5V", "LDR1.1"),
    net("LDR1.2", "R1.1", "board.A0"),
    net("R1.2", "LED1.cathode", "board.GND"),
    net("board.D9", "R2.1"),
    net("R2.2", "R3.1"),
    net("R3.2", "LED1.anode"),
  ],
);

test("parts of one item are one need; board, cable, breadboard, wires, computer and supply follow", () => {
  expect(lessonNeeds(duskLamp).map(({ item, each, for: names }) => [item, each, names])).toEqual([
    ["photoresistor", 1, ["LDR1"]],
    ["resistor 10k", 1, ["R1"]],
    ["resistor 220", 2, ["R2", "R3"]],
    ["led yellow", 1, ["LED1"]],
    ["board", 1, ["board"]],
    ["usb-cable", 1, ["usb-cable"]],
    ["breadboard", 1, ["breadboard"]],
    // 5V 1+1, A0 1+2−1, GND 1+2, D9 1, R2–R3 1, R3–LED 1.
    ["wire", 10, ["wire"]],
    ["computer", 1, ["computer"]],
    ["usb-port 500mA", 1, ["supply"]],
  ]);
});

test("the board's need names the pins of the lesson", () =>
  expect(lessonNeeds(duskLamp).find((n) => n.item === "board")?.pins).toEqual(["5V", "A0", "D9", "GND"]));

test("parts whose substitutes differ stay apart", () => {
  const needs = lessonNeeds(duskLamp, { substitutes: new Map([["R3", ["resistor 330"]]]) });
  expect(needs.filter((n) => n.item === "resistor 220").map((n) => [n.for, n.substitutes])).toEqual([
    [["R2"], []],
    [["R3"], ["resistor 330"]],
  ]);
});

test("parts with the same substitutes stay together", () => {
  const needs = lessonNeeds(duskLamp, {
    substitutes: new Map([
      ["R2", ["resistor 330"]],
      ["R3", ["resistor 330"]],
    ]),
  });
  expect(needs.find((n) => n.item === "resistor 220")).toMatchObject({
    for: ["R2", "R3"],
    each: 2,
    substitutes: ["resistor 330"],
  });
});

test("two teams at one computer need half a computer each, and a port each", () => {
  const needs = lessonNeeds(duskLamp, { teamsPerComputer: 2 });
  expect(needs.find((n) => n.item === "computer")?.each).toBe(0.5);
  expect(needs.find((n) => n.item === "usb-port 500mA")?.each).toBe(1);
});

test("another supply, with what may stand in for it", () => {
  const needs = lessonNeeds(duskLamp, { supply: "power-bank", supplySubstitutes: ["usb-port 500mA"] });
  expect(needs.at(-1)).toEqual({ for: ["supply"], item: "power-bank", each: 1, substitutes: ["usb-port 500mA"] });
});

test("a battery in the circuit that feeds the board is its supply", () => {
  const withBattery = lesson(
    [part("BAT1", "battery-9v"), part("M1", "dc-motor")],
    [net("BAT1.plus", "board.VIN"), net("BAT1.minus", "board.GND")],
  );
  expect(lessonNeeds(withBattery).map((n) => n.item)).not.toContain("usb-port 500mA");
  expect(lessonNeeds(withBattery)[0]).toMatchObject({ item: "battery-9v", for: ["BAT1"] });
});

test("a battery that feeds only a motor leaves the board its own supply", () => {
  const own = lesson(
    [part("BAT1", "battery-4aa"), part("M1", "dc-motor")],
    [net("BAT1.plus", "M1.1"), net("BAT1.minus", "M1.2", "board.GND")],
  );
  expect(lessonNeeds(own).map((n) => n.item)).toContain("usb-port 500mA");
});

const wires: [why: string, net: Net, count: number][] = [
  ["a pin to one leg", net("board.D9", "R1.1"), 1],
  ["two legs in two rows", net("R1.2", "LED1.anode"), 1],
  ["a pin and two legs", net("board.A0", "R1.1", "LDR1.2"), 2],
  ["a rail: one to the pin, one to each leg", net("board.GND", "R1.1", "B1.2", "LED1.cathode"), 4],
  ["two pins of one net", net("board.D2", "board.D3", "B1.1"), 2],
  ["pins only", net("board.5V", "board.AREF"), 1],
  ["a leg alone", net("R1.1"), 0],
  ["a rail with two pins", net("board.5V", "board.VIN", "LDR1.1"), 3],
];
for (const [why, one, count] of wires) test(`wires: ${why}`, () => expect(wiresOfNet(one, "board")).toBe(count));
