// Integer programs whose optimum is known, and orders as ours are stated: what the real solvers were given.
//
// The known ones come from books (sources beside them); the orders are hand-made or generated from a seed. `optimum` is the
// published or worked-out cost where there is one; for the others the recorded solvers say it.
// Does not know: any solver's answer.
import type { IntegerModel, IntegerVariable, LinearRow } from "../../src/base/index.ts";
import { type OrderInput, type OrderQuestion, orderModel, stateOrder } from "../../src/school/order/index.ts";
import { type CaseWords, orderCase } from "../../src/school/order/testCase.ts";
import { type ClassSize, classOrder } from "./generatedClass.ts";
import { coverOrder, plainModel } from "./generatedCover.ts";

export interface KnownModel {
  readonly name: string;
  readonly source: string;
  readonly model: IntegerModel;
  /** Least cost, where it is known beforehand. */
  readonly optimum: number | null;
}

function model(
  variables: readonly Partial<IntegerVariable>[],
  rows: readonly (readonly [terms: [number, number][], lower: number, upper?: number])[],
): IntegerModel {
  const names = variables.map((_, i) => `x${i}`);
  return {
    variables: variables.map((v, i) => ({ name: names[i]!, cost: 1, lower: 0, upper: Infinity, integer: true, ...v })),
    rows: rows.map(
      ([terms, lower, upper = Infinity], r): LinearRow => ({
        name: `r${r}`,
        terms: new Map(terms.map(([i, factor]) => [names[i]!, factor])),
        lower,
        upper,
      }),
    ),
    constant: 0,
  };
}

// ——— Cutting stock: rolls, each cut by one of the patterns that leave no room for another piece ———

function cuttingStock(roll: number, pieces: readonly (readonly [width: number, wanted: number])[]): IntegerModel {
  const patterns: number[][] = [];
  const extend = (from: number, left: number, counts: readonly number[]) => {
    if (from === pieces.length) {
      if (pieces.every(([width]) => width > left)) patterns.push([...counts]);
      return;
    }
    for (let n = 0; n * pieces[from]![0] <= left; n += 1) extend(from + 1, left - n * pieces[from]![0], [...counts, n]);
  };
  extend(0, roll, []);
  return model(
    patterns.map(() => ({})),
    pieces.map(([, wanted], p) => [
      patterns.flatMap((counts, i): [number, number][] => (counts[p]! > 0 ? [[i, counts[p]!]] : [])),
      wanted,
    ]),
  );
}

// ——— Covering: the fewest points that hit every line ———

function hitting(points: number, lines: readonly (readonly number[])[]): IntegerModel {
  return model(
    Array.from({ length: points }, () => ({ upper: 1 })),
    lines.map((line) => [line.map((p): [number, number] => [p, 1]), 1]),
  );
}

/** Lines of the affine space of `dimensions` over three elements: three different points that sum to zero. */
function affineLines(dimensions: number): number[][] {
  const digits = (p: number) => Array.from({ length: dimensions }, (_, d) => Math.floor(p / 3 ** d) % 3);
  const lines: number[][] = [];
  for (let a = 0; a < 3 ** dimensions; a += 1)
    for (let b = a + 1; b < 3 ** dimensions; b += 1) {
      const c = digits(a).reduce((sum, x, d) => sum + ((6 - x - digits(b)[d]!) % 3) * 3 ** d, 0);
      if (c > b) lines.push([a, b, c]);
    }
  return lines;
}

/** Lines of the projective space PG(3, 2): three points of 1 … 15 whose exclusive or is 0. */
function projectiveLines(): number[][] {
  const lines: number[][] = [];
  for (let a = 1; a <= 15; a += 1) for (let b = a + 1; b <= 15; b += 1) if ((a ^ b) > b) lines.push([a - 1, b - 1, (a ^ b) - 1]);
  return lines;
}

const knapsackWeights = [70, 73, 77, 80, 82, 87, 90, 94, 98, 106, 110, 113, 115, 118, 120];
const knapsackProfits = [135, 139, 149, 150, 156, 163, 173, 184, 192, 201, 210, 214, 221, 229, 240];

const known: readonly KnownModel[] = [
  {
    name: "cutting-stock-5600",
    source: "encyclopaedia article on the cutting stock problem: 73 rolls, 0.401 % waste",
    optimum: 73,
    model: cuttingStock(5600, [[1380, 22], [1520, 25], [1560, 12], [1710, 14], [1820, 18], [1880, 18], [1930, 20], [2000, 10], [2050, 12], [2100, 14], [2140, 16], [2150, 18], [2200, 20]]), // biome-ignore format: a table
  },
  {
    name: "cutting-stock-100",
    source: "V. Chvátal, Linear Programming, 1983, chapter 13 (demands from memory)",
    optimum: 453,
    model: cuttingStock(100, [[45, 97], [36, 610], [31, 395], [14, 211]]), // biome-ignore format: a table
  },
  {
    name: "cutting-stock-110",
    source: "the cutting model of the AMPL book (demands from memory)",
    optimum: 47,
    model: cuttingStock(110, [[20, 48], [45, 35], [50, 24], [55, 10], [75, 8]]), // biome-ignore format: a table
  },
  {
    name: "knapsack-15",
    source: "KNAPSACK_01, set P07, Florida State University: profit 1458 (data from memory)",
    optimum: -1458,
    model: model(
      knapsackProfits.map((profit) => ({ cost: -profit, upper: 1 })),
      [[knapsackWeights.map((weight, i): [number, number] => [i, weight]), -Infinity, 750]],
    ),
  },
  {
    name: "steiner-9",
    source: "Fulkerson, Nemhauser, Trotter 1974: 5 points hit the 12 triples of AG(2, 3)",
    optimum: 5,
    model: hitting(9, affineLines(2)),
  },
  {
    name: "steiner-27",
    source: "Fulkerson, Nemhauser, Trotter 1974; MIPLIB stein27: 18 points hit the 117 triples of AG(3, 3)",
    optimum: 18,
    model: hitting(27, affineLines(3)),
  },
  {
    name: "projective-15",
    source: "points that hit all 35 lines of PG(3, 2): the 7 points of a plane",
    optimum: 7,
    model: hitting(15, projectiveLines()),
  },
];

