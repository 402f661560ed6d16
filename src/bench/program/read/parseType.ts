// Types and declarators: `const unsigned long *name[3]`.
//
// C++ tells a declaration from an expression only by which names are types, so the cursor keeps those that were declared.
// A name that is a type may still be hidden by a variable (`int word = 3; word = 4;`), so at the start of a statement it counts
// as a type only if a declarator follows.
// Does not know: what the types mean.
import { near } from "../../../base/index.ts";
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
  report,
  take,
} from "./cursor.ts";
import { parseExpression } from "./parseExpression.ts";
import { parseParameters } from "./parseFunction.ts";
import type { Declarator, Expression, Parameter, TypeSyntax } from "./syntax.ts";
import { namedTypes, reservedWords, specifiers, typeKeywords, unsupportedWords } from "./words.ts";

export interface Specifiers {
  readonly type: TypeSyntax;
  readonly isStatic: boolean;
  readonly isExtern: boolean;
  readonly isConstexpr: boolean;
}

/** @returns whether the name is a type here: built in, brought by a header, or declared above. */
export function isTypeName(c: Cursor, name: string): boolean {
  return (
    typeKeywords.has(name) || namedTypes.has(name) || c.typeNames.has(name) || (name === "Servo" && c.headers.has("Servo.h"))
  );
}

/** @returns whether a type begins at the token `ahead`, if a type may stand there at all. */
export function isTypeStart(c: Cursor, ahead = 0): boolean {
  const token = peek(c, ahead);
  if (token.kind !== "name") return false;
  return isTypeName(c, token.text) || specifiers.has(token.text) || ["struct", "class", "enum"].includes(token.text);
}

/** @returns whether a statement that begins here is a declaration. */
export function isDeclaration(c: Cursor): boolean {
  const token = peek(c);
  if (token.kind !== "name") return false;
  if (specifiers.has(token.text) || ["struct", "class", "enum", "typedef", "union"].includes(token.text)) return true;
  if (typeKeywords.has(token.text)) return !isMark(c, "(", 1) && !isMark(c, "{", 1);
  const scope = isMark(c, "::", 1) ? 2 : 0;
  const known = isTypeName(c, token.text) || (scope > 0 && c.typeNames.has(peek(c, 2).text));
  const then = peek(c, scope + 1);
  if (then.kind === "name" && !reservedWords.has(then.text)) {
    // An unknown type: `Int x = 3;`. A statement has no two names in a row otherwise.
    const third = peek(c, scope + 2);
    return (
      known ||
      (!reservedWords.has(token.text) &&
        third.kind === "mark" &&
        ["=", ";", ",", "[", "(", "{"].includes(third.text) &&
        then.line === token.line &&
        !(third.text === "(" && peek(c, scope + 3).kind !== "mark"))
    );
  }
  if (!known) return false;
  if (then.text === "const" || then.text === "volatile") return true;
  if (then.kind !== "mark" || (then.text !== "*" && then.text !== "&")) return false;
  let k = scope + 1;
  while (isMark(c, "*", k) || isMark(c, "&", k) || isWord(c, "const", k)) k += 1;
  return (
    peek(c, k).kind === "name" &&
    peek(c, k + 1).kind === "mark" &&
    ["=", ";", ",", "[", "(", ")", ":", "{"].includes(peek(c, k + 1).text)
  );
}

