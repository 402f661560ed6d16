// Waveforms. Expected: instants by the data sheet's timers (490.196 Hz, 976.5625 Hz; a servo's 20 ms) and by the program's own
// waits; volts and amperes by Ohm's law over board, fuse and cable.
import { expect, test } from "vitest";
import { smallLesson } from "./lesson.fixture.ts";
import { type Probe, probeName, readProbe } from "./readProbe.ts";
import { type TracePoint, thinPoints } from "./thinPoints.ts";
import { type Trace, traceLesson } from "./traceLesson.ts";

const resistor = (program: string, rehearsal = "{ at: 100ms, expect: { board: running } }") =>
  smallLesson(
    `R1: { part: resistor, ohms: 1k }
     B1: { part: button }`,
    `board.D9 R1.1
     R1.2 B1.2 board.GND
     board.D2 B1.1`,
    rehearsal,
    program,
  );
const d9: Probe = { at: { part: "board", leg: "D9" }, unit: "V" };
const line = (trace: Trace, k = 0) => trace.probes[k]?.points ?? [];

/** Instants at which the line jumps by more than 2 V, ms. */
const jumps = (points: readonly TracePoint[]) =>
  points.flatMap((p, i) => {
    const before = points[i - 1];
    return before && Math.abs(before[1] - p[1]) > 2 ? [p[0] * 1000] : [];
  });

/** V at D9 driving high into 1 kΩ from a laptop's port: 0.546 Ω port, 0.1 Ω cable, 0.4 Ω fuse, 5 V / 45 mA of the board itself. */
const highVolts = (() => {
  const load = 1 / (1 / (5 / 0.045) + 1 / 1025);
  return ((5 * load) / (load + 1.046)) * (1000 / 1025);
})();

const waves: [name: string, program: string, from: number, to: number, edges: number[]][] = [
  [
    "PWM of 64: rises each 1/490.196 s, falls 64/255 of it later",
    "void setup() { pinMode(9, OUTPUT); analogWrite(9, 64); } void loop() {}",
    20,
    26,
    [10, 11, 12].flatMap((k) => [(1000 * k) / 490.196, (1000 * (k + 64 / 255)) / 490.196]).filter((ms) => ms > 20),
  ],
  [
    "a tone of 250 Hz: 2 ms up, 2 ms down",
    "void setup() { delay(10); tone(9, 250); } void loop() {}",
    10.5,
    19,
    [12, 14, 16, 18],
  ],
  [
    "a program's own edges",
    "void setup() { pinMode(9, OUTPUT); } void loop() { digitalWrite(9, HIGH); delay(3); digitalWrite(9, LOW); delay(2); }",
    0.5,
    11,
    [3, 5, 8, 10],
  ],
];
for (const [name, program, fromMs, toMs, edges] of waves)
  test(name, () => {
    const trace = traceLesson(resistor(program), { probes: [d9], fromMs, toMs });
    const found = jumps(line(trace));
    expect(found.length).toBe(edges.length);
    // The program itself takes some microseconds for each of its calls, tone() about a hundred.
    for (const [i, ms] of edges.entries()) expect(Math.abs((found[i] ?? 0) - ms)).toBeLessThan(0.15);
    expect(trace.probes[0]?.most).toBeCloseTo(highVolts, 6);
    expect(trace.probes[0]?.least).toBeCloseTo(0, 6);
  });

test("PWM edges are exact to a microsecond", () => {
  const program = "void setup() { pinMode(9, OUTPUT); analogWrite(9, 64); } void loop() {}";
  const found = jumps(line(traceLesson(resistor(program), { probes: [d9], fromMs: 20.5, toMs: 26 })));
  for (const [i, ms] of found.entries()) {
    const before = found[i - 2];
    if (before !== undefined) expect(ms - before).toBeCloseTo(1000 / 490.196, 6);
  }
});

test("a servo pulse of 90° is some 1.5 ms wide and comes every 20 ms", () => {
  const lesson = smallLesson(
    "SERVO1: { part: servo }",
    `board.D9 SERVO1.signal
     board.5V SERVO1.plus
     SERVO1.minus board.GND`,
    "{ at: 100ms, expect: { board: running } }",
    "#include <Servo.h>\nServo arm;\nvoid setup() { arm.attach(9); arm.write(90); } void loop() {}",
  );
  const found = jumps(line(traceLesson(lesson, { probes: [d9], fromMs: 1, toMs: 50 })));
  const [fall = 0, rise = 0, next = 0] = found;
  expect(next - fall).toBeCloseTo(20, 3);
  // 544 µs + 90/180 · (2400 − 544) µs = 1472 µs.
  expect(next - rise).toBeCloseTo(1.472, 2);
});

