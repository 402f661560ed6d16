// Code for expressions: one function for each way a value is wanted: a number, a condition, a thing, or only its effect.
//
// Costs: what runs only sometimes (the right side of &&, the arms of ?:) adds its own cycles; everything else is added by the
// statement in one piece.
// Does not know: statements, how calls are made.
import { floatOperation, floatToInteger, hold, integerOperation, integerToFloat, shiftOperation } from "../check/arithmetic.ts";
import type { Arithmetic, Expression, Place } from "../check/tree.ts";
import { cellKind, heldType, type IntegerType } from "../check/types.ts";
import { codeCall, codeChangeText, codeLibrary } from "./codeCall.ts";
import { codeCompare, compareNumbersCode } from "./codeCompare.ts";
import { codeArithmetic, codeShift, type Operand } from "./codeInteger.ts";
import { codeAddress, codePlace, codePut, finder } from "./codePlace.ts";
import type { Coder, Num, Test, Thing } from "./coder.ts";
import { cyclesOf } from "./costs.ts";
import { broken } from "./halt.ts";
import type { Pointer } from "./machine.ts";

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

export function operand(c: Coder, e: Expression): Operand {
  const constant = e.op === "number" ? e.value : null;
  const spot = e.op === "load" && e.place.at !== "letter" && cellKind(e.type) === "int" ? codePlace(c, e.place) : null;
  return { code: codeInt(c, e), constant, cell: typeof spot === "number" ? spot : null };
}

const lettersOf = (text: unknown) => text as string;

function codeLetter(c: Coder, place: Place & { at: "letter" }): Num {
  const { things: O } = c.m;
  const text = finder(codePlace(c, place.text));
  const index = codeInt(c, place.index);
  // Outside the text the class gives 0.
  return () => ((lettersOf(O[text()]).charCodeAt(index()) || 0) << 24) >> 24;
}

export function codeInt(c: Coder, e: Expression): Num {
  const { ints: I, floats: F, things: O } = c.m;
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
      // Only places of other kinds are left: their cells hold no number.
      return () => F.length * 0 + O.length * 0;
  }
}

/** Adds the cycles of an expression that does not always run. */
function withCycles<T>(c: Coder, e: Expression, code: () => T): () => T {
  const cycles = cyclesOf(e, c.how);
  if (cycles === 0) return code;
  const { time } = c.m.clock;
  return () => {
    time[0] = time[0]! + cycles;
    return code();
  };
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

function assignLetter(c: Coder, place: Place & { at: "letter" }, value: Num): Num {
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

/** place op= value. The value comes first, then the place once. */
function codeCompound(c: Coder, e: Expression & { op: "compound" }): Num {
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

function codeIntStep(c: Coder, e: Expression & { op: "step" }): Num {
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
      if (e.from.kind === "float" && e.type.name === "bool") {
        const value = codeFloat(c, e.value);
        return () => value() !== 0;
      }
      const value = e.type.name === "bool" ? codeInt(c, e.value) : codeInt(c, e);
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
