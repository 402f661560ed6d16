// One lesson more, when the lessons without a pair twice are used up: the teams that repeat the least.
//
// Simulated annealing over swaps of two pupils. Keeping apart comes before meetings, meetings before balance; of
// two repeats the pair that met less often is taken, so that repeats are spread.
// Does not know: designs, roles, names.
import type { QuickRandom } from "./quickRandom.ts";

export interface LessonTask {
  readonly sizes: readonly number[];
  readonly seated: readonly (readonly number[])[];
  /** apart[a·n + b] is 1 for pairs that must not meet. */
  readonly apart: Uint8Array;
  /** met[a·n + b]: how often two have met. */
  readonly met: Uint16Array;
  /** Each pupil's mark minus the class's mean, in standard deviations; null without a wish for balance. */
  readonly marks: Float64Array | null;
}

/** Of two repeats the one that happened less often is better, but it stays one repeat. */
const timesWeight = 0.02;
/** Far above what all meetings of one swap can weigh. */
const apartWeight = 10_000;

/** @returns the teams of the lesson as pupil numbers. */
export function oneMoreLesson(task: LessonTask, random: QuickRandom): number[][] {
  const pupils = task.sizes.reduce((sum, size) => sum + size, 0);
  const isSeated = new Uint8Array(pupils);
  for (const team of task.seated) for (const p of team) isSeated[p] = 1;
  const free = Array.from({ length: pupils }, (_, p) => p).filter((p) => isSeated[p] === 0);
  for (let i = free.length - 1; i > 0; i -= 1) {
    const j = random.below(i + 1);
    const kept = free[i]!;
    free[i] = free[j]!;
    free[j] = kept;
  }
  const teams = task.sizes.map((size, t) => {
    const seated = [...(task.seated[t] ?? [])];
    return [...seated, ...free.splice(0, size - seated.length)];
  });
  const places: { team: number; place: number }[] = [];
  teams.forEach((team, t) => {
    for (let i = task.seated[t]?.length ?? 0; i < team.length; i += 1) places.push({ team: t, place: i });
  });
  if (places.length < 2 || teams.length < 2) return teams;

  const weight = (a: number, b: number) => {
    const times = task.met[a * pupils + b]!;
    return (times > 0 ? 1 + timesWeight * times : 0) + (task.apart[a * pupils + b]! ? apartWeight : 0);
  };
  const sums = teams.map((team) => (task.marks ? team.reduce((sum, p) => sum + task.marks![p]!, 0) : 0));
  const steps = Math.min(400_000, 3000 * pupils);
  const cooling = (0.1 / 2) ** (1 / steps);
  let heat = 2;
  let best = teams.map((team) => [...team]);
  let cost = 0;
  let bestCost = 0;
  for (let step = 0; step < steps; step += 1) {
    heat *= cooling;
    const a = places[random.below(places.length)]!;
    const b = places[random.below(places.length)]!;
    if (a.team === b.team) continue;
    const teamA = teams[a.team]!;
    const teamB = teams[b.team]!;
    const x = teamA[a.place]!;
    const y = teamB[b.place]!;
    let change = 0;
    for (let i = 0; i < teamA.length; i += 1) if (i !== a.place) change += weight(y, teamA[i]!) - weight(x, teamA[i]!);
    for (let i = 0; i < teamB.length; i += 1) if (i !== b.place) change += weight(x, teamB[i]!) - weight(y, teamB[i]!);
    const markDifference = task.marks ? task.marks[y]! - task.marks[x]! : 0;
    if (task.marks) {
      // Sum over teams of (sum of deviations)² / size; a tenth of it, so that one repeat outweighs a slight tilt.
      const before = sums[a.team]! ** 2 / teamA.length + sums[b.team]! ** 2 / teamB.length;
      const after = (sums[a.team]! + markDifference) ** 2 / teamA.length + (sums[b.team]! - markDifference) ** 2 / teamB.length;
      change += (after - before) / 10;
    }
    if (change > 0 && random.next() >= Math.exp(-change / heat)) continue;
    teamA[a.place] = y;
    teamB[b.place] = x;
    sums[a.team]! += markDifference;
    sums[b.team]! -= markDifference;
    cost += change;
    if (cost < bestCost - 1e-9) {
      bestCost = cost;
      best = teams.map((team) => [...team]);
    }
  }
  return best;
}
