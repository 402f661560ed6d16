// About how many cycles of the chip an expression takes.
//
// An estimate of what avr-gcc -Os makes: locals live in registers, globals are fetched and stored byte by byte (2 cycles each;
// AVR instruction set manual: lds, sts), wide arithmetic calls routines of libgcc. The figures of the routines were measured in
// simavr (reference/programs); the rest was fitted to its programs.
// Does not know: time, how code runs.
import type { Arithmetic, Expression, FunctionInfo, Place, Variable } from "../check/tree.ts";
import { bytesOf, heldType, type IntegerName, integerFacts, sameType, type Type, types } from "../check/types.ts";

/** A branch after a test: one cycle if it goes on, two if it jumps. */
export const testCycles = 1;
/** The branch back to the beginning of a loop; the test stands at the loop's end. */
export const roundCycles = 2;
export const returnCycles = 0;

/** call and ret, and the registers that the function saves. */
export function callCycles(f: FunctionInfo): number {
  // What lives across a call of its own must be kept in registers that are saved first: push and pop, 2 cycles each.
  const inRegisters = f.calls.size === 0 ? 0 : f.locals.reduce((sum, v) => sum + (v.inMemory ? 0 : bytesOf(v.type)), 0);
  return 8 + 4 * Math.min(12, inRegisters);
}

export function switchCycles(cases: number): number {
  return 3 * cases;
}

export function fillCycles(values: number): number {
  return 8 * values;
}

const widthOf = (type: Type) => bytesOf(heldType(type));

/** Where an expression stands. */
export interface How {
  /** In a loop without calls: plain globals stay in registers, and a pointer walks along with an index. */
  readonly isCalm: boolean;
  /** Variables that the loops around it count with. What is made of them alone is moved along and not computed anew. */
  readonly counters: ReadonlySet<Variable>;
  /** Places in memory that this round has fetched or stored already: they are in registers. Filled while code is made. */
  readonly fetched: Set<string>;
  /** Bytes of the result that are used: what is stored in a byte is computed in one. */
  readonly bytes: number;
}

export const restless: How = { isCalm: false, counters: new Set(), fetched: new Set(), bytes: 4 };

/** In a loop that calls nothing. @param step what it does at the end of each round. */
export function inCalmLoop(how: How, step: Expression | null): How {
  const counter = step?.op === "step" || step?.op === "compound" ? step.place : null;
  const counters = counter?.at === "variable" ? new Set([...how.counters, counter.variable]) : how.counters;
  return { isCalm: true, counters, fetched: new Set(), bytes: 4 };
}

/** Made of counters and constants only, by sums and products. */
function isCounted(e: Expression, how: How): boolean {
  if (e.op === "number") return true;
  if (e.op === "load") return e.place.at === "variable" && how.counters.has(e.place.variable);
  if (e.op === "convert") return e.from.kind === "integer" && isCounted(e.value, how);
  return (
    e.op === "arithmetic" &&
    "+-*".includes(e.operator) &&
    e.type.kind === "integer" &&
    isCounted(e.left, how) &&
    isCounted(e.right, how)
  );
}

const whole = (how: How): How => (how.bytes === 4 ? how : { ...how, bytes: 4 });

/** Names a place in memory that is found without calls and steps, or null. */
function keyOf(place: Place): string | null {
  switch (place.at) {
    case "variable":
      return place.variable.inMemory ? `${place.variable.name}@${place.variable.cell}` : null;
    case "field": {
      const record = keyOf(place.record);
      return record === null ? null : `${record}.${place.offset}`;
    }
    case "index": {
      const array = keyOf(place.array);
      const index = keyOfIndex(place.index);
      return array === null || index === null ? null : `${array}[${index}]`;
    }
    default:
      return null;
  }
}

function keyOfIndex(e: Expression): string | null {
  if (e.op === "number") return String(e.value);
  if (e.op === "load" && e.place.at === "variable") return `${e.place.variable.name}@${e.place.variable.cell}`;
  if (e.op === "convert") return keyOfIndex(e.value);
  if (e.op !== "arithmetic") return null;
  const [left, right] = [keyOfIndex(e.left), keyOfIndex(e.right)];
  return left === null || right === null ? null : `(${left}${e.operator}${right})`;
}

