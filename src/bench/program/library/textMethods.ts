// The class String, and how values become one.
//
// Places count from 0; what lies outside is cut to what is there, as the class does it. A text is a string with one character a
// byte. Methods that change the text give the new one.
// Does not know: where texts are kept.
import { charsAt, checkRoom, type Machine, type Pointer, putChars, scratchPointer } from "../run/machine.ts";
import { readReal, readWhole } from "./charFunctions.ts";
import { define, type LibraryFunction } from "./define.ts";
import { writeFixed, writeInteger } from "./writeNumber.ts";

const order = (a: string, b: string) => (a === b ? 0 : a < b ? -1 : 1);
const byte = (c: number) => String.fromCharCode(c & 255);
const signed = (code: number) => ((code || 0) << 24) >> 24;

function part(text: string, from: number, to: number): string {
  const [left, right] = from > to ? [to, from] : [from, to];
  return left >= text.length ? "" : text.slice(left, Math.min(right, text.length));
}

/** Searching backwards; a place behind the end begins at the end. */
function lastIndex(text: string, what: string, from: number): number {
  if (what.length === 0 || text.length === 0 || what.length > text.length || from < 0) return -1;
  return text.lastIndexOf(what, from);
}

const pure = { pure: true, cycles: 60 } as const;
const changes = { changesText: true, cycles: 120 } as const;

