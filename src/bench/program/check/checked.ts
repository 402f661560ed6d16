// What checking an expression gives: a value, a place that can be read or changed, or a name that only a call can use.
//
// Does not know: how it was written.
import { type Checker, literalNumber } from "./checker.ts";
import { number } from "./fold.ts";
import type { Expression, FunctionInfo, Place, Variable } from "./tree.ts";
import { isScalar, type Type, types } from "./types.ts";

export type Checked =
  | { readonly is: "value"; readonly value: Expression }
  | { readonly is: "place"; readonly place: Place; readonly name: string }
  /** Functions of the program by one name; `self` is the record of a method. */
  | { readonly is: "functions"; readonly list: readonly FunctionInfo[]; readonly name: string; readonly self: Place | null }
  /** A function of the library by its full name ("delay", "String.length"), with the thing it is called on. */
  | { readonly is: "library"; readonly name: string; readonly on: Checked | null }
  /** Braces; they have no type of their own. */
  | { readonly is: "list"; readonly values: readonly import("../read/syntax.ts").Expression[] };

export function asValue(value: Expression): Checked {
  return { is: "value", value };
}

export const broken: Checked = { is: "value", value: number(0, types.unknown) };

export function typeOf(checked: Checked): Type {
  if (checked.is === "value") return checked.value.type;
  if (checked.is === "place") return checked.place.type;
  const only = checked.is === "functions" && checked.list.length === 1 ? checked.list[0] : undefined;
  return only ? functionType(only) : types.unknown;
}

export function functionType(f: FunctionInfo): Type {
  return { kind: "function", result: f.result, parameters: f.parameters.map((p) => p.type) };
}

/** The place of a variable; a reference is the place it leads to. */
export function variablePlace(variable: Variable): Place {
  if (!variable.isReference) return { at: "variable", type: variable.type, isConst: variable.isConst, variable };
  const pointer: Expression = { op: "load", type: pointerTo(variable.type), place: cellPlace(variable) };
  return { at: "pointer", type: variable.type, isConst: variable.isConst, pointer, line: variable.line };
}

/** The variable's own cell, which for a reference holds a pointer. */
export function cellPlace(variable: Variable): Place {
  const type = variable.isReference ? pointerTo(variable.type) : variable.type;
  return { at: "variable", type, isConst: false, variable };
}

export function pointerTo(type: Type, toConst = false): Type {
  return { kind: "pointer", to: type, toConst };
}

/** Marks the variable behind a place as one that something points to. */
export function keepInMemory(place: Place): void {
  if (place.at === "variable") place.variable.inMemory = true;
  else if (place.at === "field") keepInMemory(place.record);
  else if (place.at === "index") keepInMemory(place.array);
}

/** The pointer to a place. */
export function addressOf(place: Place): Expression {
  if (place.at === "pointer") return { ...place.pointer, type: pointerTo(place.type, place.isConst) } as Expression;
  keepInMemory(place);
  return { op: "address", type: pointerTo(place.type, place.isConst), place };
}

/** The first element of an array as a pointer. */
export function decay(place: Place): Expression {
  if (place.type.kind !== "array") return addressOf(place);
  keepInMemory(place);
  return { op: "address", type: pointerTo(place.type.of, place.isConst), place };
}

/** A text constant as the array that it is. */
export function literalPlace(c: Checker, bytes: string): Place {
  const type: Type = { kind: "array", of: types.char, length: bytes.length + 1 };
  return { at: "literal", type, isConst: true, literal: literalNumber(c, bytes) };
}

/** Reads: a place gives its content, an array its address, a function a pointer to it. */
export function rvalue(c: Checker, checked: Checked): Expression {
  switch (checked.is) {
    case "value":
      return checked.value;
    case "place": {
      const { place } = checked;
      // What was just assigned need not be read again.
      if (place.at === "after" && isScalar(place.type) && "place" in place.effect && place.effect.place === place.place)
        return place.effect;
      if (place.type.kind === "array") return decay(place);
      if (place.type.kind === "record") return { op: "record", type: place.type, place };
      if (place.at === "variable" && place.variable.constant !== null) return number(place.variable.constant, place.type);
      return { op: "load", type: place.type, place };
    }
    case "functions": {
      const only = checked.list.length === 1 ? checked.list[0] : undefined;
      if (!only || checked.self !== null) return number(0, types.unknown);
      c.addressed.add(only);
      return { op: "function", type: pointerTo(functionType(only)), index: only.index };
    }
    default:
      return number(0, types.unknown);
  }
}
