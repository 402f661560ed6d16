// Functions: their headers, which may be used before they stand, and their bodies.
//
// Does not know: expressions beyond default values, the order of a file.
import type { FunctionSyntax } from "../read/syntax.ts";
import type { At } from "../read/token.ts";
import { check, evaluate, fieldPlace } from "./checkExpression.ts";
import { variablePlace } from "./checked.ts";
import { type Checker, declare, inBlock, nearName, newScope, type RecordMembers, report, warn } from "./checker.ts";
import { checkInto, construct } from "./checkInitialiser.ts";
import { checkBlockInside } from "./checkStatement.ts";
import { convert } from "./convert.ts";
import { isConstVariable, parameterType, resolveType } from "./resolveType.ts";
import type { Expression, FunctionInfo, Statement, Variable } from "./tree.ts";
import { sameType, type Type, typeName, types } from "./types.ts";

/** Declares the headers of all functions of that name in the file, wherever they stand. */
export function declarePending(c: Checker, name: string): void {
  const list = c.pending.get(name);
  if (list === undefined) return;
  c.pending.delete(name);
  atTopLevel(c, () => {
    for (const syntax of list) declareFunction(c, syntax);
  });
}

/** Runs `work` as if it stood outside all functions. */
export function atTopLevel<T>(c: Checker, work: () => T): T {
  const { scope, current, members, loopDepth, switchDepth } = c;
  Object.assign(c, { scope: c.global, current: null, members: null, loopDepth: 0, switchDepth: 0 });
  const result = work();
  Object.assign(c, { scope, current, members, loopDepth, switchDepth });
  return result;
}

/** The function that a header names: a new one, or the one that a prototype declared. */
export function declareFunction(c: Checker, syntax: FunctionSyntax): FunctionInfo {
  const { name } = syntax.declarator;
  const types = syntax.parameters.map((p) => parameterType(c, p, evaluate));
  const before = c.global.names.get(name);
  const list = before?.is === "functions" ? before.list : [];
  const same = list.find((f) => sameParameters(f, types));
  if (same) {
    const result = resultType(c, syntax);
    if (!sameType(same.result, result) && result.kind !== "unknown")
      report(c, syntax.at, {
        code: "program.otherType",
        name,
        firstLine: same.line,
        first: typeName(same.result),
        found: typeName(result),
      });
    if (same.usual.every((u) => u === null)) Object.assign(same, { usual: usualValues(c, syntax, types) });
    return same;
  }
  const made = newFunction(c, syntax, null, false);
  if (before === undefined) c.global.names.set(name, { is: "functions", list: [made] });
  else if (before.is === "functions") before.list.push(made);
  else declare(c, syntax.at, name, { is: "functions", list: [made] });
  return made;
}

function sameParameters(f: FunctionInfo, types: readonly Type[]): boolean {
  return f.parameters.length === types.length && f.parameters.every((p, i) => sameType(p.type, types[i]!));
}

function resultType(c: Checker, syntax: FunctionSyntax): Type {
  return syntax.type === null ? types.void : resolveType(c, syntax.type, syntax.declarator, evaluate);
}

function usualValues(c: Checker, syntax: FunctionSyntax, list: readonly Type[]): (Expression | null)[] {
  return syntax.parameters.map((p, i) => (p.usual === null ? null : convert(c, p.usual.at, check(c, p.usual), list[i]!)));
}

export function newFunction(c: Checker, syntax: FunctionSyntax, members: RecordMembers | null, isPrivate: boolean): FunctionInfo {
  const list = syntax.parameters.map((p) => parameterType(c, p, evaluate));
  const parameters = syntax.parameters.map((p, i) =>
    parameter(p.declarator.name, list[i]!, p.declarator.at, isConstVariable(p.type, p.declarator), p.declarator.isReference),
  );
  syntax.parameters.forEach((p, i) => {
    if (list[i]!.kind === "void") report(c, p.declarator.at, { code: "program.voidVariable", name: p.declarator.name });
  });
  const owner = members?.info ?? null;
  const self =
    owner === null
      ? null
      : parameter(
          "this",
          { kind: "pointer", to: { kind: "record", of: owner }, toConst: syntax.isConst },
          syntax.at,
          true,
          false,
        );
  const made: FunctionInfo = {
    name: syntax.declarator.name,
    owner,
    index: c.functions.length,
    line: syntax.at.line,
    result: resultType(c, syntax),
    resultIsReference: syntax.declarator.isReference,
    parameters,
    usual: usualValues(c, syntax, list),
    self,
    isConstructor: syntax.type === null,
    isPrivate,
    isConst: syntax.isConst,
    locals: self === null ? [...parameters] : [self, ...parameters],
    body: null,
    calls: new Set(),
    isReentrant: false,
    cells: 0,
    stackBytes: 0,
    returns: false,
  };
  c.functions.push(made);
  return made;
}

