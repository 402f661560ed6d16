// Rotas against published numbers, counting, laws, wishes and, for tiny classes, against every rota there is.
import { expect, test } from "vitest";
import { sample } from "../../../test/sample.ts";
import { finish, seededRandom } from "../../base/index.ts";
import { checkRota } from "./checkRota.ts";
import { makeRota, type RotaTask, rotaAtOnce } from "./makeRota.ts";
import type { Rota } from "./rota.ts";
import { teamSizes } from "./teamSizes.ts";

const ids = (n: number) => Array.from({ length: n }, (_, i) => String(i + 1));

/** Makes a rota and lets the independent check agree with every figure in it. */
function checkedRota(task: Partial<RotaTask> & Pick<RotaTask, "pupils" | "size" | "lessons">): Rota {
  const whole = { apart: [], together: [], seed: 1, ...task };
  const rota = rotaAtOnce(whole);
  const forced = (a: string, b: string) => whole.together.some((group) => group.includes(a) && group.includes(b));
  const found = checkRota(whole.pupils, rota, forced);
  expect(found.wrong).toEqual([]);
  expect(rota.lessons).toHaveLength(whole.lessons);
  expect({ fresh: rota.fresh, repeated: rota.repeated }).toEqual({ fresh: found.fresh, repeated: found.repeated });
  expect(rota.fresh).toBeLessThanOrEqual(rota.bound);
  const joins = (teams: Rota["lessons"][number], group: readonly string[]) =>
    teams.some((team) => group.every((p) => team.pupils.includes(p)));
  const broken = rota.lessons.flatMap((teams, lesson) => [
    ...whole.apart.filter((pair) => joins(teams, pair)).map((pupils) => `${lesson} apart ${pupils.join(" ")}`),
    ...whole.together.filter((group) => !joins(teams, group)).map((pupils) => `${lesson} together ${pupils.join(" ")}`),
  ]);
  expect(rota.broken.map((b) => `${b.lesson} ${b.code} ${b.pupils.join(" ")}`)).toEqual(broken);
  return rota;
}

// The number of lessons with nobody together twice that must be reached; where it comes from stands in reference/rotas.
const targets: [pupils: number, size: number, lessons: number, bound: number][] = [
  [30, 3, 14, 14],
  [27, 3, 13, 13],
  [24, 3, 11, 11],
  [28, 4, 9, 9],
  [30, 2, 29, 29],
  [31, 3, 14, 14],
  [29, 3, 14, 14],
  [28, 3, 12, 12],
  [32, 4, 10, 10],
  [16, 4, 5, 5],
  [25, 5, 6, 6],
  [31, 2, 27, 27],
  [9, 3, 4, 4],
  [15, 3, 7, 7],
];
for (const [pupils, size, lessons, bound] of targets) {
  test(`${pupils} in ${size}: ${lessons} lessons`, () => {
    const rota = checkedRota({ pupils: ids(pupils), size, lessons });
    expect(rota).toMatchObject({ fresh: lessons, bound, repeated: 0, broken: [] });
  });
}

test("team sizes are those of teamSizes, and a found construction keeps them for as long as it can", () => {
  for (const [pupils, size, lessons] of [
    [30, 3, 14],
    [31, 3, 14],
    [29, 3, 14],
    [27, 4, 9],
    [26, 4, 8],
    [25, 4, 8],
    [33, 2, 20],
  ] as const) {
    const rota = checkedRota({ pupils: ids(pupils), size, lessons });
    const wanted = teamSizes(pupils, size).sort();
    for (const teams of rota.lessons) expect(teams.map((t) => t.pupils.length).sort()).toEqual(wanted);
  }
});

