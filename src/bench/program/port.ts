// The two sides of the board's pins: the running program on one, whoever plays the world on the other.
//
// The program drives virtual time. Before it passes a moment at which the outside changes it calls `reach`, and it learns
// that moment from `nextEvent`, so that waits are jumped over exactly. Pins are numbered as on the board: 0..13 are D0..D13,
// 14..19 are A0..A5. The rehearsal implements this with a circuit behind it; `runProgram` with a list of inputs.
// Does not know: circuits, volts, lessons.

import type { BrokenCode } from "./problems.ts";

/** Virtual time since the board left reset, in microseconds; may have a fraction (one cycle is 0.0625 µs). */
export type Microseconds = number;

/** Pin number as programs write it: 0..13 digital, 14..19 (A0..A5) analog. */
export type PinNumber = number;

export type PinMode = "input" | "output" | "pull-up";
export type Level = 0 | 1;

/** What the world answers when time reached an event. `reset`: the board starts anew; `stop`: nobody needs more. */
export type Verdict = "go on" | "reset" | "stop";

/** Between two events a pin must read the same each time: a loop that only reads is skipped to the next event. */
export interface BoardPort {
  /**
   * The next moment at which something outside may change or somebody wants to look; Infinity if never. It is asked again after
   * each reading and each change of a pin: what was read may tell how long it holds.
   */
  nextEvent(): Microseconds;
  /** Virtual time has come to `now`, which is never beyond `nextEvent()`. */
  reach(now: Microseconds): Verdict;
  digitalRead(pin: PinNumber, now: Microseconds): Level;
  /** 0..1023 as the chip's converter gives it, for pins 14..19. */
  analogRead(pin: PinNumber, now: Microseconds): number;
  /** A pin's mode, as `pinMode` set it or as reset leaves it (input). */
  setMode(pin: PinNumber, mode: PinMode, now: Microseconds): void;
  /** The level latched at an output, also set by `digitalWrite` on an input (that is its pull-up: setMode is called too). */
  digitalWrite(pin: PinNumber, level: Level, now: Microseconds): void;
  /** Duty value 0..255 as given to `analogWrite`; `hertz` is 490.196 or, on pins 5 and 6, 976.5625. Not called for 0 and 255. */
  analogWrite(pin: PinNumber, value: number, hertz: number, now: Microseconds): void;
  /** The value as the program gave it to `analogWrite`, 0 and 255 among them, each time it does. For whoever keeps a log. */
  duty?(pin: PinNumber, value: number, now: Microseconds): void;
  /** `Serial.begin`: the port is open at this speed. */
  openText?(baud: number, now: Microseconds): void;
  /** A square wave begins; `until` is its end or Infinity. */
  tone(pin: PinNumber, hertz: number, until: Microseconds, now: Microseconds): void;
  noTone(pin: PinNumber, now: Microseconds): void;
  /** A servo object is attached to a pin and sends pulses of this width every 20 ms; null when it is detached. */
  servo(pin: PinNumber, pulse: { readonly micros: number; readonly degrees: number } | null, now: Microseconds): void;
  /** Text the board sends to the computer, when its last character has left the board; a line comes in one piece. */
  text(characters: string, now: Microseconds): void;
  /** Characters that the computer has sent and that arrived by now, each handed over once. */
  takeText(now: Microseconds): string;
}

/** Why a run ended. Every way out is named; a program never hangs the caller. */
export type RunOutcome =
  | { readonly status: "stopped"; readonly micros: Microseconds }
  | { readonly status: "resets"; readonly micros: Microseconds }
  /** More work than allowed without any virtual time passing, or too much work in all. */
  | { readonly status: "hangs"; readonly micros: Microseconds; readonly line: number }
  /** What C++ leaves undefined, or the chip cannot hold: index outside an array, stack overflow, memory full. */
  | {
      readonly status: "broken";
      readonly micros: Microseconds;
      readonly line: number;
      readonly code: BrokenCode;
      readonly values: readonly number[];
    };
