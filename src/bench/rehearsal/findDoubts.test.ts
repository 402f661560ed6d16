// What nobody can foresee is told with its place and its figure, just outside of what the data sheets promise and not just inside.
// Values by Ohm's law; what the converter leaves over by the charging of a capacitor.
import { describe, expect, test } from "vitest";
import { smallLesson } from "./lesson.fixture.ts";
import { unsettledSteps } from "./readInput.ts";
import { rehearseOnce } from "./rehearseOnce.ts";

const reading = (how: string, parts: string, nets: string) =>
  smallLesson(
    `PS1: { part: adapter, volts: 5, milliamps: 20000, ohms: 1m }\n ${parts}`,
    nets,
    "{ at: 500ms, expect: { board: running } }",
    `int seen; void setup() { ${how.includes("UP") ? "pinMode(A0, INPUT_PULLUP);" : ""} } void loop() { seen = ${how.replace("UP", "")}; delay(10); }`,
  );
/** A divider of 5 V whose middle is at A0: so much of the supply, behind so many ohms. */
const divider = (how: string, share: number, ohms: number) =>
  reading(
    how,
    `R1: { part: resistor, ohms: ${ohms / share} }\n R2: { part: resistor, ohms: ${ohms / (1 - share)} }`,
    "PS1.plus board.5V R1.1\n R1.2 R2.1 board.A0\n R2.2 PS1.minus board.GND",
  );
const doubtsOf = (lesson: ReturnType<typeof smallLesson>, supply?: string) =>
  rehearseOnce(lesson, supply === undefined ? {} : { supply }).doubts;

describe("an input that nothing holds", () => {
  const key = (mode: string) =>
    smallLesson(
      "B1: { part: button }",
      "board.D2 B1.1\n B1.2 board.GND",
      "{ at: 500ms, expect: { board: running } }",
      `int seen; void setup() { pinMode(2, ${mode}); } void loop() { seen = digitalRead(2); delay(10); }`,
    );
  test("is told, even where no check hangs on it", () => {
    const once = rehearseOnce(key("INPUT"));
    expect(once.checks.every((c) => c.passed)).toBe(true);
    expect(once.doubts.map((d) => [d.code, d.place, d.ms])).toEqual([["input-floats", "board.D2", 0]]);
  });
  test("is not told with its pull-up", () => expect(doubtsOf(key("INPUT_PULLUP"))).toEqual([]));
  test("a check that comes out the same low, high and noisy is decided; one that does not names the net", () => {
    const lesson = smallLesson(
      "R1: { part: resistor, ohms: 220 }\n LED1: { part: led, colour: red }\n R2: { part: resistor, ohms: 220 }\n LED2: { part: led, colour: red }\n B1: { part: button }",
      "board.D9 R1.1\n R1.2 LED1.anode\n board.D8 R2.1\n R2.2 LED2.anode\n LED1.cathode LED2.cathode B1.2 board.GND\n board.D2 B1.1",
      "{ at: 500ms, expect: { LED1: lit } }\n { at: 500ms, expect: { LED2: lit } }",
      `void setup() { pinMode(9, OUTPUT); pinMode(8, OUTPUT); digitalWrite(9, HIGH); }
       void loop() { digitalWrite(8, digitalRead(2)); delay(10); }`,
    );
    expect(rehearseOnce(lesson).checks.map((c) => [c.passed, c.undetermined, c.hangsOn])).toEqual([
      [true, false, []],
      [false, true, ["board.D2"]],
    ]);
  });
});

// ATmega328P data sheet, table 29-1: at most 0.3 of the supply is LOW, at least 0.6 is HIGH.
for (const [share, told] of [
  [0.295, false],
  [0.305, true],
  [0.5, true],
  [0.595, true],
  [0.605, false],
] as const)
  test(`${share} of the supply read as a level: ${told ? "in between" : "firm"}`, () => {
    const doubts = doubtsOf(divider("digitalRead(A0)", share, 1000));
    expect(doubts.map((d) => d.code)).toEqual(told ? ["input-between"] : []);
    if (!told) return;
    expect(doubts[0]?.value).toBeCloseTo(5 * share, 2);
    expect([doubts[0]?.least, doubts[0]?.most].map((v) => Number(v?.toFixed(2)))).toEqual([1.5, 3]);
  });

