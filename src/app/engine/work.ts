// Work that can be cut into slices: a generator that tells how far it is, or waits for something from outside.
//
// Slices keep a page alive where the engine runs in it, and let a worker hear "stop" between two of them.
// Does not know: what is worked on.
import type { LongWork, Progress } from "../../base/index.ts";

export interface Wait {
  readonly wait: Promise<unknown>;
}
export type Work<Value> = Generator<Progress | Wait, Value, unknown>;

/** Long work of the core as work that is cut into slices. */
export function* slices<Value>(work: LongWork<Value>): Work<Value> {
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
    yield step.value;
  }
}

/** @returns what the promise gives; throws what it throws. */
export function* waitFor<Value>(wait: Promise<Value>): Work<Value> {
  return (yield { wait }) as Value;
}
