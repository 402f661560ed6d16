// What making code needs: the machine, the program, and the code of its functions as far as it is made.
//
// Code is closures: each node of the checked tree becomes a function of no arguments that V8 compiles. Nothing is made from text,
// so a page may forbid eval.
// Does not know: any node.
import type { CheckedProgram, FunctionInfo, Statement, Variable } from "../check/tree.ts";
import type { How } from "./costs.ts";
import type { Machine } from "./machine.ts";

export type Num = () => number;
export type Test = () => boolean;
export type Thing = () => unknown;
/** A statement: tells how it ended. */
export type Step = () => Ending;

export const goOn = 0;
export const breaks = 1;
export const continues = 2;
export const returns = 3;
export type Ending = 0 | 1 | 2 | 3;

/** A cell that is known before the start, or the code that finds it. */
export type Spot = number | Num;

/** A function's code; filled in when its turn comes, as functions call each other. */
export interface FunctionCode {
  readonly info: FunctionInfo;
  body: Step;
}

/** Watches over one loop. */
export interface Watch {
  /** After how many rounds of an entry to ask first. */
  first: number;
  /** Asked at the end of a round; may let time jump over rounds. @returns after how many rounds to ask again. */
  readonly end: (rounds: number) => number;
}

export interface Coder {
  /** Where the code stands, for the estimate of its cycles. */
  readonly how: How;
  readonly m: Machine;
  readonly program: CheckedProgram;
  readonly functions: readonly FunctionCode[];
  /** Makes the watch over a loop that may only wait; see quietLoop.ts. */
  readonly watchLoop: (loop: Statement) => Watch;
  /** Told before each statement, where somebody walks; null in an ordinary run, whose code then has no trace of it. */
  readonly trace: Trace | null;
  /** The function whose code is made, and its variables whose declarations stand further up. */
  readonly inside: FunctionInfo | null;
  readonly begun: Variable[];
}

/** A place between two statements. */
export interface Mark {
  /** The line of the statement that comes next. */
  readonly line: number;
  readonly inside: FunctionInfo | null;
  /** Variables declared further left on that line. */
  readonly begun: readonly Variable[];
}

export interface Trace {
  /** Not while globals get their first values. */
  isOn: boolean;
  readonly pass: (mark: Mark) => void;
}

export const nothing: Step = () => goOn;
