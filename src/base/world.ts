// The world that is passed in: day, chance, memory, files and the solver for integer programs.
//
// The core has no clock, no disk and no luck of its own, so that the same core runs in a page, in a worker and under Node,
// and the same input gives the same paper. Whoever starts it (cli, app, a test) hands it these.
// Does not know: who implements it.
import type { Day } from "./day.ts";
import type { IntegerModel, IntegerOptions, IntegerOutcome } from "./integerProgram.ts";
import type { Random } from "./random.ts";

export interface World {
  /** The day that counts as today. */
  readonly today: Day;
  /** A fresh source of chance from the seed of this world and a name, so that two users of chance do not disturb each other. */
  random(name: string): Random;
  /** The text of a file by its path as the files write it, or null where there is none. */
  read(path: string): string | null;
  /** The result for this key if it was computed before, else computes and keeps it. The key hashes everything it depends on. */
  remember<Value>(key: string, compute: () => Value): Value;
  /** Whether `remember` has a result for this key. A world that is worked in slices has this: long work is then cut up too. */
  known?(key: string): boolean;
  /** Solves an integer program. */
  solve(model: IntegerModel, options: IntegerOptions): Promise<IntegerOutcome>;
}

/** Long work yields this between pieces, so that page, worker and command can show it and stop it. */
export interface Progress {
  readonly done: number;
  readonly total: number;
  /** What is being done now: a code that `language` knows, with its data. */
  readonly doing: string;
}

/** Long work: a generator of progress that returns the result. */
export type LongWork<Result> = Generator<Progress, Result, void>;

/** The result for a key, as `World.remember` has it; what must be computed is cut into slices where the world wants that. */
export function* rememberSlices<Value>(
  world: Pick<World, "remember" | "known">,
  key: string,
  work: () => LongWork<Value>,
  progress: Progress,
): LongWork<Value> {
  if (world.known === undefined || world.known(key)) return world.remember(key, () => finish(work()));
  const running = work();
  for (;;) {
    const step = running.next();
    if (step.done) return world.remember(key, () => step.value);
    yield progress;
  }
}

/** Runs long work to its end, without showing progress. */
export function finish<Result>(work: LongWork<Result>): Result {
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
  }
}
