// Declarations, in the order in which the compiler reads them: at the top level, in a block, in the head of a loop, in a class.
//
// Does not know: types of values; whether a name is declared twice.
import { reservedWords, specifiers, typeKeywords } from "../../read/words.ts";
import { readArguments, readAssignment, readBraces, readInitialiserClause } from "./expressions.ts";
import {
  declareName,
  deeper,
  expect,
  giveUp,
  inNames,
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
  where,
  withColons,
} from "./reader.ts";
import { readBody } from "./statements.ts";

export type Context = "top" | "block" | "for" | "condition" | "member";

const isSpecifier = (text: string) => specifiers.has(text) || text === "typedef";
const recordWords = ["struct", "class", "union"];

/** @returns whether the token `ahead` can begin a type. */
export function isTypeStart(r: Reader, ahead = 0): boolean {
  const token = peek(r, ahead);
  if (token.kind !== "name") return false;
  const { text } = token;
  if (text === "const" || text === "volatile" || typeKeywords.has(text) || text === "enum" || recordWords.includes(text))
    return true;
  return isTypeName(r, text);
}

/** @returns whether a statement that begins here is read as a declaration. */
export function isBlockDeclaration(r: Reader): boolean {
  const { kind, text } = peek(r);
  if (kind !== "name") return false;
  if (isSpecifier(text) || text === "enum" || recordWords.includes(text)) return true;
  if (typeKeywords.has(text)) return !(is(r, "(", 1) || is(r, "{", 1));
  return isTypeName(r, text) && !is(r, "(", 1) && !is(r, "{", 1) && !is(r, "::", 1);
}

interface Specified {
  readonly any: boolean;
  readonly hasType: boolean;
  readonly isVoid: boolean;
  readonly isTypedef: boolean;
  /** It was a definition of a class or enum. */
  readonly defines: boolean;
}

function readSpecifiers(r: Reader, context: Context | "parameter"): Specified {
  let any = false;
  let hasType = false;
  let keyword = false;
  let isVoid = false;
  let isTypedef = false;
  let defines = false;
  for (;;) {
    const token = peek(r);
    if (token.kind !== "name") break;
    const { text } = token;
    if (isSpecifier(text)) {
      if (text === "virtual" || text === "friend") giveUp();
      if (text === "typedef") isTypedef = true;
      any = true;
      next(r);
    } else if (typeKeywords.has(text) && (!hasType || keyword)) {
      any = hasType = keyword = true;
      if (text === "void") isVoid = true;
      next(r);
    } else if ((text === "enum" || recordWords.includes(text)) && !hasType) {
      any = hasType = true;
      defines = text === "enum" ? readEnum(r) : readRecord(r);
    } else if (!hasType && isName(r) && isTypeName(r, text)) {
      // A constructor: its class's name and a bracket.
      if (context === "member" && is(r, "(", 1)) break;
      if (is(r, "::", 1)) {
        if (peek(r, 2).text === text || is(r, "~", 2)) break;
        if (!isName(r, 2)) giveUp();
        // Class::Type is a type; anything else belongs to the declarator.
        if (!isTypeName(r, peek(r, 2).text)) break;
        r.at += 2;
      }
      any = hasType = true;
      next(r);
    } else break;
  }
  return { any, hasType, isVoid, isTypedef, defines };
}

/** A type by itself, as in a cast. */
export function readTypeId(r: Reader): void {
  const { hasType } = readSpecifiers(r, "parameter");
  if (!hasType) stopExpected(r, "type-specifier");
  while (is(r, "*") || is(r, "&") || is(r, "const")) next(r);
  if (is(r, "(") && is(r, "*", 1)) giveUp();
}

/** At the top level: one item. */
export function readItem(r: Reader): void {
  if (take(r, ";")) return;
  if (is(r, "}")) stopExpected(r, "declaration");
  const { text } = peek(r);
  if (["using", "namespace", "template", "asm", "static_assert"].includes(text)) giveUp();
  if (text === "extern" && peek(r, 1).kind === "text") giveUp();
  deeper(r, () => readSimpleDeclaration(r, "top"));
}

