// Reads and checks a program.
//
// Never throws. The value is there if and only if nothing forbids running it; warnings may stand beside it.
// Does not know: files, what a compiler would print.
import { hasErrors, type Reading, sortProblems } from "../../base/index.ts";
import { checkProgram } from "./check/checkProgram.ts";
import type { CheckedProgram } from "./check/tree.ts";
import type { ProgramProblem } from "./problems.ts";
import { parseFile } from "./read/parseFile.ts";

/** A program that can be run. What it holds is this room's own business. */
export interface Program {
  readonly file: string;
  readonly checked: CheckedProgram;
}

/** @param file its name in problems. @param text the program. */
export function parseProgram(file: string, text: string): Reading<Program, ProgramProblem> {
  const syntax = parseFile(file, text);
  const { program, problems } = checkProgram(file, syntax);
  const sorted = sortProblems(problems);
  return { value: hasErrors(sorted) ? null : { file, checked: program }, problems: sorted };
}
