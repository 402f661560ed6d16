// What page and engine say to each other: plain messages that can be cloned.
//
// Does not know: who sends them, how an answer is found.
import type { Progress } from "../../base/index.ts";
import type { BenchQuestion } from "./benchQuestions.ts";
import type { EngineTrouble, PapersWish, School } from "./engine.ts";

/** A question by the name of its function in `Engine`, with what that function is given. */
export type Question =
  | BenchQuestion
  | { readonly ask: "shipped" }
  | { readonly ask: "plan"; readonly school: School }
  | { readonly ask: "order"; readonly school: School; readonly seconds: number }
  | { readonly ask: "papers"; readonly school: School; readonly wish: PapersWish }
  | { readonly ask: "rehearse"; readonly lesson: string; readonly school: School | null }
  | { readonly ask: "readClass" | "readRoster" | "readStock"; readonly file: string; readonly bytes: Uint8Array }
  | {
      readonly ask: "write";
      readonly what: "class" | "order" | "stock" | "roster";
      readonly school: School;
      readonly class: string | null;
    };

export type ToEngine =
  /** First of all: what comes with Benchday, packed, and a name for this state of it and of the engine. */
  | { readonly say: "begin"; readonly shipped: string; readonly version: string }
  | { readonly say: "ask"; readonly id: number; readonly question: Question }
  | { readonly say: "stop"; readonly id: number }
  /** What is kept under a hash, or undefined. */
  | { readonly say: "recalled"; readonly hash: string; readonly value: unknown }
  /** Asks for a sign of life. */
  | { readonly say: "there?" }
  /** The packed WebAssembly of the solver. */
  | { readonly say: "solver"; readonly packed: string };

export type FromEngine =
  /** At the start, and when asked for a sign of life. */
  | { readonly say: "here" }
  /** The solver works in one piece: for so many seconds at most no message is heard. */
  | { readonly say: "deaf"; readonly seconds: number }
  | { readonly say: "progress"; readonly id: number; readonly progress: Progress }
  | { readonly say: "answer"; readonly id: number; readonly value: unknown }
  | { readonly say: "stopped"; readonly id: number }
  | { readonly say: "broken"; readonly id: number; readonly trouble: EngineTrouble; readonly detail: string }
  | { readonly say: "recall"; readonly hash: string }
  | { readonly say: "remember"; readonly hash: string; readonly value: unknown }
  | { readonly say: "wantSolver" };
