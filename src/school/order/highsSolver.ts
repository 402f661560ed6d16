// HiGHS as the solver of the world.
//
// The caller loads the WebAssembly (a page and Node do that differently) and hands the instance in. HiGHS calls an answer
// optimal once it is within its gap, 1e-4 unless told otherwise: the relative gap is set to 0 and the absolute one to what the
// caller says, and the bound is handed on, so that nobody has to believe the word.
// Does not know: how the WebAssembly is loaded, what is solved.
import type { Highs } from "highs";
import type { IntegerModel, IntegerOptions, IntegerOutcome } from "../../base/index.ts";

/** Solves one model; the same function that a `World` carries. */
export type IntegerSolver = (model: IntegerModel, options: IntegerOptions) => Promise<IntegerOutcome>;

export interface HighsOptions extends IntegerOptions {
  /** A plan to begin with, such as that of a slightly smaller budget; names that are missing count as 0. */
  readonly start?: ReadonlyMap<string, number>;
}

/**
 * @param highs a loaded instance of the npm package `highs`.
 * @returns a solver. It blocks its thread while it works; in a page it belongs in a worker. An unbounded model is a bug of
 * whoever stated it and throws.
 */
export function highsSolver(highs: Highs): (model: IntegerModel, options: HighsOptions) => Promise<IntegerOutcome> {
  return async (model, options) => {
    // HiGHS has no answer for a model without variables: each row then is a plain "lower ≤ 0 ≤ upper".
    if (model.variables.length === 0)
      return model.rows.every((row) => row.lower <= 0 && row.upper >= 0)
        ? { status: "optimal", cost: model.constant, bound: model.constant, values: new Map() }
        : { status: "infeasible" };
    return highs.withModel(sparse(highs, model), (solver): IntegerOutcome => {
      solver.options.set({
        output_flag: false,
        mip_rel_gap: 0,
        mip_abs_gap: options.absoluteGap,
        time_limit: options.seconds,
        random_seed: 0,
      });
      if (options.start) {
        const { start } = options;
        solver.setSolution({ colValue: model.variables.map((v) => start.get(v.name) ?? 0) });
      }
      solver.run();
      return outcome(highs, model, solver);
    });
  };
}

/** The part of a model's instance that is read after the run. */
type Solver = ReturnType<Highs["createModel"]>;

function outcome(highs: Highs, model: IntegerModel, solver: Solver): IntegerOutcome {
  const { modelStatus } = highs.constants;
  const status = solver.getModelStatus();
  if (status === modelStatus.infeasible) return { status: "infeasible" };
  const isInteger = model.variables.some((v) => v.integer);
  const cost = solver.getObjectiveValue();
  // A linear program has no gap of its own: its optimum is its bound.
  const bound = isInteger ? Number(solver.info.get("mip_dual_bound")) : status === modelStatus.optimal ? cost : -Infinity;
  const solution = solver.getSolution();
  // 2: a point that keeps every row (kSolutionStatusFeasible).
  const isKept = Number(solver.info.get("primal_solution_status")) === 2;
  const values = new Map(model.variables.map((v, i) => [v.name, round(v.integer, solution.colValue[i] ?? 0)] as const));
  if (status === modelStatus.optimal) return { status: "optimal", cost, bound: Math.min(bound, cost), values };
  if (status === modelStatus.timeLimit || status === modelStatus.interrupted || status === modelStatus.solutionLimit)
    return isKept ? { status: "feasible", cost, bound, values } : { status: "outOfTime", bound };
  throw new Error(`HiGHS ended with model status ${status}: the model is unbounded or badly stated`);
}

/** Whole numbers come back with some 1e-9 of noise. */
function round(isInteger: boolean, value: number): number {
  return isInteger ? Math.round(value) : value;
}

function sparse(highs: Highs, model: IntegerModel) {
  const column = new Map(model.variables.map((v, i) => [v.name, i]));
  const starts = [0];
  const indices: number[] = [];
  const values: number[] = [];
  for (const row of model.rows) {
    for (const [name, factor] of row.terms) {
      const index = column.get(name);
      if (index === undefined) throw new Error(`Row ${row.name} names ${name}, which is no variable`);
      if (factor === 0) continue;
      indices.push(index);
      values.push(factor);
    }
    starts.push(indices.length);
  }
  const list = (of: (v: IntegerModel["variables"][number]) => number) => model.variables.map(of);
  return {
    numCols: model.variables.length,
    numRows: model.rows.length,
    offset: model.constant,
    colCost: list((v) => v.cost),
    colLower: list((v) => v.lower),
    colUpper: list((v) => v.upper),
    rowLower: model.rows.map((r) => r.lower),
    rowUpper: model.rows.map((r) => r.upper),
    integrality: model.variables.map((v) =>
      v.integer ? highs.constants.variableType.integer : highs.constants.variableType.continuous,
    ),
    matrix: {
      format: "csr" as const,
      numRows: model.rows.length,
      numCols: model.variables.length,
      starts,
      indices,
      values,
    },
  };
}
