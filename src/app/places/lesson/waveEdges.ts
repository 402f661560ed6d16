// The jumps of a curve as a list, and whether they repeat: for those who do not see the picture.
//
// Does not know: how a curve came about, words.
import type { TracePoint } from "../../../bench/rehearsal/index.ts";

export interface WaveEdge {
  /** s */
  readonly at: number;
  readonly from: number;
  readonly to: number;
}

export interface Repeats {
  /** s from one rise to the next. */
  readonly period: number;
  /** Share of the period above the middle. */
  readonly duty: number;
}

/** A jump of less than this share of the whole height is a ripple. */
const least = 0.03;
/** How far periods may differ and still be one rhythm. */
const sameShare = 0.02;

/** @returns jumps at one instant, in the order of time. */
export function waveEdges(points: readonly TracePoint[], height: number): readonly WaveEdge[] {
  const edges: WaveEdge[] = [];
  for (let i = 1; i < points.length; i += 1) {
    const [before, now] = [points[i - 1]!, points[i]!];
    if (now[0] !== before[0] || Math.abs(now[1] - before[1]) < least * height) continue;
    const last = edges.at(-1);
    // Several jumps at one instant are one.
    if (last && last.at === now[0]) edges[edges.length - 1] = { ...last, to: now[1] };
    else edges.push({ at: now[0], from: before[1], to: now[1] });
  }
  return edges;
}

/** @returns the rhythm of at least three rises that are evenly apart; null where there is none. */
export function repeatsOf(edges: readonly WaveEdge[]): Repeats | null {
  const rises = edges.filter((e) => e.to > e.from);
  if (rises.length < 3) return null;
  const periods = rises.slice(1).map((rise, n) => rise.at - rises[n]!.at);
  const mean = periods.reduce((sum, p) => sum + p, 0) / periods.length;
  if (periods.some((p) => Math.abs(p - mean) > sameShare * mean)) return null;
  const highs = rises.slice(0, -1).map((rise, n) => {
    const fall = edges.find((e) => e.to < e.from && e.at > rise.at && e.at <= rises[n + 1]!.at);
    return fall === undefined ? mean : fall.at - rise.at;
  });
  return { period: mean, duty: highs.reduce((sum, h) => sum + h, 0) / highs.length / mean };
}
