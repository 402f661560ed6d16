// Which circuits have to be followed in time. Expected: R·C and L/R by hand, against what a person, a pin or a switching pin notices.
import { expect, test } from "vitest";
import { makeBuild } from "./build.ts";
import { smallLesson } from "./lesson.fixture.ts";
import { needsFollowing } from "./needsFollowing.ts";
import { playRunUntil } from "./playRuns.ts";
import { programPlayer } from "./programPlayer.ts";
import { setTable } from "./table.ts";

const blink =
  "void setup() { pinMode(9, OUTPUT); } void loop() { digitalWrite(9, HIGH); delay(300); digitalWrite(9, LOW); delay(300); }";

const pwm = "void setup() { pinMode(9, OUTPUT); analogWrite(9, 100); } void loop() { delay(100); }";
const rc = (ohms: string, farads: string, more = "") =>
  [
    `R1: { part: resistor, ohms: ${ohms} }\n C1: { part: capacitor, farads: ${farads} }`,
    `board.D9 R1.1\n R1.2 C1.1 ${more}\n C1.2 board.GND`,
  ] as const;

const cases: [name: string, parts: string, nets: string, program: string, followed: boolean][] = [
  ["220 Ω and 100 µF at a pin: 22 ms and more", ...rc("220", "100u"), blink, true],
  ["1 kΩ and 100 nF at a pin: 0.1 ms", ...rc("1k", "100n"), blink, false],
  ["1 kΩ and 100 nF that a pin reads: 0.1 ms is as long as a reading", ...rc("1k", "100n", "board.A0"), blink, true],
  ["1 kΩ and 1 nF that a pin reads: 1 µs", ...rc("1k", "1n", "board.A0"), blink, false],
  ["1 kΩ and 100 nF behind PWM of 2 ms: a twentieth of a turn", ...rc("1k", "100n"), pwm, true],
  ["1 kΩ and 10 nF behind PWM: a two-hundredth", ...rc("1k", "10n"), pwm, false],
  [
    "a bypass of 100 µF across the supply, which does not change",
    "C1: { part: electrolytic, farads: 100u }",
    "board.5V C1.plus\n C1.minus board.GND",
    blink,
    false,
  ],
  ["a piezo, 20 nF, whose pin floats before setup()", "BZ1: { part: piezo }", "board.D9 BZ1.1\n BZ1.2 board.GND", blink, false],
  [
    "a coil of 100 mH and 10 Ω with its diode: 10 ms",
    "R1: { part: resistor, ohms: 220 }\n L1: { part: inductor, henries: 100m, ohms: 10 }\n D1: { part: diode }",
    "board.D9 R1.1\n R1.2 L1.1 D1.cathode\n L1.2 D1.anode board.GND",
    blink,
    true,
  ],
];
for (const [name, parts, nets, program, followed] of cases)
  test(name, () => {
    const lesson = smallLesson(parts, nets, "{ at: 1s, expect: { board: running } }", program);
    const { build } = makeBuild(lesson);
    const { player } = programPlayer(lesson);
    if (!build || !player) throw new Error("not built");
    const table = setTable(build);
    const run = playRunUntil(lesson, table, player, { inputs: "low", supply: "holds" }, 1.2, 1);
    expect(needsFollowing(table, [run])).toBe(followed);
  });
