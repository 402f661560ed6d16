// Serial: printing numbers and texts, reading what arrives.
//
// print chooses by type: a char is a letter, a byte a number, a float has two decimals; a whole number in another base than 10
// is written as its 32 bits (common practice, every textbook of the board's C++; from memory).
// Does not know: speed and buffers (run/serialLine.ts).
import { broken } from "../run/halt.ts";
import { charsAt, type Machine, type Pointer } from "../run/machine.ts";
import { readReal, readWhole } from "./charFunctions.ts";
import { changes, define, type LibraryFunction } from "./define.ts";
import { writeFloat, writeInteger } from "./writeNumber.ts";

type Writer = (m: Machine, ...values: never[]) => string;

const byte = (c: number) => String.fromCharCode(c & 255);
/** Each digit of a whole number takes a division of 32 bits; each decimal of a float one of its own and some float arithmetic. */
const digitCycles = 585;
const decimalCycles = 1200;
const floatCycles = 900;

/** print and println of one kind of value. println without a value stands apart. */
const printed: readonly (readonly [parameters: string, cycles: number, write: Writer])[] = [
  ["text", 20, (_m, t: string) => t],
  ["chars", 20, (m, p: Pointer | null) => (p === null ? "" : charsAt(m, p))],
  ["flash", 20, (_m, t: string) => t],
  ["char", 10, (_m, c: number) => byte(c)],
  ["byte int=10", 100, whole],
  ["int int=10", 100, whole],
  ["unsigned int=10", 100, whole],
  ["long int=10", 100, whole],
  ["ulong int=10", 100, (m, n: number, base: number) => whole(m, n >>> 0, base)],
  ["double int=2", floatCycles, real],
];

/** Base 0 sends the number as one byte. */
function whole(m: Machine, n: number, base: number): string {
  if (base === 0) return byte(n);
  const digits = base === 10 ? writeInteger(n, 10) : writeInteger(n >>> 0, base);
  m.clock.spend(digitCycles * digits.length);
  return digits;
}

function real(m: Machine, x: number, digits: number): string {
  const text = writeFloat(x, digits & 255);
  m.clock.spend(digitCycles * (text.length - (digits & 255)) + decimalCycles * (digits & 255));
  return text;
}

function send(m: Machine, bytes: string): number {
  m.serial.write(bytes);
  return bytes.length;
}

/** Reads on as long as characters come that `wants`, waiting for each; what does not belong is left. */
function readWhile(m: Machine, wants: (c: string, soFar: string) => boolean, most = 1000): string {
  let text = "";
  while (text.length < most) {
    const c = m.serial.waitForOne();
    if (c < 0 || !wants(byte(c), text)) break;
    text += byte(m.serial.read());
  }
  return text;
}

/** The next number: what stands before it is skipped. */
function readNumber(m: Machine, decimals: boolean): string {
  readWhile(m, (c) => !/[-0-9]/.test(c) && !(decimals && c === "."), Number.POSITIVE_INFINITY);
  return readWhile(
    m,
    (c, soFar) => /[0-9]/.test(c) || (c === "-" && soFar === "") || (decimals && c === "." && !soFar.includes(".")),
  );
}

