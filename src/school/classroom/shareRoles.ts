// Who builds, who programs, who checks: the roles of every team of every lesson, passed round evenly.
//
// Whoever builds learns most (Greco, Reasoner and Nelson, read as an abstract: having been the builder was the only independent
// predictor of the exam), so the roles change every lesson. A pair has a builder and a programmer who share the checking; a
// team of four has two checkers, and so on upwards; one alone is the builder.
// The lessons are shared out in windows of three: in teams of three everybody can have each role once in three lessons
// (the teams and pupils are a bipartite graph, which has an equitable colouring: de Werra 1971, from memory), and a local
// search finds it, counting what came before, so that uneven windows are made good later.
// Does not know: who met whom.
import type { NumberLessons } from "./developDesign.ts";
import type { QuickRandom } from "./quickRandom.ts";
import type { Role } from "./rota.ts";

/** The roles that a team of this size shares out. */
export function rolesFor(size: number): Role[] {
  const roles: Role[] = ["builder", "programmer"];
  while (roles.length < size) roles.push("checker");
  return roles.slice(0, size);
}

const number: Readonly<Record<Role, number>> = { builder: 0, programmer: 1, checker: 2 };

/**
 * @param lessons pupils as numbers 0 to n−1.
 * @returns roles[l][t][i]: the role of the i-th pupil of team t in lesson l.
 */
export function shareRoles(lessons: NumberLessons, pupils: number, random: QuickRandom): Role[][][] {
  const roles = lessons.map((lesson) => lesson.map((team) => rolesFor(team.length)));
  const counts = new Int32Array(pupils * 3);
  for (let from = 0; from < lessons.length; from += 3) {
    const window = range(from, Math.min(from + 3, lessons.length));
    for (const l of window) count(lessons[l]!, roles[l]!, counts, 1);
    level(lessons, roles, counts, window, random);
  }
  // What windows could not settle, such as the turns of pairs and fours, is settled over all lessons at the end.
  level(lessons, roles, counts, range(0, lessons.length), random);
  return roles;
}

function count(
  lesson: readonly (readonly number[])[],
  roles: readonly (readonly Role[])[],
  counts: Int32Array,
  by: number,
): void {
  lesson.forEach((team, t) => {
    team.forEach((p, i) => {
      counts[p * 3 + number[roles[t]![i]!]]! += by;
    });
  });
}

/**
 * Swaps roles inside teams of the window while the sum of the squares of all counts does not grow, until every role is shared
 * as evenly as whole numbers allow. Steps that change nothing let an unevenness wander until it meets its opposite.
 */
function level(
  lessons: NumberLessons,
  roles: Role[][][],
  counts: Int32Array,
  window: readonly number[],
  random: QuickRandom,
): void {
  const teams = window.flatMap((l) => lessons[l]!.map((team, t) => ({ l, t, team }))).filter(({ team }) => team.length > 1);
  let excess = sumOfSquares(counts) - leastSumOfSquares(counts);
  for (let step = 0; excess > 0 && step < stepsPerTeam * teams.length; step += 1) {
    const { l, t, team } = teams[random.below(teams.length)]!;
    const held = roles[l]![t]!;
    const i = random.below(team.length);
    const j = random.below(team.length);
    if (held[i] === held[j]) continue;
    const a = team[i]! * 3;
    const b = team[j]! * 3;
    const from = number[held[i]!];
    const to = number[held[j]!];
    // Squares of the four counts that change: each goes up or down by one.
    const change = 2 * (counts[a + to]! + 1 - counts[a + from]!) + 2 * (counts[b + from]! + 1 - counts[b + to]!);
    if (change > 0) continue;
    counts[a + from]! -= 1;
    counts[a + to]! += 1;
    counts[b + to]! -= 1;
    counts[b + from]! += 1;
    const kept = held[i]!;
    held[i] = held[j]!;
    held[j] = kept;
    excess += change;
  }
}

/** Enough for a class of 36 a hundred times over; the bound on the work where a perfect share does not exist. */
const stepsPerTeam = 2000;

function sumOfSquares(counts: Int32Array): number {
  return counts.reduce((sum, c) => sum + c * c, 0);
}

/** The sum if each role were shared among all pupils as evenly as whole numbers allow. */
function leastSumOfSquares(counts: Int32Array): number {
  const pupils = counts.length / 3;
  let least = 0;
  for (let role = 0; role < 3; role += 1) {
    let total = 0;
    for (let p = 0; p < pupils; p += 1) total += counts[p * 3 + role]!;
    const each = Math.floor(total / pupils);
    const more = total - each * pupils;
    least += (pupils - more) * each ** 2 + more * (each + 1) ** 2;
  }
  return least;
}

/**
 * One pupil of each team who shows the others what the team made: whoever did so least often, checkers first.
 * @returns presenters[l][t] as pupil numbers.
 */
export function sharePresenters(lessons: NumberLessons, roles: readonly Role[][][], pupils: number): number[][] {
  const times = new Int32Array(pupils);
  return lessons.map((lesson, l) =>
    lesson.map((team, t) => {
      const order = (i: number) => times[team[i]!]! * 3 + (2 - number[roles[l]![t]![i]!]);
      const best = team.map((_, i) => i).reduce((a, b) => (order(b) < order(a) ? b : a), 0);
      times[team[best]!]! += 1;
      return team[best]!;
    }),
  );
}

function range(from: number, to: number): number[] {
  return Array.from({ length: to - from }, (_, i) => from + i);
}
