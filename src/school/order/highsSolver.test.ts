// The solver of the world: what it answers in each case, and that the LP text says the same as the data.
import highsLoader, { type Highs } from "highs";
import { beforeAll, expect, test } from "vitest";
import type { IntegerModel, IntegerVariable, LinearRow } from "../../base/index.ts";
import { highsSolver, type IntegerSolver } from "./highsSolver.ts";
import { lpText } from "./lpText.ts";

let highs: Highs;
let solve: IntegerSolver;
beforeAll(async () => {
  highs = await highsLoader();
  solve = highsSolver(highs);
});
const options = { seconds: 20, absoluteGap: 0.5 };

const variable = (name: string, cost: number, lower: number, upper: number, integer = true): IntegerVariable => ({
  name,
  cost,
  lower,
  upper,
  integer,
});
const row = (name: string, terms: Record<string, number>, lower: number, upper = Infinity): LinearRow => ({
  name,
  terms: new Map(Object.entries(terms)),
  lower,
  upper,
});
const model = (variables: IntegerVariable[], rows: LinearRow[], constant = 0): IntegerModel => ({ variables, rows, constant });

const cases: [name: string, model: IntegerModel, cost: number, values: Record<string, number>][] = [
  ["whole numbers", model([variable("x", 3, 0, 9), variable("y", 2, 0, 9)], [row("r", { x: 2, y: 1 }, 5)]), 8, { x: 2, y: 1 }],
  ["a constant", model([variable("x", 3, 0, 9)], [row("r", { x: 1 }, 2)], 100), 106, { x: 2 }],
  ["a linear program", model([variable("x", 1, 0, Infinity, false)], [row("r", { x: 2 }, 5)]), 2.5, { x: 2.5 }],
  ["a row with both ends", model([variable("x", -1, 0, 99)], [row("r", { x: 2 }, 3, 9)]), -4, { x: 4 }],
  ["an equation", model([variable("x", 1, 0, 99), variable("y", 3, 0, 99)], [row("r", { x: 2, y: 3 }, 7, 7)]), 5, { x: 2, y: 1 }],
  ["numbers below nothing", model([variable("x", 1, -7, 9), variable("y", 1, -Infinity, Infinity)], [row("r", { x: 1, y: -2 }, -8, 0), row("s", { y: 1 }, -2)]), -9, { x: -7, y: -2 }],
  ["no rows", model([variable("x", -2, 0, 3)], []), -6, { x: 3 }],
  ["no variables", model([], [], 7), 7, {}],
]; // biome-ignore format: one case a line
for (const [name, stated, cost, values] of cases)
  test(name, async () => {
    const outcome = await solve(stated, options);
    if (outcome.status !== "optimal") throw new Error(outcome.status);
    expect(outcome.cost).toBeCloseTo(cost, 9);
    expect(outcome.bound).toBeCloseTo(cost, 6);
    for (const [key, value] of Object.entries(values)) expect(outcome.values.get(key)).toBeCloseTo(value, 9);
    // The text gives the same cost through HiGHS' own reader.
    if (stated.variables.length > 0)
      expect(highs.solve(lpText(stated), { output_flag: false }).ObjectiveValue).toBeCloseTo(cost, 6);
  });

test("what cannot be is said", async () =>
  expect(await solve(model([variable("x", 1, 0, 1)], [row("r", { x: 1 }, 2)]), options)).toEqual({ status: "infeasible" }));

test("an unbounded model is a bug of its author", async () =>
  expect(solve(model([variable("x", -1, 0, Infinity)], []), options)).rejects.toThrow());

test("a row that names no variable is a bug too", async () =>
  expect(solve(model([variable("x", 1, 0, 1)], [row("r", { y: 1 }, 0)]), options)).rejects.toThrow("names y"));

/** A covering problem with many near equal answers, which takes far longer to prove than to solve. */
function hard(): IntegerModel {
  const items = Array.from({ length: 60 }, (_, i) => 200 + ((i * 7919) % 101));
  return model(
    items.map((size, i) => variable(`x${i}`, size + ((i * 31) % 7), 0, 1)),
    Array.from({ length: 12 }, (_, r) =>
      row(`r${r}`, Object.fromEntries(items.map((_, i) => [`x${i}`, 100 + ((i * (r + 3) * 53) % 97)])), 3301 + r),
    ),
  );
}
test("when the time is over: the best so far, with a bound that is true", async () => {
  const short = await solve(hard(), { seconds: 0.3, absoluteGap: 0 });
  expect(["feasible", "outOfTime"]).toContain(short.status);
  if (short.status !== "feasible") return;
  expect(short.bound).toBeLessThan(short.cost);
  expect(short.bound).toBeGreaterThan(0);
});

test("no time at all: nothing found, said so", async () => {
  const outcome = await solve(hard(), { seconds: 0, absoluteGap: 0 });
  expect(outcome.status).toBe("outOfTime");
});

test("a start is taken: no time to search, yet its plan is there", async () => {
  const stated = hard();
  const start = new Map(stated.variables.map((v) => [v.name, 1]));
  const outcome = await highsSolver(highs)(stated, { seconds: 0.05, absoluteGap: 0, start });
  expect(outcome.status).toBe("feasible");
  if (outcome.status === "feasible")
    expect(outcome.cost).toBeLessThanOrEqual(stated.variables.reduce((sum, v) => sum + v.cost, 0));
});

test("the text of a model, line by line", () =>
  expect(
    lpText(
      model(
        [variable("x", 3, 0, 9), variable("y", -1, -2, Infinity, false)],
        [row("r", { x: 1, y: -2 }, 1, 5), row("s", { x: 1 }, 2, 2)],
        4,
      ),
    ),
  ).toBe(`Minimize
 cost: + 3 x - 1 y + 4 constant_one
Subject To
 r_low: + 1 x - 2 y >= 1
 r_high: + 1 x - 2 y <= 5
 s: + 1 x = 2
Bounds
 0 <= x <= 9
 y >= -2
 1 <= constant_one <= 1
General
 x
End
`));
