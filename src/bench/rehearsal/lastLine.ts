// The text of the board as a person reads it on the screen: line by line.
//
// Does not know: windows, scrolling.
import type { Run } from "./run.ts";

export interface Line {
  /** s at which it stood there as it is. */
  readonly at: number;
  readonly text: string;
}

/** s in which nobody reads half a line: a glance. Our choice. */
const readSeconds = 0.1;

/** @returns every line that could be read, in order; a line that is still growing is told each time it has grown. */
export function readLines(run: Run): readonly Line[] {
  const lines: { at: number; text: string; grows: boolean }[] = [];
  let open = "";
  for (const { at, characters } of run.text) {
    const parts = (open + characters).split("\n");
    open = parts.pop() ?? "";
    for (const part of parts) lines.push({ at, text: part.replace(/\r$/, ""), grows: false });
    if (open !== "") lines.push({ at, text: open.replace(/\r$/, ""), grows: true });
  }
  return lines.flatMap(({ at, text, grows }, i) => {
    const next = lines[i + 1];
    // A line that went on at once was never read half.
    const goesOn = grows && next !== undefined && next.at - at < readSeconds && next.text.startsWith(text);
    return text === "" || goesOn ? [] : [{ at, text }];
  });
}

/** @returns the last line at a moment, or "" where there is none yet. */
export function lastLine(lines: readonly Line[], at: number): string {
  return lines.findLast((l) => l.at <= at)?.text ?? "";
}
