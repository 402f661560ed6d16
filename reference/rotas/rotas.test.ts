// Published designs are what they claim to be, and our rotas are as long as the longest published ones.
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { rotaAtOnce } from "../../src/school/classroom/index.ts";

interface Published {
  readonly pupils: number;
  readonly size: number;
  readonly source: string;
  /** One line a lesson, teams separated by blanks, one letter a pupil; capitals differ from small letters. */
  readonly lessons: readonly string[];
}

const folder = new URL(".", import.meta.url);
const published: Published[] = JSON.parse(readFileSync(new URL("published.json", folder), "utf8"));
const readme = readFileSync(new URL("README.md", folder), "utf8");
const ids = (n: number) => Array.from({ length: n }, (_, i) => String(i + 1));

/** Everybody once in every lesson, every team of the size, nobody with the same pupil twice. */
function isFresh(lessons: readonly (readonly (readonly string[])[])[], pupils: number, size: number): boolean {
  const met = new Set<string>();
  for (const teams of lessons) {
    if (new Set(teams.flat()).size !== pupils || teams.flat().length !== pupils) return false;
    for (const team of teams) {
      if (team.length !== size) return false;
      for (const a of team) {
        for (const b of team) {
          if (a >= b) continue;
          if (met.has(`${a} ${b}`)) return false;
          met.add(`${a} ${b}`);
        }
      }
    }
  }
  return true;
}

for (const design of published) {
  const lessons = design.lessons.map((line) => line.split(" ").map((team) => team.split("")));
  test(`${design.pupils} in ${design.size}, ${design.source.slice(-40)}: nobody meets twice`, () => {
    expect(isFresh(lessons, design.pupils, design.size)).toBe(true);
    // One pupil moved spoils it: the check can fail.
    const first = lessons[0]!;
    const spoilt = [[first[1]!, first[0]!.with(0, first[1]![0]!), ...first.slice(2)], ...lessons.slice(1)];
    expect(isFresh(spoilt, design.pupils, design.size)).toBe(false);
  });
  test(`${design.pupils} in ${design.size}: ours is as long`, () => {
    const rota = rotaAtOnce({
      pupils: ids(design.pupils),
      size: design.size,
      lessons: lessons.length,
      apart: [],
      together: [],
      seed: 1,
    });
    expect(
      isFresh(
        rota.lessons.map((teams) => teams.map((t) => t.pupils)),
        design.pupils,
        design.size,
      ),
    ).toBe(true);
  });
}

// The published maxima of README.md.
const maxima: [pupils: number, size: number, lessons: number][] = [
  [12, 3, 4],
  [15, 3, 7],
  [18, 3, 8],
  [21, 3, 10],
  [24, 3, 11],
  [27, 3, 13],
  [30, 3, 14],
  [33, 3, 16],
  [36, 3, 17],
  [12, 4, 1],
  [16, 4, 5],
  [20, 4, 5],
  [24, 4, 7],
  [28, 4, 9],
  [32, 4, 10],
  [36, 4, 11],
  ...[12, 14, 16, 18, 20, 22, 24, 26, 28, 30, 32, 34, 36].map((n): [number, number, number] => [n, 2, n - 1]),
];
for (const [pupils, size, lessons] of maxima) {
  test(`${pupils} in ${size}: the published maximum, ${lessons}`, () => {
    const rota = rotaAtOnce({ pupils: ids(pupils), size, lessons: lessons + 1, apart: [], together: [], seed: 1 });
    expect(rota.fresh).toBe(lessons);
    const fresh = rota.lessons.slice(0, lessons).map((teams) => teams.map((t) => t.pupils));
    expect(isFresh(fresh, pupils, size)).toBe(true);
  });
}

const rows = [...readme.matchAll(/^\| (\d+) \| (\d+) of (\d+).*? \| (\d+) of (\d+).*? \| (\d+) of (\d+).*? \|$/gm)];
test("the table in README.md has all classes from 12 to 36", () =>
  expect(rows.map((r) => Number(r[1]))).toEqual(Array.from({ length: 25 }, (_, i) => 12 + i)));
for (const row of rows) {
  const pupils = Number(row[1]);
  test(`the row of ${pupils} in README.md is what we reach`, () => {
    for (const [i, size] of [2, 3, 4].entries()) {
      const reached = Number(row[2 + 2 * i]);
      const rota = rotaAtOnce({ pupils: ids(pupils), size, lessons: reached + 1, apart: [], together: [], seed: 1 });
      expect([rota.fresh, rota.bound], `in ${size}`).toEqual([reached, Number(row[3 + 2 * i])]);
    }
  });
}
