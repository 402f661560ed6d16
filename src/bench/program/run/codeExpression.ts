// Code for an expression by the way its value is wanted: of whatever kind its type has, or only for its effect.
//
// Numbers, conditions, floats and things have a file each. What runs only sometimes (the right side of &&, the arms of ?:) adds
// its own cycles; everything else is added by the statement in one piece.
// Does not know: statements, how calls are made.
import type { Expression } from "../check/tree.ts";
import { cellKind } from "../check/types.ts";
import { codeCall, codeChangeText, codeLibrary } from "./codeCall.ts";
import { codeFloat } from "./codeFloat.ts";
import { codeInt } from "./codeInt.ts";
import { codePlace, codePut, finder } from "./codePlace.ts";
import type { Coder, Thing } from "./coder.ts";
import { codeTest } from "./codeTest.ts";
import { codeThing } from "./codeThing.ts";
import { cyclesOf } from "./costs.ts";

/** A value of whatever kind its type has. */
export function codeValue(c: Coder, e: Expression): Thing {
  if (e.type.kind === "record" || e.type.kind === "void") return codeEffect(c, e);
  const kind = cellKind(e.type);
  return kind === "int" ? codeInt(c, e) : kind === "float" ? codeFloat(c, e) : codeThing(c, e);
}

/** Evaluates for its effect. */
export function codeEffect(c: Coder, e: Expression): () => void {
  if (e.op === "assign" && e.type.kind === "record") return codePut(c, codePlace(c, e.place), e.type, e.value);
  if (e.op === "record") return finder(codePlace(c, e.place));
  if (e.op === "comma" && e.type.kind === "void") return codeEffect(c, e.first);
  if (e.op === "choose" && (e.type.kind === "void" || e.type.kind === "record")) {
    const test = codeTest(c, e.test);
    const yes = codeEffect(c, e.yes);
    const no = codeEffect(c, e.no);
    return () => (test() ? yes() : no());
  }
  if (e.op === "call") return codeCall(c, e, false);
  if (e.op === "library") return codeLibrary(c, e);
  if (e.op === "changeText") return codeChangeText(c, e);
  if (e.type.kind === "unknown" || e.type.kind === "void") return () => undefined;
  return codeValue(c, e);
}

/** Adds the cycles of an expression that does not always run. */
export function withCycles<T>(c: Coder, e: Expression, code: () => T): () => T {
  const cycles = cyclesOf(e, c.how);
  if (cycles === 0) return code;
  const { time } = c.m.clock;
  return () => {
    time[0] = time[0]! + cycles;
    return code();
  };
}
