// Walks through a running program, so that a class can follow the flow: a step, to a line, to the next pin change, and back.
//
// Nothing is recorded ahead. The same program against the same world runs the same way, so wherever the walk goes it is run anew
// from reset, and only the few hundred steps around are kept. That keeps memory small however long the walk is, and an ordinary
// run knows nothing of it: its code is made without marks (run/coder.ts).
// Waiting loops are skipped as in every run: a step may take a long time, or stand for many rounds that change nothing.
// Does not know: who plays the world, what is drawn.
import type { Variable } from "./check/tree.ts";
import type { Program } from "./parseProgram.ts";
import type { BoardPort, Microseconds, RunOutcome } from "./port.ts";
import { cyclesPerMicro } from "./run/clock.ts";
import type { Mark, Trace } from "./run/coder.ts";
import { Halt } from "./run/halt.ts";
import type { Machine, ServoState } from "./run/machine.ts";
import { makeBoard } from "./run/makeMachine.ts";
import { runBoard, usualWork } from "./runProgram.ts";
import { problemsOf } from "./runWithInputs.ts";
import { type Cells, type Places, Shower } from "./walking/showValues.ts";
import type { WalkEnd, WalkStep, WalkValue } from "./walking/step.ts";
import { WatchedPort } from "./walking/watchedPort.ts";

export interface WalkOptions {
  /** As of runProgram: what undefined variables hold. 0 if not named. */
  readonly seed?: number;
  /** Virtual time to be walked, ten minutes if not named. */
  readonly until?: Microseconds;
  /** Steps after which the walk ends, a million if not named: about half a second's work. */
  readonly mostSteps?: number;
  /** As of runProgram. */
  readonly mostWork?: number;
}

/**
 * A place in a program's run. Each way to move gives where the walk stands then; where there is no such place it stands at the
 * end (forward: `ended` is set) or where it was (back).
 */
export interface Walk {
  readonly now: WalkStep;
  step(): WalkStep;
  /** One step, but not into functions that are called: to the next line of this one, or of its caller. */
  over(): WalkStep;
  /** To where this line runs next. */
  toLine(line: number): WalkStep;
  /** To just after the next change of an output: level, pulses, tone or servo. */
  toPinChange(): WalkStep;
  /** To the first step at or after a moment, forward or back. */
  toMoment(micros: Microseconds): WalkStep;
  /** To a step by its number, forward or back. */
  toStep(number: number): WalkStep;
  back(): WalkStep;
  backToLine(line: number): WalkStep;
  /** To just after the change of an output before the last one. */
  backToPinChange(): WalkStep;
}

/** Ten minutes, as usual lessons run far less before they begin anew. */
const usualUntil = 600e6;
const usualSteps = 1e6;
/** Steps that are kept, and bytes that they may take: whichever is less. */
const keptSteps = 256;
const keptBytes = 1e6;

/** Everything of one moment, kept until it is shown. */
interface Snapshot extends Cells {
  readonly number: number;
  readonly mark: Mark;
  readonly ran: number | null;
  readonly micros: Microseconds;
  readonly frame: number;
  readonly stack: number;
  readonly changes: number;
  readonly pins: WatchedPort["pins"];
  readonly text: string;
  readonly onItsWay: string;
  readonly ended: WalkEnd | null;
}

/** What passes by at each step; the same object each time. */
interface Passing {
  number: number;
  mark: Mark;
  ran: number | null;
  micros: Microseconds;
  stack: number;
  changes: number;
}

/** Looks at a step, and may take it along. @returns whether that is enough. */
type Visit = (passing: Passing, take: () => Snapshot) => boolean;

/**
 * @param world makes the world as it is at reset, anew each time it is called; it must answer the same each time.
 * @returns a walk that stands before the first statement of `setup`.
 */
export function walkProgram(program: Program, world: () => BoardPort, options: WalkOptions = {}): Walk {
  return new ReplayedWalk(program, world, options);
}

class ReplayedWalk implements Walk {
  private readonly program: Program;
  private readonly world: () => BoardPort;
  private readonly options: Required<WalkOptions>;
  /** Snapshots with numbers that follow each other. */
  private kept: Snapshot[] = [];
  private number = 0;
  private shown: WalkStep | null = null;

  constructor(program: Program, world: () => BoardPort, options: WalkOptions) {
    this.program = program;
    this.world = world;
    this.options = { seed: 0, until: usualUntil, mostSteps: usualSteps, mostWork: usualWork, ...options };
  }

