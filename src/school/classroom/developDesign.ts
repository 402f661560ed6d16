// From a design as written to the lessons it stands for.
//
// Does not know: which design is best for a class.
import type { Design } from "./designs.ts";

/** lessons[l][t] are the pupils of team t, as numbers from 0. */
export type NumberLessons = number[][][];

/** Turns every base lesson of a design. A pupil p in a ring of length m that starts at s moves to s + (p − s + 1) mod m. */
export function developDesign(design: Design): NumberLessons {
  const moved: number[] = [];
  for (const [length, count] of design.orbits) {
    for (let ring = 0; ring < count; ring += 1) {
      const start = moved.length;
      for (let i = 0; i < length; i += 1) moved.push(start + ((i + 1) % length));
    }
  }
  const lessons: NumberLessons = [];
  for (const text of design.lessons) {
    let lesson = text.split(" ").map((team) => team.split(",").map(Number));
    for (let turn = 0; turn < design.turns; turn += 1) {
      lessons.push(lesson);
      lesson = lesson.map((team) => team.map((p) => moved[p]!));
    }
  }
  return lessons;
}
