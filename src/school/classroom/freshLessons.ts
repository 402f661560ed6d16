// The longest row of lessons without a pair twice that is known for a number of pupils and team sizes.
//
// Tried in this order: nobody to mix; pairs by the circle method; printed and found designs (designs.ts), also those of a class
// that is up to three pupils larger, with pupils left out; rows that are shifted against each other (Latin squares), which serve
// very large classes; last a search by turning. The first that reaches what is asked for, or the longest, is taken.
// Does not know: names, apart wishes, balance.
import type { LongWork } from "../../base/index.ts";
import { type Design, designs } from "./designs.ts";
import { developDesign, type NumberLessons } from "./developDesign.ts";
import type { QuickRandom } from "./quickRandom.ts";
import { turnLesson } from "./turnLesson.ts";

export interface FreshTask {
  readonly sizes: readonly number[];
  readonly seated: readonly (readonly number[])[];
  readonly groups: readonly (readonly number[])[];
  /** Lessons wanted; no more are searched for. */
  readonly lessons: number;
  /** No row can be longer (meetingBound.ts). */
  readonly bound: number;
}

/**
 * Swaps that the search may try for the number of lessons asked for, for one less, and so on: about two seconds in all. One
 * less is where most classes with wishes end, so it gets the most.
 */
const swapShares = [500_000, 8_000_000, 3_000_000, 1_000_000];
const leastShare = 300_000;
/** Above this a search by turning takes too long, and shifted rows give more lessons than a school year has. */
const mostTurned = 64;

/** @returns lessons without a pair twice (pairs of one group do not count); those with odd team sizes come last. */
export function* freshLessons(task: FreshTask, random: QuickRandom): LongWork<NumberLessons> {
  const { sizes, lessons } = task;
  const pupils = sizes.reduce((sum, size) => sum + size, 0);
  if (pupils < 2 || lessons < 1) return [];
  let best: NumberLessons = [];
  const offer = (found: NumberLessons) => {
    if (found.length > best.length) best = found;
  };
  const nobodySeated = task.groups.length === 0;
  let known = false;
  if (nobodySeated) {
    if (sizes.every((size) => size === 2)) offer(circleMethod(pupils));
    const fromDesigns = bestDesign(sizes, lessons);
    known = fromDesigns.length > 0;
    offer(fromDesigns);
    offer(shiftedRows(sizes, lessons));
  }
  if (best.length < lessons && !known && pupils <= mostTurned) {
    const most = Math.min(lessons, task.bound);
    for (let wanted = most; wanted > best.length; wanted -= 1) {
      const share = swapShares[most - wanted] ?? leastShare;
      const found = yield* turnLesson({ ...task, lessons: wanted }, share, random);
      if (found) offer(found);
    }
  }
  return best.slice(0, lessons);
}

/**
 * Pairs for an even number of pupils: one stands still, the others move round a table, facing partners meet.
 * n − 1 lessons, the most that there can be. Source: the round-robin method, 19th century (from memory).
 */
function circleMethod(pupils: number): NumberLessons {
  const ring = pupils - 1;
  return Array.from({ length: ring }, (_, lesson) => {
    const teams = [[ring, lesson]];
    for (let i = 1; i < pupils / 2; i += 1) teams.push([(lesson + i) % ring, (lesson + ring - i) % ring]);
    return teams;
  });
}

/** Lessons of the best design with as many teams; of two that reach what is asked for, the one with even team sizes. */
function bestDesign(sizes: readonly number[], wanted: number): NumberLessons {
  const pupils = sizes.reduce((sum, size) => sum + size, 0);
  const shape = shapeOf(sizes);
  let best: NumberLessons = [];
  let bestOdd = 0;
  for (const design of designs) {
    const surplus = pupilsOf(design) - pupils;
    if (surplus < 0 || surplus > 3 || teamsOf(design) !== sizes.length) continue;
    const lessons = surplus === 0 ? developDesign(design) : leaveOut(developDesign(design), surplus, sizes);
    if (surplus === 0 && shapeOf(lessons[0]!.map((team) => team.length)) !== shape) continue;
    const reached = lessons.slice(0, wanted);
    const odd = reached.filter((lesson) => shapeOf(lesson.map((team) => team.length)) !== shape).length;
    if (reached.length > Math.min(best.length, wanted) || (reached.length === Math.min(best.length, wanted) && odd < bestOdd)) {
      best = lessons;
      bestOdd = odd;
    }
  }
  return best;
}

function pupilsOf(design: Design): number {
  return design.orbits.reduce((sum, [length, count]) => sum + length * count, 0);
}

function teamsOf(design: Design): number {
  return design.lessons[0]!.split(" ").length;
}

function shapeOf(sizes: readonly number[]): string {
  return [...sizes].sort((a, b) => a - b).join(" ");
}

