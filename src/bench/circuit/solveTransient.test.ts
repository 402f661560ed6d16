// Capacitors, coils and sources over time: formulas, examples of the books, named outcomes, edges and changed values.
//
// Books: Kuphaldt, Lessons in Electric Circuits, DC, chapter "RC and L/R time constants" ("LEC"); OpenStax, University Physics,
// vol. 2, chapter 10 ("UP2"). All else are the formulas of first and second order circuits.
import { expect, test } from "vitest";
import { type Element, type OperatingPoint, prepareTransient, solveTransient, type Waveform } from "./index.ts";

const numbers = (words: readonly string[]) => words.map(Number);

/** "R1 a b 100; V1 a 0 5; I1 0 a 2; C1 a b 1e-6 [volts]; L1 a b 1e-3 [amps]; D1 a b 1e-14 1". */
function circuit(text: string): Element[] {
  return text.split(";").map((line): Element => {
    const [id = "", a = "", b = "", ...rest] = line.trim().split(/\s+/);
    const [x = Number.NaN, y] = numbers(rest);
    switch (id[0]) {
      case "R":
        return { kind: "resistor", id, a, b, ohms: x };
      case "V":
        return { kind: "voltageSource", id, plus: a, minus: b, volts: x };
      case "I":
        return { kind: "currentSource", id, from: a, to: b, amps: x };
      case "C":
        return { kind: "capacitor", id, a, b, farads: x, ...(y !== undefined && { initialVolts: y }) };
      case "L":
        return { kind: "inductor", id, a, b, henries: x, ...(y !== undefined && { initialAmps: y }) };
      default:
        return { kind: "diode", id, anode: a, cathode: b, saturationAmps: x, emission: y as number, seriesOhms: 0 };
    }
  });
}

/** @param what "V(2)", "V(1,2)" or "I(R1)". */
function read(point: OperatingPoint, what: string): number {
  const [, kind, first = "", second] = /^([VI])\(([^,]+)(?:,(.+))?\)$/.exec(what) ?? [];
  if (kind === "I") return point.amps(first);
  return point.volts(first) - (second === undefined ? 0 : point.volts(second));
}

const { exp, sin, cos, sqrt, PI } = Math;
const rlc = "R1 1 0 1; L1 1 2 1e-3; C1 2 0 1e-6 5";
/** The same circuit's damping and angular frequency, 1/s. */
const [fade, turn] = [500, sqrt(1e9 - 500 ** 2)];
const formulas: [name: string, circuit: string, what: string, value: (t: number) => number, until: number, tolerance: number][] =
  [
    ["LEC: RC charge", "V1 1 0 15; R1 1 2 10e3; C1 2 0 100e-6", "V(2)", (t) => 15 * (1 - exp(-t)), 10, 1e-3],
    ["LEC: RC charge", "V1 1 0 15; R1 1 2 10e3; C1 2 0 100e-6", "I(R1)", (t) => 1.5e-3 * exp(-t), 10, 1e-7],
    ["LEC: RL current", "V1 1 0 15; R1 1 2 1; L1 2 0 1", "I(L1)", (t) => 15 * (1 - exp(-t)), 5, 1e-3],
    ["coil voltage", "V1 1 0 5; R1 1 2 20; L1 2 0 10e-3", "V(2)", (t) => 5 * exp(-t / 0.5e-3), 2e-3, 3e-4],
    ["capacitor discharges", "R1 1 0 1e3; C1 1 0 1e-6 9", "V(1)", (t) => 9 * exp(-t / 1e-3), 5e-3, 6e-4],
    ["coil runs down", "R1 1 0 50; L1 1 0 0.1 -0.2", "I(L1)", (t) => -0.2 * exp(-500 * t), 1e-2, 2e-5],
    ["constant current charges in a line", "I1 0 1 1e-3; C1 1 0 1e-6", "V(1)", (t) => 1000 * t, 1e-2, 1e-6],
    ["constant voltage: a coil's current in a line", "V1 1 0 2; L1 1 0 0.5", "I(L1)", (t) => 4 * t, 1, 1e-6],
    [
      "two capacitors share their charge",
      "C1 1 0 1e-6 10; R1 1 2 1e3; C2 2 0 3e-6",
      "V(2)",
      (t) => 2.5 * (1 - exp(-t / 0.75e-3)),
      5e-3,
      3e-4,
    ],
    ["RLC rings", rlc, "V(2)", (t) => 5 * exp(-fade * t) * (cos(turn * t) + (fade / turn) * sin(turn * t)), 1e-3, 1e-2],
    ["LC without loss", "L1 1 0 1e-3; C1 1 0 1e-6 1", "V(1)", (t) => cos(t * sqrt(1e9)), 1e-3, 1e-2],
    [
      "RLC at the edge of ringing",
      "R1 1 0 2e3; L1 1 2 1; C1 2 0 1e-6 1",
      "V(2)",
      (t) => (1 + 1000 * t) * exp(-1000 * t),
      8e-3,
      1e-4,
    ],
  ];
