// Calls: choosing among overloads, handing over values, making values of a type.
//
// Does not know: function bodies, statements.

import type { LibraryFunction } from "../library/define.ts";
import { libraryForms } from "../library/signatures.ts";
import type { Expression as ExpressionSyntax } from "../read/syntax.ts";
import type { At } from "../read/token.ts";
import { promoted } from "./arithmetic.ts";
import { check } from "./checkExpression.ts";
import { addressOf, asValue, broken, type Checked, cellPlace, pointerTo, rvalue, typeOf } from "./checked.ts";
import { type Checker, newTemporary, report } from "./checker.ts";
import { checkInto } from "./checkInitialiser.ts";
import { checkMemory } from "./checkMemory.ts";
import { cast } from "./checkOperator.ts";
import { convert, isChars, rankOf, shownType, toText, tryConvert } from "./convert.ts";
import { convertNumber, number } from "./fold.ts";
import { resolveBase } from "./resolveType.ts";
import type { CallExpression, Expression, FunctionInfo, Place, Statement } from "./tree.ts";
import { bytesOf, heldType, sameType, type Type, typeName, types } from "./types.ts";

type Syntax<K extends ExpressionSyntax["kind"]> = ExpressionSyntax & { kind: K };

export function checkCall(c: Checker, e: Syntax<"call">): Checked {
  if (e.called.kind === "name" && e.called.name === "F" && e.values.length === 1) return checkFlash(c, e.values[0]!);
  const called = check(c, e.called);
  const values = e.values.map((v) => check(c, v));
  if (called.is === "library" && called.on === null) {
    const memory = checkMemory(c, e.at, called.name, values);
    if (memory !== null) return memory;
  }
  if (called.is === "library") return callLibrary(c, e, called, values);
  if (called.is === "functions") return callFunction(c, e, called, values);
  const value = called.is === "list" ? null : rvalue(c, called);
  if (value?.type.kind === "pointer" && value.type.to.kind === "function") return callPointer(c, e, value, value.type.to, values);
  if (value === null || value.type.kind !== "unknown")
    report(c, e.at, {
      code: "program.notCallable",
      name: called.is === "place" ? called.name : "",
      found: typeName(typeOf(called)),
    });
  return broken;
}

function checkFlash(c: Checker, e: ExpressionSyntax): Checked {
  if (e.kind === "text") return asValue({ op: "text", type: types.flash, bytes: e.bytes });
  report(c, e.at, { code: "program.cannotConvert", from: shownType(c, check(c, e)), to: '"…"' });
  return broken;
}

/** The types of the values as GCC lists them. */
function shownTypes(c: Checker, values: readonly Checked[]): string {
  return `(${values.map((v) => shownType(c, v)).join(", ")})`;
}

interface Candidate<T> {
  readonly form: T;
  readonly parameters: readonly { readonly type: Type; readonly isReference: boolean; readonly isConst: boolean }[];
  readonly least: number;
  readonly isVariadic: boolean;
}

function rankForParameter(c: Checker, given: Checked, p: Candidate<unknown>["parameters"][number]): number | null {
  if (given.is === "list") return p.type.kind === "record" || p.type.kind === "array" ? 1 : null;
  if (p.isReference && !p.isConst) {
    const type = typeOf(given);
    if (type.kind === "unknown") return 0;
    if (given.is !== "place" || given.place.isConst || given.place.at === "letter") return null;
    return sameType(type, p.type) ? 0 : null;
  }
  if (p.isReference && given.is === "place" && sameType(given.place.type, p.type)) return 0;
  const value = rvalue(c, given);
  return rankOf(value.type, p.type, value);
}

/**
 * The best of several forms for the given values, or a report why none is. A form is better if none of its values fits worse
 * and one fits better (C++11, section 13.3.3).
 */
