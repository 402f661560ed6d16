// Searches a lesson that can be turned: base lessons whose pupils, moved on ring by ring, never meet twice.
//
// Instead of all teams of all lessons only one or two base lessons are searched. Two pupils of the base lesson stand for all
// pairs that they become when the rings turn, so the search asks only that no such class of pairs is used twice: 30 places
// instead of 420. Simulated annealing over swaps of two pupils (Kirkpatrick, Gelatt & Vecchi 1983) finds most of them in
// milliseconds. Groups that stay together sit in a ring of 1, and the others pass by.
// Does not know: designs that are printed, names, apart wishes.
import type { LongWork } from "../../base/index.ts";
import type { NumberLessons } from "./developDesign.ts";
import type { QuickRandom } from "./quickRandom.ts";

export interface TurnTask {
  /** Size of every team; pupils are 0 to n−1, n their sum. */
  readonly sizes: readonly number[];
  /** seated[t]: pupils who always sit in team t. */
  readonly seated: readonly (readonly number[])[];
  /** Groups whose own pairs do not count as meetings. */
  readonly groups: readonly (readonly number[])[];
  /** Lessons wanted. */
  readonly lessons: number;
}

/** Capacity of a pair that stays together; larger than any count. */
const unlimited = 1_000_000;

/** One way of putting the pupils into rings. */
interface Form {
  readonly baseLessons: number;
  readonly turns: number;
  readonly rings: number;
}

/**
 * @param swaps how many swaps may be tried in all: the bound on the work.
 * @returns lessons without a pair twice, exactly as many as wanted, or null if none was found.
 */
export function* turnLesson(task: TurnTask, swaps: number, random: QuickRandom): LongWork<NumberLessons | null> {
  const pupils = task.sizes.reduce((sum, size) => sum + size, 0);
  const forms = possibleForms(task, pupils);
  let left = swaps;
  // Short tries of every form first, then longer ones: most forms succeed at once or never.
  for (let length = 40_000; left > 0 && forms.length > 0; length *= 2) {
    for (const form of forms) {
      const steps = Math.min(left, length * form.baseLessons);
      if (steps <= 0) break;
      const found = anneal(task, pupils, form, steps, random);
      left -= steps;
      yield { done: swaps - left, total: swaps, doing: "classroom.findTeams" };
      if (found) return found;
    }
  }
  return null;
}

function possibleForms(task: TurnTask, pupils: number): Form[] {
  const still = task.seated.reduce((sum, team) => sum + team.length, 0);
  const forms: Form[] = [];
  for (let baseLessons = 1; baseLessons <= task.lessons; baseLessons += 1) {
    const turns = task.lessons / baseLessons;
    if (!Number.isInteger(turns) || (baseLessons > 3 && turns > 1)) continue;
    // Without turning the search is as large as the rota, which only small classes bear.
    if (turns === 1 && pupils > 20 && task.lessons > 1) continue;
    const most = turns === 1 ? 0 : Math.floor((pupils - still) / turns);
    for (let rings = most; rings >= Math.max(0, most - 1); rings -= 1) {
      if (turns > 1 && (rings === 0 || pupils - still - rings * turns > 9)) continue;
      const form = { baseLessons, turns, rings };
      if (pairClasses(task, pupils, form).room >= 0) forms.push(form);
    }
  }
  return forms;
}

interface PairClasses {
  /** classOf[a·n + b]: the class of the pair. */
  readonly classOf: Int32Array;
  /** How often the base lessons may use a class: once if its pairs all differ while the rings turn, else never. */
  readonly capacity: Int32Array;
  /** Classes to spare; negative if the form cannot work. */
  readonly room: number;
}

function pairClasses(task: TurnTask, pupils: number, form: Form): PairClasses {
  const moved = turned(pupils, form);
  const classOf = new Int32Array(pupils * pupils).fill(-1);
  const capacities: number[] = [];
  for (let a = 0; a < pupils; a += 1) {
    for (let b = a + 1; b < pupils; b += 1) {
      if (classOf[a * pupils + b] !== -1) continue;
      let length = 0;
      let x = a;
      let y = b;
      while (classOf[x * pupils + y] === -1) {
        classOf[x * pupils + y] = capacities.length;
        classOf[y * pupils + x] = capacities.length;
        length += 1;
        x = moved[x]!;
        y = moved[y]!;
      }
      capacities.push(length === form.turns ? 1 : 0);
    }
  }
  const sum = capacities.reduce((total, c) => total + c, 0);
  let forced = 0;
  for (const group of task.groups) {
    for (const a of group) {
      for (const b of group) {
        if (a >= b) continue;
        capacities[classOf[labelOf(task, pupils, a) * pupils + labelOf(task, pupils, b)]!] = unlimited;
        forced += 1;
      }
    }
  }
  const used = task.sizes.reduce((total, size) => total + (size * (size - 1)) / 2, 0) - forced;
  // With no turning every pair is a class, and a group's own pair had a place in the sum.
  const open = form.turns === 1 ? sum - forced : sum;
  return { classOf, capacity: Int32Array.from(capacities), room: open - used * form.baseLessons };
}

/** Rings first, then those who stand still. */
function turned(pupils: number, form: Form): number[] {
  return Array.from({ length: pupils }, (_, p) => {
    if (p >= form.rings * form.turns) return p;
    const start = p - (p % form.turns);
    return start + ((p + 1 - start) % form.turns);
  });
}

