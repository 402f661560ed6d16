// From which earlier state a copy went its own way: of the states kept here, the one that the copy differs from least.
//
// A class file is written one entry a line, so lines that only one of two texts has are what was changed. A state from before
// the copy was made differs by what we did until then, a later one by what we did since; the one in between by neither.
// Does not know: what the lines say.

/**
 * @param states newest first.
 * @returns the place of the nearest state; the older of two that are equally near, so that
 * a thing that both may have changed is rather asked about than taken. Null where there is none.
 */
export function commonBase(copy: string, states: readonly string[]): number | null {
  let best: number | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const [n, state] of states.entries()) {
    const apart = linesApart(copy, state);
    if (apart <= least) [best, least] = [n, apart];
  }
  return best;
}

/** Lines that only one of the two has; a line counts as often as it stands there more often. */
export function linesApart(a: string, b: string): number {
  const counts = new Map<string, number>();
  for (const line of a.split("\n")) counts.set(line, (counts.get(line) ?? 0) + 1);
  for (const line of b.split("\n")) counts.set(line, (counts.get(line) ?? 0) - 1);
  return [...counts.values()].reduce((sum, count) => sum + Math.abs(count), 0);
}