function parameter(name: string, type: Type, at: At, isConst: boolean, isReference: boolean): Variable {
  return {
    name,
    type,
    isConst,
    isReference,
    line: at.line,
    lastLine: Number.POSITIVE_INFINITY,
    storage: "parameter",
    constant: null,
    cell: -1,
    inFrame: false,
    inMemory: type.kind === "record",
  };
}

/** Checks the body of a function whose header is known. */
export function checkFunctionBody(c: Checker, info: FunctionInfo, syntax: FunctionSyntax, members: RecordMembers | null): void {
  if (syntax.body === null) return;
  const { name } = info;
  if (info.body !== null) {
    report(c, syntax.at, { code: "program.redefined", name, firstLine: info.line });
    return;
  }
  Object.assign(info, { line: syntax.at.line });
  // So that it counts as one with a body when it calls itself.
  info.body = { do: "block", list: [] };
  const before = { scope: c.scope, current: c.current, members: c.members };
  c.current = info;
  c.members = members;
  c.scope = newScope(c.global);
  const list = inBlock(c, syntax.body.end.line, () => {
    syntax.parameters.forEach((p, i) => {
      if (p.declarator.name !== "")
        declare(c, p.declarator.at, p.declarator.name, { is: "variable", variable: info.parameters[i]! });
    });
    const first = info.isConstructor && members !== null ? fieldStatements(c, info, syntax, members) : [];
    return [...first, ...checkBlockInside(c, syntax.body!)];
  });
  info.body = { do: "block", list };
  info.returns = list.some(alwaysReturns);
  Object.assign(c, before);
  if (!info.returns && info.result.kind !== "void" && info.result.kind !== "unknown")
    warn(c, syntax.body.end, { code: "program.noReturn", name });
}

/** A constructor first gives every field its value, in the order of the fields. */
function fieldStatements(c: Checker, info: FunctionInfo, syntax: FunctionSyntax, members: RecordMembers): Statement[] {
  const { self } = info;
  if (self === null) return [];
  const record = variablePlace(self);
  const pointer: Expression = { op: "load", type: self.type, place: record };
  const here = { at: "pointer", type: { kind: "record", of: members.info }, isConst: false, pointer, line: info.line } as const;
  const whole = syntax.fields.find((f) => f.name === members.info.name);
  if (whole !== undefined)
    return construct(
      c,
      whole.at,
      here,
      here.type,
      whole.values.map((v) => check(c, v)),
    );
  for (const f of syntax.fields)
    if (!members.info.fields.some((known) => known.name === f.name)) {
      const near = nearName(
        c,
        f.name,
        members.info.fields.map((k) => k.name),
      );
      report(c, f.at, { code: "program.unknownMember", name: f.name, of: members.info.name, near });
    }
  return members.info.fields.flatMap((field) => {
    const place = { ...fieldPlace(here, field), isConst: false };
    const named = syntax.fields.find((f) => f.name === field.name);
    if (named) return checkInto(c, named.at, place, field.type, { kind: "arguments", at: named.at, values: named.values });
    return checkInto(c, syntax.at, place, field.type, members.fieldInitialisers.get(field.name) ?? null);
  });
}

/** Whether no way leads past the statement. */
export function alwaysReturns(s: Statement): boolean {
  switch (s.do) {
    case "return":
      return true;
    case "block":
      return s.list.some(alwaysReturns);
    case "if":
      return s.no !== null && alwaysReturns(s.yes) && alwaysReturns(s.no);
    case "while":
      return s.test.op === "number" && s.test.value !== 0 && !leaves(s.body);
    case "doWhile":
      return alwaysReturns(s.body) || (s.test.op === "number" && s.test.value !== 0 && !leaves(s.body));
    case "for":
      return (s.test === null || (s.test.op === "number" && s.test.value !== 0)) && !leaves(s.body);
    case "switch": {
      const last = s.list.at(-1);
      return s.otherwise < s.list.length && last !== undefined && alwaysReturns(last) && !s.list.some(leaves);
    }
    default:
      return false;
  }
}

/** Whether a `break` in the statement leaves the loop or switch around it. */
function leaves(s: Statement): boolean {
  if (s.do === "break") return true;
  if (s.do === "block") return s.list.some(leaves);
  if (s.do === "if") return leaves(s.yes) || (s.no !== null && leaves(s.no));
  return false;
}
