// What parts do electrically, against data sheets, published tables and formulas of their own.
import { expect, test } from "vitest";
import { type Element, type OperatingPoint, solveDc } from "../circuit/index.ts";
import { allValues, catalogue, findKind } from "./catalogue.ts";
import { ledColours } from "./ledColours.ts";
import type { PartState, PartValues } from "./partKind.ts";

/** Solves parts "name kind" between nodes, with further elements. */
function solve(
  parts: readonly [name: string, kind: string, nodes: Record<string, string>, values?: PartValues, state?: PartState][],
  more: readonly Element[] = [],
): OperatingPoint {
  const elements = parts.flatMap(([name, id, nodes, values = {}, state = {}]) => {
    const { kind, type } = findKind(id)!;
    const all = allValues(kind, type === null ? values : { type, ...values });
    const first = Object.fromEntries(Object.entries(kind.states).map(([s, spec]) => [s, spec.atFirst]));
    return kind.model(name, (leg) => nodes[leg] ?? `${name}.${leg}`, all, { ...first, ...state });
  });
  const outcome = solveDc({ elements: [...elements, ...more] });
  if (outcome.status !== "solved") throw new Error(JSON.stringify(outcome));
  return outcome.point;
}
const supply = (volts: number, node = "a"): Element => ({ kind: "voltageSource", id: "V", plus: node, minus: "0", volts });
const push = (amps: number, to: string): Element => ({ kind: "currentSource", id: `I${to}`, from: "0", to, amps });
const ohms = (id: string, a: string, b: string, value: number): Element => ({ kind: "resistor", id, a, b, ohms: value });

// V(I) of I = IS·(exp((V − I·RS)/(N·VT)) − 1), solved for V by hand: V = N·VT·ln(I/IS + 1) + I·RS.
const thermalVolts = 0.025865;
for (const [colour, led] of Object.entries(ledColours)) {
  const volts = (amps: number) => led.emission * thermalVolts * Math.log(amps / led.saturationAmps + 1) + amps * led.seriesOhms;
  const [at2, at20] = led.volts.value;
  test(`a ${colour} LED has ${at2} V at 2 mA and ${at20} V at 20 mA`, () => {
    // Half a unit of the last printed digit.
    expect(Math.abs(volts(0.002) - at2)).toBeLessThan(0.005);
    expect(Math.abs(volts(0.02) - at20)).toBeLessThan(0.005);
    const [name, type = "standard"] = colour.split(" ") as [string, string?];
    const point = solve([["D", "led", { anode: "a", cathode: "0" }, { colour: name, type }]], [push(0.02, "a")]);
    expect(Math.abs(point.volts("a") - volts(0.02))).toBeLessThan(1e-3);
  });
}

// mA on 5 V behind 220, 330, 470 Ω and 1 kΩ, computed with another program (Python) and rounded to 0.1 mA.
const ledCurrents: [colour: string, type: string, milliamps: [number, number, number, number]][] = [
  ["red", "standard", [13.9, 9.4, 6.7, 3.2]],
  ["yellow", "standard", [13.5, 9.2, 6.5, 3.1]],
  ["green", "standard", [13.3, 9.0, 6.4, 3.1]],
  ["green", "emerald", [9.3, 6.4, 4.7, 2.3]],
  ["blue", "standard", [9.2, 6.4, 4.6, 2.3]],
  ["ultraviolet", "standard", [8.2, 5.7, 4.1, 2.0]],
  ["infrared", "standard", [17.3, 11.6, 8.2, 3.9]],
];
for (const [colour, type, expected] of ledCurrents)
  test(`a ${colour} LED (${type}) on 5 V`, () => {
    for (const [i, value] of [220, 330, 470, 1000].entries()) {
      const point = solve(
        [
          ["R", "resistor", { "1": "a", "2": "b" }, { ohms: value }],
          ["D", "led", { anode: "b", cathode: "0" }, { colour, type }],
        ],
        [supply(5)],
      );
      expect(Math.abs(point.amps("D") * 1000 - expected[i]!)).toBeLessThan(0.055);
    }
  });

