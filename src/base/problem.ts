// What is wrong with an input, as data.
//
// The core never makes a sentence: a problem is a code with the figures that a sentence needs, and where it is known the
// place. `language` owns the words, a test compares the placeholders. Reading never throws; a thrown error is a bug of ours.
// Does not know: any language, any particular code.

/** A place in a text that a person wrote. Lines and columns count from 1. */
export interface Place {
  readonly file: string;
  readonly line: number;
  readonly column: number;
}

/** What a problem may carry: plain data, so that it survives a worker, a file and JSON. */
export type Datum = string | number | boolean | null | readonly Datum[];

/** error: the input cannot be used; warning: it can, but a person should look. */
export type Severity = "error" | "warning";

/** One thing that is wrong: a code, its data, and the place where it stands if it stands in a text. */
export type ProblemBase<Code extends string = string, Data extends object = object> = {
  readonly code: Code;
  readonly severity?: Severity;
  readonly place?: Place;
} & Data;

/** Any problem, for code that only passes it on. */
export type AnyProblem = ProblemBase & { readonly [name: string]: unknown };

/** What reading gives: the value or null, and what was found. A value is null if and only if a problem is an error. */
export interface Reading<Value, Problem extends ProblemBase = AnyProblem> {
  readonly value: Value | null;
  readonly problems: readonly Problem[];
}

/** Errors come before warnings, then by file, line and column, then in the order given. */
export function sortProblems<P extends ProblemBase>(problems: readonly P[]): P[] {
  const rank = (p: P) => (p.severity === "warning" ? 1 : 0);
  return [...problems].sort(
    (a, b) =>
      rank(a) - rank(b) ||
      (a.place?.file ?? "").localeCompare(b.place?.file ?? "") ||
      (a.place?.line ?? 0) - (b.place?.line ?? 0) ||
      (a.place?.column ?? 0) - (b.place?.column ?? 0),
  );
}

/** @returns whether any of the problems forbids the use of the input. */
export function hasErrors(problems: readonly ProblemBase[]): boolean {
  return problems.some((p) => p.severity !== "warning");
}
