// Makes the machine of a run, and puts it into the state that reset leaves.
//
// What a variable holds that nobody set is undefined in C++ and arbitrary on the chip; here it comes from the seed, so that a
// program that relies on it shows it.
// Does not know: how code is made.
import { seededRandom } from "../../../base/index.ts";
import { hold } from "../check/arithmetic.ts";
import { ramBytes } from "../check/layout.ts";
import type { CheckedProgram } from "../check/tree.ts";
import { heldType } from "../check/types.ts";
import { releaseServos } from "../library/servoMethods.ts";
import type { BoardPort } from "../port.ts";
import { Clock } from "./clock.ts";
import type { Coder, FunctionCode, Step, Trace } from "./coder.ts";
import { nothing } from "./coder.ts";
import { codeStatements } from "./codeStatement.ts";
import { restless } from "./costs.ts";
import { Interrupts } from "./interrupts.ts";
import type { Machine } from "./machine.ts";
import { Pins } from "./pins.ts";
import { neverSkips, quietLoops } from "./quietLoop.ts";
import { SerialLine } from "./serialLine.ts";

/** Cells for frames: the stack has no more bytes than the chip's RAM, and a cell stands for at least one byte. */
const frameCells = 2 * ramBytes;
const scratchCells = 4096;

/** From reset to setup(): the stack and the timers are set up, and RAM is cleared byte by byte (measured in simavr). */
const startCycles = 210;
const clearCycles = 5;

export interface Board {
  readonly machine: Machine;
  /** Everything that happens before setup(), which differs from reset to reset by nothing. */
  restart(): void;
  readonly functions: readonly FunctionCode[];
  readonly coder: Coder;
}

export function makeBoard(
  program: CheckedProgram,
  port: BoardPort,
  options: { until: number; mostWork: number; seed: number; skips: boolean; trace: Trace | null },
): Board {
  const clock = new Clock(port, options.until, options.mostWork);
  const pins = new Pins(clock, port);
  const serial = new SerialLine(clock, port);
  const interrupts = new Interrupts(clock, port);
  clock.nextText = () => serial.nextHandOver();
  clock.handOver = (cycles) => serial.handOver(cycles);
  clock.afterReach = () => interrupts.watch();
  const size = program.cells + frameCells + scratchCells;
  const low = program.cells + frameCells;
  const functions: FunctionCode[] = program.functions.map((info) => ({ info, body: nothing }));
  const m: Machine = {
    ints: new Int32Array(size),
    floats: new Float32Array(size),
    things: new Array<unknown>(size).fill(null),
    clock,
    pins,
    serial,
    interrupts,
    port,
    frame: program.cells,
    top: program.cells,
    stack: 0,
    stackRoom: Math.max(0, ramBytes - program.staticBytes),
    result: null,
    line: 0,
    luck: 1,
    servos: [],
    cutting: null,
    scratch: { low, high: size, next: low },
    call: (index) => callPlain(m, functions[index]!),
  };
  const { trace } = options;
  const watchLoop = options.skips ? quietLoops(m, program) : neverSkips;
  const coder: Coder = { how: restless, m, program, functions, watchLoop, trace, inside: null, begun: [] };
  for (const f of functions)
    f.body = codeStatements({ ...coder, inside: f.info, begun: [] }, f.info.body === null ? [] : [f.info.body]);
  const first: Step = codeStatements(coder, program.first);
  const restart = () => {
    if (trace !== null) trace.isOn = false;
    pins.reset();
    releaseServos(m);
    serial.reset();
    interrupts.reset();
    clock.restart(startCycles + clearCycles * program.staticBytes);
    m.ints.fill(0);
    m.floats.fill(0);
    m.things.fill(null);
    Object.assign(m, { frame: program.cells, top: program.cells, stack: 0, result: null, luck: 1, cutting: null });
    m.scratch.next = low;
    for (const { bytes, cell } of program.literals)
      for (let i = 0; i < bytes.length; i += 1) m.ints[cell + i] = (bytes.charCodeAt(i) << 24) >> 24;
    leaveGarbage(m, program, options.seed);
    first();
    if (trace !== null) trace.isOn = true;
  };
  return { machine: m, restart, functions, coder };
}

/** An interrupt's function: its result, if any, is lost, and that of the interrupted code is kept. */
function callPlain(m: Machine, f: FunctionCode): void {
  const { frame, top, result } = m;
  m.frame = top;
  m.top = top + f.info.cells;
  m.stack += f.info.stackBytes;
  f.body();
  m.stack -= f.info.stackBytes;
  m.frame = frame;
  m.top = top;
  m.result = result;
}

function leaveGarbage(m: Machine, program: CheckedProgram, seed: number): void {
  if (seed === 0) return;
  const random = seededRandom(seed, "memory");
  for (const f of program.functions) {
    if (f.isReentrant) continue;
    for (const v of f.locals) {
      const type = heldType(v.type);
      if (type.kind === "integer" && !v.isReference) m.ints[v.cell] = hold(random.int(0, 0xffffffff) | 0, type);
      if (type.kind === "float" && !v.isReference) m.floats[v.cell] = random.next() * 1000;
    }
  }
}