/**
 * Leaves out some pupils of a larger class, so that as many lessons as possible keep the wanted team sizes. Lessons in which
 * two of them sat together get a team one smaller than usual and come last; lessons that would leave somebody alone are dropped.
 */
function leaveOut(lessons: NumberLessons, surplus: number, sizes: readonly number[]): NumberLessons {
  const pupils = lessons[0]!.flat().length;
  const shape = shapeOf(sizes);
  const teamOf = lessons.map((lesson) => {
    const team = new Int32Array(pupils);
    for (const [t, members] of lesson.entries()) for (const p of members) team[p] = t;
    return team;
  });
  let best: { out: readonly number[]; score: number } = { out: [], score: -1 };
  for (const out of subsets(pupils, surplus)) {
    let score = 0;
    for (const [l, lesson] of lessons.entries()) {
      const left = lesson.map((team) => team.length);
      for (const p of out) left[teamOf[l]![p]!]! -= 1;
      if (left.every((size) => size >= 2)) score += shapeOf(left) === shape ? 101 : 100;
    }
    if (score > best.score) best = { out, score };
    if (best.score === 101 * lessons.length) break;
  }
  const newNumber = new Map<number, number>();
  for (let p = 0; p < pupils; p += 1) if (!best.out.includes(p)) newNumber.set(p, newNumber.size);
  const kept = lessons
    .map((lesson) => lesson.map((team) => team.filter((p) => newNumber.has(p)).map((p) => newNumber.get(p)!)))
    .filter((lesson) => lesson.every((team) => team.length >= 2));
  const regular = (lesson: number[][]) => shapeOf(lesson.map((team) => team.length)) === shape;
  return [...kept.filter(regular), ...kept.filter((lesson) => !regular(lesson))];
}

function* subsets(n: number, count: number, from = 0): Generator<number[]> {
  if (count === 0) {
    yield [];
    return;
  }
  for (let first = from; first < n; first += 1) for (const rest of subsets(n, count - 1, first + 1)) yield [first, ...rest];
}

/**
 * Rows of pupils, one row for each place in a team, shifted against each other: team b of a lesson takes from row j the pupil
 * in column b + shift_j. Two rows may have each difference of shifts once; a greedy choice finds nearly as many lessons as
 * there are teams. Afterwards the rows themselves are mixed, if their length can be cut into teams.
 * Source: transversal designs from Latin squares, Handbook of Combinatorial Designs (from memory).
 */
function shiftedRows(sizes: readonly number[], wanted: number): NumberLessons {
  const teams = sizes.length;
  const largest = Math.max(...sizes);
  if (teams < largest) return [cutIntoTeams(sizes)];
  if (largest - Math.min(...sizes) > 1) return [];
  const full = sizes.filter((size) => size === largest).length;
  const sizeOfRow = (row: number) => (row === largest - 1 ? full : teams);
  const used = Array.from({ length: largest * largest }, () => new Uint8Array(teams));
  const lessons: NumberLessons = [];
  for (let lesson = 0; lesson < teams && lessons.length < wanted; lesson += 1) {
    const shifts = [0];
    if (!extend(shifts)) break;
    lessons.push(
      Array.from({ length: teams }, (_, team) =>
        shifts
          .map((shift, row) => ({ row, column: (team + shift) % teams }))
          .filter(({ row, column }) => column < sizeOfRow(row))
          .map(({ row, column }) => row * teams + column),
      ),
    );
    for (let j = 0; j < largest; j += 1) {
      for (let i = 0; i < j; i += 1) used[i * largest + j]![(shifts[j]! - shifts[i]! + teams) % teams] = 1;
    }
  }
  if (full === teams && teams % largest === 0 && lessons.length < wanted) {
    const inside = shiftedRows(new Array<number>(teams / largest).fill(largest), wanted - lessons.length);
    for (const lesson of inside) {
      const rows = Array.from({ length: largest }, (_, row) => lesson.map((team) => team.map((p) => row * teams + p)));
      lessons.push(rows.flat());
    }
  }
  return lessons;

  function extend(shifts: number[]): boolean {
    const j = shifts.length;
    if (j === largest) return true;
    for (let shift = 0; shift < teams; shift += 1) {
      if (shifts.some((s, i) => used[i * largest + j]![(shift - s + teams) % teams] === 1)) continue;
      shifts.push(shift);
      if (extend(shifts)) return true;
      shifts.pop();
    }
    return false;
  }
}

/** The first lesson of anything: pupils in order, team after team. */
function cutIntoTeams(sizes: readonly number[]): number[][] {
  let next = 0;
  return sizes.map((size) => {
    next += size;
    return Array.from({ length: size }, (_, i) => next - size + i);
  });
}
