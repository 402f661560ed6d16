// Expressions, by descent for what stands in front and by climbing for operators with two sides.
//
// Precedence and grouping as in C++11, annex A.4 and chapter 5.
// Does not know: names, types (but which names are types, to tell a cast from brackets).
import { atOf, type Cursor, expect, fail, failExpected, isMark, nested, next, peek, placeOf, report } from "./cursor.ts";
import { parseValues } from "./parseFunction.ts";
import { isTypeName, isTypeStart, parseDeclarator, parseSpecifiers, parseStars } from "./parseType.ts";
import type { Expression, TypeSyntax } from "./syntax.ts";
import { namedTypes, reservedWords, typeKeywords, unsupportedWords } from "./words.ts";

/** Loosest first. */
const levels: readonly (readonly string[])[] = "|| && | ^ & ==,!= <,>,<=,>= <<,>> +,- *,/,%"
  .split(" ")
  .map((level) => level.split(","));
const precedence = new Map(levels.flatMap((operators, i) => operators.map((o) => [o, i + 1] as const)));
/** The words that C++ allows for operators. */
const wordOperators: ReadonlyMap<string, string> = new Map([
  ["and", "&&"],
  ["or", "||"],
  ["xor", "^"],
  ["bitand", "&"],
  ["bitor", "|"],
  ["not_eq", "!="],
]);
const assignments = new Set(["=", "+=", "-=", "*=", "/=", "%=", "&=", "|=", "^=", "<<=", ">>="]);
/** Operators in a row build a tree that leans to the left and is as deep as it is long. */
const mostInRow = 400;

/** An expression with commas. */
export function parseExpression(c: Cursor): Expression {
  let left = parseAssignment(c);
  for (let n = 0; isMark(c, ",") && n < mostInRow; n += 1) {
    const at = atOf(next(c));
    left = { kind: "comma", at, left, right: parseAssignment(c) };
  }
  return left;
}

/** An expression without commas: a value of a list or an argument. */
export function parseAssignment(c: Cursor): Expression {
  return nested(
    c,
    () => assignment(c),
    () => broken(c),
  );
}

function assignment(c: Cursor): Expression {
  if (isMark(c, "{")) return parseList(c);
  const left = choose(c);
  const token = peek(c);
  if (token.kind !== "mark" || !assignments.has(token.text)) return left;
  const at = atOf(next(c));
  return { kind: "assign", at, operator: token.text.slice(0, -1), left, right: parseAssignment(c), bracketed: false };
}

function parseList(c: Cursor): Expression {
  const at = atOf(next(c));
  return { kind: "list", at, values: parseValues(c, "}") };
}

function choose(c: Cursor): Expression {
  const test = binary(c, 1);
  if (!isMark(c, "?")) return test;
  const at = atOf(next(c));
  const yes = parseExpression(c);
  expect(c, ":");
  return { kind: "choose", at, test, yes, no: parseAssignment(c) };
}

function binaryOperator(c: Cursor): string | null {
  const token = peek(c);
  if (token.kind === "mark") return precedence.has(token.text) ? token.text : null;
  return token.kind === "name" ? (wordOperators.get(token.text) ?? null) : null;
}

function binary(c: Cursor, least: number): Expression {
  let left = unary(c);
  for (let n = 0; ; n += 1) {
    const operator = binaryOperator(c);
    const level = operator === null ? 0 : precedence.get(operator)!;
    if (operator === null || level < least) return left;
    if (n >= mostInRow) {
      fail(c, { code: "program.tooDeep", place: placeOf(c, atOf(peek(c))), most: mostInRow });
      return left;
    }
    const at = atOf(next(c));
    left = { kind: "binary", at, operator, left, right: binary(c, level + 1), bracketed: false };
  }
}

function unary(c: Cursor): Expression {
  return nested(
    c,
    () => unaryHere(c),
    () => broken(c),
  );
}

function unaryHere(c: Cursor): Expression {
  const token = peek(c);
  const at = atOf(token);
  if (token.kind === "mark") {
    if (["-", "+", "!", "~", "*", "&"].includes(token.text)) {
      next(c);
      return { kind: "unary", at, operator: token.text, value: unary(c) };
    }
    if (token.text === "++" || token.text === "--") {
      next(c);
      return { kind: "step", at, by: token.text === "++" ? 1 : -1, after: false, value: unary(c) };
    }
    if (token.text === "(" && isCast(c)) {
      next(c);
      const { type } = parseSpecifiers(c);
      const pointers = parseStars(c);
      expect(c, ")");
      return { kind: "cast", at, type, pointers, value: unary(c) };
    }
  }
  if (token.kind === "name" && token.text === "not") {
    next(c);
    return { kind: "unary", at, operator: "!", value: unary(c) };
  }
  if (token.kind === "name" && token.text === "compl") {
    next(c);
    return { kind: "unary", at, operator: "~", value: unary(c) };
  }
  if (token.kind === "name" && token.text === "sizeof") return sizeOf(c);
  return postfix(c, primary(c));
}

