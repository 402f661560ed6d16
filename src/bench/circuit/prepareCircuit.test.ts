// A prepared circuit with changed values against the same circuit made anew.
import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import { expect, test } from "vitest";
import { sample } from "../../../test/sample.ts";
import { seededRandom } from "../../base/index.ts";
import { type Element, prepareCircuit, solveDc } from "./index.ts";
import { randomRealCircuit } from "./randomCircuit.fixture.ts";

/** A port, a pin, an LED on 220 Ω and an NPN that switches a motor. */
const elements: readonly Element[] = [
  { kind: "limitedSource", id: "USB", plus: "v", minus: "0", volts: 5, ohms: 0.3, limitAmps: 0.5 },
  { kind: "resistor", id: "R1", a: "v", b: "a", ohms: 220 },
  { kind: "diode", id: "D1", anode: "a", cathode: "0", saturationAmps: 1e-18, emission: 1.8, seriesOhms: 0 },
  { kind: "voltageSource", id: "PIN", plus: "p", minus: "0", volts: 5 },
  { kind: "resistor", id: "R2", a: "p", b: "b", ohms: 1000 },
  {
    kind: "npn",
    id: "Q1",
    collector: "c",
    base: "b",
    emitter: "0",
    saturationAmps: 1e-14,
    forwardGain: 200,
    reverseGain: 3,
    baseOhms: 0,
  },
  { kind: "resistor", id: "M1", a: "v", b: "c", ohms: 60 },
];
const fresh = (change: Record<string, Record<string, number>>) =>
  solveDc({ elements: elements.map((element): Element => ({ ...element, ...change[element.id] })) });

const changes: [name: string, id: string, field: string, value: number][] = [
  ["another resistor", "R1", "ohms", 330],
  ["pin low", "PIN", "volts", 0],
  ["supply sags", "USB", "volts", 4.4],
  ["supply at its limit", "M1", "ohms", 5],
  ["another transistor", "Q1", "forwardGain", 110],
  ["ohms where there were none", "D1", "seriesOhms", 12],
  ["a base lead", "Q1", "baseOhms", 10],
  ["a supply without ohms", "USB", "ohms", 0],
  ["a hundred times more current", "D1", "saturationAmps", 1e-16],
];
test("each change gives what a new circuit gives, and taking it back gives the first answer again", () => {
  const circuit = prepareCircuit({ elements });
  const first = circuit.solve();
  if (first.status !== "solved") throw new Error(first.status);
  for (const [name, id, field, value] of changes) {
    const old = (elements.find((e) => e.id === id) as unknown as Record<string, number>)[field] as number;
    expect(circuit.setValue(id, field, value), name).toBe(true);
    const ours = circuit.solve();
    const theirs = fresh({ [id]: { [field]: value } });
    if (ours.status !== "solved" || theirs.status !== "solved") throw new Error(`${name}: ${ours.status}, ${theirs.status}`);
    for (const node of ["v", "a", "b", "c"])
      expect(Math.abs(ours.point.volts(node) - theirs.point.volts(node)), `${name}, ${node}`).toBeLessThan(1e-9);
    for (const e of elements)
      expect(Math.abs(ours.point.amps(e.id) - theirs.point.amps(e.id)), `${name}, ${e.id}`).toBeLessThan(1e-9);
    circuit.setValue(id, field, old);
    const again = circuit.solve();
    if (again.status !== "solved") throw new Error(again.status);
    for (const node of ["v", "a", "b", "c"])
      expect(Math.abs(again.point.volts(node) - first.point.volts(node)), `${name} back, ${node}`).toBeLessThan(1e-9);
  }
});

test("an answer stays as it is when the circuit is solved again", () => {
  const circuit = prepareCircuit({ elements });
  const before = circuit.solve();
  if (before.status !== "solved") throw new Error(before.status);
  const { point } = before;
  const volts = point.volts("a");
  const amps = point.amps("R1");
  circuit.setValue("R1", "ohms", 10_000);
  circuit.settle();
  expect(point.volts("a")).toBe(volts);
  expect(point.amps("R1")).toBe(amps);
  expect(circuit.now.amps("R1")).not.toBeCloseTo(amps, 4);
});