/** Reads the words in front of a declarator. Reports what is no type; never gives null. */
export function parseSpecifiers(c: Cursor): Specifiers {
  const at = atOf(peek(c));
  const words: string[] = [];
  let name: string | null = null;
  let builtIn = false;
  const seen = { const: false, volatile: false, static: false, extern: false, constexpr: false };
  for (;;) {
    const token = peek(c);
    if (token.kind !== "name") break;
    if (specifiers.has(token.text)) {
      if (token.text === "virtual" || token.text === "friend")
        fail(c, { code: "program.notSupported", place: placeOf(c, atOf(token)), feature: token.text });
      if (token.text in seen) seen[token.text as keyof typeof seen] = true;
    } else if (typeKeywords.has(token.text) && name === null) words.push(token.text);
    else if (
      (token.text === "struct" || token.text === "class" || token.text === "enum") &&
      name === null &&
      words.length === 0
    ) {
      next(c);
      if (peek(c).kind !== "name") failExpected(c, "name");
      name = peek(c).text;
    } else if (name === null && words.length === 0 && !reservedWords.has(token.text)) {
      name = token.text;
      if (isMark(c, "::", 1) && peek(c, 2).kind === "name" && c.typeNames.has(peek(c, 2).text)) {
        next(c);
        next(c);
        name = peek(c).text;
      }
      if (!isTypeName(c, name)) {
        const types = [...typeKeywords, ...namedTypes.keys(), ...c.typeNames];
        report(c, { code: "program.unknownType", place: placeOf(c, atOf(token)), name, near: near(name, types) });
      }
    } else break;
    next(c);
  }
  if (words.length > 0) {
    builtIn = true;
    name = spelling(words);
  } else if (name !== null && !c.typeNames.has(name) && namedTypes.has(name)) {
    builtIn = true;
    name = namedTypes.get(name)!;
  }
  if (name === null) failExpected(c, "type");
  else if (builtIn && name.endsWith("long long"))
    fail(c, { code: "program.notSupported", place: placeOf(c, at), feature: "long long" });
  if (name?.endsWith("long long")) name = "long";
  const type = {
    at,
    name: name ?? "int",
    builtIn: builtIn || name === null,
    isConst: seen.const || seen.constexpr,
    isVolatile: seen.volatile,
  };
  return { type, isStatic: seen.static, isExtern: seen.extern, isConstexpr: seen.constexpr };
}

/** The one spelling of a type that may be written in several ways: `long unsigned int` is "unsigned long". */
function spelling(words: readonly string[]): string {
  const has = (word: string) => words.includes(word);
  if (has("auto")) return "auto";
  for (const alone of ["void", "bool", "float", "double"]) if (has(alone)) return alone;
  const sign = has("unsigned") ? "unsigned " : "";
  if (has("char")) return has("unsigned") ? "unsigned char" : has("signed") ? "signed char" : "char";
  if (has("short")) return `${sign}short`;
  const longs = words.filter((w) => w === "long").length;
  return longs === 0 ? `${sign}int` : `${sign}${longs === 1 ? "long" : "long long"}`;
}

/** Stars behind a type, without a name: in casts and sizeof. */
export function parseStars(c: Cursor): boolean[] {
  const pointers: boolean[] = [];
  while (take(c, "*")) pointers.push(take(c, "const"));
  return pointers;
}

/** @param abstract the name may be missing, as in prototypes. */
export function parseDeclarator(c: Cursor, abstract = false): Declarator {
  const start = atOf(peek(c));
  const pointers = parseStars(c);
  const isReference = take(c, "&");
  if (isMark(c, "&&")) fail(c, { code: "program.notSupported", place: placeOf(c, atOf(peek(c))), feature: "&&" });
  let name = "";
  let owner = "";
  let at = start;
  let pointsToFunction: readonly Parameter[] | null = null;
  const sizes: (Expression | null)[] = [];
  if (isMark(c, "(") && isMark(c, "*", 1)) {
    next(c);
    next(c);
    at = atOf(peek(c));
    if (peek(c).kind === "name") name = next(c).text;
    readSizes(c, sizes);
    expect(c, ")");
    pointsToFunction = nested(
      c,
      () => parseParameters(c),
      () => [],
    );
    return { at, name, owner, pointers, isReference, sizes, pointsToFunction };
  }
  const token = peek(c);
  if (token.kind === "name" && unsupportedWords.has(token.text) && token.text !== "using") {
    fail(c, { code: "program.notSupported", place: placeOf(c, atOf(token)), feature: unsupportedWords.get(token.text)! });
  } else if (token.kind === "name" && reservedWords.has(token.text)) {
    fail(c, { code: "program.reservedWord", place: placeOf(c, atOf(token)), name: token.text });
  } else if (token.kind === "name") {
    at = atOf(token);
    name = next(c).text;
    if (isMark(c, "::") && (peek(c, 1).kind === "name" || isMark(c, "~", 1))) {
      next(c);
      owner = name;
      at = atOf(peek(c));
      if (isMark(c, "~")) fail(c, { code: "program.notSupported", place: placeOf(c, at), feature: "destructor" });
      if (isWord(c, "operator")) fail(c, { code: "program.notSupported", place: placeOf(c, at), feature: "operator" });
      name = next(c).text;
    }
  } else if (!abstract) failExpected(c, "name");
  readSizes(c, sizes);
  return { at, name, owner, pointers, isReference, sizes, pointsToFunction };
}

function readSizes(c: Cursor, sizes: (Expression | null)[]): void {
  while (take(c, "[")) {
    sizes.push(isMark(c, "]") ? null : parseExpression(c));
    if (!expect(c, "]")) return;
  }
}
