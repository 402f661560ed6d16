// Where every variable lies, which functions can run twice at a time, and how much RAM the program takes.
//
// Functions that cannot call themselves keep their variables in fixed cells, which makes them fast; the others, and what an
// interrupt may call, get a frame for each call. The bytes are those of the chip: text constants lie in RAM there too, as do
// 9 bytes of clock and, if text is sent, 157 of the serial port with its two buffers of 64 (reference/programs, avr-size).
// Does not know: how cells are used.
import type { Checker } from "./checker.ts";
import type { FunctionInfo, Variable } from "./tree.ts";
import { bytesOf, cellsOf } from "./types.ts";

export interface Layout {
  readonly literals: readonly { readonly bytes: string; readonly cell: number }[];
  readonly cells: number;
  readonly staticBytes: number;
}

/** ATmega328P data sheet, section 8.3: 2048 bytes of internal SRAM. */
export const ramBytes = 2048;
const clockBytes = 9;
const serialBytes = 157;

export function layOut(c: Checker, usesSerial: boolean): Layout {
  markReentrant(c);
  let cell = 1; // Cell 0 belongs to nobody, so that no address is 0.
  let bytes = clockBytes + (usesSerial ? serialBytes : 0);
  const place = (v: Variable) => {
    v.cell = cell;
    cell += v.isReference ? 1 : cellsOf(v.type);
  };
  for (const v of c.statics) {
    place(v);
    if (v.constant === null) bytes += bytesOf(v.type);
  }
  const literals = [...c.literals.keys()].map((text) => {
    const at = cell;
    cell += text.length + 1;
    bytes += text.length + 1;
    return { bytes: text, cell: at };
  });
  for (const f of c.functions) {
    f.stackBytes = stackBytes(f);
    if (f.isReentrant) {
      let offset = 0;
      for (const v of f.locals) {
        v.cell = offset;
        v.inFrame = true;
        offset += v.isReference ? 1 : cellsOf(v.type);
      }
      f.cells = offset;
    } else for (const v of f.locals) place(v);
  }
  return { literals, cells: cell, staticBytes: bytes };
}

/** What one call takes from the stack: the return address, saved registers, and variables that do not fit into registers. */
function stackBytes(f: FunctionInfo): number {
  let inRegisters = 0;
  let inMemory = 0;
  for (const v of f.locals) {
    const bytes = v.isReference ? 2 : bytesOf(v.type);
    if (v.inMemory) inMemory += bytes;
    else inRegisters += bytes;
  }
  // Sixteen registers survive a call (avr-gcc's calling convention); what is in them was saved to the stack first.
  return 2 + Math.min(16, inRegisters) + Math.max(0, inRegisters - 16) + inMemory + (inMemory > 0 ? 2 : 0);
}

/** Finds functions on a circle of calls, and all that a function reaches whose address was taken. */
function markReentrant(c: Checker): void {
  const reach = (from: FunctionInfo): Set<number> => {
    const seen = new Set<number>();
    const open = [...from.calls];
    while (open.length > 0) {
      const next = open.pop()!;
      if (seen.has(next)) continue;
      seen.add(next);
      open.push(...c.functions[next]!.calls);
    }
    return seen;
  };
  for (const f of c.addressed) {
    f.isReentrant = true;
    for (const k of reach(f)) c.functions[k]!.isReentrant = true;
  }
  for (const f of c.functions) if (!f.isReentrant && reach(f).has(f.index)) f.isReentrant = true;
}
