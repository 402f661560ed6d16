// The board's side of a circuit against the same circuit solved by halving.
//
// The expected currents are found here, independently of the solver: the LED's equation I = IS·(exp((V − I·RS)/(N·VT)) − 1) with
// VT = 25.8649 mV (kT/q at 27 °C), in a loop with the pin, the resistor and the supply, by bisection.
import { expect, test } from "vitest";
import { boardFacts, ledColour } from "../parts/index.ts";
import { makeBuild } from "./build.ts";
import { smallLesson } from "./lesson.fixture.ts";
import { setTable, type TableState } from "./table.ts";

const thermalVolts = 0.025864917;

/** V across an LED that carries this current. */
function ledVolts(amps: number, colour: string): number {
  const { saturationAmps, emission, seriesOhms } = ledColour(colour);
  return emission * thermalVolts * Math.log(amps / saturationAmps + 1) + amps * seriesOhms;
}

/** A through an LED behind `ohms` on a source, by halving. */
function ledAmps(sourceVolts: number, ohms: number, colour: string): number {
  let [low, high] = [0, sourceVolts / ohms];
  for (let i = 0; i < 200; i += 1) {
    const middle = (low + high) / 2;
    if (middle * ohms + ledVolts(middle, colour) < sourceVolts) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

const lamp = (colour: string, ohms: string) =>
  smallLesson(
    `R1: { part: resistor, ohms: ${ohms} }
     LED1: { part: led, colour: ${colour} }`,
    `board.D9 R1.1
     R1.2 LED1.anode
     LED1.cathode board.GND`,
    "{ at: 1s, expect: { LED1: lit } }",
    "void setup() {} void loop() {}",
  );

const state = (drives: string, more: Partial<TableState> = {}): TableState => ({
  drives,
  states: new Map(),
  doing: new Map(),
  supplyOn: true,
  limited: false,
  ...more,
});

/** Cable, fuse and port of almost nothing: what is left is the pin. */
const stiff = { cableOhms: 1e-6, fuseOhms: 1e-6 };

const lamps: [colour: string, ohms: string][] = [
  ["red", "220"],
  ["red", "330"],
  ["red", "470"],
  ["red", "1k"],
  ["red", "22"],
  ["yellow", "220"],
  ["green", "220"],
  ["blue", "220"],
  ["white", "1k"],
];
for (const [colour, ohms] of lamps) {
  test(`${colour} LED with ${ohms} Ω on a pin`, () => {
    const { build } = makeBuild(lamp(colour, ohms), { circumstances: stiff });
    if (!build) throw new Error("no build");
    const value = ohms === "1k" ? 1000 : Number(ohms);
    // Thevenin: the port's 0.1 Ω with the board's own 5 V / 45 mA beside the LED.
    const own = boardFacts.supplyVolts.value / boardFacts.ownAmps.value;
    const port = build.supply.facts.ohms.value + 2e-6;
    const source = (5 * own) / (own + port);
    const inside = (own * port) / (own + port);
    const expected = ledAmps(source, inside + 25 + value, colour);
    const point = setTable(build).point(state("1"));
    expect(point.amps("LED1")).toBeCloseTo(expected, 8);
    expect(point.pinAmps("D9")).toBeCloseTo(expected, 8);
    expect(setTable(build).point(state("0")).amps("LED1")).toBeCloseTo(0, 9);
    expect(setTable(build).point(state("i")).amps("LED1")).toBeCloseTo(0, 9);
  });
}

test("25 Ω of pin, 220 Ω and a red LED on 5 V carry 12.6 mA", () => {
  // The figure that the LED's parameters were published with; the loop above with an ideal 5 V.
  expect(ledAmps(5, 245, "red")).toBeCloseTo(0.0126, 4);
});

test("cable, fuse and port are lost on the way: U = 5 V − I · (0.1 + 0.546 + 0.4) Ω", () => {
  const { build } = makeBuild(lamp("red", "220"));
  if (!build) throw new Error("no build");
  const point = setTable(build).point(state("1"));
  expect(point.rail).toBeCloseTo(5 - point.supplyAmps * (0.1 + 0.546 + 0.4), 9);
  expect(point.supplyAmps).toBeCloseTo(point.pinAmps("D9") + point.rail / (5 / 0.045), 9);
});

test("a 9 V block reaches the board through diode and regulator: 5 V, and what it gives is what is used and 6 mA", () => {
  const { build } = makeBuild(lamp("red", "220"), { supply: "battery-9v" });
  if (!build) throw new Error("no build");
  const point = setTable(build).point(state("1"));
  expect(point.rail).toBeCloseTo(5, 2);
  expect(point.supplyAmps).toBeCloseTo(point.pinAmps("D9") + point.rail / (5 / 0.045) + 0.006, 6);
  expect(point.volts("board.VIN")).toBeCloseTo(9 - 1.7 * point.supplyAmps, 9);
});

test("four alkaline cells at VIN leave 6 V − 1.2 V − 0.7 V, less their own drop", () => {
  const { build } = makeBuild(lamp("red", "220"), { supply: "battery-4aa" });
  if (!build) throw new Error("no build");
  const point = setTable(build).point(state("0"));
  expect(point.rail).toBeCloseTo(6 - 1 * point.supplyAmps - 1.9, 2);
});

test("a port that keeps to its 500 mA folds back: 5 Ω across the rail get 0.5 A less what the board takes", () => {
  const lesson = smallLesson(
    "R1: { part: resistor, ohms: 5, watts: 10 }",
    `board.5V R1.1
     R1.2 board.GND`,
    "{ at: 1s, expect: { board: running } }",
    "void setup() {} void loop() {}",
  );
  const { build } = makeBuild(lesson);
  if (!build) throw new Error("no build");
  const table = setTable(build);
  const own = 5 / 0.045;
  const load = (5 * own) / (5 + own);
  expect(table.point(state("", { limited: true })).rail).toBeCloseTo(0.5 * load, 6);
  // The same port, if it gives more than it promises.
  expect(table.point(state("")).rail).toBeCloseTo((5 * load) / (load + 0.1 + 0.546 + 0.4), 6);
});

test("without supply everything is dark", () => {
  const { build } = makeBuild(lamp("red", "220"));
  if (!build) throw new Error("no build");
  const point = setTable(build).point(state("1", { supplyOn: false }));
  expect([point.on, point.rail, point.amps("LED1")]).toEqual([false, 0, 0]);
});
