// Expressions, in the order in which the compiler reads them.
//
// An undeclared name stops at once where it stands; one that is called stops at the closing bracket, because the compiler reads
// the arguments first.
// Does not know: types of values.
import { reservedWords, typeKeywords } from "../../read/words.ts";
import { isTypeStart, readTypeId } from "./declarations.ts";
import {
  attempt,
  deeper,
  expect,
  giveUp,
  is,
  isName,
  isTypeName,
  meaningOf,
  next,
  peek,
  type Reader,
  stop,
  stopAt,
  stopExpected,
  take,
  withColons,
} from "./reader.ts";
import { readCompound } from "./statements.ts";

const levels: readonly (readonly string[])[] = "|| && | ^ & ==,!= <,>,<=,>= <<,>> +,- *,/,%"
  .split(" ")
  .map((level) => level.split(","));
const words: Readonly<Record<string, string>> = { and: "&&", or: "||", xor: "^", bitand: "&", bitor: "|", not_eq: "!=" };
const precedence = new Map(levels.flatMap((operators, i) => operators.map((o) => [o, i + 1] as const)));
const assignments = new Set(["=", "+=", "-=", "*=", "/=", "%=", "&=", "|=", "^=", "<<=", ">>="]);

export function readExpression(r: Reader): void {
  do readAssignment(r);
  while (take(r, ","));
}

export function readAssignment(r: Reader): void {
  deeper(r, () => {
    const start = r.at;
    readBinary(r, 1);
    if (take(r, "?")) {
      withColons(r, () => {
        if (!is(r, ":")) readExpression(r);
        expect(r, ":");
        readAssignment(r);
      });
      return;
    }
    const token = peek(r);
    if (token.kind !== "mark" || !assignments.has(token.text)) return;
    const operator = r.at;
    next(r);
    readInitialiserClause(r);
    // 3 = x: a number cannot take a value. The right side is read first.
    if (operator === start + 1 && ["number", "character"].includes(r.tokens[start]!.kind))
      stopAt(token, operator, "lvalueAssign");
  });
}

/** A value, or a list in braces. */
export function readInitialiserClause(r: Reader): void {
  if (is(r, "{")) readBraces(r);
  else readAssignment(r);
}

export function readBraces(r: Reader): void {
  expect(r, "{");
  deeper(r, () => {
    while (!is(r, "}")) {
      // .name = value and [index] = value of C.
      if (is(r, ".") && isName(r, 1) && is(r, "=", 2)) r.at += 3;
      readInitialiserClause(r);
      if (!take(r, ",")) break;
    }
  });
  expect(r, "}");
}

function readBinary(r: Reader, least: number): void {
  readCast(r);
  for (;;) {
    const token = peek(r);
    const operator = token.kind === "mark" ? token.text : token.kind === "name" ? (words[token.text] ?? "") : "";
    const level = precedence.get(operator) ?? 0;
    if (level < least || level === 0) return;
    next(r);
    readBinary(r, level + 1);
  }
}

function readCast(r: Reader): void {
  if (is(r, "(") && isTypeStart(r, 1)) {
    const isCast = attempt(r, () => {
      next(r);
      readTypeId(r);
      expect(r, ")");
      const token = peek(r);
      const starts =
        token.kind === "mark"
          ? ["(", "-", "+", "!", "~", "&", "*", "++", "--", "::", "{"].includes(token.text)
          : token.kind !== "end";
      if (!starts) giveUp();
    });
    if (isCast) {
      if (is(r, "{")) readBraces(r);
      else deeper(r, () => readCast(r));
      return;
    }
  }
  readUnary(r);
}

function readUnary(r: Reader): void {
  const token = peek(r);
  if (
    (token.kind === "mark" && ["-", "+", "!", "~", "*", "&", "++", "--"].includes(token.text)) ||
    is(r, "not") ||
    is(r, "compl")
  ) {
    next(r);
    deeper(r, () => readCast(r));
    return;
  }
  if (is(r, "&&")) {
    next(r);
    if (!isName(r)) stopExpected(r, "identifier");
    giveUp();
  }
  if (is(r, "sizeof")) {
    next(r);
    if (is(r, "(") && isTypeStart(r, 1)) {
      const isType = attempt(r, () => {
        next(r);
        readTypeId(r);
        expect(r, ")");
      });
      if (isType) return;
    }
    deeper(r, () => readUnary(r));
    return;
  }
  if (["new", "delete", "throw", "alignof", "noexcept", "typeid"].some((w) => is(r, w))) giveUp();
  readPostfix(r);
}