/** Pupils in the order of the seats, seated ones at the beginning of their team; free seats hold −1. */
function seating(task: TurnTask, pupils: number): number[] {
  const order: number[] = [];
  task.sizes.forEach((size, t) => {
    for (let i = 0; i < size; i += 1) order.push(task.seated[t]?.[i] ?? -1);
  });
  return order.slice(0, pupils);
}

/** Inside the search a seated pupil has one of the last numbers, which stand still. */
function labelOf(task: TurnTask, pupils: number, pupil: number): number {
  const seated = task.seated.flat();
  return pupils - 1 - seated.indexOf(pupil);
}

function anneal(task: TurnTask, pupils: number, form: Form, steps: number, random: QuickRandom): NumberLessons | null {
  const { classOf, capacity } = pairClasses(task, pupils, form);
  const firstSeat: number[] = [];
  const teamOfSeat: number[] = [];
  task.sizes.forEach((size, t) => {
    firstSeat.push(teamOfSeat.length);
    for (let i = 0; i < size; i += 1) teamOfSeat.push(t);
  });
  firstSeat.push(pupils);
  const fixedSeats = seating(task, pupils).map((pupil) => (pupil < 0 ? -1 : labelOf(task, pupils, pupil)));
  const freeSeats = fixedSeats.map((_, seat) => seat).filter((seat) => fixedSeats[seat] === -1);
  const freeCount = freeSeats.length;

  const bases = Array.from({ length: form.baseLessons }, () => {
    const at = Int32Array.from(fixedSeats);
    freeSeats.forEach((seat, i) => {
      at[seat] = i;
    });
    for (let i = freeCount - 1; i > 0; i -= 1) swap(at, freeSeats[i]!, freeSeats[random.below(i + 1)]!);
    return at;
  });
  const used = new Int32Array(capacity.length);
  let cost = 0;
  for (const at of bases) {
    for (let i = 0; i < pupils; i += 1) {
      for (let j = firstSeat[teamOfSeat[i]!]!; j < i; j += 1) used[classOf[at[i]! * pupils + at[j]!]!]! += 1;
    }
  }
  for (let k = 0; k < used.length; k += 1) cost += Math.max(0, used[k]! - capacity[k]!);
  if (freeCount < 2) return cost === 0 ? developed(bases, task, pupils, form) : null;

  // From about 1, where every second bad swap passes, to 0.12, where hardly any does.
  let heat = 1;
  const cooling = 0.12 ** (1 / steps);
  for (let step = 0; step < steps && cost > 0; step += 1) {
    heat *= cooling;
    const at = bases.length === 1 ? bases[0]! : bases[random.below(bases.length)]!;
    const i = freeSeats[random.below(freeCount)]!;
    const j = freeSeats[random.below(freeCount)]!;
    const teamI = teamOfSeat[i]!;
    const teamJ = teamOfSeat[j]!;
    if (teamI === teamJ) continue;
    const change = exchange(at, i, j, teamI, teamJ);
    if (change <= 0 || random.next() < Math.exp(-change / heat)) cost += change;
    else exchange(at, i, j, teamI, teamJ);
  }
  return cost === 0 ? developed(bases, task, pupils, form) : null;

  /** Swaps the pupils of two seats, keeps `used`, returns the change of cost. */
  function exchange(at: Int32Array, i: number, j: number, teamI: number, teamJ: number): number {
    const x = at[i]!;
    const y = at[j]!;
    let change = 0;
    for (let s = firstSeat[teamI]!; s < firstSeat[teamI + 1]!; s += 1) {
      if (s === i) continue;
      const other = at[s]! * pupils;
      const leaves = classOf[other + x]!;
      used[leaves]! -= 1;
      if (used[leaves]! >= capacity[leaves]!) change -= 1;
      const comes = classOf[other + y]!;
      if (used[comes]! >= capacity[comes]!) change += 1;
      used[comes]! += 1;
    }
    for (let s = firstSeat[teamJ]!; s < firstSeat[teamJ + 1]!; s += 1) {
      if (s === j) continue;
      const other = at[s]! * pupils;
      const leaves = classOf[other + y]!;
      used[leaves]! -= 1;
      if (used[leaves]! >= capacity[leaves]!) change -= 1;
      const comes = classOf[other + x]!;
      if (used[comes]! >= capacity[comes]!) change += 1;
      used[comes]! += 1;
    }
    at[i] = y;
    at[j] = x;
    return change;
  }
}

function swap(at: Int32Array, i: number, j: number): void {
  const kept = at[i]!;
  at[i] = at[j]!;
  at[j] = kept;
}

/** All lessons, with the seated pupils under their own numbers and the others under the numbers that are left. */
function developed(bases: readonly Int32Array[], task: TurnTask, pupils: number, form: Form): NumberLessons {
  const seated = task.seated.flat();
  const others = Array.from({ length: pupils }, (_, p) => p).filter((p) => !seated.includes(p));
  const pupilOf = (label: number) => (label < others.length ? others[label]! : seated[pupils - 1 - label]!);
  const moved = turned(pupils, form);
  const lessons: NumberLessons = [];
  for (const base of bases) {
    let labels = [...base];
    for (let turn = 0; turn < form.turns; turn += 1) {
      let seat = 0;
      lessons.push(
        task.sizes.map((size) => {
          seat += size;
          return labels.slice(seat - size, seat).map(pupilOf);
        }),
      );
      labels = labels.map((label) => moved[label]!);
    }
  }
  return lessons;
}
