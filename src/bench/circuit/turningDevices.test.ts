// Relays, fuses, batteries and motors over time, against the formulas of their equations.
import { expect, test } from "vitest";
import { type Element, prepareTransient, solveDc, solveTransient, terminals } from "./index.ts";

const { exp, log } = Math;
const source = (volts: number): Element => ({ kind: "voltageSource", id: "V", plus: "v", minus: "0", volts });
const resistor = (id: string, a: string, b: string, ohms: number): Element => ({ kind: "resistor", id, a, b, ohms });

/** The instant at which the state of an element has first changed, s, to `within`. */
function turnOf(elements: readonly Element[], id: string, until: number, within: number): number {
  const running = prepareTransient({ elements }, { fromInitial: true });
  running.advanceTo(0);
  const first = running.now.state(id);
  let low = 0;
  for (let s = within; s <= until; s += within) {
    expect(running.advanceTo(s)).toBeNull();
    if (running.now.state(id) !== first) return (low + s) / 2;
    low = s;
  }
  return Number.NaN;
}

const coil: readonly Element[] = [resistor("RC", "v", "c", 70), { kind: "inductor", id: "LC", a: "c", b: "0", henries: 0.1 }];
const contact = {
  kind: "switch",
  id: "S",
  a: "v",
  b: "out",
  onOhms: 0.1,
  coil: "LC",
  pullInAmps: 0.05,
  dropOutAmps: 0.02,
} as const;

test("a relay pulls in when its coil's current has risen: t = −L/R · ln(1 − I·R/V)", () => {
  const elements = [source(5), ...coil, { ...contact, closed: 0 } as Element, resistor("RL", "out", "0", 100)];
  const expected = (-0.1 / 70) * log(1 - (0.05 * 70) / 5);
  expect(Math.abs(turnOf(elements, "S", 0.01, 1e-5) - expected)).toBeLessThan(1e-5);
});

test("its other contact opens then, and a weak supply never pulls it in", () => {
  const elements = (volts: number) => [
    source(volts),
    ...coil,
    { ...contact, closed: 1, opensWhenPulled: 1 } as Element,
    resistor("RL", "out", "0", 100),
  ];
  const at = (volts: number) =>
    solveTransient({ elements: elements(volts) }, { untilSeconds: 0.05, fromInitial: true }).samples[0]?.point;
  expect(at(5)?.volts("out")).toBeLessThan(1e-3);
  expect(at(3)?.volts("out")).toBeGreaterThan(2.9);
});

test("it stays pulled in between its two currents, and drops out below the lower", () => {
  const elements = [source(5), ...coil, { ...contact, closed: 0 } as Element, resistor("RL", "out", "0", 100)];
  const running = prepareTransient({ elements }, { fromInitial: true });
  const standsAfter = (volts: number, seconds: number) => {
    running.setValue("V", "volts", volts);
    expect(running.advanceTo(seconds)).toBeNull();
    return running.now.state("S");
  };
  expect(standsAfter(3, 0.05)).toBe(0);
  expect(standsAfter(5, 0.1)).toBe(1);
  expect(standsAfter(3, 0.15)).toBe(1);
  expect(standsAfter(1.3, 0.2)).toBe(0);
});

test("a contact bounces at the instants that were given", () => {
  const turns = [1e-3, 1.4e-3, 1.5e-3, 2e-3, 2.2e-3];
  const elements: Element[] = [
    source(5),
    { kind: "switch", id: "S", a: "v", b: "out", closed: 0, onOhms: 1, turns },
    resistor("R", "out", "0", 1e3),
  ];
  const sampleSeconds = [0.5e-3, 1.2e-3, 1.45e-3, 1.7e-3, 2.1e-3, 3e-3];
  const { samples } = solveTransient({ elements }, { untilSeconds: 3e-3, sampleSeconds });
  expect(samples.map(({ point }) => point.state("S"))).toEqual([0, 1, 0, 1, 0, 1]);
  expect(samples.map(({ point }) => Math.round(point.volts("out")))).toEqual([0, 5, 0, 5, 0, 5]);
});

const fuse = { kind: "fuse", id: "F", a: "v", b: "out", ohms: 0.15, trippedOhms: 50, holdAmps: 0.5, coolSeconds: 2 } as const;
for (const ohms of [8, 4, 2, 0.85]) {
  test(`a fuse behind 5 V and into ${ohms} Ω trips after τ · ln(x / (x − 1)), x = (I / hold)²`, () => {
    const x = (5 / (ohms + 0.15) / 0.5) ** 2;
    const found = turnOf([source(5), fuse, resistor("RL", "out", "0", ohms)], "F", 10, 1e-3);
    expect(Math.abs(found - 2 * log(x / (x - 1)))).toBeLessThan(2e-3);
  });
}