for (const [name, text, what, value, until, tolerance] of formulas) {
  test(`${name}: ${what}`, () => {
    const sampleSeconds = Array.from({ length: 41 }, (_, k) => (k * until) / 40);
    const outcome = solveTransient(
      { elements: circuit(text) },
      { untilSeconds: until, sampleSeconds, fromInitial: true, accuracy: 3e-6 },
    );
    expect(outcome.status).toBe("solved");
    expect(outcome.samples.map(({ seconds }) => seconds)).toEqual(sampleSeconds);
    for (const { seconds, point } of outcome.samples)
      expect(Math.abs(read(point, what) - value(seconds)), `${seconds} s`).toBeLessThanOrEqual(tolerance);
  });
}

/** The instant at which a rising voltage crosses a level, s. */
function crossing(elements: readonly Element[], node: string, level: number, until: number): number {
  const running = prepareTransient({ elements }, { fromInitial: true });
  let [low, high] = [0, until];
  running.advanceTo(0);
  const steps = 2000;
  for (let k = 1; k <= steps; k += 1) {
    const before = running.now.volts(node);
    running.advanceTo((k * until) / steps);
    const after = running.now.volts(node);
    if (after < level) continue;
    [low, high] = [((k - 1) * until) / steps, (k * until) / steps];
    return low + ((high - low) * (level - before)) / (after - before);
  }
  return Number.NaN;
}

const printed: [name: string, circuit: string, level: number, seconds: number, tolerance: number][] = [
  ["UP2: relaxation oscillator reaches 80 V", "V1 1 0 100; R1 1 2 101; C1 2 0 50e-3", 80, 8.13, 5e-3],
  ["UP2: timer reaches 10 V", "V1 1 0 12; R1 1 2 558.11; C1 2 0 10e-3", 10, 10, 1e-3],
  ["LEC: one time constant is 63.2 %", "V1 1 0 100; R1 1 2 10e3; C1 2 0 100e-6", 63.2121, 1, 1e-4],
  ["LEC: five are 99.3 %", "V1 1 0 100; R1 1 2 10e3; C1 2 0 100e-6", 99.3262, 5, 1e-3],
];
for (const [name, text, level, seconds, tolerance] of printed)
  test(name, () => expect(Math.abs(crossing(circuit(text), "2", level, 12) - seconds)).toBeLessThanOrEqual(tolerance));

test("LEC: after 7.25 s 14.989 V and 1.065 µA, or 14.547 A through the coil after 3.5 s", () => {
  const rc = solveTransient(
    { elements: circuit("V1 1 0 15; R1 1 2 10e3; C1 2 0 100e-6") },
    { untilSeconds: 7.25, fromInitial: true, accuracy: 1e-6 },
  );
  const rl = solveTransient(
    { elements: circuit("V1 1 0 15; R1 1 2 1; L1 2 0 1") },
    { untilSeconds: 3.5, fromInitial: true, accuracy: 1e-6 },
  );
  expect(rc.samples[0]?.point.volts("2")).toBeCloseTo(14.989, 3);
  expect(rc.samples[0]?.point.amps("R1")).toBeCloseTo(1.065e-6, 7);
  expect(rl.samples[0]?.point.amps("L1")).toBeCloseTo(14.547, 3);
});

test("an operating point stays where it is", () => {
  const elements = circuit("V1 1 0 5; R1 1 2 1e3; C1 2 0 1e-6; L1 2 3 1e-3; D1 3 0 1e-14 1");
  const outcome = solveTransient({ elements }, { untilSeconds: 1, sampleSeconds: [0, 0.1, 1] });
  // 1 kΩ from 5 V into the silicon diode of the operating points: 0.6928875986 V (bisection).
  for (const { point } of outcome.samples) expect(point.volts("2")).toBeCloseTo(0.6928875986, 8);
});

