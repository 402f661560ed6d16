// Functions on char arrays: string.h, stdlib.h, stdio.h, as far as beginners' books use them.
//
// Every access keeps to the array the pointer was made for; one character beyond ends the run, where the chip would quietly
// overwrite what lies behind.
// Does not know: String.
import { broken } from "../run/halt.ts";
import { charsAt, type Machine, type Pointer, putChars } from "../run/machine.ts";
import { define, type LibraryFunction } from "./define.ts";
import { formatText } from "./formatText.ts";
import { writeFixed, writeInteger } from "./writeNumber.ts";

type Chars = Pointer | null;

const order = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);
const moved = (p: Pointer, by: number): Pointer => ({ at: p.at + by, low: p.low, high: p.high });
/** The number at the beginning of a text, as strtol and strtod find it. */
const wholeAt = (text: string) => Number(/^[ \t\n\v\f\r]*([+-]?\d+)/.exec(text)?.[1] ?? 0);
const realAt = (text: string) => Number(/^[ \t\n\v\f\r]*([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)/.exec(text)?.[1] ?? 0);

export const readWhole = wholeAt;
export const readReal = (text: string) => Math.fround(realAt(text));

export const charFunctions: readonly LibraryFunction[] = [
  define("strlen", "unsigned", "chars", { cycles: 40 }, (m, a: Chars) => charsAt(m, a).length),
  define("strcmp", "int", "chars chars", { cycles: 60 }, (m, a: Chars, b: Chars) => order(charsAt(m, a), charsAt(m, b))),
  define("strncmp", "int", "chars chars unsigned", { cycles: 60 }, (m, a: Chars, b: Chars, n: number) =>
    order(charsAt(m, a, n), charsAt(m, b, n)),
  ),
  define("strcasecmp", "int", "chars chars", { cycles: 80 }, (m, a: Chars, b: Chars) =>
    order(charsAt(m, a).toLowerCase(), charsAt(m, b).toLowerCase()),
  ),
  define("strcpy", "buffer", "buffer chars", { cycles: 60 }, (m, to: Chars, from: Chars) => {
    putChars(m, to, charsAt(m, from));
    return to;
  }),
  define("strncpy", "buffer", "buffer chars unsigned", { cycles: 60 }, (m, to: Chars, from: Chars, n: number) => {
    const text = charsAt(m, from, n);
    fill(m, to, n, (i) => text.charCodeAt(i) || 0);
    return to;
  }),
  define("strcat", "buffer", "buffer chars", { cycles: 80 }, (m, to: Chars, from: Chars) => {
    putChars(m, to, charsAt(m, to) + charsAt(m, from));
    return to;
  }),
  define("strncat", "buffer", "buffer chars unsigned", { cycles: 80 }, (m, to: Chars, from: Chars, n: number) => {
    putChars(m, to, charsAt(m, to) + charsAt(m, from, n));
    return to;
  }),
  define("strchr", "buffer", "chars int", { cycles: 40 }, (m, a: Chars, c: number) => {
    const at = `${charsAt(m, a)}\0`.indexOf(String.fromCharCode(c & 255));
    return at < 0 ? null : moved(a!, at);
  }),
  define("strstr", "buffer", "chars chars", { cycles: 100 }, (m, a: Chars, b: Chars) => {
    const at = charsAt(m, a).indexOf(charsAt(m, b));
    return at < 0 ? null : moved(a!, at);
  }),
  define("strtok", "buffer", "buffer chars", { cycles: 120 }, (m, text: Chars, ends: Chars) =>
    nextWord(m, text, charsAt(m, ends)),
  ),
  define("atoi", "int", "chars", { cycles: 200 }, (m, a: Chars) => (wholeAt(charsAt(m, a)) << 16) >> 16),
  define("atol", "long", "chars", { cycles: 300 }, (m, a: Chars) => wholeAt(charsAt(m, a)) | 0),
  define("atof", "double", "chars", { cycles: 900 }, (m, a: Chars) => Math.fround(realAt(charsAt(m, a)))),
  ...(["itoa", "ltoa", "utoa", "ultoa"] as const).map((name) => {
    const [type, isLong] = { itoa: ["int", false], ltoa: ["long", true], utoa: ["unsigned", false], ultoa: ["ulong", true] }[
      name
    ] as [string, boolean];
    return define(name, "buffer", `${type} buffer int`, { cycles: 600 }, (m, value: number, to: Chars, base: number) => {
      // Only base 10 knows a sign; elsewhere the bits are written. Letters are small.
      const signed = base === 10 && (name === "itoa" || name === "ltoa");
      const shown = signed ? value : isLong ? value >>> 0 : value & 0xffff;
      putChars(m, to, writeInteger(shown, base).toLowerCase());
      return to;
    });
  }),
  define(
    "dtostrf",
    "buffer",
    "double int byte buffer",
    { cycles: 2000 },
    (m, value: number, width: number, decimals: number, to: Chars) => {
      const text = writeFixed(value, decimals);
      putChars(m, to, width < 0 ? text.padEnd(-width) : text.padStart(width));
      return to;
    },
  ),
  define("sprintf", "int", "buffer chars ...", { cycles: 1500 }, (m, to: Chars, format: Chars, ...values: never[]) => {
    const text = formatText(m, charsAt(m, format), values);
    putChars(m, to, text);
    return text.length;
  }),
  define(
    "snprintf",
    "int",
    "buffer unsigned chars ...",
    { cycles: 1500 },
    (m, to: Chars, size: number, format: Chars, ...values: never[]) => {
      const text = formatText(m, charsAt(m, format), values);
      if (size > 0) putChars(m, to, text.slice(0, size - 1));
      return text.length;
    },
  ),
  define("memset", "void", "buffer int unsigned", { cycles: 40 }, (m, to: Chars, value: number, n: number) =>
    fill(m, to, n, () => value),
  ),
  define("pgm_read_byte", "byte", "chars", { pure: false, cycles: 3 }, (m, a: Chars) => cellAt(m, a) & 255),
  define("pgm_read_byte", "byte", "bytes", { pure: false, cycles: 3 }, (m, a: Chars) => cellAt(m, a) & 255),
];

function fill(m: Machine, to: Chars, count: number, value: (i: number) => number): void {
  if (to === null) broken(m.line, "program.nullPointer");
  if (to.at < to.low || to.at + count > to.high)
    broken(m.line, "program.indexOutside", to.at + count - to.low - 1, to.high - to.low);
  for (let i = 0; i < count; i += 1) m.ints[to.at + i] = (value(i) << 24) >> 24;
}

/** The next piece of the text that is being cut up: the end of it is overwritten with a 0. */
function nextWord(m: Machine, text: Chars, ends: string): Chars {
  const start = text ?? m.cutting;
  if (start === null) return null;
  const left = charsAt(m, start);
  let from = 0;
  while (from < left.length && ends.includes(left[from]!)) from += 1;
  let to = from;
  while (to < left.length && !ends.includes(left[to]!)) to += 1;
  m.cutting = to < left.length ? moved(start, to + 1) : null;
  if (from === left.length) return null;
  if (to < left.length) m.ints[start.at + to] = 0;
  return moved(start, from);
}

function cellAt(m: Machine, a: Chars): number {
  if (a === null) return broken(m.line, "program.nullPointer");
  if (a.at < a.low || a.at >= a.high) return broken(m.line, "program.indexOutside", a.at - a.low, a.high - a.low);
  return m.ints[a.at]!;
}