/** `(type)` and then something that can be cast. A type name may be hidden by a variable: `(word) + 1` is taken as a cast. */
function isCast(c: Cursor): boolean {
  if (!isTypeStart(c, 1)) return false;
  const then = peek(c, 2);
  return then.kind === "name" || (then.kind === "mark" && [")", "*"].includes(then.text));
}

function sizeOf(c: Cursor): Expression {
  const at = atOf(next(c));
  if (!isMark(c, "(") || !isTypeStart(c, 1)) return { kind: "sizeof", at, value: unary(c) };
  next(c);
  const { type } = parseSpecifiers(c);
  const declarator = parseDeclarator(c, true);
  expect(c, ")");
  return { kind: "sizeofType", at, type, declarator };
}

function postfix(c: Cursor, first: Expression): Expression {
  let value = first;
  for (let n = 0; !c.panic; n += 1) {
    const token = peek(c);
    if (token.kind !== "mark") break;
    const at = atOf(token);
    if (n >= mostInRow) {
      fail(c, { code: "program.tooDeep", place: placeOf(c, at), most: mostInRow });
      break;
    }
    if (token.text === "(") {
      next(c);
      value = { kind: "call", at: value.at, called: value, values: parseValues(c, ")") };
    } else if (token.text === "[") {
      next(c);
      const index = parseExpression(c);
      expect(c, "]");
      value = { kind: "index", at, array: value, index };
    } else if (token.text === "." || token.text === "->") {
      next(c);
      const nameAt = atOf(peek(c));
      if (peek(c).kind !== "name") {
        failExpected(c, "name");
        break;
      }
      value = { kind: "member", at, record: value, name: next(c).text, nameAt, arrow: token.text === "->" };
    } else if (token.text === "++" || token.text === "--") {
      next(c);
      value = { kind: "step", at, by: token.text === "++" ? 1 : -1, after: true, value };
    } else break;
  }
  return value;
}

function primary(c: Cursor): Expression {
  const token = peek(c);
  const at = atOf(token);
  switch (token.kind) {
    case "number":
      next(c);
      return { kind: "number", at, text: token.text };
    case "character":
      next(c);
      if (token.bytes.length > 1)
        report(c, { code: "program.manyCharacters", severity: "warning", place: placeOf(c, at), found: token.text });
      return { kind: "character", at, bytes: token.bytes, text: token.text };
    case "text": {
      // Neighbouring texts are one (C++11, section 2.14.5).
      let bytes = "";
      while (peek(c).kind === "text") bytes += next(c).bytes;
      return { kind: "text", at, bytes };
    }
    case "name":
      return named(c);
    default:
      if (isMark(c, "(")) {
        next(c);
        const inner = parseExpression(c);
        expect(c, ")");
        return inner.kind === "binary" || inner.kind === "assign" ? { ...inner, bracketed: true } : inner;
      }
      if (isMark(c, "[")) fail(c, { code: "program.notSupported", place: placeOf(c, at), feature: "lambda" });
      else failExpected(c, "expression");
      return broken(c);
  }
}

function named(c: Cursor): Expression {
  const token = peek(c);
  const at = atOf(token);
  const { text } = token;
  if (text === "true" || text === "false" || text === "nullptr") {
    next(c);
    return { kind: "name", at, name: text, owner: "" };
  }
  if (text === "this") {
    next(c);
    return { kind: "this", at };
  }
  if (text === "static_cast") {
    next(c);
    expect(c, "<");
    const { type } = parseSpecifiers(c);
    const pointers = parseStars(c);
    expect(c, ">");
    expect(c, "(");
    const value = parseExpression(c);
    expect(c, ")");
    return { kind: "cast", at, type, pointers, value };
  }
  if (unsupportedWords.has(text)) {
    fail(c, { code: "program.notSupported", place: placeOf(c, at), feature: unsupportedWords.get(text)! });
    return broken(c);
  }
  if ((typeKeywords.has(text) || isTypeName(c, text)) && (isMark(c, "(", 1) || isMark(c, "{", 1))) {
    next(c);
    const builtIn = !c.typeNames.has(text) && (typeKeywords.has(text) || namedTypes.has(text));
    const name = builtIn ? (namedTypes.get(text) ?? plain(text)) : text;
    const type: TypeSyntax = { at, name, builtIn, isConst: false, isVolatile: false };
    const close = isMark(c, "{") ? "}" : ")";
    next(c);
    return { kind: "make", at, type, values: parseValues(c, close) };
  }
  if (reservedWords.has(text)) {
    failExpected(c, "expression");
    return broken(c);
  }
  next(c);
  if (isMark(c, "::") && peek(c, 1).kind === "name") {
    next(c);
    return { kind: "name", at, name: next(c).text, owner: text };
  }
  return { kind: "name", at, name: text, owner: "" };
}

/** `unsigned(x)` and `short(x)` in their one spelling. */
function plain(word: string): string {
  return word === "unsigned" ? "unsigned int" : word === "signed" ? "int" : word;
}

function broken(c: Cursor): Expression {
  return { kind: "broken", at: atOf(peek(c)) };
}
