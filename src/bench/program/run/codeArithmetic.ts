// Closures for arithmetic on whole numbers.
//
// A node with a constant or a plain variable beside it gets a closure of its own kind: half the calls, and calls are what a
// tree of closures costs. Widths: int wraps by shifting, all others by a mask (32 bits by −1); see check/arithmetic.ts.
// Does not know: places, the tree beyond its operands.
import { type ArithmeticOperator, integerOperation, shiftOperation } from "../check/arithmetic.ts";
import { type IntegerType, integerFacts } from "../check/types.ts";
import type { Num } from "./coder.ts";
import { broken } from "./halt.ts";

/** One side of an operation: its code, and what is known of it. */
export interface Operand {
  readonly code: Num;
  readonly constant: number | null;
  /** The cell of a plain variable. */
  readonly cell: number | null;
}

const isPlainInt = (type: IntegerType) => integerFacts[type.name].bits === 16 && integerFacts[type.name].isSigned;
const maskOf = (type: IntegerType) => (integerFacts[type.name].bits === 16 ? 0xffff : -1);

/** @param type int or wider: operands are promoted. */
export function codeArithmetic(
  I: Int32Array,
  operator: ArithmeticOperator,
  l: Operand,
  r: Operand,
  type: IntegerType,
  line: number,
): Num {
  switch (operator) {
    case "+":
      return isPlainInt(type) ? addInt(I, l, r) : addMasked(I, l, r, maskOf(type));
    case "-":
      return isPlainInt(type) ? subtractInt(I, l, r) : subtractMasked(I, l, r, maskOf(type));
    case "*":
      return multiply(I, l, r, type);
    case "&":
    case "|":
    case "^":
      return bitwise(operator, l, r);
    default:
      return divide(operator, l, r, type, line);
  }
}

function addInt(I: Int32Array, l: Operand, r: Operand): Num {
  if (l.constant !== null && r.constant === null) return addInt(I, r, l);
  const x = l.code;
  const y = r.code;
  if (r.constant !== null) {
    const k = r.constant;
    if (l.cell !== null) {
      const a = l.cell;
      return () => ((I[a]! + k) << 16) >> 16;
    }
    return () => ((x() + k) << 16) >> 16;
  }
  if (l.cell !== null && r.cell !== null) {
    const a = l.cell;
    const b = r.cell;
    return () => ((I[a]! + I[b]!) << 16) >> 16;
  }
  if (r.cell !== null) {
    const b = r.cell;
    return () => ((x() + I[b]!) << 16) >> 16;
  }
  return () => ((x() + y()) << 16) >> 16;
}

function addMasked(I: Int32Array, l: Operand, r: Operand, mask: number): Num {
  if (l.constant !== null && r.constant === null) return addMasked(I, r, l, mask);
  const x = l.code;
  const y = r.code;
  if (r.constant !== null) {
    const k = r.constant;
    if (l.cell !== null) {
      const a = l.cell;
      return () => (I[a]! + k) & mask;
    }
    return () => (x() + k) & mask;
  }
  if (l.cell !== null) {
    const a = l.cell;
    return () => (I[a]! + y()) & mask;
  }
  return () => (x() + y()) & mask;
}

function subtractInt(I: Int32Array, l: Operand, r: Operand): Num {
  const x = l.code;
  const y = r.code;
  if (r.constant !== null) return addInt(I, l, { ...r, constant: -r.constant });
  if (l.cell !== null && r.cell !== null) {
    const a = l.cell;
    const b = r.cell;
    return () => ((I[a]! - I[b]!) << 16) >> 16;
  }
  return () => ((x() - y()) << 16) >> 16;
}

function subtractMasked(I: Int32Array, l: Operand, r: Operand, mask: number): Num {
  const x = l.code;
  const y = r.code;
  if (r.constant !== null) return addMasked(I, l, { ...r, constant: -r.constant }, mask);
  if (r.cell !== null) {
    const b = r.cell;
    return () => (x() - I[b]!) & mask;
  }
  return () => (x() - y()) & mask;
}

function multiply(I: Int32Array, l: Operand, r: Operand, type: IntegerType): Num {
  if (l.constant !== null && r.constant === null) return multiply(I, r, l, type);
  const x = l.code;
  const y = r.code;
  if (isPlainInt(type)) {
    if (r.constant !== null) {
      const k = r.constant;
      if (l.cell !== null) {
        const a = l.cell;
        return () => (Math.imul(I[a]!, k) << 16) >> 16;
      }
      return () => (Math.imul(x(), k) << 16) >> 16;
    }
    return () => (Math.imul(x(), y()) << 16) >> 16;
  }
  const mask = maskOf(type);
  return () => Math.imul(x(), y()) & mask;
}

function bitwise(operator: "&" | "|" | "^", l: Operand, r: Operand): Num {
  if (l.constant !== null && r.constant === null) return bitwise(operator, r, l);
  const x = l.code;
  const y = r.code;
  const k = r.constant;
  if (operator === "&") return k !== null ? () => x() & k : () => x() & y();
  if (operator === "|") return k !== null ? () => x() | k : () => x() | y();
  return k !== null ? () => x() ^ k : () => x() ^ y();
}

function divide(operator: "/" | "%", l: Operand, r: Operand, type: IntegerType, line: number): Num {
  const x = l.code;
  const y = r.code;
  const { bits, isSigned } = integerFacts[type.name];
  if (bits === 16) {
    // Both sides are below 2^16, so plain numbers are exact; −32768 / −1 wraps.
    const wrap = isSigned ? (v: number) => (v << 16) >> 16 : (v: number) => v & 0xffff;
    if (r.constant !== null && r.constant !== 0) {
      const k = r.constant;
      return operator === "/" ? () => wrap((x() / k) | 0) : () => (x() % k) | 0;
    }
    return () => {
      const a = x();
      const b = y();
      if (b === 0) broken(line, "program.divisionByZero");
      return operator === "/" ? wrap((a / b) | 0) : (a % b) | 0;
    };
  }
  return () => {
    const a = x();
    const result = integerOperation(operator, a, y(), type);
    return result === null ? broken(line, "program.divisionByZero") : result;
  };
}

export function codeShift(operator: "<<" | ">>", l: Operand, r: Operand, type: IntegerType): Num {
  const x = l.code;
  const y = r.code;
  const { bits, isSigned } = integerFacts[type.name];
  const k = r.constant;
  if (k === null || k < 0 || k >= bits) return () => shiftOperation(operator, x(), y(), type);
  if (operator === "<<") {
    if (isPlainInt(type)) return () => (x() << (k + 16)) >> 16;
    const mask = maskOf(type);
    return () => (x() << k) & mask;
  }
  return isSigned ? () => x() >> k : () => x() >>> k;
}
