// A rehearsal as rows over time: what is set, what each part does from when to when, what the board writes, what is checked.
//
// Does not know: how it is drawn, words.
import type { Lesson, Stimulus } from "../../../bench/lesson/index.ts";
import type { CheckResult, Observation, RehearsalResult } from "../../../bench/rehearsal/index.ts";

export interface Span {
  /** Seconds. */
  readonly from: number;
  readonly to: number;
  readonly observation: Observation;
}
export interface SetSpan {
  readonly from: number;
  readonly to: number;
  readonly stimulus: Stimulus;
}

export interface TimeRows {
  /** Seconds that are shown. */
  readonly seconds: number;
  /** One row for each thing that is set from outside. */
  readonly set: readonly { readonly name: string; readonly spans: readonly SetSpan[] }[];
  readonly parts: readonly { readonly part: string; readonly spans: readonly Span[] }[];
  readonly lines: readonly Span[];
  readonly checks: readonly CheckResult[];
}

/** What shows that a part does something: its line is heavy then. */
const active = new Set(["lit", "too bright", "dim", "blinking", "sounding", "moving", "turning", "turning back", "on"]);
export function isActive(seen: string): boolean {
  return active.has(seen);
}

export function timeRows(lesson: Lesson, result: RehearsalResult): TimeRows {
  const seconds = Math.max(
    1,
    ...lesson.stimuli.map((s) => s.at),
    ...lesson.checks.map(({ when }) => (when.kind === "at" ? when.at : when.kind === "within" ? when.at + when.within : when.to)),
    ...result.observations.filter((o) => o.part !== "text").map((o) => o.ms / 1000),
  );
  const names = [...new Set(lesson.stimuli.flatMap((step) => step.stimuli.map(nameOf)))];
  const set = names.map((name) => {
    const steps = lesson.stimuli.flatMap(({ at, stimuli }) =>
      stimuli.filter((s) => nameOf(s) === name).map((stimulus) => ({ from: at, stimulus })),
    );
    return { name, spans: closed(steps, seconds) };
  });
  const spansOf = (part: string): readonly Span[] =>
    closed(
      result.observations.filter((o) => o.part === part).map((observation) => ({ from: observation.ms / 1000, observation })),
      seconds,
    );
  const parts = [...new Set(result.observations.map((o) => o.part))].filter((part) => part !== "text" && part !== "board");
  const resets = result.observations.some((o) => o.part === "board" && o.seen !== "running");
  return {
    seconds,
    set,
    parts: [...parts, ...(resets ? ["board"] : [])].map((part) => ({ part, spans: spansOf(part) })),
    lines: spansOf("text"),
    checks: result.checks,
  };
}

function nameOf(stimulus: Stimulus): string {
  return stimulus.kind === "state" ? `${stimulus.part}.${stimulus.state}` : stimulus.kind;
}

/** Each lasts until the next one; what lasts no time at all is left out. */
function closed<Entry extends { readonly from: number }>(
  list: readonly Entry[],
  end: number,
): readonly (Entry & { readonly to: number })[] {
  const sorted = [...list].sort((a, b) => a.from - b.from);
  return sorted
    .map((entry, i) => ({ ...entry, to: sorted[i + 1]?.from ?? end }))
    .filter(({ from, to }) => to > from && from < end);
}
