// The types of the board's C++ and how large they are on the chip.
//
// int has 16 bits and double is a float: avr-gcc, checked with static_assert on avr-g++ 5.4 (sizes 1 1 2 2 4 4 4, pointers 2).
// Every plain value takes one cell of the machine's memory, whatever its size on the chip: sizes in bytes count for sizeof and
// for the 2048 bytes of RAM, cells say where a value lies.
// Does not know: expressions, scopes.

export type IntegerName =
  | "bool"
  | "char"
  | "signed char"
  | "unsigned char"
  | "short"
  | "unsigned short"
  | "int"
  | "unsigned int"
  | "long"
  | "unsigned long";

export interface IntegerType {
  readonly kind: "integer";
  readonly name: IntegerName;
}

export interface FloatType {
  readonly kind: "float";
  readonly name: "float" | "double";
}

export interface EnumInfo {
  readonly name: string;
  readonly isScoped: boolean;
  readonly values: Map<string, number>;
  /** The integer type it is held in. */
  readonly held: IntegerType;
}

export interface Field {
  readonly name: string;
  readonly type: Type;
  readonly isConst: boolean;
  readonly isPrivate: boolean;
  /** Cells from the record's beginning. */
  readonly offset: number;
  readonly line: number;
}

export interface RecordInfo {
  readonly name: string;
  readonly line: number;
  readonly fields: Field[];
  /** Sums over the fields. */
  cells: number;
  bytes: number;
  isComplete: boolean;
}

export type Type =
  | { readonly kind: "void" }
  | IntegerType
  | FloatType
  | { readonly kind: "enum"; readonly of: EnumInfo }
  | { readonly kind: "pointer"; readonly to: Type; readonly toConst: boolean }
  | { readonly kind: "array"; readonly of: Type; readonly length: number }
  | { readonly kind: "record"; readonly of: RecordInfo }
  | { readonly kind: "function"; readonly result: Type; readonly parameters: readonly Type[] }
  /** The class String. */
  | { readonly kind: "text" }
  /** What F("…") gives: a text in flash. */
  | { readonly kind: "flash" }
  | { readonly kind: "servo" }
  | { readonly kind: "serial" }
  /** nullptr. */
  | { readonly kind: "null" }
  /** Of something that a problem was reported for: fits everywhere, so that one slip is reported once. */
  | { readonly kind: "unknown" };

const integer = (name: IntegerName): IntegerType => ({ kind: "integer", name });
export const types = {
  void: { kind: "void" } as const,
  bool: integer("bool"),
  char: integer("char"),
  byte: integer("unsigned char"),
  int: integer("int"),
  unsigned: integer("unsigned int"),
  long: integer("long"),
  unsignedLong: integer("unsigned long"),
  float: { kind: "float", name: "float" } as FloatType,
  double: { kind: "float", name: "double" } as FloatType,
  text: { kind: "text" } as const,
  flash: { kind: "flash" } as const,
  servo: { kind: "servo" } as const,
  serial: { kind: "serial" } as const,
  null: { kind: "null" } as const,
  unknown: { kind: "unknown" } as const,
  constChars: { kind: "pointer", to: integer("char"), toConst: true } as Type,
  chars: { kind: "pointer", to: integer("char"), toConst: false } as Type,
};

interface IntegerFacts {
  readonly bits: 8 | 16 | 32;
  readonly isSigned: boolean;
  /** Conversion rank, C++11 section 4.13. */
  readonly rank: number;
}

export const integerFacts: Readonly<Record<IntegerName, IntegerFacts>> = {
  bool: { bits: 8, isSigned: false, rank: 0 },
  char: { bits: 8, isSigned: true, rank: 1 },
  "signed char": { bits: 8, isSigned: true, rank: 1 },
  "unsigned char": { bits: 8, isSigned: false, rank: 1 },
  short: { bits: 16, isSigned: true, rank: 2 },
  "unsigned short": { bits: 16, isSigned: false, rank: 2 },
  int: { bits: 16, isSigned: true, rank: 3 },
  "unsigned int": { bits: 16, isSigned: false, rank: 3 },
  long: { bits: 32, isSigned: true, rank: 4 },
  "unsigned long": { bits: 32, isSigned: false, rank: 4 },
};

