// Implicit conversions: whether a value fits a type, how well, and the node that converts it.
//
// The ranks decide between overloads as in C++11, section 13.3.3: exact, promotion, conversion, and what a class's
// constructor does (here: a char text becomes a String).
// Does not know: operators, calls.

import type { At } from "../read/token.ts";
import { numeric, promoted } from "./arithmetic.ts";
import { type Checked, rvalue } from "./checked.ts";
import { type Checker, report, warn } from "./checker.ts";
import { constantOf, convertNumber, number } from "./fold.ts";
import type { Expression } from "./tree.ts";
import { heldType, isArithmetic, sameType, type Type, typeName, types } from "./types.ts";

/** How well a value of type `from` becomes `to`: 0 exact, 1 promotion, 2 conversion, 3 by a class; null not at all. */
export function rankOf(from: Type, to: Type, value: Expression | null): number | null {
  if (from.kind === "unknown" || to.kind === "unknown" || sameType(from, to)) return 0;
  const source = from.kind === "enum" && from.of.isScoped ? from : heldType(from);
  if (isArithmetic(to)) {
    if (isArithmetic(source)) {
      if (source.kind === "integer" && to.kind === "integer" && sameType(promoted(source), to)) return 1;
      if (source.kind === "float" && to.kind === "float" && to.name === "double") return 1;
      return 2;
    }
    if (to.kind === "integer" && to.name === "bool" && ["pointer", "null", "text", "serial", "flash"].includes(from.kind))
      return 2;
    return null;
  }
  if (to.kind === "pointer") {
    if (from.kind === "null" || (value !== null && isNull(value))) return 2;
    if (from.kind !== "pointer") return null;
    if (to.to.kind === "void") return to.toConst || !from.toConst ? 2 : null;
    if (!sameType(from.to, to.to)) return null;
    // A text constant may be handed to a char*: old, and only warned of.
    return to.toConst || !from.toConst ? 0.5 : value?.op === "address" && value.place.at === "literal" ? 2 : null;
  }
  if (to.kind === "text") return from.kind === "flash" || isChars(from) ? 3 : null;
  return null;
}

export function isChars(type: Type): boolean {
  return type.kind === "pointer" && type.to.kind === "integer" && type.to.name === "char";
}

function isNull(value: Expression): boolean {
  return (
    value.op === "null" ||
    (value.op === "number" && value.value === 0 && value.type.kind === "integer" && value.type.name === "int")
  );
}

/** @returns the value in the type, or null if it does not fit. Says nothing. */
export function tryConvert(value: Expression, to: Type): Expression | null {
  const from = value.type;
  if (rankOf(from, to, value) === null) return null;
  if (from.kind === "unknown" || to.kind === "unknown") return number(0, to);
  if (sameType(from, to)) return value;
  if (to.kind === "integer" && to.name === "bool" && !isArithmetic(heldType(from))) return truth(value);
  if (isArithmetic(to)) return convertNumber(value, to);
  if (to.kind === "pointer") return isNull(value) ? { op: "null", type: to } : ({ ...value, type: to } as Expression);
  if (to.kind === "text") return toText(value);
  return value;
}

/** Converts, or reports that it cannot be. Constants that change their value are warned of. */
export function convert(c: Checker, at: At, checked: Checked, to: Type): Expression {
  if (checked.is === "list") {
    // int x = {5} and return {}: one value or none.
    if (checked.values.length === 0 && to.kind !== "record") return zeroOf(to);
    report(c, at, { code: "program.cannotConvert", from: "{…}", to: typeName(to) });
    return number(0, types.unknown);
  }
  const value = rvalue(c, checked);
  const isName = checked.is === "library" || (checked.is === "functions" && value.type.kind === "unknown");
  const converted = isName ? null : tryConvert(value, to);
  if (converted === null) {
    report(c, at, { code: "program.cannotConvert", from: shownType(c, checked), to: typeName(to) });
    return number(0, types.unknown);
  }
  warnOfChange(c, at, value, converted);
  return converted;
}

/** The type as GCC names it in messages: an array by its own type, not as the pointer it would become. */
export function shownType(c: Checker, checked: Checked): string {
  if (checked.is === "place" && checked.place.type.kind === "array") {
    const isText = checked.place.at === "literal";
    return isText ? "const char*" : typeName(checked.place.type);
  }
  if (checked.is === "library" || checked.is === "functions") return checked.name;
  return typeName(rvalue(c, checked).type);
}

/** A constant that is cut to fit: `int x = 40000`, `byte b = 300`. −1 for "all ones" is usual. */
function warnOfChange(c: Checker, at: At, before: Expression, after: Expression): void {
  const [a, b] = [constantOf(before), constantOf(after)];
  const [from, to] = [heldType(before.type), heldType(after.type)];
  if (a === null || b === null || from.kind !== "integer" || to.kind !== "integer" || to.name === "bool") return;
  const [x, y] = [numeric(a, from), numeric(b, to)];
  // The overflow that made the number has been told.
  if (c.problems.some((p) => p.code === "program.overflow" && p.place?.line === at.line)) return;
  if (x !== y && x !== -1) warn(c, at, { code: "program.numberChanges", from: x, to: y, type: typeName(to) });
}

/** The value of `T x = {}`. */
export function zeroOf(type: Type): Expression {
  if (type.kind === "pointer") return { op: "null", type };
  if (type.kind === "text") return { op: "text", type, bytes: "" };
  return number(0, type);
}

/** The value as a condition: not zero, not null. */
export function truth(value: Expression): Expression {
  const type = heldType(value.type);
  if (value.type.kind === "unknown") return number(0, types.bool);
  if (type.kind === "integer" && type.name === "bool")
    return sameType(value.type, types.bool) ? value : convertNumber(value, types.bool);
  if (isArithmetic(type)) return convertNumber(value, types.bool);
  if (value.op === "null") return number(0, types.bool);
  return { op: "isSet", type: types.bool, value };
}

/** A condition, or a report that the value is none. */
export function condition(c: Checker, at: At, checked: Checked): Expression {
  const value = rvalue(c, checked);
  if (checked.is !== "library" && rankOf(value.type, types.bool, value) !== null) return truth(value);
  report(c, at, { code: "program.cannotConvert", from: shownType(c, checked), to: "bool" });
  return number(0, types.bool);
}

/** Any value that a String can be joined with, as a text; null for others. Numbers are written as print writes them. */
export function toText(value: Expression): Expression | null {
  const call = (name: string, ...values: Expression[]): Expression => ({
    op: "library",
    type: types.text,
    name,
    values,
    line: 0,
  });
  const type = heldType(value.type);
  if (type.kind === "text") return value;
  if (type.kind === "flash") return value.op === "text" ? { ...value, type: types.text } : call("text.ofFlash", value);
  if (isChars(type)) {
    return call("text.ofChars", value);
  }
  if (type.kind === "float") return call("text.ofFloat", convertNumber(value, types.double), number(2, types.byte));
  if (type.kind !== "integer") return null;
  if (type.name === "char") return call("text.ofChar", value);
  return type.name === "unsigned long"
    ? call("text.ofUnsigned", value, number(10, types.byte))
    : call("text.ofLong", convertNumber(value, types.long), number(10, types.byte));
}
