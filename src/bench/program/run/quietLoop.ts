// Whether the rounds of a loop that only waits may be skipped. So far none is: every round is run.
//
// Does not know: pins, text.
import type { CheckedProgram, Statement } from "../check/tree.ts";
import type { RoundEnd } from "./coder.ts";
import type { Machine } from "./machine.ts";

export function quietLoops(_m: Machine, _program: CheckedProgram): (loop: Statement) => { first: number; end: RoundEnd } {
  return () => ({ first: Number.POSITIVE_INFINITY, end: () => Number.POSITIVE_INFINITY });
}
