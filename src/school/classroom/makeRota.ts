// The rota of a class: teams for a row of lessons, with no two pupils together twice for as long as possible.
//
// Wishes first: groups that stay together and pairs that stay apart are kept whenever they can be. Then fresh lessons, the
// longest row known for this class (freshLessons.ts), with the pupils placed as the wishes ask (placePupils.ts). Then, lesson
// by lesson, the teams that repeat the least (oneMoreLesson.ts). Last the roles (shareRoles.ts).
// Does not know: dates, absences (repairDay.ts), papers.
import { finish, type LongWork, seededRandom } from "../../base/index.ts";
import type { NumberLessons } from "./developDesign.ts";
import { freshLessons } from "./freshLessons.ts";
import { meetingBound } from "./meetingBound.ts";
import { oneMoreLesson } from "./oneMoreLesson.ts";
import { placePupils } from "./placePupils.ts";
import { type QuickRandom, quickRandom } from "./quickRandom.ts";
import type { Rota, Team } from "./rota.ts";
import { sharePresenters, shareRoles } from "./shareRoles.ts";
import { sortWishes, type Wishes } from "./wishes.ts";

/** What long work of this room is doing, for the person who waits. */
export type ClassroomWork = "classroom.findTeams" | "classroom.fillLessons" | "classroom.shareRoles";

export interface RotaTask {
  /** Ids in the order of the class list. */
  readonly pupils: readonly string[];
  /** Pupils wanted in a team; see teamSizes.ts for numbers that it does not divide. */
  readonly size: number;
  readonly lessons: number;
  readonly apart: readonly (readonly [string, string])[];
  readonly together: readonly (readonly string[])[];
  /** A mark for each pupil that teams are balanced on; pupils without one count as average. */
  readonly balance?: ReadonlyMap<string, number>;
  readonly seed: number;
  /** Lessons that teams stay as they are before they are mixed anew; 1 unless told otherwise. */
  readonly stay?: number;
}

/**
 * Makes a rota. Ids in wishes that are not in the class are passed over.
 *
 * @returns as many lessons as asked for; wishes that could not be kept are listed in `broken`, never thrown.
 */
export function* makeRota(task: RotaTask): LongWork<Rota> {
  const stay = Math.max(1, Math.floor(task.stay ?? 1));
  const lessons = Math.max(0, Math.floor(task.lessons));
  const mixes = Math.ceil(lessons / stay);
  const numberOf = new Map(task.pupils.map((id, i) => [id, i]));
  const known = (ids: readonly string[]) => ids.flatMap((id) => numberOf.get(id) ?? []);
  const together = task.together.map(known);
  const apart = task.apart.map(known).filter((pair): pair is [number, number] => pair.length === 2 && pair[0] !== pair[1]);
  const wishes = sortWishes(task.pupils.length, task.size, together, apart);
  const random = quickRandom(seededRandom(task.seed, "classroom.rota").int(1, 0x7fffffff));
  const marks = marksOf(task);

  const bound = meetingBound(wishes);
  const mixed = yield* mix(wishes, mixes, bound ?? mixes, marks, random);
  const byMix = mixed.map((teams) => [
    ...wishes.standing.map((team) => [...team]),
    ...teams.map((team) => team.map((p) => wishes.mixed[p]!)),
  ]);
  const byLesson = Array.from({ length: lessons }, (_, l) => byMix[Math.floor(l / stay)]!.map((team) => sorted(team)));
  yield { done: mixes, total: mixes, doing: "classroom.shareRoles" };
  const roles = shareRoles(byLesson, task.pupils.length, random);
  const presenters = sharePresenters(byLesson, roles, task.pupils.length);
  const id = (p: number) => task.pupils[p]!;
  const named = byLesson.map((teams, l) =>
    teams.map(
      (team, t): Team => ({
        number: t + 1,
        pupils: team.map(id),
        roles: team.map((p, i) => ({ pupil: id(p), role: roles[l]![t]![i]! })),
        presenter: id(presenters[l]![t]!),
      }),
    ),
  );
  const forced = wishes.joined.map((group) => new Set(group));
  const { fresh, repeated } = countRepeats(byMix, (a, b) => forced.some((group) => group.has(a) && group.has(b)));
  return {
    lessons: named,
    bound: bound === null ? lessons : bound * stay,
    fresh: Math.min(lessons, fresh * stay),
    repeated,
    broken: brokenWishes(byLesson, together, apart, id),
    ...(task.balance ? { spread: spreadOf(byLesson, marks) } : {}),
  };
}

/** Makes a rota at once, for callers who show no progress. */
export function rotaAtOnce(task: RotaTask): Rota {
  return finish(makeRota(task));
}

