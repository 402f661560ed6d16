// Statements: blocks with their scopes, loops, switch, return, and declarations of local variables.
//
// Does not know: functions' headers.
import type { BlockSyntax, Condition, Expression as ExpressionSyntax, Statement as StatementSyntax } from "../read/syntax.ts";
import type { At } from "../read/token.ts";
import { hold } from "./arithmetic.ts";
import { handOver } from "./checkCall.ts";
import { check, evaluate } from "./checkExpression.ts";
import { type Checked, cellPlace, rvalue, variablePlace } from "./checked.ts";
import { type Checker, inBlock, inScope, newTemporary, report, warn } from "./checker.ts";
import { declareRecord } from "./checkRecord.ts";
import { checkVariables, declareVariable } from "./checkVariables.ts";
import { condition, convert, shownType } from "./convert.ts";
import { constantOf, number } from "./fold.ts";
import { declareAlias, declareEnum } from "./resolveType.ts";
import type { Expression, Place, Statement } from "./tree.ts";
import { heldType, type IntegerType, sameType, type Type, typeName, types } from "./types.ts";

/** The statements of a block, in the scope that is open: a function's parameters share it with its body. */
export function checkBlockInside(c: Checker, block: BlockSyntax): Statement[] {
  return block.list.flatMap((s) => checkStatement(c, s));
}

function checkBlock(c: Checker, block: BlockSyntax): Statement {
  return { do: "block", list: inBlock(c, block.end.line, () => checkBlockInside(c, block)) };
}

/** The last line on which the statement has something to run. */
function lastLine(s: StatementSyntax): number {
  switch (s.kind) {
    case "block":
      return s.end.line;
    case "if":
      return lastLine(s.no ?? s.yes);
    case "while":
    case "for":
    case "forEach":
    case "switch":
      return lastLine(s.body);
    default:
      return s.at.line;
  }
}

/** One statement as one, in a scope of its own. */
function single(c: Checker, s: StatementSyntax): Statement {
  const list = inScope(c, () => checkStatement(c, s));
  return list.length === 1 ? list[0]! : { do: "block", list };
}

function inLoop<T>(c: Checker, work: () => T): T {
  c.loopDepth += 1;
  const result = work();
  c.loopDepth -= 1;
  return result;
}

export function checkStatement(c: Checker, s: StatementSyntax): Statement[] {
  const { line } = s.at;
  switch (s.kind) {
    case "block":
      return [checkBlock(c, s)];
    case "empty":
      return [];
    case "expression":
      return [checkExpressionStatement(c, s.value)];
    case "variables":
      return checkVariables(c, s);
    case "record":
      declareRecord(c, s);
      return [];
    case "enum":
      declareEnum(c, s, evaluate);
      return [];
    case "alias":
      declareAlias(c, s, evaluate);
      return [];
    case "function":
      // With a body the parser has reported it; without, it is a prototype.
      return [];
    case "if":
      return inBlock(c, lastLine(s), () => {
        const [before, test] = checkTest(c, s.test);
        const yes = single(c, s.yes);
        const no = s.no === null ? null : single(c, s.no);
        return [...before, { do: "if", test, yes, no, line }];
      });
    case "while":
      return inBlock(c, lastLine(s), () => {
        const [before, test] = checkTest(c, s.test);
        if (before.length > 0) return whileDeclared(c, before, test, s.body, line);
        return [{ do: "while", test, body: inLoop(c, () => single(c, s.body)), line }];
      });
    case "do": {
      const body = inLoop(c, () => single(c, s.body));
      return [{ do: "doWhile", test: checkTest(c, s.test)[1], body, line: s.test.at.line }];
    }
    case "for":
      return inBlock(c, lastLine(s), () => {
        const first = s.first === null ? [] : checkStatement(c, s.first);
        const test = s.test === null ? null : checkTest(c, s.test)[1];
        const step = s.step === null ? null : effect(c, s.step);
        const body = inLoop(c, () => single(c, s.body));
        const before: Statement | null =
          first.length === 0 ? null : first.length === 1 ? first[0]! : { do: "block", list: first };
        return [{ do: "for", first: before, test, step, body, line }];
      });
    case "forEach":
      return checkForEach(c, s);
    case "switch":
      return checkSwitch(c, s);
    case "case":
    case "default":
      report(c, s.at, { code: "program.outside", found: s.kind, of: "switch" });
      return [];
    case "break":
      if (c.loopDepth === 0 && c.switchDepth === 0) report(c, s.at, { code: "program.outside", found: "break", of: "loop" });
      return [{ do: "break" }];
    case "continue":
      if (c.loopDepth === 0) report(c, s.at, { code: "program.outside", found: "continue", of: "loop" });
      return [{ do: "continue" }];
    case "return":
      return [checkReturn(c, s.at, s.value)];
  }
}

