// What holds in any circuit: currents add up at every node, power given is power taken, names and order do not matter,
// linear circuits superpose, and whatever is wired up, solving ends with a named outcome and no NaN.
//
// Circuits are random with fixed seeds (randomCircuit.fixture.ts); `npm run test:long` runs many more.
import { expect, test } from "vitest";
import { sample } from "../../../test/sample.ts";
import { type Random, seededRandom } from "../../base/index.ts";
import { type Element, type Netlist, nodesOf, type OperatingPoint, solveDc, terminals } from "./index.ts";
import { randomCircuit, randomRealCircuit } from "./randomCircuit.fixture.ts";

/** What the terminals say apart from the solver's own residual: A missing at each node but ground, and the sizes involved. */
function audit({ elements }: Netlist, point: OperatingPoint) {
  const sums = new Map<string, number>();
  let watts = 0;
  let largestAmps = 0;
  let turnover = 0;
  for (const element of elements) {
    nodesOf(element).forEach((node, index) => {
      const amps = point.terminalAmps(element.id, terminals[element.kind][index] as string);
      sums.set(node, (sums.get(node) ?? 0) + amps);
      largestAmps = Math.max(largestAmps, Math.abs(amps));
    });
    watts += point.watts(element.id);
    turnover += Math.abs(point.watts(element.id));
  }
  sums.delete("0");
  const volts = [...sums.keys()].map((node) => Math.abs(point.volts(node)));
  const missing = Math.max(0, ...[...sums.values()].map(Math.abs));
  return { missing, watts, turnover, largestAmps, largestVolts: Math.max(0, ...volts) };
}

test("currents add up to 1e-9 A and power to a billionth in any circuit of real parts, and each has an answer", () => {
  for (let seed = 0; seed < sample(700, 60_000); seed += 1) {
    const netlist = randomRealCircuit(seededRandom(seed, "real"));
    const outcome = solveDc(netlist);
    expect(outcome.status, `seed ${seed}`).toMatch(/^(solved|currentWithoutPath)$/);
    if (outcome.status !== "solved") continue;
    const { missing, watts, turnover } = audit(netlist, outcome.point);
    expect(missing, `seed ${seed}`).toBeLessThanOrEqual(1e-9);
    expect(outcome.residualAmps, `seed ${seed}`).toBeLessThanOrEqual(1e-9);
    expect(Math.abs(watts), `seed ${seed}`).toBeLessThanOrEqual(1e-9 * (1 + turnover));
  }
});

test("whatever is wired up, solving ends, with numbers", () => {
  const seen = new Set<string>();
  for (let seed = 0; seed < sample(700, 60_000); seed += 1) {
    const netlist = randomCircuit(seededRandom(seed, "wild"));
    const outcome = solveDc(netlist);
    seen.add(outcome.status);
    if (outcome.status === "notConverged") expect(Number.isFinite(outcome.residualAmps), `seed ${seed}`).toBe(true);
    if (outcome.status !== "solved") continue;
    const { missing, largestAmps, largestVolts } = audit(netlist, outcome.point);
    expect(Number.isFinite(missing) && Number.isFinite(largestVolts), `seed ${seed}`).toBe(true);
    // Ideal sources across junctions give megaamperes, current sources into leaks give megavolts; their rounding is not ours.
    if (largestAmps < 100 && largestVolts < 1000) expect(missing, `seed ${seed}`).toBeLessThanOrEqual(1e-9);
  }
  expect([...seen].sort()).toEqual(["currentWithoutPath", "notConverged", "solved", "sourceLoop"]);
});

test("values that no part has end as a bad element, never as NaN", () => {
  for (let seed = 0; seed < sample(300, 20_000); seed += 1) {
    const random = seededRandom(seed, "bad");
    const elements = [...randomRealCircuit(random).elements];
    const at = random.int(0, elements.length - 1);
    const element = elements[at] as Element;
    const fields = Object.entries(element).filter(([, value]) => typeof value === "number");
    const field = fields[random.int(0, fields.length - 1)]?.[0];
    if (field === undefined) continue;
    const value = [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 1e300, -1e300][random.int(0, 4)];
    elements[at] = { ...element, [field]: value };
    expect(solveDc({ elements }), `seed ${seed}`).toEqual({ status: "badElement", id: element.id, field, value });
  }
});

/** The same circuit with other node names, other ids and another order of elements; which are which stays findable. */
function renamed(netlist: Netlist, random: Random): { netlist: Netlist; node: (name: string) => string } {
  const names = [...new Set(netlist.elements.flatMap(nodesOf))].filter((name) => name !== "0");
  const others = new Map(random.shuffled(names).map((name, k) => [name, `x${k}`]));
  const node = (name: string) => others.get(name) ?? name;
  const elements = netlist.elements.map((element): Element => {
    const moved = Object.fromEntries(
      terminals[element.kind].map((terminal) => [
        terminal,
        node((element as unknown as Record<string, string>)[terminal] as string),
      ]),
    );
    return { ...element, ...moved };
  });
  return { netlist: { elements: random.shuffled(elements) }, node };
}

