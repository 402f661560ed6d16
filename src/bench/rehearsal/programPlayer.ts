// The lesson's program, read once and ready to run against any build.
//
// Does not know: circuits, checks.
import type { Lesson } from "../lesson/index.ts";
import { parseProgram, runProgram } from "../program/index.ts";
import type { Player } from "./playRuns.ts";
import type { RehearsalProblem } from "./result.ts";

/** @returns the player, or null with the errors that keep the program from compiling. */
export function programPlayer(lesson: Lesson): { player: Player | null; problems: readonly RehearsalProblem[] } {
  const { value, problems } = parseProgram(lesson.program.file, lesson.program.text);
  if (value) return { player: (port, until, seed) => runProgram(value, port, { until, seed }), problems: [] };
  const errors = problems.filter((p) => p.severity !== "warning");
  return {
    player: null,
    problems: errors.map((p) => ({ code: "rehearsal.programHasErrors", problem: p.code, line: p.place?.line ?? 0 })),
  };
}