export function chooseForm<T>(
  c: Checker,
  at: At,
  name: string,
  candidates: readonly Candidate<T>[],
  values: readonly Checked[],
): T | null {
  const found = values.length;
  const fitting = candidates.filter((k) => found >= k.least && (k.isVariadic || found <= k.parameters.length));
  if (fitting.length === 0) {
    const least = Math.min(...candidates.map((k) => k.least));
    const most = Math.max(...candidates.map((k) => k.parameters.length));
    const expected = candidates.some((k) => k.isVariadic) ? `≥ ${least}` : least === most ? String(least) : `${least}–${most}`;
    report(c, at, { code: "program.argumentCount", name, expected, found });
    return null;
  }
  const ranked = fitting.flatMap((k) => {
    const ranks = values.map((v, i) => (i < k.parameters.length ? rankForParameter(c, v, k.parameters[i]!) : 0));
    return ranks.every((r) => r !== null) ? [{ form: k.form, ranks: ranks as number[] }] : [];
  });
  const best = ranked.filter((a) => ranked.every((b) => b === a || isBetter(a.ranks, b.ranks)));
  if (best.length === 1) return best[0]!.form;
  const unknown = values.some((v) => typeOf(v).kind === "unknown" && v.is === "value");
  if (unknown) return null;
  if (ranked.length > 0) report(c, at, { code: "program.ambiguous", name, found: shownTypes(c, values) });
  else if (fitting.length === 1) reportMisfit(c, at, name, fitting[0]!, values);
  else report(c, at, { code: "program.noMatch", name, found: shownTypes(c, values) });
  return null;
}

function isBetter(a: readonly number[], b: readonly number[]): boolean {
  return a.every((r, i) => r <= b[i]!) && a.some((r, i) => r < b[i]!);
}

/** With one form only, the value that does not fit is named. */
function reportMisfit(c: Checker, at: At, name: string, k: Candidate<unknown>, values: readonly Checked[]): void {
  const i = values.findIndex((v, n) => n < k.parameters.length && rankForParameter(c, v, k.parameters[n]!) === null);
  const value = values[i];
  const parameter = k.parameters[i];
  if (value === undefined || parameter === undefined)
    report(c, at, { code: "program.noMatch", name, found: shownTypes(c, values) });
  else
    report(c, at, {
      code: "program.cannotConvert",
      from: shownType(c, value),
      to: `${typeName(parameter.type)}${parameter.isReference ? "&" : ""}`,
    });
}

export function candidateOf(form: FunctionInfo): Candidate<FunctionInfo> {
  const parameters = form.parameters.map((p) => ({ type: p.type, isReference: p.isReference, isConst: p.isConst }));
  const least = form.usual.findIndex((u) => u !== null);
  return { form, parameters, least: least < 0 ? parameters.length : least, isVariadic: false };
}

function callFunction(c: Checker, e: Syntax<"call">, called: Checked & { is: "functions" }, values: readonly Checked[]): Checked {
  const form = chooseForm(c, e.at, called.name, called.list.map(candidateOf), values);
  if (form === null) return broken;
  if (called.self?.isConst && !form.isConst) {
    report(c, e.at, { code: "program.assignToConst", name: called.name });
    return broken;
  }
  return callOf(c, e.at, form, called.self, values);
}

/** The call itself. Records that are given back get a hidden variable. */
export function callOf(c: Checker, at: At, form: FunctionInfo, self: Place | null, values: readonly Checked[]): Checked {
  c.current?.calls.add(form.index);
  if (form.body === null && !c.calledWithoutBody.has(form)) c.calledWithoutBody.set(form, at);
  const handed = form.parameters.map((p, i) => {
    const given = values[i];
    if (given === undefined) return form.usual[i] ?? number(0, p.type);
    return handOver(c, at, given, p.type, p.isReference, p.isConst);
  });
  const type = form.resultIsReference ? pointerTo(form.result) : form.result;
  const into = type.kind === "record" ? newTemporary(c, type, at.line) : null;
  const call: CallExpression = { op: "call", type, called: form.index, self, values: handed, into, line: at.line };
  if (form.resultIsReference)
    return {
      is: "place",
      place: { at: "pointer", type: form.result, isConst: false, pointer: call, line: at.line },
      name: form.name,
    };
  if (into !== null) return { is: "place", place: { at: "call", type, isConst: false, call }, name: form.name };
  return asValue(call);
}

