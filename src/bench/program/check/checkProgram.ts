// Checks a whole program: items in order, then what must be there, then where everything lies.
//
// After a slip in the marks, what stands behind it may be misread; so problems of meaning are reported only up to the first
// problem of syntax, as a person mends them: from the top.
// Does not know: how it is run.
import type { ProgramProblem } from "../problems.ts";
import type { FileSyntax } from "../read/parseFile.ts";
import type { FunctionSyntax, Item } from "../read/syntax.ts";
import { hold } from "./arithmetic.ts";
import { evaluate } from "./checkExpression.ts";
import { type Checker, declare, nearName, newScope, report } from "./checker.ts";
import { checkFunctionBody, declareFunction, declarePending } from "./checkFunction.ts";
import { checkMethodOutside, declareRecord } from "./checkRecord.ts";
import { checkVariables } from "./checkVariables.ts";
import { layOut, ramBytes } from "./layout.ts";
import { declareAlias, declareEnum } from "./resolveType.ts";
import type { CheckedProgram } from "./tree.ts";
import { types } from "./types.ts";

export function checkProgram(file: string, syntax: FileSyntax): { program: CheckedProgram; problems: ProgramProblem[] } {
  const global = newScope(null);
  const c: Checker = {
    file,
    problems: [],
    macros: syntax.macros,
    global,
    scope: global,
    current: null,
    members: null,
    records: new Map(),
    functions: [],
    pending: pendingFunctions(syntax.items),
    statics: [],
    announced: new Map(),
    literals: new Map(),
    constantFirst: [],
    computedFirst: [],
    calledWithoutBody: new Map(),
    addressed: new Set(),
    lastLine: Number.POSITIVE_INFINITY,
    loopDepth: 0,
    switchDepth: 0,
    temporaries: 0,
  };
  // The names of the analog pins; unlike HIGH they are constants and no macros.
  for (let pin = 14; pin <= 19; pin += 1)
    declare(c, { line: 0, column: 0 }, `A${pin - 14}`, {
      is: "constant",
      type: types.byte,
      value: hold(pin, types.byte),
      line: 0,
    });
  for (const item of syntax.items) checkItem(c, item);
  for (const [f, at] of c.calledWithoutBody) if (f.body === null) report(c, at, { code: "program.missingBody", name: f.name });
  const setup = mustHave(c, syntax, "setup");
  const loop = mustHave(c, syntax, "loop");
  const onText = c.global.names.get("serialEvent");
  const { literals, cells, staticBytes } = layOut(c, syntax.usesSerial);
  if (staticBytes > ramBytes) report(c, syntax.end, { code: "program.memoryNeeded", bytes: staticBytes, most: ramBytes });
  const program: CheckedProgram = {
    file,
    functions: c.functions,
    setup,
    loop,
    onText:
      onText?.is === "functions" ? (onText.list.find((f) => f.parameters.length === 0 && f.body !== null)?.index ?? -1) : -1,
    statics: c.statics,
    first: [...c.constantFirst, ...c.computedFirst],
    literals,
    cells,
    staticBytes,
    lines: syntax.end.line,
    headerLines: syntax.headerLines,
  };
  return { program, problems: withoutFollowers(syntax.problems, c.problems) };
}

function pendingFunctions(items: readonly Item[]): Map<string, FunctionSyntax[]> {
  const pending = new Map<string, FunctionSyntax[]>();
  for (const item of items) {
    if (item.kind !== "function" || item.declarator.owner !== "") continue;
    const { name } = item.declarator;
    pending.set(name, [...(pending.get(name) ?? []), item]);
  }
  return pending;
}

function checkItem(c: Checker, item: Item): void {
  switch (item.kind) {
    case "variables":
      checkVariables(c, item);
      return;
    case "record":
      declareRecord(c, item);
      return;
    case "enum":
      declareEnum(c, item, evaluate);
      return;
    case "alias":
      declareAlias(c, item, evaluate);
      return;
    case "function":
      if (item.declarator.owner !== "") {
        checkMethodOutside(c, item);
        return;
      }
      declarePending(c, item.declarator.name);
      checkFunctionBody(c, declareFunction(c, item), item, null);
  }
}

/** @returns the index of the function, or −1. */
function mustHave(c: Checker, syntax: FileSyntax, name: string): number {
  const found = c.global.names.get(name);
  const f = found?.is === "functions" ? found.list.find((k) => k.parameters.length === 0 && k.body !== null) : undefined;
  if (f) return f.index;
  const others = c.functions.filter((k) => k.owner === null).map((k) => k.name);
  report(c, syntax.end, { code: "program.missingFunction", name, near: nearName(c, name, others) });
  return -1;
}

/** Names that are judged by themselves, whatever is wrong behind them. */
const ofOneName = new Set(["program.unknownName", "program.unknownMember"]);

/** Leaves out what probably follows from an earlier slip. */
function withoutFollowers(read: readonly ProgramProblem[], meant: readonly ProgramProblem[]): ProgramProblem[] {
  const header = read.find((p) => p.code === "program.unknownHeader");
  if (header) return read.filter((p) => p.code === header.code || lineOf(p) < lineOf(header));
  const slips = read.filter((p) => p.severity !== "warning" && p.code !== "program.argumentCount");
  if (slips.length === 0) return [...read, ...meant];
  const first = slips.reduce((a, b) => (isBefore(b, a) ? b : a));
  // A function that is missing may stand behind the slip; the rest of the slip's own line may have been misread.
  const kept = meant.filter((p) => {
    if (lineOf(p) === lineOf(first)) return ofOneName.has(p.code) && isBefore(p, first);
    return isBefore(p, first) && p.code !== "program.missingFunction";
  });
  return [...read, ...kept];
}

function lineOf(p: ProgramProblem): number {
  return p.place?.line ?? 0;
}

function isBefore(a: ProgramProblem, b: ProgramProblem): boolean {
  return lineOf(a) < lineOf(b) || (lineOf(a) === lineOf(b) && (a.place?.column ?? 0) < (b.place?.column ?? 0));
}
