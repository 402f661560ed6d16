// Operating points printed in books, by hand, and the named outcomes.
//
// Books: Kuphaldt, Lessons in Electric Circuits, DC ("LEC"); OpenStax, University Physics, vol. 2, chapter 10 ("UP2").
// Non-linear values: bisection on I = IS·(exp(V/(N·kT/q)) − 1) with kT/q = 0.025 864 917 V (27 °C), done apart from this code.
import { expect, test } from "vitest";
import type { DcOutcome, Element, OperatingPoint } from "./index.ts";
import { solveDc } from "./index.ts";

/** "R1 a b 100; V1 a 0 5; I1 0 a 2; D1 a 0 1e-18 1.8 [ohms]; C1 …; L1 …" as elements. */
function circuit(text: string): Element[] {
  return text.split(";").map((line): Element => {
    const [id = "", a = "", b = "", ...rest] = line.trim().split(/\s+/);
    const [x = Number.NaN, y = Number.NaN, z = 0] = rest.map(Number);
    switch (id[0]) {
      case "R":
        return { kind: "resistor", id, a, b, ohms: x };
      case "V":
        return { kind: "voltageSource", id, plus: a, minus: b, volts: x };
      case "I":
        return { kind: "currentSource", id, from: a, to: b, amps: x };
      case "C":
        return { kind: "capacitor", id, a, b, farads: x };
      case "L":
        return { kind: "inductor", id, a, b, henries: x };
      case "S":
        return { kind: "limitedSource", id, plus: a, minus: b, volts: x, ohms: y, limitAmps: z };
      default:
        return { kind: "diode", id, anode: a, cathode: b, saturationAmps: x, emission: y, seriesOhms: z };
    }
  });
}

function solved(elements: readonly Element[]): OperatingPoint {
  const outcome = solveDc({ elements });
  if (outcome.status !== "solved") throw new Error(outcome.status);
  return outcome.point;
}

/** @param what "V(2)", "V(1,2)" or "I(R1)". */
function read(point: OperatingPoint, what: string): number {
  const [, kind, first = "", second] = /^([VI])\(([^,]+)(?:,(.+))?\)$/.exec(what) ?? [];
  if (kind === "I") return point.amps(first);
  return point.volts(first) - (second === undefined ? 0 : point.volts(second));
}

