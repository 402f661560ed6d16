// From a type as written to the type meant: names looked up, stars, sizes of arrays, enums and aliases.
//
// Does not know: the fields of records (checkRecord.ts), functions' bodies.
import type {
  AliasSyntax,
  Declarator,
  EnumSyntax,
  Expression as ExpressionSyntax,
  Parameter,
  TypeSyntax,
} from "../read/syntax.ts";
import type { At } from "../read/token.ts";
import { hold } from "./arithmetic.ts";
import { type Checker, declare, lookupType, nearName, report } from "./checker.ts";
import { constantOf } from "./fold.ts";
import { type EnumInfo, heldType, type IntegerName, type Type, types } from "./types.ts";

/** Computes an expression that must be a whole constant; set by checkExpression.ts, which needs this file too. */
export type Evaluate = (c: Checker, e: ExpressionSyntax) => import("./tree.ts").Expression;

/** The base type. `auto` gives "unknown": the initialiser decides. */
export function resolveBase(c: Checker, syntax: TypeSyntax): Type {
  if (!syntax.builtIn) {
    const found = lookupType(c, syntax.name);
    if (found !== null) return found;
    if (syntax.name === "Servo") return types.servo;
    // The parser has reported a name that no type has.
    return types.unknown;
  }
  switch (syntax.name) {
    case "void":
      return types.void;
    case "float":
      return types.float;
    case "double":
      return types.double;
    case "auto":
      return types.unknown;
    case "String":
      return types.text;
    case "__FlashStringHelper":
      return types.flash;
    default:
      return { kind: "integer", name: syntax.name as IntegerName };
  }
}

/** The type with what the declarator adds, without its reference. An unknown size is length 0. */
export function resolveType(c: Checker, syntax: TypeSyntax, declarator: Declarator, evaluate: Evaluate): Type {
  let type = withStars(resolveBase(c, syntax), syntax.isConst, declarator.pointers);
  if (declarator.pointsToFunction !== null) {
    const parameters = declarator.pointsToFunction.map((p) => parameterType(c, p, evaluate));
    type = { kind: "pointer", to: { kind: "function", result: type, parameters }, toConst: false };
  }
  for (const size of [...declarator.sizes].reverse()) {
    const length = size === null ? 0 : arrayLength(c, size, evaluate);
    type = { kind: "array", of: type, length };
  }
  return type;
}

/** The type of something that is kept as a whole: a class must have been read to its end by then. */
export function completeType(c: Checker, at: At, type: Type): Type {
  let whole = type;
  while (whole.kind === "array") whole = whole.of;
  if (whole.kind !== "record" || whole.of.isComplete) return type;
  report(c, at, { code: "program.incompleteType", name: whole.of.name });
  return types.unknown;
}

export function withStars(base: Type, isConst: boolean, pointers: readonly boolean[]): Type {
  let type = base;
  let toConst = isConst;
  for (const constPointer of pointers) {
    if (type.kind === "flash") continue;
    type = { kind: "pointer", to: type, toConst };
    toConst = constPointer;
  }
  return type;
}

/** Whether the declared thing itself is const (and not only what it points to). */
export function isConstVariable(syntax: TypeSyntax, declarator: Declarator): boolean {
  const { pointers } = declarator;
  return pointers.length === 0 ? syntax.isConst : pointers[pointers.length - 1]!;
}

/** An array parameter is a pointer to its first element. */
export function parameterType(c: Checker, p: Parameter, evaluate: Evaluate): Type {
  const type = resolveType(c, p.type, p.declarator, evaluate);
  if (type.kind !== "array" || p.declarator.isReference) return type;
  return { kind: "pointer", to: type.of, toConst: p.declarator.pointers.length === 0 && p.type.isConst };
}

function arrayLength(c: Checker, size: ExpressionSyntax, evaluate: Evaluate): number {
  const value = evaluate(c, size);
  const held = heldType(value.type);
  const length = constantOf(value);
  if (value.type.kind === "unknown") return 1;
  if (length === null || held.kind !== "integer") {
    // Inside a function GCC takes a size that is computed.
    if (c.current !== null && held.kind === "integer")
      report(c, size.at, { code: "program.notSupported", feature: "computed array size" });
    else report(c, size.at, { code: "program.notConstant", what: "array size" });
    return 1;
  }
  if (length <= 0 || length > 32767) {
    report(c, size.at, { code: "program.badArraySize", found: length });
    return 1;
  }
  return length;
}

/** Declares the enum's type and its values. Values count on from the one before; the type is int as a rule. */
export function declareEnum(c: Checker, syntax: EnumSyntax, evaluate: Evaluate): void {
  const base = syntax.type === null ? types.int : resolveBase(c, syntax.type);
  const held = base.kind === "integer" ? base : types.int;
  const info: EnumInfo = { name: syntax.name || "enum", isScoped: syntax.isScoped, values: new Map(), held };
  const type: Type = { kind: "enum", of: info };
  if (syntax.name !== "") declareType(c, syntax.at, syntax.name, type);
  let next = 0;
  for (const v of syntax.values) {
    if (v.value !== null) {
      const value = evaluate(c, v.value);
      const constant = constantOf(value);
      if (constant === null && value.type.kind !== "unknown")
        report(c, v.value.at, { code: "program.notConstant", what: "enum" });
      next = constant ?? next;
    }
    const value = hold(next, held);
    info.values.set(v.name, value);
    if (!syntax.isScoped) declare(c, v.at, v.name, { is: "constant", type, value, line: v.at.line });
    next = value + 1;
  }
}

export function declareType(c: Checker, at: At, name: string, type: Type): void {
  const before = c.scope.types.get(name);
  const firstLine = before?.kind === "record" ? before.of.line : at.line;
  if (before !== undefined && !(before.kind === "record" && !before.of.isComplete))
    report(c, at, { code: "program.redefined", name, firstLine });
  c.scope.types.set(name, type);
}

export function declareAlias(c: Checker, syntax: AliasSyntax, evaluate: Evaluate): void {
  declareType(c, syntax.at, syntax.declarator.name, resolveType(c, syntax.type, syntax.declarator, evaluate));
}

/** The nearest name among those of an enum, a record or a class of the library. */
export const nearOf = nearName;
