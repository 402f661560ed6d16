// The tree that the parser makes: what is written, before anything is known about names.
//
// Plain data. `at` is where a person should look: the first token of a thing, or the operator of an expression with two sides.
// Does not know: types, scopes.
import type { At } from "./token.ts";

/** A type as written. `name` is a built-in type in its one spelling ("unsigned long") or a name to be looked up. */
export interface TypeSyntax {
  readonly at: At;
  readonly name: string;
  readonly builtIn: boolean;
  readonly isConst: boolean;
  readonly isVolatile: boolean;
}

/** What follows a type: `*name[3]`, `&name`, `(*name)(int)`. */
export interface Declarator {
  readonly at: At;
  readonly name: string;
  /** The class in `Class::name`, or "". */
  readonly owner: string;
  /** One entry for each `*`: whether `const` stands behind it. */
  readonly pointers: readonly boolean[];
  readonly isReference: boolean;
  /** One entry for each `[…]`; null for `[]`. */
  readonly sizes: readonly (Expression | null)[];
  /** Parameters of a pointer to a function, or null. */
  readonly pointsToFunction: readonly Parameter[] | null;
}

export interface Parameter {
  readonly type: TypeSyntax;
  readonly declarator: Declarator;
  readonly usual: Expression | null;
}

export type Initialiser =
  /** `= value` and `{…}`. */
  | { readonly kind: "value"; readonly value: Expression }
  /** `(a, b)`. */
  | { readonly kind: "arguments"; readonly at: At; readonly values: readonly Expression[] };

export interface VariableSyntax {
  readonly declarator: Declarator;
  readonly initialiser: Initialiser | null;
}

export interface VariablesSyntax {
  readonly kind: "variables";
  readonly at: At;
  readonly type: TypeSyntax;
  readonly isStatic: boolean;
  readonly isExtern: boolean;
  readonly isConstexpr: boolean;
  /** The struct or enum that stands in place of the type's name: `struct { int x; } a, b;`. */
  readonly defines: RecordSyntax | EnumSyntax | null;
  readonly variables: readonly VariableSyntax[];
}

export interface FunctionSyntax {
  readonly kind: "function";
  readonly at: At;
  /** null for a constructor. */
  readonly type: TypeSyntax | null;
  readonly declarator: Declarator;
  readonly parameters: readonly Parameter[];
  /** A constructor's list behind the colon. */
  readonly fields: readonly { readonly at: At; readonly name: string; readonly values: readonly Expression[] }[];
  readonly isConst: boolean;
  /** null for a prototype. */
  readonly body: BlockSyntax | null;
}

export interface RecordSyntax {
  readonly kind: "record";
  readonly at: At;
  readonly name: string;
  readonly members: readonly MemberSyntax[];
}

export interface MemberSyntax {
  readonly isPrivate: boolean;
  readonly item: VariablesSyntax | FunctionSyntax | EnumSyntax | RecordSyntax;
}

export interface EnumSyntax {
  readonly kind: "enum";
  readonly at: At;
  readonly name: string;
  readonly isScoped: boolean;
  /** The type behind the colon. */
  readonly type: TypeSyntax | null;
  readonly values: readonly { readonly at: At; readonly name: string; readonly value: Expression | null }[];
}

/** `typedef` and `using`. */
export interface AliasSyntax {
  readonly kind: "alias";
  readonly at: At;
  readonly type: TypeSyntax;
  readonly declarator: Declarator;
}

export type Item = VariablesSyntax | FunctionSyntax | RecordSyntax | EnumSyntax | AliasSyntax;

export interface BlockSyntax {
  readonly kind: "block";
  readonly at: At;
  readonly list: readonly Statement[];
  /** The closing brace. */
  readonly end: At;
}

