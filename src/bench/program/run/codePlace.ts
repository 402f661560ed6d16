// Where values lie: from a place in the tree to a cell, and closures that read and write it.
//
// A cell that is known before the start is a number and needs no code. Everything found at run time is checked: an index against
// its array, a pointer against the thing it was made for.
// Does not know: operators, calls.
import type { Expression, Place } from "../check/tree.ts";
import { cellKind, cellsOf, type Type } from "../check/types.ts";
import { codeCallInto, codeRecord } from "./codeCall.ts";
import { codeEffect, codeValue } from "./codeExpression.ts";
import { codeInt } from "./codeInt.ts";
import type { Coder, Num, Spot, Thing } from "./coder.ts";
import { codeStatements } from "./codeStatement.ts";
import { codeThing } from "./codeThing.ts";
import { broken } from "./halt.ts";
import type { Pointer } from "./machine.ts";

/** Code that finds the cell, whether or not it is known. */
export function finder(spot: Spot): Num {
  return typeof spot === "number" ? () => spot : spot;
}

export function codePlace(c: Coder, place: Place): Spot {
  const { m } = c;
  switch (place.at) {
    case "variable": {
      const { cell, inFrame } = place.variable;
      return inFrame ? () => m.frame + cell : cell;
    }
    case "literal":
      return c.program.literals[place.literal]!.cell;
    case "field": {
      const record = codePlace(c, place.record);
      const { offset } = place;
      if (typeof record === "number") return record + offset;
      return offset === 0 ? record : () => record() + offset;
    }
    case "index":
      return codeIndex(c, place);
    case "pointer": {
      const pointer = codeThing(c, place.pointer);
      const size = cellsOf(place.type);
      const { line } = place;
      return () => follow(pointer() as Pointer | null, size, line);
    }
    case "temporary": {
      const cell = codePlace(c, { at: "variable", type: place.type, isConst: false, variable: place.variable });
      const put = codePut(c, cell, place.value.type, place.value);
      const find = finder(cell);
      return () => {
        put();
        return find();
      };
    }
    case "after": {
      const effect = codeEffect(c, place.effect);
      const find = finder(codePlace(c, place.place));
      return () => {
        effect();
        return find();
      };
    }
    case "call":
      return codeCallInto(c, place.call);
    case "built": {
      const first = codeStatements(c, place.first);
      const find = finder(codePlace(c, { at: "variable", type: place.type, isConst: false, variable: place.variable }));
      return () => {
        first();
        return find();
      };
    }
    case "letter":
      // A letter of a String has no cell; it is read and written by codeExpression.ts.
      return 0;
  }
}

function codeIndex(c: Coder, place: Place & { at: "index" }): Spot {
  const array = codePlace(c, place.array);
  const { length, line, index } = place;
  const size = cellsOf(place.type);
  if (index.op === "number") {
    const i = index.value;
    if (i >>> 0 >= length) return () => broken(line, "program.indexOutside", i, length);
    return typeof array === "number" ? array + i * size : () => array() + i * size;
  }
  const find = codeInt(c, index);
  if (typeof array === "number" && size === 1) {
    return () => {
      const i = find();
      if (i >>> 0 >= length) broken(line, "program.indexOutside", i, length);
      return array + i;
    };
  }
  const base = finder(array);
  return () => {
    const i = find();
    if (i >>> 0 >= length) broken(line, "program.indexOutside", i, length);
    return base() + i * size;
  };
}

/** @returns the cell a pointer leads to, if all of the thing there lies inside what the pointer was made for. */
export function follow(p: Pointer | null, size: number, line: number): number {
  if (p === null || p === undefined) return broken(line, "program.nullPointer");
  if (p.at < p.low || p.at + size > p.high)
    return broken(line, "program.indexOutside", Math.floor((p.at - p.low) / size), Math.floor((p.high - p.low) / size));
  return p.at;
}

/** Code that makes a pointer to a place. A pointer into an array may move over all of it. */
export function codeAddress(c: Coder, place: Place): Thing {
  if (place.at === "index") {
    const array = codePlace(c, place.array);
    const { length, line, index } = place;
    const size = cellsOf(place.type);
    const find = codeInt(c, index);
    const base = finder(array);
    return () => {
      const i = find();
      // One behind the end may be pointed to, not read.
      if (i >>> 0 > length) broken(line, "program.indexOutside", i, length);
      const low = base();
      return { at: low + i * size, low, high: low + length * size };
    };
  }
  if (place.at === "pointer") return codeThing(c, place.pointer);
  const cells = cellsOf(place.type);
  const spot = codePlace(c, place);
  if (typeof spot === "number") {
    const pointer: Pointer = { at: spot, low: spot, high: spot + cells };
    return () => pointer;
  }
  return () => {
    const at = spot();
    return { at, low: at, high: at + cells };
  };
}

/** Code that puts a value of any type into a cell (a record: into the cells from there on). */
export function codePut(c: Coder, spot: Spot, type: Type, value: Expression): () => void {
  const { ints: I, floats: F, things: O } = c.m;
  if (type.kind === "record") {
    const from = finder(codeRecord(c, value));
    const to = finder(spot);
    const cells = cellsOf(type);
    return () => copyCells(c, from(), to(), cells);
  }
  const find = finder(spot);
  switch (cellKind(type)) {
    case "int": {
      const code = codeInt(c, value);
      return () => {
        const v = code();
        I[find()] = v;
      };
    }
    case "float": {
      const code = codeValue(c, value) as Num;
      return () => {
        const v = code();
        F[find()] = v;
      };
    }
    default: {
      const code = codeThing(c, value);
      return () => {
        const v = code();
        O[find()] = v;
      };
    }
  }
}

export function copyCells(c: Coder, from: number, to: number, cells: number): void {
  const { ints, floats, things } = c.m;
  ints.copyWithin(to, from, from + cells);
  floats.copyWithin(to, from, from + cells);
  for (let i = 0; i < cells; i += 1) things[to + i] = things[from + i];
}