  get now(): WalkStep {
    if (this.shown === null) {
      const here = this.snapshot(this.number);
      this.shown = this.show(here, here.number > 0 ? this.snapshot(here.number - 1) : null);
    }
    return this.shown;
  }

  step(): WalkStep {
    return this.toStep(this.number + 1);
  }

  back(): WalkStep {
    return this.toStep(this.number - 1);
  }

  toStep(number: number): WalkStep {
    this.number = this.snapshot(Math.max(0, Math.trunc(number))).number;
    this.shown = null;
    return this.now;
  }

  over(): WalkStep {
    const { stack } = this.snapshot(this.number);
    return this.forward((p) => p.stack <= stack);
  }

  toLine(line: number): WalkStep {
    return this.forward((p) => p.mark.line === line);
  }

  toPinChange(): WalkStep {
    const { changes } = this.snapshot(this.number);
    return this.forward((p) => p.changes !== changes);
  }

  toMoment(micros: Microseconds): WalkStep {
    return this.toStep(this.find((p) => p.micros >= micros) ?? Number.POSITIVE_INFINITY);
  }

  backToLine(line: number): WalkStep {
    let found: number | null = null;
    this.find((p) => {
      if (p.number < this.number && p.mark.line === line) found = p.number;
      return p.number >= this.number;
    });
    return this.toStep(found ?? this.number);
  }

  backToPinChange(): WalkStep {
    let found = 0;
    let changes = 0;
    this.find((p) => {
      if (p.number >= this.number) return true;
      if (p.changes !== changes) found = p.number;
      changes = p.changes;
      return false;
    });
    return this.toStep(found);
  }

  private forward(isThere: (p: Passing) => boolean): WalkStep {
    const from = this.number;
    return this.toStep(this.find((p) => p.number > from && isThere(p)) ?? Number.POSITIVE_INFINITY);
  }

  /** The number of the first step of the whole run that fits; null if there is none. */
  private find(isThere: (p: Passing) => boolean): number | null {
    let found: number | null = null;
    this.replay((p) => {
      if (!isThere(p)) return false;
      found = p.number;
      return true;
    });
    return found;
  }

  /** The snapshot of a step, or of the last one. */
  private snapshot(number: number): Snapshot {
    const last = this.kept.at(-1);
    if (last !== undefined && last.ended !== null && number >= last.number) return last;
    const here = this.kept[number - (this.kept[0]?.number ?? 0)];
    if (here !== undefined) return here;
    this.keepAround(number);
    return this.kept.find((s) => s.number === number) ?? this.kept.at(-1)!;
  }

  /** Keeps the steps before and after this one; those before the end, if the run ends earlier. */
  private keepAround(number: number): void {
    const most = Math.max(16, Math.min(keptSteps, Math.floor(keptBytes / (bytesOfCell * this.program.checked.cells))));
    const half = most >> 1;
    let kept: Snapshot[] = [];
    let last = 0;
    this.replay((p, take) => {
      last = p.number;
      if (p.number >= number - half) kept.push(take());
      return p.number >= number + half;
    });
    if (last < number) {
      kept = [];
      this.replay((p, take) => {
        if (p.number > last - most) kept.push(take());
        return false;
      });
    }
    this.kept = kept;
  }

  /** Runs the program from reset. The place where it ends, whatever ends it, is visited last. */
  private replay(visit: Visit): void {
    const { program } = this;
    const { seed, until, mostSteps, mostWork } = this.options;
    const port = new WatchedPort(this.world());
    const passing: Passing = { number: -1, mark: nowhere, ran: null, micros: 0, stack: 0, changes: 0 };
    let isLong = false;
    let isEnough = false;
    const arrive = (mark: Mark): void => {
      const micros = machine.clock.now();
      port.endTones(micros);
      passing.number += 1;
      passing.ran = passing.number === 0 ? null : passing.mark.line;
      passing.mark = mark;
      passing.micros = micros;
      passing.stack = machine.stack;
      passing.changes = port.changes;
    };
    const pass = (mark: Mark): void => {
      isLong = passing.number + 1 >= mostSteps;
      if (isLong) throw new Halt({ why: "stop" });
      arrive(mark);
      isEnough = visit(passing, () => take(machine, port, passing, null));
      if (isEnough) throw new Halt({ why: "stop" });
    };
    const trace: Trace = { isOn: false, pass };
    const board = makeBoard(program.checked, port, { until: until * cyclesPerMicro, mostWork, seed, skips: true, trace });
    const { machine } = board;
    const outcome = runBoard(program, board);
    if (isEnough) return;
    const ended: WalkEnd = {
      why: isLong ? "long" : whyEnded(outcome, until),
      problem: problemsOf(outcome, program.file)[0] ?? null,
    };
    arrive("line" in outcome && outcome.line > 0 ? { ...passing.mark, line: outcome.line } : passing.mark);
    visit(passing, () => take(machine, port, passing, ended));
  }