/** A value for a parameter: a copy, or for references the address of the thing or of a copy that lives long enough. */
export function handOver(c: Checker, at: At, given: Checked, type: Type, isReference: boolean, isConst: boolean): Expression {
  if (!isReference) {
    if (given.is === "list") return listValue(c, at, given, type);
    return convert(c, at, given, type);
  }
  if (
    given.is === "place" &&
    sameType(given.place.type, type) &&
    given.place.at !== "letter" &&
    (isConst || !given.place.isConst)
  ) {
    return given.place.at === "variable" && given.place.variable.constant !== null
      ? copied(c, at, given, type)
      : addressOf(given.place);
  }
  return copied(c, at, given, type);
}

function copied(c: Checker, at: At, given: Checked, type: Type): Expression {
  const value = given.is === "list" ? listValue(c, at, given, type) : convert(c, at, given, type);
  if (value.op === "record") return addressOf(value.place);
  const variable = newTemporary(c, type, at.line);
  return addressOf({ at: "temporary", type, isConst: false, variable, value });
}

/** `f({1, 2})`: a record made for the call. */
export function listValue(c: Checker, at: At, given: Checked & { is: "list" }, type: Type): Expression {
  if (type.kind !== "record") return convert(c, at, given, type);
  const variable = newTemporary(c, type, at.line);
  const first = checkInto(c, at, cellPlace(variable), type, { kind: "value", value: { kind: "list", at, values: given.values } });
  return { op: "record", type, place: { at: "built", type, isConst: false, variable, first } };
}

function callPointer(
  c: Checker,
  e: Syntax<"call">,
  pointer: Expression,
  type: Type & { kind: "function" },
  values: readonly Checked[],
): Checked {
  if (values.length !== type.parameters.length) {
    report(c, e.at, { code: "program.argumentCount", name: "", expected: String(type.parameters.length), found: values.length });
    return broken;
  }
  const handed = values.map((v, i) => convert(c, e.at, v, type.parameters[i]!));
  const into = type.result.kind === "record" ? newTemporary(c, type.result, e.at.line) : null;
  const call: CallExpression = {
    op: "call",
    type: type.result,
    called: pointer,
    self: null,
    values: handed,
    into,
    line: e.at.line,
  };
  return into === null
    ? asValue(call)
    : { is: "place", place: { at: "call", type: type.result, isConst: false, call }, name: "" };
}

function callLibrary(c: Checker, e: Syntax<"call">, called: Checked & { is: "library" }, values: readonly Checked[]): Checked {
  const forms = libraryForms(called.name)!;
  const candidates = forms.map((form) => ({
    form,
    parameters: form.parameters.map((type) => ({ type, isReference: false, isConst: false })),
    least: form.parameters.length - form.usual.length,
    isVariadic: form.isVariadic,
  }));
  const shown = called.name.slice(called.name.indexOf(".") + 1);
  const form = chooseForm(c, e.at, shown, candidates, values);
  if (form === null) return broken;
  const handed = form.parameters.map((type, i) => {
    const given = values[i];
    return given === undefined ? usualValue(form, i, type) : convert(c, e.at, given, type);
  });
  for (const given of values.slice(form.parameters.length)) handed.push(...variadic(c, given));
  const name = `${called.name}/${forms.indexOf(form)}`;
  const { line } = e.at;
  if (form.changesText) {
    const place = called.on?.is === "place" ? called.on.place : textPlace(c, e.at, called.on);
    if (place.isConst) report(c, e.at, { code: "program.assignToConst", name: called.on?.is === "place" ? called.on.name : "" });
    return asValue({ op: "changeText", type: form.result, place, name, values: handed, line });
  }
  const isOnThing = called.on !== null && typeOf(called.on).kind !== "serial";
  const on = isOnThing ? [rvalue(c, called.on!)] : [];
  return asValue({ op: "library", type: form.result, name, values: [...on, ...handed], line });
}

