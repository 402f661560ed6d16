// What holds over time in any circuit: currents add up and power given is power taken at every instant, energy given is energy
// burnt and stored, scale and time do not matter, and whatever is wired up, following it ends with a named outcome.
//
// Circuits are random with fixed seeds; `npm run test:long` runs many more.
import { expect, test } from "vitest";
import { sample } from "../../../test/sample.ts";
import { type Random, seededRandom } from "../../base/index.ts";
import {
  type Element,
  type Netlist,
  nextBend,
  nodesOf,
  type OperatingPoint,
  solveTransient,
  terminals,
  type Waveform,
} from "./index.ts";
import { randomCircuit, randomRealCircuit } from "./randomCircuit.fixture.ts";

const spread = (random: Random, low: number, high: number) => low * (high / low) ** random.next();

function randomWave(random: Random, size: number, until: number, mayJump = true): Waveform {
  const period = until * (0.05 + random.next());
  if (random.int(0, 1) === 0) return { kind: "sine", offset: size * random.next(), amplitude: size, hertz: 1 / period };
  const edge = period * spread(random, 1e-6, 0.1);
  const [rise, fall] = mayJump && random.int(0, 3) === 0 ? [0, 0] : [edge, edge];
  return { kind: "pulse", low: 0, high: size, delay: 0.1 * period, rise, fall, width: 0.4 * period, period };
}

/** The same circuit with other storage, and with sources that move. */
function enlivened({ elements }: Netlist, random: Random, until: number): Netlist {
  return {
    elements: elements.map((element): Element => {
      switch (element.kind) {
        case "voltageSource":
          return random.int(0, 1) === 0 ? element : { ...element, wave: randomWave(random, element.volts, until) };
        case "currentSource":
          return random.int(0, 1) === 0 ? element : { ...element, wave: randomWave(random, element.amps, until) };
        case "capacitor":
          return { ...element, farads: spread(random, 1e-11, 1e-3), initialVolts: 10 * random.next() - 5 };
        case "inductor":
          return { ...element, henries: spread(random, 1e-7, 1), initialAmps: random.next() - 0.5 };
        case "diode":
          return random.int(0, 1) === 0 ? element : { ...element, junctionFarads: spread(random, 1e-12, 1e-9) };
        default:
          return element;
      }
    }),
  };
}

/** A missing at the worst node, W missing in all, and the sizes involved. */
function audit({ elements }: Netlist, point: OperatingPoint) {
  const sums = new Map<string, number>();
  let [watts, turnover, largestAmps] = [0, 0, 0];
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
  return { missing: Math.max(0, ...[...sums.values()].map(Math.abs)), watts, turnover, largestAmps };
}

test("currents add up and power given is power taken at every instant, in any circuit of real parts", () => {
  let [solved, stuck] = [0, 0];
  const count = sample(150, 10_000);
  for (let seed = 0; seed < count; seed += 1) {
    const random = seededRandom(seed, "real in time");
    const until = spread(random, 1e-5, 0.1);
    const netlist = enlivened(randomRealCircuit(random), random, until);
    const sampleSeconds = Array.from({ length: 10 }, (_, k) => ((k + 1) * until) / 10);
    const fromInitial = random.int(0, 1) === 0;
    const outcome = solveTransient(netlist, { untilSeconds: until, sampleSeconds, fromInitial, mostSteps: 4000 });
    expect(outcome.status, `seed ${seed}`).toMatch(/^(solved|currentWithoutPath|tooManySteps|notConverged)$/);
    if (outcome.status === "solved") solved += 1;
    // A coil that is told to begin with a current that has no way may have no beginning.
    if (outcome.status === "notConverged") stuck += 1;
    if (outcome.status === "notConverged") expect(fromInitial, `seed ${seed}`).toBe(true);
    for (const { seconds, point } of outcome.samples) {
      const { missing, watts, turnover, largestAmps } = audit(netlist, point);
      expect(missing, `seed ${seed}, ${seconds} s`).toBeLessThanOrEqual(1e-9 * (1 + largestAmps));
      expect(Math.abs(watts), `seed ${seed}, ${seconds} s`).toBeLessThanOrEqual(1e-8 * (1 + turnover));
    }
  }
  expect(solved).toBeGreaterThan(0.8 * count);
  expect(stuck).toBeLessThanOrEqual(0.03 * count);
});

test("whatever is wired up, following it ends, with numbers", () => {
  const seen = new Set<string>();
  for (let seed = 0; seed < sample(250, 20_000); seed += 1) {
    const random = seededRandom(seed, "wild in time");
    const until = spread(random, 1e-6, 1);
    const netlist = enlivened(randomCircuit(random), random, until);
    const sampleSeconds = [0, until / 3, until];
    const fromInitial = random.int(0, 1) === 0;
    const outcome = solveTransient(netlist, { untilSeconds: until, sampleSeconds, fromInitial, mostSteps: 1500 });
    seen.add(outcome.status);
    if (outcome.status === "solved") expect(outcome.samples).toHaveLength(3);
    else if (outcome.status !== "badElement") expect(Number.isFinite(outcome.seconds), `seed ${seed}`).toBe(true);
    for (const { point } of outcome.samples) {
      const { missing, watts, largestAmps } = audit(netlist, point);
      expect(Number.isFinite(missing) && Number.isFinite(watts) && Number.isFinite(largestAmps), `seed ${seed}`).toBe(true);
    }
  }
  expect([...seen]).toEqual(expect.arrayContaining(["solved", "sourceLoop", "currentWithoutPath"]));
});

