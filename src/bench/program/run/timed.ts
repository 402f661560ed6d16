// Whole numbers that may move with time: a value now, and how much it changes with each tick of millis or micros.
//
// Arithmetic modulo 2^n keeps such numbers simple: sums and cuts to other widths change nothing, and a comparison turns only
// when the moving side meets the other or wraps. Each operation reports after how many ticks its answer may be another one.
// Does not know: where the numbers come from.
import {
  type ArithmeticOperator,
  type CompareOperator,
  compareIntegers,
  hold,
  integerOperation,
  numeric,
} from "../check/arithmetic.ts";
import { type IntegerType, integerFacts } from "../check/types.ts";

export type Source = "millis" | "micros" | null;

export interface Timed {
  /** Held, as of now. */
  readonly value: number;
  /** Change with each tick of the source. */
  readonly slope: number;
  readonly source: Source;
}

/** Called with the ticks from now at which an answer may change. */
export type Limit = (source: Source, ticks: number) => void;

export function still(value: number): Timed {
  return { value, slope: 0, source: null };
}

function range(type: IntegerType): { least: number; most: number; size: number } {
  const { bits, isSigned } = integerFacts[type.name];
  const size = 2 ** bits;
  return isSigned ? { least: -size / 2, most: size / 2 - 1, size } : { least: 0, most: size - 1, size };
}

/** Ticks until a number that moves by one meets `target`, going round; never 0. */
function ticksTo(target: number, from: number, slope: 1 | -1, size: number): number {
  const distance = ((((target - from) * slope) % size) + size) % size;
  return distance === 0 ? size : distance;
}

const isUnit = (slope: number): slope is 1 | -1 => slope === 1 || slope === -1;

/** Ticks until a moving number leaves the range of its type and wraps. */
function ticksToWrap(t: Timed, type: IntegerType): number {
  const { least, most } = range(type);
  const now = numeric(t.value, type);
  return t.slope === 1 ? most + 1 - now : t.slope === -1 ? now - least + 1 : 1;
}

export function convertTimed(t: Timed, from: IntegerType, to: IntegerType, limit: Limit): Timed {
  if (t.slope === 0) return still(hold(t.value, to));
  if (to.name === "bool") return still(compareTimed("!=", t, still(0), from, limit) ? 1 : 0);
  // A narrower or equal width keeps moving in the same way; a wider one only until the narrow one wraps.
  if (integerFacts[to.name].bits > integerFacts[from.name].bits) limit(t.source, ticksToWrap(t, from));
  return { ...t, value: hold(t.value, to) };
}

/** @returns null for a division by zero. */
export function operateTimed(operator: ArithmeticOperator, l: Timed, r: Timed, type: IntegerType, limit: Limit): Timed | null {
  const value = integerOperation(operator, l.value, r.value, type);
  if (value === null) return null;
  if (l.slope === 0 && r.slope === 0) return still(value);
  const forOneTick = (): Timed => {
    if (l.slope !== 0) limit(l.source, 1);
    if (r.slope !== 0) limit(r.source, 1);
    return still(value);
  };
  if (l.slope !== 0 && r.slope !== 0) return forOneTick();
  const source = l.source ?? r.source;
  if (operator === "+") return { value, slope: l.slope + r.slope, source };
  if (operator === "-") return { value, slope: l.slope - r.slope, source };
  const divisor = numeric(r.value, type);
  const now = numeric(l.value, type);
  if ((operator !== "/" && operator !== "%") || r.slope !== 0 || !isUnit(l.slope) || now < 0 || divisor < 1) return forOneTick();
  // Within one multiple of the divisor the quotient stands and the remainder moves along.
  const rest = now % divisor;
  limit(source, Math.min(l.slope === 1 ? divisor - rest : rest + 1, ticksToWrap(l, type)));
  return operator === "/" ? still(value) : { value, slope: l.slope, source };
}

/** For each comparison of a rising number a with b: the values of a, beside its lowest, at which the answer changes. */
const turnsRising: Readonly<Record<CompareOperator, (b: number) => readonly number[]>> = {
  "<": (b) => [b],
  ">=": (b) => [b],
  "<=": (b) => [b + 1],
  ">": (b) => [b + 1],
  "==": (b) => [b, b + 1],
  "!=": (b) => [b, b + 1],
};
/** The same for a falling number, beside its highest. */
const turnsFalling: Readonly<Record<CompareOperator, (b: number) => readonly number[]>> = {
  "<": (b) => [b - 1],
  ">=": (b) => [b - 1],
  "<=": (b) => [b],
  ">": (b) => [b],
  "==": (b) => [b, b - 1],
  "!=": (b) => [b, b - 1],
};
const mirrored: Readonly<Record<CompareOperator, CompareOperator>> = {
  "==": "==",
  "!=": "!=",
  "<": ">",
  ">": "<",
  "<=": ">=",
  ">=": "<=",
};

export function compareTimed(operator: CompareOperator, l: Timed, r: Timed, type: IntegerType, limit: Limit): boolean {
  const answer = compareIntegers(operator, l.value, r.value, type);
  if (l.slope === 0 && r.slope === 0) return answer;
  const [moving, other, seen] = l.slope !== 0 ? [l, r, operator] : [r, l, mirrored[operator]];
  if (other.slope !== 0 || !isUnit(moving.slope)) {
    limit(l.source, 1);
    limit(r.source, 1);
    return answer;
  }
  const { least, most, size } = range(type);
  const a = numeric(moving.value, type);
  const b = numeric(other.value, type);
  const turns = moving.slope === 1 ? [...turnsRising[seen](b), least] : [...turnsFalling[seen](b), most];
  limit(moving.source, Math.min(...turns.map((turn) => ticksTo(turn, a, moving.slope as 1 | -1, size))));
  return answer;
}
