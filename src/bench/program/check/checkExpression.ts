// Expressions: names, numbers, texts, members, elements. Operators and calls have files of their own.
//
// Does not know: statements.

import { libraryForms, libraryMembers, libraryObject } from "../library/signatures.ts";
import type { Expression as ExpressionSyntax } from "../read/syntax.ts";
import type { At } from "../read/token.ts";
import { checkCall, checkMake } from "./checkCall.ts";
import { asValue, broken, type Checked, literalPlace, rvalue, typeOf, variablePlace } from "./checked.ts";
import { type Checker, lookup, lookupType, nearName, type RecordMembers, report } from "./checker.ts";
import { declarePending } from "./checkFunction.ts";
import { memoryNames } from "./checkMemory.ts";
import { checkAssign, checkBinary, checkCast, checkChoose, checkStep, checkUnary } from "./checkOperator.ts";
import { isChipName } from "./chipNames.ts";
import { convert, shownType } from "./convert.ts";
import { constantOf, number } from "./fold.ts";
import { readNumber } from "./readNumber.ts";
import { resolveType } from "./resolveType.ts";
import type { Expression, Place } from "./tree.ts";
import { bytesOf, cellsOf, heldType, type Type, typeName, types } from "./types.ts";

export function check(c: Checker, e: ExpressionSyntax): Checked {
  switch (e.kind) {
    case "number": {
      const read = readNumber(e.text);
      if (read.status === "read") return asValue(number(read.value, read.type));
      if (read.status === "bad") report(c, e.at, { code: "program.badNumber", found: e.text });
      else report(c, e.at, { code: "program.notSupported", feature: "long long" });
      return broken;
    }
    case "character": {
      if (e.bytes.length <= 1) return asValue(number((e.bytes.charCodeAt(0) << 24) >> 24 || 0, types.char));
      // Several characters are an int that holds the last two; the reader has warned.
      const [high, low] = [e.bytes.charCodeAt(e.bytes.length - 2), e.bytes.charCodeAt(e.bytes.length - 1)];
      return asValue(number((((high << 8) | low) << 16) >> 16, types.int));
    }
    case "text":
      return { is: "place", place: literalPlace(c, e.bytes), name: "text" };
    case "name":
      return checkName(c, e.at, e.name, e.owner);
    case "this":
      return checkThis(c, e.at);
    case "unary":
      return checkUnary(c, e);
    case "step":
      return checkStep(c, e);
    case "binary":
      return checkBinary(c, e);
    case "assign":
      return checkAssign(c, e);
    case "choose":
      return checkChoose(c, e);
    case "comma": {
      const first = rvalue(c, check(c, e.left));
      const then = check(c, e.right);
      if (then.is === "place")
        return {
          ...then,
          place: { at: "after", type: then.place.type, isConst: then.place.isConst, effect: first, place: then.place },
        };
      const value = rvalue(c, then);
      return asValue({ op: "comma", type: value.type, first, second: value });
    }
    case "call":
      return checkCall(c, e);
    case "make":
      return checkMake(c, e);
    case "index":
      return checkIndex(c, e);
    case "member":
      return checkMember(c, e);
    case "cast":
      return checkCast(c, e);
    case "sizeof": {
      const inner = check(c, e.value);
      return asValue(number(bytesOf(typeOf(inner)), types.unsigned));
    }
    case "sizeofType":
      return asValue(number(bytesOf(resolveType(c, e.type, e.declarator, evaluate)), types.unsigned));
    case "list":
      return { is: "list", values: e.values };
    default:
      return broken;
  }
}

/** The value of an expression, for constants. */
export function evaluate(c: Checker, e: ExpressionSyntax): Expression {
  return rvalue(c, check(c, e));
}