/** A square wave into an RC, once settled: V at the end of each half. Formula: 5 / (1 + exp(∓half/τ)). */
test("PWM into an RC settles between its two levels, and edges without a length cost nothing", () => {
  const half = 1 / 980;
  const wave: Waveform = { kind: "pulse", low: 0, high: 5, delay: 0, rise: 0, fall: 0, width: half, period: 2 * half };
  const elements: Element[] = [
    { kind: "voltageSource", id: "V1", plus: "1", minus: "0", volts: 0, wave },
    ...circuit("R1 1 2 1e3; C1 2 0 1e-6"),
  ];
  const sampleSeconds = [40, 41, 42, 43].map((k) => k * half);
  const outcome = solveTransient({ elements }, { untilSeconds: 0.1, sampleSeconds });
  const [low, high] = [5 / (1 + exp(half / 1e-3)), 5 / (1 + exp(-half / 1e-3))];
  for (const [k, { point }] of outcome.samples.entries()) {
    expect(point.volts("2")).toBeCloseTo(k % 2 === 0 ? low : high, 3);
    // Before the jump at the sampled instant.
    expect(point.volts("1")).toBe(k % 2 === 0 ? 0 : 5);
  }
});

test("a sine through an RC: amplitude and lag of the steady state", () => {
  const wave: Waveform = { kind: "sine", offset: 1, amplitude: 2, hertz: 100 };
  const elements: Element[] = [
    { kind: "voltageSource", id: "V1", plus: "1", minus: "0", volts: 0, wave },
    ...circuit("R1 1 2 1e3; C1 2 0 2e-6"),
  ];
  const omega = 2 * PI * 100;
  const [gain, lag] = [1 / Math.hypot(1, omega * 2e-3), Math.atan(omega * 2e-3)];
  const sampleSeconds = Array.from({ length: 50 }, (_, k) => 0.05 + k * 0.4e-3);
  const outcome = solveTransient({ elements }, { untilSeconds: 0.07, sampleSeconds });
  for (const { seconds, point } of outcome.samples)
    expect(Math.abs(point.volts("2") - 1 - 2 * gain * sin(omega * seconds - lag))).toBeLessThan(1e-3);
});

test("nothing that remembers: a step from edge to edge", () => {
  const wave: Waveform = { kind: "pulse", low: 0, high: 5, delay: 0, rise: 1e-6, fall: 1e-6, width: 1e-3, period: 2e-3 };
  const elements: Element[] = [
    { kind: "voltageSource", id: "V1", plus: "1", minus: "0", volts: 0, wave },
    ...circuit("R1 1 2 220; D1 2 0 1e-18 1.8"),
  ];
  const outcome = solveTransient({ elements }, { untilSeconds: 0.1 });
  expect(outcome.status === "solved" && outcome.steps).toBeLessThanOrEqual(4 * 50);
});

test("led on by hand: a pin that turns at 2 ms and back at 5 ms, as the same wave gives it", () => {
  const rest = circuit("R1 1 2 1e3; C1 2 0 1e-6");
  const running = prepareTransient({ elements: [...circuit("V1 1 0 0"), ...rest] });
  const at = (seconds: number) => {
    expect(running.advanceTo(seconds)).toBeNull();
    return running.now.volts("2");
  };
  expect(at(2e-3)).toBe(0);
  expect(running.setValue("V1", "volts", 5)).toBe(true);
  expect(running.advanceTo(2e-3)).toBeNull();
  expect(running.now.amps("R1")).toBeCloseTo(5e-3, 9);
  expect(at(5e-3)).toBeCloseTo(5 * (1 - exp(-3)), 3);
  const kept = running.point();
  running.setValue("V1", "volts", 0);
  running.setValue("R1", "ohms", 500);
  expect(at(7e-3)).toBeCloseTo(5 * (1 - exp(-3)) * exp(-4), 3);
  expect(kept.volts("2")).toBeCloseTo(5 * (1 - exp(-3)), 3);
  expect(running.seconds).toBe(7e-3);
});

