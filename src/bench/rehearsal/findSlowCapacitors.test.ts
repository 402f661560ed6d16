// Which capacitors a rehearsal can follow. Expected: R·C by hand, against 10 ms.
import { expect, test } from "vitest";
import { smallLesson } from "./lesson.fixture.ts";
import { rehearseOnce } from "./rehearseOnce.ts";

const blink =
  "void setup() { pinMode(9, OUTPUT); } void loop() { digitalWrite(9, HIGH); delay(300); digitalWrite(9, LOW); delay(300); }";

const cases: [name: string, parts: string, nets: string, followed: boolean][] = [
  [
    "220 Ω and 100 µF at a pin: 22 ms and more",
    "R1: { part: resistor, ohms: 220 }\n C1: { part: capacitor, farads: 100u }",
    "board.D9 R1.1\n R1.2 C1.1\n C1.2 board.GND",
    false,
  ],
  [
    "1 kΩ and 100 nF at a pin: 0.1 ms",
    "R1: { part: resistor, ohms: 1k }\n C1: { part: capacitor, farads: 100n }",
    "board.D9 R1.1\n R1.2 C1.1\n C1.2 board.GND",
    true,
  ],
  [
    "a bypass of 100 µF across the supply, which does not change",
    "C1: { part: electrolytic, farads: 100u }",
    "board.5V C1.plus\n C1.minus board.GND",
    true,
  ],
  ["a piezo, 20 nF, whose pin floats before setup()", "BZ1: { part: piezo }", "board.D9 BZ1.1\n BZ1.2 board.GND", true],
];
for (const [name, parts, nets, followed] of cases)
  test(name, () => {
    const once = rehearseOnce(smallLesson(parts, nets, "{ at: 1s, expect: { board: running } }", blink));
    expect(once.verdict).toBe(followed ? "ready" : "not rehearsed yet");
    expect(once.problems).toEqual(followed ? [] : [{ code: "rehearsal.memoryNotFollowed", part: "C1" }]);
  });
