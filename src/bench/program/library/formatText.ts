// What sprintf writes, with avr-libc's limits.
//
// Values are taken byte by byte as they lie on the chip's stack, so that %d for a long gives its low half and then disturbs
// what follows, as in class. Floats are not linked in and give a question mark (avr-libc, vfprintf).
// Does not know: where the text goes.

import { charsAt, type Machine, type Pointer } from "../run/machine.ts";
import { fromFloat } from "./floatBits.ts";

/** @param values pairs: bytes on the stack, value. */
export function formatText(m: Machine, format: string, values: readonly unknown[]): string {
  const stack = new Stack(values);
  let out = "";
  const pattern = /%([-+ 0#]*)(\*|\d+)?(?:\.(\*|\d+)?)?([hlLzjt]*)(.)/gs;
  let last = 0;
  for (const match of format.matchAll(pattern)) {
    const [all, flags = "", widthText, , length = "", kind = ""] = match;
    out += format.slice(last, match.index);
    last = match.index + all.length;
    if (kind === "%") {
      out += "%";
      continue;
    }
    const width = widthText === "*" ? stack.integer(2, true) : Number(widthText ?? 0);
    const dot = all.includes(".");
    const precision = !dot ? -1 : match[3] === "*" ? stack.integer(2, true) : Number(match[3] ?? 0);
    out += pad(one(m, kind, length.includes("l") ? 4 : 2, flags, precision, stack), width, flags, kind, precision);
  }
  return out + format.slice(last);
}

function one(m: Machine, kind: string, bytes: 2 | 4, flags: string, precision: number, stack: Stack): string {
  const digits = (text: string) => text.padStart(Math.max(0, precision), "0");
  switch (kind) {
    case "d":
    case "i": {
      const value = stack.integer(bytes, true);
      const sign = value < 0 ? "-" : flags.includes("+") ? "+" : flags.includes(" ") ? " " : "";
      return sign + digits(String(Math.abs(value)));
    }
    case "u":
      return digits(String(stack.integer(bytes, false)));
    case "x":
      return (flags.includes("#") ? "0x" : "") + digits(stack.integer(bytes, false).toString(16));
    case "X":
      return (flags.includes("#") ? "0X" : "") + digits(stack.integer(bytes, false).toString(16).toUpperCase());
    case "o":
      return (flags.includes("#") ? "0" : "") + digits(stack.integer(bytes, false).toString(8));
    case "p":
      return `0x${stack.integer(2, false).toString(16)}`;
    case "c":
      return String.fromCharCode(stack.integer(2, false) & 255);
    case "s": {
      const pointer = stack.pointer();
      return pointer === null ? "" : charsAt(m, pointer, precision < 0 ? undefined : precision);
    }
    case "f":
    case "F":
    case "e":
    case "E":
    case "g":
    case "G":
      stack.integer(4, false);
      return "?";
    default:
      return kind;
  }
}

function pad(text: string, width: number, flags: string, kind: string, precision: number): string {
  const wide = Math.abs(width);
  if (flags.includes("-") || width < 0) return text.padEnd(wide);
  const isNumber = "diuxXo".includes(kind);
  if (!flags.includes("0") || !isNumber || precision >= 0) return text.padStart(wide);
  const sign = /^[-+ ]/.exec(text)?.[0] ?? "";
  return sign + text.slice(sign.length).padStart(wide - sign.length, "0");
}

/** The values as they follow each other on the stack. */
class Stack {
  private readonly bytes: number[] = [];
  private readonly pointers = new Map<number, Pointer>();
  private next = 0;

  constructor(values: readonly unknown[]) {
    for (let i = 0; i + 1 < values.length; i += 2) {
      const size = values[i] as number;
      const value = values[i + 1];
      if (typeof value !== "number") {
        if (value !== null) this.pointers.set(this.bytes.length, value as Pointer);
        this.bytes.push(0, 0);
        continue;
      }
      const bits = Number.isInteger(value) && Math.abs(value) < 2 ** 32 ? value : fromFloat(value);
      for (let k = 0; k < size; k += 1) this.bytes.push((bits >> (8 * k)) & 255);
    }
  }

  integer(size: 2 | 4, isSigned: boolean): number {
    let value = 0;
    for (let k = 0; k < size; k += 1) value |= (this.bytes[this.next + k] ?? 0) << (8 * k);
    this.next += size;
    if (size === 2) return isSigned ? (value << 16) >> 16 : value & 0xffff;
    return isSigned ? value : value >>> 0;
  }

  /** What does not lie there as a pointer is shown as an empty text; the chip would print what lies at that address. */
  pointer(): Pointer | null {
    const found = this.pointers.get(this.next) ?? null;
    this.next += 2;
    return found;
  }
}
