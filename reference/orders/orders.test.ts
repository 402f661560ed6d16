// Our models, solved by HiGHS as in the page, beside what glpsol and cbc proved for the same text; and known optima of books.
import highsLoader from "highs";
import { beforeAll, describe, expect, test } from "vitest";
import { highsSolver, type IntegerSolver, lpText } from "../../src/school/order/index.ts";
import { isLong } from "../../test/sample.ts";
import { hasTool, sha256, toolVersion } from "../tools.ts";
import cbc from "./cbc.json" with { type: "json" };
import glpsol from "./glpsol.json" with { type: "json" };
import { models } from "./models.ts";
import { provenCost, type Recording, runSolver, type Tool, tools } from "./record.ts";

const recorded: Record<Tool, Recording> = { glpsol, cbc };
let solve: IntegerSolver;
beforeAll(async () => {
  solve = highsSolver(await highsLoader());
});

test("at least twelve models, recorded by both solvers", () => {
  expect(models.length).toBeGreaterThanOrEqual(12);
  for (const tool of tools) expect(Object.keys(recorded[tool].models)).toEqual(models.map((m) => m.name));
});

/** Some seconds each; a run now and then is enough. */
const slow = ["steiner-27"];

for (const { name, source, model, optimum } of models.filter((m) => isLong || !slow.includes(m.name)))
  test(`${name}: ${source}`, async () => {
    const text = lpText(model);
    const ours = await solve(model, { seconds: 60, absoluteGap: 0.5 });
    expect(ours.status).toBe("optimal");
    if (ours.status !== "optimal") return;
    for (const tool of tools) {
      const { input, output, printed } = recorded[tool].models[name]!;
      expect(sha256(text), "the model changed since it was recorded").toBe(input);
      expect(sha256(printed)).toBe(output);
      expect(ours.cost).toBeCloseTo(provenCost(tool, printed)!, 5);
    }
    if (optimum !== null) expect(ours.cost).toBeCloseTo(optimum, 5);
    expect(ours.bound).toBeLessThanOrEqual(ours.cost);
    expect(ours.cost - ours.bound).toBeLessThan(0.5 + 1e-6);
    // Every row is kept, and what is whole is whole.
    for (const row of model.rows) {
      const sum = [...row.terms].reduce((total, [variable, factor]) => total + factor * ours.values.get(variable)!, 0);
      const slack = 1e-5 * Math.max(1, ...[...row.terms.values()].map(Math.abs));
      expect(sum).toBeGreaterThanOrEqual(row.lower - slack);
      expect(sum).toBeLessThanOrEqual(row.upper + slack);
    }
    for (const v of model.variables) if (v.integer) expect(Number.isInteger(ours.values.get(v.name))).toBe(true);
  });

test("our tightened model and the textbook's have the same optimum", () => {
  for (const { name } of models.filter((m) => m.name.endsWith("-plain")))
    expect(provenCost("cbc", cbc.models[name as keyof typeof cbc.models].printed)).toBe(
      provenCost("cbc", recorded.cbc.models[name.replace("-plain", "")]!.printed),
    );
});

/** Derived again in every run; all of them in the long one. */
const quick = ["knapsack-15", "steiner-9", "order-packs", "order-joint-spares", "order-thresholds", "class-2"];

for (const tool of tools)
  describe(tool, () => {
    const derive = process.env.REQUIRE_TOOLS || hasTool(tool) ? test : test.skip;
    derive(`derived again by ${tool}`, () => {
      expect(toolVersion(tool, tool === "cbc" ? "quit" : "--version")).toBe(recorded[tool].version);
      for (const { name, model } of models)
        if (isLong || quick.includes(name))
          expect(runSolver(tool, lpText(model)), name).toBe(recorded[tool].models[name]!.printed);
    });
  });