/** A declaration up to its `;`, or a function with its body. In a loop's head or a condition the end is left to the caller. */
export function readSimpleDeclaration(r: Reader, context: Context): void {
  const specified = readSpecifiers(r, context);
  if (!specified.hasType) refuseTypeName(r);
  if (is(r, ";") && context !== "condition") {
    if (specified.any && !specified.defines && specified.hasType && !isRecordOnly(r))
      stopAt(r.tokens[r.at - 1]!, r.at - 1, "declaresNothing");
    if (specified.any) {
      if (context !== "for") next(r);
      return;
    }
  }
  for (let first = true; ; first = false) {
    if (readInitDeclarator(r, context, specified, first)) return;
    if (take(r, ",")) continue;
    if (context === "condition") return;
    if (is(r, ";")) {
      if (context !== "for") next(r);
      return;
    }
    if (context === "for") return;
    if (context === "member") {
      const before = r.tokens[r.at - 1]!;
      stopAt(before, r.at - 1, "semicolonAfterMember");
    }
    stopExpected(r, "',' or ';'");
  }
}

/** `struct Lamp;` says something; so does `enum Colour;`. */
function isRecordOnly(r: Reader): boolean {
  return [...recordWords, "enum"].includes(r.tokens[r.at - 2]?.text ?? "");
}

/** No type was found: a name that is none, with something behind it that is no bracket. */
function refuseTypeName(r: Reader): void {
  if (!isName(r)) return;
  const name = peek(r).text;
  const last = is(r, "::", 1) && isName(r, 2) ? 3 : 1;
  if (is(r, "(", last) || meaningOf(r, name) === "type") return;
  if (last === 3) {
    if (meaningOf(r, name) === null) stop(r, "notDeclaredYet", { name });
    giveUp();
  }
  stop(r, "noTypeName", { name });
}

interface Declarator {
  readonly name: string;
  readonly nameAt: number;
  readonly isFunction: boolean;
  readonly parameters: readonly string[];
  readonly isQualified: boolean;
  readonly isPointer: boolean;
}

/** @returns true if it was a function with its body, behind which nothing follows. */
function readInitDeclarator(r: Reader, context: Context, specified: Specified, first: boolean): boolean {
  const start = r.at;
  const d = readDeclarator(r, context, specified);
  const token = peek(r);
  if (d.isFunction && (is(r, "{") || (is(r, ":") && (context === "member" || d.isQualified)))) {
    if (context === "block") stop(r, "functionInFunction", { where: where(token) });
    if (!first || context === "for" || context === "condition") stopExpected(r, "initializer");
    if (!specified.hasType && !d.isQualified && !(context === "member" && isConstructor(r, start)))
      stopAt(r.tokens[r.at - 1]!, r.at - 1, "forbidsNoType", { name: d.name });
    if (context !== "member") declareName(r, d.name, "function");
    inNames(r, () => {
      for (const name of d.parameters) declareName(r, name, "variable");
      if (take(r, ":")) readFields(r);
      readBody(r);
    });
    return true;
  }
  if (!specified.any && context === "top") stopExpected(r, "constructor, destructor, or type conversion");
  if (specified.isVoid && !specified.isTypedef && !d.isFunction && !d.isPointer && context !== "member") {
    // A bracket that opens no list of parameters is taken for a first value.
    const inside = is(r, "(") && isName(r, 1) ? r.at + 1 : is(r, "(") ? r.at : d.nameAt;
    if (!is(r, ")") && !is(r, "}") && !["name", "end", "number", "text"].includes(token.kind))
      stopAt(r.tokens[inside]!, inside, "declaredVoid", { name: d.name });
  }
  if (is(r, "=")) {
    if (d.isFunction) {
      if (["default", "delete", "0"].includes(peek(r, 1).text)) {
        next(r);
        next(r);
        return false;
      }
      stopAt(r.tokens[d.nameAt]!, d.nameAt, "functionInitialised", { name: d.name });
    }
    declare(r, d, specified);
    next(r);
    readInitialiserClause(r);
    return false;
  }
  if (is(r, "(")) {
    if (d.isFunction) stop(r, "initialiserForFunction");
    declare(r, d, specified);
    next(r);
    readArguments(r);
    return false;
  }
  if (is(r, "{") && !d.isFunction) {
    declare(r, d, specified);
    readBraces(r);
    return false;
  }
  if (is(r, ":") && context === "member") {
    next(r);
    readAssignment(r);
  } else if (!is(r, ",") && !is(r, ";") && context !== "for" && context !== "member") {
    stopExpected(r, "initializer");
  }
  declare(r, d, specified);
  return false;
}

