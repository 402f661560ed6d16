// What a person notices, in order: from this moment on this part shows this.
//
// Even blinking is told once, with its figures; single changes are told one by one; a line of text that comes again and again is
// told when it changes.
// Does not know: checks, sentences.
import { readLines } from "./lastLine.ts";
import type { Perceived } from "./perceive.ts";
import { loudnessWords, type Observation } from "./result.ts";
import type { Run } from "./run.ts";
import { joinSpans, type Span } from "./span.ts";
import { gatherBlinking } from "./steadiness.ts";

export function observe(perceived: Perceived, run: Run): readonly Observation[] {
  const observations: Observation[] = [];
  for (const [part, spans] of perceived)
    for (const span of joinSpans(gatherBlinking(spans)).filter(isNoticed))
      observations.push({ ms: toMs(span.from), part, seen: span.seen, figures: rounded(span.figures) });
  const lines = readLines(run);
  for (const [i, line] of lines.entries())
    if (line.text !== lines[i - 1]?.text) observations.push({ ms: toMs(line.at), part: "text", seen: line.text, figures: {} });
  return observations.sort((a, b) => a.ms - b.ms);
}

/** What is over within a millisecond nobody notices: a servo's rest before its first pulse. */
function isNoticed(span: Span): boolean {
  return span.to - span.from >= 0.001;
}

/** Thousandths of a millisecond are noise of the arithmetic. */
export function toMs(seconds: number): number {
  return Math.round(seconds * 1e6) / 1e3;
}

/** Figures as a person could measure them: six digits, nothing finer than a nanoampere or nanovolt, and loudness as a word. */
export function rounded(figures: Readonly<Record<string, number>>): Readonly<Record<string, number | string>> {
  const told = (name: string, value: number) => {
    if (name === "loudness") return loudnessWords[value] ?? loudnessWords[0];
    return Math.abs(value) < 1e-9 ? 0 : Number(value.toPrecision(6));
  };
  return Object.fromEntries(Object.entries(figures).map(([name, value]) => [name, told(name, value)]));
}
