// Code for statements.
//
// A statement answers how it ended: it went on, or a break, continue or return is on its way out. Each adds the cycles of its own
// expressions; loops look at the clock at the end of every round, and ask whether the rounds to come can be skipped.
// Does not know: how rounds are skipped (quietLoop.ts).
import type { Expression, Statement, Variable } from "../check/tree.ts";
import { cellKind, cellsOf, type Type } from "../check/types.ts";
import { newServo } from "../library/servoMethods.ts";
import { codeRecord } from "./codeCall.ts";
import { codeEffect, codeValue } from "./codeExpression.ts";
import { codeInt } from "./codeInt.ts";
import { codePlace, finder } from "./codePlace.ts";
import {
  breaks,
  type Coder,
  continues,
  type Ending,
  goOn,
  type Mark,
  type Num,
  nothing,
  returns,
  type Step,
  type Trace,
} from "./coder.ts";
import { codeTest } from "./codeTest.ts";
import { cyclesOf, fillCycles, inCalmLoop, returnCycles, roundCycles, switchCycles, testCycles } from "./costs.ts";
import { hasCalls } from "./hasCalls.ts";
import { type VainLoop, vainCycles, vainLoop } from "./vainLoop.ts";

export function codeStatements(c: Coder, list: readonly Statement[]): Step {
  const { trace } = c;
  if (trace !== null) return sequence(list.map((s, i) => withMark(c, trace, s, list[i - 1])));
  return sequence(list.map((s) => codeStatement(c, s)).filter((s) => s !== nothing));
}

function sequence(steps: readonly Step[]): Step {
  const [a, b, d] = steps;
  if (a === undefined) return nothing;
  if (b === undefined) return a;
  if (d === undefined) return () => a() || b();
  if (steps.length === 3) return () => a() || b() || d();
  return () => {
    for (let i = 0; i < steps.length; i += 1) {
      const ending = steps[i]!();
      if (ending !== goOn) return ending;
    }
    return goOn;
  };
}

/** Code for a statement that stands alone, as the body of a loop. */
function codeSingle(c: Coder, s: Statement): Step {
  return c.trace === null ? codeStatement(c, s) : withMark(c, c.trace, s, undefined);
}

/** Code that tells the trace before it runs. A declaration that takes several statements is told of once. */
function withMark(c: Coder, trace: Trace, s: Statement, before: Statement | undefined): Step {
  const declared = declaredBy(s);
  const line = "line" in s ? s.line : declared?.line;
  const isMarked =
    line !== undefined && s.do !== "doWhile" && (declared === null || before === undefined || declaredBy(before) !== declared);
  const pass = isMarked && !isOfHeader(c) ? marker(c, trace, line) : null;
  const step = codeStatement(c, s);
  if (declared !== null) c.begun.push(declared);
  if (pass === null) return step;
  return () => {
    pass();
    return step();
  };
}

function marker(c: Coder, trace: Trace, line: number): () => void {
  const mark: Mark = { line, inside: c.inside, begun: c.begun.filter((v) => v.line === line) };
  return () => {
    if (trace.isOn) trace.pass(mark);
  };
}

/** A header's own function: nobody can see its lines. */
function isOfHeader(c: Coder): boolean {
  return c.inside !== null && c.program.headerLines.has(c.inside.line);
}

/** The local variable that gets its first value here. */
function declaredBy(s: Statement): Variable | null {
  const place =
    s.do === "fill" || s.do === "clear" ? s.place : s.do === "expression" && s.value.op === "assign" ? s.value.place : null;
  let root = place;
  while (root?.at === "index" || root?.at === "field") root = root.at === "index" ? root.array : root.record;
  if (root?.at !== "variable" || root.variable.storage !== "local") return null;
  return s.do !== "expression" || s.line === root.variable.line ? root.variable : null;
}

export function codeStatement(c: Coder, s: Statement): Step {
  switch (s.do) {
    case "expression":
      return codeExpressionStatement(c, s.value);
    case "block":
      return codeStatements(c, s.list);
    case "if":
      return codeIf(c, s);
    case "while":
      return codeLoop(c, s, null, s.test, null, s.body, s.line);
    case "for": {
      const vain = vainLoop(s);
      const run = codeLoop(c, s, vain === null ? s.first : null, s.test, s.step, s.body, s.line);
      return vain === null ? run : codeVain(c, s, vain, run);
    }
    case "doWhile":
      return codeDoWhile(c, s);
    case "switch":
      return codeSwitch(c, s);
    case "break":
      return () => breaks;
    case "continue":
      return () => continues;
    case "return":
      return codeReturn(c, s.value);
    case "fill":
      return codeFill(c, s);
    case "clear":
      return codeClear(c, s);
    case "once": {
      const { ints: I } = c.m;
      const { cell } = s.flag;
      const body = codeStatement(c, s.body);
      return () => {
        if (I[cell] !== 0) return goOn;
        I[cell] = 1;
        return body();
      };
    }
  }
}

