// How running code leaves all its loops and calls at once.
//
// Only inside this room: runProgram catches it and answers with an outcome.
// Does not know: why, beyond the code.
import type { BrokenCode } from "../problems.ts";

export type Reason =
  | { readonly why: "stop" }
  | { readonly why: "reset" }
  | { readonly why: "hangs"; readonly line: number }
  | { readonly why: "broken"; readonly line: number; readonly code: BrokenCode; readonly values: readonly number[] };

/** Thrown and caught inside a run. No Error: its stack would cost more than the run. */
export class Halt {
  readonly reason: Reason;

  constructor(reason: Reason) {
    this.reason = reason;
  }
}

export function broken(line: number, code: BrokenCode, ...values: number[]): never {
  throw new Halt({ why: "broken", line, code, values });
}
