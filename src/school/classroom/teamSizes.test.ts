// Team sizes as a teacher would choose them, and what always holds.
import { expect, test } from "vitest";
import { teamSizes } from "./teamSizes.ts";

const cases: [what: string, pupils: number, size: number, sizes: string][] = [
  ["nobody", 0, 3, ""],
  ["one alone", 1, 3, "1"],
  ["two", 2, 3, "2"],
  ["three in threes", 3, 3, "3"],
  ["three in pairs", 3, 2, "3"],
  ["four in threes", 4, 3, "4"],
  ["five in threes", 5, 3, "3 2"],
  ["five in fours: a fifth only looks on", 5, 4, "3 2"],
  ["seven in threes", 7, 3, "3 4"],
  ["thirty in threes", 30, 3, "3 3 3 3 3 3 3 3 3 3"],
  ["31: nine threes and one four", 31, 3, "3 3 3 3 3 3 3 3 3 4"],
  ["29: nine threes and one pair", 29, 3, "3 3 3 3 3 3 3 3 3 2"],
  ["31 in pairs: fourteen pairs and one three", 31, 2, "2 2 2 2 2 2 2 2 2 2 2 2 2 2 3"],
  ["28 in fours", 28, 4, "4 4 4 4 4 4 4"],
  ["27 in fours", 27, 4, "4 4 4 4 4 4 3"],
  ["26 in fours", 26, 4, "4 4 4 4 4 3 3"],
  ["25 in fours: three threes, no five", 25, 4, "4 4 4 4 3 3 3"],
  ["31 in fives", 31, 5, "5 5 5 5 5 6"],
];
for (const [what, pupils, size, sizes] of cases) test(what, () => expect(teamSizes(pupils, size).join(" ")).toBe(sizes));

test("everybody sits somewhere, nobody alone, sizes differ by one at most", () => {
  for (let pupils = 2; pupils <= 120; pupils += 1) {
    for (const size of [2, 3, 4, 5, 6]) {
      const sizes = teamSizes(pupils, size);
      expect(sizes.reduce((sum, s) => sum + s, 0)).toBe(pupils);
      expect(Math.min(...sizes)).toBeGreaterThanOrEqual(2);
      expect(Math.max(...sizes) - Math.min(...sizes)).toBeLessThanOrEqual(1);
      if (pupils % size === 0) expect(sizes.every((s) => s === size)).toBe(true);
      if (pupils > 11) for (const s of sizes) expect(Math.abs(s - size), `${pupils} in ${size}`).toBeLessThanOrEqual(1);
    }
  }
});