test("very small and very large classes", () => {
  expect(checkedRota({ pupils: [], size: 3, lessons: 5 }).lessons.flat()).toEqual([]);
  expect(checkedRota({ pupils: ["a"], size: 3, lessons: 2 }).lessons[1]![0]!.pupils).toEqual(["a"]);
  for (const pupils of [2, 3, 4, 5]) checkedRota({ pupils: ids(pupils), size: 3, lessons: 6 });
  expect(checkedRota({ pupils: ids(30), size: 3, lessons: 0 }).lessons).toEqual([]);
  for (const size of [2, 3, 4, 5]) expect(checkedRota({ pupils: ids(400), size, lessons: 30 }).fresh).toBe(30);
});

test("after the fresh lessons as few repeats as counting allows", () => {
  // 20 lessons of 10 threes make 600 meetings among 435 pairs: at least 165 are repeats.
  expect(checkedRota({ pupils: ids(30), size: 3, lessons: 20 }).repeated).toBe(165);
  // 12 in fours: three teams cannot be mixed without a repeat, and 6 lessons make 108 meetings among 66 pairs.
  const rota = checkedRota({ pupils: ids(12), size: 4, lessons: 6 });
  expect(rota.fresh).toBe(1);
  expect(rota.repeated).toBeGreaterThanOrEqual(108 - 66);
});

test("the same input gives the same rota; another seed gives other teams and as many fresh lessons", () => {
  const task = { pupils: ids(30), size: 3, lessons: 14, apart: [["1", "2"]] as const, together: [], seed: 5 };
  expect(rotaAtOnce(task)).toEqual(finish(makeRota(task)));
  const other = rotaAtOnce({ ...task, seed: 6 });
  expect(other.lessons).not.toEqual(rotaAtOnce(task).lessons);
  expect(other.fresh).toBe(14);
});

test("the order of the class list does not change how long nobody meets twice", () => {
  for (let seed = 1; seed <= sample(4, 60); seed += 1) {
    const random = seededRandom(seed, "order");
    const pupils = ids(random.int(12, 40));
    const size = random.int(2, 4);
    const lessons = random.int(3, 16);
    const fresh = rotaAtOnce({ pupils, size, lessons, apart: [], together: [], seed }).fresh;
    expect(rotaAtOnce({ pupils: random.shuffled(pupils), size, lessons, apart: [], together: [], seed }).fresh).toBe(fresh);
  }
});

test("teams that stay for a block are mixed anew at its end", () => {
  const rota = checkedRotaInBlocks(30, 3, 12, 4);
  expect(rota.fresh).toBe(12);
  expect(rota.repeated).toBe(0);
});
function checkedRotaInBlocks(pupils: number, size: number, lessons: number, stay: number): Rota {
  const rota = rotaAtOnce({ pupils: ids(pupils), size, lessons, apart: [], together: [], seed: 1, stay });
  rota.lessons.forEach((teams, l) => {
    const first = rota.lessons[l - (l % stay)]!;
    expect(teams.map((t) => t.pupils)).toEqual(first.map((t) => t.pupils));
  });
  const starts = rota.lessons.filter((_, l) => l % stay === 0);
  expect(checkRota(ids(pupils), { ...rota, lessons: starts }).repeated).toBe(rota.repeated);
  return rota;
}

test("balance: teams are nearer to each other than by chance when lessons leave room", () => {
  const pupils = ids(30);
  const balance = new Map(pupils.map((p, i) => [p, i % 5]));
  const balanced = checkedRota({ pupils, size: 3, lessons: 4, balance });
  // Without choice the mean of three differs from the class's by 1/√3 standard deviations (times √(27/29), no replacement).
  const byChance = Math.sqrt((1 / 3) * (27 / 29));
  expect(balanced.fresh).toBe(4);
  expect(balanced.spread).toBeLessThan(byChance / 3);
});

