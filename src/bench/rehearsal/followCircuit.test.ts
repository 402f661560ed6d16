// Circuits with a memory, rehearsed. Expected: the formulas of charging and discharging, V = V₀·(1 − exp(−t/RC)) and
// I = I₀·exp(−t·R/L) (Kuphaldt, Lessons in Electric Circuits, DC, chapter "RC and L/R time constants"), the mean of a
// square wave for a low-pass, and ω = ω₀·(1 − exp(−t/τ)) with τ = J·R/k² for a motor (any textbook of electrical machines).
import { expect, test } from "vitest";
import type { Lesson } from "../lesson/index.ts";
import { ledColour } from "../parts/index.ts";
import { smallLesson } from "./lesson.fixture.ts";
import type { Probe } from "./readProbe.ts";
import { rehearseOnce } from "./rehearseOnce.ts";
import { traceLesson } from "./traceLesson.ts";

/** What the board wrote, line by line. */
const textOf = (lesson: Lesson) =>
  rehearseOnce(lesson)
    .observations.filter((o) => o.part === "text")
    .map((o) => o.seen);
const seenOf = (lesson: Lesson, part: string) => rehearseOnce(lesson).observations.filter((o) => o.part === part);
const probe = (part: string, leg: string, unit: "V" | "A" = "V"): Probe => ({ at: { part, leg }, unit });

const timer = (ohms: number, farads: number) =>
  smallLesson(
    `R1: { part: resistor, ohms: ${ohms} }
     C1: { part: capacitor, farads: ${farads} }`,
    `board.D9 R1.1
     R1.2 C1.1 board.A0
     C1.2 board.GND`,
    "{ at: 4s, expect: { board: running } }",
    `void setup() {
       Serial.begin(115200);
       pinMode(9, OUTPUT);
       digitalWrite(9, LOW);
       delay(500);
       unsigned long begin = micros();
       digitalWrite(9, HIGH);
       while (analogRead(A0) < 647) { }
       Serial.println(micros() - begin);
     }
     void loop() {}`,
  );

// 647 of 1024 steps are 63.2 % of the supply: R·C, with the pin's 25 Ω before the resistor. A reading itself takes 0.11 ms.
const times: [ohms: number, farads: number][] = [
  [10_000, 10e-6],
  [47_000, 10e-6],
  [100_000, 1e-6],
  [4_700, 100e-6],
];
for (const [ohms, farads] of times)
  test(`a program measures R·C of ${ohms} Ω and ${farads * 1e6} µF within 1 %`, () => {
    const [micros] = textOf(timer(ohms, farads));
    const expected = (ohms + 25) * farads * -Math.log(1 - 647 / 1024);
    expect(Number(micros) * 1e-6).toBeGreaterThan(0.99 * expected);
    expect(Number(micros) * 1e-6).toBeLessThan(1.01 * expected + 0.00023);
  });

test("a low-pass of PWM is read as its mean, with the ripple of the formula", () => {
  const lesson = smallLesson(
    `R1: { part: resistor, ohms: 10k }
     C1: { part: capacitor, farads: 10u }`,
    `board.D9 R1.1
     R1.2 C1.1 board.A0
     C1.2 board.GND`,
    "{ at: 2s, expect: { volts: { at: C1.1, is: 1.2443, tolerance: 1% } } }",
    `void setup() { Serial.begin(9600); pinMode(9, OUTPUT); analogWrite(9, 64); delay(1500); Serial.println(analogRead(A0)); }
     void loop() {}`,
  );
  const once = rehearseOnce(lesson);
  expect(once.checks[0]?.passed).toBe(true);
  const code = Number(once.observations.find((o) => o.part === "text")?.seen);
  // 64/255 of 1024 steps is 257.0; the ripple is V·D·(1 − D)·T/RC = 20 mV from top to bottom, ±2 steps.
  expect(Math.abs(code - (1024 * 64) / 255)).toBeLessThan(3.2);
  const trace = traceLesson(lesson, { probes: [probe("C1", "1")], fromMs: 1500, toMs: 1510 });
  const { least = 0, most = 0 } = trace.probes[0] ?? {};
  const ripple = (4.953 * (64 / 255) * (191 / 255)) / (490.196 * 10_025 * 10e-6);
  expect(most - least).toBeCloseTo(ripple, 3);
});

