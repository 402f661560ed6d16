// Code that changes a whole number where it lies: += and its kin, ++ and --, and the letters of a String.
//
// The value comes first, then the place, once.
// Does not know: plain assignment.
import { floatOperation, floatToInteger, hold, integerOperation, integerToFloat, shiftOperation } from "../check/arithmetic.ts";
import type { Expression, Place } from "../check/tree.ts";
import { heldType, type IntegerType } from "../check/types.ts";
import { codeFloat } from "./codeFloat.ts";
import { codeInt } from "./codeInt.ts";
import { codePlace, finder } from "./codePlace.ts";
import type { Coder, Num } from "./coder.ts";
import { broken } from "./halt.ts";

/** place op= value. The value comes first, then the place once. */
export function codeCompound(c: Coder, e: Expression & { op: "compound" }): Num {
  const { ints: I } = c.m;
  const held = heldType(e.type) as IntegerType;
  if (e.place.at === "letter") {
    const load: Expression = { op: "load", type: e.type, place: e.place };
    const type = e.inType as IntegerType;
    const now = codeInt(c, load);
    const value = codeInt(c, e.value);
    return assignLetter(c, e.place, () => hold(integerOperation(e.operator as "+", now(), value(), type) ?? 0, held));
  }
  const spot = codePlace(c, e.place);
  const find = finder(spot);
  const { inType, operator, line } = e;
  if (inType.kind === "float") {
    const value = codeFloat(c, e.value);
    return () => {
      const v = value();
      const cell = find();
      const result = floatOperation(operator as "+", integerToFloat(I[cell]!, held), v) ?? 0;
      const next = floatToInteger(result, held);
      I[cell] = next;
      return next;
    };
  }
  const value = codeInt(c, e.value);
  if (operator === "<<" || operator === ">>") {
    return () => {
      const v = value();
      const cell = find();
      const next = hold(shiftOperation(operator, I[cell]!, v, inType), held);
      I[cell] = next;
      return next;
    };
  }
  if (
    typeof spot === "number" &&
    (operator === "+" || operator === "-") &&
    (held.name === "int" || held.name === "long" || held.name === "unsigned long")
  ) {
    const shift = held.name === "int" ? 16 : 0;
    if (operator === "+") return () => (I[spot] = ((I[spot]! + value()) << shift) >> shift);
    return () => (I[spot] = ((I[spot]! - value()) << shift) >> shift);
  }
  return () => {
    const v = value();
    const cell = find();
    const result = integerOperation(operator, I[cell]!, v, inType) ?? broken(line, "program.divisionByZero");
    const next = hold(result, held);
    I[cell] = next;
    return next;
  };
}

export function codeIntStep(c: Coder, e: Expression & { op: "step" }): Num {
  const { ints: I } = c.m;
  const held = heldType(e.type) as IntegerType;
  const { by, after } = e;
  if (e.place.at === "letter") {
    const load: Expression = { op: "load", type: e.type, place: e.place };
    const now = codeInt(c, load);
    const put = assignLetter(c, e.place, () => hold(now() + by, held));
    return () => hold(put() - (after ? by : 0), held);
  }
  const spot = codePlace(c, e.place);
  if (typeof spot === "number" && held.name === "int") {
    if (after) {
      return () => {
        const v = I[spot]!;
        I[spot] = ((v + by) << 16) >> 16;
        return v;
      };
    }
    return () => (I[spot] = ((I[spot]! + by) << 16) >> 16);
  }
  const find = finder(spot);
  return () => {
    const cell = find();
    const v = I[cell]!;
    const next = hold(v + by, held);
    I[cell] = next;
    return after ? v : next;
  };
}

const lettersOf = (text: unknown) => text as string;

export function codeLetter(c: Coder, place: Place & { at: "letter" }): Num {
  const { things: O } = c.m;
  const text = finder(codePlace(c, place.text));
  const index = codeInt(c, place.index);
  // Outside the text the class gives 0.
  return () => ((lettersOf(O[text()]).charCodeAt(index()) || 0) << 24) >> 24;
}

export function assignLetter(c: Coder, place: Place & { at: "letter" }, value: Num): Num {
  const { things: O } = c.m;
  const find = finder(codePlace(c, place.text));
  const index = codeInt(c, place.index);
  return () => {
    const v = value();
    const cell = find();
    const text = lettersOf(O[cell]);
    const i = index();
    if (i < text.length) O[cell] = text.slice(0, i) + String.fromCharCode(v & 255) + text.slice(i + 1);
    return v;
  };
}
