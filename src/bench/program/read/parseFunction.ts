// What stands behind a function's name: parameters, a constructor's list, the body.
//
// Does not know: names, types.
import { atOf, type Cursor, expect, fail, isMark, isWord, next, peek, placeOf, take } from "./cursor.ts";
import { parseAssignment } from "./parseExpression.ts";
import { parseBlock } from "./parseStatement.ts";
import { isTypeStart, parseDeclarator, parseSpecifiers } from "./parseType.ts";
import type { Declarator, Expression, FunctionSyntax, Parameter, TypeSyntax } from "./syntax.ts";

/** @returns whether the ( at the cursor opens parameters and not an initialiser's arguments: `int f(int)` or `int f(3)`. */
export function isParameterList(c: Cursor): boolean {
  return isMark(c, "(") && (isMark(c, ")", 1) || isTypeStart(c, 1) || isMark(c, "...", 1) || isUnknownParameter(c));
}

/** `(Strng name)` or `(Strng name,`: two names in a row are a parameter with an unknown type. */
function isUnknownParameter(c: Cursor): boolean {
  const then = peek(c, 3);
  return (
    peek(c, 1).kind === "name" && peek(c, 2).kind === "name" && then.kind === "mark" && (then.text === ")" || then.text === ",")
  );
}

/** Reads `(…)`. `(void)` is none. */
export function parseParameters(c: Cursor): Parameter[] {
  const list: Parameter[] = [];
  if (!expect(c, "(")) return list;
  if (isWord(c, "void") && isMark(c, ")", 1)) next(c);
  while (!isMark(c, ")") && !c.panic && peek(c).kind !== "end") {
    if (isMark(c, "...")) fail(c, { code: "program.notSupported", place: placeOf(c, atOf(peek(c))), feature: "..." });
    const { type } = parseSpecifiers(c);
    const declarator = parseDeclarator(c, true);
    const usual = take(c, "=") ? parseAssignment(c) : null;
    if (c.panic) break;
    list.push({ type, declarator, usual });
    if (!isMark(c, ")") && !expect(c, ",")) break;
  }
  expect(c, ")");
  return list;
}

/** Reads a function from its parameters on: to its end, or to the `;` of a prototype. @param type null for a constructor. */
export function parseFunction(c: Cursor, type: TypeSyntax | null, declarator: Declarator): FunctionSyntax {
  const parameters = parseParameters(c);
  const isConst = take(c, "const");
  const fields: { at: { line: number; column: number }; name: string; values: Expression[] }[] = [];
  if (type === null && take(c, ":")) {
    do {
      const at = atOf(peek(c));
      const name = peek(c).kind === "name" ? next(c).text : "";
      const close = isMark(c, "{") ? "}" : ")";
      if (!take(c, "{")) expect(c, "(");
      fields.push({ at, name, values: parseValues(c, close) });
    } while (take(c, ",") && !c.panic);
  }
  let body = null;
  if (isMark(c, "{")) body = parseBlock(c);
  else if (isMark(c, "=") && (isWord(c, "default", 1) || isWord(c, "delete", 1)))
    fail(c, { code: "program.notSupported", place: placeOf(c, atOf(peek(c))), feature: `= ${peek(c, 1).text}` });
  else if (isMark(c, ":") || peek(c).kind === "end" || isMark(c, "}") || !isMark(c, ";"))
    expect(c, peek(c).line === declarator.at.line ? ";" : "{");
  else next(c);
  return { kind: "function", at: declarator.at, type, declarator, parameters, fields, isConst, body };
}

/** Values between brackets that are open already, and the closing bracket. */
export function parseValues(c: Cursor, close: ")" | "}"): Expression[] {
  const values: Expression[] = [];
  while (!isMark(c, close) && !c.panic && peek(c).kind !== "end") {
    values.push(parseAssignment(c));
    if (!isMark(c, ",")) break;
    next(c);
    // A list in braces may end with a comma; a call may not.
    if (isMark(c, close) && close === ")") {
      parseAssignment(c);
      break;
    }
  }
  expect(c, close);
  return values;
}
