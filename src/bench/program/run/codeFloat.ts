// Code for floats: 32 bits, rounded after each operation.
//
// Does not know: whole numbers, things.
import { floatOperation, integerToFloat } from "../check/arithmetic.ts";
import type { Expression } from "../check/tree.ts";
import { codeCall, codeLibrary } from "./codeCall.ts";
import { codeEffect, withCycles } from "./codeExpression.ts";
import { codeInt } from "./codeInt.ts";
import { codePlace, finder } from "./codePlace.ts";
import type { Coder, Num } from "./coder.ts";
import { codeTest } from "./codeTest.ts";

export function codeFloat(c: Coder, e: Expression): Num {
  const { floats: F } = c.m;
  switch (e.op) {
    case "number": {
      const { value } = e;
      return () => value;
    }
    case "load": {
      const spot = codePlace(c, e.place);
      return typeof spot === "number" ? () => F[spot]! : () => F[spot()]!;
    }
    case "assign": {
      const value = codeFloat(c, e.value);
      const find = finder(codePlace(c, e.place));
      return () => {
        const v = value();
        F[find()] = v;
        return v;
      };
    }
    case "compound": {
      const value = codeFloat(c, e.value);
      const find = finder(codePlace(c, e.place));
      const { operator } = e;
      return () => {
        const v = value();
        const cell = find();
        const result = floatOperation(operator as "+", F[cell]!, v) ?? 0;
        F[cell] = result;
        return result;
      };
    }
    case "step": {
      const find = finder(codePlace(c, e.place));
      const { by, after } = e;
      return () => {
        const cell = find();
        const v = F[cell]!;
        const next = Math.fround(v + by);
        F[cell] = next;
        return after ? v : next;
      };
    }
    case "negate": {
      const value = codeFloat(c, e.value);
      return () => -value();
    }
    case "arithmetic": {
      const x = codeFloat(c, e.left);
      const y = codeFloat(c, e.right);
      switch (e.operator) {
        case "+":
          return () => Math.fround(x() + y());
        case "-":
          return () => Math.fround(x() - y());
        case "*":
          return () => Math.fround(x() * y());
        default:
          return () => Math.fround(x() / y());
      }
    }
    case "convert": {
      if (e.from.kind === "float") return codeFloat(c, e.value);
      const value = codeInt(c, e.value);
      const { from } = e;
      return () => integerToFloat(value(), from);
    }
    case "choose": {
      const test = codeTest(c, e.test);
      const yes = withCycles(c, e.yes, codeFloat(c, e.yes));
      const no = withCycles(c, e.no, codeFloat(c, e.no));
      return () => (test() ? yes() : no());
    }
    case "comma": {
      const first = codeEffect(c, e.first);
      const then = codeFloat(c, e.second);
      return () => {
        first();
        return then();
      };
    }
    case "call":
      return codeCall(c, e, true) as Num;
    default:
      return codeLibrary(c, e as Expression & { op: "library" }) as Num;
  }
}