function codeExpressionStatement(c: Coder, value: Expression): Step {
  const { time } = c.m.clock;
  const cycles = cyclesOf(value, c.how);
  const { ints: I } = c.m;
  // The plainest statement, a number into a variable, saves a call.
  if (
    value.op === "assign" &&
    value.place.at === "variable" &&
    !value.place.variable.inFrame &&
    value.type.kind !== "record" &&
    cellKind(value.type) === "int"
  ) {
    const { cell } = value.place.variable;
    const code = codeInt(c, value.value);
    return () => {
      time[0] = time[0]! + cycles;
      I[cell] = code();
      return goOn;
    };
  }
  const effect = codeEffect(c, value);
  return () => {
    time[0] = time[0]! + cycles;
    effect();
    return goOn;
  };
}

function codeIf(c: Coder, s: Statement & { do: "if" }): Step {
  const { time } = c.m.clock;
  const cycles = cyclesOf(s.test, c.how) + testCycles;
  const test = codeTest(c, s.test);
  const yes = codeSingle(c, s.yes);
  if (s.no === null) {
    return () => {
      time[0] = time[0]! + cycles;
      return test() ? yes() : goOn;
    };
  }
  const no = codeSingle(c, s.no);
  return () => {
    time[0] = time[0]! + cycles;
    return test() ? yes() : no();
  };
}

/** while and for. */
function codeLoop(
  outer: Coder,
  loop: Statement,
  first: Statement | null,
  test: Expression | null,
  step: Expression | null,
  body: Statement,
  line: number,
): Step {
  const c = inLoop(outer, loop);
  const { clock } = c.m;
  const { time } = clock;
  const begin = first === null ? nothing : codeStatement({ ...outer, trace: null }, first);
  if (c.trace !== null && first !== null) c.begun.push(...declaredIn(first));
  const mayGoOn = test === null || test.op === "number" ? null : codeTest(c, test);
  const never = test?.op === "number" && test.value === 0;
  const round = codeSingle(c, body);
  const pass = c.trace === null || isOfHeader(c) ? null : marker(c, c.trace, line);
  const move = both(pass, step === null ? null : codeEffect(c, step));
  const testCost = test === null || test.op === "number" ? 0 : cyclesOf(test, c.how);
  const cost = (step === null ? 0 : cyclesOf(step, c.how)) + testCost + roundCycles;
  const watch = c.watchLoop(loop);
  return () => {
    begin();
    if (never) return goOn;
    time[0] = time[0]! + testCost;
    let rounds = 0;
    let ask = watch.first;
    while (mayGoOn === null || mayGoOn()) {
      const ending = round();
      if (ending === breaks) return goOn;
      if (ending === returns) return returns;
      if (move !== null) move();
      time[0] = time[0]! + cost;
      if (time[0]! >= time[1]!) clock.look(line);
      rounds += 1;
      if (rounds >= ask) ask = watch.end(rounds);
    }
    return goOn;
  };
}

/** A loop that only counts: its counters get their last values at once. Where that cannot be, it is run. */
function codeVain(c: Coder, s: Statement & { do: "for" }, vain: VainLoop, run: Step): Step {
  const begin = s.first === null ? nothing : codeStatement({ ...c, trace: null }, s.first);
  const { ints: I } = c.m;
  const { time } = c.m.clock;
  const place = (v: Variable) => finder(codePlace(c, { at: "variable", type: v.type, isConst: false, variable: v }));
  const finds: [find: Num, last: VainLoop["last"]][] = [];
  for (let one: VainLoop | null = vain; one !== null; one = one.inner) finds.push([place(one.counter), one.last]);
  return () => {
    begin();
    const ends = finds.map(([find, last]) => last(I[find()]!));
    if (ends.includes(null)) return run();
    time[0] = time[0]! + vainCycles;
    const isEntered = ends[0] !== I[finds[0]![0]()];
    finds.forEach(([find], i) => {
      if (i === 0 || isEntered) I[find()] = ends[i]!;
    });
    return goOn;
  };
}