function checkName(c: Checker, at: At, name: string, owner: string): Checked {
  if (owner !== "") return checkScoped(c, at, owner, name);
  if (name === "true" || name === "false") return asValue(number(name === "true" ? 1 : 0, types.bool));
  if (name === "nullptr") return asValue({ op: "null", type: types.null });
  const local = lookup(c, name, c.global);
  if (local === null) {
    const member = memberOfThis(c, name);
    if (member !== null) return member;
    declarePending(c, name);
  }
  const found = local ?? c.global.names.get(name);
  if (found === undefined) {
    if (libraryForms(name) !== null || memoryNames.includes(name)) return { is: "library", name, on: null };
    const object = libraryObject(name);
    if (object !== null) return asValue({ op: "null", type: object });
    if (isChipName(name)) report(c, at, { code: "program.notSupported", feature: name });
    else report(c, at, { code: "program.unknownName", name, near: nearName(c, name) });
    return broken;
  }
  if (found.is === "variable") return { is: "place", place: variablePlace(found.variable), name };
  if (found.is === "constant") return asValue(number(found.value, found.type));
  return { is: "functions", list: found.list, name, self: null };
}

/** `Colour::RED`, `Class::NAME`. */
function checkScoped(c: Checker, at: At, owner: string, name: string): Checked {
  const type = lookupType(c, owner);
  if (type?.kind === "enum") {
    const value = type.of.values.get(name);
    if (value !== undefined) return asValue(number(value, type));
    report(c, at, { code: "program.unknownMember", name, of: owner, near: nearName(c, name, type.of.values.keys()) });
    return broken;
  }
  const members = type?.kind === "record" ? c.records.get(type.of) : undefined;
  const inner = members?.scope.names.get(name);
  if (inner?.is === "constant") return asValue(number(inner.value, inner.type));
  if (inner?.is === "variable") return { is: "place", place: variablePlace(inner.variable), name };
  if (type === null) report(c, at, { code: "program.unknownName", name: owner, near: nearName(c, owner) });
  else report(c, at, { code: "program.unknownMember", name, of: owner, near: null });
  return broken;
}

function thisPlace(c: Checker): Place | null {
  const self = c.current?.self;
  if (self?.type.kind !== "pointer") return null;
  const pointer: Expression = {
    op: "load",
    type: self.type,
    place: { at: "variable", type: self.type, isConst: false, variable: self },
  };
  return { at: "pointer", type: self.type.to, isConst: self.type.toConst, pointer, line: self.line };
}

function checkThis(c: Checker, at: At): Checked {
  const place = thisPlace(c);
  if (place?.at === "pointer") return asValue(place.pointer);
  report(c, at, { code: "program.unknownName", name: "this", near: null });
  return broken;
}

/** A bare name inside a method may be a field or method of the record. */
function memberOfThis(c: Checker, name: string): Checked | null {
  const record = thisPlace(c);
  if (c.members === null || record === null) return null;
  const field = c.members.info.fields.find((f) => f.name === name);
  if (field) return { is: "place", place: fieldPlace(record, field), name };
  const list = c.members.methods.get(name);
  if (list) return { is: "functions", list, name, self: record };
  const inner = c.members.scope.names.get(name);
  if (inner?.is === "variable") return { is: "place", place: variablePlace(inner.variable), name };
  return inner?.is === "constant" ? asValue(number(inner.value, inner.type)) : null;
}

export function fieldPlace(record: Place, field: { type: Type; isConst: boolean; offset: number }): Place {
  return { at: "field", type: field.type, isConst: record.isConst || field.isConst, record, offset: field.offset };
}

