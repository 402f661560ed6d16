// What is drawn of a curve: lines where it can be followed, boxes where it changes faster than lines can be told apart.
//
// Does not know: pixels, colours.
import type { TracePoint } from "../bench/rehearsal/index.ts";

/** Within it the curve goes up and down between two values all the time. */
export interface FastBox {
  readonly from: number;
  readonly to: number;
  readonly least: number;
  readonly most: number;
}

export interface WaveShape {
  readonly lines: readonly (readonly TracePoint[])[];
  readonly boxes: readonly FastBox[];
}

/** Times that a curve may turn back in one column and still be lines: an edge up, an edge down and the next. */
const mostTurns = 3;
/** Share of the whole height that counts as turning back: less is ripple. */
const leastTurn = 0.02;

/** @param columns how many lines beside each other can be told apart. @param gaps stretches without a value, s. */
export function waveShape(
  points: readonly TracePoint[],
  gaps: readonly (readonly [number, number])[],
  columns: number,
): WaveShape {
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last) return { lines: [], boxes: [] };
  const width = (last[0] - first[0]) / columns;
  const columnOf = (at: number) => (width === 0 ? 0 : Math.min(columns - 1, Math.floor((at - first[0]) / width)));
  const counts = turnsByColumn(points, columnOf);
  const isFast = (at: number) => (counts.get(columnOf(at)) ?? 0) > mostTurns;
  const lines: TracePoint[][] = [[]];
  const boxes: FastBox[] = [];
  let before: TracePoint | null = null;
  for (const point of points) {
    const [at, value] = point;
    const from = before;
    if (from && gaps.some((gap) => from[0] <= gap[0] && at >= gap[1])) lines.push([]);
    before = point;
    if (!isFast(at)) {
      // A line goes on from where the box ended.
      if (from && isFast(from[0]) && lines.at(-1)!.length === 0) lines.at(-1)!.push(from);
      lines.at(-1)!.push(point);
      continue;
    }
    if (lines.at(-1)!.length > 0) {
      lines.at(-1)!.push(point);
      lines.push([]);
    }
    const box = boxes.at(-1);
    // Columns that follow each other are one box.
    if (box && columnOf(at) - columnOf(box.to) <= 1 && isFast(box.to))
      boxes[boxes.length - 1] = { ...box, to: at, least: Math.min(box.least, value), most: Math.max(box.most, value) };
    else boxes.push({ from: at, to: at, least: value, most: value });
  }
  return { lines: lines.filter((list) => list.length > 1), boxes };
}

/** How often the curve turns back in each column. */
function turnsByColumn(points: readonly TracePoint[], columnOf: (at: number) => number): ReadonlyMap<number, number> {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const [, value] of points) {
    least = Math.min(least, value);
    most = Math.max(most, value);
  }
  const enough = leastTurn * (most - least);
  const counts = new Map<number, number>();
  // The last value at which it turned back or from which it still goes on, and which way it goes.
  let [furthest, way] = [points[0]?.[1] ?? 0, 0];
  for (const [at, value] of points) {
    const change = value - furthest;
    if (Math.sign(change) === way) furthest = value;
    else if (Math.abs(change) > enough) {
      if (way !== 0) counts.set(columnOf(at), (counts.get(columnOf(at)) ?? 0) + 1);
      way = Math.sign(change);
      furthest = value;
    }
  }
  return counts;
}

/** Less than a millionth of what is there is noise of the arithmetic. */
export function withoutNoise(value: number, height: number): number {
  return Math.abs(value) < Math.abs(height) * 1e-6 ? 0 : value;
}