export const serialMethods: readonly LibraryFunction[] = [
  define("Serial.begin", "void", "ulong", { cycles: 200 }, (m, baud: number) => m.serial.begin(baud >>> 0)),
  define("Serial.begin", "void", "ulong byte", { cycles: 200 }, (m, baud: number) => m.serial.begin(baud >>> 0)),
  define("Serial.end", "void", "", { cycles: 40 }, (m) => m.serial.end()),
  ...printed.flatMap(([parameters, cycles, write]) => [
    define("Serial.print", "unsigned", parameters, { cycles }, (m, ...values: never[]) => send(m, write(m, ...values))),
    define("Serial.println", "unsigned", parameters, { cycles }, (m, ...values: never[]) =>
      send(m, `${write(m, ...values)}\r\n`),
    ),
  ]),
  define("Serial.println", "unsigned", "", { cycles: 20 }, (m) => send(m, "\r\n")),
  define("Serial.write", "unsigned", "byte", { cycles: 10 }, (m, c: number) => send(m, byte(c))),
  define("Serial.write", "unsigned", "char", { cycles: 10 }, (m, c: number) => send(m, byte(c))),
  define("Serial.write", "unsigned", "int", { cycles: 10 }, (m, c: number) => send(m, byte(c))),
  define("Serial.write", "unsigned", "chars", { cycles: 20 }, (m, p: Pointer | null) => send(m, p === null ? "" : charsAt(m, p))),
  ...["bytes", "chars"].map((from) =>
    define("Serial.write", "unsigned", `${from} unsigned`, { cycles: 20 }, (m, p: Pointer | null, count: number) =>
      send(m, bytesAt(m, p, count)),
    ),
  ),
  define("Serial.flush", "void", "", { cycles: 20 }, (m) => m.serial.flush()),
  define("Serial.availableForWrite", "int", "", { cycles: 20 }, (m) => m.serial.room()),
  define("Serial.available", "int", "", { cycles: 21, still: (m) => m.serial.available() }, (m) => m.serial.available()),
  define("Serial.read", "int", "", { cycles: 19, still: (m) => (m.serial.available() > 0 ? changes : -1) }, (m) =>
    m.serial.read(),
  ),
  define("Serial.peek", "int", "", { cycles: 19, still: (m) => m.serial.peek() }, (m) => m.serial.peek()),
  define("Serial.setTimeout", "void", "ulong", { cycles: 8 }, (m, ms: number) => {
    m.serial.effects += 1;
    m.serial.patience = ms >>> 0;
  }),
  define("Serial.parseInt", "long", "", { cycles: 300 }, (m) => readWhole(readNumber(m, false)) | 0),
  define("Serial.parseFloat", "float", "", { cycles: 900 }, (m) => readReal(readNumber(m, true))),
  define("Serial.readString", "text", "", { cycles: 200 }, (m) => readWhile(m, () => true)),
  define("Serial.readStringUntil", "text", "char", { cycles: 200 }, (m, end: number) => {
    const text = readWhile(m, (c) => c !== byte(end));
    if (m.serial.peek() === (end & 255)) m.serial.read();
    return text;
  }),
  define("Serial.readBytes", "unsigned", "buffer unsigned", { cycles: 100 }, (m, to: Pointer | null, count: number) =>
    put(
      m,
      to,
      readWhile(m, () => true, count),
    ),
  ),
  define(
    "Serial.readBytesUntil",
    "unsigned",
    "char buffer unsigned",
    { cycles: 100 },
    (m, end: number, to: Pointer | null, count: number) => {
      const text = readWhile(m, (c) => c !== byte(end), count);
      if (m.serial.peek() === (end & 255)) m.serial.read();
      return put(m, to, text);
    },
  ),
  define("Serial.find", "bool", "chars", { cycles: 100 }, (m, p: Pointer | null) => {
    const wanted = charsAt(m, p);
    let seen = "";
    while (!seen.endsWith(wanted)) {
      if (m.serial.waitForOne() < 0) return 0;
      seen = (seen + byte(m.serial.read())).slice(-wanted.length - 1);
    }
    return 1;
  }),
];

function bytesAt(m: Machine, p: Pointer | null, count: number): string {
  if (p === null) return broken(m.line, "program.nullPointer");
  if (p.at < p.low || p.at + count > p.high)
    return broken(m.line, "program.indexOutside", p.at + count - p.low - 1, p.high - p.low);
  return String.fromCharCode(...Array.from(m.ints.subarray(p.at, p.at + count), (c) => c & 255));
}

function put(m: Machine, to: Pointer | null, text: string): number {
  if (to !== null)
    for (let i = 0; i < text.length && to.at + i < to.high; i += 1) m.ints[to.at + i] = (text.charCodeAt(i) << 24) >> 24;
  return text.length;
}