const values: [name: string, circuit: string, what: string, value: number, tolerance: number][] = [
  ["LEC, network analysis: node between two sources", "V1 1 0 28; R1 1 2 4; R2 2 0 2; R3 2 3 1; V2 3 0 7", "V(2)", 8, 1e-12],
  ["LEC, network analysis: the weak source is charged", "V1 1 0 28; R1 1 2 4; R2 2 0 2; R3 2 3 1; V2 3 0 7", "I(V2)", 1, 1e-12],
  ["LEC, Thevenin", "V1 1 0 11.2; R1 1 2 0.8; R2 2 0 2", "V(2)", 8, 1e-12],
  ["LEC, Norton", "I1 0 1 14; R1 1 0 0.8; R2 1 0 2", "V(1)", 8, 1e-12],
  ["LEC, mesh current: bridge", "V1 1 0 24; R1 1 2 150; R2 1 3 50; R3 2 3 100; R4 2 0 300; R5 3 0 250", "V(1,2)", 6.345, 5e-4],
  ["LEC, mesh current: bridge", "V1 1 0 24; R1 1 2 150; R2 1 3 50; R3 2 3 100; R4 2 0 300; R5 3 0 250", "V(3,2)", 1.655, 5e-4],
  ["LEC, mesh current: source", "V1 1 0 24; R1 1 2 150; R2 1 3 50; R3 2 3 100; R4 2 0 300; R5 3 0 250", "I(V1)", -0.136092, 5e-7],
  ["LEC, series-parallel: total current", "V1 1 0 24; R1 1 2 100; R2 1 2 250; R3 2 0 350; R4 2 0 200", "I(V1)", -0.12078, 5e-6],
  ["LEC, metering: 10 MΩ meter on 500 MΩ", "V1 1 0 24; R1 1 2 250e6; R2 2 0 250e6; R3 2 0 10e6", "V(2)", 0.8889, 5e-5],
  ["LEC, metering: series ohmmeter at half scale", "V1 1 0 9; R1 1 2 8.5e3; R2 2 3 500; R3 3 0 9e3", "I(R2)", 0.5e-3, 1e-12],
  ["UP2, battery with 0.1 Ω and 0.5 Ω load", "V1 1 0 12; R1 1 2 0.1; R2 2 0 0.5", "V(2)", 10, 1e-9],
  ["UP2, aged battery", "V1 1 0 12; R1 1 2 0.5; R2 2 0 0.5", "I(R2)", 12, 1e-9],
  ["UP2, five in series", "V1 1 0 9; R1 1 2 20; R2 2 3 20; R3 3 4 20; R4 4 5 20; R5 5 0 10", "I(R3)", 0.1, 1e-12],
  ["UP2, three in parallel", "V1 1 0 3; R1 1 0 1; R2 1 0 2; R3 1 0 2", "I(V1)", -6, 1e-12],
  ["UP2, series and parallel", "V1 1 0 12; R1 1 2 1; R2 2 0 6; R3 2 0 13", "I(R1)", 2.35, 5e-3],
  ["UP2, three sources", "V1 a 0 0.5; Ra a n 3; V3 x 0 2.3; Rb x n 8; Rc n y 1; V2 y 0 -0.6", "V(n)", -0.1, 1e-12],
  ["by hand: equal resistors halve", "V1 1 0 5; R1 1 2 10e3; R2 2 0 10e3", "V(2)", 2.5, 1e-12],
  ["by hand: a third one loads them", "V1 1 0 5; R1 1 2 10e3; R2 2 0 10e3; R3 2 0 10e3", "V(2)", 5 / 3, 1e-12],
  ["by hand: 1 µA of leak at a photoresistor", "V1 1 0 5; R1 1 2 2e3; R2 2 0 10e3; I1 2 0 1e-6", "V(2)", 4.165, 1e-12],
  ["by hand: a capacitor is open", "V1 1 0 5; R1 1 2 1e3; C1 2 0 1e-6", "V(2)", 5, 1e-12],
  ["by hand: an inductor is a wire", "V1 1 0 5; R1 1 2 50; L1 2 3 0.01; R2 3 0 50", "I(L1)", 0.05, 1e-12],
  ["by hand: a resistor with both legs in one row", "V1 1 0 5; R1 1 1 220", "I(R1)", 0, 0],
  ["by hand: below its limit a source is a source", "S1 1 0 5 0.5 0.5; R1 1 0 99.5", "I(S1)", -0.05, 1e-12],
  ["by hand: at its limit it is a current", "S1 1 0 5 0.5 0.5; R1 1 0 4", "V(1)", 2, 1e-12],
  ["by hand: a short takes the limit", "S1 1 0 5 0.5 0.5; R1 1 0 0.001", "I(R1)", 0.5, 1e-9],
  ["by hand: no current back", "S1 1 0 5 0.5 0.5; V1 2 0 6; R1 2 1 1; R2 1 0 11", "V(1)", 5.5, 1e-12],
  ["bisection: red LED", "V1 1 0 5; R1 1 2 220; D1 2 0 1e-18 1.8", "V(2)", 1.733618219, 1e-9],
  ["bisection: red LED", "V1 1 0 5; R1 1 2 220; D1 2 0 1e-18 1.8", "I(D1)", 14.8471899e-3, 1e-10],
  ["bisection: silicon diode", "V1 1 0 5; R1 1 2 1000; D1 2 0 1e-14 1", "V(2)", 0.6928875986, 1e-10],
  ["bisection: two in series", "V1 1 0 9; R1 1 2 330; D1 2 3 1e-18 1.8; D2 3 0 1e-18 1.8", "V(2)", 3.478365932, 1e-9],
  ["bisection: blue LED with 8 Ω", "V1 1 0 5; R1 1 2 150; D1 2 0 1e-24 2.2 8", "V(2)", 3.005135162, 1e-9],
  [
    "law: unlike LEDs in parallel share as 1 to 2",
    "V1 1 0 5; R1 1 2 150; D1 2 0 1e-18 1.8; D2 2 0 2e-18 1.8",
    "I(D2)",
    14.66325732e-3,
    1e-9,
  ],
];
for (const [name, text, what, value, tolerance] of values) {
  test(`${name}: ${what}`, () => expect(Math.abs(read(solved(circuit(text)), what) - value)).toBeLessThanOrEqual(tolerance));
}

