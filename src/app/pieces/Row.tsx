// One row of the almanac: when, where or how many stands before the bench line; what and why stands after it.
//
// Rows touch, so the line never breaks by accident. On the course the line itself takes the line type of the readiness.
// Does not know: what is told.
import type { ComponentChildren } from "preact";
import type { ReadinessWord } from "../../bench/rehearsal/index.ts";
import { lineOf } from "./Verdict.tsx";

export interface RowProps {
  /** Before the line: a clock, a day, a number. */
  readonly at?: ComponentChildren;
  /** A tick on the line, as for a moment. Usual where `at` stands. */
  readonly tick?: boolean;
  /** The line takes this type: a readiness, "past" for what was taught, "gap" for days without school. */
  readonly line?: ReadinessWord | "past" | "gap";
  /** Class of the cell after the line. */
  readonly class?: string;
  readonly id?: string;
  readonly as?: "div" | "section" | "li";
  readonly children?: ComponentChildren;
}

export function Row({ at, tick = at !== undefined, line, class: own, id, as: Tag = "div", children }: RowProps) {
  const type = line === undefined ? "" : ` typed line-${line === "past" || line === "gap" ? line : lineOf[line]}`;
  return (
    <Tag class={`bench${type}`} id={id}>
      <div class={tick ? "at tick" : "at"}>{at}</div>
      <div class={own ? `is ${own}` : "is"}>{children}</div>
    </Tag>
  );
}
