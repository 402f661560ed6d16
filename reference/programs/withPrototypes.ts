// A program as the class's tools hand it to the compiler: the board's header above, and a prototype for each function.
//
// Prototypes stand before the first function, #line keeps the line numbers of messages. Functions with values for parameters
// that may be left out get none, because such a value may be written once only.
// Does not know: the compiler.
import { parseFile } from "../../src/bench/program/read/parseFile.ts";
import type { FunctionSyntax } from "../../src/bench/program/read/syntax.ts";

export function withPrototypes(text: string): string {
  const lines = text.split("\n");
  const functions = parseFile("program.cpp", text).items.filter((item): item is FunctionSyntax => item.kind === "function");
  const own = functions.filter((f) => f.declarator.owner === "" && f.type !== null);
  const bodies = own.filter((f) => f.body !== null && !["setup", "loop"].includes(f.declarator.name));
  const promised = new Set(own.filter((f) => f.body === null).map((f) => f.declarator.name));
  const needed = bodies.filter((f) => !promised.has(f.declarator.name) && f.parameters.every((p) => p.usual === null));
  const prototypes = needed.map((f) => {
    const from = f.type!.at;
    const to = f.body!.at;
    const rows = lines.slice(from.line - 1, to.line);
    rows[rows.length - 1] = rows.at(-1)!.slice(0, to.column - 1);
    rows[0] = rows[0]!.slice(from.column - 1);
    return `${rows.join(" ").trim()};`;
  });
  const first = Math.min(...functions.filter((f) => f.body !== null).map((f) => f.type?.at.line ?? f.at.line), lines.length);
  return [
    '#include "board.h"',
    "#line 1",
    ...lines.slice(0, first - 1),
    ...prototypes,
    `#line ${first}`,
    ...lines.slice(first - 1),
  ].join("\n");
}