export function isArithmetic(type: Type): type is IntegerType | FloatType {
  return type.kind === "integer" || type.kind === "float";
}

/** Values that the machine holds in one cell: all but records, arrays, void. */
export function isScalar(type: Type): boolean {
  return !["record", "array", "void", "function", "serial"].includes(type.kind);
}

/** Which memory a value of this type lies in: whole numbers, floats, or things (pointers, texts, servos). */
export function cellKind(type: Type): "int" | "float" | "object" {
  return type.kind === "integer" || type.kind === "enum" ? "int" : type.kind === "float" ? "float" : "object";
}

/** The integer type behind an enum; other types as they are. */
export function heldType(type: Type): Type {
  return type.kind === "enum" ? type.of.held : type;
}

export function cellsOf(type: Type): number {
  if (type.kind === "array") return Math.max(1, type.length * cellsOf(type.of));
  return type.kind === "record" ? Math.max(1, type.of.cells) : 1;
}

/** Size on the chip: what sizeof gives. */
export function bytesOf(type: Type): number {
  switch (type.kind) {
    case "integer":
      return integerFacts[type.name].bits / 8;
    case "float":
      return 4;
    case "enum":
      return bytesOf(type.of.held);
    case "array":
      return type.length * bytesOf(type.of);
    case "record":
      return Math.max(1, type.of.bytes);
    case "text":
      // A pointer and two 16-bit lengths.
      return 6;
    case "servo":
      // An index and two limits.
      return 3;
    case "pointer":
    case "flash":
    case "null":
    case "function":
      return 2;
    default:
      return 1;
  }
}

export function sameType(a: Type, b: Type): boolean {
  if (a === b) return true;
  if (a.kind !== b.kind) return false;
  switch (a.kind) {
    case "integer":
    case "float":
      return a.name === (b as typeof a).name;
    case "enum":
      return a.of === (b as typeof a).of;
    case "record":
      return a.of === (b as typeof a).of;
    case "pointer":
      return a.toConst === (b as typeof a).toConst && sameType(a.to, (b as typeof a).to);
    case "array":
      return a.length === (b as typeof a).length && sameType(a.of, (b as typeof a).of);
    case "function": {
      const other = b as typeof a;
      return (
        sameType(a.result, other.result) &&
        a.parameters.length === other.parameters.length &&
        a.parameters.every((p, i) => sameType(p, other.parameters[i]!))
      );
    }
    default:
      return true;
  }
}

/** The type as a person writes it: "const char*", "int [3]", "String". */
export function typeName(type: Type): string {
  switch (type.kind) {
    case "integer":
    case "float":
      return type.name;
    case "enum":
    case "record":
      return type.of.name.startsWith("#") ? type.kind : type.of.name;
    case "pointer":
      if (type.to.kind === "function") return typeName(type.to).replace("(", "(*)(");
      return `${type.toConst ? "const " : ""}${typeName(type.to)}*`;
    case "array": {
      let of: Type = type;
      let sizes = "";
      while (of.kind === "array") {
        sizes += `[${of.length}]`;
        of = of.of;
      }
      return `${typeName(of)} ${sizes}`;
    }
    case "function":
      return `${typeName(type.result)} (${type.parameters.map(typeName).join(", ")})`;
    case "text":
      return "String";
    case "flash":
      return "const __FlashStringHelper*";
    case "servo":
      return "Servo";
    case "serial":
      return "Serial";
    case "null":
      return "nullptr";
    case "unknown":
      return "?";
    default:
      return type.kind;
  }
}