function checkIndex(c: Checker, e: ExpressionSyntax & { kind: "index" }): Checked {
  const array = check(c, e.array);
  const index = check(c, e.index);
  const indexValue = rvalue(c, index);
  const type = typeOf(array);
  if (type.kind === "unknown" || indexValue.type.kind === "unknown") return broken;
  const held = heldType(indexValue.type);
  if (held.kind !== "integer") {
    report(c, e.index.at, { code: "program.cannotConvert", from: shownType(c, index), to: "int" });
    return broken;
  }
  const name = nameOf(array);
  if (type.kind === "text") {
    const place = placeFor(array);
    if (place === null)
      return asValue({
        op: "library",
        type: types.char,
        name: "String.charAt",
        values: [rvalue(c, array), convert(c, e.at, index, types.unsigned)],
        line: e.at.line,
      });
    return {
      is: "place",
      place: {
        at: "letter",
        type: types.char,
        isConst: place.isConst,
        text: place,
        index: convert(c, e.at, index, types.unsigned),
      },
      name,
    };
  }
  const { line } = e.at;
  if (type.kind === "array" && array.is === "place") {
    const { place } = array;
    return {
      is: "place",
      place: { at: "index", type: type.of, isConst: place.isConst, array: place, index: indexValue, length: type.length, line },
      name,
    };
  }
  const pointer = rvalue(c, array);
  if (pointer.type.kind === "pointer" && pointer.type.to.kind !== "void" && pointer.type.to.kind !== "function") {
    const { to, toConst } = pointer.type;
    const moved: Expression = { op: "movePointer", type: pointer.type, pointer, count: indexValue, stride: cellsOf(to), sign: 1 };
    const at0 = constantOf(indexValue) === 0 ? pointer : moved;
    return { is: "place", place: { at: "pointer", type: to, isConst: toConst, pointer: at0, line }, name };
  }
  report(c, e.at, { code: "program.notArray", found: typeName(type) });
  return broken;
}

export function placeFor(checked: Checked): Place | null {
  return checked.is === "place" ? checked.place : null;
}

export function nameOf(checked: Checked): string {
  return checked.is === "value" || checked.is === "list" ? "" : checked.name;
}

function checkMember(c: Checker, e: ExpressionSyntax & { kind: "member" }): Checked {
  let on = check(c, e.record);
  let type = typeOf(on);
  if (type.kind === "unknown") return broken;
  if (e.arrow) {
    const pointer = rvalue(c, on);
    if (pointer.type.kind !== "pointer") {
      report(c, e.at, { code: "program.badOperand", operator: "->", found: typeName(type) });
      return broken;
    }
    const { to, toConst } = pointer.type;
    on = { is: "place", place: { at: "pointer", type: to, isConst: toConst, pointer, line: e.at.line }, name: nameOf(on) };
    type = to;
  }
  if (type.kind === "record") return memberOfRecord(c, e, on, c.records.get(type.of)!);
  const kind = { text: "String", servo: "Servo", serial: "Serial" }[type.kind as string];
  if (kind !== undefined) {
    const name = `${kind}.${e.name}`;
    if (libraryForms(name) !== null) return { is: "library", name, on };
    report(c, e.nameAt, {
      code: "program.unknownMember",
      name: e.name,
      of: kind,
      near: nearName(c, e.name, libraryMembers(kind)),
    });
    return broken;
  }
  report(c, e.nameAt, { code: "program.notRecord", name: e.name, found: typeName(type) });
  return broken;
}

function memberOfRecord(c: Checker, e: ExpressionSyntax & { kind: "member" }, on: Checked, members: RecordMembers): Checked {
  const { info } = members;
  const field = info.fields.find((f) => f.name === e.name);
  const list = members.methods.get(e.name);
  const shared = members.scope.names.get(e.name);
  if (shared?.is === "variable") return { is: "place", place: variablePlace(shared.variable), name: e.name };
  if (!field && !list) {
    const names = [...info.fields.map((f) => f.name), ...members.methods.keys()];
    report(c, e.nameAt, { code: "program.unknownMember", name: e.name, of: info.name, near: nearName(c, e.name, names) });
    return broken;
  }
  const isPrivate = field ? field.isPrivate : list!.every((f) => f.isPrivate);
  if (isPrivate && c.members?.info !== info) {
    report(c, e.nameAt, { code: "program.privateMember", name: e.name, of: info.name });
    return broken;
  }
  const value = on.is === "value" ? on.value : null;
  const place = on.is === "place" ? on.place : value?.op === "record" ? value.place : null;
  if (place === null) return broken;
  if (field) return { is: "place", place: fieldPlace(place, field), name: e.name };
  return { is: "functions", list: list!, name: e.name, self: place };
}
