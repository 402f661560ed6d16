// Days with pupils away: cases by hand, and small classes against all seatings there are.
import { expect, test } from "vitest";
import { sample } from "../../../test/sample.ts";
import { seededRandom } from "../../base/index.ts";
import { rotaAtOnce } from "./makeRota.ts";
import { countMeetings, pairKey } from "./meetings.ts";
import { type DayTask, repairDay } from "./repairDay.ts";
import type { DayTeams, Team } from "./rota.ts";
import { rolesFor } from "./shareRoles.ts";

/** "a b c / d e f": teams with roles in the order of the size. */
function day(text: string): Team[] {
  return text.split(" / ").map((names, t) => {
    const pupils = names.split(" ");
    const roles = rolesFor(pupils.length);
    return { number: t + 1, pupils, roles: pupils.map((pupil, i) => ({ pupil, role: roles[i]! })) };
  });
}
const written = ({ teams }: DayTeams) => teams.map((t) => `${t.number}: ${t.pupils.join(" ")}`).join(" / ");
const repair = (text: string, absent: string, more: Partial<DayTask> = {}) =>
  repairDay({
    teams: day(text),
    absent: absent.split(" ").filter((p) => p !== ""),
    size: 3,
    history: [],
    apart: [],
    together: [],
    ...more,
  });

const cases: [what: string, teams: string, absent: string, more: Partial<DayTask>, moved: number, teamsAfter: string | null][] = [
  ["nobody away", "a b c / d e f", "", {}, 0, "1: a b c / 2: d e f"],
  ["one away leaves a pair", "a b c / d e f", "c", {}, 0, "1: a b / 2: d e f"],
  ["two away from different teams leave two pairs", "a b c / d e f", "c f", {}, 0, "1: a b / 2: d e"],
  ["two away from one team: one moves", "a b c / d e f / g h i", "a b", {}, 1, null],
  ["a whole team away: its number stays unused", "a b c / d e f / g h i", "d e f", {}, 0, "1: a b c / 3: g h i"],
  ["two left alone sit together", "a b / c d / e f", "b d", { size: 2 }, 1, null],
  ["everybody away", "a b c", "a b c", {}, 0, ""],
  ["one pupil left of all", "a b c / d e f", "a b c d e", {}, 0, "2: f"],
  ["a pair apart is not joined", "a b c / d e f", "a b", { apart: [["c", "d"]], size: 2 }, 1, "1: c e / 2: d f"],
  [
    "friends who stay together move together or not at all",
    "a b c / d e f",
    "a b",
    { together: [["d", "e", "f"]] },
    1,
    "2: d e f c",
  ],
];
for (const [what, teams, absent, more, moved, after] of cases) {
  test(what, () => {
    const repaired = repair(teams, absent, more);
    expect(repaired.moved).toHaveLength(moved);
    if (after !== null) expect(written(repaired)).toBe(after);
  });
}

test("of equal repairs, the one whose pairs have not met", () => {
  // c is left alone; everybody but e has met c before, and a team that c joins has three who met c.
  const history = [day("c d f / c g h / c i d"), day("c g i / e h f / d a b")];
  const repaired = repair("a b c / d e f / g h i", "a b", { history });
  expect(repaired.moved).toEqual(["e"]);
  expect(written(repaired)).toBe("1: c e / 2: d f / 3: g h i");
});

test("roles: who can keep one keeps it, and a builder and a programmer are there", () => {
  const { teams } = repair("a b c / d e f", "a");
  expect(teams[0]!.roles).toEqual([
    { pupil: "b", role: "programmer" },
    { pupil: "c", role: "builder" },
  ]);
  expect(teams[1]!.roles.map((r) => r.role)).toEqual(["builder", "programmer", "checker"]);
});

/** A day of a small class, seeded, with wishes. */
function smallDay(seed: number): DayTask {
  const random = seededRandom(seed, "day");
  const pupils = random.shuffled("abcdefgh".slice(0, random.int(5, 8)).split(""));
  const size = random.int(2, 3);
  const rota = rotaAtOnce({ pupils, size, lessons: 2, apart: [], together: [], seed });
  const absent = random.shuffled(pupils).slice(0, random.int(1, 3));
  const apart = Array.from({ length: random.int(0, 2) }, (): [string, string] => [
    pupils[random.int(0, 1)]!,
    pupils[random.int(2, pupils.length - 1)]!,
  ]);
  const mate = rota.lessons[1]![0]!.pupils;
  const together = random.int(0, 3) === 0 ? [mate.slice(0, 2)] : [];
  return { teams: rota.lessons[1]!, absent, size, history: rota.lessons.slice(0, 1), apart, together };
}