  private show(here: Snapshot, before: Snapshot | null): WalkStep {
    const { mark } = here;
    const isSame = before !== null && before.mark.inside === mark.inside && before.frame === here.frame;
    const { number, ran, micros, text, onItsWay, ended } = here;
    return {
      number,
      line: mark.line,
      ran,
      micros,
      inside: mark.inside?.name ?? "",
      pins: here.pins.map((pin) => ({ ...pin, changed: before !== null && goesOut(pin) !== goesOut(pinIn(before, pin.pin)) })),
      globals: this.values(
        here,
        before,
        this.program.checked.statics.filter((v) => v.storage === "global" && isNamed(v)),
      ),
      locals: this.values(here, isSame ? before : null, visible(this.program, mark)),
      text,
      onItsWay,
      ended,
    };
  }

  private values(here: Snapshot, before: Snapshot | null, variables: readonly Variable[]): WalkValue[] {
    const now = new Shower(this.program.checked, here, this.places(here));
    const then = before === null ? null : new Shower(this.program.checked, before, this.places(before));
    return variables.map((v) => compared(now.variable(v, cellOf(v, here)), then?.variable(v, cellOf(v, before!)) ?? null));
  }

  private places(s: Snapshot): Places {
    const { statics } = this.program.checked;
    return [...statics, ...(s.mark.inside?.locals ?? [])].map((variable) => ({ variable, cell: cellOf(variable, s) }));
  }
}

/** Bytes that a cell takes in the three memories. */
const bytesOfCell = 16;
/** Before the first statement. */
const nowhere: Mark = { line: 0, inside: null, begun: [] };

const isNamed = (v: Variable) => v.name !== "" && !v.name.startsWith("#");
const cellOf = (v: Variable, s: Snapshot) => (v.inFrame ? s.frame + v.cell : v.cell);

function take(m: Machine, port: WatchedPort, passing: Passing, ended: WalkEnd | null): Snapshot {
  const end = Math.max(m.top, m.frame + (passing.mark.inside?.cells ?? 0));
  return {
    ...passing,
    frame: m.frame,
    ints: m.ints.slice(0, end),
    floats: m.floats.slice(0, end),
    // Pointers and texts are never changed, servos are.
    things: m.things
      .slice(0, end)
      .map((thing) => (m.servos.includes(thing as ServoState) ? { ...(thing as ServoState) } : thing)),
    pins: port.pins,
    text: port.sent,
    onItsWay: m.serial.onItsWay(),
    ended,
  };
}

function whyEnded(outcome: RunOutcome, until: Microseconds): WalkEnd["why"] {
  if (outcome.status !== "stopped") return outcome.status;
  return outcome.micros >= until ? "until" : "stopped";
}

/** Parameters and variables of the function that can be used on the line; of two with a name the inner one. */
function visible(program: Program, mark: Mark): Variable[] {
  const { inside, line } = mark;
  if (inside === null) return [];
  const statics = program.checked.statics.filter((v) => v.storage === "static" && v.line >= inside.line && v.line <= line);
  const isThere = (v: Variable) =>
    isNamed(v) && line <= v.lastLine && (v.storage !== "local" || v.line < line || mark.begun.includes(v));
  const list = [...inside.locals.filter((v) => v.line <= line || v.storage === "parameter"), ...statics].filter(isThere);
  return list.filter((v, i) => list.findLastIndex((other) => other.name === v.name) === i);
}

function compared(now: Omit<WalkValue, "changed">, then: Omit<WalkValue, "changed"> | null): WalkValue {
  const parts = now.parts.map((part, i) => compared(part, then?.parts[i] ?? null));
  return { ...now, parts, changed: then !== null && then.text !== now.text };
}

const pinIn = (s: Snapshot, name: string) => s.pins.find((p) => p.pin === name);
/** All that others see of an output, to be compared. */
const goesOut = (pin: WatchedPort["pins"][number] | undefined): string =>
  pin === undefined ? "null null null" : `${pin.level === "high" ? "high " : ""}${pin.duty} ${pin.hz} ${pin.degrees}`;
