// Questions about one team's table, and what answers them: a broken program, a message of the up-loader.
//
// Each is whole in itself: an engine that was ended in the midst of one can be asked the same again. All can be cloned.
// Does not know: how an answer is found, any class.
import type { Explanation, Wording } from "../../bench/program/index.ts";
import type { SetupExplanation } from "../../bench/setup/index.ts";

export type BenchQuestion =
  /** What the compiler says first of a program, and why. */
  | { readonly ask: "explain"; readonly file: string; readonly text: string; readonly wording: Wording }
  /** What may be behind that which the up-loader wrote. */
  | { readonly ask: "explainMessage"; readonly text: string };

export interface BenchAnswers {
  readonly explain: Explanation;
  readonly explainMessage: SetupExplanation;
}