/** Everything that a day must keep; empty if all is well. */
function wrongWith(task: DayTask, teams: readonly (readonly string[])[]): string[] {
  const present = task.teams.flatMap((t) => t.pupils).filter((p) => !task.absent.includes(p));
  const wrong: string[] = [];
  if (teams.flat().sort().join() !== [...present].sort().join()) wrong.push("somebody is missing");
  const cap = Math.max(task.size + 1, ...task.teams.map((t) => t.pupils.length));
  const before = (a: string, b: string) => task.teams.some((t) => t.pupils.includes(a) && t.pupils.includes(b));
  for (const team of teams) {
    if (team.length === 1 && present.length > 1) wrong.push("one alone");
    if (team.length > cap) wrong.push("too many");
    for (const [a, b] of task.apart) if (team.includes(a) && team.includes(b) && !before(a, b)) wrong.push(`${a} with ${b}`);
    for (const group of task.together) {
      const here = group.filter((p) => team.includes(p));
      const gone = group.filter((p) => present.includes(p) && !team.includes(p));
      if (here.some((p) => gone.some((q) => before(p, q)))) wrong.push("a group is split");
    }
  }
  return wrong;
}

test("small classes: trying all seatings finds no repair with fewer moves, nor with fewer repeats at as many", () => {
  let hard = 0;
  for (let seed = 1; seed <= sample(40, 3000); seed += 1) {
    const task = smallDay(seed);
    const repaired = repairDay(task);
    const met = countMeetings(task.history);
    const home = new Map(task.teams.flatMap((team, t) => team.pupils.map((p): [string, number] => [p, t])));
    const present = [...home.keys()].filter((p) => !task.absent.includes(p));
    // A number that nobody sits at is no place to move to.
    const open = task.teams.map((_, t) => t).filter((t) => present.some((p) => home.get(p) === t));
    let best: [moves: number, repeats: number] | null = null;
    const seat = (i: number, at: Map<string, number>): void => {
      if (i === present.length) {
        const teams = task.teams.map((_, t) => present.filter((p) => at.get(p) === t));
        if (
          wrongWith(
            task,
            teams.filter((team) => team.length > 0),
          ).length > 0
        )
          return;
        const moved = present.filter((p) => at.get(p) !== home.get(p));
        const repeats = repeatsOf(teams, moved, met);
        if (best === null || moved.length < best[0] || (moved.length === best[0] && repeats < best[1]))
          best = [moved.length, repeats];
        return;
      }
      for (const t of open) seat(i + 1, new Map(at).set(present[i]!, t));
    };
    seat(0, new Map());
    if (best === null) continue;
    if (best[0] > 1) hard += 1;
    const teams = repaired.teams.map((t) => t.pupils);
    expect(wrongWith(task, teams), `seed ${seed}`).toEqual([]);
    expect([repaired.moved.length, repeatsOf(teams, repaired.moved, met)], `seed ${seed}`).toEqual(best);
  }
  expect(hard).toBeGreaterThan(0);
});

function repeatsOf(teams: readonly (readonly string[])[], moved: readonly string[], met: ReadonlyMap<string, number>): number {
  let sum = 0;
  for (const team of teams)
    for (const a of team)
      for (const b of team) if (a < b && (moved.includes(a) || moved.includes(b))) sum += met.get(pairKey(a, b)) ?? 0;
  return sum;
}

test("thirty pupils, one to six away: everything kept, at most one move for two who were left alone", () => {
  const pupils = Array.from({ length: 30 }, (_, i) => String(i + 1));
  for (let seed = 1; seed <= sample(40, 1000); seed += 1) {
    const random = seededRandom(seed, "class");
    const rota = rotaAtOnce({
      pupils,
      size: 3,
      lessons: 6,
      apart: [
        ["1", "2"],
        ["3", "4"],
      ],
      together: [],
      seed: 1 + (seed % 3),
    });
    const absent = random.shuffled(pupils).slice(0, random.int(1, 6));
    const task: DayTask = {
      teams: rota.lessons[5]!,
      absent,
      size: 3,
      history: rota.lessons.slice(0, 5),
      apart: [
        ["1", "2"],
        ["3", "4"],
      ],
      together: [],
    };
    const repaired = repairDay(task);
    expect(
      wrongWith(
        task,
        repaired.teams.map((t) => t.pupils),
      ),
      `seed ${seed}`,
    ).toEqual([]);
    const lonely = task.teams.filter((t) => t.pupils.filter((p) => !absent.includes(p)).length === 1).length;
    expect(repaired.moved.length).toBe(Math.ceil(lonely / 2));
    for (const team of repaired.teams) expect(team.roles.map((r) => r.pupil)).toEqual(team.pupils);
  }
});
