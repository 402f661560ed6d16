// Readiness as a line type and its word, always both.
//
// The marks are drawn as in the legend of a workshop drawing: whole, with an empty box, with the two strokes of a cell, with a
// break line, hatched, dotted. Nothing is told by colour.
// Does not know: why a lesson is what it is.
import type { ComponentChildren } from "preact";
import type { ReadinessWord } from "../../bench/rehearsal/index.ts";
import { useSay } from "../session/useSession.ts";

/** Short names of the line types, for classes. */
export const lineOf: Readonly<Record<ReadinessWord, string>> = {
  ready: "ready",
  "short of parts": "short",
  "needs another supply": "supply",
  "fails its rehearsal": "fails",
  unsafe: "unsafe",
  "not rehearsed yet": "not",
};

const marks: Readonly<Record<ReadinessWord, ComponentChildren>> = {
  ready: <path d="M0 8H56" stroke-width="4" />,
  "short of parts": (
    <>
      <path d="M0 8H20M38 8H56" stroke-width="4" />
      <path d="M20 4h18v8h-18z" stroke-width="1.2" stroke-dasharray="2.4 2.4" />
    </>
  ),
  "needs another supply": (
    <>
      <path d="M0 8H25M32 8H56" stroke-width="4" />
      <path d="M25 0V16" stroke-width="2" />
      <path d="M32 4V12" stroke-width="4" />
    </>
  ),
  "fails its rehearsal": (
    <>
      <path d="M0 8H20M36 8H56" stroke-width="4" />
      <path d="M20 8L25 0L31 16L36 8" stroke-width="2" />
    </>
  ),
  unsafe: (
    <>
      <path d="M1 1H55V15H1Z" stroke-width="2" />
      <path d="M1 15L15 1M10 15L24 1M19 15L33 1M28 15L42 1M37 15L51 1M46 15L55 6M1 6L6 1" stroke-width="2" />
    </>
  ),
  "not rehearsed yet": <path d="M2 8H56" stroke-width="4" stroke-dasharray="0 9" stroke-linecap="round" />,
};

/** The line alone; its word must stand beside it. */
export function LineMark({ word }: { readonly word: ReadinessWord }) {
  return (
    <svg viewBox="0 0 56 16" fill="none" stroke="currentColor" aria-hidden="true">
      {marks[word]}
    </svg>
  );
}

export interface VerdictProps {
  readonly word: ReadinessWord;
  /** Not bold, for tables and legends. */
  readonly calm?: boolean;
  /** Large, for the lesson that comes next. */
  readonly large?: boolean;
  /** In place of the word itself: "2 ready", "fits". */
  readonly children?: ComponentChildren;
}

export function Verdict({ word, calm = false, large = false, children }: VerdictProps) {
  const say = useSay();
  return (
    <span class={`ready${calm ? " calm" : ""}${large ? " large" : ""}`}>
      <LineMark word={word} /> <span>{children ?? say(`verdict.${word}`)}</span>
    </span>
  );
}