function declare(r: Reader, d: Declarator, specified: Specified): void {
  if (d.name !== "" && !d.isQualified)
    declareName(r, d.name, specified.isTypedef ? "type" : d.isFunction ? "function" : "variable");
}

function isConstructor(r: Reader, start: number): boolean {
  const name = r.tokens[start]?.text ?? "";
  return isTypeName(r, name) || name === "~";
}

/** A constructor's list: `: pin(p), on{false}`. */
function readFields(r: Reader): void {
  do {
    if (!isName(r)) stopExpected(r, "identifier");
    next(r);
    if (take(r, "(")) readArguments(r);
    else if (is(r, "{")) readBraces(r);
    else stopExpected(r, "'('");
  } while (take(r, ","));
}

function readDeclarator(r: Reader, context: Context | "parameter", specified: Specified): Declarator {
  let isPointer = false;
  while (is(r, "*") || is(r, "&") || is(r, "&&") || ((is(r, "const") || is(r, "volatile")) && isPointer)) {
    isPointer = true;
    next(r);
  }
  const plain = { isFunction: false, parameters: [] as string[], isQualified: false, isPointer };
  let name = "";
  let nameAt = r.at;
  let isQualified = false;
  if (isName(r)) {
    name = next(r).text;
    while (is(r, "::") && (isName(r, 1) || is(r, "~", 1))) {
      if (meaningOf(r, name) === null) stopAt(r.tokens[nameAt]!, nameAt, "notDeclaredYet", { name });
      isQualified = true;
      next(r);
      if (is(r, "~")) next(r);
      nameAt = r.at;
      name = next(r).text;
    }
  } else if (is(r, "(") && (context !== "parameter" || is(r, "*", 1) || is(r, "&", 1))) {
    // `int (*run)(int)`, `int (x)`.
    next(r);
    const inner = readDeclarator(r, context, specified);
    expect(r, ")");
    if (is(r, "(")) {
      next(r);
      readParameters(r);
    }
    return { ...inner, isPointer: true };
  } else if (is(r, "~") && context === "member") {
    next(r);
    name = next(r).text;
  } else if (context === "parameter") {
    if (!is(r, "[")) return { ...plain, name, nameAt };
  } else if (is(r, "operator")) giveUp();
  else stopExpected(r, "unqualified-id");
  let isFunction = false;
  const parameters: string[] = [];
  for (;;) {
    if (is(r, "[")) {
      next(r);
      if (!is(r, "]")) readAssignment(r);
      expect(r, "]");
    } else if (is(r, "(") && !isFunction && context !== "parameter" && opensParameters(r)) {
      next(r);
      isFunction = true;
      parameters.push(...readParameters(r));
      while (is(r, "const") || is(r, "override") || is(r, "noexcept")) next(r);
    } else break;
  }
  return { name, nameAt, isFunction, parameters, isQualified, isPointer };
}

/** @returns whether the ( opens parameters; if not, it opens first values. */
function opensParameters(r: Reader): boolean {
  if (is(r, ")", 1)) return true;
  if (is(r, "...", 1)) return true;
  return isTypeStart(r, 1) && !(is(r, "(", 2) || is(r, "{", 2)) && !(is(r, "::", 2) && !isTypeName(r, peek(r, 3).text));
}

