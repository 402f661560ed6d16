// Code for whole numbers.
//
// Does not know: floats, things.
import { floatToInteger, hold } from "../check/arithmetic.ts";
import type { Arithmetic, Expression } from "../check/tree.ts";
import { cellKind, heldType, type IntegerType } from "../check/types.ts";
import { codeArithmetic, codeShift, type Operand } from "./codeArithmetic.ts";
import { codeCall, codeChangeText, codeLibrary } from "./codeCall.ts";
import { assignLetter, codeCompound, codeIntStep, codeLetter } from "./codeChange.ts";
import { codeEffect, withCycles } from "./codeExpression.ts";
import { codeFloat } from "./codeFloat.ts";
import { codePlace } from "./codePlace.ts";
import type { Coder, Num } from "./coder.ts";
import { codeTest } from "./codeTest.ts";
import { codeThing } from "./codeThing.ts";
import type { Pointer } from "./machine.ts";

export function codeInt(c: Coder, e: Expression): Num {
  const { ints: I } = c.m;
  switch (e.op) {
    case "number": {
      const { value } = e;
      return () => value;
    }
    case "load": {
      if (e.place.at === "letter") return codeLetter(c, e.place);
      const spot = codePlace(c, e.place);
      return typeof spot === "number" ? () => I[spot]! : () => I[spot()]!;
    }
    case "assign": {
      if (e.place.at === "letter") return assignLetter(c, e.place, codeInt(c, e.value));
      const value = codeInt(c, e.value);
      const spot = codePlace(c, e.place);
      if (typeof spot === "number") {
        return () => {
          const v = value();
          I[spot] = v;
          return v;
        };
      }
      return () => {
        const v = value();
        I[spot()] = v;
        return v;
      };
    }
    case "compound":
      return codeCompound(c, e);
    case "step":
      return codeIntStep(c, e);
    case "negate": {
      const value = codeInt(c, e.value);
      const type = e.type as IntegerType;
      return () => hold(-value(), type);
    }
    case "complement": {
      const value = codeInt(c, e.value);
      const type = e.type as IntegerType;
      return () => hold(~value(), type);
    }
    case "arithmetic":
      return codeArithmetic(I, e.operator, operand(c, e.left), operand(c, e.right), e.type as IntegerType, e.line);
    case "shift":
      return codeShift(e.operator, operand(c, e.left), operand(c, e.right), e.type);
    case "compare":
    case "comparePointers":
    case "not":
    case "and":
    case "or":
    case "isSet": {
      const test = codeTest(c, e);
      return () => (test() ? 1 : 0);
    }
    case "convert":
      return codeToInt(c, e.value, e.from, heldType(e.type) as IntegerType);
    case "choose": {
      const test = codeTest(c, e.test);
      const yes = withCycles(c, e.yes, codeInt(c, e.yes));
      const no = withCycles(c, e.no, codeInt(c, e.no));
      return () => (test() ? yes() : no());
    }
    case "comma": {
      const first = codeEffect(c, e.first);
      const then = codeInt(c, e.second);
      return () => {
        first();
        return then();
      };
    }
    case "call":
      return codeCall(c, e, true) as Num;
    case "library":
      return codeLibrary(c, e) as Num;
    case "changeText": {
      const change = codeChangeText(c, e);
      return () => {
        change();
        return 1;
      };
    }
    case "pointerDifference": {
      const left = codeThing(c, e.left) as () => Pointer | null;
      const right = codeThing(c, e.right) as () => Pointer | null;
      const { stride } = e;
      return () => hold(Math.trunc(((left()?.at ?? 0) - (right()?.at ?? 0)) / stride), { kind: "integer", name: "int" });
    }
    default:
      // What has no number: the checker puts nothing else here.
      return () => 0;
  }
}

export function operand(c: Coder, e: Expression): Operand {
  const constant = e.op === "number" ? e.value : null;
  const spot = e.op === "load" && e.place.at !== "letter" && cellKind(e.type) === "int" ? codePlace(c, e.place) : null;
  return { code: codeInt(c, e), constant, cell: typeof spot === "number" ? spot : null };
}

function codeToInt(c: Coder, value: Expression, from: Arithmetic, to: IntegerType): Num {
  if (from.kind === "float") {
    const code = codeFloat(c, value);
    return () => floatToInteger(code(), to);
  }
  const code = codeInt(c, value);
  switch (to.name) {
    case "bool":
      return () => (code() === 0 ? 0 : 1);
    case "char":
    case "signed char":
      return () => (code() << 24) >> 24;
    case "unsigned char":
      return () => code() & 0xff;
    case "short":
    case "int":
      return from.name === "unsigned char" || from.name === "char" || from.name === "signed char" || from.name === "bool"
        ? code
        : () => (code() << 16) >> 16;
    case "unsigned short":
    case "unsigned int":
      return from.name === "unsigned char" || from.name === "bool" ? code : () => code() & 0xffff;
    default:
      // To 32 bits nothing changes: they are held as they are, and narrower ones in their range.
      return code;
  }
}
