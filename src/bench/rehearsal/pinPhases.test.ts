// Shares of the phases of switching pins. Expected: ATmega328P data sheet (duty of both PWM kinds), and counting.
import { expect, test } from "vitest";
import { dutyOf, type PinActivity, phasesOf, restingPin, timerOf } from "./pinPhases.ts";

const out = (level: 0 | 1): PinActivity => ({ mode: "output", level, switching: null });
const pwm = (pin: number, duty: number): PinActivity => ({
  mode: "output",
  level: 0,
  switching: { duty, hertz: 490, clock: timerOf(pin), since: 0 },
});

const cases: [name: string, pins: PinActivity[], phases: Record<string, number>][] = [
  ["steady pins are one phase", [restingPin, out(0), out(1), { ...restingPin, mode: "pull-up" }], { i01u: 1 }],
  ["one PWM pin is two", [pwm(9, 0.25)], { "1": 0.25, "0": 0.75 }],
  ["pins of one timer are nested", [pwm(9, 0.25), pwm(10, 0.5)], { "11": 0.25, "01": 0.25, "00": 0.5 }],
  ["equal pins of one timer switch together", [pwm(5, 0.5), pwm(6, 0.5)], { "11": 0.5, "00": 0.5 }],
  ["pins of two timers run freely", [pwm(9, 0.25), pwm(3, 0.5)], { "11": 0.125, "10": 0.125, "01": 0.375, "00": 0.375 }],
  ["a listening pin does not switch", [{ ...pwm(9, 0.5), mode: "input" }], { i: 1 }],
];
for (const [name, pins, expected] of cases) {
  test(name, () => {
    const got: Record<string, number> = {};
    for (const { drives, share } of phasesOf(pins)) got[drives] = (got[drives] ?? 0) + share;
    expect(Object.keys(got).sort()).toEqual(Object.keys(expected).sort());
    for (const [drives, share] of Object.entries(expected)) expect(got[drives]).toBeCloseTo(share, 12);
  });
}

test("duty of the two kinds of PWM", () => {
  expect(dutyOf(127, 976.5625)).toBe(0.5);
  expect(dutyOf(51, 490.196)).toBeCloseTo(0.2, 12);
});
