// The running board: memory, clock, pins, serial port, and what else a library function may need.
//
// Memory is cells, one for each plain value, in three arrays side by side: whole numbers, floats, and things (pointers, texts,
// servos); a value's type says in which it lies. That is not how the chip holds them, but a program cannot tell, and V8 runs it
// an order of magnitude faster than bytes.
// Does not know: the program's tree, how code is made.
import type { BoardPort } from "../port.ts";
import type { Clock } from "./clock.ts";
import { broken } from "./halt.ts";
import type { Interrupts } from "./interrupts.ts";
import type { Pins } from "./pins.ts";
import type { SerialLine } from "./serialLine.ts";

/** Leads to a cell of a thing that lies in the cells from `low` up to `high`. */
export interface Pointer {
  readonly at: number;
  readonly low: number;
  readonly high: number;
}

export interface FunctionPointer {
  readonly index: number;
}

export interface ServoState {
  /** −1 while it is not attached. */
  pin: number;
  micros: number;
  /** The angle that was written, or that belongs to the width. */
  degrees: number;
  least: number;
  most: number;
  /** Some width was written; before that the first pulse comes 20 ms after attaching. */
  isWritten: boolean;
}

export interface Machine {
  readonly ints: Int32Array;
  readonly floats: Float32Array;
  readonly things: unknown[];
  readonly clock: Clock;
  readonly pins: Pins;
  readonly serial: SerialLine;
  readonly interrupts: Interrupts;
  readonly port: BoardPort;
  /** Where the variables of the running reentrant function begin, and where the next frame would. */
  frame: number;
  top: number;
  /** Bytes of the chip's stack in use, and how many there are. */
  stack: number;
  readonly stackRoom: number;
  /** What the last `return` gave. */
  result: unknown;
  /** The line of the library call that is running. */
  line: number;
  /** State of random(). */
  luck: number;
  servos: ServoState[];
  /** Where strtok goes on. */
  cutting: Pointer | null;
  /** Cells that hold what c_str() gave, used in turn. */
  readonly scratch: { readonly low: number; readonly high: number; next: number };
  /** Runs a function of the program without values. */
  call(index: number): void;
}

/** The characters from a pointer up to the closing 0. @param most stops there. */
export function charsAt(m: Machine, pointer: Pointer | null, most = Number.POSITIVE_INFINITY): string {
  if (pointer === null) broken(m.line, "program.nullPointer");
  let text = "";
  for (let cell = pointer.at; text.length < most; cell += 1) {
    if (cell < pointer.low || cell >= pointer.high)
      return broken(m.line, "program.indexOutside", cell - pointer.low, pointer.high - pointer.low);
    const c = m.ints[cell]!;
    if (c === 0) break;
    text += String.fromCharCode(c & 255);
  }
  return text;
}

/** Writes characters and a closing 0 into the cells behind a pointer. */
export function putChars(m: Machine, pointer: Pointer | null, bytes: string): void {
  if (pointer === null) broken(m.line, "program.nullPointer");
  const end = pointer.at + bytes.length;
  if (pointer.at < pointer.low || end >= pointer.high)
    broken(m.line, "program.indexOutside", end - pointer.low, pointer.high - pointer.low);
  for (let i = 0; i < bytes.length; i += 1) m.ints[pointer.at + i] = (bytes.charCodeAt(i) << 24) >> 24;
  m.ints[end] = 0;
}

/** A pointer to a copy of the text that lasts until the scratch cells have been used up once. */
export function scratchPointer(m: Machine, bytes: string): Pointer {
  const { scratch } = m;
  if (scratch.next + bytes.length + 1 > scratch.high) scratch.next = scratch.low;
  const low = scratch.next;
  const pointer = { at: low, low, high: low + bytes.length + 1 };
  putChars(m, pointer, bytes);
  scratch.next = pointer.high;
  return pointer;
}

/** RAM that a text would take beside all else; more than there is ends the run. */
export function checkRoom(m: Machine, bytes: string): string {
  const room = m.stackRoom - m.stack;
  if (bytes.length > room) return broken(m.line, "program.memoryFull", bytes.length, room);
  return bytes;
}