/** @returns whether this round has met the place before; from now on it has. A volatile variable is fetched each time. */
function isMet(place: Place, how: How): boolean {
  const key = how.isCalm && place.at !== "variable" ? keyOf(place) : null;
  if (key === null) return false;
  const met = how.fetched.has(key);
  how.fetched.add(key);
  return met;
}

/** Cycles to reach a place, and to fetch or store one byte of it. */
function placeCycles(place: Place, how: How): { reach: number; perByte: number } {
  switch (place.at) {
    case "variable": {
      const { variable } = place;
      if (variable.storage === "local" || variable.storage === "parameter")
        return { reach: 0, perByte: variable.inMemory ? 2 : 0 };
      return { reach: 0, perByte: how.isCalm && !variable.inMemory ? 0 : 2 };
    }
    case "index": {
      const array = placeCycles(place.array, how);
      if (place.index.op === "number") return { reach: array.reach, perByte: 2 };
      // The pointer that walks along is moved once a round; the index itself need not be computed.
      if (isCounted(place.index, how)) return { reach: array.reach + 1, perByte: 2 };
      if (how.isCalm) return { reach: array.reach + cyclesOf(place.index, how) + 2, perByte: 2 };
      return { reach: array.reach + cyclesOf(place.index, how) + 2 + bytesOf(place.type), perByte: 2 };
    }
    case "field": {
      const record = placeCycles(place.record, how);
      return { reach: record.reach, perByte: 2 };
    }
    case "pointer":
      return { reach: cyclesOf(place.pointer, how) + (how.isCalm ? 0 : 1), perByte: 2 };
    case "temporary":
      return { reach: cyclesOf(place.value, how), perByte: 0 };
    case "after": {
      const inner = placeCycles(place.place, how);
      return { reach: cyclesOf(place.effect, how) + inner.reach, perByte: inner.perByte };
    }
    default:
      return { reach: 4, perByte: 2 };
  }
}

/** Measured one by one in simavr (avr-gcc 5.4, libgcc and avr-libc of Debian 12), without fetching and storing. */
function operationCycles(operator: string, type: Arithmetic, right: Expression, how: How): number {
  if (type.kind === "float") return { "+": 98, "-": 102, "*": 136, "/": 475 }[operator] ?? 98;
  const full = widthOf(type);
  const bytes = Math.min(full, how.bytes);
  const constant = right.op === "number" ? right.value : null;
  switch (operator) {
    case "*":
      if (constant !== null && isPowerOfTwo(constant)) return shiftCycles(bytes, Math.log2(constant));
      return bytes === 1 ? 4 : bytes === 2 ? 10 : constant === null ? 73 : 45;
    case "/":
    case "%":
      if (constant !== null && isPowerOfTwo(constant)) {
        if (type.name.startsWith("unsigned")) return operator === "%" ? full : shiftCycles(full, Math.log2(constant));
        if (operator === "/") return shiftCycles(full, Math.log2(constant)) + full + 2;
      }
      return full === 2 ? 212 : 600;
    default:
      return bytes;
  }
}

/** One step moves each byte by one; eight steps are a move of bytes. Three and more make a loop. */
function shiftCycles(bytes: number, steps: number): number {
  const rest = steps % 8;
  return (steps >= 8 ? bytes : 0) + (rest <= 2 ? rest * bytes : rest * (bytes + 3) + 1);
}

function isPowerOfTwo(n: number): boolean {
  return n > 0 && (n & (n - 1)) === 0;
}