function usualValue(form: LibraryFunction, i: number, type: Type): Expression {
  const value = form.usual[i - (form.parameters.length - form.usual.length)] ?? 0;
  return type.kind === "pointer" ? { op: "null", type } : number(value, type);
}

function textPlace(c: Checker, at: At, on: Checked | null): Place {
  const value = on === null ? number(0, types.unknown) : rvalue(c, on);
  return { at: "temporary", type: types.text, isConst: false, variable: newTemporary(c, types.text, at.line), value };
}

/** A value behind the fixed ones of sprintf: its bytes on the chip, and the value with the usual promotions. */
function variadic(c: Checker, given: Checked): Expression[] {
  const value = rvalue(c, given);
  const held = heldType(value.type);
  const promotedValue =
    held.kind === "integer"
      ? convertNumber(value, promoted(held))
      : held.kind === "float"
        ? convertNumber(value, types.double)
        : value;
  if (value.type.kind === "text" || value.type.kind === "record")
    report(
      c,
      { line: c.current?.line ?? 1, column: 1 },
      { code: "program.cannotConvert", from: typeName(value.type), to: "..." },
    );
  return [number(bytesOf(promotedValue.type), types.int), promotedValue];
}

/** `Type(a, b)`: a cast with one value, a constructor with more. */
export function checkMake(c: Checker, e: Syntax<"make">): Checked {
  const type = resolveBase(c, e.type);
  const values = e.values.map((v) => check(c, v));
  if (type.kind === "record") return makeRecord(c, e, type);
  if (e.type.name === "unsigned int" && values.length === 2) {
    const [high, low] = values.map((v) => convert(c, e.at, v, types.byte));
    return asValue({ op: "library", type: types.unsigned, name: "word", values: [high!, low!], line: e.at.line });
  }
  if (type.kind === "text") return makeText(c, e.at, values);
  if (values.length === 0) return asValue(number(0, type));
  if (values.length > 1) {
    report(c, e.at, { code: "program.argumentCount", name: typeName(type), expected: "1", found: values.length });
    return broken;
  }
  return cast(c, e.at, values[0]!, type);
}

function makeRecord(c: Checker, e: Syntax<"make">, type: Type & { kind: "record" }): Checked {
  const variable = newTemporary(c, type, e.at.line);
  const first: readonly Statement[] = checkInto(c, e.at, cellPlace(variable), type, {
    kind: "arguments",
    at: e.at,
    values: e.values,
  });
  return { is: "place", place: { at: "built", type, isConst: false, variable, first }, name: type.of.name };
}

/** String(value), String(number, base), String(float, decimals). */
function makeText(c: Checker, at: At, values: readonly Checked[]): Checked {
  if (values.length === 0) return asValue({ op: "text", type: types.text, bytes: "" });
  const value = rvalue(c, values[0]!);
  if (value.type.kind === "unknown") return broken;
  if (values.length === 2) {
    const held = heldType(value.type);
    const second = tryConvert(rvalue(c, values[1]!), types.byte);
    if (held.kind === "float" && second)
      return asValue({
        op: "library",
        type: types.text,
        name: "text.ofFloat",
        values: [convertNumber(value, types.double), second],
        line: at.line,
      });
    if (held.kind === "integer" && second) {
      // A byte or a negative int in another base than 10 is written as its bits.
      const isUnsigned = ["unsigned long", "unsigned int", "unsigned char", "unsigned short"].includes(held.name);
      const wide = held.name === "unsigned long" ? types.unsignedLong : types.long;
      const name = isUnsigned ? "text.ofUnsigned" : held.name === "long" ? "text.ofLong" : "text.ofInt";
      return asValue({ op: "library", type: types.text, name, values: [convertNumber(value, wide), second], line: at.line });
    }
  }
  const text =
    values.length === 1 && (value.type.kind === "text" || isChars(value.type) || value.type.kind !== "pointer")
      ? toText(value)
      : null;
  if (text !== null) return asValue(text);
  report(c, at, { code: "program.noMatch", name: "String", found: shownTypes(c, values) });
  return broken;
}
