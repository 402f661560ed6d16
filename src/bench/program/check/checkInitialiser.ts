// Initialisers: what a variable holds when it begins, as statements that fill its cells.
//
// Braces are spread over arrays and records as C++11, section 8.5.1 has it: inner braces may be left out, what is not named is
// zero. Values that are all known before the start become one "fill".
// Does not know: scopes, storage.
import type { Expression as ExpressionSyntax, Initialiser } from "../read/syntax.ts";
import type { At } from "../read/token.ts";
import { callOf, candidateOf, checkMake, chooseForm } from "./checkCall.ts";
import { check } from "./checkExpression.ts";
import { type Checked, rvalue } from "./checked.ts";
import { type Checker, report } from "./checker.ts";
import { convert, zeroOf } from "./convert.ts";
import { constantOf, number } from "./fold.ts";
import type { Expression, Place, Statement } from "./tree.ts";
import { cellKind, cellsOf, isScalar, sameType, type Type, types } from "./types.ts";

/** One value of a list and the cell, from the beginning of the whole, where it goes. */
interface Part {
  readonly offset: number;
  readonly place: Place;
  readonly value: Expression;
}

/** @returns the statements that give the place its first value; none for a number that nobody sets. */
export function checkInto(c: Checker, at: At, place: Place, type: Type, initialiser: Initialiser | null): Statement[] {
  if (initialiser === null) return checkEmpty(c, at, place, type);
  if (initialiser.kind === "arguments") return fromArguments(c, at, place, type, initialiser.values);
  const { value } = initialiser;
  if (value.kind === "list") return fromList(c, value.at, place, type, value.values);
  if (type.kind === "array") {
    if (value.kind === "text" && isCharArray(type)) return fromText(c, value.at, place, type, value.bytes);
    report(c, value.at, { code: "program.cannotConvert", from: shownSyntax(value), to: "array" });
    return [];
  }
  if (type.kind === "record") return recordFrom(c, value.at, place, type, check(c, value));
  return [assign(place, convert(c, at, check(c, value), type), value.at.line)];
}

function shownSyntax(e: ExpressionSyntax): string {
  return e.kind === "name" ? e.name : e.kind === "number" ? e.text : e.kind;
}

function assign(place: Place, value: Expression, line: number): Statement {
  return { do: "expression", value: { op: "assign", type: place.type, place, value }, line };
}

/** Without an initialiser: classes and texts begin all the same. */
function checkEmpty(c: Checker, at: At, place: Place, type: Type): Statement[] {
  if (type.kind === "record") {
    const members = c.records.get(type.of);
    if (members && members.constructors.length > 0) return construct(c, at, place, type, []);
  }
  if (type.kind === "array" && hasConstructor(c, type))
    return Array.from({ length: type.length }, (_, i) => checkEmpty(c, at, element(place, type, i, at.line), type.of)).flat();
  return holdsThings(type) ? [{ do: "clear", place }] : [];
}

function hasConstructor(c: Checker, type: Type): boolean {
  if (type.kind === "array") return hasConstructor(c, type.of);
  return type.kind === "record" && (c.records.get(type.of)?.constructors.length ?? 0) > 0;
}

/** Whether some cell of the type is a text or a servo, which must exist before it is used. */
export function holdsThings(type: Type): boolean {
  if (type.kind === "array") return holdsThings(type.of);
  if (type.kind === "record") return type.of.fields.some((f) => holdsThings(f.type));
  return type.kind === "text" || type.kind === "servo";
}

function fromArguments(c: Checker, at: At, place: Place, type: Type, values: readonly ExpressionSyntax[]): Statement[] {
  if (type.kind === "record")
    return construct(
      c,
      at,
      place,
      type,
      values.map((v) => check(c, v)),
    );
  const only = values[0];
  if (type.kind === "text") {
    const made = checkMake(c, {
      kind: "make",
      at,
      type: { at, name: "String", builtIn: true, isConst: false, isVolatile: false },
      values,
    });
    return [assign(place, rvalue(c, made), at.line)];
  }
  if (values.length === 1 && only && isScalar(type)) return [assign(place, convert(c, at, check(c, only), type), at.line)];
  report(c, at, { code: "program.argumentCount", name: "", expected: "1", found: values.length });
  return [];
}