export type Statement =
  | BlockSyntax
  | VariablesSyntax
  | RecordSyntax
  | EnumSyntax
  | AliasSyntax
  | FunctionSyntax
  | { readonly kind: "expression"; readonly at: At; readonly value: Expression }
  | { readonly kind: "if"; readonly at: At; readonly test: Condition; readonly yes: Statement; readonly no: Statement | null }
  | { readonly kind: "while"; readonly at: At; readonly test: Condition; readonly body: Statement }
  | { readonly kind: "do"; readonly at: At; readonly test: Expression; readonly body: Statement }
  | {
      readonly kind: "for";
      readonly at: At;
      readonly first: Statement | null;
      readonly test: Expression | null;
      readonly step: Expression | null;
      readonly body: Statement;
    }
  | {
      readonly kind: "forEach";
      readonly at: At;
      readonly variable: VariablesSyntax;
      readonly of: Expression;
      readonly body: Statement;
    }
  | { readonly kind: "switch"; readonly at: At; readonly value: Expression; readonly body: Statement }
  /** `to` is the end of a range, `case 1 ... 5:`, which GCC takes. */
  | { readonly kind: "case"; readonly at: At; readonly value: Expression; readonly to: Expression | null }
  | { readonly kind: "default"; readonly at: At }
  | { readonly kind: "break" | "continue" | "empty"; readonly at: At }
  | { readonly kind: "return"; readonly at: At; readonly value: Expression | null };

/** `if (int x = f())` declares, anything else is an expression. */
export type Condition = Expression | VariablesSyntax;

export type Expression =
  | { readonly kind: "number"; readonly at: At; readonly text: string }
  | { readonly kind: "character"; readonly at: At; readonly bytes: string; readonly text: string }
  | { readonly kind: "text"; readonly at: At; readonly bytes: string }
  | { readonly kind: "name"; readonly at: At; readonly name: string; readonly owner: string }
  | { readonly kind: "this"; readonly at: At }
  /** - + ! ~ & * */
  | { readonly kind: "unary"; readonly at: At; readonly operator: string; readonly value: Expression }
  | { readonly kind: "step"; readonly at: At; readonly by: 1 | -1; readonly after: boolean; readonly value: Expression }
  | {
      readonly kind: "binary";
      readonly at: At;
      readonly operator: string;
      readonly left: Expression;
      readonly right: Expression;
      readonly bracketed: boolean;
    }
  /** `operator` is "" for plain =, else + - * / % & | ^ << >>. */
  | {
      readonly kind: "assign";
      readonly at: At;
      readonly operator: string;
      readonly left: Expression;
      readonly right: Expression;
      readonly bracketed: boolean;
    }
  | { readonly kind: "choose"; readonly at: At; readonly test: Expression; readonly yes: Expression; readonly no: Expression }
  | { readonly kind: "comma"; readonly at: At; readonly left: Expression; readonly right: Expression }
  | { readonly kind: "call"; readonly at: At; readonly called: Expression; readonly values: readonly Expression[] }
  | { readonly kind: "index"; readonly at: At; readonly array: Expression; readonly index: Expression }
  | {
      readonly kind: "member";
      readonly at: At;
      readonly record: Expression;
      readonly name: string;
      readonly nameAt: At;
      readonly arrow: boolean;
    }
  | {
      readonly kind: "cast";
      readonly at: At;
      readonly type: TypeSyntax;
      readonly pointers: readonly boolean[];
      readonly value: Expression;
    }
  /** `Type(a, b)` and `Type{a, b}`. */
  | { readonly kind: "make"; readonly at: At; readonly type: TypeSyntax; readonly values: readonly Expression[] }
  | { readonly kind: "sizeofType"; readonly at: At; readonly type: TypeSyntax; readonly declarator: Declarator }
  | { readonly kind: "sizeof"; readonly at: At; readonly value: Expression }
  | { readonly kind: "list"; readonly at: At; readonly values: readonly Expression[] }
  /** Stands where something could not be read; a problem was reported. */
  | { readonly kind: "broken"; readonly at: At };
