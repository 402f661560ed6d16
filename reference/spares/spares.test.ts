// Our chances and spares beside R's. Source: R 4.2.2; the command stands beside each row of r-4.2.2.json.
import { expect, test } from "vitest";
import { binomial, binomialQuantile, poisson, poissonQuantile } from "../../src/base/index.ts";
import { sparesFor } from "../../src/school/stock/index.ts";
import recorded from "./r-4.2.2.json" with { type: "json" };

for (const row of recorded.rows) {
  test(row.command, () => {
    row.k.forEach((k, i) => {
      const ours = row.is === "poissonAtMost" ? poisson(k, row.mean!).atMost : binomial(k, row.n!, row.p!).atMost;
      expect(Math.abs(ours - row.expected[i]!)).toBeLessThan(row.tolerance);
    });
  });
}

for (const [n, p, q90, q95, q99, reached] of recorded.binomialQuantiles.rows as [
  number,
  number,
  number,
  number,
  number,
  number,
][]) {
  test(`qbinom(c(.90, .95, .99), ${n}, ${p})`, () => {
    expect([0.9, 0.95, 0.99].map((chance) => binomialQuantile(chance, n, p))).toEqual([q90, q95, q99]);
    expect(binomial(q95, n, p).atMost).toBeCloseTo(reached, 6);
  });
}

for (const [mean, q90, q95, q99] of recorded.poissonQuantiles.rows as [number, number, number, number][]) {
  test(`qpois(c(.90, .95, .99), ${mean})`, () =>
    expect([0.9, 0.95, 0.99].map((chance) => poissonQuantile(chance, mean))).toEqual([q90, q95, q99]));
}

for (const [n, p, s95, s99] of recorded.sparesThatCanFail.rows as [number, number, number, number][]) {
  test(`spares for ${n} units of which ${p * 100} % fail`, () =>
    expect([0.95, 0.99].map((chance) => sparesFor(n, 1 - p, chance))).toEqual([s95, s99]));
}

test(recorded.reorderPoint.command, () =>
  expect(recorded.reorderPoint.chances.map((chance) => poissonQuantile(chance, recorded.reorderPoint.mean))).toEqual(
    recorded.reorderPoint.expected,
  ),
);

test("the published 42 % is the chance of two failures or fewer, not of three", () => {
  const [article] = recorded.published;
  expect(Math.abs(poisson(article!.failures!, article!.mean).atMost - article!.printed!)).toBeLessThan(0.005);
  expect(poisson(3, article!.mean).atMost).toBeCloseTo(article!.otherEvent!, 4);
});

test("the published two discs are the 95 % quantile", () => {
  const discs = recorded.published[1]!;
  expect((45 * 24 * 90) / 200_000).toBeCloseTo(discs.mean, 12);
  expect(poissonQuantile(discs.chance!, discs.mean)).toBe(discs.printedSpares);
});
