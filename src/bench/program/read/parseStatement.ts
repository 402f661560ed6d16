// Statements and blocks.
//
// A list of statements always moves on: after a slip it skips to where a statement can begin, so that one missing bracket
// does not hide the rest of the file.
// Does not know: names, types.
import {
  atOf,
  type Cursor,
  expect,
  fail,
  failExpected,
  isMark,
  isWord,
  nested,
  next,
  peek,
  placeOf,
  recover,
  report,
  take,
} from "./cursor.ts";
import { parseDeclaration } from "./parseDeclaration.ts";
import { parseExpression } from "./parseExpression.ts";
import { isDeclaration } from "./parseType.ts";
import type { BlockSyntax, Condition, Expression, Statement } from "./syntax.ts";
import { unsupportedWords } from "./words.ts";

/** Reads from { to }. */
export function parseBlock(c: Cursor): BlockSyntax {
  const at = atOf(peek(c));
  if (!expect(c, "{")) return { kind: "block", at, list: [], end: at };
  const list = parseList(c);
  const end = atOf(peek(c));
  expect(c, "}");
  return { kind: "block", at, list, end };
}

function parseList(c: Cursor): Statement[] {
  const list: Statement[] = [];
  while (!isMark(c, "}") && peek(c).kind !== "end") {
    const start = c.at;
    const depth = c.depth;
    list.push(parseStatement(c));
    if (c.panic || c.at === start) {
      c.depth = depth;
      recover(c, start);
    }
  }
  return list;
}

export function parseStatement(c: Cursor): Statement {
  return nested(
    c,
    () => statement(c),
    () => ({ kind: "empty", at: atOf(peek(c)) }),
  );
}

function statement(c: Cursor): Statement {
  const token = peek(c);
  const at = atOf(token);
  if (isMark(c, "{")) return parseBlock(c);
  if (take(c, ";")) return { kind: "empty", at };
  if (token.kind === "name") {
    switch (token.text) {
      case "if":
        return parseIf(c);
      case "while": {
        next(c);
        const test = parseTest(c);
        return { kind: "while", at, test, body: parseBody(c, "while") };
      }
      case "do":
        return parseDo(c);
      case "for":
        return parseFor(c);
      case "switch": {
        next(c);
        expect(c, "(");
        const value = parseExpression(c);
        expect(c, ")");
        return { kind: "switch", at, value, body: parseStatement(c) };
      }
      case "case": {
        next(c);
        const value = parseExpression(c);
        const to = take(c, "...") ? parseExpression(c) : null;
        expect(c, ":");
        return { kind: "case", at, value, to };
      }
      case "default":
        next(c);
        expect(c, ":");
        return { kind: "default", at };
      case "break":
      case "continue":
        next(c);
        expect(c, ";");
        return { kind: token.text, at };
      case "return": {
        next(c);
        const value = isMark(c, ";") || isMark(c, "}") ? null : parseExpression(c);
        expect(c, ";");
        return { kind: "return", at, value };
      }
      case "else":
        next(c);
        report(c, { code: "program.elseWithoutIf", place: placeOf(c, at) });
        return parseStatement(c);
      default:
        if (unsupportedWords.has(token.text) && !["union", "static_cast"].includes(token.text) && !isDeclaration(c)) {
          const feature = unsupportedWords.get(token.text)!;
          if (token.text !== "using") fail(c, { code: "program.notSupported", place: placeOf(c, at), feature });
        }
    }
    if (isMark(c, ":", 1) && !isMark(c, "::", 1))
      fail(c, { code: "program.notSupported", place: placeOf(c, at), feature: "goto" });
    if (isDeclaration(c) || token.text === "using") return parseDeclaration(c, true);
  }
  const value = parseExpression(c);
  if (!c.panic) expect(c, ";");
  return { kind: "expression", at, value };
}

function parseTest(c: Cursor): Condition {
  expect(c, "(");
  if (isDeclaration(c)) {
    const declared = parseDeclaration(c, true, ")");
    expect(c, ")");
    if (declared.kind === "variables") return declared;
    return { kind: "broken", at: declared.at };
  }
  const test = parseExpression(c);
  expect(c, ")");
  return test;
}

/** The statement that belongs to `if`, `while` or `for`. A lone ; there is nearly always a slip. */
function parseBody(c: Cursor, of: string): Statement {
  const before = c.tokens[c.at - 1];
  const token = peek(c);
  if (isMark(c, ";") && before !== undefined && token.line === before.endLine && of !== "while")
    report(c, { code: "program.emptyBody", severity: "warning", place: placeOf(c, atOf(token)), of });
  // while (…); waits, which is often meant; with a block behind it, it is not.
  else if (isMark(c, ";") && isMark(c, "{", 1))
    report(c, { code: "program.emptyBody", severity: "warning", place: placeOf(c, atOf(token)), of });
  return parseStatement(c);
}

function parseIf(c: Cursor): Statement {
  const at = atOf(next(c));
  const test = parseTest(c);
  const yes = parseBody(c, "if");
  const no = take(c, "else") ? parseStatement(c) : null;
  return { kind: "if", at, test, yes, no };
}

function parseDo(c: Cursor): Statement {
  const at = atOf(next(c));
  const body = parseStatement(c);
  if (!c.panic && !isWord(c, "while")) failExpected(c, "while");
  next(c);
  expect(c, "(");
  const test = parseExpression(c);
  expect(c, ")");
  expect(c, ";");
  return { kind: "do", at, body, test };
}

function parseFor(c: Cursor): Statement {
  const at = atOf(next(c));
  expect(c, "(");
  let first: Statement | null = null;
  if (isDeclaration(c)) {
    const declared = parseDeclaration(c, true, "for");
    if (declared.kind === "variables" && declared.variables.length === 1 && !declared.variables[0]!.initialiser && take(c, ":")) {
      const of = parseExpression(c);
      expect(c, ")");
      return { kind: "forEach", at, variable: declared, of, body: parseBody(c, "for") };
    }
    first = declared;
    expect(c, ";");
  } else if (!take(c, ";")) {
    first = { kind: "expression", at: atOf(peek(c)), value: parseExpression(c) };
    expect(c, ";");
  }
  let test: Expression | null = null;
  let step: Expression | null = null;
  if (!isMark(c, ";")) test = parseExpression(c);
  expect(c, ";");
  if (!isMark(c, ")")) step = parseExpression(c);
  expect(c, ")");
  return { kind: "for", at, first, test, step, body: parseBody(c, "for") };
}
