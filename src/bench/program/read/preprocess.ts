// The preprocessor: #include of known headers, #define of constants and simple function macros, #if and its kin.
//
// It works on tokens, so that places stay true: a token that a macro brings carries the place where the macro was used. A
// macro inside its own expansion stays a plain name (C++11, section 16.3.4), and the number of tokens is limited, because
// thirty short lines can otherwise ask for a thousand million.
// Does not know: what the tokens mean.
import { near, type Place } from "../../../base/index.ts";
import type { MeaningProblem, SilentProblem, SyntaxProblem } from "../problems.ts";
import { boardMacros, type Macro } from "./boardMacros.ts";
import { conditionValue } from "./conditionValue.ts";
import { headerSource } from "./headerSource.ts";
import { headerNames, isKnownHeader, isUnsupportedHeader } from "./headers.ts";
import { readTokens } from "./readTokens.ts";
import type { Token } from "./token.ts";

/** Tokens after expansion. A program of a thousand lines has ten thousand. */
export const mostTokens = 200_000;
const mostDepth = 60;
const directives = ["include", "define", "undef", "if", "ifdef", "ifndef", "elif", "else", "endif", "pragma", "error", "warning"];

export type PreprocessProblem = SyntaxProblem | MeaningProblem | SilentProblem;

export interface Preprocessed {
  /** Without directives, ending with the token "end". */
  readonly tokens: Token[];
  readonly problems: PreprocessProblem[];
  readonly headers: ReadonlySet<string>;
  /** All macros at the end of the file, the board's own among them. */
  readonly macros: ReadonlyMap<string, Macro>;
  /** Lines that a condition leaves out. */
  readonly skipped: ReadonlySet<number>;
  /** Lines of #include on which the tokens of a header stand. */
  readonly headerLines: ReadonlySet<number>;
}

