// Visits every statement or expression of a piece of program, outermost first.
//
// Does not know: what is looked for.
import type { Condition, Expression, Initialiser, Statement } from "../read/syntax.ts";

export function everyStatement(s: Statement, visit: (s: Statement) => void): void {
  visit(s);
  for (const inner of statementsOf(s)) everyStatement(inner, visit);
}

export function everyExpression(s: Statement, visit: (e: Expression) => void): void {
  everyStatement(s, (inner) => {
    for (const e of expressionsOf(inner)) within(e, visit);
  });
}

function within(e: Expression, visit: (e: Expression) => void): void {
  visit(e);
  for (const part of partsOf(e)) within(part, visit);
}

function statementsOf(s: Statement): readonly Statement[] {
  switch (s.kind) {
    case "block":
      return s.list;
    case "if":
      return [...declaredIn(s.test), s.yes, ...(s.no ? [s.no] : [])];
    case "while":
      return [...declaredIn(s.test), s.body];
    case "do":
    case "switch":
      return [s.body];
    case "for":
      return [...(s.first ? [s.first] : []), s.body];
    case "forEach":
      return [s.variable, s.body];
    default:
      return [];
  }
}

function declaredIn(test: Condition): Statement[] {
  return test.kind === "variables" ? [test] : [];
}

function expressionsOf(s: Statement): readonly Expression[] {
  switch (s.kind) {
    case "expression":
    case "case":
    case "switch":
      return [s.value];
    case "return":
      return s.value ? [s.value] : [];
    case "if":
    case "while":
      return s.test.kind === "variables" ? [] : [s.test];
    case "do":
      return [s.test];
    case "for":
      return [s.test, s.step].filter((e) => e !== null);
    case "forEach":
      return [s.of];
    case "variables":
      return s.variables.flatMap((v) => valuesOf(v.initialiser));
    default:
      return [];
  }
}

function valuesOf(i: Initialiser | null): readonly Expression[] {
  return i === null ? [] : i.kind === "value" ? [i.value] : i.values;
}

/** The expressions directly inside. */
export function partsOf(e: Expression): readonly Expression[] {
  switch (e.kind) {
    case "unary":
    case "step":
    case "cast":
    case "sizeof":
      return [e.value];
    case "binary":
    case "assign":
    case "comma":
      return [e.left, e.right];
    case "choose":
      return [e.test, e.yes, e.no];
    case "call":
      return [e.called, ...e.values];
    case "make":
    case "list":
      return e.values;
    case "index":
      return [e.array, e.index];
    case "member":
      return [e.record];
    default:
      return [];
  }
}
