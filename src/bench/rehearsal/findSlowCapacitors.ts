// Capacitors that a rehearsal state by state cannot follow: those that take longer to charge than a person takes to notice.
//
// Every state is solved as if it had lasted for ever. That is right for a capacitor that follows within some milliseconds (a
// bypass, a piezo, a quiet key) and for one whose voltage does not change; with any other the answer would be a guess.
// Does not know: transients.
import type { Run } from "./run.ts";
import type { Table, TableState } from "./table.ts";

/** s. Shorter charging is not noticed, and is over before a program that waits 20 ms for a key reads it. Our choice. */
const noticedSeconds = 0.01;
/** V by which it has to change to matter: a class meter's last digit or two. Our choice. */
const leastChange = 0.1;
/** A for measuring the resistance that a capacitor sees. */
const probeAmps = 1e-6;

/** @returns ids of the capacitors, such as "C1". */
export function findSlowCapacitors(table: Table, runs: readonly Run[]): readonly string[] {
  const span = new Map<string, { least: number; most: number; seconds: number }>();
  for (const { share, state, point } of distinctStates(runs)) {
    if (share === 0) continue;
    for (const element of point.elements.values()) {
      if (element.kind !== "capacitor") continue;
      const volts = point.across(element.id);
      const seconds = seenOhms(table, state, element.a, element.b) * element.farads;
      // Where nothing holds it, nothing flows: it keeps what it has.
      if (seconds === Number.POSITIVE_INFINITY) continue;
      const known = span.get(element.id) ?? { least: volts, most: volts, seconds: 0 };
      span.set(element.id, {
        least: Math.min(known.least, volts),
        most: Math.max(known.most, volts),
        seconds: Math.max(known.seconds, seconds),
      });
    }
  }
  return [...span].filter(([, s]) => s.most - s.least > leastChange && s.seconds > noticedSeconds).map(([id]) => id);
}

function distinctStates(runs: readonly Run[]) {
  const phases = runs.flatMap((run) => run.segments.flatMap((s) => s.scene.phases));
  return new Map(phases.map((p) => [p.point.key, p])).values();
}

/** Ω between two nodes, at most: that of each end against the rest, in series. Infinite where nothing holds one. */
function seenOhms(table: Table, state: TableState, a: string, b: string): number {
  const ohms = (node: string) => {
    const [less, more] = [table.voltsWithLeak(state, node, -probeAmps), table.voltsWithLeak(state, node, probeAmps)];
    return less === null || more === null ? Number.POSITIVE_INFINITY : Math.abs(more - less) / (2 * probeAmps);
  };
  return ohms(a) + ohms(b);
}
