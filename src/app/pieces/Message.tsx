// What went wrong, on the line that it speaks of: where, what, found, expected, what to try, and the number.
//
// It stands in the text. Nothing floats, covers, or goes away by itself.
// Does not know: what the problem means; `Problem` takes its words from the catalogue.
import type { ComponentChildren } from "preact";
import { sayProblem } from "../../language/index.ts";
import { useSay, useSession } from "../session/useSession.ts";

export interface MessageProps {
  /** What is wrong, with its place in words where there is one. */
  readonly says: ComponentChildren;
  readonly found?: string | null;
  readonly expected?: string | null;
  readonly try?: ComponentChildren;
  /** The code, small, so that it can be looked up. */
  readonly number?: string;
  /** Read out at once: what answers an act. */
  readonly live?: boolean;
  /** What can be pressed. */
  readonly children?: ComponentChildren;
}

export function Message({ says, found, expected, try: tries, number, live = false, children }: MessageProps) {
  const say = useSay();
  return (
    <div class="message" role={live ? "alert" : undefined}>
      <p>
        <b>{says}</b>
      </p>
      {(found || expected) && (
        <p>
          {found && say("pieces.found", { text: found })} {expected && say("pieces.expected", { text: expected })}
        </p>
      )}
      {(tries || number) && (
        <p>
          {tries} {number && <span class="note">{number}</span>}
        </p>
      )}
      {children}
    </div>
  );
}

export interface ProblemProps {
  readonly problem: {
    readonly code: string;
    readonly place?: { readonly file: string; readonly line?: number; readonly column?: number };
    readonly [field: string]: unknown;
  };
  readonly live?: boolean;
  readonly children?: ComponentChildren;
}

/** A problem as data: its texts come from the catalogue, its place stands before them. */
export function Problem({ problem, live, children }: ProblemProps) {
  const say = useSay();
  const { says, try: tries } = sayProblem(useSession().language.value, problem);
  const where = problem.place
    ? problem.place.line === undefined
      ? problem.place.file
      : say("pieces.fileLine", { file: problem.place.file, line: problem.place.line })
    : null;
  return (
    <Message
      says={where === null ? says : say("pieces.whereWhat", { where, what: says })}
      try={tries}
      number={problem.code}
      {...(live === undefined ? {} : { live })}
    >
      {children}
    </Message>
  );
}
