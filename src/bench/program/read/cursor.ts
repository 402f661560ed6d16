// Where the parser stands in the tokens, and how it goes on after a slip.
//
// After a problem that leaves no way on, the cursor panics: it answers "end" to every question, so that all readers return at
// once and say nothing more; the loop over statements or top-level items then skips to a safe place and calms it. A missing
// `;` or `)` is only noted, because what follows can usually be read.
// Does not know: the grammar.
import type { Place } from "../../../base/index.ts";
import type { SyntaxProblem } from "../problems.ts";
import type { PreprocessProblem } from "./preprocess.ts";
import type { At, Token } from "./token.ts";

export interface Cursor {
  readonly file: string;
  readonly tokens: readonly Token[];
  at: number;
  panic: boolean;
  depth: number;
  readonly problems: PreprocessProblem[];
  /** Names of classes, enums and aliases read so far. */
  readonly typeNames: Set<string>;
  readonly headers: ReadonlySet<string>;
}

/** Brackets, blocks and operators inside each other. Deeper text is not a beginner's, and would exhaust the stack. */
export const mostNested = 120;
/** Further syntax problems in one file say nothing that the first ones did not. */
const mostProblems = 30;

/** @returns the token `ahead` of the cursor, or "end" when there is none or the cursor panics. */
export function peek(c: Cursor, ahead = 0): Token {
  const last = c.tokens[c.tokens.length - 1]!;
  return c.panic ? last : (c.tokens[Math.min(c.at + ahead, c.tokens.length - 1)] ?? last);
}

export function next(c: Cursor): Token {
  const token = peek(c);
  if (!c.panic && c.at < c.tokens.length - 1) c.at += 1;
  return token;
}

export function isMark(c: Cursor, text: string, ahead = 0): boolean {
  const token = peek(c, ahead);
  return token.kind === "mark" && token.text === text;
}

export function isWord(c: Cursor, text: string, ahead = 0): boolean {
  const token = peek(c, ahead);
  return token.kind === "name" && token.text === text;
}

export function take(c: Cursor, text: string): boolean {
  const token = peek(c);
  if ((token.kind !== "mark" && token.kind !== "name") || token.text !== text) return false;
  next(c);
  return true;
}

export function atOf(token: Token): At {
  return { line: token.line, column: token.column };
}

export function placeOf(c: Cursor, at: At): Place {
  return { file: c.file, line: at.line, column: at.column };
}

/** Further errors on the same line follow from the first; they are not told. */
export function report(c: Cursor, problem: PreprocessProblem): void {
  if (c.panic || c.problems.length >= mostProblems) return;
  const isError = problem.severity !== "warning";
  if (isError && c.problems.some((p) => p.severity !== "warning" && p.place?.line === problem.place?.line)) return;
  c.problems.push(problem);
}

/** Reports and panics. */
export function fail(c: Cursor, problem: SyntaxProblem | PreprocessProblem): void {
  report(c, problem);
  c.panic = true;
}

/** Reports that `expected` was expected where the cursor stands ("expression", "name", "type"), and panics. */
export function failExpected(c: Cursor, expected: string): void {
  const token = peek(c);
  fail(c, expectedProblem(c, expected, token, atOf(token)));
}

/** Where a mark is missing: behind the token before. */
export function behind(c: Cursor): At {
  const before = c.tokens[c.at - 1];
  return before ? { line: before.endLine, column: before.endColumn } : atOf(peek(c));
}

/**
 * Takes the mark, or reports that it is missing behind the last token. A missing ; or ) panics only if what follows stands on
 * the same line, because then the line itself is garbled.
 */
export function expect(c: Cursor, mark: string): boolean {
  if (take(c, mark)) return true;
  if (c.panic) return false;
  const token = peek(c);
  const at = behind(c);
  report(c, expectedProblem(c, mark, token, at));
  const goesOn = mark === ";" ? token.line > at.line || token.text === "}" : mark === ")" && [";", "{"].includes(token.text);
  if (!goesOn) c.panic = true;
  return false;
}

/** Reports that a mark is missing behind the last token, and goes on as if it were there. */
export function reportExpected(c: Cursor, mark: string): void {
  report(c, expectedProblem(c, mark, peek(c), behind(c)));
}

function expectedProblem(c: Cursor, expected: string, token: Token, at: At): SyntaxProblem {
  return {
    code: "program.expected",
    place: placeOf(c, at),
    expected,
    found: token.text,
    foundLine: token.line,
    foundColumn: token.column,
  };
}

/** Runs `read` one level deeper; too deep is a problem and gives `otherwise`. */
export function nested<T>(c: Cursor, read: () => T, otherwise: () => T): T {
  if (c.depth >= mostNested) {
    fail(c, { code: "program.tooDeep", place: placeOf(c, atOf(peek(c))), most: mostNested });
    return otherwise();
  }
  c.depth += 1;
  const result = read();
  c.depth -= 1;
  return result;
}

/**
 * Calms a panicking cursor at a place where a statement can begin: behind the next `;`, before the `}` of this block, or
 * before a word that opens a statement and stands first on its line.
 */
export function recover(c: Cursor, start: number): void {
  c.panic = false;
  if (c.at === start && c.at < c.tokens.length - 1 && !isMark(c, "}")) c.at += 1;
  let depth = 0;
  while (c.at < c.tokens.length - 1) {
    const token = c.tokens[c.at]!;
    if (token.kind === "mark") {
      if (token.text === "{" || token.text === "(") depth += 1;
      else if (token.text === "}") {
        if (depth <= 0) return;
        depth -= 1;
      } else if (token.text === ")") depth = Math.max(0, depth - 1);
      else if (token.text === ";" && depth <= 0) {
        c.at += 1;
        return;
      }
    }
    c.at += 1;
    const here = c.tokens[c.at]!;
    if (here.startsLine && depth <= 1 && statementWords.has(here.text)) return;
  }
}

const statementWords: ReadonlySet<string> = new Set(
  "if else for while do switch case default return break continue int void long float byte bool char const unsigned String".split(
    " ",
  ),
);
