// What a plan takes together. Spares by hand or from R; the rest is counting.
import { expect, test } from "vitest";
import type { Plan } from "../../../school/readiness/index.ts";
import { type TakesRow, whatItTakes } from "./whatItTakes.ts";

interface Need {
  readonly item: string;
  readonly wanted: number;
  readonly have?: number;
  readonly works?: number;
}

/** A plan of lessons with so many teams and these needs; what the answer does not look at is left out. */
function planOf(...lessons: { teams: number; needs: Need[] }[]): Plan {
  return {
    lessons: lessons.map(({ teams, needs }) => ({
      teams: Array.from({ length: teams }, (_, n) => ({ number: n + 1, pupils: [], roles: [] })),
      stock: {
        coverage: needs.map(({ item, wanted, have = 0, works = 1 }) => ({
          need: { item, for: [item], each: 1, substitutes: [] },
          wanted,
          have: have > 0 ? [{ item, count: have }] : [],
          short: Math.max(0, wanted - have),
          works,
          chance: 1,
        })),
      },
    })),
    prepare: [],
    rotas: [],
  } as unknown as Plan;
}

const row = (item: string, wanted: number, spare: number, have: number, short: number): TakesRow => ({
  item,
  wanted,
  spare,
  have,
  short,
});

const cases: [name: string, plan: Plan, teams: number, rows: TakesRow[]][] = [
  ["no lessons take nothing", planOf(), 0, []],
  [
    "devices stand first",
    planOf({
      teams: 10,
      needs: [
        { item: "led red", wanted: 10 },
        { item: "computer", wanted: 10 },
        { item: "board", wanted: 10 },
      ],
    }),
    10,
    [row("board", 10, 0, 0, 10), row("computer", 10, 0, 0, 10), row("led red", 10, 0, 0, 10)],
  ],
  [
    "things come back: the lesson that needs most decides",
    planOf({ teams: 8, needs: [{ item: "led red", wanted: 8 }] }, { teams: 10, needs: [{ item: "led red", wanted: 20 }] }),
    10,
    [row("led red", 20, 0, 0, 20)],
  ],
  [
    "the same part twice in one lesson is added up",
    planOf({
      teams: 10,
      needs: [
        { item: "resistor 220", wanted: 10, have: 4 },
        { item: "resistor 220", wanted: 20, have: 20 },
      ],
    }),
    10,
    [row("resistor 220", 30, 0, 24, 6)],
  ],
  [
    "a lesson that is shorter of it says more than one that needs more",
    planOf(
      { teams: 10, needs: [{ item: "wire", wanted: 90, have: 90 }] },
      { teams: 10, needs: [{ item: "wire", wanted: 70, have: 60 }] },
    ),
    10,
    [row("wire", 70, 0, 60, 10)],
  ],
  [
    "a computer for each team, also where the plan lets two share one",
    planOf({ teams: 10, needs: [{ item: "computer", wanted: 5, have: 8 }] }),
    10,
    [row("computer", 10, 0, 8, 2)],
  ],
  ["a port comes with its computer", planOf({ teams: 3, needs: [{ item: "usb-port 500mA", wanted: 3 }] }), 3, []],
  [
    // R 4.2.2: the smallest s with pbinom(29, 30 + s, 0.9, lower.tail = FALSE) >= 0.95 is 7.
    "thirty of which one in ten fails need seven to spare",
    planOf({ teams: 30, needs: [{ item: "servo", wanted: 30, works: 0.9, have: 31 }] }),
    30,
    [row("servo", 30, 7, 31, 6)],
  ],
  [
    // By hand: one of one that works with 0.8 reaches 1 - 0.2^2 = 0.96 with one spare.
    "one with a chance of 80 % needs one to spare",
    planOf({ teams: 1, needs: [{ item: "servo", wanted: 1, works: 0.8 }] }),
    1,
    [row("servo", 1, 1, 0, 2)],
  ],
  [
    // By hand: 0.96 each makes 0.92; with a second spare for one of them 0.992 · 0.96 = 0.952.
    "two of them together need three to spare",
    planOf({
      teams: 1,
      needs: [
        { item: "servo", wanted: 1, works: 0.8 },
        { item: "board", wanted: 1, works: 0.8 },
      ],
    }),
    1,
    [row("board", 1, 1, 0, 2), row("servo", 1, 2, 0, 3)],
  ],
];
for (const [name, plan, teams, rows] of cases) test(name, () => expect(whatItTakes(plan, 0.95)).toEqual({ teams, rows }));

test("what can never work has no number of spares", () =>
  expect(whatItTakes(planOf({ teams: 1, needs: [{ item: "servo", wanted: 1, works: 0 }] }), 0.95).rows[0]?.spare).toBe(0));
