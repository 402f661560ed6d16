// How many lessons can go by, at the very most, before two pupils meet twice.
//
// Two counts, and the smaller one counts. All pairs: C(n,2) pairs that may meet, divided by the pairs that one lesson uses
// (3 for a team of three, 6 for a team of four). Each pupil: the partners left for a pupil, divided by the fewest new ones that
// a lesson brings. Without wishes and with equal teams of s both give floor((n − 1) / (s − 1)). Pairs that must stay together
// do not count as meeting, pairs kept apart cannot meet. It is an upper bound: 12 in threes have bound 5, and 4 is the truth.
// Does not know: whether the bound can be reached.
import type { Wishes } from "./wishes.ts";

/** @returns the bound, or null where no pair can ever meet twice (nobody is mixed). */
export function meetingBound(wishes: Wishes): number | null {
  const { mixed, sizes, groups, apart } = wishes;
  const pairs = (n: number) => (n * (n - 1)) / 2;
  const forced = groups.reduce((sum, group) => sum + pairs(group.length), 0);
  const usedByOneLesson = sizes.reduce((sum, size) => sum + pairs(size), 0) - forced;
  if (usedByOneLesson <= 0) return null;
  const bounds = [Math.floor((pairs(mixed.length) - forced - apart.length) / usedByOneLesson)];
  const smallest = Math.min(...sizes);
  for (const pupil of mixed) {
    const companions = groups.find((group) => group.includes(pupil))?.length ?? 1;
    const partners = mixed.length - companions - apart.filter((pair) => pair.includes(pupil)).length;
    if (smallest > companions) bounds.push(Math.floor(partners / (smallest - companions)));
  }
  return Math.max(0, Math.min(...bounds));
}
