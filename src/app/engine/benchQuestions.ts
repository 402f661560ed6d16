// Questions about one team's table, and what answers them: a broken program, a message of the up-loader, a walk through a program.
//
// Each is whole in itself: an engine that was ended in the midst of one can be asked the same again. All can be cloned.
// Does not know: how an answer is found, any class.
import type { Explanation, WalkStep, Wording } from "../../bench/program/index.ts";
import type { HandAct, Observation, Probe, Trace } from "../../bench/rehearsal/index.ts";
import type { SetupExplanation } from "../../bench/setup/index.ts";
import type { EngineProblem } from "./engine.ts";

/** Where a walk goes next, from the step at which it stands. */
export type WalkMove =
  | { readonly to: "start" | "step" | "over" | "pinChange" | "back" | "backToPinChange" | "here" }
  | { readonly to: "line"; readonly line: number }
  /** Lets it run for so long. */
  | { readonly to: "later"; readonly seconds: number };

export type BenchQuestion =
  /** What the compiler says first of a program, and why. */
  | { readonly ask: "explain"; readonly file: string; readonly text: string; readonly wording: Wording }
  /** What may be behind that which the up-loader wrote. */
  | { readonly ask: "explainMessage"; readonly text: string }
  /** Walks through a program in a lesson's circuit. */
  | {
      readonly ask: "walk";
      readonly lesson: string;
      /** In place of the lesson's own. */
      readonly program: { readonly file: string; readonly text: string } | null;
      /** Part to the item that the class puts in its place. */
      readonly items: readonly (readonly [part: string, item: string])[];
      /** What a hand did so far in place of the lesson's stimuli. */
      readonly acts: readonly HandAct[] | null;
      /** The number of the step from which it goes. */
      readonly from: number;
      readonly move: WalkMove;
    }
  /** What an oscilloscope would show of a lesson's rehearsal. Remembered by hash. */
  | {
      readonly ask: "trace";
      readonly lesson: string;
      readonly probe: Probe;
      readonly fromMs: number;
      readonly toMs: number;
      readonly items: readonly (readonly [part: string, item: string])[];
      /** Null: the lesson's own. */
      readonly supply: string | null;
    };

export interface WalkAnswer {
  /** Null where the program does not compile or the lesson cannot be built. */
  readonly step: WalkStep | null;
  /** What each part shows then. */
  readonly seen: readonly Observation[];
  /** When the walk ends, s. */
  readonly seconds: number;
  /** The place that was asked for does not come, so the walk stands where it stood. */
  readonly never: boolean;
  readonly problems: readonly EngineProblem[];
}

export interface BenchAnswers {
  readonly explain: Explanation;
  readonly explainMessage: SetupExplanation;
  readonly walk: WalkAnswer;
  readonly trace: Trace;
}
