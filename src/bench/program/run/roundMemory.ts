// Memory as one round of a loop would leave it, while the real one stays as it is.
//
// What is written lies above what was there; what was read before it was written is remembered. A round leaves everything as it
// was if all that it read first is unchanged in the end: what it wrote before reading, the next round writes again.
// Does not know: statements, expressions.
import { cellKind, cellsOf, type Type } from "../check/types.ts";
import type { Machine, Pointer } from "./machine.ts";
import { still, type Timed } from "./timed.ts";

export class RoundMemory {
  private readonly m: Machine;
  private readonly ints = new Map<number, Timed>();
  private readonly floats = new Map<number, number>();
  private readonly things = new Map<number, unknown>();
  private readonly readInts = new Set<number>();
  private readonly readFloats = new Set<number>();
  private readonly readThings = new Set<number>();

  constructor(m: Machine) {
    this.m = m;
  }

  /** Whether every cell that was read as it was before the round is still so. A number that moves with time is not. */
  isAsBefore(): boolean {
    for (const [cell, timed] of this.ints)
      if ((timed.slope !== 0 || timed.value !== this.m.ints[cell]) && this.readInts.has(cell)) return false;
    for (const [cell, value] of this.floats)
      if (!Object.is(value, this.m.floats[cell]) && this.readFloats.has(cell)) return false;
    for (const [cell, thing] of this.things) if (!isSame(thing, this.m.things[cell]) && this.readThings.has(cell)) return false;
    return true;
  }

  loadInt(cell: number): Timed {
    const written = this.ints.get(cell);
    if (written !== undefined) return written;
    this.readInts.add(cell);
    return still(this.m.ints[cell]!);
  }

  loadFloat(cell: number): number {
    const written = this.floats.get(cell);
    if (written !== undefined) return written;
    this.readFloats.add(cell);
    return this.m.floats[cell]!;
  }

  loadThing(cell: number): unknown {
    if (this.things.has(cell)) return this.things.get(cell);
    this.readThings.add(cell);
    return this.m.things[cell];
  }

  putInt(cell: number, value: Timed): void {
    this.ints.set(cell, value);
  }

  putFloat(cell: number, value: number): void {
    this.floats.set(cell, value);
  }

  putThing(cell: number, value: unknown): void {
    this.things.set(cell, value);
  }

  /** @param value a Timed, a float, a thing, or for a record the cell where it begins. */
  put(cell: number, type: Type, value: unknown): void {
    if (type.kind === "record") this.copy(value as number, cell, cellsOf(type));
    else if (cellKind(type) === "int") this.ints.set(cell, value as Timed);
    else if (cellKind(type) === "float") this.floats.set(cell, value as number);
    else this.things.set(cell, value);
  }

  private copy(from: number, to: number, cells: number): void {
    for (let i = 0; i < cells; i += 1) {
      this.ints.set(to + i, this.loadInt(from + i));
      this.floats.set(to + i, this.loadFloat(from + i));
      this.things.set(to + i, this.loadThing(from + i));
    }
  }
}

function isSame(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return false;
  const [p, q] = [a as Partial<Pointer>, b as Partial<Pointer>];
  return p.at !== undefined && p.at === q.at && p.low === q.low && p.high === q.high;
}
