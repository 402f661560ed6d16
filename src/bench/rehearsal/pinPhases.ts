// What the board's pins do to the circuit: each drives high, drives low, pulls up or listens; a switching pin does two in turn.
//
// PWM, tones and servo pulses are faster than anything in a circuit without memory, so a moment of the lesson is a few phases
// with their shares of the time. Pins of one timer rise together, so their phases are nested; different timers run freely, so
// their shares multiply.
// Does not know: volts, the circuit, the program.
import type { Level, PinMode, PinNumber } from "../program/index.ts";

/** What a pin is doing, as the program set it. */
export interface PinActivity {
  readonly mode: PinMode;
  readonly level: Level;
  /** Switching in place of the level. */
  readonly switching: Switching | null;
}

export interface Switching {
  /** Share of the time high. */
  readonly duty: number;
  /** Turns a second. */
  readonly hertz: number;
  /** Which clock it follows. */
  readonly clock: string;
  /** s at which a turn began. */
  readonly since: number;
}

/** i: listens, u: listens with pull-up, 0: drives low, 1: drives high. */
export type Drive = "i" | "u" | "0" | "1";

/** One of the states that switching pins take in turn. `drives` has one letter for each pin, in the order asked for. */
export interface Phase {
  readonly share: number;
  readonly drives: string;
}

/** As reset leaves a pin (ATmega328P data sheet, I/O ports: tri-stated after reset). */
export const restingPin: PinActivity = { mode: "input", level: 0, switching: null };

const timers: ReadonlyMap<PinNumber, string> = new Map([
  [5, "timer0"],
  [6, "timer0"],
  [9, "timer1"],
  [10, "timer1"],
  [3, "timer2"],
  [11, "timer2"],
]);

/** @returns the clock whose edges a PWM pin follows (ATmega328P data sheet, alternate port functions: OC0A … OC2B). */
export function timerOf(pin: PinNumber): string {
  return timers.get(pin) ?? `pin${pin}`;
}

/** @returns share of the time at which `analogWrite(value)` is high. Fast PWM counts to 256, phase-correct PWM to 255. */
export function dutyOf(value: number, hertz: number): number {
  // ATmega328P data sheet, timers: fast and phase-correct PWM. 976.6 Hz is the fast one (f / (64 · 256)).
  return hertz > 700 ? (value + 1) / 256 : value / 255;
}

/** @returns the phases of these pins; their shares add up to 1. */
export function phasesOf(pins: readonly PinActivity[]): readonly Phase[] {
  const letters = pins.map(steadyDrive);
  const clocks = new Map<string, number[]>();
  for (const [i, pin] of pins.entries())
    if (pin.switching && pin.mode === "output") clocks.set(pin.switching.clock, [...(clocks.get(pin.switching.clock) ?? []), i]);
  let phases: { share: number; letters: Drive[] }[] = [{ share: 1, letters }];
  for (const members of clocks.values()) {
    const steps = nestedSteps(members.map((i) => pins[i]?.switching?.duty ?? 0));
    phases = phases.flatMap((phase) =>
      steps.map(({ share, high }) => ({
        share: phase.share * share,
        letters: phase.letters.map((letter, i): Drive => {
          const member = members.indexOf(i);
          return member === -1 ? letter : high[member] ? "1" : "0";
        }),
      })),
    );
  }
  return phases.map((p) => ({ share: p.share, drives: p.letters.join("") }));
}

/** What a pin drives, its switching apart. */
export function steadyDrive(pin: PinActivity): Drive {
  if (pin.mode === "output") return pin.level === 1 ? "1" : "0";
  return pin.mode === "pull-up" ? "u" : "i";
}

/** Pins that rise together and fall after their own share of the turn: first all are high, at the end none. */
function nestedSteps(duties: readonly number[]): { share: number; high: boolean[] }[] {
  const ends = [...new Set([...duties, 1])].filter((d) => d > 0).sort((a, b) => a - b);
  return ends.map((end, i) => ({ share: end - (ends[i - 1] ?? 0), high: duties.map((d) => d >= end && d > 0) }));
}
