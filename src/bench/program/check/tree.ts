// The checked program: every name resolved, every conversion written out, every value with its type.
//
// The compiler to closures, the walker that looks for waiting loops, and the estimate of cycles all read this one tree. It is
// plain data. Numbers are held as arithmetic.ts says.
// Does not know: scopes, how it is run.
import type { ArithmeticOperator, CompareOperator } from "./arithmetic.ts";
import type { FloatType, IntegerType, RecordInfo, Type } from "./types.ts";

export interface Variable {
  readonly name: string;
  readonly type: Type;
  readonly isConst: boolean;
  readonly isReference: boolean;
  readonly line: number;
  /** The last line of the block that it belongs to; Infinity for globals. */
  readonly lastLine: number;
  /** global and static ones live as long as the program, local ones as long as their function's call. */
  readonly storage: "global" | "static" | "local" | "parameter";
  /** Its value if it is a constant known before the start. */
  constant: number | null;
  /** Cell in memory; from the frame's beginning where `inFrame`. Set by the layout, when all calls are known. */
  cell: number;
  inFrame: boolean;
  /** Some pointer or reference leads to it, or it is volatile, an array or a record: it cannot live in registers. */
  inMemory: boolean;
}

export interface FunctionInfo {
  readonly name: string;
  readonly owner: RecordInfo | null;
  readonly index: number;
  readonly line: number;
  readonly result: Type;
  readonly resultIsReference: boolean;
  readonly parameters: readonly Variable[];
  /** Value of each parameter that may be left out. */
  readonly usual: readonly (Expression | null)[];
  /** The hidden pointer to the record, for methods and constructors. */
  readonly self: Variable | null;
  readonly isConstructor: boolean;
  readonly isPrivate: boolean;
  readonly isConst: boolean;
  /** All variables that live during a call, parameters and hidden ones included. */
  readonly locals: Variable[];
  body: Statement | null;
  /** Indices of the functions it calls. */
  readonly calls: Set<number>;
  /** It can run twice at a time (it calls itself, or an interrupt calls it): its variables lie in a frame. */
  isReentrant: boolean;
  /** Cells of a frame. */
  cells: number;
  /** Bytes of RAM a call takes on the chip, estimated: return address, saved registers, variables in memory. */
  stackBytes: number;
  /** All ways through it end in `return`. */
  returns: boolean;
}

export type Arithmetic = IntegerType | FloatType;

export type Expression =
  | { readonly op: "number"; readonly type: Type; readonly value: number }
  /** A text constant where a String or a text in flash is wanted. */
  | { readonly op: "text"; readonly type: Type; readonly bytes: string }
  | { readonly op: "null"; readonly type: Type }
  | { readonly op: "load"; readonly type: Type; readonly place: Place }
  /** Places of type record: the value is the cells there. */
  | { readonly op: "record"; readonly type: Type; readonly place: Place }
  | { readonly op: "assign"; readonly type: Type; readonly place: Place; readonly value: Expression }
  /** place = place op value, computed in the type `inType`; shifts promote the left side only. */
  | {
      readonly op: "compound";
      readonly type: Type;
      readonly place: Place;
      readonly operator: ArithmeticOperator | "<<" | ">>";
      readonly value: Expression;
      readonly inType: Arithmetic;
      readonly line: number;
    }
  /** ++ and -- of a number; of a pointer it moves by `stride` cells. */
  | {
      readonly op: "step";
      readonly type: Type;
      readonly place: Place;
      readonly by: 1 | -1;
      readonly after: boolean;
      readonly stride: number;
    }
  /** place += count for a pointer. */
  | {
      readonly op: "advance";
      readonly type: Type;
      readonly place: Place;
      readonly count: Expression;
      readonly stride: number;
      readonly sign: 1 | -1;
    }
  | { readonly op: "negate" | "complement"; readonly type: Arithmetic; readonly value: Expression }
  | {
      readonly op: "arithmetic";
      readonly type: Arithmetic;
      readonly operator: ArithmeticOperator;
      readonly left: Expression;
      readonly right: Expression;
      readonly line: number;
    }
  | {
      readonly op: "shift";
      readonly type: IntegerType;
      readonly operator: "<<" | ">>";
      readonly left: Expression;
      readonly right: Expression;
    }
  /** Both sides have the same type, `inType`. */
  | {
      readonly op: "compare";
      readonly type: Type;
      readonly operator: CompareOperator;
      readonly left: Expression;
      readonly right: Expression;
      readonly inType: Arithmetic;
    }
  | {
      readonly op: "comparePointers";
      readonly type: Type;
      readonly operator: CompareOperator;
      readonly left: Expression;
      readonly right: Expression;
    }
  /** `value` has type bool. */
  | { readonly op: "not"; readonly type: Type; readonly value: Expression }
  | { readonly op: "and" | "or"; readonly type: Type; readonly left: Expression; readonly right: Expression }
  /** Between numbers. From a pointer, text or thing to bool: `isSet`. */
  | { readonly op: "convert"; readonly type: Type; readonly from: Arithmetic; readonly value: Expression }
  | { readonly op: "isSet"; readonly type: Type; readonly value: Expression }
  | { readonly op: "choose"; readonly type: Type; readonly test: Expression; readonly yes: Expression; readonly no: Expression }
  | { readonly op: "comma"; readonly type: Type; readonly first: Expression; readonly second: Expression }
  | CallExpression
  /** A function of the library by its name and the number of its form. */
  | {
      readonly op: "library";
      readonly type: Type;
      readonly name: string;
      readonly values: readonly Expression[];
      readonly line: number;
    }
  /** A method that changes a String: the library gives the new text, which is put back. The value is the new text, or 1. */
  | {
      readonly op: "changeText";
      readonly type: Type;
      readonly place: Place;
      readonly name: string;
      readonly values: readonly Expression[];
      readonly line: number;
    }
  | { readonly op: "address"; readonly type: Type; readonly place: Place }
  | {
      readonly op: "movePointer";
      readonly type: Type;
      readonly pointer: Expression;
      readonly count: Expression;
      readonly stride: number;
      readonly sign: 1 | -1;
    }
  | {
      readonly op: "pointerDifference";
      readonly type: Type;
      readonly left: Expression;
      readonly right: Expression;
      readonly stride: number;
    }
  | { readonly op: "function"; readonly type: Type; readonly index: number };

