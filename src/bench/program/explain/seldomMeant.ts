// Silent mistakes: what the compiler takes without a word and what a beginner seldom means.
//
// Each rule looks for one slip and stays quiet where it is not sure: a pin that is computed, a name with two types. Usual slips of
// beginners with the board (common practice, no source); what the compiler lets pass in silence was tried with avr-g++ 5.4.
// Does not know: what runs.
import type { ProgramProblem, SeldomMeant } from "../problems.ts";
import type { FileSyntax } from "../read/parseFile.ts";
import type { Expression, FunctionSyntax, Statement, VariablesSyntax } from "../read/syntax.ts";
import type { At } from "../read/token.ts";
import { everyExpression, everyStatement, partsOf } from "./everyNode.ts";

type Bare<P> = P extends unknown ? Omit<P, "place" | "severity"> : never;
type Report = (at: At, problem: Bare<SeldomMeant>) => void;

interface Known {
  readonly globals: ReadonlyMap<string, VariablesSyntax>;
  /** The type of a name, where it has only one in the whole file; arrays and pointers as "char[]". */
  readonly types: ReadonlyMap<string, string>;
  /** Values of names that are const. */
  readonly values: ReadonlyMap<string, number>;
}

export function seldomMeant(file: string, text: string, syntax: FileSyntax): ProgramProblem[] {
  const problems: ProgramProblem[] = [];
  const report: Report = (at, problem) =>
    problems.push({ ...problem, severity: "warning", place: { file, line: at.line, column: at.column } } as ProgramProblem);
  const functions = syntax.items.filter((item): item is FunctionSyntax => item.kind === "function" && item.body !== null);
  const known = whatIsKnown(syntax, functions);
  const rows = text.split(/\r\n|\r|\n/);
  for (const f of functions) {
    everyStatement(f.body!, (s) => {
      if (s.kind === "switch") fallingCases(s.body, rows, report);
      if (s.kind === "variables") {
        hiddenNames(s, known, report);
        firstValues(s, known, report);
      }
      if (s.kind === "for") countsInVain(s, known, report);
      if (s.kind === "block") usedUnset(s, functions, report);
    });
    everyExpression(f.body!, (e) => {
      comparisons(e, known, report);
      timeInInt(e, known, report);
    });
  }
  for (const s of known.globals.values()) firstValues(s, known, report);
  missingModes(functions, known, report);
  missingBegin(syntax, functions, report);
  return problems;
}

function whatIsKnown(syntax: FileSyntax, functions: readonly FunctionSyntax[]): Known {
  const globals = new Map<string, VariablesSyntax>();
  const types = new Map<string, string>();
  const twice = new Set<string>();
  const values = new Map<string, number>();
  const learn = (name: string, type: string) => {
    if (types.has(name) && types.get(name) !== type) twice.add(name);
    types.set(name, type);
  };
  const variables = (s: VariablesSyntax, isGlobal: boolean) => {
    for (const v of s.variables) {
      const { name, sizes, pointers } = v.declarator;
      learn(name, s.type.name + (sizes.length > 0 || pointers.length > 0 ? "[]" : ""));
      if (isGlobal) globals.set(name, s);
      const first = v.initialiser?.kind === "value" ? numberOf(v.initialiser.value, values) : null;
      if (s.type.isConst && first !== null && sizes.length === 0) values.set(name, first);
    }
  };
  for (const item of syntax.items) if (item.kind === "variables") variables(item, true);
  for (const f of functions) {
    for (const p of f.parameters)
      learn(p.declarator.name, p.type.name + (p.declarator.sizes.length > 0 || p.declarator.pointers.length > 0 ? "[]" : ""));
    everyStatement(f.body!, (s) => {
      if (s.kind === "variables") variables(s, false);
      if (s.kind === "for" && s.first?.kind === "variables") variables(s.first, false);
    });
  }
  for (const name of twice) {
    types.delete(name);
    values.delete(name);
  }
  for (let pin = 0; pin <= 5; pin += 1) values.set(`A${pin}`, 14 + pin);
  return { globals, types, values };
}

