// Tells of the characters that reading leaves out: those that only turn the direction of a text, and halves of characters.
//
// A name with an override in it can look like another name. Reading drops such characters for every file; whoever keeps the
// file should know, because the text is no longer what was stored.
// Does not know: which field the text belongs to.
import type { FileProblem } from "./fileProblem.ts";
import { shownCell } from "./tableCell.ts";

/** As they stand in a text. */
const literal = "[\\u202a-\\u202e\\u2066-\\u2069]|[\\ud800-\\udfff]";
/** Written as escapes of JSON or YAML; a doubled backslash is a backslash, and a whole pair is a character. */
const escaped = "\\\\u(?:202[a-e]|206[6-9])|\\\\ud[89ab][0-9a-f]{2}\\\\ud[c-f][0-9a-f]{2}|\\\\ud[89a-f][0-9a-f]{2}|\\\\\\\\";
const inDocuments = new RegExp(`${literal}|${escaped}`, "giu");
/** In tables also control characters, which documents refuse: spreadsheets let them in from anywhere. */
const inTables = new RegExp(`${literal}|[\\u0000-\\u0008\\u000b\\u000c\\u000e-\\u001f\\u007f-\\u009f]`, "gu");
const mostWarnings = 20;

/** @returns one warning for each line that loses a character: the text without it, and the code point of the first. */
export function leftOut(file: string, text: string, kind: "document" | "table"): FileProblem[] {
  const problems: FileProblem[] = [];
  let line = 1;
  let lineStart = 0;
  let lastLine = 0;
  for (const match of text.matchAll(kind === "document" ? inDocuments : inTables)) {
    const [found] = match;
    if (found === "\\\\" || /^\\ud.{3}\\ud/i.test(found)) continue;
    for (let next = text.indexOf("\n", lineStart); next !== -1 && next < match.index; next = text.indexOf("\n", lineStart)) {
      line += 1;
      lineStart = next + 1;
    }
    if (line === lastLine) continue;
    lastLine = line;
    const code = found.startsWith("\\") ? found.slice(2) : (found.codePointAt(0) ?? 0).toString(16).padStart(4, "0");
    problems.push({
      code: "file.charactersLeftOut",
      severity: "warning",
      place: { file, line, column: match.index - lineStart + 1 },
      found: textAround(text, match.index, kind),
      character: `U+${code.toUpperCase()}`,
    });
    if (problems.length === mostWarnings) break;
  }
  return problems;
}

/** What stands between the nearest quotes, or in the cell. */
function textAround(text: string, at: number, kind: "document" | "table"): string {
  const ends = kind === "document" ? /["\r\n]/ : /["\r\n,;\t]/;
  const before =
    text
      .slice(Math.max(0, at - 60), at)
      .split(ends)
      .at(-1) ?? "";
  const after = text.slice(at, at + 60).split(ends)[0] ?? "";
  return shownCell((before + after).replace(/\\u[0-9a-f]{4}/gi, ""));
}
