// What the compiler complains of before it reads any grammar: characters, quotes, comments, numbers, directives, macros.
//
// It cuts the whole file into tokens first, so these come before a missing semicolon further up. A character that is no part of
// the language is told at the first thing on its line, by its first byte in octal (GCC 5.4).
// Does not know: grammar.

import type { SyntaxProblem } from "../../problems.ts";
import type { preprocess } from "../../read/preprocess.ts";
import type { Token } from "../../read/token.ts";
import { toBytes } from "../../read/utf8.ts";
import type { Said, SaidKind } from "./said.ts";

type Prepared = ReturnType<typeof preprocess>;

export function firstOfLexer(
  text: string,
  lexed: { tokens: readonly Token[]; problems: readonly SyntaxProblem[] },
  prepared: Prepared,
): Said | null {
  const rows = text.split(/\r\n|\r|\n/);
  const said: Said[] = [];
  const firstOf = (line: number) => (/\S/.exec((rows[line - 1] ?? "").replace(/\u00a0/g, "x"))?.index ?? 0) + 1;
  const add = (line: number, column: number, kind: SaidKind, data: Said["data"] = {}, severity: Said["severity"] = "error") =>
    said.push({ kind, severity, data, line, column, macro: "", index: -1 });
  for (const p of lexed.problems) {
    const { line, column } = p.place!;
    if (prepared.skipped.has(line)) continue;
    if (p.code === "program.unknownCharacter") {
      const byte = toBytes(p.found).charCodeAt(0);
      add(line, firstOf(line), "stray", { what: byte < 128 ? p.found : `\\${byte.toString(8)}`, character: p.found });
    } else if (p.code === "program.openText" && /^\s*#\s*include\b/.test(rows[line - 1] ?? ""))
      add(line, column, "expectsFileName");
    else if (p.code === "program.openText") add(line, firstOf(line), "unclosedText", { quote: p.found });
    else if (p.code === "program.openComment") add(line, column, "unclosedComment");
  }
  let inDirective = false;
  for (const [i, token] of lexed.tokens.entries()) {
    if (token.startsLine) inDirective = token.text === "#" && token.kind === "mark";
    if (prepared.skipped.has(token.line)) continue;
    if (token.kind === "mark" && token.text.startsWith("#") && !token.startsLine && !inDirective)
      add(token.line, firstOf(token.line), "stray", { what: token.text, character: token.text });
    if (token.kind === "character" && token.text === "''") add(token.line, token.column, "emptyCharacter");
    if (token.kind === "number") {
      const wrong = badNumber(token.text);
      if (wrong !== null) add(token.line, token.column, wrong.kind, wrong.data);
    }
    if (inDirective && token.text === "#" && lexed.tokens[i + 1]?.text === "define") defineSlip(lexed.tokens, i);
  }
  const open = unclosedMacro(lexed.tokens, prepared);
  if (open !== null) add(rows.length - (rows.at(-1) === "" ? 1 : 0), 0, "unclosedMacro", { name: open });
  for (const p of prepared.problems) {
    const { line, column } = p.place!;
    switch (p.code) {
      case "program.unknownHeader":
        add(line, includeEnd(line), "noSuchFile", { name: p.name });
        break;
      case "program.unknownDirective":
        add(line, column, "unknownDirective", { name: p.name });
        break;
      case "program.unclosedCondition":
        add(line, column, ["else", "elif", "endif"].includes(p.name) ? "conditionWithout" : "unclosedCondition", {
          name: p.name,
        });
        break;
      case "program.ownError":
        add(line, column + 1, "ownError", { text: p.text });
        break;
      case "program.argumentCount":
        add(line, column, p.found > Number(p.expected) ? "macroTooMany" : "macroTooFew", {
          name: p.name,
          found: String(p.found),
          expected: p.expected,
        });
        break;
      case "program.expected":
        if (p.expected === "<header>") add(line, column, "expectsFileName");
        break;
    }
  }
  // A header that is not there ends the work at once; otherwise the first in the file comes first.
  return said.sort((a, b) => a.line - b.line || a.column - b.column)[0] ?? null;

  function defineSlip(tokens: readonly Token[], i: number): void {
    const name = tokens[i + 2];
    if (name === undefined || name.startsLine) add(tokens[i + 1]!.line, tokens[i + 1]!.endColumn, "macroNameMissing");
    else if (name.kind !== "name") add(name.line, name.column, "macroName");
  }

  /** The old compiler shows the end of the line's header name. */
  function includeEnd(line: number): number {
    const row = rows[line - 1] ?? "";
    return Math.max(row.lastIndexOf(">"), row.lastIndexOf('"')) + 2;
  }
}

/** The name of a macro with parameters whose brackets never close. */
function unclosedMacro(tokens: readonly Token[], { macros, skipped }: Prepared): string | null {
  const at = tokens.findIndex(
    (t, i) =>
      t.kind === "name" &&
      tokens[i + 1]?.text === "(" &&
      !skipped.has(t.line) &&
      (macros.get(t.text)?.parameters ?? null) !== null &&
      !closes(tokens, i + 1),
  );
  return at < 0 ? null : tokens[at]!.text;
}

function closes(tokens: readonly Token[], open: number): boolean {
  let depth = 0;
  for (let k = open; k < tokens.length; k += 1) {
    const { kind, text, startsLine } = tokens[k]!;
    if (kind !== "mark") continue;
    if (text === "#" && startsLine) return false;
    if (text === "(") depth += 1;
    if (text === ")") depth -= 1;
    if (depth === 0) return true;
  }
  return false;
}

/** Only what is wrong with a number by its digits; a wrong ending is told when the grammar meets it. */
function badNumber(text: string): { readonly kind: SaidKind; readonly data: Said["data"] } | null {
  const octal = /^0[0-7]*([89])\d*$/.exec(text.replace(/[uUlL]+$/, ""));
  if (octal) return { kind: "badOctal", data: { digit: octal[1]! } };
  if (/^(\d*\.){2}/.test(text)) return { kind: "tooManyPoints", data: {} };
  if (/^(?:\d+\.?\d*|\.\d+)[eE][+-]?$/.test(text)) return { kind: "badExponent", data: {} };
  return null;
}