/** A condition, with the statements of a variable declared in it. A lone = is nearly always meant as ==. */
function checkTest(c: Checker, test: Condition): [Statement[], Expression] {
  if (test.kind === "variables") {
    const before = checkVariables(c, test);
    const name = test.variables[0]?.declarator.name ?? "";
    const found = c.scope.names.get(name);
    if (found?.is !== "variable") return [before, number(0, types.bool)];
    return [before, condition(c, test.at, { is: "place", place: variablePlace(found.variable), name })];
  }
  if (test.kind === "assign" && test.operator === "" && !test.bracketed)
    warn(c, test.at, { code: "program.assignmentAsTest", name: test.left.kind === "name" ? test.left.name : "" });
  return [[], condition(c, test.at, check(c, test))];
}

/** `while (int x = f())` declares anew in each round. */
function whileDeclared(c: Checker, before: Statement[], test: Expression, body: StatementSyntax, line: number): Statement[] {
  const inner = inLoop(c, () => single(c, body));
  const round: Statement = { do: "block", list: [...before, { do: "if", test, yes: inner, no: { do: "break" }, line }] };
  return [{ do: "while", test: number(1, types.bool), body: round, line }];
}

function effect(c: Checker, e: ExpressionSyntax): Expression {
  return effectOf(c, check(c, e));
}

/** The value, where nobody uses it: of a record that is assigned the place is then found once. */
function effectOf(c: Checker, checked: Checked): Expression {
  if (checked.is === "list") return number(0, types.unknown);
  if (checked.is === "place" && checked.place.at === "after" && checked.place.type.kind === "record") return checked.place.effect;
  return rvalue(c, checked);
}

const withoutEffect = new Set([
  "compare",
  "comparePointers",
  "arithmetic",
  "shift",
  "load",
  "number",
  "and",
  "or",
  "not",
  "negate",
  "complement",
  "function",
]);

function checkExpressionStatement(c: Checker, e: ExpressionSyntax): Statement {
  const checked = check(c, e);
  const value = effectOf(c, checked);
  // Only what stands there as such: x == 5; or a function without its brackets.
  const isPlain = ["binary", "name", "number", "unary"].includes(e.kind);
  const isIdle = value.type.kind !== "unknown" && withoutEffect.has(value.op) && !hasEffect(value);
  if (isPlain && (isIdle || checked.is === "library")) warn(c, e.at, { code: "program.noEffect" });
  return { do: "expression", value, line: e.at.line };
}

/** Whether something is changed or called inside: `x++ == 3;`, `a && f();`. */
function hasEffect(e: Expression): boolean {
  if (["assign", "compound", "step", "advance", "call", "library", "changeText"].includes(e.op)) return true;
  const parts = e as unknown as Record<string, unknown>;
  return ["left", "right", "value"].some((side) => typeof parts[side] === "object" && hasEffect(parts[side] as Expression));
}

function checkReturn(c: Checker, at: At, syntax: ExpressionSyntax | null): Statement {
  const { line } = at;
  const f = c.current;
  if (f === null) return { do: "return", value: null, line };
  if (syntax === null) {
    if (f.result.kind !== "void" && f.result.kind !== "unknown")
      report(c, at, { code: "program.returnsSomething", name: f.name, expected: typeName(f.result) });
    return { do: "return", value: null, line };
  }
  const given = check(c, syntax);
  if (f.result.kind === "void") {
    const value = given.is === "list" ? null : rvalue(c, given);
    if (value === null || (value.type.kind !== "void" && value.type.kind !== "unknown"))
      report(c, at, { code: "program.returnsNothing", name: f.name });
    // return f(); of a void function is allowed.
    return value === null ? { do: "return", value: null, line } : { do: "return", value, line };
  }
  return { do: "return", value: handOver(c, syntax.at, given, f.result, f.resultIsReference, false), line };
}