const drops: [part: string, amps: number, least: number, most: number, source: string][] = [
  ["1N4148", 0.01, 0.62, 1.0, "data sheets of the 1N4148: at most 1.0 V at 10 mA"],
  ["1N4007", 1, 0.7, 1.1, "data page of the 1N4007: at most 1.1 V at 1 A"],
  ["1N5817", 1, 0.3, 0.45, "data sheets of the 1N5817: at most 0.45 V at 1 A"],
  ["1N5819", 1, 0.3, 0.6, "data sheets of the 1N5819: at most 0.60 V at 1 A"],
];
for (const [part, amps, least, most, source] of drops)
  test(`${part}: ${source}`, () => {
    const volts = solve([["D", part, { anode: "a", cathode: "0" }]], [push(amps, "a")]).volts("a");
    expect(volts).toBeGreaterThan(least);
    expect(volts).toBeLessThanOrEqual(most);
  });

// 4.93 V + 35 Ω·I, the worst slope that the data sheet of the BZX55C5V1 allows, is 5.1 V at its test current of 5 mA.
for (const amps of [0.005, 0.01, 0.02])
  test(`a Zener of 5.1 V at ${amps * 1000} mA`, () => {
    const volts = solve([["D", "zener", { cathode: "a", anode: "0" }]], [push(amps, "a")]).volts("a");
    // The knee is an exponential: between 5 and 20 mA it adds N·VT·ln 4 at most.
    expect(Math.abs(volts - (4.925 + 35 * amps))).toBeLessThan(0.07);
  });
test("a Zener the other way round is a diode", () => {
  const volts = solve([["D", "zener", { anode: "a", cathode: "0" }]], [push(0.005, "a")]).volts("a");
  expect(volts).toBeGreaterThan(0.6);
  expect(volts).toBeLessThan(0.95);
});

const thermistor: [celsius: number, beta: number, expected: number][] = [
  [0, 3950, 33_620.6],
  [10, 3950, 20_174.6],
  [20, 3950, 12_535.3],
  [25, 3950, 10_000],
  [30, 3950, 8037.1],
  [50, 3950, 3588.2],
  [85, 3950, 1086.7],
  [100, 3950, 697.5],
  [0, 3977, 33_900.4],
  [20, 3977, 12_554.7],
  [50, 3977, 3563.1],
  [85, 3977, 1070.3],
  [100, 3977, 684.9],
];
const resistanceOf = (id: string, values: PartValues, state: PartState) => {
  const kind = catalogue.get(id)!;
  const [element] = kind.model("X", (leg) => leg, allValues(kind, values), state);
  return element?.kind === "resistor" ? element.ohms : Number.NaN;
};
// R = R25·exp(B·(1/T − 1/298.15 K)), computed with R 4.2.2.
for (const [celsius, beta, expected] of thermistor)
  test(`thermistor, B = ${beta}, ${celsius} °C`, () =>
    expect(Math.abs(resistanceOf("thermistor", { beta }, { celsius }) - expected)).toBeLessThan(0.1));
test("the beta formula against a maker's own: 4.13 % high at 0 °C (data sheet NTCLE100E3: 32 554.8 Ω)", () =>
  expect(resistanceOf("thermistor", { beta: 3977 }, { celsius: 0 }) / 32_554.8).toBeCloseTo(1.0413, 4));

// R = R10·(E/10 lx)^−gamma with 15 kΩ and 0.7; values by another program.
const photoresistor: [lux: number, expected: number][] = [
  [1, 75_178],
  [10, 15_000],
  [50, 4862.0],
  [100, 2992.9],
  [500, 970.1],
  [1000, 597.2],
];
for (const [lux, expected] of photoresistor)
  test(`photoresistor at ${lux} lx`, () =>
    expect(Math.abs(resistanceOf("photoresistor", {}, { lux }) - expected)).toBeLessThan(0.5));
test("a photoresistor in the dark has at least 1 MΩ (data tables of the 5528 class)", () =>
  expect(resistanceOf("photoresistor", {}, { lux: 0 })).toBe(1e6));

test("a thermistor above 10 kΩ at 0 °C gives 1.146247 V (ngspice)", () => {
  const point = solve(
    [["N", "thermistor", { "1": "a", "2": "b" }, {}, { celsius: 0 }]],
    [supply(5), ohms("R", "b", "0", 10_000)],
  );
  expect(Math.abs(point.volts("b") - 1.146247)).toBeLessThan(2e-6);
});

