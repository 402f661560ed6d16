// The whole file: items at the top level, in order.
//
// What can only stand inside a function (a call, an if) is named as such when it stands outside: usually a brace too many
// has closed the function above.
// Does not know: names, types.

import type { Macro } from "./boardMacros.ts";
import { atOf, type Cursor, expect, fail, isMark, isWord, next, peek, placeOf, report, take } from "./cursor.ts";
import { parseDeclaration } from "./parseDeclaration.ts";
import { parseFunction } from "./parseFunction.ts";
import { isDeclaration, isTypeName, parseDeclarator } from "./parseType.ts";
import type { PreprocessProblem } from "./preprocess.ts";
import { preprocess } from "./preprocess.ts";
import { readTokens } from "./readTokens.ts";
import type { Item } from "./syntax.ts";
import type { At } from "./token.ts";
import { statementWords, unsupportedWords } from "./words.ts";

export interface FileSyntax {
  readonly items: readonly Item[];
  /** In the order in which they were met. */
  readonly problems: readonly PreprocessProblem[];
  readonly headers: ReadonlySet<string>;
  readonly macros: ReadonlyMap<string, Macro>;
  readonly end: At;
  /** Whether the name Serial stands in it: the port's buffers take RAM. */
  readonly usesSerial: boolean;
  /** Lines of #include on which a header's own functions stand. */
  readonly headerLines: ReadonlySet<number>;
}

/** Characters of a program. The chip's 32 kB of flash hold less than this. */
const mostCharacters = 400_000;

/** Reads a program. Never throws; what could be read is in `items` even if there are problems. */
export function parseFile(file: string, text: string): FileSyntax {
  if (text.length > mostCharacters) {
    const problems: PreprocessProblem[] = [
      { code: "program.tooLong", place: { file, line: 1, column: 1 }, most: mostCharacters },
    ];
    return {
      items: [],
      problems,
      headers: new Set(),
      macros: new Map(),
      end: { line: 1, column: 1 },
      usesSerial: false,
      headerLines: new Set(),
    };
  }
  const lexed = readTokens(file, text);
  const { tokens, problems, headers, macros, skipped, headerLines } = preprocess(file, lexed.tokens);
  const strange = lexed.problems.filter((p) => !skipped.has(p.place?.line ?? 0));
  const c: Cursor = { file, tokens, at: 0, panic: false, depth: 0, problems: [], typeNames: new Set(), headers };
  const items: Item[] = [];
  while (peek(c).kind !== "end") {
    const start = c.at;
    c.depth = 0;
    const item = parseItem(c);
    if (item !== null) items.push(item);
    if (c.panic || c.at === start) skipItem(c, start);
  }
  const last = tokens[tokens.length - 2] ?? tokens[tokens.length - 1]!;
  const end = { line: last.endLine, column: last.endColumn };
  // What the parser misses on a line with a stray character follows from that.
  const garbled = new Set(strange.map((p) => p.place?.line));
  const parsed = c.problems.filter((p) => !garbled.has(p.place?.line) && !("foundLine" in p && garbled.has(p.foundLine)));
  return {
    items,
    problems: [...strange, ...problems, ...parsed],
    headers,
    macros,
    end,
    headerLines,
    usesSerial: tokens.some((t) => t.text === "Serial"),
  };
}

function parseItem(c: Cursor): Item | null {
  const token = peek(c);
  const at = atOf(token);
  if (take(c, ";")) return null;
  if (isMark(c, "}")) {
    report(c, { code: "program.extraBrace", place: placeOf(c, at) });
    next(c);
    return null;
  }
  if (token.kind !== "name") {
    fail(c, { code: "program.outside", place: placeOf(c, at), found: token.text, of: "function" });
    return null;
  }
  if (statementWords.has(token.text)) {
    fail(c, { code: "program.outside", place: placeOf(c, at), found: token.text, of: "function" });
    return null;
  }
  if (token.text === "extern" && peek(c, 1).kind === "text") {
    fail(c, { code: "program.notSupported", place: placeOf(c, at), feature: 'extern "C"' });
    return null;
  }
  if (unsupportedWords.has(token.text) && !["using", "virtual", "friend", "union"].includes(token.text)) {
    fail(c, { code: "program.notSupported", place: placeOf(c, at), feature: unsupportedWords.get(token.text)! });
    return null;
  }
  // Class::Class(…)
  if (c.typeNames.has(token.text) && isMark(c, "::", 1) && isWord(c, token.text, 2) && isMark(c, "(", 3))
    return parseFunction(c, null, parseDeclarator(c));
  if (c.typeNames.has(token.text) && isMark(c, "::", 1) && isMark(c, "~", 2)) parseDeclarator(c);
  if (!isDeclaration(c) && !isTypeName(c, token.text) && peek(c, 1).kind === "mark" && token.text !== "using")
    return strayName(c);
  return parseDeclaration(c, false);
}

/** A name with a mark behind it, outside every function: a function without its type, or a statement that got outside. */
function strayName(c: Cursor): Item | null {
  const token = peek(c);
  const place = placeOf(c, atOf(token));
  if (isMark(c, "(", 1) && opensFunction(c)) {
    report(c, { code: "program.noType", place, name: token.text });
    // Old C took it for int, and so it can be called.
    const type = { at: atOf(token), name: "int", builtIn: true, isConst: false, isVolatile: false };
    return parseFunction(c, type, parseDeclarator(c));
  } else if (
    isMark(c, "(", 1) ||
    isMark(c, ".", 1) ||
    isMark(c, "=", 1) ||
    isMark(c, "[", 1) ||
    isMark(c, "++", 1) ||
    isMark(c, "--", 1)
  ) {
    fail(c, { code: "program.outside", place, found: token.text, of: "function" });
  } else {
    const then = peek(c, 1);
    next(c);
    if (then.text === ";") report(c, { code: "program.outside", place, found: token.text, of: "function" });
    else expect(c, ";");
  }
  return null;
}

/** Whether the brackets behind the name are followed by {. */
function opensFunction(c: Cursor): boolean {
  let depth = 0;
  for (let k = 1; k < 400; k += 1) {
    const token = peek(c, k);
    if (token.kind === "end") return false;
    if (isMark(c, "(", k)) depth += 1;
    if (isMark(c, ")", k)) depth -= 1;
    if (depth === 0) return isMark(c, "{", k + 1);
  }
  return false;
}

/** Skips to where an item can begin: behind a ; or } at depth 0, or before a type that stands first on its line. */
function skipItem(c: Cursor, start: number): void {
  c.panic = false;
  let depth = isMark(c, "{") ? 1 : 0;
  if (c.at === start) next(c);
  else depth = 0;
  while (peek(c).kind !== "end") {
    if (depth === 0 && peek(c).startsLine && peek(c).column === 1 && c.at > start && isDeclaration(c)) return;
    if (isMark(c, "{")) depth += 1;
    const closes = isMark(c, "}");
    if (closes) depth -= 1;
    const ends = (isMark(c, ";") && depth <= 0) || (closes && depth <= 0);
    next(c);
    if (ends) return;
  }
}
