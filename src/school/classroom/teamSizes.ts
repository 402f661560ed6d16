// How many teams a class makes, and how large each is.
//
// All teams have the wanted size where the number of pupils allows it; otherwise they differ by one, the way a teacher would
// do it: 31 pupils in threes are nine threes and one four, 29 are nine threes and one pair. The rule, in order:
// no team of one; sizes within one of what is wanted; no team above four when four or less is wanted (a fifth pupil at one
// breadboard only looks on: common practice, no source); the number of teams nearest to pupils / size, smaller teams on a tie.
// Does not know: who sits where.

/**
 * @param pupils how many there are, 0 or more.
 * @param size pupils wanted in one team, at least 1.
 * @returns the size of every team, the wanted size first, then the larger, then the smaller ones; none for 0 pupils, and one
 * team of one only where nobody else is there.
 */
export function teamSizes(pupils: number, size: number): number[] {
  const wanted = Math.max(2, Math.floor(size));
  if (pupils <= 0) return [];
  let best: { teams: number; score: readonly number[] } | null = null;
  for (let teams = 1; teams * 2 <= pupils || teams === 1; teams += 1) {
    const largest = Math.ceil(pupils / teams);
    const smallest = Math.floor(pupils / teams);
    const apart = Math.max(largest - wanted, wanted - smallest, 0);
    const crowded = wanted <= 4 && largest > 4 ? largest : 0;
    const score = [crowded, Math.max(apart - 1, 0), Math.abs(teams - pupils / wanted), -teams];
    if (best === null || before(score, best.score)) best = { teams, score };
  }
  const teams = best?.teams ?? 1;
  const smallest = Math.floor(pupils / teams);
  const sizes = Array.from({ length: teams }, (_, team) => smallest + (team < pupils % teams ? 1 : 0));
  return sizes.sort((a, b) => Math.abs(a - wanted) - Math.abs(b - wanted) || b - a);
}

function before(a: readonly number[], b: readonly number[]): boolean {
  for (let i = 0; i < a.length; i += 1) {
    const difference = a[i]! - b[i]!;
    if (Math.abs(difference) > 1e-9) return difference < 0;
  }
  return false;
}