test("just below its holding current it never trips; relieved, it comes back", () => {
  const elements: Element[] = [source(5), fuse, resistor("RL", "out", "0", 10)];
  const running = prepareTransient({ elements });
  running.advanceTo(100);
  expect(running.now.state("F")).toBe(0);
  running.setValue("RL", "ohms", 1);
  running.advanceTo(110);
  expect(running.now.state("F")).toBe(1);
  running.setValue("RL", "ohms", 1e4);
  running.advanceTo(120);
  expect(running.now.state("F")).toBe(0);
});

const battery = {
  kind: "battery",
  id: "B",
  plus: "v",
  minus: "0",
  volts: 9,
  emptyVolts: 6,
  ohms: 1.5,
  emptyOhms: 6,
  ampHours: 0.5,
  charge: 1,
} as const satisfies Element;
test("a battery at a constant current: charge falls in a line, and its voltage with it", () => {
  const elements: Element[] = [battery, { kind: "currentSource", id: "I", from: "v", to: "0", amps: 0.1 }];
  const hours = [0, 1, 2.5, 4];
  const outcome = solveTransient({ elements }, { untilSeconds: 4 * 3600, sampleSeconds: hours.map((h) => 3600 * h) });
  expect(outcome.status).toBe("solved");
  outcome.samples.forEach(({ point }, k) => {
    const charge = 1 - (0.1 * (hours[k] as number)) / 0.5;
    expect(point.state("B")).toBeCloseTo(charge, 9);
    // Read before the last step's charge has gone, 1/500 of it at most.
    const volts = 6 + 3 * charge - 0.1 * (6 - 4.5 * charge);
    expect(Math.abs(point.volts("v") - volts)).toBeLessThan(0.01);
  });
});

const motor = {
  kind: "motor",
  id: "M",
  a: "v",
  b: "0",
  ohms: 5,
  henries: 0,
  k: 0.005,
  inertia: 1e-6,
  drag: 0,
  friction: 0,
} as const;
test("a motor runs up: ω = V/k · (1 − exp(−t·k²/(R·J)))", () => {
  const sampleSeconds = [0.05, 0.2, 0.5, 1, 2];
  const { samples } = solveTransient({ elements: [source(3), motor] }, { untilSeconds: 2, sampleSeconds, fromInitial: true });
  expect(samples).toHaveLength(5);
  for (const { seconds, point } of samples) {
    const speed = (3 / 0.005) * (1 - exp((-seconds * 0.005 ** 2) / (5 * 1e-6)));
    expect(Math.abs(point.state("M") - speed)).toBeLessThan(0.2);
    expect(Math.abs(point.amps("M") - (3 - 0.005 * speed) / 5)).toBeLessThan(1e-3);
  }
});

test("at rest: no-load current is friction over k, stalled it is V/R, turned round it turns the other way", () => {
  const at = (volts: number, change: Partial<Element>) => {
    const outcome = solveDc({ elements: [source(volts), { ...motor, friction: 2e-4, drag: 1e-8, ...change } as Element] });
    if (outcome.status !== "solved") throw new Error(outcome.status);
    return outcome.point;
  };
  // k·I = drag·ω + friction and V = R·I + k·ω.
  const speed = (0.005 * 3 - 5 * 2e-4) / (5 * 1e-8 + 0.005 ** 2);
  expect(at(3, {}).state("M")).toBeCloseTo(speed, 6);
  expect(at(3, {}).amps("M")).toBeCloseTo((3 - 0.005 * speed) / 5, 9);
  expect(at(-3, {}).state("M")).toBeCloseTo(-speed, 6);
  expect(at(3, { stalled: 1 }).amps("M")).toBeCloseTo(0.6, 9);
  // Half of what overcomes friction: it all but stands, at 0.5 rad/s · artanh(0.5).
  expect(Math.abs(at(0.1, {}).state("M") - 0.5 * Math.atanh(0.5))).toBeLessThan(0.01);
});

test("with inductance it starts with the winding's own rise, and currents add up", () => {
  const elements: Element[] = [source(3), { ...motor, henries: 2e-3, inertia: 1 }];
  const { samples } = solveTransient({ elements }, { untilSeconds: 2e-3, sampleSeconds: [1e-4, 4e-4, 2e-3], fromInitial: true });
  for (const { seconds, point } of samples) {
    expect(Math.abs(point.amps("M") - 0.6 * (1 - exp((-seconds * 5) / 2e-3)))).toBeLessThan(1e-4);
    expect(point.amps("V") + point.amps("M")).toBeCloseTo(0, 9);
  }
});

test("each of them has terminals, and bad ones are named", () => {
  for (const kind of ["switch", "fuse", "battery", "motor"] as const) expect(terminals[kind]).toHaveLength(2);
  const bad = (element: Element) => solveDc({ elements: [source(5), element] });
  expect(bad({ ...contact, closed: 0, coil: "L9" })).toMatchObject({ status: "badElement", id: "S", field: "coil" });
  expect(bad({ ...fuse, coolSeconds: 0 })).toMatchObject({ status: "badElement", id: "F", field: "coolSeconds" });
  expect(bad({ ...motor, k: Number.NaN })).toMatchObject({ status: "badElement", id: "M", field: "k" });
});
