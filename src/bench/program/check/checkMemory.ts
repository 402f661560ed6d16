// Calls whose meaning hangs on what a pointer leads to: memcpy and its kin count bytes, pgm_read_… read from flash.
//
// Memory here is cells (run/machine.ts), so bytes are turned into cells by the type behind the pointer: for an array that of its
// elements. A constant in flash is read as any other constant is.
// Does not know: what the machine does with it.
import type { At } from "../read/token.ts";
import { asValue, broken, type Checked, rvalue, typeOf } from "./checked.ts";
import { type Checker, report } from "./checker.ts";
import { cast } from "./checkOperator.ts";
import { convert, shownType } from "./convert.ts";
import { constantOf, number } from "./fold.ts";
import type { Expression } from "./tree.ts";
import { bytesOf, cellsOf, heldType, integerFacts, type Type, typeName, types } from "./types.ts";

const inMemory: Readonly<Record<string, string>> = {
  memcpy: "memory.copy",
  memmove: "memory.copy",
  memcpy_P: "memory.copy",
  memset: "memory.set",
  memcmp: "memory.compare",
};
const fromFlash: Readonly<Record<string, Type>> = {
  pgm_read_byte: types.byte,
  pgm_read_word: types.unsigned,
  pgm_read_dword: types.unsignedLong,
  pgm_read_float: types.double,
  pgm_read_ptr: { kind: "pointer", to: types.void, toConst: false },
};

/** Names that are called in this way. */
export const memoryNames: readonly string[] = [
  ...Object.keys(inMemory),
  ...Object.keys(fromFlash).flatMap((name) => [name, `${name}_near`]),
];

/** @returns null where the name is another one. */
export function checkMemory(c: Checker, at: At, name: string, values: readonly Checked[]): Checked | null {
  const flash = fromFlash[name.replace(/_near$/, "")];
  if (flash !== undefined) return readFlash(c, at, name, values, flash);
  const work = inMemory[name];
  return work === undefined ? null : moveMemory(c, at, name, work, values);
}

function has(c: Checker, at: At, name: string, values: readonly Checked[], count: number): boolean {
  if (values.length !== count)
    report(c, at, { code: "program.argumentCount", name, expected: String(count), found: values.length });
  return values.length === count;
}

/** What lies behind a pointer, element by element; null with a report if the value is none. */
function pointed(c: Checker, at: At, given: Checked, to: string): { pointer: Expression; type: Type } | null {
  const pointer = rvalue(c, given);
  if (pointer.type.kind === "unknown") return null;
  if (pointer.type.kind !== "pointer") {
    report(c, at, { code: "program.cannotConvert", from: shownType(c, given), to });
    return null;
  }
  let type = pointer.type.to;
  while (type.kind === "array") type = type.of;
  return { pointer, type };
}

function moveMemory(c: Checker, at: At, name: string, work: string, values: readonly Checked[]): Checked {
  if (!has(c, at, name, values, 3)) return broken;
  const isSet = work === "memory.set";
  const to = pointed(c, at, values[0]!, work === "memory.compare" ? "const void*" : "void*");
  const second = isSet ? null : pointed(c, at, values[1]!, "const void*");
  if (to === null || (!isSet && second === null)) return broken;
  if (to.pointer.type.kind === "pointer" && to.pointer.type.toConst && work !== "memory.compare") {
    report(c, at, { code: "program.cannotConvert", from: typeName(to.pointer.type), to: "void*" });
    return broken;
  }
  // Of two pointers the one to something says how large the pieces are; bytes of one kind read as another are not followed.
  const { type } = to.type.kind === "void" && second !== null ? second : to;
  const size = bytesOf(type);
  if (second !== null && (bytesOf(second.type) !== size || cellsOf(second.type) !== cellsOf(type))) {
    report(c, at, { code: "program.notSupported", feature: `${name} from ${typeName(second.type)} to ${typeName(to.type)}` });
    return broken;
  }
  const bytes = convert(c, at, values[2]!, types.unsigned);
  const known = constantOf(bytes);
  const count: Expression = {
    op: "arithmetic",
    type: types.unsigned,
    operator: "/",
    left: bytes,
    right: number(size, types.unsigned),
    line: at.line,
  };
  const cells: Expression =
    known !== null
      ? number(Math.floor(known / size) * cellsOf(type), types.unsigned)
      : {
          op: "arithmetic",
          type: types.unsigned,
          operator: "*",
          left: count,
          right: number(cellsOf(type), types.unsigned),
          line: at.line,
        };
  const held = heldType(type);
  const bits = held.kind === "integer" ? integerFacts[held.name].bits * (integerFacts[held.name].isSigned ? -1 : 1) : 0;
  const list = isSet
    ? [to.pointer, convert(c, at, values[1]!, types.int), bytes, cells, number(bits, types.int)]
    : [to.pointer, second!.pointer, bytes, cells];
  const result = work === "memory.compare" ? types.int : to.pointer.type;
  return asValue({ op: "library", type: result, name: work, values: list, line: at.line });
}

/** Reads a constant of the width that the name says; a pointer in flash comes as the pointer that it is. */
function readFlash(c: Checker, at: At, name: string, values: readonly Checked[], result: Type): Checked {
  if (!has(c, at, name, values, 1)) return broken;
  const from = pointed(c, at, values[0]!, "const void*");
  if (from === null) return broken;
  const { type } = from;
  const place = { at: "pointer", type, isConst: true, pointer: from.pointer, line: at.line } as const;
  const value: Expression = { op: "load", type, place };
  const isWord = result.kind === "pointer" || (result.kind === "integer" && result.name === "unsigned int");
  if (type.kind === "pointer" && isWord) return asValue(value);
  const isSame = (type.kind === "float") === (result.kind === "float") && cellsOf(type) === 1;
  // A narrower read gives the low bytes, as the chip does; a wider one would read into the next element.
  if (!isSame || type.kind === "pointer" || bytesOf(result) > bytesOf(type)) {
    report(c, at, { code: "program.notSupported", feature: `${name} of ${typeName(typeOf(values[0]!))}` });
    return broken;
  }
  return cast(c, at, asValue(value), result);
}
