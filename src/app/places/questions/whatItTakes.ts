// What all lessons of a plan take together: how many teams, and of each thing how many are in use, to spare, there, and missing.
//
// Lessons follow one another and things come back, so the lesson that needs most of a thing decides. Spares are the fewest
// things with which every team works in each lesson with the chance that the class wants, all needs taken together.
// Does not know: prices, words.

import type { Plan } from "../../../school/readiness/index.ts";
import { marginalSpares } from "../../../school/stock/index.ts";

export interface TakesRow {
  readonly item: string;
  /** In use at once. */
  readonly wanted: number;
  /** On top of that, so that one that breaks stops nobody. */
  readonly spare: number;
  /** There on the day of the lesson that is short of most, or needs most. */
  readonly have: number;
  /** What is still to be had. */
  readonly short: number;
}

export interface Takes {
  /** Most teams of any lesson: one set each. */
  readonly teams: number;
  /** Devices first, then parts in the order of the lessons. */
  readonly rows: readonly TakesRow[];
}

/** Counted one by one, one for each team. */
const devices = ["board", "usb-cable", "computer", "breadboard"];
/** Chances of things that nearly never fail are taken as this, so that the logarithm exists. */
const surest = 1 - 1e-12;

/** @param chance that every team works in a lesson, 0 to 1. */
export function whatItTakes(plan: Plan, chance: number): Takes {
  const rows = new Map<string, TakesRow>();
  let teams = 0;
  for (const lesson of plan.lessons) {
    teams = Math.max(teams, lesson.teams.length);
    const coverage = lesson.stock.coverage.filter((c) => c.wanted > 0 && !c.need.item.startsWith("usb-port"));
    // Two teams can share a computer for once, but it takes one for each.
    const needs = coverage.map(({ need, wanted, works }) => ({
      wanted: need.item === "computer" ? Math.max(wanted, lesson.teams.length) : wanted,
      works: Math.min(works, surest),
      price: 1,
    }));
    const spares = marginalSpares(needs, chance)?.spares;
    // Parts of one item may be two needs of a lesson, where different things stand in for them.
    const here = new Map<string, TakesRow>();
    coverage.forEach(({ need, have }, n) => {
      const { wanted } = needs[n]!;
      const before = here.get(need.item);
      const there = have.reduce((sum, { count }) => sum + count, 0);
      here.set(need.item, {
        item: need.item,
        wanted: (before?.wanted ?? 0) + wanted,
        spare: (before?.spare ?? 0) + (spares?.[n] ?? 0),
        have: (before?.have ?? 0) + there,
        short: 0,
      });
    });
    for (const row of here.values()) {
      const short = Math.max(0, row.wanted + row.spare - row.have);
      const known = rows.get(row.item);
      const isMore = known === undefined || short > known.short || (short === known.short && row.wanted > known.wanted);
      if (isMore) rows.set(row.item, { ...row, short });
    }
  }
  const rank = (item: string) => (devices.includes(item) ? devices.indexOf(item) : devices.length);
  return { teams, rows: [...rows.values()].sort((a, b) => rank(a.item) - rank(b.item)) };
}
