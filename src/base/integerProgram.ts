// An integer program as data: minimise a linear cost under linear rows.
//
// The order (school/order) states one, the world solves it (HiGHS in the commands and the page). It is data so that the
// references can hand the same model to other solvers as CPLEX-LP text.
// Does not know: what is bought, which solver.

export interface IntegerVariable {
  /** Letters, digits and underscore only, starting with a letter: it also stands in LP text. */
  readonly name: string;
  readonly cost: number;
  readonly lower: number;
  /** Infinity where unbounded. */
  readonly upper: number;
  readonly integer: boolean;
}

export interface LinearRow {
  readonly name: string;
  /** Variable name to coefficient. */
  readonly terms: ReadonlyMap<string, number>;
  readonly lower: number;
  readonly upper: number;
}

export interface IntegerModel {
  readonly variables: readonly IntegerVariable[];
  readonly rows: readonly LinearRow[];
  /** Added to the cost. */
  readonly constant: number;
}

export interface IntegerOptions {
  /** Seconds after which the best answer so far is given. */
  readonly seconds: number;
  /** A difference in cost that does not matter, such as 0.5 of the smallest coin. */
  readonly absoluteGap: number;
}

export type IntegerOutcome =
  | { readonly status: "optimal"; readonly cost: number; readonly bound: number; readonly values: ReadonlyMap<string, number> }
  | { readonly status: "feasible"; readonly cost: number; readonly bound: number; readonly values: ReadonlyMap<string, number> }
  | { readonly status: "infeasible" }
  | { readonly status: "outOfTime"; readonly bound: number };
