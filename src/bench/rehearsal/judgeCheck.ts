// Whether a check of the lesson holds in a run: at its moment, somewhere within a span, or all the way through one.
//
// Borders of a stretch do not count: what begins at its end, or ends at its beginning, is not part of it.
// Does not know: undetermined inputs (combine.ts), sentences.
import type { Check, Expectation } from "../lesson/index.ts";
import { elementId } from "../parts/index.ts";
import type { Build } from "./build.ts";
import { type Line, lastLine } from "./lastLine.ts";
import { rounded } from "./observe.ts";
import type { Perceived } from "./perceive.ts";
import { figureAt, type Run, segmentAt } from "./run.ts";
import { type Span, spanAt, spansWithin } from "./span.ts";
import { gatherBlinking, measureBlinking } from "./steadiness.ts";

export interface Judgement {
  readonly passed: boolean;
  readonly seen: string;
  readonly figures: Readonly<Record<string, number | string>>;
}

export interface Evidence {
  readonly build: Build;
  readonly run: Run;
  readonly perceived: Perceived;
  readonly lines: readonly Line[];
}

type PartExpectation = Extract<Expectation, { kind: "part" }>;

/** Degrees that nobody sees by eye. Our choice. */
const leastDegrees = 5;
/** V that a class meter shows anyway. */
const leastVolts = 0.05;

export function judgeCheck(check: Check, evidence: Evidence): Judgement {
  const { when, expectation } = check;
  if (expectation.kind === "text") return judgeText(when, expectation, evidence);
  if (expectation.kind === "volts") return judgeVolts(when, expectation, evidence);
  const part = expectation.kind === "board" ? "board" : elementId(expectation.part, expectation.element);
  const spans = evidence.perceived.get(part) ?? [];
  const wanted: PartExpectation =
    expectation.kind === "board" ? { kind: "part", part, seen: expectation.seen, tolerance: 0 } : expectation;
  const [from, to] = stretch(when);
  if (expectation.kind === "board" && expectation.seen === "resets") return judgeResets(spans, when.kind === "at" ? 0 : from, to);
  if (blinks(wanted)) return judgeBlinking(spans, wanted, when);
  if (when.kind === "at") return judgeSpan(spanAt(spans, when.at), wanted);
  const judged = spansWithin(spans, from, to).map((s) => judgeSpan(s, wanted));
  const telling = when.kind === "within" ? judged.find((j) => j.passed) : judged.find((j) => !j.passed);
  return telling ?? judged.at(-1) ?? judgeSpan(undefined, wanted);
}

/** @returns the moments between which a check looks, s. */
export function stretch(when: Check["when"]): readonly [from: number, to: number] {
  if (when.kind === "at") return [when.at, when.at];
  return when.kind === "within" ? [when.at, when.at + when.within] : [when.from, when.to];
}

function blinks(wanted: PartExpectation): boolean {
  return wanted.seen === "blinking" || (wanted.seen === null && wanted.duty !== undefined);
}

function judgeSpan(span: Span | undefined, wanted: PartExpectation): Judgement {
  if (!span) return { passed: false, seen: "undetermined", figures: {} };
  const figures = rounded(span.figures);
  const seen = wanted.seen === null || wanted.seen === span.seen;
  // While a servo moves it is at no angle; "moving" carries the angle that it goes to.
  const degrees =
    wanted.degrees === undefined ||
    (span.seen === `${span.figures.degrees} degrees` &&
      near(span.figures.degrees, wanted.degrees, wanted.tolerance, leastDegrees));
  const hertz = wanted.hertz === undefined || near(span.figures.hertz, wanted.hertz, wanted.tolerance);
  return { passed: seen && degrees && hertz, seen: span.seen, figures };
}

function judgeBlinking(spans: readonly Span[], wanted: PartExpectation, when: Check["when"]): Judgement {
  const moment = when.kind === "at" ? spanAt(gatherBlinking(spans), when.at) : undefined;
  const [from, to] = moment ? [moment.from, moment.to] : stretch(when);
  const blinking = measureBlinking(spans, from, to);
  if (!blinking) {
    const span = spanAt(spans, from);
    return { passed: false, seen: span?.seen ?? "undetermined", figures: rounded(span?.figures ?? {}) };
  }
  const passed =
    (wanted.hertz === undefined || near(blinking.hertz, wanted.hertz, wanted.tolerance)) &&
    (wanted.duty === undefined || near(blinking.duty, wanted.duty, wanted.tolerance));
  return { passed, seen: "blinking", figures: rounded({ hertz: blinking.hertz, duty: blinking.duty }) };
}

/** A reset that has happened by the end of the stretch counts; the board is running again soon after. */
function judgeResets(spans: readonly Span[], from: number, to: number): Judgement {
  const reset = spans.some((s) => s.seen === "resets" && s.from >= from && s.from <= to);
  return { passed: reset, seen: reset ? "resets" : (spanAt(spans, to)?.seen ?? "running"), figures: {} };
}

function judgeText(when: Check["when"], wanted: Extract<Expectation, { kind: "text" }>, { lines }: Evidence): Judgement {
  const fits = (text: string) =>
    (wanted.is === undefined || text === wanted.is) && (wanted.contains === undefined || text.includes(wanted.contains));
  const [from, to] = stretch(when);
  const shown = [lastLine(lines, from), ...lines.filter((l) => l.at > from && l.at <= to).map((l) => l.text)];
  const telling = when.kind === "throughout" ? shown.find((text) => !fits(text)) : shown.find(fits);
  const seen = telling ?? shown.at(-1) ?? "";
  return { passed: fits(seen), seen, figures: {} };
}

function judgeVolts(when: Check["when"], wanted: Extract<Expectation, { kind: "volts" }>, { build, run }: Evidence): Judgement {
  const node = build.wiring.node(wanted.at.part, wanted.at.leg);
  const [from, to] = stretch(when);
  const segments = when.kind === "at" ? [segmentAt(run, when.at)] : run.segments.filter((s) => s.from < to && s.to > from);
  // Of a voltage that moves, what it is at the moment, and at both ends of what is looked at.
  const readings = segments.flatMap((s) => {
    if (!s) return [];
    const volts = (moment: number) => figureAt(s, moment, (p) => p.volts(node));
    return [...new Set([volts(Math.max(from, s.from)), volts(Math.min(to, s.to))])];
  });
  const fits = (volts: number) => near(volts, wanted.is, wanted.tolerance, leastVolts);
  const telling = when.kind === "throughout" ? readings.find((v) => !fits(v)) : readings.find(fits);
  const volts = telling ?? readings.at(-1) ?? 0;
  return { passed: readings.length > 0 && fits(volts), seen: "volts", figures: rounded({ volts }) };
}

/** @param least what counts as equal whatever the share. */
function near(found: number | undefined, wanted: number, share: number, least = 0): boolean {
  return found !== undefined && Math.abs(found - wanted) <= Math.max(least, share * Math.abs(wanted)) + 1e-9;
}
