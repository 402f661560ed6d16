// Binomial and Poisson chances against exact fractions and laws. R's own figures stand in reference/spares.
import { expect, test } from "vitest";
import { sample } from "../../test/sample.ts";
import { binomial, binomialQuantile, logChanceEnough, poisson } from "./binomial.ts";
import { seededRandom } from "./random.ts";

/** P(Bin(n, a/d) ≤ k) with 40 decimals, in whole numbers: Σ C(n,i) aⁱ (d−a)ⁿ⁻ⁱ / dⁿ. */
function exactAtMost(k: number, n: number, a: bigint, d: bigint): number {
  let total = 0n;
  let choose = 1n;
  for (let i = 0; i <= k; i += 1) {
    total += choose * a ** BigInt(i) * (d - a) ** BigInt(n - i);
    choose = (choose * BigInt(n - i)) / BigInt(i + 1);
  }
  return Number((total * 10n ** 40n) / d ** BigInt(n)) / 1e40;
}

const sizes: [n: number, a: bigint, d: bigint][] = [
  [1, 1n, 2n],
  [10, 1n, 100n],
  [30, 1n, 20n],
  [90, 4n, 5n],
  [300, 1n, 50n],
  [450, 99n, 100n],
  [1000, 1n, 1000n],
];
for (const [n, a, d] of sizes)
  test(`Bin(${n}, ${a}/${d}) agrees with whole-number arithmetic to 1e-12`, () => {
    for (let k = 0; k < n; k += Math.max(1, Math.floor(n / 60))) {
      const exact = exactAtMost(k, n, a, d);
      const { atMost, more } = binomial(k, n, Number(a) / Number(d));
      expect(Math.abs(atMost - exact)).toBeLessThan(1e-12);
      expect(Math.abs(more - (1 - exact))).toBeLessThan(1e-12);
      // The small tail keeps its own digits.
      if (exact > 1e-25) expect(Math.abs(atMost / exact - 1)).toBeLessThan(1e-11);
    }
  });

test("the edges", () => {
  expect(binomial(-1, 5, 0.5)).toEqual({ atMost: 0, more: 1 });
  expect(binomial(5, 5, 0.5)).toEqual({ atMost: 1, more: 0 });
  expect(binomial(0, 5, 0)).toEqual({ atMost: 1, more: 0 });
  expect(binomial(4, 5, 1)).toEqual({ atMost: 0, more: 1 });
  expect(binomial(0, 0, 0.3).atMost).toBe(1);
  expect(poisson(0, 0).atMost).toBe(1);
  expect(binomialQuantile(1, 4, 0.5)).toBe(4);
});

test("a Poisson count of zero has chance exp(-mean)", () => {
  for (const mean of [1e-6, 0.1, 1, 7, 300]) expect(poisson(0, mean).atMost / Math.exp(-mean)).toBeCloseTo(1, 11);
});

test("chances add up: mirrored successes are failures", () => {
  const random = seededRandom(1, "binomial");
  for (let i = 0; i < sample(200, 5000); i += 1) {
    const n = random.int(1, 400);
    const k = random.int(0, n - 1);
    const p = random.next();
    expect(binomial(k, n, p).atMost).toBeCloseTo(binomial(n - k - 1, n, 1 - p).more, 12);
  }
});

test("enough of nothing is sure, and too few never are", () => {
  expect(logChanceEnough(0, 0, 0.5)).toBe(0);
  expect(logChanceEnough(3, 2, 0.999)).toBe(Number.NEGATIVE_INFINITY);
  expect(logChanceEnough(2, 2, 0.9)).toBeCloseTo(2 * Math.log(0.9), 14);
  expect(logChanceEnough(1, 2, 0.9)).toBeCloseTo(Math.log(0.99), 14);
  // 1 − 1e-20 is 1 in a double, but its logarithm is not 0.
  expect(logChanceEnough(1, 10, 0.99)).toBeCloseTo(-1e-20, 32);
});

test("the chance of enough is log-concave in the units", () => {
  for (const [wanted, works] of [
    [1, 0.3],
    [10, 0.95],
    [30, 0.8],
  ] as const) {
    let before = Number.POSITIVE_INFINITY;
    for (let have = wanted; have < wanted + 40; have += 1) {
      const gain = logChanceEnough(wanted, have + 1, works) - logChanceEnough(wanted, have, works);
      expect(gain).toBeLessThanOrEqual(before * (1 + 1e-9));
      before = gain;
    }
  }
});