/**
 * s in which an LED (red: IS, N and RS of bench/parts) behind R fades from one current to another, fed by a capacitor with its leak:
 * C·dV/dt = −I − V/R_leak with V = I·(R + RS) + N·VT·ln(I/IS + 1), in ten thousand steps of the current.
 */
function fadeSeconds(from: number, to: number, farads: number, ohms: number): number {
  const { saturationAmps, emission, seriesOhms } = ledColour("red");
  const nVt = emission * 0.025864917;
  const leakOhms = 1 / (0.01 * farads);
  const volts = (amps: number) => amps * (ohms + seriesOhms) + nVt * Math.log(amps / saturationAmps + 1);
  let seconds = 0;
  const steps = 10_000;
  for (let k = 0; k < steps; k += 1) {
    const [a, b] = [k, k + 1].map((i) => from * (to / from) ** (i / steps)) as [number, number];
    const middle = (a + b) / 2;
    seconds += (farads * (volts(a) - volts(b))) / (middle + volts(middle) / leakOhms);
  }
  return seconds;
}

test("an LED with a capacitor fades out after the pin lets go, dim and dark when the formula says", () => {
  const lesson = smallLesson(
    `R1: { part: resistor, ohms: 100 }
     C1: { part: electrolytic, farads: 470u }
     R2: { part: resistor, ohms: 470 }
     LED1: { part: led, colour: red }`,
    `board.D9 R1.1
     R1.2 C1.plus R2.1
     R2.2 LED1.anode
     LED1.cathode C1.minus board.GND`,
    "{ at: 6s, expect: { LED1: dark } }",
    `void setup() { pinMode(9, OUTPUT); digitalWrite(9, HIGH); delay(2000); pinMode(9, INPUT); } void loop() {}`,
  );
  const seen = seenOf(lesson, "LED1");
  const last = seen.filter((o) => o.ms > 1900);
  expect(last.map((o) => o.seen)).toEqual(["dim", "dark"]);
  const amps = Number(traceLesson(lesson, { probes: [probe("LED1", "anode", "A")], fromMs: 1998, toMs: 1999 }).probes[0]?.most);
  expect(amps).toBeGreaterThan(0.004);
  const [dim = 0, dark = 0] = last.map((o) => (o.ms - 2000) / 1000);
  expect(dim).toBeCloseTo(fadeSeconds(amps, 0.001, 470e-6, 470), 2);
  expect(dark / fadeSeconds(amps, 0.00005, 470e-6, 470)).toBeCloseTo(1, 2);
});

test("a capacitor beside a button keeps its bounce from the program", () => {
  const lesson = (farads: string) =>
    smallLesson(
      `B1: { part: button, bounce-milliseconds: 5 }
       R1: { part: resistor, ohms: 10k }
       R2: { part: resistor, ohms: 1k }
       C1: { part: capacitor, farads: ${farads} }`,
      `board.5V R1.1
       R1.2 board.D2 R2.1 C1.1
       R2.2 B1.1
       C1.2 B1.2 board.GND`,
      "{ at: 500ms, set: { B1.pressed: true } }\n{ at: 1s, expect: { board: running } }",
      `int falls = 0; int before = HIGH;
       void setup() { Serial.begin(9600); pinMode(2, INPUT); }
       void loop() {
         int now = digitalRead(2);
         if (now == LOW && before == HIGH) { falls = falls + 1; Serial.println(falls); }
         before = now;
       }`,
    );
  expect(textOf(lesson("10p")).length).toBeGreaterThan(1);
  // 10 kΩ · 4.7 µF = 47 ms: openings of at most 5 ms lift it by less than a tenth of the supply.
  expect(textOf(lesson("4.7u"))).toEqual(["1"]);
});