test("a short is a large current, not an outcome", () =>
  expect(solved(circuit("V1 1 0 5; R1 1 0 0.001")).amps("R1")).toBeCloseTo(5000, 6));

const outcomes: [name: string, circuit: string, outcome: Partial<DcOutcome>][] = [
  ["two sources in parallel", "V1 1 0 5; R1 1 0 10; V2 1 0 3", { status: "sourceLoop", elements: ["V1", "V2"] }],
  ["the same although they agree", "V1 1 0 5; V2 1 0 5", { status: "sourceLoop", elements: ["V1", "V2"] }],
  ["a source on a coil", "V1 1 0 5; V2 2 1 1; R1 2 0 1; L1 2 0 0.1", { status: "sourceLoop", elements: ["V1", "V2", "L1"] }],
  ["a source on itself", "V1 1 1 5; R1 1 0 1", { status: "sourceLoop", elements: ["V1"] }],
  ["limited sources without ohms", "S1 1 0 5 0 1; S2 1 0 5 0 1", { status: "sourceLoop", elements: ["S1", "S2"] }],
  ["a current into a capacitor", "I1 0 1 1; C1 1 0 1e-6", { status: "currentWithoutPath", node: "1" }],
  ["a current out of an island", "V1 a 0 5; R1 a 0 1; I1 b 0 1e-3; R2 b c 10", { status: "currentWithoutPath", node: "b" }],
  ["a load that wants more than the limit", "S1 1 0 5 0.1 0.5; I1 1 0 0.7", { status: "currentWithoutPath", node: "1" }],
  ["0 Ω", "V1 1 0 5; R1 1 0 0", { status: "badElement", id: "R1", field: "ohms", value: 0 }],
  ["negative ohms", "V1 1 0 5; R1 1 0 -5", { status: "badElement", id: "R1", field: "ohms", value: -5 }],
  ["no number", "V1 1 0 nothing; R1 1 0 5", { status: "badElement", id: "V1", field: "volts", value: Number.NaN }],
  [
    "endless ohms",
    "V1 1 0 5; R1 1 0 Infinity",
    { status: "badElement", id: "R1", field: "ohms", value: Number.POSITIVE_INFINITY },
  ],
  ["a negative capacitor", "V1 1 0 5; C1 1 0 -1e-6", { status: "badElement", id: "C1", field: "farads", value: -1e-6 }],
  ["two elements of one name", "V1 1 0 5; R1 1 0 5; R1 1 0 7", { status: "badElement", id: "R1", field: "id", value: 2 }],
];
for (const [name, text, outcome] of outcomes)
  test(`${name}: ${outcome.status}`, () => expect(solveDc({ elements: circuit(text) })).toEqual(outcome));

const floating: [name: string, circuit: string, nodes: string[]][] = [
  ["nothing floats", "V1 1 0 5; R1 1 0 5", []],
  ["a gate-like node behind a capacitor", "V1 1 0 5; R1 1 0 5; C1 1 g 1e-9", ["g"]],
  ["a second battery without common ground", "V1 1 0 5; R1 1 0 5; V2 p m 9; R2 p m 100", ["p", "m"]],
  ["two islands", "R1 a b 1; R2 c d 1; R3 e 0 1", ["a", "b", "c", "d"]],
  ["a reversed diode is a path", "V1 1 0 5; D1 2 1 1e-14 1; D2 0 2 1e-14 1", []],
  ["a wire that ends nowhere is fixed by its other end", "V1 1 0 5; R1 1 2 100", []],
];
for (const [name, text, nodes] of floating) {
  test(`floating: ${name}`, () => {
    const outcome = solveDc({ elements: circuit(text) });
    expect(outcome.status === "solved" && outcome.floating).toEqual(nodes);
  });
}