test("the current of a leg is V/R, into the resistor and out of the pin", () => {
  const program = "void setup() { pinMode(9, OUTPUT); digitalWrite(9, HIGH); } void loop() {}";
  const probes: Probe[] = [
    { at: { part: "R1", leg: "1" }, unit: "A" },
    { at: { part: "R1", leg: "2" }, unit: "A" },
    { at: { part: "board", leg: "D9" }, unit: "A" },
  ];
  const trace = traceLesson(resistor(program), { probes, fromMs: 50, toMs: 60 });
  expect(trace.probes.map((p) => p.most)).toEqual([
    expect.closeTo(highVolts / 1000, 9),
    expect.closeTo(-highVolts / 1000, 9),
    expect.closeTo(highVolts / 1000, 9),
  ]);
});

test("a key bounces before it stays, and each edge is drawn", () => {
  const program = "void setup() { pinMode(2, INPUT_PULLUP); } void loop() {}";
  const lesson = resistor(program, "{ at: 50ms, set: { B1.pressed: true } }\n{ at: 100ms, expect: { board: running } }");
  const trace = traceLesson(lesson, { probes: [{ at: { part: "B1", leg: "1" }, unit: "V" }], fromMs: 40, toMs: 70 });
  const found = jumps(line(trace));
  expect(found[0]).toBeCloseTo(50, 6);
  // One to four openings, each two edges, within the part's 1.56 ms.
  expect(found.length % 2).toBe(1);
  expect(found.length).toBeGreaterThanOrEqual(3);
  expect(found.length).toBeLessThanOrEqual(9);
  expect(found.at(-1)).toBeLessThanOrEqual(51.56);
  expect(line(trace).at(-1)?.[1]).toBeLessThan(0.01);
});

test("a net that nothing holds has a gap and no line", () => {
  const program = "void setup() { pinMode(2, INPUT); delay(20); pinMode(2, INPUT_PULLUP); } void loop() {}";
  const trace = traceLesson(resistor(program), {
    probes: [{ at: { part: "board", leg: "D2" }, unit: "V" }],
    fromMs: 10,
    toMs: 30,
  });
  const [gap] = trace.probes[0]?.gaps ?? [];
  expect(gap?.[0]).toBeCloseTo(0.01, 9);
  expect(gap?.[1]).toBeCloseTo(0.02, 4);
  expect(line(trace)[0]?.[0]).toBeCloseTo(0.02, 4);
});

test("what the lesson does not have is told, and nothing is drawn", () => {
  const trace = traceLesson(resistor("void setup() {} void loop() {}"), {
    probes: [{ at: { part: "LED9", leg: "anode" }, unit: "A" }],
    fromMs: 0,
    toMs: 10,
  });
  expect([trace.problems, trace.probes]).toEqual([[{ code: "rehearsal.probeNotThere", probe: "LED9.anode A" }], []]);
});

test("a second of PWM is few points, and as tall as before", () => {
  const program = "void setup() { pinMode(9, OUTPUT); analogWrite(9, 128); } void loop() {}";
  const trace = traceLesson(resistor(program), { probes: [d9], fromMs: 0, toMs: 5000, mostPoints: 400 });
  expect(line(trace).length).toBeLessThanOrEqual(400);
  // In each hundredth of the stretch the line still goes all the way up and down.
  for (let part = 1; part < 50; part += 1) {
    const values = line(trace).flatMap(([s, v]) => (s >= part * 0.1 && s < (part + 1) * 0.1 ? [v] : []));
    expect(Math.max(...values) - Math.min(...values)).toBeCloseTo(highVolts, 3);
  }
});

test("thinning keeps ends, least and most, in the order of time", () => {
  const points = Array.from({ length: 10_000 }, (_, i): TracePoint => [i / 1000, i === 5555 ? 9 : i === 7777 ? -9 : i % 7]);
  const thin = thinPoints(points, 200);
  expect(thin.length).toBeLessThanOrEqual(200);
  expect([thin[0], thin.at(-1)]).toEqual([points[0], points.at(-1)]);
  expect(thin).toContainEqual([5.555, 9]);
  expect(thin).toContainEqual([7.777, -9]);
  for (const [i, p] of thin.entries()) if (i > 0) expect(p[0]).toBeGreaterThanOrEqual(thin[i - 1]?.[0] ?? 0);
});

const names: [text: string, name: string | null][] = [
  ["D9", "D9"],
  ["board.D9", "D9"],
  ["R1.1", "R1.1"],
  ["R1.1:A", "R1.1 A"],
  ["R1.1 A", "R1.1 A"],
  ["D9 A", "D9 A"],
  ["A0", "A0"],
  ["A0:V", "A0"],
  ["R1.3", null],
  ["R7.1", null],
  ["", null],
];
for (const [text, name] of names)
  test(`"${text}" is ${name ?? "no leg"}`, () => {
    const probe = readProbe(resistor("void setup() {} void loop() {}"), text);
    expect(probe && probeName(probe)).toBe(name);
  });
