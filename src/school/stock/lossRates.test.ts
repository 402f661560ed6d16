// Loss rates: the prior from the catalogue, the update by counts, the interval.
import { expect, test } from "vitest";
import type { Day } from "../../base/index.ts";
import { binomial } from "../../base/index.ts";
import { betaAtMost, betaQuantile } from "./betaDistribution.ts";
import { lossPerUse, lossPerYear, lossRates, rateOf, usesPerYear } from "./lossRates.ts";

const count = (item: string, out: number, back: number, broken = 0) => ({
  date: "2027-01-12" as Day,
  class: "7b",
  lesson: "lighthouse",
  item,
  out,
  back,
  broken,
});

// I_p(k + 1, n − k) = P(Bin(n, p) > k): NIST Digital Library of Mathematical Functions, 8.17.5.
for (const [k, n, p] of [
  [0, 10, 0.1],
  [3, 30, 0.05],
  [40, 90, 0.5],
  [1, 1000, 0.001],
  [200, 2000, 0.11],
] as const)
  test(`the beta distribution is the binomial seen from the other side: k ${k}, n ${n}, p ${p}`, () =>
    expect(Math.abs(betaAtMost(p, k + 1, n - k) - binomial(k, n, p).more)).toBeLessThan(1e-12));

test("Beta(1, b) has a closed form: 1 − (1 − x)^b", () => {
  for (const b of [0.5, 3.7, 91, 1500])
    for (const chance of [0.05, 0.5, 0.95]) expect(betaQuantile(chance, 1, b) / (1 - (1 - chance) ** (1 / b))).toBeCloseTo(1, 9);
});

test("a year of uses loses what the loss class says", () => {
  for (const lossClass of ["L0", "L1", "L2", "L3", "L4"] as const)
    expect(1 - (1 - lossPerUse(lossClass)) ** usesPerYear).toBeCloseTo(lossPerYear[lossClass], 12);
});

test("without counts the catalogue speaks, for every item of the kind", () => {
  const rates = lossRates({ counts: [] });
  const led = rateOf(rates, "led red");
  expect(led.lossClass).toBe("L3");
  expect(led.mean).toBeCloseTo(lossPerUse("L3"), 12);
  expect(rateOf(rates, "board").mean).toBeCloseTo(lossPerUse("L1"), 12);
  // A wide prior: the closed form of Beta(1, b) at 5 % and 95 %.
  expect(led.low).toBeCloseTo(1 - 0.95 ** (1 / (1 / led.mean - 1)), 9);
  expect(led.high).toBeCloseTo(1 - 0.05 ** (1 / (1 / led.mean - 1)), 9);
});

test("counts move the rate by the rule for beta and binomial: (1 + lost) / (1/prior + out)", () => {
  const rates = lossRates({ counts: [count("led red", 30, 28, 1), count("led red", 30, 29)] });
  const red = rateOf(rates, "led red");
  expect([red.out, red.lost]).toEqual([60, 3]);
  expect(red.mean).toBeCloseTo(4 / (1 / lossPerUse("L3") + 60), 12);
  expect(red.low).toBeLessThan(red.mean);
  expect(red.high).toBeGreaterThan(red.mean);
  expect(rateOf(rates, "led green").mean).toBeCloseTo(lossPerUse("L3"), 12);
});

test("many counts outweigh the prior, and narrow the interval", () => {
  const few = rateOf(lossRates({ counts: [count("wire", 100, 95)] }), "wire");
  const many = rateOf(lossRates({ counts: [count("wire", 10_000, 9500)] }), "wire");
  expect(many.mean).toBeCloseTo(0.05, 3);
  expect(many.high - many.low).toBeLessThan(0.2 * (few.high - few.low));
  expect(many.low).toBeLessThan(0.05);
  expect(many.high).toBeGreaterThan(0.05);
});

test("an unknown kind is taken as L2", () =>
  expect(rateOf(lossRates({ counts: [] }), "quill").mean).toBeCloseTo(lossPerUse("L2"), 12));