// ATmega328P data sheet: sources up to 10 kΩ are read as exactly as promised; 1 µA of leakage, 0.5 V of it is ours: 250 kΩ.
for (const [ohms, code] of [
  [9_800, undefined],
  [10_200, "source-impedance"],
  [245_000, "source-impedance"],
  [255_000, "input-weak"],
] as const)
  test(`a source of ${ohms} Ω read as a number: ${code ?? "firm"}`, () => {
    const doubts = doubtsOf(divider("analogRead(A0)", 0.5, ohms));
    expect(doubts.map((d) => d.code)).toEqual(code === undefined ? [] : [code]);
    if (code) expect((doubts[0]?.value ?? 0) / ohms).toBeCloseTo(1, 3);
  });
// e^(−12 µs / (R + 100 kΩ)·14 pF) of 1024 steps: half a step at the data sheet's 10 kΩ, 14 steps at 100 kΩ.
for (const [ohms, steps] of [
  [10_000, 1024 * Math.exp(-12 / 1.54)],
  [100_000, 1024 * Math.exp(-12 / 2.8)],
] as const)
  test(`${ohms} Ω leave ${steps.toFixed(1)} steps`, () => expect(unsettledSteps(ohms)).toBeCloseTo(steps, 6));
test("half a step is left at the 10 kΩ of the data sheet, which is what it calls exact", () =>
  expect(unsettledSteps(10_000)).toBeLessThan(0.5));

// The board's own 45 mA at 5 V are 111 Ω; a supply of 5 V behind R leaves 5 · 111 / (111 + R).
describe("the chip between its brown-out of 2.7 V and the 3.78 V of its clock", () => {
  const own = 5 / 0.045;
  for (const [volts, passed, undetermined, doubts] of [
    [2.65, false, false, []],
    [2.75, false, true, ["chip-between"]],
    [3.7, false, true, ["chip-between"]],
    [3.86, true, false, []],
  ] as const)
    test(`${volts} V`, () => {
      const once = rehearseOnce(
        smallLesson(
          `PS1: { part: adapter, volts: 5, milliamps: 20000, ohms: ${own * (5 / volts - 1)} }`,
          "PS1.plus board.5V\n PS1.minus board.GND",
          "{ at: 500ms, expect: { board: running } }",
          "void setup() {} void loop() { delay(10); }",
        ),
      );
      expect(once.checks.map((c) => [c.passed, c.undetermined])).toEqual([[passed, undetermined]]);
      expect(once.doubts.map((d) => d.code)).toEqual(doubts);
      expect(once.supply?.leastVolts).toBeCloseTo(volts, 3);
      expect(once.supply?.fits).toBe(volts < 2.7 ? "does not fit" : undetermined ? "undetermined" : "fits");
    });
});

describe("currents between what is promised and what is forbidden", () => {
  /** 5 V through port or adapter 0.1 Ω, cable 0.546 Ω and fuse 0.4 Ω; the board's own 45 mA at 5 V beside the load. */
  const load = (amps: number) =>
    smallLesson(
      `R1: { part: resistor, ohms: ${1 / (1 / (5 / amps - 1.046) - 0.045 / 5)}, watts: 50 }`,
      "board.5V R1.1\n R1.2 board.GND",
      "{ at: 3s, expect: { board: running } }",
      "void setup() {} void loop() { delay(10); }",
    );
  for (const [amps, supply, codes] of [
    [0.49, "usb-port 500mA", []],
    [0.51, "usb-port 500mA", ["fuse-between", "supply-over"]],
    [0.49, "adapter 2000mA", []],
    [0.51, "adapter 2000mA", ["fuse-between"]],
    [0.98, "adapter 2000mA", ["fuse-between"]],
    // Over its 1 A the fuse opens: no doubt is left, the board is off.
    [1.02, "adapter 2000mA", []],
  ] as const)
    test(`${amps} A from ${supply}`, () =>
      expect(
        doubtsOf(load(amps), supply)
          .map((d) => d.code)
          .sort(),
      ).toEqual(codes));
  test("a fuse that opens takes the board with it", () =>
    expect(rehearseOnce(load(1.02), { supply: "adapter 2000mA" }).checks[0]?.passed).toBe(false));
});

