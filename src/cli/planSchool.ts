// Reads a class file with all that belongs to it and plans it, showing how far that has come.
//
// Does not know: what is done with the plan.

import type { World } from "../base/index.ts";
import { type Day, hasErrors } from "../base/index.ts";
import { sayUnchecked } from "../language/index.ts";
import { type PlannedClass, planClass } from "../school/readiness/index.ts";
import { loadSchool, type SchoolFiles } from "./loadFiles.ts";
import { nodeWorld } from "./nodeWorld.ts";
import { clearProgress, printProblems, type SpokenProblem, showProgress, type Talk } from "./output.ts";

export interface PlannedSchool extends PlannedClass {
  readonly files: SchoolFiles;
  readonly world: World;
  /** What is doubtful in the files, or wrong in one of the lessons. */
  readonly problems: readonly SpokenProblem[];
}

/** @returns the plan, or the problems that forbid one; they were then written to standard error. */
export function planSchool(path: string, today: Day, seed: number, talk: Talk): PlannedSchool | readonly SpokenProblem[] {
  const loaded = loadSchool(path);
  if (loaded.value === null) {
    printProblems(loaded.problems, talk);
    return loaded.problems;
  }
  printProblems(loaded.problems, talk);
  const world = nodeWorld(today, seed);
  const work = planClass({ ...loaded.value, seed }, world);
  for (;;) {
    const step = work.next();
    if (step.done) {
      clearProgress();
      return { ...step.value, files: loaded.value, world, problems: loaded.problems };
    }
    const { doing, done, total } = step.value;
    showProgress(sayUnchecked(talk.language, `progress.${doing}`, { done: done + 1, total }));
  }
}

export const isPlanned = (planned: PlannedSchool | readonly SpokenProblem[]): planned is PlannedSchool => !Array.isArray(planned);

/** A lesson that could not be read is a problem even where the rest could be planned. */
export const statusOf = (planned: PlannedSchool): 0 | 1 => (hasErrors(planned.problems) ? 1 : 0);
