// An integer program as CPLEX-LP text, which every common solver reads.
//
// Used by the references: the same model goes to other solvers and must come back with the same cost.
// Source: the LP file format as described in the reference manuals of GLPK and HiGHS.
// Does not know: what the variables mean.
import type { IntegerModel } from "../../base/index.ts";

/** Terms a line: older readers cut lines at 255 or 560 characters. */
const termsPerLine = 8;

/** @returns the model as text. Names go through as they are; rows without terms and columns without a name are not allowed. */
export function lpText(model: IntegerModel): string {
  const objective = model.variables.filter((v) => v.cost !== 0).map((v) => [v.name, v.cost] as const);
  // The format has no constant: a variable fixed at 1 carries it.
  if (model.constant !== 0) objective.push(["constant_one", model.constant]);
  const first = model.variables[0]?.name ?? "constant_one";
  if (objective.length === 0) objective.push([first, 0]);

  const rows = model.rows.flatMap(({ name, terms, lower, upper }) => {
    const sum = expression(terms.size > 0 ? [...terms] : [[first, 0]]);
    if (lower === upper) return [`${name}: ${sum} = ${lower}`];
    const low = lower > Number.NEGATIVE_INFINITY ? [`${name}${upper < Infinity ? "_low" : ""}: ${sum} >= ${lower}`] : [];
    const high = upper < Infinity ? [`${name}${lower > -Infinity ? "_high" : ""}: ${sum} <= ${upper}`] : [];
    return [...low, ...high];
  });
  const bounds = model.variables.map(({ name, lower, upper }) => {
    if (lower === Number.NEGATIVE_INFINITY && upper === Infinity) return `${name} free`;
    const low = lower === Number.NEGATIVE_INFINITY ? "-inf" : String(lower);
    return upper === Infinity ? `${name} >= ${low}` : `${low} <= ${name} <= ${upper}`;
  });
  if (model.constant !== 0) bounds.push("1 <= constant_one <= 1");
  const integers = model.variables.filter((v) => v.integer).map((v) => v.name);
  return [
    "Minimize",
    ` cost: ${expression(objective)}`,
    "Subject To",
    ...(rows.length > 0 ? rows : [`nothing: 0 ${first} >= 0`]).map((row) => ` ${row}`),
    "Bounds",
    ...bounds.map((bound) => ` ${bound}`),
    ...(integers.length > 0 ? ["General", ...integers.map((name) => ` ${name}`)] : []),
    "End",
    "",
  ].join("\n");
}

function expression(terms: readonly (readonly [name: string, factor: number])[]): string {
  return terms
    .map(
      ([name, factor], i) =>
        `${i > 0 && i % termsPerLine === 0 ? "\n   " : ""}${factor < 0 ? "-" : "+"} ${Math.abs(factor)} ${name}`,
    )
    .join(" ");
}
