// Chips with a memory and a rotor: what they do at the levels that a program sets, as their data sheets say.
//
// 74HC595: its function table (data sheet 74HC595). Distance module: a trigger of 10 µs, the echo 2·d/c long (data sheet HC-SR04, c =
// 343.4 m/s at 20 °C). Stepper: coils a, ab, b, bc … pull half a step further each (any textbook of small motors).
import { describe, expect, test } from "vitest";
import { catalogue } from "./catalogue.ts";
import type { PartState } from "./partKind.ts";

/** One part in a run of its own. */
function begin(id: string, states: PartState = {}) {
  const kind = catalogue.get(id)!;
  const logic = kind.logic!({});
  const levels: Record<string, number> = {};
  let state: PartState = { ...Object.fromEntries(Object.entries(kind.states).map(([n, s]) => [n, s.atFirst])), ...states };
  let wakeAt = Number.POSITIVE_INFINITY;
  return {
    /** Sets legs to volts at a moment; what wakes by itself before is asked first. */
    set(now: number, volts: Record<string, number>) {
      const look = (at: number) => {
        const told = logic.look({ volts: (leg) => levels[leg] ?? 0, now: at, state });
        state = { ...state, ...told.state };
        wakeAt = told.wakeAt ?? Number.POSITIVE_INFINITY;
      };
      while (wakeAt <= now) {
        const at = wakeAt;
        wakeAt = Number.POSITIVE_INFINITY;
        look(at);
      }
      Object.assign(levels, volts);
      look(now);
      return state;
    },
    steps: () => logic.steps?.() ?? [],
  };
}

describe("74HC595", () => {
  const shiftIn = (bits: string) => {
    const chip = begin("74HC595");
    chip.set(0, { VCC: 5, MR: 5, OE: 0, DS: 0, SHCP: 0, STCP: 0 });
    for (const bit of bits) {
      chip.set(0, { DS: bit === "1" ? 5 : 0 });
      chip.set(0, { SHCP: 5 });
      chip.set(0, { SHCP: 0 });
    }
    return chip;
  };
  test("nothing shows before STCP rises; then the first bit stands at Q7", () => {
    const chip = shiftIn("10110001");
    expect(chip.set(0, {}).stored).toBe(0);
    expect(chip.set(0, { STCP: 5 }).stored).toBe(0b10110001);
  });
  test("a ninth bit pushes the first one out", () => {
    const chip = shiftIn("110000000");
    expect(chip.set(0, { STCP: 5 }).stored).toBe(0b10000000);
  });
  test("MR low empties the register, not what is shown", () => {
    const chip = shiftIn("11111111");
    chip.set(0, { STCP: 5 });
    expect(chip.set(0, { MR: 0, STCP: 0 }).stored).toBe(255);
    expect(chip.set(0, { STCP: 5 }).stored).toBe(0);
  });
  test("OE high shows nothing; a level between 0.3 and 0.7 of the supply changes nothing", () => {
    const chip = shiftIn("1");
    expect(chip.set(0, { OE: 5 }).shown).toBe(false);
    chip.set(0, { OE: 0, STCP: 2.5 });
    expect(chip.set(0, {})).toMatchObject({ stored: 0, shown: true });
    expect(chip.set(0, { STCP: 3.6 }).stored).toBe(1);
  });
  test("both edges at once show what stood before (data sheet: one clock behind when both pins are joined)", () => {
    const chip = shiftIn("");
    chip.set(0, { DS: 5 });
    expect(chip.set(0, { SHCP: 5, STCP: 5 }).stored).toBe(0);
    chip.set(0, { SHCP: 0, STCP: 0 });
    expect(chip.set(0, { SHCP: 5, STCP: 5 }).stored).toBe(1);
  });
});

