// Closures for comparisons: they give true or false, which conditions take as they are.
//
// Does not know: places, the tree beyond its operands.
import type { CompareOperator } from "../check/arithmetic.ts";
import type { Operand } from "./codeArithmetic.ts";
import type { Num, Test } from "./coder.ts";

const mirrored: Readonly<Record<CompareOperator, CompareOperator>> = {
  "==": "==",
  "!=": "!=",
  "<": ">",
  ">": "<",
  "<=": ">=",
  ">=": "<=",
};

/** @param isUnsignedLong the operands are held as signed 32 bits but mean unsigned ones. */
export function codeCompare(I: Int32Array, operator: CompareOperator, l: Operand, r: Operand, isUnsignedLong: boolean): Test {
  if (l.constant !== null && r.constant === null) return codeCompare(I, mirrored[operator], r, l, isUnsignedLong);
  if (isUnsignedLong && operator !== "==" && operator !== "!=") return compareUnsigned(operator, l.code, r.code);
  if (r.constant !== null)
    return l.cell !== null ? cellWithConstant(I, operator, l.cell, r.constant) : withConstant(operator, l.code, r.constant);
  if (l.cell !== null && r.cell !== null) return cells(I, operator, l.cell, r.cell);
  return compareNumbersCode(operator, l.code, r.code);
}

function cellWithConstant(I: Int32Array, operator: CompareOperator, a: number, k: number): Test {
  switch (operator) {
    case "==":
      return () => I[a] === k;
    case "!=":
      return () => I[a] !== k;
    case "<":
      return () => I[a]! < k;
    case ">":
      return () => I[a]! > k;
    case "<=":
      return () => I[a]! <= k;
    default:
      return () => I[a]! >= k;
  }
}

function withConstant(operator: CompareOperator, x: Num, k: number): Test {
  switch (operator) {
    case "==":
      return () => x() === k;
    case "!=":
      return () => x() !== k;
    case "<":
      return () => x() < k;
    case ">":
      return () => x() > k;
    case "<=":
      return () => x() <= k;
    default:
      return () => x() >= k;
  }
}

function cells(I: Int32Array, operator: CompareOperator, a: number, b: number): Test {
  switch (operator) {
    case "==":
      return () => I[a] === I[b];
    case "!=":
      return () => I[a] !== I[b];
    case "<":
      return () => I[a]! < I[b]!;
    case ">":
      return () => I[a]! > I[b]!;
    case "<=":
      return () => I[a]! <= I[b]!;
    default:
      return () => I[a]! >= I[b]!;
  }
}

/** Also for floats. */
export function compareNumbersCode(operator: CompareOperator, x: Num, y: Num): Test {
  switch (operator) {
    case "==":
      return () => x() === y();
    case "!=":
      return () => x() !== y();
    case "<":
      return () => x() < y();
    case ">":
      return () => x() > y();
    case "<=":
      return () => x() <= y();
    default:
      return () => x() >= y();
  }
}

function compareUnsigned(operator: CompareOperator, x: Num, y: Num): Test {
  switch (operator) {
    case "<":
      return () => x() >>> 0 < y() >>> 0;
    case ">":
      return () => x() >>> 0 > y() >>> 0;
    case "<=":
      return () => x() >>> 0 <= y() >>> 0;
    default:
      return () => x() >>> 0 >= y() >>> 0;
  }
}
