// From what happened in a run to waveforms: within each scene the edges of its switching pins, exactly.
//
// A scene without switching pins is level, a step of a circuit that was followed in time a straight line. Where more turns than a screen has columns follow each other, one turn stands for
// those of its column: they are all alike.
// Does not know: lessons, screens, how the run was made.
import { type Turn, turnsOf } from "./pinTurns.ts";
import type { Probe } from "./readProbe.ts";
import type { Run, Scene } from "./run.ts";
import type { Point, Table } from "./table.ts";
import { dropStraight, type TracePoint } from "./thinPoints.ts";

export interface Line {
  readonly probe: Probe;
  readonly points: readonly TracePoint[];
  readonly gaps: readonly (readonly [from: number, to: number])[];
  readonly least: number;
  readonly most: number;
}

/** Turns of one scene that are told one by one; of more, so many are. */
const mostTurns = 4000;
/** V or A. Less is noise of the arithmetic. */
const sameValue = 1e-9;

/** @returns a line for each probe, s. */
export function traceRun(table: Table, run: Run, probes: readonly Probe[], from: number, to: number): readonly Line[] {
  const { wiring } = table.build;
  const pens = probes.map((probe) => makePen(probe, wiring.node(probe.at.part, probe.at.leg)));
  for (const segment of run.segments) {
    const [begin, end] = [Math.max(from, segment.from), Math.min(to, segment.to)];
    if (end <= begin) continue;
    if (segment.scene.followed) {
      const [first, last] = [segment.scene.phases[0], segment.scene.phases.at(-1)];
      // Steps are told one by one; one that lies across the border of the stretch is cut there.
      const share = (at: number) => (at - segment.from) / (segment.to - segment.from);
      if (first && last) for (const pen of pens) pen.draw(begin, end, first.point, last.point, share(begin), share(end));
      continue;
    }
    for (const turn of turnsIn(segment.scene, begin, end)) {
      const point = pointOf(table, segment.scene, turn);
      for (const pen of pens) pen.draw(turn.from, turn.to, point, point);
    }
  }
  return pens.map((pen) => pen.line());
}

function pointOf(table: Table, scene: Scene, turn: Turn): Point {
  const [first] = scene.phases;
  if (!first) throw new RangeError("a scene without phases");
  const known = scene.phases.find((p) => p.state.drives === turn.drives);
  return known ? known.point : table.point({ ...first.state, drives: turn.drives });
}

function* turnsIn({ phases, switching }: Scene, from: number, to: number): Generator<Turn> {
  const drives = phases[0]?.state.drives ?? "";
  if (switching.length === 0) {
    yield { from, to, drives };
    return;
  }
  const fastest = Math.max(...switching.map((s) => s.hertz));
  const turns = (to - from) * fastest;
  if (turns <= mostTurns) {
    yield* turnsOf(drives, switching, from, to);
    return;
  }
  // A whole turn of the fastest at the beginning of each column; its last stretch is drawn out to the next column.
  const slice = (to - from) / mostTurns;
  for (let column = 0; column < mostTurns; column += 1) {
    const begin = from + column * slice;
    const list = [...turnsOf(drives, switching, begin, begin + Math.min(slice, 1 / fastest))];
    for (const [i, turn] of list.entries()) yield i === list.length - 1 ? { ...turn, to: begin + slice } : turn;
  }
}

/** Collects the points of one probe. */
function makePen(probe: Probe, node: string) {
  const points: TracePoint[] = [];
  const gaps: (readonly [number, number])[] = [];
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  const valueAt = (point: Point) => {
    const value = probe.unit === "V" ? point.volts(node) : point.legAmps(probe.at.part, probe.at.leg);
    return Math.abs(value) < sameValue ? 0 : value;
  };
  return {
    /** A straight line from one point to another, or a part of it between two shares. */
    draw(from: number, to: number, first: Point, last: Point, fromShare = 0, toShare = 1) {
      if (probe.unit === "V" && first.on && !first.holds(node)) {
        const gap = gaps.at(-1);
        if (gap && gap[1] === from) gaps[gaps.length - 1] = [gap[0], to];
        else gaps.push([from, to]);
        return;
      }
      const [start, change] = [valueAt(first), valueAt(last) - valueAt(first)];
      const [a, b] = [start + fromShare * change, toShare === 1 ? valueAt(last) : start + toShare * change];
      points.push([from, a], [to, b]);
      least = Math.min(least, a, b);
      most = Math.max(most, a, b);
    },
    line(): Line {
      const told = points.length > 0 ? { least, most } : { least: 0, most: 0 };
      return { probe, points: dropStraight(points, sameValue), gaps, ...told };
    },
  };
}
