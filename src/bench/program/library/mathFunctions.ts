// Numbers: chance, mapping, and the C functions of math.h in the chip's 32-bit floats.
//
// random() follows avr-libc: Park and Miller's minimal standard generator with seed 1 after reset ("Random number generators:
// good ones are hard to find", Communications of the ACM 31, 1988), so the board draws the same numbers after each reset.
// Does not know: where the numbers come from.
import type { Machine } from "../run/machine.ts";
import { define, type LibraryFunction } from "./define.ts";

const toLong = (n: number) => n | 0;

/** The next of Park and Miller's numbers: 16807·x mod 2^31−1. */
function nextRandom(m: Machine): number {
  m.pins.effects += 1;
  const x = m.luck === 0 ? 123459876 : m.luck;
  const high = Math.trunc(x / 127773);
  const low = x % 127773;
  let next = (16807 * low - 2836 * high) | 0;
  if (next < 0) next += 0x7fffffff;
  m.luck = next;
  return next & 0x7fffffff;
}

function map(x: number, fromLow: number, fromHigh: number, toLow: number, toHigh: number): number {
  const divisor = toLong(fromHigh - fromLow);
  // The chip's division by zero gives −1 for a positive dividend and 1 for a negative one; map() hides it from the program.
  const product = Math.imul(toLong(x - fromLow), toLong(toHigh - toLow));
  const quotient = divisor === 0 ? (product < 0 ? 1 : -1) : Math.trunc(product / divisor);
  return toLong(quotient + toLow);
}

const one = (name: string, f: (x: number) => number, cycles: number): LibraryFunction =>
  define(name, "double", "double", { pure: true, cycles }, (_m, x: number) => Math.fround(f(x)));
const two = (name: string, f: (x: number, y: number) => number, cycles: number): LibraryFunction =>
  define(name, "double", "double double", { pure: true, cycles }, (_m, x: number, y: number) => Math.fround(f(x, y)));

export const mathFunctions: readonly LibraryFunction[] = [
  define("random", "long", "long", { cycles: 1440 }, (m, most: number) => (most === 0 ? 0 : nextRandom(m) % most)),
  define("random", "long", "long long", { cycles: 1500 }, (m, least: number, most: number) => {
    if (least >= most) return least;
    const span = toLong(most - least);
    return span === 0 ? least : toLong((nextRandom(m) % span) + least);
  }),
  define("randomSeed", "void", "ulong", { cycles: 20 }, (m, seed: number) => {
    m.pins.effects += 1;
    if (seed !== 0) m.luck = seed;
  }),
  define(
    "map",
    "long",
    "long long long long long",
    { pure: true, cycles: 770 },
    (_m, x: number, a: number, b: number, c: number, d: number) => map(x, a, b, c, d),
  ),
  define("word", "unsigned", "byte byte", { pure: true, cycles: 4 }, (_m, high: number, low: number) => (high << 8) | low),
  one("sin", Math.sin, 1690),
  one("cos", Math.cos, 1820),
  one("tan", Math.tan, 2250),
  one("asin", Math.asin, 2440),
  one("acos", Math.acos, 2500),
  one("atan", Math.atan, 2300),
  one("sqrt", Math.sqrt, 472),
  one("exp", Math.exp, 2150),
  one("log", Math.log, 2000),
  one("log10", Math.log10, 2100),
  one("fabs", Math.abs, 10),
  one("floor", Math.floor, 55),
  one("ceil", Math.ceil, 55),
  one("trunc", Math.trunc, 50),
  one("cbrt", Math.cbrt, 3000),
  two("pow", Math.pow, 4800),
  two("fmod", (x, y) => x % y, 700),
  two("atan2", Math.atan2, 2930),
  two("hypot", Math.hypot, 860),
  two("fmin", Math.min, 60),
  two("fmax", Math.max, 60),
  define("isnan", "int", "double", { pure: true, cycles: 12 }, (_m, x: number) => (Number.isNaN(x) ? 1 : 0)),
  define("isinf", "int", "double", { pure: true, cycles: 12 }, (_m, x: number) =>
    Math.abs(x) === Number.POSITIVE_INFINITY ? 1 : 0,
  ),
  define("labs", "long", "long", { pure: true, cycles: 14 }, (_m, x: number) => toLong(Math.abs(x))),
  define("rand", "int", "", { cycles: 1150 }, (m) => nextRandom(m) & 0x7fff),
  define("srand", "void", "unsigned", { cycles: 8 }, (m, seed: number) => {
    m.pins.effects += 1;
    m.luck = seed;
  }),
];
