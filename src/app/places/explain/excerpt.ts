// Which lines of a program are shown to a message, and where the token stands in them.
//
// Does not know: how they are drawn, what the message means.
import type { FirstMessage, Fix } from "../../../bench/program/index.ts";

export interface ExcerptLine {
  /** From 1. */
  readonly line: number;
  readonly before: string;
  /** The token that the message points at; "" where none is marked. */
  readonly token: string;
  readonly after: string;
  /** Lines were left out before this one. */
  readonly gap: boolean;
}

/** Lines shown before and after the one that the compiler names. */
const around = 2;
/** Signs of a line that are shown on either side of the token; nobody reads further. */
const mostSigns = 160;

/** @returns the line of the message with its neighbours, and the lines to look at. */
export function excerptOf(rows: readonly string[], first: FirstMessage): readonly ExcerptLine[] {
  const wanted = new Set<number>(first.look);
  if (first.line !== null) for (let n = first.line - around; n <= first.line + around; n += 1) wanted.add(n);
  if (first.fix !== null) wanted.add(first.fix.line);
  if (first.firstLine !== null) wanted.add(first.firstLine);
  const lines = [...wanted].filter((n) => n >= 1 && n <= rows.length).sort((a, b) => a - b);
  return lines.map((line, i) => {
    const row = rows[line - 1] ?? "";
    const at = line === first.line && first.column !== null ? tokenStart(row, first.column - 1, first.name) : null;
    return { line, ...parted(row, at, first.name), gap: i > 0 && line - lines[i - 1]! > 1 };
  });
}

/** The line of an edit as it is after the edit; the new signs stand in `token`. */
export function mendedLine(rows: readonly string[], fix: Fix): Omit<ExcerptLine, "gap"> {
  const row = rows[fix.line - 1] ?? "";
  const after = row.slice(fix.column - 1 + fix.found.length);
  return { line: fix.line, before: short(row.slice(0, fix.column - 1), "end"), token: fix.text, after: short(after, "start") };
}

/** Of a call that it does not know the compiler names the closing bracket; a person looks for the name. */
function tokenStart(row: string, at: number, name: string): number {
  if (row[at] !== ")" || !/^[A-Za-z_]\w*$/.test(name)) return at;
  const found = row.lastIndexOf(name, at);
  return found === -1 ? at : found;
}

function parted(row: string, at: number | null, name: string): Pick<ExcerptLine, "before" | "token" | "after"> {
  if (at === null || at >= row.length) return { before: short(row, "start"), token: "", after: "" };
  const rest = row.slice(at);
  // A name is marked whole; any other token by its first sign, which is what the compiler points at.
  const token = name !== "" && rest.startsWith(name) ? name : (/^(?:[A-Za-z_]\w*|\d[\w.]*|.)/su.exec(rest)?.[0] ?? "");
  return {
    before: short(row.slice(0, at), "end"),
    token: short(token, "start"),
    after: short(rest.slice(token.length), "start"),
  };
}

function short(text: string, keeps: "start" | "end"): string {
  if (text.length <= mostSigns) return text;
  return keeps === "start" ? `${text.slice(0, mostSigns)}…` : `…${text.slice(-mostSigns)}`;
}
