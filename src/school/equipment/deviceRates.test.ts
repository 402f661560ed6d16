// The chance that enough devices work, against R.
import { expect, test } from "vitest";
import { chanceEnough, deviceRates } from "./deviceRates.ts";

// R 4.2.2, pbinom(0:5, 30, .05): at most k of 30 fail.
const published = [0.21463876, 0.55354208, 0.81217881, 0.93922844, 0.98436449, 0.99671751];
for (const [k, chance] of published.entries())
  test(`at most ${k} of 30 fail at 5 %`, () => expect(chanceEnough(30, 30 - k, 0.95)).toBeCloseTo(chance, 7));

// R 4.2.2: the smallest s with pbinom(s, 30 + s, p) >= c, where spares can fail too.
const spares: [p: number, chance: number, s: number][] = [
  [0.01, 0.95, 1],
  [0.02, 0.95, 2],
  [0.05, 0.95, 4],
  [0.1, 0.95, 7],
  [0.01, 0.99, 2],
  [0.02, 0.99, 3],
  [0.05, 0.99, 5],
  [0.1, 0.99, 9],
];
for (const [p, chance, s] of spares) {
  test(`${s} spares for 30 at ${p} and ${chance}`, () => {
    expect(chanceEnough(30 + s, 30, 1 - p)).toBeGreaterThanOrEqual(chance);
    expect(chanceEnough(30 + s - 1, 30, 1 - p)).toBeLessThan(chance);
  });
}

const edges: [have: number, wanted: number, works: number, chance: number][] = [
  [0, 0, 0.5, 1],
  [5, 0, 0, 1],
  [4, 5, 1, 0],
  [5, 5, 1, 1],
  [5, 5, 0, 0],
  [1, 1, 0.9, 0.9],
  [2, 1, 0.9, 0.99],
];
for (const [have, wanted, works, chance] of edges)
  test(`${wanted} of ${have} at ${works}`, () => expect(chanceEnough(have, wanted, works)).toBeCloseTo(chance, 12));

test("nothing fails less often after a pause, and every rate names its source", () => {
  for (const rate of Object.values(deviceRates)) {
    expect(rate.afterPause).toBeGreaterThanOrEqual(rate.usual);
    expect(rate.source).not.toBe("");
  }
});