const wishCases: [what: string, task: Partial<RotaTask> & Pick<RotaTask, "pupils" | "size" | "lessons">, fresh: number][] = [
  [
    "three pairs apart take the places that never meet",
    {
      pupils: ids(30),
      size: 3,
      lessons: 14,
      apart: [
        ["1", "2"],
        ["3", "4"],
        ["5", "6"],
      ],
    },
    14,
  ],
  [
    "one apart from two costs a lesson",
    {
      pupils: ids(30),
      size: 3,
      lessons: 14,
      apart: [
        ["1", "2"],
        ["1", "3"],
      ],
    },
    13,
  ],
  ["two who stay together, 13 lessons", { pupils: ids(30), size: 3, lessons: 13, together: [["4", "9"]] }, 13],
  [
    "two who stay together, more lessons than can be fresh",
    { pupils: ids(30), size: 3, lessons: 20, together: [["4", "9"]] },
    13,
  ],
  ["a whole team that stays", { pupils: ids(30), size: 3, lessons: 13, together: [["1", "2", "3"]] }, 13],
  [
    "groups that overlap are one",
    {
      pupils: ids(30),
      size: 3,
      lessons: 10,
      together: [
        ["1", "2"],
        ["2", "3"],
      ],
    },
    10,
  ],
];
for (const [what, task, fresh] of wishCases) {
  test(what, () => {
    const whole = { apart: [], together: [], seed: 3, ...task };
    const rota = rotaAtOnce(whole);
    expect(rota.broken).toEqual([]);
    const joined = whole.together.flat();
    const forced = (a: string, b: string) => joined.includes(a) && joined.includes(b);
    expect(checkRota(whole.pupils, rota, forced)).toMatchObject({ wrong: [], fresh: rota.fresh, repeated: rota.repeated });
    expect(rota.fresh).toBe(fresh);
  });
}

test("wishes that cannot be kept are reported, not thrown", () => {
  const clash = rotaAtOnce({ pupils: ids(9), size: 3, lessons: 2, apart: [["1", "2"]], together: [["1", "2"]], seed: 1 });
  expect(clash.broken.map((b) => b.code)).toEqual(["apart", "apart"]);
  const crowd = rotaAtOnce({ pupils: ids(12), size: 3, lessons: 1, apart: [], together: [ids(7)], seed: 1 });
  expect(crowd.broken).toEqual([{ code: "together", pupils: ids(7), lesson: 0 }]);
  const unknown = rotaAtOnce({ pupils: ids(6), size: 3, lessons: 1, apart: [["1", "x"]], together: [["y", "2"]], seed: 1 });
  expect(unknown.broken).toEqual([]);
  // Five who all want to be apart do not fit into three teams.
  const five = ids(5).flatMap((a) =>
    ids(5)
      .filter((b) => a < b)
      .map((b): [string, string] => [a, b]),
  );
  const many = rotaAtOnce({ pupils: ids(9), size: 3, lessons: 1, apart: five, together: [], seed: 1 });
  expect(many.broken).toHaveLength(2);
});

test("seeded classes with wishes: everything that can be kept is kept, and one lesson is lost at most", () => {
  const classes = sample(20, 2000);
  let near = 0;
  for (let seed = 1; seed <= classes; seed += 1) {
    const random = seededRandom(seed, "wishes");
    const pupils = ids(random.int(12, 36));
    const size = random.int(0, 3) === 0 ? 4 : 3;
    const order = random.shuffled(pupils);
    const together = random.int(0, 3) === 0 ? [order.slice(0, 2)] : [];
    const apart = Array.from({ length: random.int(0, 4) }, (): [string, string] => {
      const a = random.int(2, order.length - 1);
      return [order[a]!, order[a === 2 ? 3 : a - 1]!];
    });
    const balance = random.int(0, 1) === 0 ? new Map(pupils.map((p) => [p, random.int(1, 5)])) : undefined;
    const best = rotaAtOnce({ pupils, size, lessons: 12, apart: [], together: [], seed }).fresh;
    const rota = checkedRota({ pupils, size, lessons: best, apart, together, seed, ...(balance ? { balance } : {}) });
    expect(rota.broken, `seed ${seed}`).toEqual([]);
    if (rota.fresh >= best - 1) near += 1;
  }
  expect(near / classes).toBeGreaterThanOrEqual(0.95);
});

