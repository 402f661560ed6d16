// Every design is developed and every pair in it counted; nothing is taken on trust.
import { expect, test } from "vitest";
import { type Design, designs } from "./designs.ts";
import { developDesign } from "./developDesign.ts";

/** All that is wrong with a design: somebody missing or doubled, a team out of size, a pair that meets twice. */
function wrongWith(design: Design): string[] {
  const pupils = design.orbits.reduce((sum, [length, count]) => sum + length * count, 0);
  const wrong: string[] = [];
  const met = new Set<string>();
  for (const [l, lesson] of developDesign(design).entries()) {
    const present = lesson.flat().sort((a, b) => a - b);
    if (present.length !== pupils || present.some((p, i) => p !== i)) wrong.push(`lesson ${l} is not everybody once`);
    for (const team of lesson) {
      for (const a of team) {
        for (const b of team) {
          if (a >= b) continue;
          if (met.has(`${a} ${b}`)) wrong.push(`${a} and ${b} meet again in lesson ${l}`);
          met.add(`${a} ${b}`);
        }
      }
    }
  }
  return wrong;
}

for (const design of designs) {
  const pupils = design.orbits.reduce((sum, [length, count]) => sum + length * count, 0);
  const sizes = design.lessons[0]!.split(" ").map((team) => team.split(",").length);
  test(`${pupils} pupils in teams of ${[...new Set(sizes)].join(" and ")}: nobody meets twice`, () => {
    expect(wrongWith(design)).toEqual([]);
    const lessons = developDesign(design);
    expect(lessons).toHaveLength(design.turns * design.lessons.length);
    for (const lesson of lessons) expect(lesson.map((team) => team.length).sort()).toEqual([...sizes].sort());
  });
}

test("the check finds a planted repeat and a planted gap", () => {
  expect(wrongWith({ orbits: [[1, 4]], turns: 2, lessons: ["0,1 2,3"] })).not.toEqual([]);
  expect(wrongWith({ orbits: [[1, 4]], turns: 1, lessons: ["0,1 2,2"] })).not.toEqual([]);
  expect(
    wrongWith({
      orbits: [
        [3, 1],
        [1, 1],
      ],
      turns: 3,
      lessons: ["0,1 2,3"],
    }),
  ).toEqual([]);
});
