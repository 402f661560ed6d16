// What a person notices of programs that sound, write, fade, move and lose their supply, from C++ to observation.
//
// Expected values follow from the program's own numbers, from the pitch asked for, and from the figures of the servo's data sheet.
import { expect, test } from "vitest";
import { ourLesson, smallLesson } from "./lesson.fixture.ts";
import { rehearseOnce } from "./rehearseOnce.ts";

const lampParts = "R1: { part: resistor, ohms: 220 }\n LED1: { part: led, colour: red }";
const lampNets = "board.D9 R1.1\n R1.2 LED1.anode\n LED1.cathode board.GND";
const lamp = (rehearsal: string, program: string) => smallLesson(lampParts, lampNets, rehearsal, program);
const passed = (lesson: ReturnType<typeof smallLesson>, supply?: string) =>
  rehearseOnce(lesson, supply === undefined ? {} : { supply }).checks.map((c) => c.passed);

test("a tone is heard at its pitch, and is over when it is over", () => {
  const lesson = smallLesson(
    "BZ1: { part: piezo }",
    "board.D8 BZ1.1\n BZ1.2 board.GND",
    `{ at: 50ms, expect: { BZ1: silent } }
     { at: 300ms, expect: { BZ1: { seen: sounding, hertz: 440, tolerance: 1% } } }
     { at: 300ms, expect: { BZ1: { hertz: 494 } } }
     { at: 900ms, expect: { BZ1: { hertz: 494, tolerance: 1% } } }
     { at: 1500ms, expect: { BZ1: silent } }`,
    "void setup() { delay(100); tone(8, 440); delay(500); tone(8, 494, 500); delay(700); } void loop() { delay(10); }",
  );
  // The third is 12 % off, and a tolerance that is not named is 10 %.
  expect(passed(lesson)).toEqual([true, true, false, true, true]);
});
test("a pin that a program switches every 500 µs sounds at 1000 Hz", () => {
  const lesson = smallLesson(
    "BZ1: { part: piezo }",
    "board.D8 BZ1.1\n BZ1.2 board.GND",
    "{ at: 500ms, expect: { BZ1: { hertz: 1000, tolerance: 3% } } }",
    `void setup() { pinMode(8, OUTPUT); }
     void loop() { digitalWrite(8, HIGH); delayMicroseconds(500); digitalWrite(8, LOW); delayMicroseconds(500); }`,
  );
  expect(passed(lesson)).toEqual([true]);
});
test("a buzzer with its own circuit sounds on a steady level, a passive one does not", () => {
  const with_ = (part: string, legs: [string, string]) =>
    smallLesson(
      `BZ1: { part: ${part} }`,
      `board.D8 BZ1.${legs[0]}\n BZ1.${legs[1]} board.GND`,
      "{ at: 500ms, expect: { BZ1: sounding } }",
      "void setup() { pinMode(8, OUTPUT); digitalWrite(8, HIGH); } void loop() { delay(10); }",
    );
  expect(passed(with_("active-buzzer", ["plus", "minus"]))).toEqual([true]);
  expect(passed(with_("piezo", ["1", "2"]))).toEqual([false]);
});

test("the last line of text is what a check sees", () => {
  const lesson = lamp(
    `{ at: 100ms, expect: { text: ready } }
     { at: 1s, expect: { text: { contains: "count 1" } } }
     { at: 1s, expect: { text: ready } }
     { at: 1s, within: 2s, expect: { text: count 3 } }
     { from: 1100ms, to: 3s, expect: { text: { contains: count } } }`,
    `int n = 0;
     void setup() { Serial.begin(9600); Serial.println("ready"); }
     void loop() { delay(700); n = n + 1; Serial.print("count "); Serial.println(n); }`,
  );
  expect(passed(lesson)).toEqual([true, true, false, true, true]);
});
test("text that is sent to the board arrives", () => {
  const lesson = lamp(
    `{ at: 500ms, expect: { LED1: dark } }
     { at: 1s, set: { text: "a" } }
     { at: 1500ms, expect: { LED1: lit } }`,
    `void setup() { Serial.begin(9600); pinMode(9, OUTPUT); }
     void loop() { if (Serial.available() > 0) { if (Serial.read() == 'a') { digitalWrite(9, HIGH); } } delay(5); }`,
  );
  expect(passed(lesson)).toEqual([true, true]);
});

test("a lamp that fades is dark, then dim, then lit", () => {
  const once = rehearseOnce(
    lamp(
      "{ at: 2s, expect: { LED1: lit } }",
      "void setup() { pinMode(9, OUTPUT); for (int i = 0; i < 100; i++) { analogWrite(9, i); delay(20); } } void loop() { delay(10); }",
    ),
  );
  expect(once.observations.filter((o) => o.part === "LED1").map((o) => o.seen)).toEqual(["dark", "dim", "lit"]);
});
test("a program that fades by itself, faster than the eye, is seen at its mean", () => {
  const once = rehearseOnce(
    lamp(
      "{ at: 1s, expect: { LED1: lit } }",
      `void setup() { pinMode(9, OUTPUT); }
       void loop() { digitalWrite(9, HIGH); delay(2); digitalWrite(9, LOW); delay(6); }`,
    ),
  );
  const full = Number(
    rehearseOnce(
      lamp(
        "{ at: 1s, expect: { LED1: lit } }",
        "void setup() { pinMode(9, OUTPUT); digitalWrite(9, HIGH); } void loop() { delay(9); }",
      ),
    ).checks[0]?.figures.amps,
  );
  expect(once.observations.filter((o) => o.part === "LED1").map((o) => o.seen)).toEqual(["lit"]);
  expect(Number(once.checks[0]?.figures.amps)).toBeCloseTo(full / 4, 4);
});

