// Declarations: variables, functions, struct and class, enum, typedef and using.
//
// The same reader serves the top level, the inside of a function and (for fields and methods) the inside of a class; where a
// function may not stand it says so.
// Does not know: names, types.
import {
  atOf,
  behind,
  type Cursor,
  expect,
  fail,
  failExpected,
  isMark,
  isWord,
  next,
  peek,
  placeOf,
  report,
  reportExpected,
  take,
} from "./cursor.ts";
import { parseAssignment } from "./parseExpression.ts";
import { isParameterList, parseFunction, parseValues } from "./parseFunction.ts";
import { parseBlock } from "./parseStatement.ts";
import { parseDeclarator, parseSpecifiers, type Specifiers } from "./parseType.ts";
import type {
  AliasSyntax,
  Declarator,
  EnumSyntax,
  Initialiser,
  Item,
  MemberSyntax,
  RecordSyntax,
  VariableSyntax,
  VariablesSyntax,
} from "./syntax.ts";
import type { At } from "./token.ts";

/**
 * Reads one declaration to its end.
 *
 * @param inside whether it stands inside a function.
 * @param until ";" as a rule; ")" for the declaration in a condition and "for" for the head of a loop: these leave the end unread.
 */
export function parseDeclaration(c: Cursor, inside: boolean, until: ";" | ")" | "for" = ";"): Item {
  const start = atOf(peek(c));
  if (isWord(c, "typedef")) return parseTypedef(c);
  if (isWord(c, "using")) return parseUsing(c);
  if (isWord(c, "union")) fail(c, { code: "program.notSupported", place: placeOf(c, start), feature: "union" });
  if (isDefinition(c, "enum")) return endOfDefinition(c, parseEnum(c));
  if (isDefinition(c, "struct") || isDefinition(c, "class")) return endOfDefinition(c, parseRecord(c));
  const specifiers = parseSpecifiers(c);
  if (take(c, ";")) return variables(start, specifiers, []);
  const declarator = parseDeclarator(c);
  if (isParameterList(c) && declarator.pointsToFunction === null) {
    const opening = c.at;
    const read = parseFunction(c, specifiers.type, declarator);
    if (inside && read.body !== null) {
      const name = declarator.name;
      report(c, { code: "program.functionInFunction", place: placeOf(c, read.body.at), name });
    }
    if (c.at > opening) return read;
  }
  if (!inside && isMark(c, "{") && specifiers.type.name === "void" && declarator.pointers.length === 0)
    return withoutBrackets(c, specifiers, declarator);
  const list: VariableSyntax[] = [{ declarator, initialiser: parseInitialiser(c) }];
  while (until !== ")" && take(c, ",") && !c.panic) {
    const more = parseDeclarator(c);
    list.push({ declarator: more, initialiser: parseInitialiser(c) });
  }
  if (until === ";" && !c.panic) expect(c, ";");
  return variables(start, specifiers, list);
}

/** `void loop {`: the brackets are missing. */
function withoutBrackets(c: Cursor, specifiers: Specifiers, declarator: Declarator): Item {
  reportExpected(c, "(");
  const body = parseBlock(c);
  return {
    kind: "function",
    at: declarator.at,
    type: specifiers.type,
    declarator,
    parameters: [],
    fields: [],
    isConst: false,
    body,
  };
}

function variables(at: At, specifiers: Specifiers, list: VariableSyntax[]): VariablesSyntax {
  const { type, isStatic, isExtern, isConstexpr } = specifiers;
  return { kind: "variables", at, type, isStatic, isExtern, isConstexpr, defines: null, variables: list };
}

function parseInitialiser(c: Cursor): Initialiser | null {
  if (take(c, "=") || isMark(c, "{")) return { kind: "value", value: parseAssignment(c) };
  if (!isMark(c, "(")) return null;
  const at = atOf(next(c));
  return { kind: "arguments", at, values: parseValues(c, ")") };
}

/** `struct Name {`, `struct {`, `enum class Name {`, `enum Name : byte {`. */
function isDefinition(c: Cursor, word: string): boolean {
  if (!isWord(c, word)) return false;
  let k = 1;
  if (word === "enum" && (isWord(c, "class", 1) || isWord(c, "struct", 1))) k += 1;
  if (peek(c, k).kind === "name") k += 1;
  return isMark(c, "{", k) || isMark(c, ":", k) || (word !== "enum" && isMark(c, ";", k));
}

/** Behind the } of a type stands its ;, or variables of that type at once. */
function endOfDefinition(c: Cursor, read: EnumSyntax | RecordSyntax): Item {
  if (c.panic || take(c, ";")) return read;
  const token = peek(c);
  if ((token.kind !== "name" && !isMark(c, "*")) || token.line !== behind(c).line) {
    expect(c, ";");
    return read;
  }
  const list: VariableSyntax[] = [];
  do {
    const declarator = parseDeclarator(c);
    list.push({ declarator, initialiser: parseInitialiser(c) });
  } while (take(c, ",") && !c.panic);
  expect(c, ";");
  // A type without a name gets one that no program can write.
  const named = { ...read, name: read.name || `#${read.at.line}:${read.at.column}` };
  const type = { at: read.at, name: named.name, builtIn: false, isConst: false, isVolatile: false };
  return {
    kind: "variables",
    at: read.at,
    type,
    isStatic: false,
    isExtern: false,
    isConstexpr: false,
    defines: named,
    variables: list,
  };
}