export const textMethods: readonly LibraryFunction[] = [
  // Conversions that the checker writes into the tree.
  define("text.ofChars", "text", "chars", { cycles: 120 }, (m, p: Pointer | null) => (p === null ? "" : charsAt(m, p))),
  define("text.ofFlash", "text", "flash", { pure: true, cycles: 120 }, (_m, t: string) => t),
  define("text.ofChar", "text", "char", { pure: true, cycles: 90 }, (_m, c: number) => byte(c)),
  define("text.ofLong", "text", "long byte", { pure: true, cycles: 700 }, (_m, n: number, base: number) =>
    writeInteger(base === 10 ? n : n >>> 0, base).toLowerCase(),
  ),
  define("text.ofInt", "text", "long byte", { pure: true, cycles: 500 }, (_m, n: number, base: number) =>
    writeInteger(base === 10 ? n : n & 0xffff, base).toLowerCase(),
  ),
  define("text.ofUnsigned", "text", "ulong byte", { pure: true, cycles: 700 }, (_m, n: number, base: number) =>
    writeInteger(n >>> 0, base).toLowerCase(),
  ),
  // The width is two more than the decimals; a short number with none gets a blank in front.
  define("text.ofFloat", "text", "double byte", { pure: true, cycles: 2000 }, (_m, x: number, decimals: number) =>
    writeFixed(x, decimals).padStart(decimals + 2),
  ),
  define("text.join", "text", "text", { changesText: true, cycles: 150 }, (m, a: string, b: string) => checkRoom(m, a + b)),

  define("String.length", "unsigned", "", { pure: true, cycles: 4 }, (_m, t: string) => t.length),
  define("String.isEmpty", "bool", "", { pure: true, cycles: 4 }, (_m, t: string) => (t === "" ? 1 : 0)),
  define("String.charAt", "char", "unsigned", { pure: true, cycles: 14 }, (_m, t: string, i: number) => signed(t.charCodeAt(i))),
  define("String.compareTo", "int", "text", pure, (_m, a: string, b: string) => order(a, b)),
  define("String.equals", "bool", "text", pure, (_m, a: string, b: string) => (a === b ? 1 : 0)),
  define("String.equalsIgnoreCase", "bool", "text", pure, (_m, a: string, b: string) =>
    a.toLowerCase() === b.toLowerCase() ? 1 : 0,
  ),
  define("String.startsWith", "bool", "text", pure, (_m, a: string, b: string) => (a.startsWith(b) ? 1 : 0)),
  define("String.startsWith", "bool", "text unsigned", pure, (_m, a: string, b: string, from: number) =>
    a.startsWith(b, from) ? 1 : 0,
  ),
  define("String.endsWith", "bool", "text", pure, (_m, a: string, b: string) => (a.endsWith(b) ? 1 : 0)),
  define("String.indexOf", "int", "char unsigned=0", pure, (_m, t: string, c: number, from: number) =>
    from >= t.length ? -1 : t.indexOf(byte(c), from),
  ),
  define("String.indexOf", "int", "text unsigned=0", pure, (_m, t: string, what: string, from: number) =>
    from >= t.length ? -1 : t.indexOf(what, from),
  ),
  define("String.lastIndexOf", "int", "char", pure, (_m, t: string, c: number) => lastIndex(t, byte(c), t.length)),
  define("String.lastIndexOf", "int", "char unsigned", pure, (_m, t: string, c: number, from: number) =>
    from >= t.length ? -1 : lastIndex(t, byte(c), from),
  ),
  define("String.lastIndexOf", "int", "text", pure, (_m, t: string, what: string) => lastIndex(t, what, t.length)),
  define("String.lastIndexOf", "int", "text unsigned", pure, (_m, t: string, what: string, from: number) =>
    lastIndex(t, what, from),
  ),
  define("String.substring", "text", "unsigned", pure, (_m, t: string, from: number) => part(t, from, t.length)),
  define("String.substring", "text", "unsigned unsigned", pure, (_m, t: string, from: number, to: number) => part(t, from, to)),
  define("String.toInt", "long", "", { pure: true, cycles: 300 }, (_m, t: string) => readWhole(t) | 0),
  define("String.toFloat", "float", "", { pure: true, cycles: 900 }, (_m, t: string) => readReal(t)),
  define("String.toDouble", "double", "", { pure: true, cycles: 900 }, (_m, t: string) => readReal(t)),
  define("String.c_str", "chars", "", { cycles: 4 }, (m, t: string) => scratchPointer(m, t)),
  define("String.toCharArray", "void", "buffer unsigned", { cycles: 80 }, (m, t: string, to: Pointer | null, size: number) => {
    if (size > 0 && to !== null) putChars(m, to, t.slice(0, size - 1));
  }),
  define("String.reserve", "bool", "unsigned", { cycles: 100 }, () => 1),

  define("String.concat", "bool", "text", changes, join),
  define("String.concat", "bool", "char", changes, (m, t: string, c: number) => join(m, t, byte(c))),
  define("String.concat", "bool", "byte", changes, (m, t: string, n: number) => join(m, t, String(n))),
  define("String.concat", "bool", "int", changes, (m, t: string, n: number) => join(m, t, String(n))),
  define("String.concat", "bool", "unsigned", changes, (m, t: string, n: number) => join(m, t, String(n))),
  define("String.concat", "bool", "long", changes, (m, t: string, n: number) => join(m, t, String(n))),
  define("String.concat", "bool", "ulong", changes, (m, t: string, n: number) => join(m, t, String(n >>> 0))),
  define("String.concat", "bool", "double", changes, (m, t: string, x: number) => join(m, t, writeFixed(x, 2).padStart(4))),
  define("String.toUpperCase", "void", "", changes, (_m, t: string) => t.replace(/[a-z]/g, (c) => c.toUpperCase())),
  define("String.toLowerCase", "void", "", changes, (_m, t: string) => t.replace(/[A-Z]/g, (c) => c.toLowerCase())),
  define("String.trim", "void", "", changes, (_m, t: string) => t.replace(/^[ \t\n\v\f\r]+|[ \t\n\v\f\r]+$/g, "")),
  define("String.replace", "void", "char char", changes, (_m, t: string, from: number, to: number) =>
    t.replaceAll(byte(from), byte(to)),
  ),
  define("String.replace", "void", "text text", changes, (m, t: string, from: string, to: string) =>
    from === "" ? t : checkRoom(m, t.replaceAll(from, to)),
  ),
  define("String.remove", "void", "unsigned", changes, (_m, t: string, at: number) => t.slice(0, at)),
  define("String.remove", "void", "unsigned unsigned", changes, (_m, t: string, at: number, count: number) =>
    at >= t.length || count === 0 ? t : t.slice(0, at) + t.slice(at + count),
  ),
  define("String.setCharAt", "void", "unsigned char", changes, (_m, t: string, i: number, c: number) =>
    i >= t.length ? t : t.slice(0, i) + byte(c) + t.slice(i + 1),
  ),
];

function join(m: Machine, a: string, b: string): string {
  return checkRoom(m, a + b);
}