/** Cycles of an expression, without what calls and library functions add themselves and without what runs only sometimes. */
export function cyclesOf(e: Expression, how: How): number {
  const bytes = Math.min(how.bytes, e.type.kind === "void" || e.type.kind === "record" ? 4 : widthOf(e.type));
  const part = (inner: Expression) => cyclesOf(inner, whole(how));
  switch (e.op) {
    case "number":
    case "function":
    case "null":
      return 0;
    case "load": {
      const { reach, perByte } = placeCycles(e.place, how);
      return isMet(e.place, how) ? 0 : reach + perByte * bytes;
    }
    case "record":
      return placeCycles(e.place, how).reach;
    case "assign": {
      const { reach, perByte } = placeCycles(e.place, how);
      const size = e.type.kind === "record" ? 2 * bytesOf(e.type) : widthOf(e.type);
      const value = part(e.value);
      return value + (isMet(e.place, how) ? 0 : reach) + Math.max(1, perByte) * size;
    }
    case "compound": {
      const { reach, perByte } = placeCycles(e.place, how);
      const size = widthOf(e.type);
      const inside: How = { ...how, bytes: e.type.kind === "float" || "/%>>".includes(e.operator) ? 4 : size };
      const value = cyclesOf(e.value, inside);
      const fetch = isMet(e.place, how) ? 0 : reach + perByte * size;
      return value + fetch + perByte * size + operationCycles(e.operator, e.inType, e.value, inside);
    }
    case "step":
    case "advance": {
      const { reach, perByte } = placeCycles(e.place, how);
      return reach + 2 * perByte * widthOf(e.type) + Math.min(2, widthOf(e.type));
    }
    case "negate":
    case "complement":
      return cyclesOf(e.value, how) + bytes;
    case "arithmetic": {
      if (isCounted(e, how)) return bytes;
      const inside = e.operator === "/" || e.operator === "%" ? whole(how) : how;
      return cyclesOf(e.left, inside) + cyclesOf(e.right, inside) + operationCycles(e.operator, e.type, e.right, how);
    }
    case "shift": {
      const size = e.operator === "<<" ? bytes : widthOf(e.type);
      const inside = e.operator === "<<" ? how : whole(how);
      if (e.right.op === "number") return cyclesOf(e.left, inside) + shiftCycles(size, Math.max(0, e.right.value));
      // How far is not known here: four steps.
      return cyclesOf(e.left, inside) + part(e.right) + 4 + 4 * (size + 3);
    }
    case "compare":
      return part(e.left) + part(e.right) + (e.inType.kind === "float" ? 50 : comparedBytes(e.left, e.right));
    case "comparePointers":
      return part(e.left) + part(e.right) + 2;
    case "not":
    case "isSet":
      return part(e.value) + 1;
    case "and":
    case "or":
      return part(e.left) + 2;
    case "convert": {
      if (e.from.kind === "float" || e.type.kind === "float") {
        if (e.from.kind === e.type.kind) return part(e.value);
        return part(e.value) + (e.from.kind === "float" ? 50 : widthOf(e.from) === 4 ? 65 : 42);
      }
      const to = widthOf(e.type);
      const from = widthOf(e.from);
      // A bit that is tested needs only its byte.
      if (sameType(e.type, types.bool) && e.value.op === "arithmetic" && e.value.operator === "&")
        return cyclesOf(e.value, { ...how, bytes: 1 });
      if (sameType(e.type, types.bool)) return part(e.value) + from;
      return (
        cyclesOf(e.value, { ...how, bytes: Math.min(how.bytes, to) }) +
        (bytes > from ? bytes - from + (integerFacts[e.from.name as IntegerName].isSigned ? 2 : 0) : 0)
      );
    }
    case "choose":
      return part(e.test) + 2;
    case "comma":
      return part(e.first) + cyclesOf(e.second, how);
    case "call":
    case "library":
    case "changeText":
      return e.values.reduce((sum, v) => sum + part(v) + 2, 0);
    case "address":
      return placeCycles(e.place, how).reach + (how.isCalm ? 0 : 2);
    case "movePointer":
      return part(e.pointer) + (e.count.op === "number" ? 0 : part(e.count) + 2) + (how.isCalm ? 0 : 2);
    case "pointerDifference":
      return part(e.left) + part(e.right) + 4;
    default:
      return 2;
  }
}

/** Bytes are compared as bytes, though C++ widens them. */
function comparedBytes(left: Expression, right: Expression): number {
  const width = (e: Expression) =>
    e.op === "convert" ? widthOf(e.from) : e.op === "number" && e.value >= 0 && e.value < 256 ? 1 : widthOf(e.type);
  const bytes = Math.max(width(left), width(right));
  // The higher bytes of a constant are fetched into a register first.
  return bytes + (bytes > 1 && right.op === "number" && right.value !== 0 ? 1 : 0);
}
