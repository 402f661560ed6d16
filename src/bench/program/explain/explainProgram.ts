// Explains a program to a teacher: what the class's compiler will say first, which slip is behind it, and what it would not say.
//
// Never throws. Warnings that the compiler gives unasked count as a first message only where there is no error.
// Does not know: files, any language's words.
import { near, sortProblems } from "../../../base/index.ts";
import { libraryNames } from "../library/signatures.ts";
import type { ProgramProblem } from "../problems.ts";
import { parseFile } from "../read/parseFile.ts";
import { readTokens } from "../read/readTokens.ts";
import type { Token } from "../read/token.ts";
import { type Said, type SaidKind, type Wording, wordsOf } from "./compiler/said.ts";
import { diagnose } from "./diagnose.ts";
import type { Explained, Fix } from "./explained.ts";
import { firstComplaint } from "./firstComplaint.ts";
import { seldomMeant } from "./seldomMeant.ts";

export interface FirstMessage extends Explained {
  /** null where the linker says it, which knows no lines. Lines and columns count from 1. */
  readonly line: number | null;
  readonly column: number | null;
  readonly severity: "error" | "warning";
  /** Messages that differ only in the names within them are of one kind. */
  readonly kind: SaidKind;
  /** As the compiler writes it, behind place and severity. */
  readonly message: string;
  /** The macro of the board's header that the message is about; the compiler then shows the header's line first. */
  readonly macro: string | null;
}

export interface Explanation {
  readonly first: FirstMessage | null;
  readonly problems: readonly ProgramProblem[];
  /** What compiles and is seldom meant. */
  readonly silent: readonly ProgramProblem[];
}

/**
 * @param file its name in problems. @param text the program.
 * @param options.wording of the class's compiler: "old" as in GCC 5, "new" as in GCC 12.
 */
export function explainProgram(file: string, text: string, options: { readonly wording?: Wording } = {}): Explanation {
  const { said, tokens, problems } = firstComplaint(file, text);
  const written = readTokens(file, text).tokens;
  const warnings = problems.filter((p) => p.severity === "warning");
  // Behind a slip the program may be misread, so only a program that compiles is searched for what is seldom meant.
  const isBroken = said?.severity === "error";
  const found = isBroken ? [] : seldomMeant(file, text, parseFile(file, text));
  const silent = sortProblems([...warnings, ...found]);
  if (said === null) return { first: null, problems, silent };
  const rows = text.split("\n");
  const names = written.map((t) => (t.kind === "name" ? t.text : ""));
  const explained = withNear(firstThatMends(file, rows, said, diagnose({ said, tokens, written, problems, rows })), names);
  const meant = options.wording === "new" && explained.near !== null ? `; did you mean '${explained.near}'?` : "";
  const message = wordsOf({ kind: said.kind, data: { ...said.data, meant } }, options.wording);
  const { kind, severity } = said;
  const place = said.line === 0 ? { line: null, column: null } : placeOf(said, tokens, options.wording);
  return { first: { ...explained, ...place, severity, kind, message, macro: said.macro || null }, problems, silent };
}

/**
 * Tries the edits: an explanation whose edit lets the compiler through is better than one whose edit only lets it go on, and an
 * edit that does neither is not offered.
 */
function firstThatMends(file: string, rows: readonly string[], said: Said, list: readonly Explained[]): Explained {
  let further: Explained | null = null;
  for (const one of list) {
    if (one.fix === null || said.severity === "warning") continue;
    const again = firstComplaint(file, mended(rows, one.fix)).said;
    if (again === null || again.severity === "warning") return one;
    if (said.line > 0 && (again.line > said.line || again.line === 0)) further ??= one;
  }
  const main = list[0]!;
  // Its edit was tried and is no help, so what needs none is likelier.
  const plain = main.fix === null ? main : (list.find((one) => one.fix === null) ?? main);
  return further ?? { ...plain, fix: null };
}

/** A newer compiler shows where a missing mark belongs, behind the token before; the old one the token that it stumbled over. */
function placeOf(said: Said, tokens: readonly Token[], wording: Wording = "old"): { line: number; column: number } {
  const before = tokens[said.index - 1];
  const isMark = said.kind === "expected" && /^'[;)\]}]'$/.test(String(said.data.what)) && said.data.where !== "at end of input";
  if (wording === "old" || !isMark || before === undefined || said.macro !== "") return { line: said.line, column: said.column };
  return { line: before.endLine, column: before.endColumn };
}

/** The program with the edit made. */
export function mended(rows: readonly string[], { line, column, text, found }: Fix): string {
  const row = rows[line - 1] ?? "";
  const changed = row.slice(0, column - 1) + text + row.slice(column - 1 + found.length);
  return [...rows.slice(0, line - 1), changed, ...rows.slice(line)].join("\n");
}

/** A name for which nothing near was found is compared with everything that the program and the board know. */
function withNear(explained: Explained, names: readonly string[]): Explained {
  if (explained.near !== null || !["nameUnknown", "functionUnknown"].includes(explained.code)) return explained;
  const others = [...names, ...libraryNames()].filter((name) => name !== explained.name);
  const found = near(explained.name, others);
  return found === null ? explained : { ...explained, code: "nameMisspelt", near: found };
}
