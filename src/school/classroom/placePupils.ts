// Who takes which place of a design: a design says only that its places never meet twice, and every way of putting the pupils
// into it is as good. So the wishes choose: pairs to be kept apart take places that meet late or never, and teams are balanced.
//
// Simulated annealing over swaps of two pupils. A design in which every two meet leaves no room for balance: the sum of the
// squares over all its teams is the same however the pupils are placed.
// Does not know: how the design was made, names.
import type { NumberLessons } from "./developDesign.ts";
import type { QuickRandom } from "./quickRandom.ts";

export interface PlaceTask {
  /** Lessons over places 0 to n−1, those with odd team sizes last. */
  readonly lessons: NumberLessons;
  /** How many of them will be held. */
  readonly held: number;
  /** Pupils with a place of their own, who stay there. */
  readonly seated: ReadonlySet<number>;
  readonly apart: readonly (readonly [number, number])[];
  /** See oneMoreLesson.ts; null without a wish for balance. */
  readonly marks: Float64Array | null;
  readonly pupils: number;
}

/**
 * @returns the lessons that keep every wish, over pupils; at most `held`, fewer where a lesson would have joined a pair that is
 * to be kept apart and no other lesson of the design could take its place.
 */
export function placePupils(task: PlaceTask, random: QuickRandom): NumberLessons {
  const { lessons, held, pupils } = task;
  if (lessons.length === 0) return [];
  const meetingLesson = new Int32Array(pupils * pupils).fill(-1);
  lessons.forEach((lesson, l) => {
    for (const team of lesson) for (const a of team) for (const b of team) if (a !== b) meetingLesson[a * pupils + b] = l;
  });
  const place = Int32Array.from({ length: pupils }, (_, p) => p);
  const free = [...place.keys()].filter((p) => !task.seated.has(p));
  for (let i = free.length - 1; i > 0; i -= 1) exchange(place, free[i]!, free[random.below(i + 1)]!);
  anneal(task, place, free, meetingLesson, random);

  const pupilAt = new Int32Array(pupils);
  for (let p = 0; p < pupils; p += 1) pupilAt[place[p]!] = p;
  const broken = new Set(task.apart.map(([a, b]) => meetingLesson[place[a]! * pupils + place[b]!]!));
  const kept = lessons.filter((_, l) => !broken.has(l)).slice(0, held);
  return kept.map((lesson) => lesson.map((team) => team.map((at) => pupilAt[at]!)));
}

function exchange(place: Int32Array, p: number, q: number): void {
  const kept = place[p]!;
  place[p] = place[q]!;
  place[q] = kept;
}

/** What one spoilt lesson weighs against balance, whose cost is a few standard deviations squared. */
const lessonWeight = 100;

function anneal(task: PlaceTask, place: Int32Array, free: readonly number[], meetingLesson: Int32Array, random: QuickRandom) {
  const { lessons, held, apart, marks, pupils } = task;
  if ((apart.length === 0 && marks === null) || free.length < 2) return;
  const apartOf: number[][] = Array.from({ length: pupils }, () => []);
  for (const [a, b] of apart) {
    apartOf[a]!.push(b);
    apartOf[b]!.push(a);
  }
  const heldLessons = lessons.slice(0, held);
  const teamAt = heldLessons.map((lesson) => {
    const at = new Int32Array(pupils);
    for (const [t, team] of lesson.entries()) for (const p of team) at[p] = t;
    return at;
  });
  const pupilAt = new Int32Array(pupils);
  for (let p = 0; p < pupils; p += 1) pupilAt[place[p]!] = p;
  const sums = heldLessons.map((lesson) =>
    Float64Array.from(lesson, (team) => (marks ? team.reduce((sum, at) => sum + marks[pupilAt[at]!]!, 0) : 0)),
  );
  // What counts is how many lessons are spoilt, so pairs to be kept apart gather in as few lessons as possible. Within that,
  // fewer pairs are better, and a pair in a lesson that is not held costs next to nothing.
  const spoilt = new Int32Array(lessons.length);
  const note = (p: number, except: number, by: number) => {
    let sum = 0;
    for (const other of apartOf[p]!) {
      if (other === except) continue;
      const lesson = meetingLesson[place[p]! * pupils + place[other]!]!;
      if (lesson < 0) continue;
      const weight = lesson < held ? lessonWeight : 0.01;
      if (by < 0) spoilt[lesson]! -= 1;
      if (spoilt[lesson] === 0) sum += by * weight;
      if (by > 0) spoilt[lesson]! += 1;
      sum += by * weight * 0.05;
    }
    return sum;
  };
  const noteBoth = (p: number, q: number, by: number) => note(p, -1, by) + note(q, p, by);
  for (const [a, b] of apart) {
    const lesson = meetingLesson[place[a]! * pupils + place[b]!]!;
    if (lesson >= 0) spoilt[lesson]! += 1;
  }
  // With balance each swap looks at every lesson, so fewer are tried.
  const steps = marks ? Math.max(4000, Math.floor(600_000 / Math.max(1, held))) : 40_000;
  const cooling = (0.02 / 40) ** (1 / steps);
  let heat = 40;
  for (let step = 0; step < steps; step += 1) {
    heat *= cooling;
    const p = free[random.below(free.length)]!;
    const q = free[random.below(free.length)]!;
    if (p === q) continue;
    let change = noteBoth(p, q, -1);
    const placeP = place[p]!;
    const placeQ = place[q]!;
    exchange(place, p, q);
    change += noteBoth(p, q, 1);
    const difference = marks ? marks[q]! - marks[p]! : 0;
    if (marks && difference !== 0) {
      for (let l = 0; l < held && l < heldLessons.length; l += 1) {
        const teamP = teamAt[l]![placeP]!;
        const teamQ = teamAt[l]![placeQ]!;
        if (teamP === teamQ) continue;
        const sizeP = heldLessons[l]![teamP]!.length;
        const sizeQ = heldLessons[l]![teamQ]!.length;
        const sumP = sums[l]![teamP]!;
        const sumQ = sums[l]![teamQ]!;
        change += ((sumP + difference) ** 2 - sumP ** 2) / sizeP + ((sumQ - difference) ** 2 - sumQ ** 2) / sizeQ;
      }
    }
    if (change > 0 && random.next() >= Math.exp(-change / heat)) {
      noteBoth(p, q, -1);
      exchange(place, p, q);
      noteBoth(p, q, 1);
      continue;
    }
    if (marks && difference !== 0) {
      for (let l = 0; l < heldLessons.length; l += 1) {
        sums[l]![teamAt[l]![placeP]!]! += difference;
        sums[l]![teamAt[l]![placeQ]!]! -= difference;
      }
    }
  }
}