test("an island keeps its own voltages and currents", () => {
  const point = solved(circuit("V1 1 0 5; R1 1 0 5; V2 p m 9; R2 p m 100"));
  expect(read(point, "V(p,m)")).toBeCloseTo(9, 12);
  expect(point.amps("R2")).toBeCloseTo(0.09, 12);
});

test("a MOSFET's gate is no path", () => {
  const nmos = { kind: "nmos", id: "M1", drain: "d", gate: "g", source: "0", thresholdVolts: 1, transconductance: 0.1 } as const;
  const outcome = solveDc({ elements: [...circuit("V1 1 0 5; R1 1 d 100"), nmos] });
  expect(outcome.status === "solved" && outcome.floating).toEqual(["g"]);
});

test("a regulator holds 5 V from 9 V and burns the rest", () => {
  const regulator = { kind: "regulator", id: "U1", input: "in", output: "out", ground: "0" } as const;
  const values = { volts: 5, dropoutVolts: 2, outputOhms: 0, quiescentAmps: 6e-3 };
  const point = solved([...circuit("V1 in 0 9; R1 out 0 25"), { ...regulator, ...values }]);
  expect(point.volts("out")).toBeCloseTo(5, 12);
  expect(point.terminalAmps("U1", "input")).toBeCloseTo(0.206, 12);
  // (9 V − 5 V) · 200 mA + 9 V · 6 mA.
  expect(point.watts("U1")).toBeCloseTo(0.854, 12);
});

test("a regulator below its drop-out follows its input, and at its limit gives no more", () => {
  const values = { dropoutVolts: 2, outputOhms: 0, quiescentAmps: 0, limitAmps: 0.5, volts: 5 };
  const regulator: Element = { kind: "regulator", id: "U1", input: "in", output: "out", ground: "0", ...values };
  expect(solved([...circuit("V1 in 0 6; R1 out 0 25"), regulator]).volts("out")).toBeCloseTo(4, 12);
  expect(solved([...circuit("V1 in 0 9; R1 out 0 1"), regulator]).volts("out")).toBeCloseTo(0.5, 12);
});

test("a regulator whose output is wired to its input passes nothing through itself", () => {
  const values = { volts: 5, dropoutVolts: 1, outputOhms: 0, quiescentAmps: 6e-3 };
  const regulator: Element = { kind: "regulator", id: "U1", input: "v", output: "v", ground: "0", ...values };
  expect(solved([...circuit("V1 1 0 5; R1 1 v 1; R2 v 0 99"), regulator]).amps("U1")).toBe(0);
});

test("names that the circuit does not have are a bug of the caller", () => {
  const point = solved(circuit("V1 1 0 5; R1 1 0 5"));
  expect(() => point.volts("2")).toThrow(RangeError);
  expect(() => point.amps("R2")).toThrow(RangeError);
  expect(() => point.terminalAmps("R1", "anode")).toThrow(RangeError);
  expect(point.volts("0")).toBe(0);
});

test("an empty circuit is solved", () => expect(solveDc({ elements: [] }).status).toBe("solved"));

test("a start from another circuit's answer ends at the same place in fewer passes", () => {
  const before = solved(circuit("V1 1 0 5; R1 1 2 220; D1 2 0 1e-24 2.2 8"));
  const elements = circuit("V1 1 0 5; R1 1 2 230; D1 2 0 1e-24 2.2 8; R2 3 0 1e3");
  const [cold, warm] = [solveDc({ elements }), solveDc({ elements }, { from: before })];
  if (cold.status !== "solved" || warm.status !== "solved") throw new Error("not solved");
  expect(Math.abs(warm.point.volts("2") - cold.point.volts("2"))).toBeLessThan(1e-9);
  expect(warm.passes).toBeLessThan(cold.passes);
});

test("colder junctions need more volts by the ratio of kT/q", () => {
  // At a given current V/(kT/q) is the same: V at −23.15 °C is 250/300.15 of V at 27 °C.
  const elements = circuit("I1 0 1 1e-3; D1 1 0 1e-14 1");
  const at = (celsius: number) => {
    const outcome = solveDc({ elements }, { celsius });
    return outcome.status === "solved" ? outcome.point.volts("1") : Number.NaN;
  };
  expect(at(-23.15) / at(27)).toBeCloseTo(250 / 300.15, 9);
});
