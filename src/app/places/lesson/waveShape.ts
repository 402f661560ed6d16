// What is drawn of a curve: lines where it can be followed, boxes where it changes faster than lines can be told apart.
//
// Does not know: pixels, colours.
import type { TracePoint } from "../../../bench/rehearsal/index.ts";

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

/** Points in one column that are still lines: an edge up and an edge down. */
const mostPoints = 6;

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
  const counts = new Map<number, number>();
  for (const [at] of points) counts.set(columnOf(at), (counts.get(columnOf(at)) ?? 0) + 1);
  const isFast = (at: number) => (counts.get(columnOf(at)) ?? 0) > mostPoints;
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

/** Less than a millionth of what is there is noise of the arithmetic. */
export function withoutNoise(value: number, height: number): number {
  return Math.abs(value) < Math.abs(height) * 1e-6 ? 0 : value;
}
