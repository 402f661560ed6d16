// memcpy, memset and memcmp: bytes of the chip, over cells.
//
// The checker knows what the pointers lead to and hands over how many cells so many bytes are; here they are moved. What lies
// outside of the thing a pointer was made for ends the run, as everywhere.
// Does not know: types.
import { broken } from "../run/halt.ts";
import type { Machine, Pointer } from "../run/machine.ts";
import { define, type LibraryFunction } from "./define.ts";

type Where = Pointer | null;

/** @returns the first of so many cells. */
function reach(m: Machine, p: Where, cells: number): number {
  if (p === null || p === undefined) return broken(m.line, "program.nullPointer");
  if (p.at < p.low || p.at + cells > p.high)
    return broken(m.line, "program.indexOutside", p.at + cells - p.low - 1, p.high - p.low);
  return p.at;
}

/** Cycles for each byte. */
const copyCycles = 8;
const setCycles = 5;

/** `bits` of a cell, negative for signed ones; 0 for what is no whole number: that can only be cleared. */
function repeated(value: number, bits: number): number {
  const all = Math.imul(value & 255, 0x01010101);
  const shift = 32 - Math.abs(bits);
  return bits < 0 ? (all << shift) >> shift : ((all << shift) >>> shift) | 0;
}

export const memoryFunctions: readonly LibraryFunction[] = [
  define(
    "memory.copy",
    "any",
    "any any unsigned unsigned",
    { cycles: 20 },
    (m, to: Where, from: Where, bytes: number, cells: number) => {
      m.clock.spend(copyCycles * bytes);
      const [start, source] = [reach(m, to, cells), reach(m, from, cells)];
      m.ints.copyWithin(start, source, source + cells);
      m.floats.copyWithin(start, source, source + cells);
      m.things.splice(start, cells, ...m.things.slice(source, source + cells));
      return to;
    },
  ),
  define(
    "memory.set",
    "any",
    "any int unsigned unsigned int",
    { cycles: 20 },
    (m, to: Where, value: number, bytes: number, cells: number, bits: number) => {
      m.clock.spend(setCycles * bytes);
      const start = reach(m, to, cells);
      if (bits !== 0) m.ints.fill(repeated(value, bits), start, start + cells);
      else {
        m.ints.fill(0, start, start + cells);
        m.floats.fill(0, start, start + cells);
        for (let i = start; i < start + cells; i += 1) m.things[i] = typeof m.things[i] === "string" ? "" : null;
      }
      return to;
    },
  ),
  define(
    "memory.compare",
    "int",
    "any any unsigned unsigned",
    { cycles: 20 },
    (m, a: Where, b: Where, bytes: number, cells: number) => {
      m.clock.spend(copyCycles * bytes);
      const [x, y] = [reach(m, a, cells), reach(m, b, cells)];
      const each = cells === 0 ? 0 : Math.floor(bytes / cells);
      for (let i = 0; i < cells; i += 1)
        for (let k = 0; k < each; k += 1) {
          const difference = ((m.ints[x + i]! >> (8 * k)) & 255) - ((m.ints[y + i]! >> (8 * k)) & 255);
          if (difference !== 0) return difference;
        }
      return 0;
    },
  ),
];
