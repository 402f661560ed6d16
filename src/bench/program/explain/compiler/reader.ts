// Where the compiler's reader stands, and how it stops: at the first thing that the compiler would complain of.
//
// It follows the order in which GCC looks at a program, so that the first complaint is the same. It never goes on after one, so
// it needs no way to recover; stopping is an exception that never leaves readAsCompiler.ts.
// Does not know: the grammar.
import type { Token } from "../../read/token.ts";
import { reservedWords } from "../../read/words.ts";
import type { Said, SaidKind } from "./said.ts";

export type Meaning = "variable" | "function" | "type" | "enum" | "record" | "member";

/** Names of one block; the innermost first. */
export interface Names {
  readonly outer: Names | null;
  readonly own: Map<string, Meaning>;
}

export interface Reader {
  readonly tokens: readonly Token[];
  at: number;
  depth: number;
  names: Names;
  /** The kinds of statement around: what `break`, `continue`, `case` and `else` belong to. */
  inSwitch: number;
  inLoop: number;
  inIf: boolean;
  inFunction: boolean;
  /** Whether a `:` behind a name and before a name is taken for a mistyped `::`. */
  colonIsScope: boolean;
  readonly isKnown: (name: string) => boolean;
  readonly isLibraryType: (name: string) => boolean;
}

/** What stops the reader: the complaint, or null where it gives up because it does not know the form. */
export class Stop extends Error {
  readonly said: Said | null;
  constructor(said: Said | null) {
    super("stop");
    this.said = said;
  }
}

/** Deeper text is no beginner's, and would exhaust the stack. */
const deepest = 150;

export function peek(r: Reader, ahead = 0): Token {
  return r.tokens[Math.min(r.at + ahead, r.tokens.length - 1)]!;
}

export function next(r: Reader): Token {
  const token = peek(r);
  if (r.at < r.tokens.length - 1) r.at += 1;
  return token;
}

export function is(r: Reader, text: string, ahead = 0): boolean {
  const token = peek(r, ahead);
  return (token.kind === "mark" || token.kind === "name") && token.text === text;
}

export function take(r: Reader, text: string): boolean {
  if (!is(r, text)) return false;
  next(r);
  return true;
}

/** A name that is no reserved word. */
export function isName(r: Reader, ahead = 0): boolean {
  const token = peek(r, ahead);
  return token.kind === "name" && !reservedWords.has(token.text);
}

export function stopAt(token: Token, index: number, kind: SaidKind, data: Said["data"] = {}): never {
  throw new Stop({ kind, severity: "error", data, line: token.line, column: token.column, macro: token.macro, index });
}

/** Stops at the token under the cursor, or `ahead` of it. */
export function stop(r: Reader, kind: SaidKind, data: Said["data"] = {}, ahead = 0): never {
  return stopAt(peek(r, ahead), r.at + ahead, kind, data);
}

/** The reader gives up without a complaint: what comes is no beginner's C++. */
export function giveUp(): never {
  throw new Stop(null);
}

/** "before ';' token", "before 'if'", "before numeric constant", "at end of input". */
export function where(token: Token): string {
  switch (token.kind) {
    case "end":
      return "at end of input";
    case "number":
      return "before numeric constant";
    case "text":
      return "before string constant";
    case "name":
      return `before '${token.text}'`;
    case "character":
      return `before ${token.text}`;
    default:
      return `before '${token.text}' token`;
  }
}

export function stopExpected(r: Reader, what: string): never {
  const token = peek(r);
  // At the end of the file it is the last token that is shown.
  const shown = token.kind === "end" ? (r.tokens[r.at - 1] ?? token) : token;
  return stopAt({ ...token, line: shown.line, column: shown.column, macro: shown.macro }, r.at, "expected", {
    what,
    where: where(token),
  });
}

export function expect(r: Reader, mark: string): void {
  if (!take(r, mark)) stopExpected(r, `'${mark}'`);
}

export function deeper<T>(r: Reader, read: () => T): T {
  r.depth += 1;
  if (r.depth > deepest) giveUp();
  const result = read();
  r.depth -= 1;
  return result;
}

/** Reads `read`; if that stops, goes back to where it stood. @returns whether it went through. */
export function attempt(r: Reader, read: () => void): boolean {
  const { at, depth, names, inSwitch, inLoop, inIf, inFunction, colonIsScope } = r;
  try {
    read();
    return true;
  } catch (stopped) {
    if (!(stopped instanceof Stop)) throw stopped;
    Object.assign(r, { at, depth, names, inSwitch, inLoop, inIf, inFunction, colonIsScope });
    return false;
  }
}

export function declareName(r: Reader, name: string, meaning: Meaning): void {
  r.names.own.set(name, meaning);
}

export function meaningOf(r: Reader, name: string): Meaning | null {
  for (let n: Names | null = r.names; n !== null; n = n.outer) {
    const found = n.own.get(name);
    if (found !== undefined) return found;
  }
  if (r.isLibraryType(name)) return "type";
  return r.isKnown(name) ? "function" : null;
}

export function isTypeName(r: Reader, name: string): boolean {
  const meaning = meaningOf(r, name);
  return meaning === "type" || meaning === "enum" || meaning === "record";
}

export function inNames<T>(r: Reader, read: () => T): T {
  const { names } = r;
  r.names = { outer: names, own: new Map() };
  const result = read();
  r.names = names;
  return result;
}

/** Runs `read` where a `:` behind a name is rightly a colon. */
export function withColons(r: Reader, read: () => void): void {
  const { colonIsScope } = r;
  r.colonIsScope = false;
  read();
  r.colonIsScope = colonIsScope;
}
