// Fewer points for the same picture: a screen has some hundred columns, a second of PWM a thousand edges.
//
// The time is cut into equal columns; of each its first and last point stay, and its least and its most, in their order. So no
// edge and no spike is lost: where many fall into one column, it is as tall as they are.
// Does not know: volts or amperes, screens.

/** [s, value]; two points at one instant are an edge. */
export type TracePoint = readonly [seconds: number, value: number];

/** @returns at most `most` points (4 at least), the given ones where they are few enough. */
export function thinPoints(points: readonly TracePoint[], most: number): readonly TracePoint[] {
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last || points.length <= most) return points;
  const columns = Math.max(1, Math.floor(most / 4));
  const width = (last[0] - first[0]) / columns;
  const out: TracePoint[] = [];
  let start = 0;
  for (let column = 0; column < columns && start < points.length; column += 1) {
    const border = column === columns - 1 ? Number.POSITIVE_INFINITY : first[0] + (column + 1) * width;
    let end = start;
    let [least, greatest] = [start, start];
    while (end < points.length && (points[end] as TracePoint)[0] < border) {
      if (value(points, end) < value(points, least)) least = end;
      if (value(points, end) > value(points, greatest)) greatest = end;
      end += 1;
    }
    if (end === start) continue;
    const kept = new Set([start, Math.min(least, greatest), Math.max(least, greatest), end - 1]);
    for (const i of kept) out.push(points[i] as TracePoint);
    start = end;
  }
  return out;
}

/** Points of a straight line between their neighbours say nothing. @param slack how far a point may lie off it. */
export function dropStraight(points: readonly TracePoint[], slack: number): readonly TracePoint[] {
  const out: TracePoint[] = [];
  for (const point of points) {
    const [before, last] = [out.at(-2), out.at(-1)];
    if (before && last && isBetween(before, last, point, slack)) out[out.length - 1] = point;
    else if (!last || last[0] !== point[0] || last[1] !== point[1]) out.push(point);
  }
  return out;
}

/** Only level stretches are joined: errors of slopes would add up. */
function isBetween(a: TracePoint, b: TracePoint, c: TracePoint, slack: number): boolean {
  return Math.abs(b[1] - a[1]) <= slack && Math.abs(c[1] - a[1]) <= slack && c[0] >= b[0];
}

function value(points: readonly TracePoint[], at: number): number {
  return (points[at] as TracePoint)[1];
}
