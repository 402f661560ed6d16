// Roles go round: what each team has, and how evenly everybody gets each role.
import { expect, test } from "vitest";
import { sample } from "../../../test/sample.ts";
import { seededRandom } from "../../base/index.ts";
import { rotaAtOnce } from "./makeRota.ts";
import type { Role, Rota } from "./rota.ts";
import { rolesFor } from "./shareRoles.ts";

const ids = (n: number) => Array.from({ length: n }, (_, i) => String(i + 1));
const kinds: readonly Role[] = ["builder", "programmer", "checker"];

/** counts.get(pupil)[role] and times presented, over some lessons. */
function countsOf(pupils: readonly string[], lessons: Rota["lessons"]) {
  const counts = new Map(pupils.map((p) => [p, { builder: 0, programmer: 0, checker: 0, presenter: 0 }]));
  for (const team of lessons.flat()) {
    for (const { pupil, role } of team.roles) counts.get(pupil)![role] += 1;
    counts.get(team.presenter!)!.presenter += 1;
  }
  return [...counts.values()];
}
const range = (numbers: readonly number[]) => Math.max(...numbers) - Math.min(...numbers);

const bySize: [size: number, roles: string][] = [
  [1, "builder"],
  [2, "builder programmer"],
  [3, "builder programmer checker"],
  [4, "builder programmer checker checker"],
  [5, "builder programmer checker checker checker"],
];
for (const [size, roles] of bySize) test(`a team of ${size}: ${roles}`, () => expect(rolesFor(size).join(" ")).toBe(roles));

test("every team has the roles of its size", () => {
  for (const [pupils, size] of [
    [31, 3],
    [29, 3],
    [27, 4],
    [15, 2],
  ] as const) {
    const rota = rotaAtOnce({ pupils: ids(pupils), size, lessons: 9, apart: [], together: [], seed: 1 });
    for (const team of rota.lessons.flat())
      expect(team.roles.map((r) => r.role).sort()).toEqual([...rolesFor(team.pupils.length)].sort());
  }
});

test("threes: everybody has each role once in every three lessons", () => {
  for (let seed = 1; seed <= sample(5, 100); seed += 1) {
    const random = seededRandom(seed, "roles");
    const pupils = ids(3 * random.int(3, 12));
    const lessons = random.int(1, 16);
    const rota = rotaAtOnce({ pupils, size: 3, lessons, apart: [], together: [], seed });
    for (let from = 0; from + 3 <= lessons; from += 3)
      for (const c of countsOf(pupils, rota.lessons.slice(from, from + 3))) expect(kinds.map((k) => c[k])).toEqual([1, 1, 1]);
    for (const c of countsOf(pupils, rota.lessons)) expect(range(kinds.map((k) => c[k]))).toBeLessThanOrEqual(1);
  }
});

test("other sizes: everybody builds as often as everybody else, and programs and checks, but for one time", () => {
  for (const [pupils, size, lessons] of [
    [31, 3, 14],
    [29, 3, 14],
    [28, 3, 12],
    [28, 4, 9],
    [26, 4, 8],
    [30, 2, 29],
    [31, 2, 20],
    [25, 5, 6],
  ] as const) {
    const rota = rotaAtOnce({ pupils: ids(pupils), size, lessons, apart: [], together: [], seed: 2 });
    const counts = countsOf(ids(pupils), rota.lessons);
    for (const kind of kinds) expect(range(counts.map((c) => c[kind])), `${pupils} in ${size}: ${kind}`).toBeLessThanOrEqual(1);
    expect(range(counts.map((c) => c.presenter)), `${pupils} in ${size}: presenters`).toBeLessThanOrEqual(3);
  }
});

// 28 in threes for 12 lessons is not among them: 120 checkers' turns for 28 pupils give eight of them a fifth, and 5 + 4 + 3 = 12.
test("mixed threes: nobody's roles differ by more than one", () => {
  for (const [pupils, lessons] of [
    [31, 14],
    [29, 14],
    [19, 7],
  ] as const) {
    const rota = rotaAtOnce({ pupils: ids(pupils), size: 3, lessons, apart: [], together: [], seed: 4 });
    for (const c of countsOf(ids(pupils), rota.lessons))
      expect(range(kinds.map((k) => c[k])), `${pupils}`).toBeLessThanOrEqual(1);
  }
});