test("looking more often changes nothing", () => {
  const wave: Waveform = { kind: "pulse", low: 0, high: 9, delay: 1e-4, rise: 1e-6, fall: 1e-6, width: 1e-3, period: 3e-3 };
  const elements: Element[] = [
    { kind: "voltageSource", id: "V1", plus: "1", minus: "0", volts: 0, wave },
    ...circuit("D1 1 2 1e-14 1; R1 2 0 1e3; C1 2 0 1e-6; R2 2 3 10; L1 3 4 1e-3; C2 4 0 1e-7; R3 4 0 1e4"),
  ];
  const last = (count: number) => {
    const sampleSeconds = Array.from({ length: count }, (_, k) => ((k + 1) * 0.01) / count);
    return solveTransient({ elements }, { untilSeconds: 0.01, sampleSeconds }).samples.at(-1)?.point.volts("4") ?? Number.NaN;
  };
  for (const count of [7, 100, 1313]) expect(Math.abs(last(count) - last(1))).toBeLessThan(2e-3);
});

test("ohms that come into a diode change the wiring and nothing stored", () => {
  const running = prepareTransient({ elements: circuit("V1 1 0 5; R1 1 2 1e3; C1 2 0 1e-3; L1 2 3 1e-3; D1 3 0 1e-14 1") });
  running.advanceTo(1e-3);
  const before = running.now.volts("2");
  running.setValue("D1", "seriesOhms", 100);
  running.advanceTo(1e-3);
  expect(running.now.volts("2")).toBeCloseTo(before, 9);
  expect(running.now.amps("L1")).toBeCloseTo((5 - before) / 1e3, 9);
  running.advanceTo(5);
  expect(running.now.volts("2")).toBeGreaterThan(before + 0.3);
});

const failures: [name: string, circuit: string, expected: object][] = [
  ["two sources in parallel", "V1 1 0 5; V2 1 0 3; C1 1 0 1e-6", { status: "sourceLoop", elements: ["V1", "V2"], seconds: 0 }],
  ["current into nothing", "I1 0 1 1e-3; R1 1 2 100", { status: "currentWithoutPath", node: "1", seconds: 0 }],
  ["0 F", "V1 1 0 5; R1 1 2 1; C1 2 0 0", { status: "badElement", id: "C1", field: "farads", value: 0, seconds: 0 }],
];
for (const [name, text, expected] of failures)
  test(`${name}: ${(expected as { status: string }).status}`, () => {
    const outcome = solveTransient({ elements: circuit(text) }, { untilSeconds: 1, fromInitial: true });
    expect(outcome).toEqual({ ...expected, samples: [] });
  });

test("an operating point that there is not is the outcome; what is stored may give a start all the same", () => {
  const elements = circuit("I1 0 1 1e-3; C1 1 0 1e-6");
  expect(solveTransient({ elements }, { untilSeconds: 1e-3 })).toMatchObject({ status: "currentWithoutPath", seconds: 0 });
  expect(solveTransient({ elements }, { untilSeconds: 1e-3, fromInitial: true }).status).toBe("solved");
});

test("steps that are spent are an outcome with the samples so far", () => {
  const elements = circuit("L1 1 0 1e-9; C1 1 0 1e-12 5");
  const outcome = solveTransient(
    { elements },
    { untilSeconds: 1, sampleSeconds: [0, 1e-10, 1], fromInitial: true, mostSteps: 1000 },
  );
  expect(outcome.status).toBe("tooManySteps");
  expect(outcome.samples).toHaveLength(2);
});

test("a value that no part has ends the way", () => {
  const running = prepareTransient({ elements: circuit("V1 1 0 5; R1 1 2 1e3; C1 2 0 1e-6") });
  running.advanceTo(1e-3);
  running.setValue("R1", "ohms", Number.NaN);
  expect(running.advanceTo(2e-3)).toMatchObject({ status: "badElement", id: "R1", field: "ohms", seconds: 1e-3 });
  expect(running.setValue("R9", "ohms", 1)).toBe(false);
});

test("a capacitor across an ideal source that jumps takes its charge at once", () => {
  const running = prepareTransient({ elements: circuit("V1 1 0 0; C1 1 0 1e-6; R1 1 0 1e3") });
  running.advanceTo(1e-3);
  running.setValue("V1", "volts", 5);
  expect(running.advanceTo(2e-3)).toBeNull();
  expect(running.now.amps("V1")).toBeCloseTo(-5e-3, 6);
});