function declaredIn(first: Statement): Variable[] {
  const list = first.do === "block" ? first.list : [first];
  return list.map(declaredBy).filter((v) => v !== null);
}

function both(first: (() => void) | null, second: (() => void) | null): (() => void) | null {
  if (first === null || second === null) return first ?? second;
  return () => {
    first();
    second();
  };
}

/** In a loop that calls nothing more stays in registers. */
function inLoop(c: Coder, loop: Statement): Coder {
  if (hasCalls(loop)) return c;
  return { ...c, how: inCalmLoop(c.how, loop.do === "for" ? loop.step : null) };
}

function codeDoWhile(outer: Coder, s: Statement & { do: "doWhile" }): Step {
  const c = inLoop(outer, s);
  const { clock } = c.m;
  const { time } = clock;
  const plain = codeTest(c, s.test);
  const pass = c.trace === null || isOfHeader(c) ? null : marker(c, c.trace, s.line);
  const test =
    pass === null
      ? plain
      : () => {
          pass();
          return plain();
        };
  const round = codeSingle(c, s.body);
  const cost = cyclesOf(s.test, c.how) + roundCycles;
  const watch = c.watchLoop(s);
  return () => {
    let rounds = 0;
    let ask = watch.first;
    do {
      const ending = round();
      if (ending === breaks) return goOn;
      if (ending === returns) return returns;
      time[0] = time[0]! + cost;
      if (time[0]! >= time[1]!) clock.look(s.line);
      rounds += 1;
      if (rounds >= ask) ask = watch.end(rounds);
    } while (test());
    return goOn;
  };
}

function codeSwitch(c: Coder, s: Statement & { do: "switch" }): Step {
  const { time } = c.m.clock;
  const value = codeInt(c, s.value);
  const steps = s.list.map((inner) => codeSingle(c, inner));
  const { cases, otherwise } = s;
  const cycles = cyclesOf(s.value, c.how) + switchCycles(cases.size);
  return () => {
    time[0] = time[0]! + cycles;
    const start = cases.get(value()) ?? otherwise;
    for (let i = start; i < steps.length; i += 1) {
      const ending = steps[i]!();
      if (ending === breaks) return goOn;
      if (ending !== goOn) return ending;
    }
    return goOn;
  };
}

function codeReturn(c: Coder, value: Expression | null): Step {
  const { m } = c;
  const { time } = m.clock;
  if (value === null) {
    return () => {
      m.result = null;
      return returns;
    };
  }
  const cycles = cyclesOf(value, c.how) + returnCycles;
  const code = value.type.kind === "record" ? finder(codeRecord(c, value)) : codeValue(c, value);
  return () => {
    time[0] = time[0]! + cycles;
    const result = code();
    m.result = result;
    return returns;
  };
}

function codeFill(c: Coder, s: Statement & { do: "fill" }): Step {
  const find = finder(codePlace(c, s.place));
  const cells = s.kind === "int" ? c.m.ints : c.m.floats;
  const { values } = s;
  const { time } = c.m.clock;
  const cycles = fillCycles(values.length);
  return () => {
    time[0] = time[0]! + cycles;
    cells.set(values, find());
    return goOn;
  };
}

function codeClear(c: Coder, s: Statement & { do: "clear" }): Step {
  const { ints, floats, things } = c.m;
  const find: Num = finder(codePlace(c, s.place));
  const cells = cellsOf(s.place.type);
  const fresh = freshThings(s.place.type);
  return (): Ending => {
    const at = find();
    ints.fill(0, at, at + cells);
    floats.fill(0, at, at + cells);
    for (let i = 0; i < cells; i += 1) things[at + i] = fresh[i] === "text" ? "" : fresh[i] === "servo" ? newServo() : null;
    return goOn;
  };
}

/** What each cell of the type begins with. */
function freshThings(type: Type): ("text" | "servo" | null)[] {
  if (type.kind === "array") {
    const one = freshThings(type.of);
    return Array.from({ length: type.length }, () => one).flat();
  }
  if (type.kind === "record") {
    const all = type.of.fields.flatMap((f) => freshThings(f.type));
    return all.length > 0 ? all : [null];
  }
  return [type.kind === "text" ? "text" : type.kind === "servo" ? "servo" : null];
}