test("other names and another order change nothing in a linear circuit", () => {
  let compared = 0;
  for (let seed = 0; seed < sample(200, 5000); seed += 1) {
    const random = seededRandom(seed, "renamed");
    const netlist = randomLinear(random);
    const other = renamed(netlist, random);
    const [a, b] = [solveDc(netlist), solveDc(other.netlist)];
    expect(b.status, `seed ${seed}`).toBe(a.status);
    if (a.status !== "solved" || b.status !== "solved") continue;
    for (const node of new Set(netlist.elements.flatMap(nodesOf))) {
      if (a.floating.includes(node)) continue;
      compared += 1;
      expect(Math.abs(b.point.volts(other.node(node)) - a.point.volts(node)), `seed ${seed}, ${node}`).toBeLessThan(1e-6);
    }
  }
  expect(compared).toBeGreaterThan(sample(200, 5000));
});

test("the same for the decks of a class: LEDs, transistors and a motor on one port", () => {
  const netlist = { elements: classCircuit(4.9) };
  const plain = solveDc(netlist);
  for (let seed = 0; seed < 20; seed += 1) {
    const other = renamed(netlist, seededRandom(seed, "class"));
    const outcome = solveDc(other.netlist);
    if (plain.status !== "solved" || outcome.status !== "solved") throw new Error(outcome.status);
    for (const node of new Set(netlist.elements.flatMap(nodesOf)))
      expect(Math.abs(outcome.point.volts(other.node(node)) - plain.point.volts(node))).toBeLessThan(1e-9);
  }
});

test("more supply, more current: no LED of a class gets darker", () => {
  let before: OperatingPoint | null = null;
  for (let volts = 3; volts <= 5.5; volts += 0.1) {
    const outcome = solveDc({ elements: classCircuit(volts) });
    if (outcome.status !== "solved") throw new Error(outcome.status);
    const last = before;
    if (last) for (const id of ["D1", "D2"]) expect(outcome.point.amps(id)).toBeGreaterThan(last.amps(id));
    before = outcome.point;
  }
});

function classCircuit(volts: number): Element[] {
  const led = { kind: "diode", saturationAmps: 7.585e-11, emission: 3.828, seriesOhms: 4 } as const;
  const npn = { kind: "npn", saturationAmps: 2e-14, forwardGain: 290, reverseGain: 4, baseOhms: 10, collectorOhms: 0.6 } as const;
  const resistor = (id: string, a: string, b: string, ohms: number): Element => ({ kind: "resistor", id, a, b, ohms });
  return [
    { kind: "limitedSource", id: "USB", plus: "v", minus: "0", volts, ohms: 0.3, limitAmps: 0.5 },
    resistor("R1", "v", "a", 220),
    { ...led, id: "D1", anode: "a", cathode: "0" },
    resistor("R2", "v", "b", 4700),
    { ...npn, id: "Q1", collector: "c", base: "b", emitter: "0" },
    resistor("M1", "v", "c", 40),
    resistor("R3", "v", "d", 330),
    { ...led, id: "D2", anode: "d", cathode: "c" },
  ];
}

/** Resistors, sources and nothing else; every source with ohms. */
function randomLinear(random: Random): Netlist {
  const linear = new Set(["resistor", "voltageSource", "currentSource", "inductor", "capacitor"]);
  return { elements: randomRealCircuit(random).elements.filter(({ kind }) => linear.has(kind)) };
}

test("linear circuits superpose: each source alone, then the sum", () => {
  for (let seed = 0; seed < sample(200, 5000); seed += 1) {
    const netlist = randomLinear(seededRandom(seed, "superposition"));
    const sources = netlist.elements.filter(({ kind }) => kind === "voltageSource" || kind === "currentSource");
    const alone = (one: Element | null) =>
      netlist.elements.map((element): Element => {
        if (element === one) return element;
        if (element.kind === "voltageSource") return { ...element, volts: 0 };
        return element.kind === "currentSource" ? { ...element, amps: 0 } : element;
      });
    const all = solveDc(netlist);
    if (all.status !== "solved") throw new Error(all.status);
    const parts = sources.map((source) => solveDc({ elements: alone(source) }));
    for (const { id } of netlist.elements) {
      const sum = parts.reduce((s, part) => s + (part.status === "solved" ? part.point.amps(id) : Number.NaN), 0);
      expect(Math.abs(sum - all.point.amps(id)), `seed ${seed}, ${id}`).toBeLessThan(1e-9);
    }
  }
});

test("a linear circuit with all sources doubled has all voltages doubled", () => {
  for (let seed = 0; seed < sample(100, 2000); seed += 1) {
    const netlist = randomLinear(seededRandom(seed, "doubled"));
    const elements = netlist.elements.map((element): Element => {
      if (element.kind === "voltageSource") return { ...element, volts: 2 * element.volts };
      return element.kind === "currentSource" ? { ...element, amps: 2 * element.amps } : element;
    });
    const [one, two] = [solveDc(netlist), solveDc({ elements })];
    if (one.status !== "solved" || two.status !== "solved") throw new Error("not solved");
    for (const { id } of netlist.elements)
      expect(Math.abs(two.point.amps(id) - 2 * one.point.amps(id)), `seed ${seed}, ${id}`).toBeLessThan(1e-9);
  }
});
