// Whether what a circuit remembers matters in a run: then it has to be followed in time, state by state would be a guess.
//
// Most circuits are at rest long before anybody looks; to take each state as if it had lasted for ever is then right, and a hundred
// times cheaper. It is not where a capacitor or a coil whose voltage or current changes takes so long that a person would notice,
// that a pin reads it on its way, or that a switching pin turns over meanwhile; and for motors, which take their time to run up.
// A run state by state visits the states that the true one visits up to the first one that differs, so it shows whether any does.
// Does not know: transients.
import { elementId } from "../parts/index.ts";
import { uncaughtCoils } from "./findBareCoils.ts";
import { inTimeElements } from "./inTimeElements.ts";
import type { Run } from "./run.ts";
import type { Table, TableState } from "./table.ts";

/** s of a time constant; it is over after five. What takes 10 ms in all nobody notices. Our choice. */
const noticedSeconds = 0.002;
/** s. An analog reading takes 104 µs (ATmega328P data sheet: 13 cycles of 125 kHz); a fifth of it does no harm. */
const readSeconds = 2e-5;
/** Share of a switching pin's turn; five of it are a tenth. Our choice. */
const turnShare = 0.02;
/** V and A by which something has to change to matter: a class meter's last digit or two. Our choice. */
const leastVolts = 0.1;
const leastAmps = 0.001;
/** A for measuring the resistance that a capacitor sees. */
const probeAmps = 1e-6;

/** @param runs runs in which every state was taken to be at rest. */
export function needsFollowing(table: Table, runs: readonly Run[]): boolean {
  const scenes = runs.flatMap((run) => run.segments.map((s) => s.scene));
  const fastest = Math.max(0, ...scenes.flatMap((s) => s.switching.map((w) => w.hertz)));
  const limit = fastest > 0 ? Math.min(noticedSeconds, turnShare / fastest) : noticedSeconds;
  return hasSlowCapacitor(table, runs, limit) || hasSlowCoil(table, runs, limit);
}

function hasSlowCapacitor(table: Table, runs: readonly Run[], limit: number): boolean {
  const span = new Map<string, { least: number; most: number; isSlow: boolean }>();
  for (const { share, state, point } of distinctStates(runs)) {
    if (share === 0) continue;
    for (const element of point.elements.values()) {
      if (element.kind !== "capacitor") continue;
      const volts = point.across(element.id);
      const seconds = seenOhms(table, state, element.a, element.b) * element.farads;
      const known = span.get(element.id);
      const isRead = isReadAt(table, state, element.a) || isReadAt(table, state, element.b);
      // Where nothing holds it, nothing flows: it keeps what it has.
      const isSlow = seconds < Number.POSITIVE_INFINITY && seconds > (isRead ? Math.min(limit, readSeconds) : limit);
      span.set(element.id, {
        least: Math.min(known?.least ?? volts, volts),
        most: Math.max(known?.most ?? volts, volts),
        isSlow: isSlow || known?.isSlow === true,
      });
    }
  }
  return [...span.values()].some((s) => s.isSlow && s.most - s.least > leastVolts);
}

/** Motors that have current at any time, and coils whose current changes and takes its time. */
function hasSlowCoil(table: Table, runs: readonly Run[], limit: number): boolean {
  const { build } = table;
  const bare = uncaughtCoils(build);
  const states = [...distinctStates(runs)];
  const first = states[0];
  if (!first) return false;
  const kept = inTimeElements(build, table.pins, first.state).filter((e) => e.kind === "motor" || e.kind === "inductor");
  return kept.some((element) => {
    const part = [...build.parts.values()].find((p) => element.id === p.name || element.id.startsWith(`${p.name}.`));
    if (!part) return false;
    const seconds = element.kind === "inductor" ? element.henries / ownOhms(table, first.state, part.name) : 1;
    if (element.kind === "inductor" && bare.has(part.name)) return false;
    const amps = states.map((s) => Math.max(...currentsOf(part.name, s.point)));
    return seconds > limit && Math.max(...amps) - Math.min(0, ...amps) > leastAmps;
  });
}

function currentsOf(part: string, point: ReturnType<Table["point"]>): number[] {
  const ids = [...point.elements.keys()].filter((id) => id === part || id.startsWith(`${elementId(part)}.`));
  return [0, ...ids.map((id) => Math.abs(point.amps(id)))];
}

/** Ω of the part that holds a coil; the circuit adds to them, so that it is over sooner than with them alone. */
function ownOhms(table: Table, state: TableState, part: string): number {
  const ohms = inTimeElements(table.build, table.pins, state).flatMap((e) =>
    e.kind === "resistor" && e.id.startsWith(`${part}`) ? [e.ohms] : [],
  );
  return Math.max(1e-3, ...ohms);
}

function isReadAt(table: Table, state: TableState, node: string): boolean {
  return table.pins.some((pin, i) => {
    return (state.drives[i] === "i" || state.drives[i] === "u") && table.build.wiring.node("board", pin) === node;
  });
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
