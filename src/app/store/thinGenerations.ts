// Which generations of a class may go: the last 20 stay, then one a day for 30 days, then one a month, at most 5 MB in all.
//
// The order is the counter's. Days and months are only labels as the clock said them: a clock that was wrong mixes labels and
// never takes the newest away. Where 5 MB are not enough, the crowd of the last hour goes before the one of yesterday, and two
// always stay, so that the newest is never the only one. Damaged ones are kept aside for a person to look at: the newest five.
// Does not know: what a generation holds, how it is taken away.

export interface Kept {
  readonly name: string;
  readonly counter: number;
  /** Clock as said, ISO 8601; null where it could not be read. */
  readonly at: string | null;
  readonly bytes: number;
  readonly damaged: boolean;
}

export const keepLimits = {
  /** Saves that always stay. */
  recent: 20,
  /** Days of which the last save stays. */
  days: 30,
  /** Bytes in all of one class. */
  bytes: 5_000_000,
  /** Where room is short, so many of the last saves go only at the very end. */
  recentWhenShort: 5,
  damaged: 5,
};

/** @returns the names that may go, oldest first. */
export function thinGenerations(all: readonly Kept[], limits: typeof keepLimits = keepLimits): readonly string[] {
  const newestFirst = [...all].sort((a, b) => b.counter - a.counter || (a.name < b.name ? 1 : -1));
  const whole = newestFirst.filter((g) => !g.damaged);
  const damaged = newestFirst.filter((g) => g.damaged).slice(0, limits.damaged);

  const recent = whole.slice(0, limits.recent);
  const lastOfDay = firstOfEach(whole, 10);
  const daily = lastOfDay.slice(0, limits.days);
  const monthly = firstOfEach(lastOfDay, 7).filter((g) => !daily.includes(g));

  // Room: what goes first stands first.
  const stays = new Set([...recent, ...daily, ...monthly, ...damaged]);
  const crowd = recent.slice(limits.recentWhenShort).filter((g) => !lastOfDay.includes(g));
  const few = new Set(recent.slice(0, limits.recentWhenShort));
  const byWorth = [
    ...crowd.reverse(),
    ...monthly.reverse(),
    ...daily.filter((g) => !few.has(g)).reverse(),
    ...recent.slice(2, limits.recentWhenShort).reverse(),
    ...damaged.reverse(),
  ];
  let total = [...stays].reduce((sum, g) => sum + g.bytes, 0);
  for (const g of byWorth) {
    if (total <= limits.bytes) break;
    if (stays.delete(g)) total -= g.bytes;
  }
  return newestFirst
    .filter((g) => !stays.has(g))
    .map((g) => g.name)
    .reverse();
}

/** The first of each run of labels: of each day (10 characters of the clock's text) or month (7). A label counts once. */
function firstOfEach(generations: readonly Kept[], letters: number): Kept[] {
  const seen = new Set<string>();
  return generations.filter((g) => {
    const label = (g.at ?? "").slice(0, letters);
    if (seen.has(label)) return false;
    seen.add(label);
    return true;
  });
}
