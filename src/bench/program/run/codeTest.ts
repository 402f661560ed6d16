// Code for conditions: true or false, as JavaScript has them.
//
// Does not know: what follows from them.
import type { Expression } from "../check/tree.ts";
import { heldType, sameType, types } from "../check/types.ts";
import { codeCompare, compareNumbersCode } from "./codeCompare.ts";
import { withCycles } from "./codeExpression.ts";
import { codeFloat } from "./codeFloat.ts";
import { codeInt, operand } from "./codeInt.ts";
import type { Coder, Test } from "./coder.ts";
import { codeThing } from "./codeThing.ts";
import type { Pointer } from "./machine.ts";

export function codeTest(c: Coder, e: Expression): Test {
  const { ints: I } = c.m;
  switch (e.op) {
    case "number": {
      const yes = e.value !== 0;
      return () => yes;
    }
    case "compare": {
      if (e.inType.kind === "float") return compareNumbersCode(e.operator, codeFloat(c, e.left), codeFloat(c, e.right));
      return codeCompare(I, e.operator, operand(c, e.left), operand(c, e.right), e.inType.name === "unsigned long");
    }
    case "comparePointers": {
      const left = codeThing(c, e.left) as () => Pointer | null;
      const right = codeThing(c, e.right) as () => Pointer | null;
      return compareNumbersCode(
        e.operator,
        () => addressOf(left()),
        () => addressOf(right()),
      );
    }
    case "not": {
      const value = codeTest(c, e.value);
      return () => !value();
    }
    case "and": {
      const left = codeTest(c, e.left);
      const right = withCycles(c, e.right, codeTest(c, e.right));
      return () => left() && right();
    }
    case "or": {
      const left = codeTest(c, e.left);
      const right = withCycles(c, e.right, codeTest(c, e.right));
      return () => left() || right();
    }
    case "isSet": {
      if (e.value.type.kind === "serial") return () => true;
      const thing = codeThing(c, e.value);
      return () => thing() !== null;
    }
    case "convert": {
      // To bool: not zero.
      const isBool = sameType(heldType(e.type), types.bool);
      if (isBool && e.from.kind === "float") {
        const value = codeFloat(c, e.value);
        return () => value() !== 0;
      }
      const value = codeInt(c, isBool ? e.value : e);
      return () => value() !== 0;
    }
    default: {
      const value = codeInt(c, e);
      return () => value() !== 0;
    }
  }
}

function addressOf(p: Pointer | { readonly index: number } | null): number {
  if (p === null) return 0;
  return "at" in p ? p.at : -1 - p.index;
}
