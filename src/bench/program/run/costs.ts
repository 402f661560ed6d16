// About how many cycles of the chip an expression takes.
//
// An estimate of what avr-gcc -Os makes: locals live in registers, globals are fetched and stored byte by byte (2 cycles each;
// AVR instruction set manual: lds, sts), wide arithmetic calls routines of libgcc. The figures of the routines were measured in
// simavr (reference/programs); the rest was fitted to its programs.
// Does not know: time, how code runs.
import type { Arithmetic, Expression, FunctionInfo, Place } from "../check/tree.ts";
import { bytesOf, heldType, type Type } from "../check/types.ts";

/** A branch after a test: taken or not. */
export const testCycles = 2;
/** The jump back to the beginning of a loop. */
export const roundCycles = 2;
export const returnCycles = 0;

/** call and ret, and the registers that the function saves. */
export function callCycles(f: FunctionInfo): number {
  const inRegisters = f.locals.reduce((sum, v) => sum + (v.inMemory ? 0 : bytesOf(v.type)), 0);
  return 8 + 4 * Math.min(16, inRegisters);
}

export function switchCycles(cases: number): number {
  return 3 * cases;
}

export function fillCycles(values: number): number {
  return 8 * values;
}

const widthOf = (type: Type) => bytesOf(heldType(type));

/** Cycles to reach a place, and to fetch or store it. */
function placeCycles(place: Place): { reach: number; perByte: number } {
  switch (place.at) {
    case "variable": {
      const { variable } = place;
      if (variable.storage === "local" || variable.storage === "parameter")
        return { reach: 0, perByte: variable.inMemory ? 2 : 0 };
      return { reach: 0, perByte: 2 };
    }
    case "index": {
      const array = placeCycles(place.array);
      if (place.index.op === "number") return { reach: array.reach, perByte: 2 };
      return { reach: array.reach + cyclesOf(place.index) + 6 + 2 * Math.max(0, widthOf(place.type) - 1), perByte: 2 };
    }
    case "field": {
      const record = placeCycles(place.record);
      return { reach: record.reach, perByte: 2 };
    }
    case "pointer":
      return { reach: cyclesOf(place.pointer) + 1, perByte: 2 };
    case "temporary":
      return { reach: cyclesOf(place.value), perByte: 0 };
    case "after": {
      const inner = placeCycles(place.place);
      return { reach: cyclesOf(place.effect) + inner.reach, perByte: inner.perByte };
    }
    default:
      return { reach: 4, perByte: 2 };
  }
}

function operationCycles(operator: string, type: Arithmetic, right: Expression): number {
  if (type.kind === "float") return { "+": 110, "-": 112, "*": 145, "/": 480 }[operator] ?? 110;
  const bytes = widthOf(type);
  switch (operator) {
    case "*":
      if (right.op === "number" && isPowerOfTwo(right.value)) return bytes * Math.log2(Math.max(1, right.value));
      return bytes === 2 ? 8 : 55;
    case "/":
    case "%":
      if (type.name.startsWith("unsigned") && right.op === "number" && isPowerOfTwo(right.value))
        return operator === "%" ? bytes : bytes * 3;
      return bytes === 2 ? 230 : 680;
    default:
      return bytes;
  }
}

function isPowerOfTwo(n: number): boolean {
  return n > 0 && (n & (n - 1)) === 0;
}

/** Cycles of an expression, without what calls and library functions add themselves and without what runs only sometimes. */
export function cyclesOf(e: Expression): number {
  switch (e.op) {
    case "number":
      return 0;
    case "load": {
      const { reach, perByte } = placeCycles(e.place);
      return reach + perByte * widthOf(e.type);
    }
    case "record":
      return placeCycles(e.place).reach;
    case "assign": {
      const { reach, perByte } = placeCycles(e.place);
      return (
        cyclesOf(e.value) + reach + Math.max(1, perByte) * (e.type.kind === "record" ? 2 * bytesOf(e.type) : widthOf(e.type))
      );
    }
    case "compound": {
      const { reach, perByte } = placeCycles(e.place);
      return cyclesOf(e.value) + reach + 2 * perByte * widthOf(e.type) + operationCycles(e.operator, e.inType, e.value);
    }
    case "step":
    case "advance": {
      const { reach, perByte } = placeCycles(e.place);
      return reach + 2 * perByte * widthOf(e.type) + 2;
    }
    case "negate":
    case "complement":
      return cyclesOf(e.value) + widthOf(e.type);
    case "arithmetic":
      return cyclesOf(e.left) + cyclesOf(e.right) + operationCycles(e.operator, e.type, e.right);
    case "shift": {
      const bytes = widthOf(e.type);
      if (e.right.op === "number") return cyclesOf(e.left) + bytes * (e.right.value % 8) + 2;
      return cyclesOf(e.left) + cyclesOf(e.right) + 5 + 6 * bytes;
    }
    case "compare":
      return cyclesOf(e.left) + cyclesOf(e.right) + (e.inType.kind === "float" ? 50 : widthOf(e.inType));
    case "comparePointers":
      return cyclesOf(e.left) + cyclesOf(e.right) + 2;
    case "not":
    case "isSet":
      return cyclesOf(e.value) + 1;
    case "and":
    case "or":
      return cyclesOf(e.left) + 2;
    case "convert": {
      const value = cyclesOf(e.value);
      if ((e.from.kind === "float") !== (e.type.kind === "float")) return value + (e.from.kind === "float" ? 70 : 90);
      return value + Math.max(0, widthOf(e.type) - widthOf(e.from));
    }
    case "choose":
      return cyclesOf(e.test) + 2;
    case "comma":
      return cyclesOf(e.first) + cyclesOf(e.second);
    case "call":
    case "library":
    case "changeText":
      return e.values.reduce((sum, v) => sum + cyclesOf(v) + 2, 0);
    case "address":
      return 2 + placeCycles(e.place).reach;
    case "movePointer":
      return cyclesOf(e.pointer) + cyclesOf(e.count) + 4;
    case "pointerDifference":
      return cyclesOf(e.left) + cyclesOf(e.right) + 4;
    default:
      return 2;
  }
}