function parseEnum(c: Cursor): EnumSyntax {
  const at = atOf(next(c));
  const isScoped = take(c, "class") || take(c, "struct");
  const name = peek(c).kind === "name" ? next(c).text : "";
  if (name !== "") c.typeNames.add(name);
  const type = take(c, ":") ? parseSpecifiers(c).type : null;
  const values: { at: At; name: string; value: import("./syntax.ts").Expression | null }[] = [];
  expect(c, "{");
  while (!isMark(c, "}") && !c.panic && peek(c).kind !== "end") {
    const token = peek(c);
    if (token.kind !== "name") {
      failExpected(c, "name");
      break;
    }
    next(c);
    values.push({ at: atOf(token), name: token.text, value: take(c, "=") ? parseAssignment(c) : null });
    if (!isMark(c, "}") && !expect(c, ",")) break;
  }
  expect(c, "}");
  return { kind: "enum", at, name, isScoped, type, values };
}

function parseRecord(c: Cursor): RecordSyntax {
  const word = next(c);
  const at = atOf(word);
  const name = peek(c).kind === "name" ? next(c).text : "";
  if (name !== "") c.typeNames.add(name);
  if (isMark(c, ";")) return { kind: "record", at, name, members: [] };
  if (isMark(c, ":")) fail(c, { code: "program.notSupported", place: placeOf(c, atOf(peek(c))), feature: "inheritance" });
  const members: MemberSyntax[] = [];
  let isPrivate = word.text === "class";
  expect(c, "{");
  while (!isMark(c, "}") && !c.panic && peek(c).kind !== "end") {
    if (["public", "private", "protected"].includes(peek(c).text) && isMark(c, ":", 1)) {
      isPrivate = next(c).text !== "public";
      next(c);
    } else if (!take(c, ";")) {
      const start = c.at;
      members.push({ isPrivate, item: parseMember(c, name) });
      if (c.at === start) break;
    }
  }
  expect(c, "}");
  return { kind: "record", at, name, members };
}

function parseMember(c: Cursor, owner: string): MemberSyntax["item"] {
  const token = peek(c);
  if (isMark(c, "~")) fail(c, { code: "program.notSupported", place: placeOf(c, atOf(token)), feature: "destructor" });
  const ahead = isWord(c, "explicit") ? 1 : 0;
  if (owner !== "" && isWord(c, owner, ahead) && isMark(c, "(", ahead + 1)) {
    if (ahead > 0) next(c);
    const declarator = parseDeclarator(c);
    return parseFunction(c, null, declarator);
  }
  const item = parseDeclaration(c, false);
  if (item.kind === "alias") fail(c, { code: "program.notSupported", place: placeOf(c, item.at), feature: "typedef in a class" });
  return item.kind === "alias"
    ? {
        kind: "variables",
        at: item.at,
        type: item.type,
        isStatic: false,
        isExtern: false,
        isConstexpr: false,
        defines: null,
        variables: [],
      }
    : item;
}

function parseTypedef(c: Cursor): Item {
  const at = atOf(next(c));
  for (const word of ["struct", "class", "enum"]) if (isDefinition(c, word)) return parseNamedDefinition(c, word);
  const { type } = parseSpecifiers(c);
  const declarator = parseDeclarator(c);
  if (declarator.name !== "") c.typeNames.add(declarator.name);
  expect(c, ";");
  return { kind: "alias", at, type, declarator };
}

/** `typedef struct {…} Name;`: the name behind the brace is the type's. */
function parseNamedDefinition(c: Cursor, word: string): Item {
  const read = word === "enum" ? parseEnum(c) : parseRecord(c);
  const token = peek(c);
  if (token.kind !== "name") {
    failExpected(c, "name");
    return read;
  }
  next(c);
  c.typeNames.add(token.text);
  expect(c, ";");
  if (read.name !== "" && read.name !== token.text)
    report(c, { code: "program.notSupported", place: placeOf(c, atOf(token)), feature: "two names for one type" });
  return { ...read, name: token.text };
}

function parseUsing(c: Cursor): AliasSyntax {
  const at = atOf(next(c));
  if (!(peek(c).kind === "name" && isMark(c, "=", 1)))
    fail(c, { code: "program.notSupported", place: placeOf(c, at), feature: "using" });
  const name = next(c).text;
  expect(c, "=");
  const { type } = parseSpecifiers(c);
  const declarator = parseDeclarator(c, true);
  if (!c.panic) c.typeNames.add(name);
  expect(c, ";");
  return { kind: "alias", at, type, declarator: { ...declarator, name } };
}
