// Arithmetic on the chip's integers and floats, one operation at a time.
//
// The one place where widths and wraps are written down; the checker folds constants with it, and the compiled code and the
// walker must agree with it. A whole number is *held* as a JavaScript number: within its range for 8 and 16 bits, and as the
// signed 32 bits for both `long` and `unsigned long`, because V8 is fastest with those. `numeric` gives the value meant.
// Floats are held rounded to 32 bits (Math.fround), as avr-gcc's double is a float (IEC 60559 single).
// Does not know: expressions, memory.
import { type IntegerType, integerFacts } from "./types.ts";

/** Brings a whole number (exact, below 2^53) or an int32 into the type: cuts off what does not fit, as avr-gcc does. */
export function hold(value: number, type: IntegerType): number {
  switch (type.name) {
    case "bool":
      return value === 0 ? 0 : 1;
    case "char":
    case "signed char":
      return (value << 24) >> 24;
    case "unsigned char":
      return value & 0xff;
    case "short":
    case "int":
      return (value << 16) >> 16;
    case "unsigned short":
    case "unsigned int":
      return value & 0xffff;
    default:
      return value | 0;
  }
}

/** The number that a held value means. */
export function numeric(held: number, type: IntegerType): number {
  return type.name === "unsigned long" ? held >>> 0 : held;
}

export type ArithmeticOperator = "+" | "-" | "*" | "/" | "%" | "&" | "|" | "^";
export type CompareOperator = "==" | "!=" | "<" | ">" | "<=" | ">=";

/** @returns the held result, or null for a division by zero. Both operands are held in `type`, which is int or larger. */
export function integerOperation(operator: ArithmeticOperator, a: number, b: number, type: IntegerType): number | null {
  switch (operator) {
    case "+":
      return hold(a + b, type);
    case "-":
      return hold(a - b, type);
    case "*":
      return hold(Math.imul(a, b), type);
    case "&":
      return a & b;
    case "|":
      return a | b;
    case "^":
      return a ^ b;
    case "/":
      return b === 0 ? null : hold(Math.trunc(numeric(a, type) / numeric(b, type)), type);
    default:
      return b === 0 ? null : hold(numeric(a, type) % numeric(b, type), type);
  }
}

/** The exact result before it is cut to the type, for telling that it does not fit. */
export function exactOperation(operator: "+" | "-" | "*", a: number, b: number, type: IntegerType): number {
  const [x, y] = [numeric(a, type), numeric(b, type)];
  return operator === "+" ? x + y : operator === "-" ? x - y : x * y;
}

/**
 * Shifts by a held count. C++ leaves counts outside 0..bits−1 undefined; avr-gcc steps as long as the low byte of the count,
 * counted down, is not negative, so a large count empties the value and a small negative one does nothing (tried in simavr).
 */
export function shiftOperation(operator: "<<" | ">>", a: number, count: number, type: IntegerType): number {
  const steps = count & 0xff;
  if (steps > 0x80) return a;
  const { bits, isSigned } = integerFacts[type.name];
  if (operator === "<<") return steps >= bits ? 0 : hold(a << steps, type);
  if (isSigned) return hold(a >> Math.min(steps, 31), type);
  return steps >= bits ? 0 : hold((bits === 32 ? a >>> 0 : a) >>> steps, type);
}

export function compareIntegers(operator: CompareOperator, a: number, b: number, type: IntegerType): boolean {
  return compareNumbers(operator, numeric(a, type), numeric(b, type));
}

export function compareNumbers(operator: CompareOperator, x: number, y: number): boolean {
  switch (operator) {
    case "==":
      return x === y;
    case "!=":
      return x !== y;
    case "<":
      return x < y;
    case ">":
      return x > y;
    case "<=":
      return x <= y;
    default:
      return x >= y;
  }
}

/** @returns null for an operator that floats do not have. */
export function floatOperation(operator: ArithmeticOperator, a: number, b: number): number | null {
  switch (operator) {
    case "+":
      return Math.fround(a + b);
    case "-":
      return Math.fround(a - b);
    case "*":
      return Math.fround(a * b);
    case "/":
      return Math.fround(a / b);
    default:
      return null;
  }
}

/**
 * From float to a whole number: towards zero. What does not fit is undefined in C++; avr-libc converts by way of 32 bits, signed
 * or not as the type is, and cuts the rest off. Beyond 32 bits it gives 0x80000000 or 0 (tried in simavr).
 */
export function floatToInteger(value: number, type: IntegerType): number {
  if (type.name === "bool") return value === 0 ? 0 : 1;
  const whole = Math.trunc(value);
  if (integerFacts[type.name].isSigned) return hold(Math.abs(whole) < 2147483648 ? whole : -2147483648, type);
  return hold(Math.abs(whole) < 4294967296 ? whole : 0, type);
}

export function integerToFloat(held: number, type: IntegerType): number {
  return Math.fround(numeric(held, type));
}

/** The types in which two operands of these types meet: integer promotions, then the usual arithmetic conversions. */
export function promoted(type: IntegerType): IntegerType {
  const { bits, isSigned, rank } = integerFacts[type.name];
  if (rank >= 3) return type;
  // An unsigned short has as many bits as int and so does not fit into it.
  return { kind: "integer", name: bits === 16 && !isSigned ? "unsigned int" : "int" };
}

/** C++11 section 5, paragraph 9, for integers. */
export function commonInteger(a: IntegerType, b: IntegerType): IntegerType {
  const [x, y] = [promoted(a), promoted(b)];
  if (x.name === y.name) return x;
  const [fx, fy] = [integerFacts[x.name], integerFacts[y.name]];
  if (fx.isSigned === fy.isSigned) return fx.rank > fy.rank ? x : y;
  const [unsigned, signed] = fx.isSigned ? [y, x] : [x, y];
  const [fu, fs] = [integerFacts[unsigned.name], integerFacts[signed.name]];
  if (fu.rank >= fs.rank) return unsigned;
  return fs.bits > fu.bits ? signed : { kind: "integer", name: signed.name === "long" ? "unsigned long" : "unsigned int" };
}
