// The world as the commands hand it to the core: day and seed from the command line, files from disk, HiGHS as the solver.
//
// The solver is loaded only when an order is asked for: it takes a tenth of a second and four megabytes.
// Does not know: what is asked of it.
import type { Day, IntegerModel, IntegerOptions, IntegerOutcome, World } from "../base/index.ts";
import { seededRandom } from "../base/index.ts";
import { highsSolver } from "../school/order/index.ts";
import { readText } from "./files.ts";

type Solve = (model: IntegerModel, options: IntegerOptions) => Promise<IntegerOutcome>;

export function nodeWorld(today: Day, seed: number): World {
  const kept = new Map<string, unknown>();
  let solver: Promise<Solve> | null = null;
  return {
    today,
    random: (name) => seededRandom(seed, name),
    read: readText,
    remember: <Value>(key: string, compute: () => Value): Value => {
      if (!kept.has(key)) kept.set(key, compute());
      return kept.get(key) as Value;
    },
    solve: async (model, options) => {
      solver ??= import("highs").then(async (highs) => highsSolver(await highs.default()));
      return (await solver)(model, options);
    },
  };
}
