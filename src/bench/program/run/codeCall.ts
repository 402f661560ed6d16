// Code for calls: of the program's functions, through pointers, of the library.
//
// A function that cannot call itself has its variables in fixed cells; the others get a frame. Either way the chip's stack is
// kept count of, so that recursion ends where it would end in class, and JavaScript's own stack is never the limit.
// Does not know: statements inside functions.
import type { CallExpression, Expression, FunctionInfo, Variable } from "../check/tree.ts";
import { cellKind, cellsOf } from "../check/types.ts";
import { libraryFunction } from "../library/signatures.ts";
import { codeValue } from "./codeExpression.ts";
import { codeInt } from "./codeInt.ts";
import { codeAddress, codePlace, copyCells, finder } from "./codePlace.ts";
import type { Coder, FunctionCode, Num, Spot, Thing } from "./coder.ts";
import { codeThing } from "./codeThing.ts";
import { callCycles } from "./costs.ts";
import { broken } from "./halt.ts";
import type { FunctionPointer, Machine } from "./machine.ts";

/** Code that gives the cell of a record. */
export function codeRecord(c: Coder, e: Expression): Spot {
  if (e.op === "record") return codePlace(c, e.place);
  if (e.op === "call") return codeCallInto(c, e);
  if (e.op === "choose") {
    const test = codeInt(c, e.test);
    const yes = finder(codeRecord(c, e.yes));
    const no = finder(codeRecord(c, e.no));
    return () => (test() !== 0 ? yes() : no());
  }
  return 0;
}

/** Code that calls and puts the record that is given back into its hidden variable; gives the cell of that. */
export function codeCallInto(c: Coder, e: CallExpression): Num {
  const call = codeCall(c, e, true);
  const into = e.into!;
  const find = finder(codePlace(c, { at: "variable", type: into.type, isConst: false, variable: into }));
  const cells = cellsOf(into.type);
  return () => {
    const from = call() as number;
    const to = find();
    copyCells(c, from, to, cells);
    return to;
  };
}

type Put = (m: Machine, base: number, value: unknown) => void;

/** How a value gets into a parameter: a number, a thing, or the cells of a record. */
function putter(c: Coder, v: Variable): Put {
  const { cell } = v;
  if (!v.isReference && v.type.kind === "record") {
    const cells = cellsOf(v.type);
    return (_m, base, value) => copyCells(c, value as number, base + cell, cells);
  }
  const kind = v.isReference ? "object" : cellKind(v.type);
  if (kind === "int")
    return (m, base, value) => {
      m.ints[base + cell] = value as number;
    };
  if (kind === "float")
    return (m, base, value) => {
      m.floats[base + cell] = value as number;
    };
  return (m, base, value) => {
    m.things[base + cell] = value;
  };
}

function codeArgument(c: Coder, e: Expression): Thing {
  return e.type.kind === "record" ? finder(codeRecord(c, e)) : codeValue(c, e);
}

/** Code for a call. @param wanted whether the result is used: a function that ends without one then ends the run. */
export function codeCall(c: Coder, e: CallExpression, wanted: boolean): Thing {
  if (typeof e.called !== "number") return callThroughPointer(c, e, e.called, wanted);
  const f = c.functions[e.called]!;
  const values = e.values.map((v) => codeArgument(c, v));
  const { info } = f;
  const parameters = e.self === null ? info.parameters : [info.self!, ...info.parameters];
  const all = e.self === null ? values : [codeAddress(c, e.self), ...values];
  const run = info.isReentrant ? callInFrame(c, f, e.line) : callInPlace(c, f, e.line);
  const fill = filler(c, parameters, all, info);
  const check = wanted && !info.returns && info.result.kind !== "void";
  const { m } = c;
  if (!check) return () => run(fill());
  return () => {
    m.result = undefined;
    const result = run(fill());
    return result === undefined ? broken(info.line, "program.noResult") : result;
  };
}

/** Evaluates all values, then puts them where the function looks for them. @returns the base of its frame, or 0. */
function filler(c: Coder, parameters: readonly Variable[], values: readonly Thing[], info: FunctionInfo): () => number {
  const { m } = c;
  const puts = parameters.map((p) => putter(c, p));
  const inFrame = info.isReentrant;
  const [v0, v1] = values;
  const [p0, p1] = puts;
  if (v0 === undefined || p0 === undefined) return () => (inFrame ? m.top : 0);
  if (v1 === undefined || p1 === undefined) {
    return () => {
      const a = v0();
      const base = inFrame ? m.top : 0;
      p0(m, base, a);
      return base;
    };
  }
  if (values.length === 2) {
    return () => {
      const a = v0();
      const b = v1();
      const base = inFrame ? m.top : 0;
      p0(m, base, a);
      p1(m, base, b);
      return base;
    };
  }
  return () => {
    const got = values.map((v) => v());
    const base = inFrame ? m.top : 0;
    for (let i = 0; i < puts.length; i += 1) puts[i]!(m, base, got[i]);
    return base;
  };
}

