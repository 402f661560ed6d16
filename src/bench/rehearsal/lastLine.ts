// The text of the board as a person reads it on the screen: line by line.
//
// Does not know: windows, scrolling.
import type { Run } from "./run.ts";

export interface Line {
  /** s at which it stood there as it is. */
  readonly at: number;
  readonly text: string;
}

/** @returns every line that could be read, in order; a line that is still growing is told each time it has grown. */
export function readLines(run: Run): readonly Line[] {
  const lines: Line[] = [];
  let open = "";
  for (const { at, characters } of run.text) {
    const parts = (open + characters).split("\n");
    open = parts.pop() ?? "";
    for (const part of parts) lines.push({ at, text: part.replace(/\r$/, "") });
    if (open !== "") lines.push({ at, text: open });
  }
  // A line that went on at the same moment was never read half.
  return lines.filter((line, i) => {
    const next = lines[i + 1];
    return line.text !== "" && !(next && next.at === line.at && next.text.startsWith(line.text) && next.text !== line.text);
  });
}

/** @returns the last line at a moment, or "" where there is none yet. */
export function lastLine(lines: readonly Line[], at: number): string {
  return lines.findLast((l) => l.at <= at)?.text ?? "";
}
