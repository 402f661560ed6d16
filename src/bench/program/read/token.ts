// One token of a program, with its place.
//
// Tokens are also what is shown and printed, so they keep where they begin and end. A token that came out of a macro keeps
// the place where the macro was used: that is the line a person can look at.
// Does not know: what the tokens mean.

export type TokenKind = "name" | "number" | "character" | "text" | "mark" | "end";

export interface Token {
  readonly kind: TokenKind;
  /** As written; for "text" and "character" with the quotes. "end" has "". */
  readonly text: string;
  /** For "text" and "character": the characters meant, one for each byte of UTF-8 (0..255). */
  readonly bytes: string;
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  /** Column behind the last character. */
  readonly endColumn: number;
  /** First on its line, so that a # may begin a directive. */
  readonly startsLine: boolean;
  /** White space or a comment stands before it. */
  readonly afterSpace: boolean;
  /** Name of the macro it came out of, or "". */
  readonly macro: string;
}

/** A spot in the program; both count from 1. */
export interface At {
  readonly line: number;
  readonly column: number;
}
