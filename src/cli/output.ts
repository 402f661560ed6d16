// How a command speaks: the answer on standard output, the talk on standard error, one JSON document when asked for.
//
// Problems are written `file:line:column: words`, as compilers write them, so that editors can jump there. Exit status: 0 well,
// 1 problems found, 2 wrong use. Bold is used only on a terminal that wants it.
// Does not know: any command.
import { styleText } from "node:util";
import { hasErrors, type Place, sortProblems } from "../base/index.ts";
import { type Language, sayProblem } from "../language/index.ts";

export type ExitStatus = 0 | 1 | 2;

/** What every command is given besides its own arguments. */
export interface Talk {
  readonly language: Language;
  readonly json: boolean;
}

/** A problem as any room makes it. */
export interface SpokenProblem {
  readonly code: string;
  readonly severity?: "error" | "warning";
  readonly place?: Place;
}

/** Writes the answer as one JSON document. */
export function printJson(answer: unknown): void {
  process.stdout.write(`${JSON.stringify(answer, null, 2)}\n`);
}

export function print(text = ""): void {
  process.stdout.write(`${text}\n`);
}

/** Writes problems to standard error, errors first. @returns 1 if any is an error. */
export function printProblems(problems: readonly SpokenProblem[], talk: Talk): ExitStatus {
  const sorted = sortProblems(problems);
  for (const problem of sorted.slice(0, 200)) {
    const { place } = problem;
    const where = place ? `${place.file}:${place.line}:${place.column}: ` : "";
    const words = sayProblem(talk.language, problem);
    process.stderr.write(`${where}${words.says}${words.try ? `\n    ${words.try}` : ""} [${problem.code}]\n`);
  }
  return hasErrors(problems) ? 1 : 0;
}

/** Problems as JSON has them: code, file, line, column, then their data. */
export function problemsAsJson(problems: readonly SpokenProblem[]): unknown[] {
  return sortProblems(problems).map(({ code, severity, place, ...data }) => ({
    code,
    severity: severity ?? "error",
    file: place?.file ?? null,
    line: place?.line ?? null,
    column: place?.column ?? null,
    ...data,
  }));
}

export function bold(text: string): string {
  return process.stdout.isTTY && !process.env.NO_COLOR ? styleText("bold", text) : text;
}

/** One line that says how far long work has come; only on a terminal. */
export function showProgress(words: string): void {
  if (process.stderr.isTTY) process.stderr.write(`\r\u001b[K${words}`);
}
export function clearProgress(): void {
  showProgress("");
}

/** Columns of text, parted by two blanks; numbers are aligned at their end. The first row may be heads. */
export function columns(rows: readonly (readonly string[])[], endAligned: readonly number[] = []): string {
  const widths: number[] = [];
  for (const row of rows) for (const [i, cell] of row.entries()) widths[i] = Math.max(widths[i] ?? 0, cell.length);
  return rows
    .map((row) =>
      row
        .map((cell, i) => (endAligned.includes(i) ? cell.padStart(widths[i] ?? 0) : cell.padEnd(widths[i] ?? 0)))
        .join("  ")
        .trimEnd(),
    )
    .join("\n");
}

/** Breaks a sentence into lines of at most `width` signs, each behind `indent`. */
export function wrap(text: string, indent: string, width = 100): string {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ")) {
    if (line !== "" && indent.length + line.length + 1 + word.length > width) {
      lines.push(indent + line);
      line = word;
    } else line = line === "" ? word : `${line} ${word}`;
  }
  if (line !== "") lines.push(indent + line);
  return lines.join("\n");
}
