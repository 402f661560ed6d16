// What an explanation consists of: a code for what is wrong, the token it is about, the lines to look at, how to mend it.
//
// The codes name a beginner's slip, not a rule of the grammar: the compiler's one "expected ';'" can be a forgotten semicolon,
// an operator left out or a bracket too many. `language` has three texts for each: what is wrong, where to look, what to do.
// Does not know: how a slip is told from the compiler's words (diagnose.ts).

export type ExplainCode =
  | "semicolonMissing"
  | "commaMissing"
  | "pointMissing"
  | "colonMissing"
  | "operatorMissing"
  | "valueMissing"
  | "bracketNotClosed"
  | "bracketNotOpened"
  | "bracketTooMany"
  | "squareBracketMissing"
  | "braceNotClosed"
  | "braceNotOpened"
  | "braceTooMany"
  | "quoteMissing"
  | "quotesForText"
  | "typographicQuotes"
  | "longDash"
  | "strangeSpace"
  | "fullWidthMark"
  | "strayCharacter"
  | "commentNotClosed"
  | "commentSlash"
  | "wrongCapitals"
  | "nameMisspelt"
  | "wordMisspelt"
  | "nameUnknown"
  | "functionUnknown"
  | "outOfReach"
  | "functionHidden"
  | "typeMissing"
  | "typeUnknown"
  | "typeInCall"
  | "returnTypeMissing"
  | "memberUnknown"
  | "memberPrivate"
  | "headSemicolon"
  | "semicolonBehindIf"
  | "elseAlone"
  | "statementOutside"
  | "compareInDeclaration"
  | "assignInTest"
  | "swappedOperator"
  | "notAssignable"
  | "constAssigned"
  | "declaredTwice"
  | "declaredOtherwise"
  | "tooFewValues"
  | "tooManyValues"
  | "wrongValues"
  | "wrongKind"
  | "textCompared"
  | "notTogether"
  | "notAFunction"
  | "notAnArray"
  | "notAThing"
  | "sizeMissing"
  | "sizeNotKnown"
  | "firstValueMissing"
  | "leadingZero"
  | "digitFirst"
  | "reservedName"
  | "badNumber"
  | "hashMissing"
  | "headerUnknown"
  | "headerMarks"
  | "directiveUnknown"
  | "conditionOpen"
  | "ownError"
  | "outsideLoop"
  | "outsideSwitch"
  | "caseTwice"
  | "functionMissing"
  | "bodyMissing"
  | "resultNotWanted"
  | "resultMissing"
  | "noResult"
  | "numberTooLarge"
  | "shiftTooFar"
  | "other";

/** One edit that mends the slip, where it is certain enough to be offered. Columns count from 1. */
export interface Fix {
  readonly edit: "insert" | "replace" | "remove";
  readonly line: number;
  readonly column: number;
  /** What is put in; "" for a removal. */
  readonly text: string;
  /** What stands there now; "" for an insertion. */
  readonly found: string;
}

export interface Explained {
  readonly code: ExplainCode;
  /** The token or name that it is about, as it is written. */
  readonly name: string;
  /** The name or word that was probably meant. */
  readonly near: string | null;
  readonly expected: string | null;
  readonly found: string | null;
  /** Where something was first declared. */
  readonly firstLine: number | null;
  /** Lines to look at, the likeliest first. */
  readonly look: readonly number[];
  readonly fix: Fix | null;
}
