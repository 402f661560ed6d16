// The wishes of a class as numbers: who stays together, who stays apart, which teams never change.
//
// Pupils are numbers 0 to n−1 here. Groups that overlap are one group. A group as large as a team (or one larger) is a team
// of its own for all lessons and leaves the mixing; a smaller group shares its team with somebody new each time. A group
// larger than that cannot be one team: it is cut, and the rota reports the wish as broken.
// Does not know: lessons, designs, names.
import { teamSizes } from "./teamSizes.ts";

export interface Wishes {
  /** Teams that never change. */
  readonly standing: readonly (readonly number[])[];
  /** All groups, those that overlap joined into one; also those that were cut. */
  readonly joined: readonly (readonly number[])[];
  /** Pupils who are mixed, in order. */
  readonly mixed: readonly number[];
  /** Sizes of the teams that the mixed pupils make. */
  readonly sizes: readonly number[];
  /** Groups among the mixed that stay in one team. */
  readonly groups: readonly (readonly number[])[];
  /** seated[t]: pupils of the groups, who always sit in mixed team t; the rest of its places are free. */
  readonly seated: readonly (readonly number[])[];
  /** Pairs that must not be in one team and can be kept apart, both mixed. */
  readonly apart: readonly (readonly [number, number])[];
}

/**
 * @param pupils how many there are.
 * @param together groups of pupil numbers; @param apart pairs of pupil numbers.
 */
export function sortWishes(
  pupils: number,
  size: number,
  together: readonly (readonly number[])[],
  apart: readonly (readonly [number, number])[],
): Wishes {
  const groups = joinOverlapping(pupils, together);
  const standing: number[][] = [];
  let open: number[][] = [];
  for (const group of groups) {
    const rest = [...group];
    while (rest.length > size + 1) standing.push(rest.splice(0, size));
    if (rest.length >= size && rest.length >= 2) standing.push(rest);
    else if (rest.length >= 2) open.push(rest);
  }
  const isMixed = new Set(range(pupils).filter((p) => !standing.some((team) => team.includes(p))));
  let sizes = teamSizes(isMixed.size, size);
  if (isMixed.size === 1 && standing.length > 0) {
    // The one who is left over would sit alone, so the smallest of the groups takes them in.
    const host = standing.sort((a, b) => b.length - a.length).pop()!;
    for (const p of host) isMixed.add(p);
    open.push(host);
    sizes = [host.length + 1];
  }
  let seated = seat(open, sizes);
  while (seated === null) {
    // More groups than the teams can hold: the last one is let go and reported as broken by the rota.
    open = open.slice(0, -1);
    seated = seat(open, sizes);
  }
  const sameSeat = new Map<number, number>();
  seated.forEach((team, t) => {
    for (const p of team) sameSeat.set(p, t);
  });
  return {
    standing,
    joined: groups,
    mixed: [...isMixed].sort((a, b) => a - b),
    sizes,
    groups: open,
    seated,
    apart: unrepeated(apart).filter(
      ([a, b]) => isMixed.has(a) && isMixed.has(b) && !(sameSeat.has(a) && sameSeat.get(a) === sameSeat.get(b)),
    ),
  };
}

/** Puts each group into a team of its own while there are any, then into the room that is left; null if they do not fit. */
function seat(groups: readonly (readonly number[])[], sizes: readonly number[]): number[][] | null {
  const seated: number[][] = sizes.map(() => []);
  for (const group of [...groups].sort((a, b) => b.length - a.length)) {
    const fits = sizes.map((_, t) => t).filter((t) => sizes[t]! - seated[t]!.length >= group.length);
    const empty = fits.filter((t) => seated[t]!.length === 0);
    const team = empty[0] ?? fits[0];
    if (team === undefined) return null;
    seated[team]!.push(...group);
  }
  return seated;
}

function unrepeated(pairs: readonly (readonly [number, number])[]): [number, number][] {
  const seen = new Map<string, [number, number]>();
  for (const [a, b] of pairs) if (a !== b) seen.set(`${Math.min(a, b)} ${Math.max(a, b)}`, [a, b]);
  return [...seen.values()];
}

function joinOverlapping(pupils: number, groups: readonly (readonly number[])[]): number[][] {
  const root = range(pupils);
  const find = (p: number): number => (root[p] === p ? p : find(root[p]!));
  for (const group of groups) for (const p of group) root[find(p)] = find(group[0]!);
  const joined = new Map<number, number[]>();
  for (let p = 0; p < pupils; p += 1) joined.set(find(p), [...(joined.get(find(p)) ?? []), p]);
  return [...joined.values()].filter((group) => group.length >= 2);
}

function range(n: number): number[] {
  return Array.from({ length: n }, (_, i) => i);
}