export function preprocess(file: string, tokens: readonly Token[]): Preprocessed {
  const out: Token[] = [];
  const problems: PreprocessProblem[] = [];
  const headers = new Set<string>();
  const macros = boardMacros();
  const skipped = new Set<number>();
  const headerLines = new Set<number>();
  let produced = 0;
  /** One entry for each open #if: whether its lines are taken now, whether one of its branches was. */
  const open: { taken: boolean; done: boolean; outer: boolean; token: Token }[] = [];
  const taken = () => open.every((o) => o.taken);
  const place = (token: Token): Place => ({ file, line: token.line, column: token.column });

  let i = 0;
  while (i < tokens.length) {
    const token = tokens[i]!;
    if (token.kind === "mark" && token.text === "#" && token.startsLine) {
      let end = i + 1;
      while (end < tokens.length && !tokens[end]!.startsLine && tokens[end]!.kind !== "end") end += 1;
      directive(token, tokens.slice(i + 1, end));
      i = end;
    } else {
      let end = i + 1;
      while (end < tokens.length && !(tokens[end]!.text === "#" && tokens[end]!.startsLine)) end += 1;
      if (taken() || tokens[end - 1]!.kind === "end") {
        const run = taken() ? tokens.slice(i, end) : [tokens[end - 1]!];
        for (const t of expand(run, new Set(), 0)) out.push(t);
      }
      if (!taken()) for (const t of tokens.slice(i, end)) if (t.kind !== "end") skipped.add(t.line);
      i = end;
    }
  }
  for (const o of open) problems.push({ code: "program.unclosedCondition", place: place(o.token), name: o.token.text });
  const last = tokens.at(-1)!;
  if (out.at(-1)?.kind !== "end") out.push({ ...last, kind: "end", text: "", bytes: "" });
  return { tokens: out, problems, headers, macros, skipped, headerLines };

  function directive(hash: Token, line: readonly Token[]): void {
    const [word, ...rest] = line;
    if (word === undefined) return;
    switch (word.text) {
      case "if":
      case "ifdef":
      case "ifndef": {
        const outer = taken();
        const yes =
          outer && (word.text === "if" ? condition(word, rest) : macros.has(rest[0]?.text ?? "") === (word.text === "ifdef"));
        open.push({ taken: yes, done: yes, outer, token: word });
        return;
      }
      case "elif":
      case "else": {
        const o = open.at(-1);
        if (o === undefined) problems.push({ code: "program.unclosedCondition", place: place(word), name: word.text });
        else {
          o.taken = o.outer && !o.done && (word.text === "else" || condition(word, rest));
          o.done ||= o.taken;
        }
        return;
      }
      case "endif":
        if (open.pop() === undefined) problems.push({ code: "program.unclosedCondition", place: place(word), name: word.text });
        return;
      default:
        if (taken()) whenTaken(hash, word, rest);
    }
  }

  function whenTaken(hash: Token, word: Token, rest: readonly Token[]): void {
    switch (word.text) {
      case "include":
        include(word, rest);
        return;
      case "define":
        define(word, rest);
        return;
      case "undef":
        macros.delete(rest[0]?.text ?? "");
        return;
      case "pragma":
      case "warning":
        return;
      case "error":
        problems.push({ code: "program.ownError", place: place(hash), text: rest.map((t) => t.text).join(" ") });
        return;
      default:
        problems.push({
          code: "program.unknownDirective",
          place: place(word),
          name: word.text,
          near: near(word.text, directives),
        });
    }
  }

  function include(word: Token, rest: readonly Token[]): void {
    const first = rest[0];
    const inQuotes = first?.kind === "text";
    const name = inQuotes
      ? first.bytes
      : rest
          .slice(1, -1)
          .map((t) => t.text)
          .join("");
    if (!inQuotes && !(first?.text === "<" && rest.at(-1)?.text === ">" && rest.length > 2)) {
      problems.push({
        code: "program.expected",
        place: place(first ?? word),
        expected: "<header>",
        found: first?.text ?? "",
        foundLine: (first ?? word).line,
        foundColumn: (first ?? word).column,
      });
      return;
    }
    if (isKnownHeader(name)) {
      const source = headers.has(name) ? undefined : headerSource[name];
      headers.add(name);
      if (source === undefined) return;
      const { line, column, endLine, endColumn } = word;
      headerLines.add(line);
      for (const t of readTokens(file, source).tokens) if (t.kind !== "end") out.push({ ...t, line, column, endLine, endColumn });
    } else if (isUnsupportedHeader(name))
      problems.push({ code: "program.notSupported", place: place(first ?? word), feature: `#include <${name}>` });
    else problems.push({ code: "program.unknownHeader", place: place(first ?? word), name, near: near(name, headerNames) });
  }

  function define(word: Token, rest: readonly Token[]): void {
    const name = rest[0];
    if (name?.kind !== "name") {
      const at = name ?? word;
      problems.push({
        code: "program.expected",
        place: place(at),
        expected: "name",
        found: name?.text ?? "",
        foundLine: at.line,
        foundColumn: at.column,
      });
      return;
    }
    const before = macros.get(name.text);
    let body = rest.slice(1);
    let parameters: string[] | null = null;
    if (body[0]?.text === "(" && !body[0].afterSpace) {
      const close = body.findIndex((t) => t.text === ")");
      parameters = body
        .slice(1, Math.max(1, close))
        .filter((t) => t.kind === "name" || t.text === "...")
        .map((t) => t.text);
      body = close < 0 ? [] : body.slice(close + 1);
    }
    const special = body.find((t) => t.text === "#" || t.text === "##");
    const unread = special?.text ?? (parameters?.includes("...") ? "..." : undefined);
    if (unread !== undefined)
      problems.push({ code: "program.notSupported", place: place(special ?? name), feature: `#define with ${unread}` });
    const same = before && before.body.map((t) => t.text).join(" ") === body.map((t) => t.text).join(" ");
    if (before && !same && before.line > 0)
      problems.push({
        code: "program.macroAgain",
        severity: "warning",
        place: place(name),
        name: name.text,
        firstLine: before.line,
      });
    macros.set(name.text, { name: name.text, parameters, body, line: name.line });
  }

  function condition(word: Token, rest: readonly Token[]): boolean {
    const asked: Token[] = [];
    for (let k = 0; k < rest.length; k += 1) {
      const t = rest[k]!;
      if (t.text !== "defined") {
        asked.push(t);
        continue;
      }
      const inBrackets = rest[k + 1]?.text === "(";
      const name = rest[k + (inBrackets ? 2 : 1)];
      k += inBrackets ? 3 : 1;
      asked.push({ ...t, kind: "number", text: macros.has(name?.text ?? "") ? "1" : "0" });
    }
    const value = conditionValue(expand(asked, new Set(), 0));
    if (value === null) problems.push({ code: "program.notConstant", place: place(word), what: `#${word.text}` });
    return value !== null && value !== 0;
  }

  function expand(list: readonly Token[], hidden: ReadonlySet<string>, depth: number): Token[] {
    const done: Token[] = [];
    for (let k = 0; k < list.length; k += 1) {
      const token = list[k]!;
      const macro = token.kind === "name" && !hidden.has(token.text) && depth < mostDepth ? macros.get(token.text) : undefined;
      produced += 1;
      if (produced > mostTokens) {
        if (!problems.some((p) => p.code === "program.tooLong"))
          problems.push({ code: "program.tooLong", place: place(token), most: mostTokens });
        return done;
      }
      if (macro === undefined) {
        done.push(token);
        continue;
      }
      const inner = new Set(hidden).add(macro.name);
      if (macro.parameters === null) {
        for (const t of expand(moved(macro.body, token, macro.name), inner, depth + 1)) done.push(t);
        continue;
      }
      const call = list[k + 1]?.text === "(" ? readArguments(list, k + 1) : null;
      if (call === null) {
        done.push(token);
        continue;
      }
      k = call.end;
      const { parameters } = macro;
      const given = parameters.length === 0 && call.given.length === 1 && call.given[0]!.length === 0 ? 0 : call.given.length;
      if (given !== parameters.length) {
        const expected = String(parameters.length);
        problems.push({ code: "program.argumentCount", place: place(token), name: macro.name, expected, found: given });
      }
      const filled = call.given.map((g) => expand(g, hidden, depth + 1));
      if (macro.body.length * Math.max(0, ...filled.map((f) => f.length)) > mostTokens) {
        produced = mostTokens;
        continue;
      }
      const body = moved(macro.body, token, macro.name).flatMap((t) => {
        const n = t.kind === "name" ? parameters.indexOf(t.text) : -1;
        return n < 0 ? [t] : (filled[n] ?? []);
      });
      for (const t of expand(body, inner, depth + 1)) done.push(t);
    }
    return done;
  }
}

/** A macro's tokens at the place where it is used. */
function moved(body: readonly Token[], use: Token, macro: string): Token[] {
  const { line, column, endLine, endColumn } = use;
  return body.map((t, i) => ({
    ...t,
    line,
    column,
    endLine,
    endColumn,
    macro: use.macro || macro,
    startsLine: i === 0 && use.startsLine,
  }));
}

/** The arguments of a macro between the brackets that open at `start`; null if they never close. */
function readArguments(list: readonly Token[], start: number): { given: Token[][]; end: number } | null {
  const given: Token[][] = [[]];
  let depth = 0;
  for (let k = start; k < list.length; k += 1) {
    const t = list[k]!;
    if (t.kind === "end") return null;
    if (t.kind === "mark" && (t.text === "(" || t.text === "[" || t.text === "{")) depth += 1;
    if (t.kind === "mark" && (t.text === ")" || t.text === "]" || t.text === "}")) depth -= 1;
    if (depth === 0) return { given, end: k };
    if (depth === 1 && t.kind === "mark" && t.text === ",") given.push([]);
    else if (k > start) given.at(-1)!.push(t);
  }
  return null;
}
