// Runs a program on a board whose pins somebody else plays.
//
// The program drives virtual time: its operations take about what they take on the chip, delays are jumped over, a loop that only
// waits is skipped to the next thing that can change it. Every way out is named, and the same input gives the same answer.
// Does not know: who plays the pins.
import type { Program } from "./parseProgram.ts";
import type { BoardPort, Microseconds, RunOutcome } from "./port.ts";
import { cyclesPerMicro } from "./run/clock.ts";
import { roundCycles } from "./run/costs.ts";
import { Halt } from "./run/halt.ts";
import { type Board, makeBoard } from "./run/makeMachine.ts";

export interface RunOptions {
  /** When the run ends. */
  readonly until: Microseconds;
  /** Decides what undefined variables hold. 0: zeros. */
  readonly seed: number;
  /** Cycles of work, waits not counted, after which a program hangs. Five minutes of the chip if not named. */
  readonly mostWork?: number;
  /** false: every round of a waiting loop is run. Only slower; for tests. */
  readonly skips?: boolean;
}

export const usualWork = 300 * 16e6;
/** A board that resets this often without getting anywhere is not waited for. */
const mostResets = 1000;

/** Runs until the port stops it, `until` is reached, or the program breaks off. */
export function runProgram(program: Program, port: BoardPort, options: RunOptions): RunOutcome {
  const { until, seed, mostWork = usualWork, skips = true } = options;
  return runBoard(
    program,
    makeBoard(program.checked, port, { until: until * cyclesPerMicro, mostWork, seed, skips, trace: null }),
  );
}

/** Inside this room: runs a board that was made for the program. */
export function runBoard(program: Program, board: Board): RunOutcome {
  for (let resets = 0; ; resets += 1) {
    const ended = runToHalt(program, board);
    const micros = board.machine.clock.now();
    switch (ended.why) {
      case "stop":
        return { status: "stopped", micros };
      case "hangs":
        return { status: "hangs", micros, line: ended.line };
      case "broken":
        // What was printed before it broke is what a person looks for.
        board.machine.serial.handOverAll();
        return { status: "broken", micros, line: ended.line, code: ended.code, values: ended.values };
      default:
        if (resets >= mostResets) return { status: "resets", micros };
    }
  }
}

function runToHalt(program: Program, board: Board): Halt["reason"] {
  const { machine: m, functions, coder } = board;
  const { setup, loop } = program.checked;
  const onText = functions[program.checked.onText] ?? null;
  try {
    board.restart();
    m.clock.sync();
    const round = functions[loop]!;
    functions[setup]!.body();
    const watch = coder.watchLoop({
      do: "while",
      test: { op: "number", type: { kind: "integer", name: "bool" }, value: 1 },
      body: round.info.body ?? { do: "block", list: [] },
      line: round.info.line,
    });
    const { clock } = m;
    const { time } = clock;
    let rounds = 0;
    let ask = watch.first;
    for (;;) {
      round.body();
      clock.spend(loopCycles);
      if (onText !== null && m.serial.available() > 0) {
        onText.body();
        // What it does is not seen by the watch over loop().
        ask = rounds + 2;
      }
      if (time[0]! >= time[1]!) clock.look(round.info.line);
      rounds += 1;
      if (rounds >= ask) ask = watch.end(rounds);
    }
  } catch (thrown) {
    if (thrown instanceof Halt) return thrown.reason;
    // JavaScript's own stack can be smaller than what the chip's allows in deeply nested code.
    if (thrown instanceof RangeError)
      return { why: "broken", line: m.line, code: "program.stackOverflow", values: [m.stack, m.stackRoom] };
    throw thrown;
  }
}

/** The call of loop() and the check for serial events around it (measured in simavr). */
const loopCycles = 12 + roundCycles;