test("turned to 100 % the wiper is at leg 1", () => {
  const wiper = (turn: number) =>
    solve([["P", "potentiometer", { "1": "a", "2": "0", wiper: "w" }, {}, { turn }]], [supply(5)]).volts("w");
  expect(wiper(1)).toBeGreaterThan(4.99);
  expect(wiper(0)).toBeLessThan(0.01);
  expect(wiper(0.5)).toBeCloseTo(2.5, 6);
});

test("an NPN as a switch: at most 0.10 V at 10/0.5 mA and 0.30 V at 100/5 mA (data sheet BC847BV, sister of the BC547)", () => {
  const saturated = (collector: number, base: number) =>
    solve([["Q", "BC547", { collector: "c", base: "b", emitter: "0" }]], [push(collector, "c"), push(base, "b")]);
  expect(saturated(0.01, 0.0005).volts("c")).toBeLessThanOrEqual(0.1);
  expect(saturated(0.1, 0.005).volts("c")).toBeLessThanOrEqual(0.3);
  expect(saturated(0.01, 0.0005).volts("c")).toBeGreaterThan(0.01);
});
test("the base of an NPN at 2 mA has 0.58–0.70 V (data sheet BC847BV)", () => {
  const point = solve([["Q", "BC547", { collector: "a", base: "b", emitter: "0" }]], [supply(5), push(0.002 / 290, "b")]);
  expect(point.volts("b")).toBeGreaterThan(0.58);
  expect(point.volts("b")).toBeLessThan(0.7);
  expect(point.amps("Q")).toBeCloseTo(0.002, 5);
});
test("a PNP is its mirror", () => {
  const point = solve([["Q", "BC557", { collector: "0", base: "b", emitter: "a" }]], [supply(5), ohms("R", "b", "0", 1e6)]);
  // (5 V − 0.65 V) / 1 MΩ · 290 = 1.26 mA, out of the collector.
  expect(-point.amps("Q")).toBeGreaterThan(0.0012);
  expect(-point.amps("Q")).toBeLessThan(0.00131);
});

test("a small MOSFET with 5 V at its gate has its on-resistance of 2 Ω, reversed its diode conducts", () => {
  const on = solve([["M", "2N7000", { gate: "a", drain: "d", source: "0" }]], [supply(5), push(0.005, "d")]);
  expect(on.volts("d") / 0.005).toBeCloseTo(2, 1);
  const reversed = solve([["M", "2N7000", { gate: "0", drain: "0", source: "s" }]], [push(0.01, "s")]);
  expect(reversed.volts("s")).toBeGreaterThan(0.5);
  expect(reversed.volts("s")).toBeLessThan(0.7);
});

// Data sheets ULN2003A: drop of a channel that is on, typical and at most.
const darlington: [amps: number, typical: number, most: number][] = [
  [0.1, 0.9, 1.1],
  [0.2, 1.1, 1.3],
  [0.35, 1.3, 1.6],
];
for (const [amps, typical, most] of darlington)
  test(`ULN2003A at ${amps * 1000} mA keeps about ${typical} V for itself`, () => {
    const point = solve(
      [["U", "ULN2003A", { IN1: "a", OUT1: "o", GND: "0", COM: "c" }]],
      [supply(5), supply12(), push(amps, "o")],
    );
    expect(Math.abs(point.volts("o") - typical)).toBeLessThan(0.1);
    expect(point.volts("o")).toBeLessThan(most);
  });
const supply12 = (): Element => ({ kind: "voltageSource", id: "VC", plus: "c", minus: "0", volts: 12 });
test("a channel of the ULN2003A that is off takes no current", () => {
  const point = solve([["U", "ULN2003A", { IN1: "0", OUT1: "o", GND: "0", COM: "a" }]], [supply(5), ohms("R", "a", "o", 50)]);
  expect(point.volts("o")).toBeGreaterThan(4.99);
});