const fan = (rehearsal: string, program: string) =>
  smallLesson(
    `M1: { part: dc-motor }
     Q1: { part: npn, type: PN2222A }
     R1: { part: resistor, ohms: 470 }
     D1: { part: diode, type: 1N4007 }`,
    `board.D9 R1.1
     R1.2 Q1.base
     Q1.emitter board.GND
     board.5V M1.1 D1.cathode
     M1.2 Q1.collector D1.anode`,
    rehearsal,
    program,
  );
const on = "void setup() { pinMode(9, OUTPUT); digitalWrite(9, HIGH); } void loop() { delay(10); }";
const strong = "adapter 2000mA";

test("a motor runs up with its time constant: its current falls from the stall to running free", () => {
  const { probes } = traceLesson(fan("{ at: 1s, expect: { M1: turning } }", on), {
    probes: [probe("M1", "1", "A"), probe("M1", "1"), probe("M1", "2")],
    fromMs: 0,
    toMs: 600,
    supply: strong,
    mostPoints: 100_000,
  });
  const at = (k: number, ms: number) => {
    const points = probes[k]?.points ?? [];
    const i = points.findIndex(([s]) => s >= ms / 1000);
    const [[t0, a], [t1, b]] = [points[i - 1] ?? [0, 0], points[i] ?? [0, 0]];
    return a + ((b - a) * (ms / 1000 - t0)) / (t1 - t0 || 1);
  };
  // k = (6 V − 70 mA · 12 Ω)/1050 rad/s, J = 50 ms · k²/R. The resistance before it, about 1.05 Ω of supply and transistor, is seen as
  // well: I(t) = I∞ + (I₀ − I∞)·exp(−t/τ) with τ = J·(R + R₀)/k².
  const final = at(0, 599);
  expect(final).toBeCloseTo(0.07, 3);
  const outside = (at(1, 599) - at(2, 599) - (at(1, 2) - at(2, 2))) / (at(0, 2) - final);
  const tau = (0.05 * (12 + outside)) / 12;
  for (const ms of [20, 50, 100, 150]) {
    const expected = final + (at(0, 2) - final) * Math.exp(-(ms - 2) / 1000 / tau);
    expect(Math.abs(at(0, ms) / expected - 1)).toBeLessThan(0.02);
  }
});

test("a motor turns, stalls when its shaft is held, turns again, and stops", () => {
  const lesson = fan(
    `{ at: 1s, set: { M1.held: true } }
     { at: 1500ms, set: { M1.held: false } }
     { at: 3s, expect: { board: running } }`,
    "void setup() { pinMode(9, OUTPUT); digitalWrite(9, HIGH); delay(2000); digitalWrite(9, LOW); } void loop() { delay(10); }",
  );
  const seen = rehearseOnce(lesson, { supply: strong }).observations.filter((o) => o.part === "M1");
  expect(seen.map((o) => o.seen).filter((w, i, all) => w !== all[i - 1])).toEqual(["turning", "stalled", "turning", "stopped"]);
  // Without current only its friction brakes it: ω = 860 rad/s, dω/dt = −k·70 mA/J.
  const k = (6 - 0.07 * 12) / 1050;
  const coasts = (4.8 - 0.07 * 12) / k / ((k * 0.07) / ((0.05 * k * k) / 12));
  expect(Math.abs(((seen.at(-1)?.ms ?? 0) - 2000) / 1000 / coasts - 1)).toBeLessThan(0.1);
});