/** A chain of resistors, coils and capacitors behind a source with ohms, some of them across to ground. */
function randomChain(random: Random, until: number): Netlist {
  const elements: Element[] = [
    {
      kind: "voltageSource",
      id: "V",
      plus: "n0",
      minus: "0",
      volts: 5,
      wave: randomWave(random, 1 + 9 * random.next(), until, false),
    },
  ];
  const count = random.int(2, 7);
  for (let k = 0; k < count; k += 1) {
    const [a, b] = [`n${k}`, `n${k + 1}`];
    elements.push({ kind: "resistor", id: `R${k}`, a, b, ohms: spread(random, 10, 1e4) });
    const across = random.int(0, 2);
    const tau = until * spread(random, 0.02, 1);
    if (across === 0) elements.push({ kind: "capacitor", id: `C${k}`, a: b, b: "0", farads: tau / 1e3 });
    else if (across === 1) elements.push({ kind: "inductor", id: `L${k}`, a: b, b: `m${k}`, henries: tau * 300 });
    if (across === 1) elements.push({ kind: "resistor", id: `M${k}`, a: `m${k}`, b: "0", ohms: spread(random, 30, 3e3) });
  }
  elements.push({ kind: "resistor", id: "end", a: `n${count}`, b: "0", ohms: 1e3 });
  return { elements };
}

test("energy: what the source gives is burnt or stored, in fifty random circuits of resistors, coils and capacitors", () => {
  for (let seed = 0; seed < sample(50, 2000); seed += 1) {
    const random = seededRandom(seed, "energy");
    const until = spread(random, 1e-5, 0.1);
    const netlist = randomChain(random, until);
    const instants = new Set(Array.from({ length: 1001 }, (_, k) => (k * until) / 1000));
    const [source] = netlist.elements;
    const wave = source?.kind === "voltageSource" ? source.wave : undefined;
    // After an edge a small capacitor's current is a short spike: look there most closely.
    for (let s = 0; wave && s < until; s = nextBend(wave, s)) {
      instants.add(s);
      for (let later = 1e-5; later < 5e-3; later *= 1.1) instants.add(s + later * until);
    }
    const sampleSeconds = [...instants].filter((s) => s <= until).sort((a, b) => a - b);
    const outcome = solveTransient(netlist, { untilSeconds: until, sampleSeconds });
    if (outcome.status !== "solved") throw new Error(outcome.status);
    let [given, burnt, stored] = [0, 0, 0];
    const [first, last] = [outcome.samples[0]?.point, outcome.samples.at(-1)?.point] as [OperatingPoint, OperatingPoint];
    for (const element of netlist.elements) {
      const { id } = element;
      let joules = 0;
      outcome.samples.forEach(({ point }, k) => {
        const from = sampleSeconds[k - 1] ?? 0;
        const to = sampleSeconds[k + 1] ?? until;
        joules += (point.watts(id) * (to - from)) / 2;
      });
      if (element.kind === "voltageSource") given -= joules;
      else if (element.kind === "resistor") burnt += joules;
      const half = (point: OperatingPoint) => {
        if (element.kind === "capacitor") return 0.5 * element.farads * (point.volts(element.a) - point.volts(element.b)) ** 2;
        return element.kind === "inductor" ? 0.5 * element.henries * point.amps(id) ** 2 : 0;
      };
      stored += half(last) - half(first);
    }
    // What is left is the error of trapezoids over some thousand samples.
    expect(Math.abs(given - burnt - stored), `seed ${seed}`).toBeLessThanOrEqual(1e-3 * (Math.abs(given) + burnt));
  }
});

test("farads, henries and seconds ten times as large: the same voltages", () => {
  for (let seed = 0; seed < sample(40, 2000); seed += 1) {
    const random = seededRandom(seed, "scaled");
    const netlist = randomChain(random, 1e-3);
    const slower = netlist.elements.map((element): Element => {
      if (element.kind === "capacitor") return { ...element, farads: 10 * element.farads };
      if (element.kind === "inductor") return { ...element, henries: 10 * element.henries };
      if (element.kind !== "voltageSource" || element.wave === undefined) return element;
      const { wave } = element;
      if (wave.kind === "sine") return { ...element, wave: { ...wave, hertz: wave.hertz / 10 } };
      if (wave.kind !== "pulse") return element;
      const [delay, rise, fall, width, period] = [wave.delay, wave.rise, wave.fall, wave.width, wave.period ?? 0].map(
        (s) => 10 * s,
      );
      return { ...element, wave: { ...wave, delay, rise, fall, width, period } as Waveform };
    });
    const at = (until: number) => Array.from({ length: 7 }, (_, k) => ((k + 1) * until) / 7.3);
    const a = solveTransient(netlist, { untilSeconds: 1e-3, sampleSeconds: at(1e-3) });
    const b = solveTransient({ elements: slower }, { untilSeconds: 1e-2, sampleSeconds: at(1e-2) });
    if (a.status !== "solved" || b.status !== "solved") throw new Error("not solved");
    const nodes = new Set(netlist.elements.flatMap(nodesOf));
    a.samples.forEach(({ point }, k) => {
      for (const node of nodes)
        expect(Math.abs(point.volts(node) - (b.samples[k]?.point.volts(node) as number)), `seed ${seed}`).toBeLessThan(5e-3);
    });
  }
});
