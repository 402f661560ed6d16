// A program with the line that comes next marked; a line's number is pressed to go there.
//
// Long programs are shown round the line that comes next; the whole can be unfolded.
// Does not know: how a walk goes.
import { useState } from "preact/hooks";
import { TextLink } from "../../pieces/index.ts";
import { useSay } from "../../session/useSession.ts";
import { mayRun } from "./mayRun.ts";

export interface WalkLinesProps {
  readonly rows: readonly string[];
  /** The line that comes next, from 1; null before the beginning. */
  readonly next: number | null;
  readonly onLine: (line: number) => void;
  /** Lines shown at most before and behind the one that comes next. */
  readonly around: number;
  /** The whole can be unfolded. */
  readonly folds: boolean;
}

export function WalkLines({ rows, next, onLine, around, folds }: WalkLinesProps) {
  const say = useSay();
  const [whole, setWhole] = useState(false);
  const can = mayRun(rows);
  const size = 2 * around + 1;
  const canFold = rows.length > size + 2;
  const from = whole || !canFold ? 1 : Math.max(1, Math.min((next ?? 1) - around, rows.length - size + 1));
  const to = whole || !canFold ? rows.length : Math.min(rows.length, from + size - 1);
  return (
    <>
      <ol class="program numbered walked">
        {rows.slice(from - 1, to).map((row, i) => {
          const line = from + i;
          return (
            <li key={line} class={line === next ? "next" : undefined} aria-current={line === next ? "step" : undefined}>
              {can[line - 1] ? (
                <button type="button" class="n link" onClick={() => onLine(line)} aria-label={say("walkPage.toLine", { line })}>
                  {line}
                </button>
              ) : (
                <span class="n">{line}</span>
              )}
              <code>{row.length > 300 ? `${row.slice(0, 300)}…` : row}</code>
            </li>
          );
        })}
      </ol>
      {canFold && folds && (
        <p>
          <TextLink onPress={() => setWhole(!whole)}>
            {whole ? say("walkPage.fold") : say("walkPage.unfold", { count: rows.length })}
          </TextLink>
        </p>
      )}
    </>
  );
}
