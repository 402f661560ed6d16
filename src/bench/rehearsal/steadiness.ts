// Whether a light blinks, how often a second and for what share of the time, measured from what is seen.
//
// Does not know: currents.
import { type Span, spansWithin } from "./span.ts";

export interface Blinking {
  /** s: from the first switching on to the last. */
  readonly from: number;
  readonly to: number;
  readonly hertz: number;
  /** Share of the time lit. */
  readonly duty: number;
}

const isLight = (span: Span) => span.seen === "dim" || span.seen === "lit" || span.seen === "too bright";

/** @returns the blinking within a stretch of time, measured over its whole turns; null with fewer than two of them. */
export function measureBlinking(spans: readonly Span[], from: number, to: number): Blinking | null {
  const rises: number[] = [];
  let litFor = 0;
  let litAtLastRise = 0;
  const inside = spansWithin(spans, from, to);
  for (const [i, span] of inside.entries()) {
    const before = inside[i - 1];
    const begins = Math.max(from, span.from);
    // Light that begins with the stretch itself counts as a rise only if it was dark before, or began there.
    if (isLight(span) && (before ? !isLight(before) : span.from >= from)) {
      rises.push(begins);
      litAtLastRise = litFor;
    }
    if (isLight(span) && rises.length > 0) litFor += Math.min(to, span.to) - begins;
  }
  const [first, last] = [rises[0], rises.at(-1)];
  const turns = rises.length - 1;
  if (first === undefined || last === undefined || turns < 2) return null;
  return { from: first, to: last, hertz: turns / (last - first), duty: litAtLastRise / (last - first) };
}

/** How much turns may differ and still be one blinking, as a share. Our choice. */
const evenShare = 0.2;
/** s. Slower changes are told one by one. Our choice. */
const longestTurn = 2;

/** Stretches of at least three even turns, each told as one blinking; the rest stays. */
export function gatherBlinking(spans: readonly Span[]): readonly Span[] {
  const rises = spans.flatMap((span, i) => (isLight(span) && (i === 0 || !isLight(spans[i - 1] as Span)) ? [i] : []));
  const out: Span[] = [];
  let next = 0;
  for (let r = 0; r + 1 < rises.length; ) {
    const start = (k: number) => spans[rises[k] ?? 0]?.from ?? 0;
    const turn = start(r + 1) - start(r);
    let end = r + 1;
    while (end + 1 < rises.length && Math.abs(start(end + 1) - start(end) - turn) <= evenShare * turn) end += 1;
    if (turn > longestTurn || end - r < 3) {
      r += 1;
      continue;
    }
    const firstSpan = rises[r] ?? 0;
    const lastRise = rises[end] ?? 0;
    const blinking = measureBlinking(spans, start(r), start(end) + 1e-9);
    out.push(...spans.slice(next, firstSpan));
    // The light after the last whole turn still belongs to it: a person sees the last flash as one of them.
    const lastLight = spans[lastRise] as Span;
    const figures = { hertz: blinking?.hertz ?? 1 / turn, duty: blinking?.duty ?? 0 };
    out.push({ from: start(r), to: lastLight.to, seen: "blinking", figures });
    next = lastRise + 1;
    r = end;
  }
  return [...out, ...spans.slice(next)];
}