function checkForEach(c: Checker, s: StatementSyntax & { kind: "forEach" }): Statement[] {
  const of = check(c, s.of);
  const array = of.is === "place" && of.place.type.kind === "array" ? of.place : null;
  if (array === null || array.type.kind !== "array") {
    if (rvalue(c, of).type.kind !== "unknown") report(c, s.of.at, { code: "program.notArray", found: shownType(c, of) });
    return [];
  }
  const { type } = array;
  const { line } = s.at;
  return inBlock(c, lastLine(s), () => {
    const counter = newTemporary(c, types.int, line);
    const counterPlace = cellPlace(counter);
    const load: Expression = { op: "load", type: types.int, place: counterPlace };
    const element: Place = { at: "index", type: type.of, isConst: array.isConst, array, index: load, length: type.length, line };
    const { variable, initialise } = declareVariable(c, s.variable, s.variable.variables[0]!, type.of, array.isConst);
    const given = { is: "place", place: element, name: "" } as const;
    const first: Statement[] = variable.isReference
      ? [
          {
            do: "expression",
            value: {
              op: "assign",
              type: cellPlace(variable).type,
              place: cellPlace(variable),
              value: handOver(c, s.of.at, given, variable.type, true, variable.isConst),
            },
            line,
          },
        ]
      : initialise((place) => [
          {
            do: "expression",
            value: { op: "assign", type: variable.type, place, value: handOver(c, s.of.at, given, variable.type, false, false) },
            line,
          },
        ]);
    const body = inLoop(c, () => single(c, s.body));
    const begin: Statement = {
      do: "expression",
      value: { op: "assign", type: types.int, place: counterPlace, value: number(0, types.int) },
      line,
    };
    const test: Expression = {
      op: "compare",
      type: types.bool,
      operator: "<",
      left: load,
      right: number(type.length, types.int),
      inType: types.int,
    };
    const step: Expression = { op: "step", type: types.int, place: counterPlace, by: 1, after: false, stride: 1 };
    return [{ do: "for", first: begin, test, step, body: { do: "block", list: [...first, body] }, line }];
  });
}

/** Values of one range of cases. */
const mostInRange = 1000;

/** The held value of a case, or null with a report. @param scoped the enum class that all cases must belong to. */
function caseValue(c: Checker, syntax: ExpressionSyntax, type: IntegerType, scoped: Type | null): number | null {
  const label = evaluate(c, syntax);
  const constant = constantOf(label);
  const fits = scoped !== null ? sameType(label.type, scoped) : heldType(label.type).kind === "integer";
  if (label.type.kind === "unknown") return null;
  if (constant !== null && fits) return hold(constant, type);
  report(c, syntax.at, { code: "program.notConstant", what: "case" });
  return null;
}

function checkSwitch(c: Checker, s: StatementSyntax & { kind: "switch" }): Statement[] {
  const given = check(c, s.value);
  const value = rvalue(c, given);
  const held = heldType(value.type);
  const isScoped = value.type.kind === "enum" && value.type.of.isScoped;
  let type: IntegerType = types.int;
  if (held.kind === "integer")
    type = held.name === "long" || held.name === "unsigned long" || held.name === "unsigned int" ? held : types.int;
  else if (value.type.kind !== "unknown")
    report(c, s.value.at, { code: "program.cannotConvert", from: shownType(c, given), to: "int" });
  const cases = new Map<number, number>();
  const lines = new Map<number, number>();
  const list: Statement[] = [];
  let otherwise = -1;
  c.switchDepth += 1;
  inScope(c, () => {
    const body = s.body.kind === "block" ? s.body.list : [s.body];
    for (const inner of body) {
      if (inner.kind === "default") otherwise = list.length;
      else if (inner.kind === "case") {
        const from = caseValue(c, inner.value, type, isScoped ? value.type : null);
        const to = inner.to === null ? from : caseValue(c, inner.to, type, isScoped ? value.type : null);
        if (from === null || to === null) continue;
        if (to - from > mostInRange) report(c, inner.at, { code: "program.notSupported", feature: "case ..." });
        for (let key = from; key <= Math.min(to, from + mostInRange); key += 1) {
          const firstLine = lines.get(key);
          if (firstLine !== undefined) report(c, inner.at, { code: "program.duplicateCase", value: key, firstLine });
          else {
            cases.set(key, list.length);
            lines.set(key, inner.at.line);
          }
        }
      } else list.push(...checkStatement(c, inner));
    }
  });
  c.switchDepth -= 1;
  const converted =
    held.kind === "integer"
      ? convert(c, s.value.at, { is: "value", value: isScoped ? ({ ...value, type: held } as Expression) : value }, type)
      : number(0, types.int);
  return [{ do: "switch", value: converted, cases, otherwise: otherwise < 0 ? list.length : otherwise, list, line: s.at.line }];
}