describe("a supply that folds back: beyond what it promises it may hold its voltage, or its current", () => {
  // 5 V behind 0.1 Ω that promise 600 mA, without a fuse. At 600 mA the load and the board have 0.6 A · R, and the chip wants 3.78 V.
  const own = 5 / 0.045;
  for (const [share, decided] of [
    [0.98, false],
    [1.02, true],
  ] as const)
    test(`${share} · 3.78 V are left when it folds back: ${decided ? "the board runs either way" : "nobody can say"}`, () => {
      const both = (share * 3.78) / 0.6;
      const once = rehearseOnce(
        smallLesson(
          `PS1: { part: adapter, volts: 5, milliamps: 600, ohms: 0.1 }\n R1: { part: resistor, ohms: ${1 / (1 / both - 1 / own)}, watts: 50 }`,
          "PS1.plus board.5V R1.1\n PS1.minus board.GND R1.2",
          "{ at: 500ms, expect: { board: running } }",
          "void setup() {} void loop() { delay(10); }",
        ),
      );
      expect(once.checks.map((c) => [c.passed, c.undetermined])).toEqual([[decided, !decided]]);
      if (!decided) expect(once.checks[0]?.hangsOn).toEqual([once.supply?.supply]);
      const doubt = once.doubts.find((d) => d.code === "supply-over");
      expect(doubt?.value).toBeCloseTo(5 / (both + 0.1), 4);
      expect(doubt?.most).toBe(0.6);
    });
});

describe("a fuse that is shorted for a moment", () => {
  // 5 V through 0.1 + 0.546 + 0.4 Ω, the key's 0.1 Ω and R; 1206L050: 0.1 s at 8 A, so 0.1 · (64 − 0.25) / (I² − 0.25) at I.
  for (const amps of [2.5, 3, 4]) {
    const seconds = Math.min(1, (0.1 * (64 - 0.25)) / (amps ** 2 - 0.25));
    for (const [share, opens] of [
      [0.9, false],
      [1.1, true],
    ] as const)
      test(`${amps} A for ${(share * seconds).toFixed(2)} s: ${opens ? "it opens and the board stays off" : "it holds and the board starts anew"}`, () => {
        const ms = (s: number) => `${(1000 * s).toFixed(3)}ms`;
        const lesson = smallLesson(
          `B1: { part: button }\n R1: { part: resistor, ohms: ${5 / amps - 1.046 - 0.1}, watts: 50 }`,
          "board.5V B1.1\n B1.2 R1.1\n R1.2 board.GND",
          `{ at: 1s, set: { B1.pressed: true } }
           { at: ${ms(1 + share * seconds)}, set: { B1.pressed: false } }
           { at: 5s, expect: { board: running } }`,
          "void setup() {} void loop() { delay(10); }",
        );
        const once = rehearseOnce(lesson, { supply: "adapter 20000mA" });
        expect(once.checks[0]?.passed).toBe(!opens);
      });
  }
});

test("a second supply whose minus is not joined to GND is told, one that is joined is not", () => {
  const fan = (net: string) =>
    smallLesson(
      `BAT1: { part: battery-4aa }
       M1: { part: dc-motor }
       D1: { part: 1N4007 }
       Q1: { part: PN2222A }
       R1: { part: resistor, ohms: 1k }`,
      `board.D9 R1.1\n R1.2 Q1.base\n BAT1.plus M1.1 D1.cathode\n M1.2 D1.anode Q1.collector\n Q1.emitter board.GND${net}`,
      "{ at: 500ms, expect: { M1: turning } }",
      "void setup() { pinMode(9, OUTPUT); digitalWrite(9, HIGH); } void loop() { delay(10); }",
    );
  const apart = rehearseOnce(fan(""));
  expect(apart.doubts.map((d) => [d.code, d.place])).toEqual([["grounds-apart", "BAT1"]]);
  expect(apart.checks[0]?.seen).toBe("stopped");
  const together = rehearseOnce(fan(" BAT1.minus"));
  expect(together.doubts).toEqual([]);
  expect(together.checks[0]?.seen).toBe("turning");
});
