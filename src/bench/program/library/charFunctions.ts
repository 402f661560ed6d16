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

/** The number at the beginning of a text in a base from 2 to 36; 0 finds it as C++ does. @returns also how far it goes. */
function numberIn(text: string, base: number): { value: number; length: number } {
  const [head = "", sign = "", prefix = ""] = /^[ \t\n\v\f\r]*([+-]?)(0[xX](?=[0-9a-fA-F]))?/.exec(text) ?? [];
  const isHex = prefix !== "" && (base === 0 || base === 16);
  let at = head.length - (isHex ? 0 : prefix.length);
  const radix = isHex ? 16 : base !== 0 ? base : text[at] === "0" ? 8 : 10;
  const start = at;
  let value = 0;
  for (; at < text.length; at += 1) {
    const digit = Number.parseInt(text[at]!, 36);
    if (Number.isNaN(digit) || digit >= radix) break;
    value = value * radix + digit;
  }
  return { value: sign === "-" ? -value : value, length: at === start && !isHex ? 0 : at };
}

export const readWhole = wholeAt;
export const readReal = (text: string) => Math.fround(realAt(text));

const plain: readonly LibraryFunction[] = [
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
  define("strrchr", "buffer", "chars int", { cycles: 40 }, (m, a: Chars, c: number) => {
    const at = `${charsAt(m, a)}\0`.lastIndexOf(String.fromCharCode(c & 255));
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
  ...(["strtol", "strtoul"] as const).map((name) =>
    define(
      name,
      name === "strtol" ? "long" : "ulong",
      "chars ends int",
      { cycles: 400 },
      (m, a: Chars, end: Chars, base: number) => {
        const { value, length } = numberIn(charsAt(m, a), base);
        if (end !== null) m.things[end.at] = moved(a!, length);
        return name === "strtol" ? Math.max(-2147483648, Math.min(2147483647, value)) : value | 0;
      },
    ),
  ),
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
];

/** The forms that take a text from flash; it is read as any other. */
const flashForms = "strlen strcmp strncmp strcasecmp strcpy strncpy strcat strncat strstr sprintf snprintf".split(" ");

export const charFunctions: readonly LibraryFunction[] = [
  ...plain,
  ...plain.filter((f) => flashForms.includes(f.name)).map((f) => ({ ...f, name: `${f.name}_P` })),
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