test("a bad value is the outcome until it is mended", () => {
  const circuit = prepareCircuit({ elements });
  circuit.setValue("R1", "ohms", 0);
  circuit.setValue("R2", "ohms", Number.NaN);
  expect(circuit.solve()).toEqual({ status: "badElement", id: "R1", field: "ohms", value: 0 });
  circuit.setValue("R1", "ohms", 220);
  expect(circuit.settle()).toBe("badElement");
  circuit.setValue("R2", "ohms", 1000);
  expect(circuit.settle()).toBe("solved");
});

test("what is not there cannot be set", () => {
  const circuit = prepareCircuit({ elements });
  expect(circuit.setValue("R9", "ohms", 1)).toBe(false);
  expect(circuit.setValue("R1", "volts", 1)).toBe(false);
  expect(circuit.setValue("R1", "kind", 1)).toBe(false);
});

test("the netlist that was given stays as it is", () => {
  const circuit = prepareCircuit({ elements });
  circuit.setValue("R1", "ohms", 1);
  expect(elements[1]).toMatchObject({ ohms: 220 });
});

test("a change takes three passes at most in the middle of all cases", () => {
  const circuit = prepareCircuit({ elements });
  circuit.settle();
  const passes: number[] = [];
  for (let ohms = 100; ohms < 1000; ohms += 7) {
    circuit.setValue("R1", "ohms", ohms);
    circuit.settle();
    passes.push(circuit.passes);
  }
  passes.sort((a, b) => a - b);
  expect(passes[passes.length >> 1]).toBeLessThanOrEqual(3);
});

test("the same answer from anywhere: warm and cold agree on random circuits", () => {
  let compared = 0;
  for (let seed = 0; seed < sample(300, 10_000); seed += 1) {
    const random = seededRandom(seed, "warm");
    const netlist = { elements: randomRealCircuit(random).elements };
    const resistors = netlist.elements.filter(({ kind }) => kind === "resistor");
    const one = resistors[random.int(0, Math.max(0, resistors.length - 1))];
    if (one?.kind !== "resistor") continue;
    const circuit = prepareCircuit(netlist);
    if (circuit.settle() !== "solved") continue;
    const ohms = one.ohms * (0.5 + random.next());
    circuit.setValue(one.id, "ohms", ohms);
    const warm = circuit.solve();
    const cold = solveDc({ elements: netlist.elements.map((e): Element => (e === one ? { ...one, ohms } : e)) });
    expect(warm.status, `seed ${seed}`).toBe(cold.status);
    if (warm.status !== "solved" || cold.status !== "solved") continue;
    // A latch of two transistors may rightly stay where it was; nearly all circuits have one answer.
    const same = netlist.elements.every(({ id }) => Math.abs(warm.point.amps(id) - cold.point.amps(id)) < 1e-8);
    if (same) compared += 1;
  }
  expect(compared).toBeGreaterThan(0.9 * sample(300, 10_000) * 0.9);
});

test("ten thousand solves leave nothing behind", () => {
  setFlagsFromString("--expose-gc");
  const collect = runInNewContext("gc") as () => void;
  const circuit = prepareCircuit({ elements });
  const solveMany = (count: number) => {
    for (let k = 0; k < count; k += 1) {
      circuit.setValue("R1", "ohms", 220 + (k % 100));
      circuit.settle();
    }
    collect();
    return process.memoryUsage().heapUsed;
  };
  solveMany(20_000);
  // The best of five, because the test runner works beside us: less than a byte a solve.
  const growth = [1, 2, 3, 4, 5].map(() => -solveMany(1) + solveMany(10_000));
  expect(Math.min(...growth)).toBeLessThan(10_000);
});