test("a relay with its diode pulls after L/R and lets go later than without", () => {
  const lesson = smallLesson(
    `RL1: { part: relay }
     Q1: { part: npn, type: PN2222A }
     R1: { part: resistor, ohms: 470 }
     D1: { part: diode, type: 1N4007 }`,
    `board.D9 R1.1
     R1.2 Q1.base
     Q1.emitter board.GND
     board.5V RL1.coil1 D1.cathode
     RL1.coil2 Q1.collector D1.anode`,
    "{ at: 1s, expect: { RL1: off } }",
    "void setup() { pinMode(9, OUTPUT); delay(100); digitalWrite(9, HIGH); delay(400); digitalWrite(9, LOW); } void loop() { delay(10); }",
  );
  const once = rehearseOnce(lesson, { supply: strong });
  const relay = once.observations.filter((o) => o.part === "RL1");
  expect(relay.map((o) => o.seen)).toEqual(["off", "on", "off"]);
  const amps = Number(
    traceLesson(lesson, { probes: [probe("RL1", "coil1", "A")], fromMs: 480, toMs: 490, supply: strong }).probes[0]?.most,
  );
  const tau = 0.2 / 70;
  // It pulls at 3.75 V of its 70 Ω, and lets go below 0.5 V; the diode's 0.7 V and the current it had decide how long that takes.
  const pulls = tau * Math.log(amps / (amps - 3.75 / 70));
  expect(((relay[1]?.ms ?? 0) - 100) / 1000).toBeGreaterThan(0.9 * pulls);
  expect(((relay[1]?.ms ?? 0) - 100) / 1000).toBeLessThan(1.15 * pulls + 0.0003);
  const lets = tau * Math.log((amps + 0.7 / 70) / (0.5 / 70 + 0.7 / 70));
  expect(((relay[2]?.ms ?? 0) - 500) / 1000).toBeGreaterThan(0.85 * lets);
  expect(((relay[2]?.ms ?? 0) - 500) / 1000).toBeLessThan(1.15 * lets + 0.0003);
});

test("100 µF beside a servo do not carry its start, and the trace shows how fast the supply sags", () => {
  const lesson = (more: string, net: string) =>
    smallLesson(
      `SERVO1: { part: servo }\n ${more}`,
      `board.D9 SERVO1.signal
       board.5V SERVO1.plus ${net.split("|")[0]}
       SERVO1.minus board.GND ${net.split("|")[1] ?? ""}`,
      "{ at: 1s, expect: { SERVO1: 90 degrees } }",
      "#include <Servo.h>\nServo arm;\nvoid setup() { arm.attach(9); arm.write(0); delay(600); arm.write(90); } void loop() {}",
    );
  const bare = rehearseOnce(lesson("", "|"), { supply: strong });
  const kept = rehearseOnce(lesson("C1: { part: electrolytic, farads: 100u }", "C1.plus|C1.minus"), { supply: strong });
  expect(kept.problems).toEqual([]);
  expect(kept.supply?.leastVolts).toBeCloseTo(bare.supply?.leastVolts ?? 0, 2);
  const { probes } = traceLesson(lesson("C1: { part: electrolytic, farads: 100u }", "C1.plus|C1.minus"), {
    probes: [probe("board", "5V")],
    fromMs: 595,
    toMs: 625,
    supply: strong,
    mostPoints: 10_000,
  });
  const { points = [], least = 0 } = probes[0] ?? {};
  const began = points.findIndex(([, v], i) => i > 0 && v < (points[i - 1]?.[1] ?? 0) - 1e-4);
  const [t0, v0] = points[began - 1] ?? [0, 0];
  // Adapter, cable and fuse, 0.1 + 0.546 + 0.4 Ω, against the servo's 4.8 V/0.7 A and the board's own 111 Ω, times 100 µF.
  const ohms = 1 / (1 / 1.046 + 0.7 / 4.8 + 0.045 / 5);
  const [t1] = points.find(([, v]) => v <= v0 - (v0 - least) * (1 - Math.exp(-1))) ?? [0];
  expect((t1 - t0) / (ohms * 100e-6)).toBeGreaterThan(0.93);
  expect((t1 - t0) / (ohms * 100e-6)).toBeLessThan(1.1);
});

