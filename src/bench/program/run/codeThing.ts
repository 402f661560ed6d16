// Code for things that are no numbers: pointers, texts, servos.
//
// Does not know: numbers.
import type { Expression } from "../check/tree.ts";
import { codeCall, codeChangeText, codeLibrary } from "./codeCall.ts";
import { codeEffect, withCycles } from "./codeExpression.ts";
import { codeInt } from "./codeInt.ts";
import { codeAddress, codePlace, finder } from "./codePlace.ts";
import type { Coder, Thing } from "./coder.ts";
import { codeTest } from "./codeTest.ts";
import type { Pointer } from "./machine.ts";

/** Pointers, texts, servos. */
export function codeThing(c: Coder, e: Expression): Thing {
  const { things: O } = c.m;
  switch (e.op) {
    case "text": {
      const { bytes } = e;
      return () => bytes;
    }
    case "null":
    case "number":
      return () => null;
    case "function": {
      const pointer = { index: e.index };
      return () => pointer;
    }
    case "load": {
      const spot = codePlace(c, e.place);
      return typeof spot === "number" ? () => O[spot] : () => O[spot()];
    }
    case "assign": {
      const value = codeThing(c, e.value);
      const find = finder(codePlace(c, e.place));
      return () => {
        const v = value();
        O[find()] = v;
        return v;
      };
    }
    case "address":
      return codeAddress(c, e.place);
    case "movePointer": {
      const pointer = codeThing(c, e.pointer) as () => Pointer | null;
      const count = codeInt(c, e.count);
      const step = e.stride * e.sign;
      return () => movedBy(pointer(), count() * step);
    }
    case "advance":
    case "step": {
      const find = finder(codePlace(c, e.place));
      const count = e.op === "advance" ? codeInt(c, e.count) : () => 1;
      const step = e.stride * (e.op === "advance" ? e.sign : e.by);
      const after = e.op === "step" && e.after;
      return () => {
        const by = count() * step;
        const cell = find();
        const before = O[cell] as Pointer | null;
        const moved = movedBy(before, by);
        O[cell] = moved;
        return after ? before : moved;
      };
    }
    case "choose": {
      const test = codeTest(c, e.test);
      const yes = withCycles(c, e.yes, codeThing(c, e.yes));
      const no = withCycles(c, e.no, codeThing(c, e.no));
      return () => (test() ? yes() : no());
    }
    case "comma": {
      const first = codeEffect(c, e.first);
      const then = codeThing(c, e.second);
      return () => {
        first();
        return then();
      };
    }
    case "changeText":
      return codeChangeText(c, e);
    case "call":
      return codeCall(c, e, true);
    case "library":
      return codeLibrary(c, e);
    default:
      return () => null;
  }
}

function movedBy(p: Pointer | null, cells: number): Pointer | null {
  return p === null ? null : { at: p.at + cells, low: p.low, high: p.high };
}
