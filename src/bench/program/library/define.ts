// How a function of the library is written down: its types for the checker, what it does for the machine, what it costs.
//
// Types are words, so that a line reads like a prototype. Values come held as check/arithmetic.ts says; a String is a text with
// one character a byte, a char* is a pointer, a servo is its state.
// Does not know: any particular function.
import { type Type, types } from "../check/types.ts";
import type { Machine } from "../run/machine.ts";

export interface LibraryFunction {
  readonly name: string;
  readonly result: Type;
  /** For a method the thing it is called on comes first in `run`, but is not listed here. */
  readonly parameters: readonly Type[];
  /** Held values for those at the end that may be left out. */
  readonly usual: readonly number[];
  /** Further values may follow, as in sprintf; each comes as its number of bytes and its value. */
  readonly isVariadic: boolean;
  /** Cycles of the chip, beside what `run` itself lets pass. Measured in simavr where reference/programs covers it. */
  readonly cycles: number;
  /**
   * What the call would give, without time passing, if it would change nothing now; else `changes`. Missing where a call always
   * may change something. A loop of calls that change nothing only waits.
   */
  readonly still: ((m: Machine, ...values: never[]) => unknown) | null;
  /** A method that gives a new text for the one it is called on. */
  readonly changesText: boolean;
  readonly run: (m: Machine, ...values: never[]) => unknown;
}

const words: Readonly<Record<string, Type>> = {
  void: types.void,
  bool: types.bool,
  char: types.char,
  byte: types.byte,
  int: types.int,
  unsigned: types.unsigned,
  long: types.long,
  ulong: types.unsignedLong,
  float: types.float,
  double: types.double,
  text: types.text,
  flash: types.flash,
  servo: types.servo,
  chars: types.constChars,
  buffer: types.chars,
  ends: { kind: "pointer", to: types.chars, toConst: false },
  bytes: { kind: "pointer", to: types.byte, toConst: true },
  any: { kind: "pointer", to: types.void, toConst: true },
  callback: { kind: "pointer", to: { kind: "function", result: types.void, parameters: [] }, toConst: false },
};

export const changes = Symbol("changes");

export interface Options {
  readonly cycles?: number;
  /** Same values, same result, nothing else: it is its own `still`. */
  readonly pure?: boolean;
  readonly still?: (m: Machine, ...values: never[]) => unknown;
  readonly changesText?: boolean;
}

/**
 * @param parameters such as "byte byte ulong=0": words for types, a value where one may be left out, "..." at the end for
 * further values.
 */
export function define(
  name: string,
  result: string,
  parameters: string,
  options: Options,
  run: (m: Machine, ...values: never[]) => unknown,
): LibraryFunction {
  const list = parameters.split(" ").filter((p) => p !== "" && p !== "...");
  const usual = list.filter((p) => p.includes("=")).map((p) => Number(p.split("=")[1]));
  const { cycles = 10, pure = false, still = null, changesText = false } = options;
  return {
    name,
    result: words[result]!,
    parameters: list.map((p) => words[p.split("=")[0]!]!),
    usual,
    isVariadic: parameters.includes("..."),
    cycles,
    still: pure ? run : still,
    changesText,
    run,
  };
}
