// Which waveform of a lesson is worth a picture. Expected: what each lesson's program does, by reading it.
import { expect, test } from "vitest";
import { ourLesson, smallLesson } from "./lesson.fixture.ts";
import { tellingTrace } from "./tellingTrace.ts";

const cases: [lesson: string, at: string | null, msOfWindow: number][] = [
  ["lighthouse", null, 0],
  ["quay-lights", null, 0],
  ["dimmer", "D9", 10],
  ["quay-lamp-at-dusk", "D9", 10],
  // Pulses every 20 ms: ten divisions of 10 ms.
  ["barrier", "D6", 100],
  ["signal-lamp", "D2", 5],
];
for (const [lesson, at, ms] of cases)
  test(`${lesson}: ${at ?? "a meter shows all there is"}`, () => {
    const trace = tellingTrace(ourLesson(lesson));
    expect(trace?.probes[0]?.at.leg ?? null).toBe(at);
    if (trace) expect(trace.toMs - trace.fromMs).toBeCloseTo(ms, 6);
  });

test("a capacitor is shown from where it begins to charge to where it nearly is", () => {
  const lesson = smallLesson(
    "R1: { part: resistor, ohms: 10k }\n C1: { part: capacitor, farads: 10u }",
    "board.D9 R1.1\n R1.2 C1.1\n C1.2 board.GND",
    "{ at: 3s, expect: { board: running } }",
    "void setup() { pinMode(9, OUTPUT); delay(1000); digitalWrite(9, HIGH); } void loop() {}",
  );
  const trace = tellingTrace(lesson);
  expect(trace?.probes[0]?.at).toEqual({ part: "C1", leg: "1" });
  // It begins at 1 s; three time constants of 0.1 s are in the window.
  expect(trace?.fromMs).toBeGreaterThan(800);
  expect(trace?.fromMs).toBeLessThan(1000);
  expect(trace?.toMs).toBeGreaterThan(1300);
  expect(trace?.toMs).toBeLessThan(2100);
});