// ——— Orders ———

const ask = (input: OrderInput, question: OrderQuestion = { ask: "all" }) => orderModel(stateOrder(input), question);

const handMade: readonly (readonly [name: string, source: string, optimum: number | null, words: CaseWords, question?: OrderQuestion])[] = [
  [
    "packs",
    "130 units in packs of 10, 25 and 100: 1 × 100 and 3 × 10 cost 6.00, by enumeration",
    600,
    { lessons: [[9, 130, "led red"]], shops: { "a 0": ["10 led red @ 60", "25 led red @ 125", "100 led red @ 420"] } },
  ],
  [
    "spares-4",
    "R 4.2.2: 30 units of which 5 % fail need 4 spares at 95 %",
    34,
    { lessons: [[9, 30, "led red"]], shops: { "a 0": ["1 led red @ 1"] }, loss: 0.05, chance: 0.95 },
  ],
  [
    "joint-spares",
    "three needs that must all be met; by chance 0.95",
    null,
    {
      lessons: [[9, 12, "led red x2", "servo", "wire x5"], [16, 10, "led red", "servo", "wire x8"]],
      have: { "led red": 20, servo: 10, wire: 70 },
      shops: { "a 250": ["5 led red @ 60", "1 servo @ 390", "20 wire @ 150"], "b 400/3000": ["20 led red @ 150", "5 servo @ 1600", "65 wire @ 400"] },
      loss: 0.02,
      chance: 0.95,
    },
  ],
  [
    "substitutes",
    "two needs that compete for what stands in",
    null,
    {
      lessons: [[9, 10, "resistor 220 x2 or resistor 330", "resistor 330 or resistor 220", "led red or led green"]],
      have: { "resistor 220": 7, "resistor 330": 12, "led red": 3 },
      shops: { "a 90": ["5 resistor 220 @ 31", "10 resistor 330 @ 45", "3 led red @ 33"], "b 120": ["25 resistor 220 @ 70", "10 led green @ 55"] },
      loss: 0.03,
      chance: 0.9,
    },
  ],
  [
    "thresholds",
    "free shipping that is worth a packet more",
    null,
    {
      lessons: [[9, 9, "servo", "led red x3"], [20, 12, "servo", "led green x2"]],
      shops: { "quick 690/4000 2d": ["1 servo @ 410", "10 led red @ 130"], "slow 450/6000 12d": ["5 servo @ 1500", "50 led green @ 350", "20 led red @ 190"] },
      loss: 0.01,
      chance: 0.9,
    },
  ],
]; // biome-ignore format: tables

const small: ClassSize = { classes: 1, lessons: 6, teams: 8, suppliers: 2, offers: 34, there: 0.85, chance: 0.95 };
const two: ClassSize = { classes: 2, lessons: 5, teams: 9, suppliers: 3, offers: 51, there: 0.9, chance: 0.9 };

export const models: readonly KnownModel[] = [
  ...known,
  ...handMade.map(([name, source, optimum, words, question]) => ({
    name: `order-${name}`,
    source,
    optimum,
    model: ask(orderCase(words), question),
  })),
  ...[1, 2, 3].map((seed) => ({
    name: `class-${seed}`,
    source: "generated: one class, six lessons, spares for 95 %",
    optimum: null,
    model: ask(classOrder(small, seed)),
  })),
  ...[1, 2].map((seed) => ({
    name: `classes-${seed}`,
    source: "generated: two classes, five lessons, three suppliers",
    optimum: null,
    model: ask(classOrder(two, seed)),
  })),
  {
    name: "class-1-budget",
    source: "generated: the most lessons for 20.00",
    optimum: null,
    model: ask(classOrder(small, 1), { ask: "most", budget: 2000 }),
  },
  ...[1, 2].flatMap((seed) => {
    const size = { parts: 12, kits: 2, suppliers: 3, offers: 30 };
    return [
      {
        name: `cover-${seed}`,
        source: "generated: parts, kits, shipping, in our model",
        optimum: null,
        model: ask(coverOrder(size, seed)),
      },
      {
        name: `cover-${seed}-plain`,
        source: "the same purchase as a textbook states it",
        optimum: null,
        model: plainModel(size, seed),
      },
    ];
  }),
];
