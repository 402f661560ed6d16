// The values of variables as a person writes them in C++.
//
// Does not know: which variables are shown.
import { numeric } from "../check/arithmetic.ts";
import type { CheckedProgram, Variable } from "../check/tree.ts";
import { cellKind, cellsOf, heldType, type IntegerType, type Type, typeName } from "../check/types.ts";
import { pinName } from "../pinName.ts";
import { fromBytes } from "../read/utf8.ts";
import type { FunctionPointer, Pointer, ServoState } from "../run/machine.ts";
import type { WalkValue } from "./step.ts";

/** The machine's memory at one moment. */
export interface Cells {
  readonly ints: Int32Array;
  readonly floats: Float32Array;
  readonly things: readonly unknown[];
}

/** What a pointer may lead to: variables with the cells where they lie now. */
export type Places = readonly { readonly variable: Variable; readonly cell: number }[];

export class Shower {
  private readonly program: CheckedProgram;
  private readonly cells: Cells;
  private readonly places: Places;

  constructor(program: CheckedProgram, cells: Cells, places: Places) {
    this.program = program;
    this.cells = cells;
    this.places = places;
  }

  variable(v: Variable, cell: number): Omit<WalkValue, "changed"> {
    const isSelf = v.name === "this" && v.type.kind === "pointer";
    const shown = (type: Type, at: number) => ({ ...this.value(v.name, type, at), isConst: v.isConst });
    if (!v.isReference && !isSelf) return shown(v.type, cell);
    // A reference, and the object of a method, are what they lead to.
    const pointer = this.cells.things[cell] as Pointer | null;
    const type = isSelf && v.type.kind === "pointer" ? v.type.to : v.type;
    if (pointer === null || pointer === undefined) return { ...this.plain(v.name, type, ""), isConst: v.isConst };
    return shown(type, pointer.at);
  }

  private plain(name: string, type: Type, text: string, parts: readonly WalkValue[] = []): WalkValue {
    return { name, type: typeName(type), text, parts, isConst: false, changed: false };
  }

  private value(name: string, type: Type, cell: number): WalkValue {
    if (type.kind === "array") return this.array(name, type, cell);
    if (type.kind === "record") {
      const parts = type.of.fields.map((f) => this.value(f.name, f.type, cell + f.offset));
      return this.plain(name, type, `{${parts.map((p) => `${p.name}: ${p.text}`).join(", ")}}`, parts);
    }
    switch (cellKind(type)) {
      case "int":
        return this.plain(name, type, showInteger(this.cells.ints[cell] ?? 0, type));
      case "float":
        return this.plain(name, type, showFloat(this.cells.floats[cell] ?? 0));
      default:
        return this.plain(name, type, this.thing(type, this.cells.things[cell]));
    }
  }

  private array(name: string, type: Type & { kind: "array" }, cell: number): WalkValue {
    const size = cellsOf(type.of);
    const parts = Array.from({ length: type.length }, (_, i) => this.value(`[${i}]`, type.of, cell + i * size));
    const isText = type.of.kind === "integer" && type.of.name === "char";
    return this.plain(
      name,
      type,
      isText ? this.chars(cell, cell + type.length) : `{${parts.map((p) => p.text).join(", ")}}`,
      parts,
    );
  }

  /** A text up to its closing 0, or as far as it may be read. */
  private chars(from: number, to: number): string {
    let bytes = "";
    for (let cell = from; cell < to && this.cells.ints[cell] !== 0; cell += 1)
      bytes += String.fromCharCode(this.cells.ints[cell]! & 255);
    return JSON.stringify(fromBytes(bytes).text);
  }

  private thing(type: Type, thing: unknown): string {
    if (type.kind === "text" || type.kind === "flash") return JSON.stringify(fromBytes(String(thing ?? "")).text);
    if (thing === null || thing === undefined) return type.kind === "pointer" ? "nullptr" : "";
    if (type.kind === "servo") {
      const { pin, degrees } = thing as ServoState;
      return pin < 0 ? "" : `${pinName(pin)} ${degrees}°`;
    }
    if (type.kind !== "pointer") return "";
    if ("index" in (thing as object)) return this.program.functions[(thing as FunctionPointer).index]?.name ?? "";
    const pointer = thing as Pointer;
    if (type.to.kind === "integer" && type.to.name === "char") return this.chars(pointer.at, pointer.high);
    for (const { variable, cell } of this.places) {
      if (variable.isReference || pointer.at < cell || pointer.at >= cell + cellsOf(variable.type)) continue;
      return `&${variable.name}${inside(variable.type, pointer.at - cell)}`;
    }
    return "&";
  }
}

/** Which element or field lies so many cells from the beginning: "[2].x". */
function inside(type: Type, offset: number): string {
  if (type.kind === "array") {
    const size = cellsOf(type.of);
    return `[${Math.floor(offset / size)}]${inside(type.of, offset % size)}`;
  }
  if (type.kind === "record" && offset > 0) {
    const field = type.of.fields.findLast((f) => f.offset <= offset);
    return field === undefined ? "" : `.${field.name}${inside(field.type, offset - field.offset)}`;
  }
  return "";
}

function showInteger(held: number, type: Type): string {
  const value = numeric(held, heldType(type) as IntegerType);
  if (type.kind === "enum") {
    for (const [name, of] of type.of.values) if (of === held) return name;
    return String(value);
  }
  if (type.kind !== "integer") return String(value);
  if (type.name === "bool") return held === 0 ? "false" : "true";
  if (type.name !== "char") return String(value);
  return value >= 32 && value < 127
    ? `'${value === 39 || value === 92 ? "\\" : ""}${String.fromCharCode(value)}'`
    : String(value);
}

/** The fewest digits that are this number and no other of 32 bits. */
function showFloat(value: number): string {
  if (Number.isNaN(value)) return "nan";
  if (!Number.isFinite(value)) return value > 0 ? "inf" : "-inf";
  for (let digits = 1; digits < 9; digits += 1) {
    const text = Number(value.toPrecision(digits));
    if (Math.fround(text) === value) return String(text);
  }
  return String(Number(value.toPrecision(9)));
}