test("a power cut: dark at once, and from the beginning when it is over", () => {
  const lesson = lamp(
    `{ at: 500ms, expect: { LED1: lit } }
     { at: 1s, set: { supply: off } }
     { from: 1100ms, to: 3s, expect: { LED1: dark } }
     { at: 3s, set: { supply: on } }
     { at: 3100ms, expect: { LED1: dark } }
     { at: 3s, within: 2s, expect: { LED1: lit } }`,
    "void setup() { pinMode(9, OUTPUT); digitalWrite(9, HIGH); } void loop() { delay(10); }",
  );
  // The boot loader waits for 1.5 s first.
  expect(passed(lesson)).toEqual([true, true, true, true]);
});

test("a servo on a 9 V zinc-carbon block of 25 Ω pulls the board down: it resets, and that is certain", () => {
  const once = rehearseOnce(ourLesson("barrier"), { supply: "battery-9v 6F22" });
  // At 2.7 V the start takes 2.7 V / (4.8 V / 0.7 A) = 0.39 A: 9 V − 25 Ω · 0.39 A is less than nothing.
  expect(once.supply).toMatchObject({ fits: "does not fit" });
  expect(once.supply?.why).toContain("sags");
  expect(once.supply?.leastVolts).toBeLessThan(2.7);
  expect(once.observations.some((o) => o.part === "board" && o.seen === "resets")).toBe(true);
  expect(once.verdict).toBe("needs another supply");
});
test("a servo takes 0.11 s for 60 degrees", () => {
  const once = rehearseOnce(ourLesson("barrier"), { supply: "adapter 2000mA" });
  const seen = once.observations.filter((o) => o.part === "SERVO1");
  const start = seen.findIndex((o) => o.seen === "moving" && o.ms > 1900);
  expect(seen[start + 1]?.seen).toBe("100 degrees");
  expect((seen[start + 1]?.ms ?? 0) - (seen[start]?.ms ?? 0)).toBeCloseTo((90 / 60) * 110, 0);
});
test("a servo whose signal wire is missing stays where it is", () => {
  const lesson = ourLesson("barrier");
  const nets = lesson.nets.filter((net) => !net.legs.some((l) => l.part === "SERVO1" && l.leg === "signal"));
  const once = rehearseOnce({ ...lesson, nets }, { supply: "adapter 2000mA" });
  expect(once.observations.filter((o) => o.part === "SERVO1").map((o) => o.seen)).toEqual(["90 degrees"]);
});

test("a key that trembles is counted more than once by a program that does not wait", () => {
  const counter = (wait: string) =>
    smallLesson(
      "B1: { part: button, bounce-milliseconds: 5 }",
      "board.D2 B1.1\n B1.2 board.GND",
      `${Array.from(
        { length: 6 },
        (_, i) => `{ at: ${i + 1}s, set: { B1.pressed: true } }\n { at: ${i + 1}.5s, set: { B1.pressed: false } }`,
      ).join("\n")}\n { at: 8s, expect: { text: "6" } }`,
      `int n = 0; int before = HIGH;
       void setup() { Serial.begin(9600); pinMode(2, INPUT_PULLUP); }
       void loop() { int now = digitalRead(2); if (before == HIGH && now == LOW) { n = n + 1; Serial.println(n); } before = now; ${wait} }`,
    );
  expect(rehearseOnce(counter("delay(20);")).checks[0]).toMatchObject({ passed: true, seen: "6" });
  expect(Number(rehearseOnce(counter("")).checks[0]?.seen)).toBeGreaterThan(6);
});

test("what a check says about itself: where it stands, what was seen", () => {
  const check = rehearseOnce(
    lamp(
      "{ at: 1s, expect: { LED1: dark } }",
      "void setup() { pinMode(9, OUTPUT); digitalWrite(9, HIGH); } void loop() { delay(9); }",
    ),
  ).checks[0];
  expect(check).toMatchObject({ ms: 1000, passed: false, undetermined: false, hangsOn: [], seen: "lit", line: 12 });
});
test("a voltage is checked as a meter shows it", () => {
  const check = (volts: number, tolerance: string) =>
    passed(
      smallLesson(
        "R1: { part: resistor, ohms: 10k }\n R2: { part: resistor, ohms: 30k }",
        "board.5V R1.1\n R1.2 R2.1\n R2.2 board.GND",
        `{ at: 500ms, expect: { volts: { at: R2.1, is: ${volts}, tolerance: ${tolerance} } } }`,
        "void setup() {} void loop() { delay(9); }",
      ),
    )[0];
  // 5 V less 45 mA · 1.046 Ω, three quarters of it.
  expect([check(3.715, "1%"), check(3.5, "1%"), check(3.5, "10%")]).toEqual([true, false, true]);
});
