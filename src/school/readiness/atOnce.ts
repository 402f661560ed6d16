// Lessons that are held at the same time take from one cupboard: what they need is added up.
//
// Each lesson of such a group is counted with the needs of the whole group, in one order, so that the same unit is never
// handed out twice; afterwards each keeps its own rows. A lesson that meets nobody stays as it is.
// Does not know: what is needed, how it is counted.
import type { Sitting, SittingStock } from "../stock/index.ts";

/** When a sitting is held, minutes after midnight. */
export interface Held {
  readonly sitting: Sitting;
  readonly start: number;
  readonly end: number;
}

/** For each sitting: itself and all that meet it or one another in a chain, in the order given. */
export function groupsAtOnce(held: readonly Held[]): readonly (readonly Held[])[] {
  const meets = (a: Held, b: Held) => a.sitting.date === b.sitting.date && a.start < b.end && b.start < a.end;
  return held.map((first) => {
    const group = new Set<Held>([first]);
    for (let size = 0; size < group.size; ) {
      size = group.size;
      for (const other of held) if ([...group].some((g) => meets(g, other))) group.add(other);
    }
    return held.filter((h) => group.has(h));
  });
}

/** The sitting with the needs of its whole group; teams of another size are put in by their number of units. */
export function withGroup(own: Held, group: readonly Held[]): Sitting {
  if (group.length === 1) return own.sitting;
  const { teams } = own.sitting;
  return {
    ...own.sitting,
    needs: group.flatMap(({ sitting }) =>
      sitting.needs.map((n) => ({ ...n, each: (n.each * sitting.teams) / Math.max(1, teams) })),
    ),
  };
}

/** What was counted for the whole group, cut down to the sitting's own needs; the chance is that of its own teams. */
export function ownPart(own: Held, group: readonly Held[], stock: SittingStock): SittingStock {
  if (group.length === 1) return stock;
  const from = group.slice(0, group.indexOf(own)).reduce((sum, h) => sum + h.sitting.needs.length, 0);
  const to = from + own.sitting.needs.length;
  const coverage = stock.coverage.slice(from, to).map((c, n) => ({ ...c, need: own.sitting.needs[n]! }));
  return {
    ...stock,
    coverage,
    chance: coverage.reduce((product, c) => product * c.chance, 1),
    teams: stock.teams.map((row) => row.slice(from, to)),
    units: stock.units.map((row) => row.slice(from, to)),
  };
}
