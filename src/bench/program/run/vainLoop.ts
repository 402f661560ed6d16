// Loops that only count: avr-gcc -Os leaves them out, so they take no time.
//
// `for (long i = 0; i < 100000; i++);` was meant to wait. The compiler sees that nothing comes of it but the counter's last value,
// puts that there and goes on (checked with avr-g++ 5.4 and simavr). A volatile counter is counted, and so is everything that
// this file is not sure of.
// Does not know: what a class should be told (explain/seldomMeant.ts).
import { numeric } from "../check/arithmetic.ts";
import type { Expression, Statement, Variable } from "../check/tree.ts";
import { heldType, type IntegerType, integerFacts } from "../check/types.ts";

export interface VainLoop {
  readonly counter: Variable;
  /** @param start held. @returns the held value behind the loop, or null if it has to be run. */
  readonly last: (start: number) => number | null;
  readonly inner: VainLoop | null;
}

/** Stores the counter's last value. */
export const vainCycles = 4;

/** @returns null where the loop may do something. */
export function vainLoop(s: Statement & { do: "for" }): VainLoop | null {
  const { test, step } = s;
  if (test === null || step === null || test.op !== "compare" || test.inType.kind !== "integer") return null;
  const counter = plainVariable(test.left);
  const limit = test.right.op === "number" ? numeric(test.right.value, test.inType) : null;
  const by = stepOf(step, counter);
  if (counter === null || limit === null || by === null) return null;
  const inner = bodyOf(s.body);
  if (inner === "something" || (inner !== null && inner.counter === counter)) return null;
  const type = heldType(counter.type) as IntegerType;
  const { bits, isSigned } = integerFacts[type.name];
  const least = isSigned ? -(2 ** (bits - 1)) : 0;
  const most = 2 ** (isSigned ? bits - 1 : bits) - 1;
  const { operator } = test;
  const last = (start: number): number | null => {
    const from = numeric(start, type);
    // A negative number that is compared without its sign is another one.
    if (from < 0 && !integerFacts[(test.inType as IntegerType).name].isSigned) return null;
    const rounds = roundsOf(operator, from, limit, by);
    if (rounds === null) return null;
    const end = from + rounds * by;
    return end < least || end > most ? null : end | 0;
  };
  return { counter, last, inner };
}

/** A loop in the loop that only counts too, nothing, or something. */
function bodyOf(s: Statement): VainLoop | null | "something" {
  if (s.do === "for" && s.first !== null) return setsOnly(s) ?? "something";
  if (s.do !== "block") return "something";
  if (s.list.length === 0) return null;
  return s.list.length === 1 ? bodyOf(s.list[0]!) : "something";
}

/** The inner loop must begin at the same number each time: then its counter ends at the same one. */
function setsOnly(s: Statement & { do: "for" }): VainLoop | null {
  const found = vainLoop(s);
  const first = s.first;
  if (found === null || first?.do !== "expression" || first.value.op !== "assign") return null;
  const { place, value } = first.value;
  if (place.at !== "variable" || place.variable !== found.counter || value.op !== "number") return null;
  const end = found.last(value.value);
  return end === null ? null : { ...found, last: () => end };
}

/** A whole number that lives in a register, as it is or widened. */
function plainVariable(e: Expression): Variable | null {
  if (e.op === "convert" && e.from.kind === "integer") return widens(e) ? plainVariable(e.value) : null;
  if (e.op !== "load" || e.place.at !== "variable") return null;
  const { variable } = e.place;
  return heldType(variable.type).kind === "integer" && !variable.inMemory && !variable.isReference ? variable : null;
}

function widens(e: Expression & { op: "convert" }): boolean {
  const to = heldType(e.type);
  return to.kind === "integer" && e.from.kind === "integer" && integerFacts[to.name].bits >= integerFacts[e.from.name].bits;
}

function stepOf(e: Expression, counter: Variable | null): number | null {
  if ((e.op !== "step" && e.op !== "compound") || e.place.at !== "variable" || e.place.variable !== counter) return null;
  if (e.op === "step") return e.by;
  if (e.value.op !== "number" || e.inType.kind !== "integer" || (e.operator !== "+" && e.operator !== "-")) return null;
  return numeric(e.value.value, e.inType) * (e.operator === "+" ? 1 : -1);
}

/** How often the test holds, in unlimited numbers; null if it holds for ever. */
function roundsOf(operator: string, from: number, limit: number, by: number): number | null {
  const to = operator === "<=" ? limit + 1 : operator === ">=" ? limit - 1 : limit;
  const isUp = operator === "<" || operator === "<=";
  const isDown = operator === ">" || operator === ">=";
  if (isUp) return from >= to ? 0 : by > 0 ? Math.ceil((to - from) / by) : null;
  if (isDown) return from <= to ? 0 : by < 0 ? Math.ceil((from - to) / -by) : null;
  if (operator !== "!=" || by === 0 || (limit - from) % by !== 0 || (limit - from) / by < 0) return null;
  return (limit - from) / by;
}