function recordFrom(c: Checker, at: At, place: Place, type: Type & { kind: "record" }, given: Checked): Statement[] {
  const value = rvalue(c, given);
  if (sameType(value.type, type) || value.type.kind === "unknown")
    return value.op === "record" ? [assign(place, value, at.line)] : [];
  if ((c.records.get(type.of)?.constructors.length ?? 0) > 0) return construct(c, at, place, type, [given]);
  convert(c, at, given, type);
  return [];
}

/** Calls the constructor that fits. */
export function construct(
  c: Checker,
  at: At,
  place: Place,
  type: Type & { kind: "record" },
  values: readonly Checked[],
): Statement[] {
  const constructors = c.records.get(type.of)?.constructors ?? [];
  if (constructors.length === 0) {
    if (values.length === 1) return recordFrom(c, at, place, type, values[0]!);
    if (values.length > 0)
      report(c, at, { code: "program.argumentCount", name: type.of.name, expected: "0", found: values.length });
    return [{ do: "clear", place }];
  }
  const only = values[0];
  if (values.length === 1 && only && only.is === "place" && sameType(only.place.type, type))
    return [assign(place, { op: "record", type, place: only.place }, at.line)];
  const form = chooseForm(c, at, type.of.name, constructors.map(candidateOf), values);
  if (form === null) return [];
  const call = rvalue(c, callOf(c, at, form, place, values));
  return [{ do: "expression", value: call, line: at.line }];
}

function element(array: Place, type: Type & { kind: "array" }, i: number, line: number): Place {
  return { at: "index", type: type.of, isConst: array.isConst, array, index: number(i, types.int), length: type.length, line };
}

function isCharArray(type: Type): boolean {
  return type.kind === "array" && type.of.kind === "integer" && type.of.name === "char";
}

function fromText(c: Checker, at: At, place: Place, type: Type & { kind: "array" }, bytes: string): Statement[] {
  if (bytes.length + 1 > type.length) {
    report(c, at, { code: "program.tooManyValues", most: type.length, found: bytes.length + 1 });
    return [];
  }
  return [{ do: "fill", place, kind: "int", values: textCells(bytes, type.length) }];
}

function textCells(bytes: string, length: number): number[] {
  return Array.from({ length }, (_, i) => ((bytes.charCodeAt(i) || 0) << 24) >> 24);
}

function fromList(c: Checker, at: At, place: Place, type: Type, values: readonly ExpressionSyntax[]): Statement[] {
  if (type.kind === "record" && (c.records.get(type.of)?.constructors.length ?? 0) > 0)
    return construct(
      c,
      at,
      place,
      type,
      values.map((v) => check(c, v)),
    );
  if (isScalar(type)) {
    const [only, second] = values;
    if (second) report(c, second.at, { code: "program.tooManyValues", most: 1, found: values.length });
    return [assign(place, only ? convert(c, at, check(c, only), type) : zeroOf(type), at.line)];
  }
  const parts: Part[] = [];
  const statements: Statement[] = [];
  spreadBraced(c, at, place, type, values, 0, parts, statements);
  return [...joined(place, type, parts), ...statements];
}

/** One fill if all parts are numbers of one kind; else zeros and then the parts one by one. */
function joined(place: Place, type: Type, parts: readonly Part[]): Statement[] {
  const kind = uniformKind(type);
  const cells = cellsOf(type);
  if (kind !== null && kind !== "object" && parts.every((p) => constantOf(p.value) !== null)) {
    const values = new Array<number>(cells).fill(0);
    for (const p of parts) values[p.offset] = constantOf(p.value)!;
    return [{ do: "fill", place, kind, values }];
  }
  const covered = new Set(parts.map((p) => p.offset)).size === cells;
  const clear: Statement[] = covered ? [] : [{ do: "clear", place }];
  return [...clear, ...parts.map((p) => assign(p.place, p.value, 0))];
}