/** Lessons over the positions of the mixed pupils. */
function* mix(
  wishes: Wishes,
  lessons: number,
  bound: number,
  marks: Float64Array | null,
  random: QuickRandom,
): LongWork<NumberLessons> {
  const pupils = wishes.mixed.length;
  const position = new Map(wishes.mixed.map((p, i) => [p, i]));
  const at = (p: number) => position.get(p)!;
  const seated = wishes.seated.map((team) => team.map(at));
  const groups = wishes.groups.map((group) => group.map(at));
  const apart = wishes.apart.map(([a, b]): [number, number] => [at(a), at(b)]);
  const ownMarks = marks ? Float64Array.from(wishes.mixed, (p) => marks[p]!) : null;

  const design = yield* freshLessons({ sizes: wishes.sizes, seated, groups, lessons, bound }, random);
  const plan = placePupils(
    { lessons: design, held: lessons, seated: new Set(seated.flat()), apart, marks: ownMarks, pupils },
    random,
  );
  const met = new Uint16Array(pupils * pupils);
  const isApart = new Uint8Array(pupils * pupils);
  for (const [a, b] of apart) {
    isApart[a * pupils + b] = 1;
    isApart[b * pupils + a] = 1;
  }
  const note = (teams: readonly (readonly number[])[]) => {
    for (const team of teams) for (const a of team) for (const b of team) if (a !== b) met[a * pupils + b]! += 1;
  };
  for (const teams of plan) note(teams);
  while (plan.length < lessons) {
    yield { done: plan.length, total: lessons, doing: "classroom.fillLessons" };
    const teams = oneMoreLesson({ sizes: wishes.sizes, seated, apart: isApart, met, marks: ownMarks }, random);
    note(teams);
    plan.push(teams);
  }
  return plan;
}

/** Deviations from the class's mean in standard deviations; null without a wish or where all are equal. */
function marksOf(task: RotaTask): Float64Array | null {
  const { balance } = task;
  if (!balance) return null;
  const given = task.pupils.flatMap((id) => balance.get(id) ?? []);
  const mean = given.reduce((sum, m) => sum + m, 0) / Math.max(1, given.length);
  const deviation = Math.sqrt(given.reduce((sum, m) => sum + (m - mean) ** 2, 0) / Math.max(1, given.length));
  if (!(deviation > 0)) return null;
  return Float64Array.from(task.pupils, (id) => ((balance.get(id) ?? mean) - mean) / deviation);
}

/** Root mean square of the teams' means, in standard deviations of the class; 0 is perfect balance. */
function spreadOf(lessons: NumberLessons, marks: Float64Array | null): number {
  const teams = lessons.flat();
  if (!marks || teams.length === 0) return 0;
  const means = teams.map((team) => team.reduce((sum, p) => sum + marks[p]!, 0) / team.length);
  return Math.sqrt(means.reduce((sum, m) => sum + m * m, 0) / means.length);
}

/** Lessons from the first on without a pair twice, and meetings beyond the first over all of them; forced pairs left out. */
function countRepeats(lessons: NumberLessons, isForced: (a: number, b: number) => boolean): { fresh: number; repeated: number } {
  const met = new Set<string>();
  let fresh = 0;
  let repeated = 0;
  for (const [l, teams] of lessons.entries()) {
    for (const team of teams) {
      for (const a of team) {
        for (const b of team) {
          if (a >= b || isForced(a, b)) continue;
          if (met.has(`${a} ${b}`)) repeated += 1;
          met.add(`${a} ${b}`);
        }
      }
    }
    if (repeated === 0) fresh = l + 1;
  }
  return { fresh, repeated };
}

function brokenWishes(
  lessons: NumberLessons,
  together: readonly (readonly number[])[],
  apart: readonly (readonly [number, number])[],
  id: (p: number) => string,
): Rota["broken"] {
  return lessons.flatMap((teams, lesson) => {
    const has = (team: readonly number[], p: number) => team.includes(p);
    const joined = apart.filter(([a, b]) => teams.some((team) => has(team, a) && has(team, b)));
    const split = together.filter((group) => group.length > 1 && !teams.some((team) => group.every((p) => has(team, p))));
    return [
      ...joined.map((pair) => ({ code: "apart" as const, pupils: pair.map(id), lesson })),
      ...split.map((group) => ({ code: "together" as const, pupils: group.map(id), lesson })),
    ];
  });
}

/** Class-list order inside a team, so that papers do not show how it was found. */
function sorted(team: readonly number[]): number[] {
  return [...team].sort((a, b) => a - b);
}
