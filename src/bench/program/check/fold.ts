// Makes nodes of the checked tree, computing at once what is constant.
//
// Constants are computed with the chip's widths, as the compiler does; a constant that does not fit its type is the most
// silent of beginners' mistakes (60 * 1000 is −5536), so it is reported here.
// Does not know: names, scopes.
import {
  type ArithmeticOperator,
  type CompareOperator,
  compareIntegers,
  compareNumbers,
  exactOperation,
  floatOperation,
  floatToInteger,
  hold,
  integerOperation,
  integerToFloat,
  numeric,
  shiftOperation,
} from "./arithmetic.ts";
import type { Arithmetic, Expression } from "./tree.ts";
import { heldType, type IntegerType, integerFacts, isArithmetic, sameType, type Type, types } from "./types.ts";

/** Called with a constant result that did not fit its type. */
export type OnOverflow = (exact: number, got: number, type: IntegerType) => void;
const ignore: OnOverflow = () => undefined;

export function number(value: number, type: Type): Expression {
  return { op: "number", type, value };
}

/** @returns the held value of a constant number, or null. */
export function constantOf(e: Expression): number | null {
  return e.op === "number" && e.type.kind !== "unknown" ? e.value : null;
}

export function arithmetic(
  operator: ArithmeticOperator,
  left: Expression,
  right: Expression,
  type: Arithmetic,
  line: number,
  onOverflow: OnOverflow = ignore,
): Expression {
  const [a, b] = [constantOf(left), constantOf(right)];
  if (a !== null && b !== null) {
    const result = type.kind === "integer" ? integerOperation(operator, a, b, type) : floatOperation(operator, a, b);
    if (result !== null) {
      if (
        type.kind === "integer" &&
        integerFacts[type.name].isSigned &&
        (operator === "+" || operator === "-" || operator === "*")
      ) {
        const exact = exactOperation(operator, a, b, type);
        if (exact !== numeric(result, type)) onOverflow(exact, numeric(result, type), type);
      }
      return number(result, type);
    }
  }
  return { op: "arithmetic", type, operator, left, right, line };
}

export function shift(operator: "<<" | ">>", left: Expression, right: Expression, type: IntegerType): Expression {
  const [a, b] = [constantOf(left), constantOf(right)];
  if (a !== null && b !== null) return number(shiftOperation(operator, a, b, type), type);
  return { op: "shift", type, operator, left, right };
}

export function compare(operator: CompareOperator, left: Expression, right: Expression, inType: Arithmetic): Expression {
  const [a, b] = [constantOf(left), constantOf(right)];
  if (a !== null && b !== null) {
    const result = inType.kind === "integer" ? compareIntegers(operator, a, b, inType) : compareNumbers(operator, a, b);
    return number(result ? 1 : 0, types.bool);
  }
  return { op: "compare", type: types.bool, operator, left, right, inType };
}

export function negate(value: Expression, type: Arithmetic): Expression {
  const a = constantOf(value);
  if (a === null) return { op: "negate", type, value };
  return number(type.kind === "integer" ? hold(-a, type) : Math.fround(-a), type);
}

export function complement(value: Expression, type: IntegerType): Expression {
  const a = constantOf(value);
  return a === null ? { op: "complement", type, value } : number(hold(~a, type), type);
}

export function not(value: Expression): Expression {
  const a = constantOf(value);
  return a === null ? { op: "not", type: types.bool, value } : number(a === 0 ? 1 : 0, types.bool);
}

export function both(op: "and" | "or", left: Expression, right: Expression): Expression {
  const [a, b] = [constantOf(left), constantOf(right)];
  if (a !== null && b !== null) return number((op === "and" ? a !== 0 && b !== 0 : a !== 0 || b !== 0) ? 1 : 0, types.bool);
  return { op, type: types.bool, left, right };
}

/** Between numbers (an enum counts as the integer that holds it). */
export function convertNumber(value: Expression, to: Type): Expression {
  const from = heldType(value.type);
  const target = heldType(to);
  if (!isArithmetic(from) || !isArithmetic(target)) return value;
  const a = constantOf(value);
  if (a !== null) return number(convertHeld(a, from, target), to);
  if (sameType(value.type, to)) return value;
  // From an enum to its integer and back only the name changes; a variable can be read under another one.
  if (sameType(from, target) && value.op === "load") return { ...value, type: to };
  return { op: "convert", type: to, from, value };
}

/** Converts a held value from one number type to another. */
export function convertHeld(value: number, from: Arithmetic, to: Arithmetic): number {
  if (to.kind === "float") return from.kind === "float" ? Math.fround(value) : integerToFloat(value, from);
  return from.kind === "float" ? floatToInteger(value, to) : hold(value, to);
}
