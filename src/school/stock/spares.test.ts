// Spares for a chance: laws, and marginal analysis against all combinations.
import { expect, test } from "vitest";
import { sample } from "../../../test/sample.ts";
import { logChanceEnough, seededRandom } from "../../base/index.ts";
import { marginalSpares, sparesFor } from "./spares.ts";

test("one spare fewer would not do", () => {
  for (const wanted of [1, 10, 30, 90])
    for (const works of [0.999, 0.99, 0.9, 0.7])
      for (const chance of [0.5, 0.9, 0.95, 0.99]) {
        const s = sparesFor(wanted, works, chance)!;
        expect(logChanceEnough(wanted, wanted + s, works)).toBeGreaterThanOrEqual(Math.log(chance));
        if (s > 0) expect(logChanceEnough(wanted, wanted + s - 1, works)).toBeLessThan(Math.log(chance));
      }
});

test("what never works has no spares that help", () => expect(sparesFor(1, 0, 0.5)).toBeNull());
test("no chance asked, no spares", () => expect(sparesFor(10, 0.5, 0)).toBe(0));

for (let seed = 1; seed <= sample(10, 100); seed += 1)
  test(`marginal analysis encloses the cheapest of all combinations, seed ${seed}`, () => {
    const random = seededRandom(seed, "marginal");
    const needs = Array.from({ length: 3 }, () => ({
      wanted: random.int(1, 12),
      works: 0.85 + 0.14 * random.next(),
      price: random.int(1, 9),
    }));
    const chance = 0.9 + 0.09 * random.next();
    const greedy = marginalSpares(needs, chance)!;
    expect(greedy.chance).toBeGreaterThanOrEqual(chance);
    let best = Number.POSITIVE_INFINITY;
    const most = 14;
    const log = needs.map((n) => Array.from({ length: most + 1 }, (_, s) => logChanceEnough(n.wanted, n.wanted + s, n.works)));
    for (let a = 0; a <= most; a += 1)
      for (let b = 0; b <= most; b += 1)
        for (let c = 0; c <= most; c += 1) {
          const cost = a * needs[0]!.price + b * needs[1]!.price + c * needs[2]!.price;
          const joint = log[0]![a]! + log[1]![b]! + log[2]![c]!;
          if (joint >= Math.log(chance)) best = Math.min(best, cost);
          // The frontier: nothing as cheap as the greedy answer is surer than it.
          if (cost <= greedy.cost) expect(joint).toBeLessThanOrEqual(Math.log(greedy.chance) + 1e-12);
        }
    expect(best).toBeLessThanOrEqual(greedy.cost);
    expect(best).toBeGreaterThan(greedy.costBefore - 1e-9);
  });