test("a buzzer behind a transistor sounds at its pitch while another capacitor is followed", () => {
  const lesson = smallLesson(
    `BZ1: { part: piezo }
     R1: { part: resistor, ohms: 10k }
     C1: { part: capacitor, farads: 10u }`,
    `board.D8 BZ1.1
     BZ1.2 C1.2 board.GND
     board.D9 R1.1
     R1.2 C1.1 board.A0`,
    "{ at: 600ms, expect: { BZ1: { hertz: 440 } } }\n{ at: 1500ms, expect: { BZ1: silent } }",
    `void setup() { pinMode(9, OUTPUT); tone(8, 440, 1000); }
     void loop() { digitalWrite(9, HIGH); delay(70); digitalWrite(9, LOW); delay(70); }`,
  );
  const once = rehearseOnce(lesson);
  expect(once.problems).toEqual([]);
  expect(once.checks.map((c) => c.passed)).toEqual([true, true]);
  expect(once.observations.filter((o) => o.part === "BZ1").map((o) => o.seen)).toEqual(["sounding", "silent"]);
});

test("turns that are leapt over end where turn by turn they would: a low-pass at every 100 ms, against its own waveform", () => {
  const moments = [100, 200, 300, 400, 500, 600, 700, 800, 900];
  const lesson = smallLesson(
    `R1: { part: resistor, ohms: 10k }
     C1: { part: capacitor, farads: 22u }
     R2: { part: resistor, ohms: 22k }
     C2: { part: capacitor, farads: 10u }`,
    `board.D9 R1.1
     R1.2 C1.1 R2.1
     R2.2 C2.1
     C1.2 C2.2 board.GND`,
    moments.map((ms) => `{ at: ${ms}ms, expect: { volts: { at: C2.1, is: 1 } } }`).join("\n"),
    "void setup() { pinMode(9, OUTPUT); analogWrite(9, 100); } void loop() { delay(1000); }",
  );
  const played = rehearseOnce(lesson).checks.map((c) => Number(c.figures.volts));
  const { points = [] } =
    traceLesson(lesson, { probes: [probe("C2", "1")], fromMs: 0, toMs: 1000, mostPoints: 1e6 }).probes[0] ?? {};
  for (const [i, ms] of moments.entries()) {
    const drawn = points.find(([s]) => s >= ms / 1000)?.[1] ?? 0;
    expect(Math.abs((played[i] ?? 0) - drawn)).toBeLessThan(0.005);
  }
  expect(played[8]).toBeGreaterThan(0.9);
});

test("a motor on cells of its own turns only where the cells share the board's ground, and apart they are told", () => {
  const lesson = (ground: string) =>
    smallLesson(
      `M1: { part: dc-motor }
       Q1: { part: npn, type: PN2222A }
       R1: { part: resistor, ohms: 470 }
       D1: { part: diode, type: 1N4007 }
       BAT1: { part: battery-4aa }`,
      `board.D9 R1.1
       R1.2 Q1.base
       Q1.emitter BAT1.minus ${ground}
       BAT1.plus M1.1 D1.cathode
       M1.2 Q1.collector D1.anode`,
      "{ at: 1s, expect: { M1: turning } }",
      on,
    );
  const [joined, apart] = ["board.GND", ""].map((ground) => rehearseOnce(lesson(ground), { supply: strong }));
  expect(joined?.checks[0]?.seen).toBe("turning");
  expect(joined?.doubts.map((d) => d.code)).not.toContain("grounds-apart");
  expect(apart?.checks[0]?.seen).toBe("stopped");
  expect(apart?.doubts.map((d) => [d.code, d.place])).toContainEqual(["grounds-apart", "BAT1"]);
});