function uniformKind(type: Type): "int" | "float" | "object" | null {
  if (type.kind === "array") return uniformKind(type.of);
  if (type.kind !== "record") return cellKind(type);
  const kinds = new Set(type.of.fields.map((f) => uniformKind(f.type)));
  return kinds.size === 1 ? [...kinds][0]! : null;
}

function spreadBraced(
  c: Checker,
  at: At,
  place: Place,
  type: Type,
  values: readonly ExpressionSyntax[],
  offset: number,
  parts: Part[],
  statements: Statement[],
): void {
  const only = values[0];
  if (type.kind === "array" && isCharArray(type) && values.length === 1 && only?.kind === "text") {
    textCells(only.bytes, Math.max(type.length, only.bytes.length + 1)).forEach((v, i) => {
      parts.push({ offset: offset + i, place: element(place, type, i, at.line), value: number(v, types.char) });
    });
    return;
  }
  const at0 = { next: 0 };
  spread(c, place, type, values, at0, offset, parts, statements, true);
  if (at0.next < values.length) {
    const most = at0.next;
    report(c, values[at0.next]!.at, { code: "program.tooManyValues", most, found: values.length });
  }
}

/** Takes as many values as the type needs, from `position.next` on. */
function spread(
  c: Checker,
  place: Place,
  type: Type,
  values: readonly ExpressionSyntax[],
  position: { next: number },
  offset: number,
  parts: Part[],
  statements: Statement[],
  isOuter = false,
): void {
  const value = values[position.next];
  if (value === undefined) return;
  if (!isOuter && value.kind === "list" && !isScalar(type)) {
    position.next += 1;
    if (type.kind === "record" && (c.records.get(type.of)?.constructors.length ?? 0) > 0)
      statements.push(
        ...construct(
          c,
          value.at,
          place,
          type,
          value.values.map((v) => check(c, v)),
        ),
      );
    else spreadBraced(c, value.at, place, type, value.values, offset, parts, statements);
    return;
  }
  if (type.kind === "array") {
    if (!isOuter && value.kind === "text" && isCharArray(type)) {
      position.next += 1;
      spreadBraced(c, value.at, place, type, [value], offset, parts, statements);
      return;
    }
    const size = cellsOf(type.of);
    for (let i = 0; i < type.length && position.next < values.length; i += 1)
      spread(c, element(place, type, i, value.at.line), type.of, values, position, offset + i * size, parts, statements);
    return;
  }
  if (type.kind === "record") {
    if (!isOuter || (c.records.get(type.of)?.constructors.length ?? 0) > 0) {
      const given = check(c, value);
      const got = rvalue(c, given).type;
      if (sameType(got, type) || (c.records.get(type.of)?.constructors.length ?? 0) > 0) {
        position.next += 1;
        statements.push(...recordFrom(c, value.at, place, type, given));
        return;
      }
    }
    for (const field of type.of.fields) {
      const inner: Place = { at: "field", type: field.type, isConst: place.isConst, record: place, offset: field.offset };
      spread(c, inner, field.type, values, position, offset + field.offset, parts, statements);
    }
    return;
  }
  position.next += 1;
  const item = value.kind === "list" && value.values.length === 1 ? value.values[0]! : value;
  parts.push({ offset, place, value: convert(c, item.at, check(c, item), type) });
}

/** How many elements `[]` has, from what it is filled with; null if that does not say. */
export function lengthFrom(type: Type & { kind: "array" }, initialiser: Initialiser | null): number | null {
  if (initialiser?.kind !== "value") return null;
  const { value } = initialiser;
  if (value.kind === "text") return value.bytes.length + 1;
  if (value.kind !== "list") return null;
  const [first] = value.values;
  if (isCharArray(type) && value.values.length === 1 && first?.kind === "text") return first.bytes.length + 1;
  const inner = type.of;
  const hasBraces = value.values.some((v) => v.kind === "list" || v.kind === "text");
  if (inner.kind !== "array" || hasBraces) return value.values.length;
  return Math.ceil(value.values.length / cellsOf(inner));
}
