// Integer arithmetic against the same in unlimited whole numbers, cut to the chip's widths by BigInt.asIntN and asUintN.
//
// The limits are those of avr-gcc's <limits.h>: int −32768 … 32767, long ±2147483647; the wrap examples int16(40000) = −25536,
// int16(60·1000) = −5536, uint8(300) = 44 were checked with static_assert in avr-g++.
import { expect, test } from "vitest";
import { sample } from "../../../../test/sample.ts";
import { seededRandom } from "../../../base/index.ts";
import {
  type ArithmeticOperator,
  commonInteger,
  compareIntegers,
  floatToInteger,
  hold,
  integerOperation,
  integerToFloat,
  numeric,
  shiftOperation,
} from "./arithmetic.ts";
import { type IntegerName, type IntegerType, integerFacts } from "./types.ts";

const type = (name: IntegerName): IntegerType => ({ kind: "integer", name });
const wide: readonly IntegerName[] = ["int", "unsigned int", "long", "unsigned long"];

/** The value that a type keeps of a whole number. */
function kept(value: bigint, name: IntegerName): bigint {
  const { bits, isSigned } = integerFacts[name];
  return isSigned ? BigInt.asIntN(bits, value) : BigInt.asUintN(bits, value);
}

const wraps: [value: number, name: IntegerName, held: number][] = [
  [40000, "int", -25536],
  [60 * 1000, "int", -5536],
  [300, "unsigned char", 44],
  [200, "char", -56],
  [-1, "unsigned int", 65535],
  [65536, "unsigned int", 0],
  [2, "bool", 1],
  [0, "bool", 0],
  [2147483648, "long", -2147483648],
];
for (const [value, name, held] of wraps)
  test(`${value} as ${name} is ${held}`, () => expect(numeric(hold(value, type(name)), type(name))).toBe(held));
test("an unsigned long keeps its value through being held as signed bits", () =>
  expect(numeric(hold(4294967295, type("unsigned long")), type("unsigned long"))).toBe(4294967295));

test("all operators as in unlimited numbers, cut to the width", () => {
  const random = seededRandom(1, "arithmetic");
  for (let n = 0; n < sample(4000, 400_000); n += 1) {
    const name = wide[random.int(0, 3)]!;
    const t = type(name);
    const edge = [0, 1, -1, 2, 32767, -32768, 65535, 2147483647, -2147483648];
    const draw = () => hold(random.int(0, 2) === 0 ? edge[random.int(0, 8)]! : random.int(0, 0xffffffff) | 0, t);
    const [a, b] = [draw(), draw()];
    const [x, y] = [BigInt(numeric(a, t)), BigInt(numeric(b, t))];
    const exact: Record<ArithmeticOperator, () => bigint> = {
      "+": () => x + y,
      "-": () => x - y,
      "*": () => x * y,
      "/": () => x / y,
      "%": () => x % y,
      "&": () => x & y,
      "|": () => x | y,
      "^": () => x ^ y,
    };
    for (const [operator, compute] of Object.entries(exact)) {
      const result = integerOperation(operator as ArithmeticOperator, a, b, t);
      if (y === 0n && (operator === "/" || operator === "%")) expect(result).toBeNull();
      else expect(BigInt(numeric(result!, t)), `${name}: ${x} ${operator} ${y}`).toBe(kept(compute(), name));
    }
    expect(compareIntegers("<", a, b, t)).toBe(x < y);
    expect(compareIntegers(">=", a, b, t)).toBe(x >= y);
    const steps = random.int(0, integerFacts[name].bits - 1);
    expect(BigInt(numeric(shiftOperation("<<", a, steps, t), t))).toBe(kept(x << BigInt(steps), name));
    expect(BigInt(numeric(shiftOperation(">>", a, steps, t), t))).toBe(kept(x >> BigInt(steps), name));
    expect(integerToFloat(a, t)).toBe(Math.fround(Number(x)));
  }
});

// C++11, section 5, paragraph 9, with 16-bit int: an unsigned int fits into long, an unsigned short does not fit into int.
const common: [a: IntegerName, b: IntegerName, together: IntegerName][] = [
  ["char", "unsigned char", "int"],
  ["bool", "bool", "int"],
  ["short", "int", "int"],
  ["unsigned short", "int", "unsigned int"],
  ["int", "unsigned int", "unsigned int"],
  ["unsigned int", "long", "long"],
  ["long", "unsigned long", "unsigned long"],
  ["unsigned char", "unsigned int", "unsigned int"],
  ["char", "long", "long"],
];
for (const [a, b, together] of common) {
  test(`${a} and ${b} meet in ${together}`, () => {
    expect(commonInteger(type(a), type(b)).name).toBe(together);
    expect(commonInteger(type(b), type(a)).name).toBe(together);
  });
}

const cut: [value: number, name: IntegerName, whole: number][] = [
  [3.99, "int", 3],
  [-3.99, "int", -3],
  [0.5, "bool", 1],
  [300.7, "unsigned char", 44],
  [-1, "unsigned int", 65535],
  [4294967040, "unsigned long", 4294967040],
];
for (const [value, name, whole] of cut)
  test(`${value} cut to ${name} is ${whole}`, () => expect(numeric(floatToInteger(value, type(name)), type(name))).toBe(whole));
