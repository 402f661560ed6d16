// A stretch of time in which a person notices one thing at one part.
//
// Does not know: how it was perceived, what was expected.
import type { SeenWord } from "./result.ts";

export interface Span {
  /** s */
  readonly from: number;
  readonly to: number;
  readonly seen: SeenWord;
  /** hertz, duty, degrees, swing, amps; loudness as the number of its word. */
  readonly figures: Readonly<Record<string, number>>;
}

/** @returns the span at a moment; at a boundary the later one. */
export function spanAt(spans: readonly Span[], at: number): Span | undefined {
  return spans.findLast((s) => s.from <= at) ?? spans[0];
}

/** @returns the spans that last into the stretch from – to, with its borders left out: what begins at `to` does not count. */
export function spansWithin(spans: readonly Span[], from: number, to: number): readonly Span[] {
  return spans.filter((s) => s.from < to && s.to > from);
}

/** Neighbours in which the same is seen with the same figures become one. */
export function joinSpans(spans: readonly Span[]): readonly Span[] {
  const out: Span[] = [];
  for (const span of spans) {
    const last = out.at(-1);
    if (span.to <= span.from) continue;
    if (last && last.seen === span.seen && sameFigures(last.figures, span.figures))
      out[out.length - 1] = { ...last, to: span.to };
    else out.push(span);
  }
  return out;
}

function sameFigures(a: Readonly<Record<string, number>>, b: Readonly<Record<string, number>>): boolean {
  const names = new Set([...Object.keys(a), ...Object.keys(b)]);
  return [...names].every((n) => a[n] === b[n]);
}
