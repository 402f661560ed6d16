// Variables: declared, given a place, and filled, wherever they stand.
//
// Globals whose values are known before the start are filled before all others, as the chip's start-up code does; the others
// follow in order (C++11, section 3.6.2). A static local is filled once, at the start if it can be.
// Does not know: expressions, statements around it.
import type { VariableSyntax, VariablesSyntax } from "../read/syntax.ts";
import { handOver } from "./checkCall.ts";
import { check, evaluate } from "./checkExpression.ts";
import { cellPlace, rvalue, variablePlace } from "./checked.ts";
import { type Checker, declare, nearName, newVariable, report } from "./checker.ts";
import { checkInto, lengthFrom } from "./checkInitialiser.ts";
import { declareRecord } from "./checkRecord.ts";
import { constantOf } from "./fold.ts";
import { completeType, declareEnum, isConstVariable, resolveType } from "./resolveType.ts";
import type { Expression, Place, Statement, Variable } from "./tree.ts";
import { heldType, isArithmetic, sameType, type Type, types } from "./types.ts";

/** @returns what is to be done where the declaration stands; nothing for globals and statics, which are filled at the start. */
export function checkVariables(c: Checker, syntax: VariablesSyntax): Statement[] {
  if (syntax.defines?.kind === "record") declareRecord(c, syntax.defines);
  else if (syntax.defines !== null) declareEnum(c, syntax.defines, evaluate);
  return syntax.variables.flatMap((v) => checkVariable(c, syntax, v));
}

function checkVariable(c: Checker, syntax: VariablesSyntax, v: VariableSyntax): Statement[] {
  const { at, name } = v.declarator;
  if (v.declarator.owner !== "") return defineShared(c, v);
  const autoType = syntax.type.builtIn && syntax.type.name === "auto" ? typeOfInitialiser(c, v) : null;
  const { variable, initialise } = declareVariable(c, syntax, v, autoType);
  if (variable.isReference) {
    const value =
      v.initialiser?.kind === "value"
        ? v.initialiser.value
        : v.initialiser?.kind === "arguments"
          ? v.initialiser.values[0]
          : undefined;
    if (value === undefined) {
      report(c, at, { code: "program.noValue", name });
      return [];
    }
    const place = cellPlace(variable);
    const pointer = handOver(c, value.at, check(c, value), variable.type, true, variable.isConst);
    return initialise(() => [
      { do: "expression", value: { op: "assign", type: place.type, place, value: pointer }, line: at.line },
    ]);
  }
  if (
    variable.isConst &&
    v.initialiser === null &&
    variable.type.kind !== "record" &&
    variable.type.kind !== "text" &&
    !syntax.isExtern
  )
    report(c, at, { code: "program.noValue", name });
  return initialise((place) => checkInto(c, at, place, variable.type, v.initialiser));
}

/** `int Lamp::made = 0;`: the value of a variable that belongs to a class. */
function defineShared(c: Checker, v: VariableSyntax): Statement[] {
  const { at, name, owner } = v.declarator;
  const type = c.global.types.get(owner);
  const members = type?.kind === "record" ? c.records.get(type.of) : undefined;
  const found = members?.scope.names.get(name);
  if (members === undefined)
    report(c, at, { code: "program.unknownName", name: owner, near: nearName(c, owner, c.global.types.keys()) });
  else if (found?.is === "variable") {
    const { variable } = found;
    const list = checkInto(c, at, { ...variablePlace(variable), isConst: false }, variable.type, v.initialiser);
    keepConstant(variable, list);
    (list.every(isKnownBefore) ? c.constantFirst : c.computedFirst).push(...list);
  } else if (found === undefined)
    report(c, at, { code: "program.unknownMember", name, of: owner, near: nearName(c, name, members.scope.names.keys()) });
  return [];
}

/**
 * Declares the variable and says where its first value goes. The name is known from here on, also in its own initialiser.
 *
 * @param autoType the type, where the declaration says `auto`.
 * @param autoIsConst whether that is constant.
 */