describe("the distance module", () => {
  const cases: [centimetres: number, micros: number][] = [
    [10, 582.4],
    [100, 5823.8],
    [400, 23295],
    // Nearer than it can hear, and nothing in reach.
    [0.5, 116.5],
    [500, 38_000],
  ];
  for (const [centimetres, micros] of cases)
    test(`${centimetres} cm: an echo of ${micros} µs`, () => {
      const module = begin("ultrasonic", { centimetres });
      module.set(0, { VCC: 5, TRIG: 0 });
      module.set(1, { TRIG: 5 });
      expect(module.set(1 + 10e-6, { TRIG: 0 }).echoes).toBe(false);
      const from = 1 + 460e-6;
      expect(module.set(from - 2e-6, {}).echoes).toBe(false);
      expect(module.set(from + 1e-6, {}).echoes).toBe(true);
      expect(module.set(from + micros * 0.999e-6, {}).echoes).toBe(true);
      expect(module.set(from + micros * 1.001e-6 + 1e-6, {}).echoes).toBe(false);
    });
  test("a trigger that is too short, and one while sound is under way, are not heard", () => {
    const module = begin("ultrasonic", { centimetres: 100 });
    module.set(0, { VCC: 5, TRIG: 0 });
    module.set(1, { TRIG: 5 });
    module.set(1 + 5e-6, { TRIG: 0 });
    expect(module.set(1.001, {}).echoes).toBe(false);
    module.set(2, { TRIG: 5 });
    module.set(2 + 10e-6, { TRIG: 0 });
    module.set(2.002, { TRIG: 5 });
    module.set(2.002 + 10e-6, { TRIG: 0 });
    expect(module.set(2.0062, {}).echoes).toBe(true);
    expect(module.set(2.007, {}).echoes).toBe(false);
  });
});

describe("the stepper", () => {
  const full = ["ab", "bc", "cd", "ad"];
  const half = ["a", "ab", "b", "bc", "c", "cd", "d", "ad"];
  /** Feeds coils in an order: the driver pulls a fed coil to 0.9 V. */
  const drive = (order: readonly string[], count: number, seconds: number, volts = 5) => {
    const motor = begin("stepper");
    for (let n = 0; n <= count; n += 1) {
      const fed = order[((n % order.length) + order.length) % order.length]!;
      const at = (coil: string) => (fed.includes(coil) ? 0.9 : volts);
      motor.set(n * seconds, { common: volts, a: at("a"), b: at("b"), c: at("c"), d: at("d") });
    }
    motor.set((count + 1) * seconds + 1, {});
    const last = motor.steps().at(-1);
    return { gone: (last?.halfSteps ?? 0) - (motor.steps()[0]?.halfSteps ?? 0), lost: last?.lost ?? 0 };
  };
  test("full steps at 3 ms: 100 steps are 200 half steps, none lost", () =>
    expect(drive(full, 100, 0.003)).toEqual({ gone: 200, lost: 0 }));
  test("backwards", () => expect(drive([...full].reverse(), 100, 0.003)).toEqual({ gone: -200, lost: 0 }));
  test("half steps at 1 ms", () => expect(drive(half, 80, 0.001)).toEqual({ gone: 80, lost: 0 }));
  test("full steps at 1 ms are lost", () => expect(drive(full, 100, 0.001).lost).toBeGreaterThan(40));
  test("the wrong order (a, c, b, d) trembles and goes nowhere", () => {
    const { gone, lost } = drive(["a", "c", "b", "d"], 100, 0.003);
    expect(Math.abs(gone)).toBeLessThan(10);
    expect(lost).toBeGreaterThan(20);
  });
  test("too little voltage: no step at all", () => expect(drive(full, 100, 0.003, 4)).toEqual({ gone: 0, lost: 0 }));
  test("pins that are set one after the other within microseconds make one step", () => {
    const motor = begin("stepper");
    motor.set(0, { common: 5, a: 0.9, b: 0.9, c: 5, d: 5 });
    motor.set(1, { a: 5 });
    motor.set(1 + 8e-6, { c: 0.9 });
    motor.set(2, {});
    expect(motor.steps().map((s) => [s.halfSteps, s.lost])).toEqual([
      [1, 0],
      [3, 0],
    ]);
  });
});
