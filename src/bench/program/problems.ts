// Everything that can be wrong with a program or with the inputs for a run, as codes with data.
//
// Compile problems carry the place that a person should look at: for a missing mark that is the spot where it belongs, behind
// the last token before it, and `foundLine` says where the reader noticed. `near` is the declared name that was probably meant.
// Does not know: any language's words, what a compiler would print.
import type { DocumentProblem, ProblemBase } from "../../base/index.ts";

type P<Code extends string, Data extends object = object> = ProblemBase<Code, Data>;

/** What cannot be read: characters, marks, words in the wrong place. */
export type SyntaxProblem =
  | P<"program.unknownCharacter", { readonly found: string; readonly codePoint: number }>
  | P<"program.openText", { readonly found: string }>
  | P<"program.openComment">
  | P<
      "program.expected",
      { readonly expected: string; readonly found: string; readonly foundLine: number; readonly foundColumn: number }
    >
  | P<"program.elseWithoutIf">
  | P<"program.extraBrace">
  | P<"program.functionInFunction", { readonly name: string }>
  | P<"program.noType", { readonly name: string }>
  | P<"program.unknownType", { readonly name: string; readonly near: string | null }>
  | P<"program.reservedWord", { readonly name: string }>
  | P<"program.unknownDirective", { readonly name: string; readonly near: string | null }>
  | P<"program.unclosedCondition", { readonly name: string }>
  | P<"program.unknownHeader", { readonly name: string; readonly near: string | null }>
  | P<"program.ownError", { readonly text: string }>
  | P<"program.tooLong", { readonly most: number }>
  | P<"program.tooDeep", { readonly most: number }>;

/** What can be read but does not fit together. */
export type MeaningProblem =
  | P<"program.badNumber", { readonly found: string }>
  | P<"program.unknownName", { readonly name: string; readonly near: string | null }>
  | P<"program.unknownMember", { readonly name: string; readonly of: string; readonly near: string | null }>
  | P<"program.privateMember", { readonly name: string; readonly of: string }>
  | P<"program.redefined", { readonly name: string; readonly firstLine: number }>
  | P<"program.otherType", { readonly name: string; readonly firstLine: number; readonly first: string; readonly found: string }>
  | P<"program.missingFunction", { readonly name: string; readonly near: string | null }>
  | P<"program.missingBody", { readonly name: string }>
  | P<"program.argumentCount", { readonly name: string; readonly expected: string; readonly found: number }>
  | P<"program.noMatch", { readonly name: string; readonly found: string }>
  | P<"program.ambiguous", { readonly name: string; readonly found: string }>
  | P<"program.cannotConvert", { readonly from: string; readonly to: string }>
  | P<"program.badOperands", { readonly operator: string; readonly left: string; readonly right: string }>
  | P<"program.badOperand", { readonly operator: string; readonly found: string }>
  | P<"program.assignToConst", { readonly name: string }>
  | P<"program.notAssignable", { readonly found: string }>
  | P<"program.notCallable", { readonly name: string; readonly found: string }>
  | P<"program.notArray", { readonly found: string }>
  | P<"program.notRecord", { readonly name: string; readonly found: string }>
  | P<"program.notConstant", { readonly what: string }>
  | P<"program.badArraySize", { readonly found: number }>
  | P<"program.unknownSize", { readonly name: string }>
  | P<"program.tooManyValues", { readonly most: number; readonly found: number }>
  | P<"program.noValue", { readonly name: string }>
  | P<"program.voidVariable", { readonly name: string }>
  /** A class that is used as a whole before its closing brace. */
  | P<"program.incompleteType", { readonly name: string }>
  | P<"program.duplicateCase", { readonly value: number; readonly firstLine: number }>
  | P<"program.outside", { readonly found: string; readonly of: string }>
  | P<"program.returnsNothing", { readonly name: string }>
  | P<"program.returnsSomething", { readonly name: string; readonly expected: string }>
  | P<"program.notSupported", { readonly feature: string }>
  | P<"program.memoryNeeded", { readonly bytes: number; readonly most: number }>;

/** What compiles, and still is seldom meant. Severity "warning". */
export type SilentProblem =
  | P<"program.assignmentAsTest", { readonly name: string }>
  | P<"program.emptyBody", { readonly of: string }>
  | P<"program.numberChanges", { readonly from: number; readonly to: number; readonly type: string }>
  | P<"program.overflow", { readonly from: number; readonly to: number; readonly type: string }>
  /** A shift by so many places of a number of so many bits. */
  | P<"program.shiftTooFar", { readonly count: number; readonly bits: number; readonly operator: "<<" | ">>" }>
  | P<"program.noReturn", { readonly name: string }>
  | P<"program.noEffect">
  | P<"program.macroAgain", { readonly name: string; readonly firstLine: number }>
  | P<"program.manyCharacters", { readonly found: string }>
  | SeldomMeant;

/** What compiles without a word and is seldom meant: told by explainProgram only. Severity "warning". */
export type SeldomMeant =
  /** The case above, whose first line it is, goes on into this one. */
  | P<"program.fallsThrough", { readonly firstLine: number }>
  | P<"program.pinModeMissing", { readonly name: string }>
  /** `value` is what the comparison always gives. */
  | P<"program.alwaysSame", { readonly found: string; readonly value: "true" | "false" }>
  | P<"program.chainedCompare", { readonly found: string }>
  | P<"program.constantOperand", { readonly operator: string; readonly found: string }>
  | P<"program.serialNotBegun">
  | P<"program.hidden", { readonly name: string; readonly firstLine: number }>
  | P<"program.timeInInt", { readonly name: string; readonly found: string }>
  | P<"program.textCompared", { readonly name: string }>
  | P<"program.wholeDivision", { readonly found: string }>
  /** A product of ints for a long: it is computed in an int first. */
  | P<"program.productInInt", { readonly found: string; readonly name: string }>
  /** A loop that only counts: the compiler leaves it out. */
  | P<"program.countsInVain", { readonly name: string }>
  /** A variable of a function that is read before anything was put into it. */
  | P<"program.usedUnset", { readonly name: string }>;

/** Why a run was broken off: what C++ leaves undefined or the chip cannot hold. The comment names the values. */
export type BrokenCode =
  /** index, length */
  | "program.indexOutside"
  /** no values */
  | "program.divisionByZero"
  /** bytes needed, bytes there are */
  | "program.stackOverflow"
  /** bytes needed, bytes there are */
  | "program.memoryFull"
  /** no values */
  | "program.nullPointer"
  /** no values: the result of a function that came to its end without `return` was used */
  | "program.noResult";

/** How a run can end badly, at a line. */
export type RunProblem =
  | P<BrokenCode, { readonly ms: number; readonly values: readonly number[] }>
  | P<"program.hangs", { readonly ms: number }>
  | P<"program.resets", { readonly ms: number }>;

/** What can be wrong with the inputs of a run. */
export type InputProblem =
  | P<"program.inputNotAnalog", { readonly pin: string }>
  | P<"program.unknownPin", { readonly pin: string; readonly near: string | null }>;

export type ProgramProblem = SyntaxProblem | MeaningProblem | SilentProblem | RunProblem | InputProblem | DocumentProblem;
export type ProgramProblemCode = ProgramProblem["code"];