function numberOf(e: Expression, values: ReadonlyMap<string, number>): number | null {
  if (e.kind === "number") {
    const value = /^0[bB]/.test(e.text) ? Number.parseInt(e.text.slice(2), 2) : Number(e.text.replace(/[uUlLfF]+$/, ""));
    return Number.isFinite(value) ? value : null;
  }
  if (e.kind === "name") return values.get(e.name) ?? null;
  if (e.kind === "unary" && e.operator === "-") {
    const value = numberOf(e.value, values);
    return value === null ? null : -value;
  }
  return null;
}

/** A case that runs on into the next one. A comment with "fall" says that it is meant. */
function fallingCases(body: Statement, rows: readonly string[], report: Report): void {
  if (body.kind !== "block") return;
  let label: At | null = null;
  let last: Statement | null = null;
  for (const s of body.list) {
    if (s.kind !== "case" && s.kind !== "default") {
      last = s;
      continue;
    }
    const said = rows.slice((last?.at.line ?? s.at.line) - 1, s.at.line).some((row) => /\/[/*].*fall/i.test(row));
    if (label !== null && last !== null && !leaves(last) && !said)
      report(s.at, { code: "program.fallsThrough", firstLine: label.line });
    label = s.at;
    last = null;
  }
}

/** Whether nothing runs on behind the statement. */
function leaves(s: Statement): boolean {
  if (s.kind === "break" || s.kind === "return" || s.kind === "continue") return true;
  if (s.kind === "block") return s.list.length > 0 && leaves(s.list.at(-1)!);
  if (s.kind === "if") return s.no !== null && leaves(s.yes) && leaves(s.no);
  return s.kind === "while" && s.test.kind === "name" && s.test.name === "true";
}

/** `for (long i = 0; i < 100000; i++);` to wait: the compiler sees that nothing comes of it and leaves it out. */
function countsInVain(s: Statement & { kind: "for" }, known: Known, report: Report): void {
  const isEmpty = s.body.kind === "empty" || (s.body.kind === "block" && s.body.list.every((k) => k.kind === "empty"));
  if (!isEmpty || s.step === null || s.test?.kind !== "binary") return;
  const counter = s.step.kind === "step" ? s.step.value : s.step.kind === "assign" ? s.step.left : null;
  if (counter?.kind !== "name") return;
  const declared = s.first?.kind === "variables" ? s.first : known.globals.get(counter.name);
  const isCalling = [s.test.left, s.test.right].some((side) => side.kind === "call");
  if (!isCalling && declared?.type.isVolatile !== true) report(s.at, { code: "program.countsInVain", name: counter.name });
}

/** What a name is first used for behind its declaration. */
type Use = "read" | "set" | "unsure";

/** `int sum; for (…) sum += x;`: what was there before is added to. Where the first use is behind a condition, nothing is said. */
function usedUnset(block: Statement & { kind: "block" }, functions: readonly FunctionSyntax[], report: Report): void {
  const taking = new Set(
    functions.filter((f) => f.parameters.some((p) => p.declarator.isReference)).map((f) => f.declarator.name),
  );
  block.list.forEach((s, i) => {
    if (s.kind !== "variables" || s.isStatic || s.isExtern || s.defines !== null || !s.type.builtIn) return;
    if (["String", "void", "auto", "__FlashStringHelper"].includes(s.type.name)) return;
    for (const v of s.variables) {
      const { name, sizes, isReference } = v.declarator;
      if (v.initialiser !== null || sizes.length > 0 || isReference) continue;
      for (const later of block.list.slice(i + 1)) {
        const found = firstUse(later, name, taking);
        if (found === null) continue;
        if (found.use === "read") report(found.at, { code: "program.usedUnset", name });
        break;
      }
    }
  });
}

type Found = { readonly use: Use; readonly at: At } | null;

/** The first use in a statement, as far as it certainly runs; what hangs on a condition and names it is "unsure". */
function firstUse(s: Statement, name: string, taking: ReadonlySet<string>): Found {
  const first = (list: readonly (Found | (() => Found))[]): Found => {
    for (const one of list) {
      const found = typeof one === "function" ? one() : one;
      if (found !== null) return found;
    }
    return null;
  };
  const inside = (k: Statement | null) => () => (k === null ? null : firstUse(k, name, taking));
  const value = (e: Expression | null) => () => (e === null ? null : firstUseIn(e, name, taking));
  const test = (k: Expression | VariablesSyntax) => () =>
    k.kind === "variables" ? firstUse(k, name, taking) : firstUseIn(k, name, taking);
  /** Behind a condition it may never run. */
  const maybe = (k: Statement | null) => () => {
    const found = k === null ? null : firstUse(k, name, taking);
    return found === null ? null : { ...found, use: "unsure" as const };
  };
  switch (s.kind) {
    case "expression":
      return value(s.value)();
    case "return":
      return value(s.value)();
    case "variables":
      return first(
        s.variables.flatMap((v) =>
          v.initialiser?.kind === "value"
            ? [value(v.initialiser.value)]
            : v.initialiser?.kind === "arguments"
              ? v.initialiser.values.map(value)
              : [],
        ),
      );
    case "block":
      return first(s.list.map(inside));
    case "if":
      return first([test(s.test), maybe(s.yes), maybe(s.no)]);
    case "switch":
      return first([value(s.value), maybe(s.body)]);
    case "while":
      return first([test(s.test), inside(s.body)]);
    case "do":
      return first([inside(s.body), value(s.test)]);
    case "for":
      return first([inside(s.first), value(s.test), inside(s.body), value(s.step)]);
    case "forEach":
      return first([value(s.of), inside(s.body)]);
    default:
      return null;
  }
}

/** Functions with reference parameters, and methods of unknown things; what goes to Serial is read. */
function mayTake(called: Expression, taking: ReadonlySet<string>): boolean {
  if (called.kind === "name") return taking.has(called.name);
  return !(called.kind === "member" && called.record.kind === "name" && called.record.name === "Serial");
}

function firstUseIn(e: Expression, name: string, taking: ReadonlySet<string>): Found {
  const isIt = (k: Expression) => k.kind === "name" && k.name === name && k.owner === "";
  if (isIt(e)) return { use: "read", at: e.at };
  if (e.kind === "assign") {
    const right = firstUseIn(e.right, name, taking);
    if (right !== null) return right;
    if (isIt(e.left)) return { use: e.operator === "" ? "set" : "read", at: e.left.at };
    return firstUseIn(e.left, name, taking);
  }
  // Its address, or a function that may set it.
  if (e.kind === "unary" && e.operator === "&" && isIt(e.value)) return { use: "unsure", at: e.at };
  if (e.kind === "sizeof") return null;
  const isTaking = e.kind === "call" && mayTake(e.called, taking);
  const isEither = (e.kind === "binary" && ["&&", "||"].includes(e.operator)) || e.kind === "choose";
  const parts = partsOf(e);
  for (const [i, part] of parts.entries()) {
    const found = firstUseIn(part, name, taking);
    if (found !== null) return (isTaking && isIt(part)) || (isEither && i > 0) ? { ...found, use: "unsure" } : found;
  }
  return null;
}

/** `int led = 5;` inside a function makes a second led; the one outside keeps its value. */
function hiddenNames(s: VariablesSyntax, known: Known, report: Report): void {
  for (const v of s.variables) {
    const outer = known.globals.get(v.declarator.name);
    const first = outer?.variables.find((k) => k.declarator.name === v.declarator.name);
    if (outer && outer !== s && first && !outer.type.isConst)
      report(v.declarator.at, { code: "program.hidden", name: v.declarator.name, firstLine: first.declarator.at.line });
  }
}

function firstValues(s: VariablesSyntax, known: Known, report: Report): void {
  for (const v of s.variables) {
    if (v.initialiser?.kind !== "value" || v.declarator.sizes.length > 0 || v.declarator.pointers.length > 0) continue;
    const { value } = v.initialiser;
    timeKept(value, s.type.name, v.declarator.name, v.declarator.at, report);
    productInInt(value, s.type.name, v.declarator.name, known, report);
    if ((s.type.name === "float" || s.type.name === "double") && isWholeDivision(value, known))
      report(value.at, { code: "program.wholeDivision", found: written(value) });
  }
}

function isWholeDivision(e: Expression, known: Known): boolean {
  if (e.kind !== "binary" || e.operator !== "/") return false;
  const isWhole = (k: Expression) => k.kind === "number" && /^\d+$/.test(k.text);
  const [a, b] = [numberOf(e.left, known.values), numberOf(e.right, known.values)];
  return isWhole(e.left) && isWhole(e.right) && a !== null && b !== null && b !== 0 && a % b !== 0;
}

/** millis() and micros() count further than an int, which turns negative after 32,767. */
function timeKept(value: Expression, type: string, name: string, at: At, report: Report): void {
  const called = value.kind === "call" && value.called.kind === "name" ? value.called.name : "";
  if ((called === "millis" || called === "micros") && ["int", "short", "unsigned int", "unsigned char", "char"].includes(type))
    report(at, { code: "program.timeInInt", name, found: called });
}

/** `long ms = seconds * 1000;`: two ints give an int, whatever it is put into; by a hundred or more it soon overflows. */
function productInInt(value: Expression, type: string, name: string, known: Known, report: Report): void {
  if ((type !== "long" && type !== "unsigned long") || value.kind !== "binary" || value.operator !== "*") return;
  const isInt = (k: Expression) => k.kind === "name" && known.types.get(k.name) === "int";
  const factor = (k: Expression) => (k.kind === "number" && /^\d+$/.test(k.text) ? Number(k.text) : 0);
  const large = (k: Expression) => factor(k) >= 100 && factor(k) <= 32767;
  if ((isInt(value.left) && large(value.right)) || (large(value.left) && isInt(value.right)))
    report(value.at, { code: "program.productInInt", found: written(value), name });
}

function timeInInt(e: Expression, known: Known, report: Report): void {
  if (e.kind !== "assign" || e.operator !== "" || e.left.kind !== "name") return;
  const type = known.types.get(e.left.name);
  if (type) productInInt(e.right, type, e.left.name, known, report);
  if (type) timeKept(e.right, type, e.left.name, e.left.at, report);
}

const ranges: Readonly<Record<string, readonly [least: number, most: number]>> = {
  bool: [0, 1],
  char: [-128, 127],
  "signed char": [-128, 127],
  "unsigned char": [0, 255],
  int: [-32768, 32767],
  "unsigned int": [0, 65535],
  "unsigned long": [0, 4294967295],
};

/** What a value can be at all, or null. */
function rangeOf(e: Expression, known: Known): readonly [number, number] | null {
  if (e.kind === "name" && !known.values.has(e.name)) return ranges[known.types.get(e.name) ?? ""] ?? null;
  if (e.kind !== "call" || e.called.kind !== "name") return null;
  const results: Readonly<Record<string, readonly [number, number]>> = {
    analogRead: [0, 1023],
    digitalRead: [0, 1],
    millis: [0, 4294967295],
    micros: [0, 4294967295],
  };
  return results[e.called.name] ?? null;
}

function comparisons(e: Expression, known: Known, report: Report): void {
  if (e.kind !== "binary") return;
  const { operator } = e;
  if (operator === "||" || operator === "&&") {
    const side = [e.left, e.right].find((k) => k.kind === "character" || (k.kind === "number" && !["0", "1"].includes(k.text)));
    const other = side === e.left ? e.right : e.left;
    if (side && other.kind === "binary" && ["==", "!="].includes(other.operator))
      report(side.at, { code: "program.constantOperand", operator, found: written(side) });
    return;
  }
  if (!["<", ">", "<=", ">=", "==", "!="].includes(operator)) return;
  if (
    ["<", ">", "<=", ">="].includes(operator) &&
    e.left.kind === "binary" &&
    ["<", ">", "<=", ">="].includes(e.left.operator) &&
    !e.left.bracketed
  ) {
    report(e.at, { code: "program.chainedCompare", found: written(e) });
    return;
  }
  if (operator === "==" || operator === "!=") {
    const text = [e.left, e.right].find((k) => k.kind === "name" && known.types.get(k.name) === "char[]");
    const other = text === e.left ? e.right : e.left;
    if (text?.kind === "name" && (other.kind === "text" || (other.kind === "name" && known.types.get(other.name) === "char[]")))
      report(e.at, { code: "program.textCompared", name: text.name });
  }
  const right = numberOf(e.right, known.values);
  const left = numberOf(e.left, known.values);
  const turned: Readonly<Record<string, string>> = { "<": ">", ">": "<", "<=": ">=", ">=": "<=", "==": "==", "!=": "!=" };
  const [range, value, how] =
    right !== null
      ? [rangeOf(e.left, known), right, operator]
      : left !== null
        ? [rangeOf(e.right, known), left, turned[operator]!]
        : [null, 0, ""];
  const always = range && alwaysGives(range, how, value);
  if (always) report(e.at, { code: "program.alwaysSame", found: written(e), value: always });
}

/** What `x how value` gives for every x of the range, or null if that hangs on x. */
function alwaysGives([least, most]: readonly [number, number], how: string, value: number): "true" | "false" | null {
  const test: Readonly<Record<string, (x: number) => boolean>> = {
    "<": (x) => x < value,
    ">": (x) => x > value,
    "<=": (x) => x <= value,
    ">=": (x) => x >= value,
  };
  const ordered = test[how];
  if (ordered) return ordered(least) === ordered(most) ? (ordered(least) ? "true" : "false") : null;
  if (value >= least && value <= most) return null;
  return how === "==" ? "false" : "true";
}

/** digitalWrite to a pin that is never made an output only switches a weak resistor: the lamp glows faintly or not at all. */
function missingModes(functions: readonly FunctionSyntax[], known: Known, report: Report): void {
  const set = new Set<number>();
  const writes: { readonly at: At; readonly pin: number; readonly name: string }[] = [];
  let isComputed = false;
  for (const f of functions)
    everyExpression(f.body!, (e) => {
      if (e.kind !== "call" || e.called.kind !== "name") return;
      const pin = e.values[0] ? numberOf(e.values[0], known.values) : null;
      if (e.called.name === "pinMode") {
        if (pin === null) isComputed = true;
        else set.add(pin);
      }
      if (e.called.name === "digitalWrite" && pin !== null) writes.push({ at: e.at, pin, name: written(e.values[0]!) });
    });
  if (isComputed) return;
  const told = new Set<number>();
  for (const w of writes) {
    if (set.has(w.pin) || told.has(w.pin)) continue;
    told.add(w.pin);
    report(w.at, { code: "program.pinModeMissing", name: w.name });
  }
}

function missingBegin(syntax: FileSyntax, functions: readonly FunctionSyntax[], report: Report): void {
  if (!syntax.usesSerial) return;
  let first: At | null = null;
  let begun = false;
  for (const f of functions)
    everyExpression(f.body!, (e) => {
      if (e.kind !== "member" || e.record.kind !== "name" || e.record.name !== "Serial") return;
      if (e.name === "begin") begun = true;
      else first ??= e.record.at;
    });
  if (first !== null && !begun) report(first, { code: "program.serialNotBegun" });
}

/** An expression in a line, for showing. */
function written(e: Expression): string {
  switch (e.kind) {
    case "number":
      return e.text;
    case "character":
      return e.text;
    case "text":
      return `"${e.bytes}"`;
    case "name":
      return e.name;
    case "binary":
      return `${written(e.left)} ${e.operator} ${written(e.right)}`;
    case "unary":
      return `${e.operator}${written(e.value)}`;
    case "call":
      return `${written(e.called)}(${e.values.map(written).join(", ")})`;
    case "index":
      return `${written(e.array)}[${written(e.index)}]`;
    case "member":
      return `${written(e.record)}.${e.name}`;
    default:
      return partsOf(e).length === 0 ? "…" : partsOf(e).map(written).join(" ");
  }
}
