// Reads a program in the order in which the class's compiler does, up to its first complaint.
//
// First the whole text is cut into tokens, so that a stray character or an open quote is told before anything else, wherever it
// stands; then the promises of the functions are put in, as the class's tools do; then declarations are read from the top.
// Does not know: types of values (explainProgram.ts asks the checker for those).

import { isChipName } from "../../check/chipNames.ts";
import { libraryForms, libraryObject } from "../../library/signatures.ts";
import type { Macro } from "../../read/boardMacros.ts";
import { preprocess } from "../../read/preprocess.ts";
import { readTokens } from "../../read/readTokens.ts";
import type { Token } from "../../read/token.ts";
import { namedTypes } from "../../read/words.ts";
import { promisedFunctions } from "../promisedFunctions.ts";
import { readItem } from "./declarations.ts";
import { firstOfLexer } from "./lexical.ts";
import { cNames, cTypes } from "./libraryNames.ts";
import { peek, type Reader, Stop } from "./reader.ts";
import type { Said } from "./said.ts";

export interface Read {
  readonly said: Said | null;
  /** The tokens as the compiler has them, with the promises. */
  readonly tokens: readonly Token[];
  readonly macros: ReadonlyMap<string, Macro>;
}

export function readAsCompiler(text: string): Read {
  const lexed = readTokens("", text);
  const written = withPromises(lexed.tokens);
  const prepared = preprocess("", written);
  const read = { tokens: prepared.tokens, macros: prepared.macros };
  const early = firstOfLexer(text, lexed, prepared);
  if (early !== null) return { ...read, said: early };
  return { ...read, said: firstOfGrammar(prepared.tokens, prepared.headers, prepared.macros) };
}

/** The promises stand before the first function, each with the places of its function. */
function withPromises(tokens: readonly Token[]): Token[] {
  const { list, before } = promisedFunctions(tokens);
  const promises = list.flatMap((p) => {
    const last = tokens[p.to - 1]!;
    const end: Token = {
      ...last,
      kind: "mark",
      text: ";",
      column: last.endColumn,
      endColumn: last.endColumn + 1,
      startsLine: false,
      afterSpace: false,
    };
    return [...tokens.slice(p.from, p.to), end];
  });
  return [...tokens.slice(0, before), ...promises, ...tokens.slice(before)];
}

function firstOfGrammar(tokens: readonly Token[], headers: ReadonlySet<string>, macros: ReadonlyMap<string, Macro>): Said | null {
  const r: Reader = {
    tokens,
    at: 0,
    depth: 0,
    names: { outer: null, own: new Map() },
    inSwitch: 0,
    inLoop: 0,
    inIf: false,
    inFunction: false,
    colonIsScope: true,
    isKnown: (name) =>
      name !== "Servo" &&
      (libraryForms(name) !== null ||
        libraryObject(name) !== null ||
        /^A[0-5]$/.test(name) ||
        name === "F" ||
        cNames.has(name) ||
        isChipName(name) ||
        name.startsWith("__")),
    isLibraryType: (name) => namedTypes.has(name) || cTypes.has(name) || (name === "Servo" && headers.has("Servo.h")),
  };
  for (const name of ["setup", "loop", "serialEvent"]) r.names.own.set(name, "function");
  try {
    while (peek(r).kind !== "end") readItem(r);
    return null;
  } catch (stopped) {
    if (!(stopped instanceof Stop)) throw stopped;
    return stopped.said && placed(stopped.said, tokens, macros);
  }
}

/** A token that a macro of the program brought is shown where the macro is defined. */
function placed(said: Said, tokens: readonly Token[], macros: ReadonlyMap<string, Macro>): Said {
  const macro = said.macro === "" ? undefined : macros.get(said.macro);
  if (macro === undefined || macro.line === 0) return said;
  const token = tokens[said.index];
  const own = macro.body.find((t) => t.text === token?.text);
  return own ? { ...said, line: own.line, column: own.column } : said;
}
