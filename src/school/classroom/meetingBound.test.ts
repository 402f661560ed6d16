// The counting bound against the formula for equal teams and against counts worked by hand.
import { expect, test } from "vitest";
import { meetingBound } from "./meetingBound.ts";
import { sortWishes } from "./wishes.ts";

const bound = (pupils: number, size: number, together: number[][] = [], apart: [number, number][] = []) =>
  meetingBound(sortWishes(pupils, size, together, apart));

test("equal teams: floor((n − 1) / (s − 1))", () => {
  for (const size of [2, 3, 4, 5]) {
    for (let teams = 1; teams <= 12; teams += 1) {
      const pupils = teams * size;
      expect(bound(pupils, size)).toBe(Math.floor((pupils - 1) / (size - 1)));
    }
  }
});

// Mixed sizes: pairs there are, divided by pairs one lesson uses, worked by hand.
const counted: [pupils: number, size: number, pairs: number, used: number][] = [
  [31, 3, 465, 9 * 3 + 6],
  [29, 3, 406, 9 * 3 + 1],
  [28, 3, 378, 8 * 3 + 6],
  [25, 3, 300, 7 * 3 + 6],
  [27, 4, 351, 6 * 6 + 3],
  [26, 4, 325, 5 * 6 + 2 * 3],
  [25, 4, 300, 4 * 6 + 3 * 3],
  [31, 2, 465, 14 + 3],
];
for (const [pupils, size, pairs, used] of counted)
  test(`${pupils} in ${size}: ${pairs} pairs, ${used} a lesson`, () =>
    expect(bound(pupils, size)).toBe(Math.floor(pairs / used)));

test("wishes lower it", () => {
  // One pupil may meet 27 of 29 others, two a lesson.
  expect(
    bound(
      30,
      3,
      [],
      [
        [0, 1],
        [0, 2],
      ],
    ),
  ).toBe(13);
  // A lesson uses 30 pairs, one of them forced: floor((435 − 1) / 29).
  expect(bound(30, 3, [[0, 1]])).toBe(14);
  // A whole team that stays leaves 27 who mix.
  expect(bound(30, 3, [[0, 1, 2]])).toBe(13);
});
test("no bound where nobody can meet twice", () => {
  expect(bound(0, 3)).toBeNull();
  expect(bound(1, 3)).toBeNull();
  expect(bound(2, 2, [[0, 1]])).toBeNull();
  expect(bound(2, 2)).toBe(1);
});
