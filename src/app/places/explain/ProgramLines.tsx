// Some lines of a program with their own numbers, and the token that a message points at.
//
// Does not know: which message.
import type { ExcerptLine } from "./excerpt.ts";

export interface ProgramLinesProps {
  readonly lines: readonly (Omit<ExcerptLine, "gap"> & { readonly gap?: boolean })[];
  /** The line that is spoken of. */
  readonly marked: number | null;
}

export function ProgramLines({ lines, marked }: ProgramLinesProps) {
  return (
    <ol class="program numbered">
      {lines.map(({ line, before, token, after, gap }) => (
        <li key={line} class={`${line === marked ? "marked" : ""}${gap ? " gap" : ""}`.trim() || undefined}>
          <span class="n">{line}</span>
          <code>
            {before}
            {token !== "" && <mark>{token}</mark>}
            {after}
          </code>
        </li>
      ))}
    </ol>
  );
}
