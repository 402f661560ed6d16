// What is seen at one step of a walk through a running program.
//
// Plain data, for a lesson page and for the wall. A step stands between two statements: `line` is the one that comes next, all
// else is how things are before it runs.
// Does not know: how a walk gets there.
import type { Level, Microseconds, PinMode } from "../port.ts";
import type { RunProblem } from "../problems.ts";

/** A pin that the program has set or read. */
export interface WalkPin {
  /** "D13", "A0". */
  readonly pin: string;
  readonly mode: PinMode;
  /** The level that an output drives; null for inputs, and where pulses, a tone or a servo take over. */
  readonly level: "low" | "high" | null;
  /** 0..255 of analogWrite while the pin pulses. */
  readonly duty: number | null;
  /** Of the tone that sounds. */
  readonly hz: number | null;
  /** Of the servo that hangs on it. */
  readonly degrees: number | null;
  /** What the program read there last: a level, or 0..1023. */
  readonly read: Level | number | null;
  /** The last step changed what goes out there. */
  readonly changed: boolean;
}

export interface WalkValue {
  /** Inside arrays "[0]", inside records the field's name. */
  readonly name: string;
  /** As a person writes it: "int", "const char*", "int [3]". */
  readonly type: string;
  /** As C++ writes it: 42, true, 'a', "text", {1, 2, 3}, RED, &led. */
  readonly text: string;
  /** Elements of an array, fields of a record; none for plain values. */
  readonly parts: readonly WalkValue[];
  readonly isConst: boolean;
  /** Its text is another one than a step before. */
  readonly changed: boolean;
}

/** Why nothing comes after this step. */
export interface WalkEnd {
  /** `until`: the time to be walked is over; `stopped`: the world wants no more; `long`: more steps than allowed. */
  readonly why: "until" | "stopped" | "hangs" | "broken" | "resets" | "long";
  /** For the last three of a run's own ends: code, line and values. */
  readonly problem: RunProblem | null;
}

export interface WalkStep {
  /** 0 is before the first statement of setup(). */
  readonly number: number;
  /** The line that runs next; where the program ended, the line it was at. */
  readonly line: number;
  /** The line that ran last; null at the beginning. */
  readonly ran: number | null;
  readonly micros: Microseconds;
  /** The function that the line belongs to. */
  readonly inside: string;
  /** In the order of their numbers. */
  readonly pins: readonly WalkPin[];
  readonly globals: readonly WalkValue[];
  /** Parameters and variables of the running call, those that stand at this line; for a method `this` first. */
  readonly locals: readonly WalkValue[];
  /** What has come to the computer, at most its last 4000 characters. */
  readonly text: string;
  /** What was printed and is still on its way there, at 9600 baud a millisecond a character. */
  readonly onItsWay: string;
  readonly ended: WalkEnd | null;
}