test("a 9 V block under a load of 30 Ω: 8.517350 V, 0.2839117 A (ngspice)", () => {
  const point = solve([["B", "battery-9v", { plus: "a", minus: "0" }]], [ohms("R", "a", "0", 30)]);
  expect(Math.abs(point.volts("a") - 8.51735)).toBeLessThan(1e-5);
  expect(Math.abs(point.amps("R") - 0.2839117)).toBeLessThan(1e-6);
});
test("a zinc-carbon block of 25 Ω under 30 Ω: 9·30/55 V", () => {
  const point = solve([["B", "battery-9v", { plus: "a", minus: "0" }, { type: "6F22" }]], [ohms("R", "a", "0", 30)]);
  expect(point.volts("a")).toBeCloseTo((9 * 30) / 55, 5);
});
test("a relay's coil takes 71.4 mA on 5 V; on 3.5 V behind a ULN2003A it may not pull", () => {
  const point = solve([["K", "relay", { coil1: "a", coil2: "0" }]], [supply(5)]);
  expect(point.amps("K.coil")).toBeCloseTo(0.0714, 4);
  const [contact] = catalogue.get("relay")!.noticed(allValues(catalogue.get("relay")!, {}));
  expect(contact?.sense === "contact" && contact.pullInVolts).toBe(3.75);
});
test("a temperature sensor gives 10 mV a degree while it has its supply, and nothing without", () => {
  const at = (volts: number) =>
    solve(
      [["T", "temperature-10mv", { V: "a", OUT: "o", GND: "0" }, {}, { celsius: 25 }]],
      [supply(volts), ohms("R", "o", "0", 1e6)],
    ).volts("o");
  expect(at(5)).toBeCloseTo(0.25, 4);
  expect(at(0)).toBeLessThan(0.001);
});
test("a phototransistor at 100 lx carries 0.1–0.3 mA, and saturates behind a large resistor (data sheet PNA1401LF)", () => {
  const light = (lux: number, load: number) =>
    solve([["P", "phototransistor", { collector: "a", emitter: "e" }, {}, { lux }]], [supply(5), ohms("R", "e", "0", load)]);
  const amps = light(100, 1000).amps("R");
  expect(amps).toBeGreaterThan(0.0001);
  expect(amps).toBeLessThan(0.0003);
  expect(light(1000, 100_000).volts("e")).toBeGreaterThan(4.7);
  expect(light(0, 10_000).volts("e")).toBeLessThan(0.001);
});
test("an electrolytic of 100 µF leaks 16 µA on 16 V (data sheets of the SU and MA series: 0.01·C·V)", () => {
  const point = solve([["C", "electrolytic", { plus: "a", minus: "0" }, { farads: 100e-6 }]], [supply(16)]);
  expect(point.amps("C.leak")).toBeCloseTo(16e-6, 9);
});
test("a toy motor on 5 V: 58 mA free, 417 mA held", () => {
  const amps = (held: boolean) => solve([["M", "dc-motor", { "1": "a", "2": "0" }, {}, { held }]], [supply(5)]).amps("M");
  // 70 mA at 6 V is 85.7 Ω; 12 Ω when held.
  expect(amps(false)).toBeCloseTo(5 / (6 / 0.07), 6);
  expect(amps(true)).toBeCloseTo(5 / 12, 6);
});

const contacts: [part: string, a: string, b: string, state: PartState, isJoined: boolean][] = [
  ["button", "1", "2", { pressed: false }, false],
  ["button", "1", "2", { pressed: true }, true],
  ["slide-switch", "common", "1", { position: 1 }, true],
  ["slide-switch", "common", "1", { position: 2 }, false],
  ["slide-switch", "common", "2", { position: 2 }, true],
  ["tilt-switch", "1", "2", { tilted: false }, true],
  ["tilt-switch", "1", "2", { tilted: true }, false],
  ["reed-switch", "1", "2", { magnet: true }, true],
  ["reed-switch", "1", "2", { magnet: false }, false],
  ["relay", "common", "nc", { pulled: false }, true],
  ["relay", "common", "no", { pulled: false }, false],
  ["relay", "common", "no", { pulled: true }, true],
  ["keypad", "R1", "C1", { key: 1 }, true],
  ["keypad", "R2", "C3", { key: 7 }, true],
  ["keypad", "R4", "C4", { key: 16 }, true],
  ["keypad", "R1", "C1", { key: 0 }, false],
  ["joystick", "SW", "GND", { pressed: true, x: 0.5, y: 0.5 }, true],
  ["joystick", "SW", "GND", { pressed: false, x: 0.5, y: 0.5 }, false],
];
for (const [part, a, b, state, isJoined] of contacts)
  test(`${part} ${JSON.stringify(state)}: ${a} and ${b} are ${isJoined ? "joined" : "apart"}`, () => {
    const kind = catalogue.get(part)!;
    const elements = kind.model("S", (leg) => leg, allValues(kind, {}), state);
    expect(elements.some((e) => e.kind === "resistor" && [e.a, e.b].sort().join() === [a, b].sort().join())).toBe(isJoined);
  });