function callInPlace(c: Coder, f: FunctionCode, line: number): (base: number) => unknown {
  const { m } = c;
  const { time } = m.clock;
  const cycles = callCycles(f.info);
  const { stackBytes } = f.info;
  return () => {
    time[0] = time[0]! + cycles;
    m.stack += stackBytes;
    if (m.stack > m.stackRoom) broken(line, "program.stackOverflow", m.stack, m.stackRoom);
    f.body();
    m.stack -= stackBytes;
    return m.result;
  };
}

function callInFrame(c: Coder, f: FunctionCode, line: number): (base: number) => unknown {
  const { m } = c;
  const { time } = m.clock;
  const cycles = callCycles(f.info);
  const { stackBytes, cells } = f.info;
  const most = m.ints.length;
  return (base) => {
    time[0] = time[0]! + cycles;
    m.stack += stackBytes;
    if (m.stack > m.stackRoom || base + cells > most) broken(line, "program.stackOverflow", m.stack, m.stackRoom);
    if (time[0]! >= time[1]!) m.clock.look(line);
    const before = m.frame;
    m.frame = base;
    m.top = base + cells;
    f.body();
    m.top = base;
    m.frame = before;
    m.stack -= stackBytes;
    return m.result;
  };
}

function callThroughPointer(c: Coder, e: CallExpression, called: Expression, wanted: boolean): Thing {
  const { m } = c;
  const pointer = codeThing(c, called) as () => FunctionPointer | null;
  const values = e.values.map((v) => codeArgument(c, v));
  const ready = new Map<number, (got: readonly unknown[]) => unknown>();
  /** Whose address was taken is reentrant, so all such functions have frames. */
  const codeFor = (index: number) => {
    const f = c.functions[index]!;
    const run = callInFrame(c, f, e.line);
    const puts = f.info.parameters.map((p) => putter(c, p));
    return (got: readonly unknown[]) => {
      const base = m.top;
      for (let i = 0; i < puts.length; i += 1) puts[i]!(m, base, got[i]);
      m.result = undefined;
      return run(base);
    };
  };
  return () => {
    const p = pointer();
    if (p === null || p === undefined) return broken(e.line, "program.nullPointer");
    const got = values.map((v) => v());
    let run = ready.get(p.index);
    if (run === undefined) {
      run = codeFor(p.index);
      ready.set(p.index, run);
    }
    const result = run(got);
    if (wanted && result === undefined && e.type.kind !== "void") broken(e.line, "program.noResult");
    return result;
  };
}

/** Code for a library function: its cycles pass, then it does its work. */
export function codeLibrary(c: Coder, e: Expression & { op: "library" }): Thing {
  const { m } = c;
  const { time } = m.clock;
  const f = libraryFunction(e.name);
  const run = f.run as (m: Machine, ...values: unknown[]) => unknown;
  const { cycles } = f;
  const { line } = e;
  const values = e.values.map((v) => codeValue(c, v));
  const [v0, v1] = values;
  if (v0 === undefined) {
    return () => {
      time[0] = time[0]! + cycles;
      m.line = line;
      return run(m);
    };
  }
  if (v1 === undefined) {
    return () => {
      const a = v0();
      time[0] = time[0]! + cycles;
      m.line = line;
      return run(m, a);
    };
  }
  if (values.length === 2) {
    return () => {
      const a = v0();
      const b = v1();
      time[0] = time[0]! + cycles;
      m.line = line;
      return run(m, a, b);
    };
  }
  return () => {
    const got = values.map((v) => v());
    time[0] = time[0]! + cycles;
    m.line = line;
    return run(m, ...got);
  };
}

/** Code for a method that changes a String: the new text is put back and given. */
export function codeChangeText(c: Coder, e: Expression & { op: "changeText" }): Thing {
  const { m } = c;
  const { time } = m.clock;
  const f = libraryFunction(e.name);
  const run = f.run as (m: Machine, ...values: unknown[]) => unknown;
  const find = finder(codePlace(c, e.place));
  const values = e.values.map((v) => codeValue(c, v));
  const { cycles } = f;
  const { line } = e;
  return () => {
    const got = values.map((v) => v());
    const cell = find();
    time[0] = time[0]! + cycles;
    m.line = line;
    const text = run(m, m.things[cell], ...got);
    m.things[cell] = text;
    return text;
  };
}