export interface CallExpression {
  readonly op: "call";
  readonly type: Type;
  /** Index of the function, or a pointer to one. */
  readonly called: number | Expression;
  /** The record of a method call. */
  readonly self: Place | null;
  /** For reference parameters an "address"; for records a "record". */
  readonly values: readonly Expression[];
  /** Where a record that is given back is put. */
  readonly into: Variable | null;
  readonly line: number;
}

/** Where a value lies. */
export type Place =
  | { readonly at: "variable"; readonly type: Type; readonly isConst: boolean; readonly variable: Variable }
  /** What a pointer (or reference) leads to. */
  | {
      readonly at: "pointer";
      readonly type: Type;
      readonly isConst: boolean;
      readonly pointer: Expression;
      readonly line: number;
    }
  | {
      readonly at: "index";
      readonly type: Type;
      readonly isConst: boolean;
      readonly array: Place;
      readonly index: Expression;
      readonly length: number;
      readonly line: number;
    }
  | { readonly at: "field"; readonly type: Type; readonly isConst: boolean; readonly record: Place; readonly offset: number }
  /** The characters of a text constant, by its number. */
  | { readonly at: "literal"; readonly type: Type; readonly isConst: boolean; readonly literal: number }
  /** A value that needs a place for a while; evaluated first. */
  | {
      readonly at: "temporary";
      readonly type: Type;
      readonly isConst: boolean;
      readonly variable: Variable;
      readonly value: Expression;
    }
  /** `effect` first, then the place: (a = b) as a place, ++x. */
  | { readonly at: "after"; readonly type: Type; readonly isConst: boolean; readonly effect: Expression; readonly place: Place }
  /** A record that a call gives back or a constructor fills. */
  | { readonly at: "call"; readonly type: Type; readonly isConst: boolean; readonly call: CallExpression }
  | {
      readonly at: "built";
      readonly type: Type;
      readonly isConst: boolean;
      readonly variable: Variable;
      readonly first: readonly Statement[];
    }
  /** A letter of a String. */
  | { readonly at: "letter"; readonly type: Type; readonly isConst: boolean; readonly text: Place; readonly index: Expression };

export type Statement =
  | { readonly do: "expression"; readonly value: Expression; readonly line: number }
  | { readonly do: "block"; readonly list: readonly Statement[] }
  | {
      readonly do: "if";
      readonly test: Expression;
      readonly yes: Statement;
      readonly no: Statement | null;
      readonly line: number;
    }
  | { readonly do: "while"; readonly test: Expression; readonly body: Statement; readonly line: number }
  | { readonly do: "doWhile"; readonly test: Expression; readonly body: Statement; readonly line: number }
  | {
      readonly do: "for";
      readonly first: Statement | null;
      readonly test: Expression | null;
      readonly step: Expression | null;
      readonly body: Statement;
      readonly line: number;
    }
  | {
      readonly do: "switch";
      readonly value: Expression;
      /** Held value to the statement where it begins. */
      readonly cases: ReadonlyMap<number, number>;
      /** Where `default` begins; the list's length if there is none. */
      readonly otherwise: number;
      readonly list: readonly Statement[];
      readonly line: number;
    }
  | { readonly do: "break" | "continue" }
  | { readonly do: "return"; readonly value: Expression | null; readonly line: number }
  /** Fills cells from the place on with numbers known before the start; all of one kind. */
  | { readonly do: "fill"; readonly place: Place; readonly kind: "int" | "float"; readonly values: readonly number[] }
  /** Sets all cells of the place to 0, "", null or a new servo, by their types. */
  | { readonly do: "clear"; readonly place: Place }
  /** The initialiser of a static local, once in a run. */
  | { readonly do: "once"; readonly flag: Variable; readonly body: Statement };

export interface CheckedProgram {
  readonly file: string;
  readonly functions: readonly FunctionInfo[];
  readonly setup: number;
  readonly loop: number;
  /** serialEvent(), called between rounds of loop() when text has arrived; −1 if there is none. */
  readonly onText: number;
  /** Globals and statics. */
  readonly statics: readonly Variable[];
  /** Initialisers of globals: constant ones first, then the others in order. */
  readonly first: readonly Statement[];
  /** Text constants, each with its closing 0, and the cell where it begins. */
  readonly literals: readonly { readonly bytes: string; readonly cell: number }[];
  /** Cells of globals, statics, literals and the variables of functions that run once at a time. */
  readonly cells: number;
  /** RAM that is taken before the start. */
  readonly staticBytes: number;
  readonly lines: number;
  /** Lines of #include on which a header's own functions stand: a walk goes over these. */
  readonly headerLines: ReadonlySet<number>;
}