test("tiny classes: an exhaustive search finds no longer row without a repeat", () => {
  for (let pupils = 2; pupils <= 9; pupils += 1) {
    for (const size of [2, 3, 4]) {
      const asked = 12;
      const { fresh } = checkedRota({ pupils: ids(pupils), size, lessons: asked });
      const sizes = teamSizes(pupils, size);
      if (sizes.length === 1) continue;
      expect(existsFreshRow(sizes, fresh), `${pupils} in ${size}: ${fresh}`).toBe(true);
      expect(existsFreshRow(sizes, fresh + 1), `${pupils} in ${size}: ${fresh + 1}`).toBe(false);
    }
  }
});

test("tiny classes: the fewest repeats over a few lessons, by trying all", () => {
  const cases: [pupils: number, size: number, lessons: number][] = [
    [4, 2, 5],
    [5, 3, 4],
    [6, 3, 4],
    [6, 2, 4],
    [7, 3, 3],
  ];
  for (const [pupils, size, lessons] of cases) {
    const { repeated } = checkedRota({ pupils: ids(pupils), size, lessons });
    expect(repeated, `${pupils} in ${size}, ${lessons} lessons`).toBe(fewestRepeats(teamSizes(pupils, size), lessons));
  }
});

/** All ways to seat a class once: lists of pairs as numbers a·n + b. */
function allLessons(sizes: readonly number[]): number[][] {
  const n = sizes.reduce((sum, s) => sum + s, 0);
  const found: number[][] = [];
  const place = (left: readonly number[], open: readonly number[], pairs: readonly number[]): void => {
    const first = left[0];
    if (first === undefined) {
      found.push([...pairs]);
      return;
    }
    for (const size of new Set(open)) {
      const rest = [...open];
      rest.splice(rest.indexOf(size), 1);
      for (const others of choose(left.slice(1), size - 1)) {
        const team = [first, ...others];
        const made = team.flatMap((a) => team.filter((b) => a < b).map((b) => a * n + b));
        place(
          left.filter((p) => !team.includes(p)),
          rest,
          [...pairs, ...made],
        );
      }
    }
  };
  place(
    Array.from({ length: n }, (_, i) => i),
    sizes,
    [],
  );
  return found;
}

function choose(from: readonly number[], count: number): number[][] {
  if (count === 0) return [[]];
  return from.flatMap((first, i) => choose(from.slice(i + 1), count - 1).map((rest) => [first, ...rest]));
}

/** Whether some lessons without a repeat exist; the first may be any, because all are alike up to names. */
function existsFreshRow(sizes: readonly number[], lessons: number): boolean {
  const all = allLessons(sizes);
  const extend = (used: ReadonlySet<number>, from: number, left: number): boolean => {
    if (left === 0) return true;
    for (let i = from; i < all.length; i += 1) {
      if (all[i]!.some((pair) => used.has(pair))) continue;
      if (extend(new Set([...used, ...all[i]!]), i + 1, left - 1)) return true;
    }
    return false;
  };
  return lessons === 0 || extend(new Set(all[0]), 1, lessons - 1);
}

function fewestRepeats(sizes: readonly number[], lessons: number): number {
  const all = allLessons(sizes);
  const n = sizes.reduce((sum, s) => sum + s, 0);
  const times = new Uint8Array(n * n);
  let best = Number.POSITIVE_INFINITY;
  const extend = (left: number, repeats: number): void => {
    if (repeats >= best) return;
    if (left === 0) {
      best = repeats;
      return;
    }
    for (const lesson of all) {
      let more = 0;
      for (const pair of lesson) {
        if (times[pair]! > 0) more += 1;
        times[pair]! += 1;
      }
      extend(left - 1, repeats + more);
      for (const pair of lesson) times[pair]! -= 1;
    }
  };
  for (const pair of all[0]!) times[pair]! += 1;
  extend(lessons - 1, 0);
  return best;
}