function readPostfix(r: Reader): void {
  const first = peek(r);
  /** A name that nobody declared, if it is about to be called. */
  let unknown: string | null = readPrimary(r);
  for (;;) {
    if (take(r, "(")) {
      const close = readArguments(r);
      if (unknown !== null) stopAt(r.tokens[close]!, close, "undeclared", { name: unknown });
    } else if (take(r, "[")) {
      if (is(r, "{")) readBraces(r);
      else readExpression(r);
      if (first.kind === "number" && is(r, "]") && r.tokens[r.at - 1] !== first) stop(r, "badIndex", { types: "int[int]" });
      expect(r, "]");
    } else if (is(r, ".") || is(r, "->")) {
      next(r);
      if (is(r, "~")) giveUp();
      if (!isName(r)) stopExpected(r, "unqualified-id");
      next(r);
    } else if (is(r, "++") || is(r, "--")) next(r);
    else return;
    unknown = null;
  }
}

/** Reads arguments behind an open bracket. @returns the index of the closing one. */
export function readArguments(r: Reader): number {
  if (!is(r, ")"))
    do readInitialiserClause(r);
    while (take(r, ","));
  const close = r.at;
  expect(r, ")");
  return close;
}

function readPrimary(r: Reader): string | null {
  const token = peek(r);
  switch (token.kind) {
    case "number": {
      const suffix = badSuffix(token.text);
      if (suffix !== null) stop(r, "badSuffix", { suffix });
      next(r);
      return null;
    }
    case "character":
      next(r);
      return null;
    case "text":
      while (peek(r).kind === "text") {
        const first = next(r);
        const then = peek(r);
        if (
          then.kind === "name" &&
          !then.afterSpace &&
          then.line === first.endLine &&
          then.column === first.endColumn &&
          then.macro === ""
        )
          stopAt(first, r.at - 1, "badTextSuffix", { suffix: then.text });
      }
      return null;
    case "name":
      return readNamed(r);
    default:
      if (take(r, "(")) {
        if (is(r, "{") && r.inFunction) readCompound(r);
        else readExpression(r);
        expect(r, ")");
        return null;
      }
      // A value in square brackets is read as the beginning of a function without a name.
      if (is(r, "[") && ["number", "text", "character"].includes(peek(r, 1).kind)) {
        next(r);
        stopExpected(r, "identifier");
      }
      if (is(r, "[") || is(r, "::")) giveUp();
      return stopExpected(r, "primary-expression");
  }
}

function readNamed(r: Reader): string | null {
  const token = peek(r);
  const { text } = token;
  if (["true", "false", "nullptr", "this"].includes(text)) {
    next(r);
    return null;
  }
  if (["static_cast", "reinterpret_cast", "const_cast", "dynamic_cast"].includes(text)) {
    next(r);
    expect(r, "<");
    readTypeId(r);
    expect(r, ">");
    expect(r, "(");
    readExpression(r);
    expect(r, ")");
    return null;
  }
  if (typeKeywords.has(text) && text !== "auto") {
    if (is(r, "(", 1) || is(r, "{", 1)) {
      next(r);
      if (take(r, "(")) readArguments(r);
      else readBraces(r);
      return null;
    }
    stopExpected(r, "primary-expression");
  }
  if (reservedWords.has(text)) {
    if (["operator", "decltype", "typename", "asm"].includes(text)) giveUp();
    stopExpected(r, "primary-expression");
  }
  next(r);
  if (is(r, "::")) return readScoped(r, text);
  if (r.colonIsScope && is(r, ":") && isName(r, 1)) stop(r, "colonForScope");
  if (isTypeName(r, text)) {
    if (take(r, "(")) readArguments(r);
    else if (is(r, "{")) readBraces(r);
    else stopExpected(r, "primary-expression");
    return null;
  }
  if (meaningOf(r, text) !== null) return null;
  if (is(r, "(")) return text;
  return stopAt(token, r.at - 1, "undeclared", { name: text });
}

/** `Colour::RED`: whether the name is a member is the checker's business. */
function readScoped(r: Reader, owner: string): null {
  const meaning = meaningOf(r, owner);
  if (meaning === null) stopAt(r.tokens[r.at - 1]!, r.at - 1, "notDeclaredYet", { name: owner });
  next(r);
  if (!isName(r)) stopExpected(r, "unqualified-id");
  next(r);
  return null;
}

/** What follows a number without being one of its endings, such as "counter" in 2counter; null if it is a number. */
export function badSuffix(text: string): string | null {
  const parts = /^(0[xX][0-9a-fA-F]*|0[bB][01]+|(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)(.*)$/.exec(text);
  const suffix = parts?.[2] ?? "";
  return suffix === "" || /^(?:[uU]?[lL]{0,2}|[lL]{1,2}[uU]|[fFiIjJ])$/.test(suffix) ? null : suffix;
}
