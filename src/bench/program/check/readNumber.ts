// The value and type of a number as written: 255, 0xFF, 0b1010, 010, 100UL, 1.5e3.
//
// The type of a whole number is the first that holds it (C++11, table 6): a decimal one is never unsigned unless it says so,
// a hexadecimal one may be. A leading 0 means octal, so 010 is 8 and 08 is an error.
// Does not know: expressions.
import { hold } from "./arithmetic.ts";
import { type FloatType, type IntegerType, types } from "./types.ts";

export type ReadNumber =
  | { readonly status: "read"; readonly type: IntegerType | FloatType; readonly value: number }
  | { readonly status: "bad" }
  /** Needs more than 32 bits. */
  | { readonly status: "tooLarge" };

export function readNumber(text: string): ReadNumber {
  const whole = /^(?:0[xX]([0-9A-Fa-f]+)|0[bB]([01]+)|0([0-7]*)|([1-9][0-9]*))([uUlL]*)$/.exec(text);
  if (whole) {
    const [, hex, binary, octal, decimal, suffix = ""] = whole;
    if (!/^(?:[uU]?[lL]{0,2}|[lL]{1,2}[uU])$/.test(suffix)) return { status: "bad" };
    const value =
      hex !== undefined
        ? Number.parseInt(hex, 16)
        : binary !== undefined
          ? Number.parseInt(binary, 2)
          : decimal !== undefined
            ? Number(decimal)
            : Number.parseInt(octal || "0", 8);
    if (value > 0xffffffff || /l{2}/i.test(suffix)) return { status: "tooLarge" };
    const type = integerType(value, suffix.toLowerCase(), decimal !== undefined);
    return { status: "read", type, value: hold(value, type) };
  }
  const real = /^((?:\d+\.\d*|\.\d+|\d+(?=[eE]))(?:[eE][+-]?\d+)?)([fFlL]?)$/.exec(text);
  if (!real) return { status: "bad" };
  const type = /[fF]/.test(real[2] ?? "") ? types.float : types.double;
  return { status: "read", type, value: Math.fround(Number(real[1])) };
}

function integerType(value: number, suffix: string, isDecimal: boolean): IntegerType {
  const saysUnsigned = suffix.includes("u");
  const mayBeUnsigned = saysUnsigned || !isDecimal;
  if (!suffix.includes("l")) {
    if (!saysUnsigned && value <= 0x7fff) return types.int;
    if (mayBeUnsigned && value <= 0xffff) return types.unsigned;
  }
  if (!saysUnsigned && value <= 0x7fffffff) return types.long;
  // A decimal number between 2^31 and 2^32 is a long long on the chip; here it has the 32 bits that it needs.
  return types.unsignedLong;
}