/** Reads behind the open bracket up to the closing one. @returns the names. */
function readParameters(r: Reader): string[] {
  const names: string[] = [];
  if (is(r, "void") && is(r, ")", 1)) next(r);
  while (!is(r, ")")) {
    if (take(r, "...")) break;
    const specified = readSpecifiers(r, "parameter");
    if (!specified.hasType) {
      if (isName(r) && meaningOf(r, peek(r).text) === null) stop(r, "notDeclaredYet", { name: peek(r).text });
      if (isName(r)) stop(r, "noTypeName", { name: peek(r).text });
      if (!specified.any) stopExpected(r, "identifier");
    }
    const d = readDeclarator(r, "parameter", specified);
    if (d.name !== "") names.push(d.name);
    if (take(r, "=")) readInitialiserClause(r);
    if (is(r, ")") || is(r, "...") || is(r, ";") || is(r, "{")) break;
    if (!take(r, ",")) stopExpected(r, "',' or '...'");
    if (is(r, ")")) stopExpected(r, "identifier");
  }
  expect(r, ")");
  return names;
}

/** @returns whether it was a definition. */
function readEnum(r: Reader): boolean {
  next(r);
  const isScoped = take(r, "class") || take(r, "struct");
  const nameAt = r.at;
  const name = isName(r) ? next(r).text : "";
  if (take(r, ":")) {
    if (!isTypeStart(r)) stopAt(r.tokens[nameAt]!, nameAt, "notDeclaredYet", { name });
    readTypeId(r);
  }
  if (!is(r, "{")) {
    if (name === "") stopExpected(r, "identifier");
    return false;
  }
  if (name !== "") declareName(r, name, "enum");
  next(r);
  while (!is(r, "}")) {
    if (!isName(r)) stopExpected(r, "identifier");
    const value = next(r).text;
    if (take(r, "=")) readAssignment(r);
    if (!isScoped) declareName(r, value, "variable");
    if (!take(r, ",")) break;
  }
  expect(r, "}");
  return true;
}

function readRecord(r: Reader): boolean {
  const word = next(r).text;
  const name = isName(r) ? next(r).text : "";
  if (name !== "") declareName(r, name, "record");
  if (is(r, ":")) {
    while (!is(r, "{") && peek(r).kind !== "end" && !is(r, ";")) next(r);
  }
  if (!is(r, "{")) {
    if (name === "") stopExpected(r, "identifier");
    return false;
  }
  next(r);
  inNames(r, () => {
    declareMembers(r);
    while (!is(r, "}")) {
      if (["public", "private", "protected"].includes(peek(r).text)) {
        next(r);
        expect(r, ":");
      } else if (!take(r, ";")) {
        if (peek(r).kind === "end") break;
        withMembers(r);
      }
    }
  });
  expect(r, "}");
  if (!followsRecord(r)) stopAt(r.tokens[r.at - 1]!, r.at - 1, "semicolonAfterRecord", { word });
  return true;
}

function withMembers(r: Reader): void {
  withColons(r, () => deeper(r, () => readSimpleDeclaration(r, "member")));
}

/** All names that stand at the class's own depth: a method may use what is declared further down. */
function declareMembers(r: Reader): void {
  let depth = 0;
  for (let k = r.at; k < r.tokens.length; k += 1) {
    const token = r.tokens[k]!;
    if (token.kind === "mark" && token.text === "{") depth += 1;
    if (token.kind === "mark" && token.text === "}") {
      depth -= 1;
      if (depth < 0) return;
    }
    if (depth === 0 && token.kind === "name" && !reservedWords.has(token.text) && !isTypeName(r, token.text))
      declareName(r, token.text, "variable");
  }
}

/** What may stand behind the brace of a class without a `;` between. */
function followsRecord(r: Reader): boolean {
  const token = peek(r);
  if (token.kind === "end") return false;
  if (token.kind === "mark") return [";", "*", "&", "(", ")", ",", "["].includes(token.text);
  if (token.kind !== "name") return false;
  if (["const", "volatile", "static", "typedef"].includes(token.text)) return true;
  return isName(r) && !isTypeName(r, token.text) && !(isName(r, 1) && !isTypeName(r, peek(r).text));
}