export function declareVariable(
  c: Checker,
  syntax: VariablesSyntax,
  v: VariableSyntax,
  autoType: Type | null,
  autoIsConst = false,
): { variable: Variable; initialise: (fill: (place: Place) => Statement[]) => Statement[] } {
  const { at, name, isReference } = v.declarator;
  const isAuto = syntax.type.builtIn && syntax.type.name === "auto";
  let type = isAuto && autoType !== null ? autoType : resolveType(c, syntax.type, v.declarator, evaluate);
  if (!isReference) type = completeType(c, at, type);
  if (type.kind === "void") {
    report(c, at, { code: "program.voidVariable", name });
    type = types.unknown;
  }
  if (type.kind === "array" && v.declarator.sizes[0] === null) {
    const length = lengthFrom(type, v.initialiser);
    if (length === null && !syntax.isExtern) report(c, at, { code: "program.unknownSize", name });
    type = { ...type, length: length ?? 1 };
  }
  // auto& takes over that what it leads to is constant.
  const isConst = isConstVariable(syntax.type, v.declarator) || (isAuto && isReference && autoIsConst);
  const known = c.current === null ? c.announced.get(name) : undefined;
  const isKnown = known !== undefined && sameType(known.type, type);
  const variable = isKnown
    ? known
    : newVariable(c, name, type, at.line, {
        isConst,
        isReference,
        isStatic: syntax.isStatic,
        isVolatile: syntax.type.isVolatile,
      });
  if (!isKnown) declare(c, at, name, { is: "variable", variable });
  if (syntax.isExtern) c.announced.set(name, variable);
  else c.announced.delete(name);
  // The first value may also go into a const.
  const place: Place = { ...variablePlace(variable), isConst: false };
  const initialise = (fill: (place: Place) => Statement[]) => {
    if (syntax.isExtern && v.initialiser === null) return [];
    const list = fill(place);
    keepConstant(variable, list);
    if (variable.storage === "local" || variable.storage === "parameter") return list;
    if (list.every(isKnownBefore)) c.constantFirst.push(...list);
    else if (variable.storage === "global") c.computedFirst.push(...list);
    else {
      const flag = newVariable(c, `#once ${name}`, types.bool, at.line, { isStatic: true });
      return [{ do: "once", flag, body: { do: "block", list } } as Statement];
    }
    return [];
  };
  return { variable, initialise };
}

function typeOfInitialiser(c: Checker, v: VariableSyntax): Type {
  const value = v.initialiser?.kind === "value" ? v.initialiser.value : v.initialiser?.values[0];
  if (value === undefined) {
    report(c, v.declarator.at, { code: "program.noValue", name: v.declarator.name });
    return types.unknown;
  }
  const before = c.problems.length;
  const { type } = rvalue(c, check(c, value));
  // It is checked again when its value is used.
  c.problems.length = before;
  return type;
}

/** A const number with a value known before the start is that value wherever it is read. */
function keepConstant(variable: Variable, list: readonly Statement[]): void {
  const only = list[0];
  if (!variable.isConst || variable.isReference || list.length !== 1 || only?.do !== "expression" || only.value.op !== "assign")
    return;
  if (!isArithmetic(heldType(variable.type))) return;
  variable.constant = constantOf(only.value.value);
}

/** Whether the statement needs nothing that runs: numbers, texts, addresses. */
function isKnownBefore(s: Statement): boolean {
  if (s.do === "fill" || s.do === "clear") return true;
  return s.do === "expression" && s.value.op === "assign" && isKnown(s.value.value) && isFixed(s.value.place);
}

function isKnown(e: Expression): boolean {
  if (e.op === "number" || e.op === "text" || e.op === "null" || e.op === "function") return true;
  if (e.op === "library" && e.name === "text.ofChars") return e.values.every(isKnown);
  return e.op === "address" && isFixed(e.place);
}

function isFixed(place: Place): boolean {
  if (place.at === "field") return isFixed(place.record);
  if (place.at === "index") return isFixed(place.array) && constantOf(place.index) !== null;
  return place.at === "variable" || place.at === "literal";
}
