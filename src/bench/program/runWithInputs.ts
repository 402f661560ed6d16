// The program alone, with a list of inputs at its pins: what `benchday run` answers.
//
// Nothing hangs on the pins. A pin that no input drives reads high with its pull-up and low without; an output reads what the
// program wrote. The answer lists changes only, by time.
// Does not know: circuits.
import type { Program } from "./parseProgram.ts";
import { pinName } from "./pinName.ts";
import type { BoardPort, Level, Microseconds, PinMode, PinNumber, RunOutcome, Verdict } from "./port.ts";
import type { ProgramProblem, RunProblem } from "./problems.ts";
import type { Input, Inputs } from "./readInputs.ts";
import { runProgram } from "./runProgram.ts";

export interface InputRun {
  /** When the run ended. */
  readonly ms: number;
  /** Levels at pins that are outputs; all begin low. */
  readonly pins: readonly { readonly ms: number; readonly pin: string; readonly level: "low" | "high" }[];
  readonly modes: readonly { readonly ms: number; readonly pin: string; readonly mode: PinMode }[];
  /** Values given to analogWrite, where they changed. */
  readonly pwm: readonly { readonly ms: number; readonly pin: string; readonly value: number }[];
  /** endMs: null while it still sounds. */
  readonly tones: readonly { readonly ms: number; readonly endMs: number | null; readonly pin: string; readonly hz: number }[];
  /** degrees: null where the servo was detached. */
  readonly servos: readonly { readonly ms: number; readonly pin: string; readonly degrees: number | null }[];
  readonly text: string;
  /** Without their ends; ms is when the line's last character had left. */
  readonly lines: readonly { readonly ms: number; readonly text: string }[];
  readonly problems: readonly ProgramProblem[];
}

export interface InputRunOptions {
  readonly seed?: number;
  readonly mostWork?: number;
  readonly skips?: boolean;
}

/** Runs the program for `untilMs` of virtual time. */
export function runWithInputs(program: Program, inputs: Inputs, untilMs: number, options: InputRunOptions = {}): InputRun {
  const port = new ListPort(inputs);
  const { seed = 0, ...others } = options;
  const outcome = runProgram(program, port, { until: untilMs * 1000, seed, ...others });
  return port.answer(outcome, program.file);
}

/** A board with nothing on its pins but these inputs, for a run of one's own: what runWithInputs runs against. */
export function inputsPort(inputs: Inputs): BoardPort {
  return new ListPort(inputs);
}

/** To the microsecond: what is smaller is the estimate's business. */
const toMs = (micros: Microseconds) => Math.round(micros) / 1000;

class ListPort implements BoardPort {
  private readonly inputs: Inputs;
  private next = 0;
  private readonly driven = new Map<PinNumber, Level>();
  private readonly values = new Map<PinNumber, number>();
  private readonly modes = new Map<PinNumber, PinMode>();
  private readonly latches = new Map<PinNumber, Level>();
  private readonly shown = new Map<PinNumber, Level>();
  private readonly duties = new Map<PinNumber, number>();
  /** Characters on their way to the board, and when each arrives. */
  private coming: { readonly at: Microseconds; readonly character: string }[] = [];
  private characterMicros = 10e6 / 9600;
  private readonly log = {
    pins: [] as { ms: number; pin: string; level: "low" | "high" }[],
    modes: [] as { ms: number; pin: string; mode: PinMode }[],
    pwm: [] as { ms: number; pin: string; value: number }[],
    tones: [] as { ms: number; endMs: number | null; pin: string; hz: number }[],
    servos: [] as { ms: number; pin: string; degrees: number | null }[],
    lines: [] as { ms: number; text: string }[],
  };
  private sent = "";
  private lineIsOpen = false;

  constructor(inputs: Inputs) {
    this.inputs = [...inputs].sort((a, b) => a.ms - b.ms);
  }

  nextEvent(): Microseconds {
    const input = this.inputs[this.next];
    const arriving = this.coming.find((c) => c.at > this.told);
    return Math.min(input ? input.ms * 1000 : Number.POSITIVE_INFINITY, arriving?.at ?? Number.POSITIVE_INFINITY);
  }

  /** Up to when arrivals have been announced. */
  private told = -1;

  reach(now: Microseconds): Verdict {
    this.told = now;
    for (let input = this.inputs[this.next]; input !== undefined && input.ms * 1000 <= now; input = this.inputs[this.next]) {
      this.next += 1;
      this.apply(input, now);
    }
    return "go on";
  }

  private apply(input: Input, now: Microseconds): void {
    if ("text" in input) {
      let at = Math.max(now, this.coming.at(-1)?.at ?? 0);
      for (const character of input.text) {
        at += this.characterMicros;
        this.coming.push({ at, character });
      }
    } else if ("level" in input) this.driven.set(input.pin, input.level === "high" ? 1 : 0);
    else this.values.set(input.pin, input.value);
  }

  digitalRead(pin: PinNumber): Level {
    if (this.modes.get(pin) === "output") return this.latches.get(pin) ?? 0;
    const value = this.values.get(pin);
    // A voltage in the middle reads as the nearer level.
    return this.driven.get(pin) ?? (value !== undefined ? (value >= 512 ? 1 : 0) : this.modes.get(pin) === "pull-up" ? 1 : 0);
  }

  analogRead(pin: PinNumber): number {
    return this.values.get(pin) ?? (this.digitalRead(pin) === 1 ? 1023 : 0);
  }

  setMode(pin: PinNumber, mode: PinMode, now: Microseconds): void {
    this.modes.set(pin, mode);
    this.log.modes.push({ ms: toMs(now), pin: pinName(pin), mode });
    if (mode !== "output") this.latches.set(pin, mode === "pull-up" ? 1 : 0);
    this.show(pin, now);
  }

  digitalWrite(pin: PinNumber, level: Level, now: Microseconds): void {
    this.latches.set(pin, level);
    this.show(pin, now);
  }

  /** Logs the level of an output if it changed; a pin begins low. */
  private show(pin: PinNumber, now: Microseconds): void {
    if (this.modes.get(pin) !== "output") return;
    const level = this.latches.get(pin) ?? 0;
    if ((this.shown.get(pin) ?? 0) === level) return;
    this.shown.set(pin, level);
    this.log.pins.push({ ms: toMs(now), pin: pinName(pin), level: level === 1 ? "high" : "low" });
  }

  analogWrite(): void {
    // The value as the program gave it is logged by `duty`.
  }

  duty(pin: PinNumber, value: number, now: Microseconds): void {
    if (this.duties.get(pin) === value) return;
    this.duties.set(pin, value);
    this.log.pwm.push({ ms: toMs(now), pin: pinName(pin), value });
  }

  openText(baud: number): void {
    this.characterMicros = 10e6 / Math.max(1, baud);
  }

  tone(pin: PinNumber, hertz: number, until: Microseconds, now: Microseconds): void {
    this.endTone(now);
    this.log.tones.push({ ms: toMs(now), endMs: Number.isFinite(until) ? toMs(until) : null, pin: pinName(pin), hz: hertz });
  }

  noTone(_pin: PinNumber, now: Microseconds): void {
    this.endTone(now);
  }

  private endTone(now: Microseconds): void {
    const last = this.log.tones.at(-1);
    if (last && (last.endMs === null || last.endMs > toMs(now))) last.endMs = toMs(now);
  }

  servo(pin: PinNumber, pulse: { readonly micros: number; readonly degrees: number } | null, now: Microseconds): void {
    this.log.servos.push({ ms: toMs(now), pin: pinName(pin), degrees: pulse === null ? null : pulse.degrees });
  }

  text(characters: string, now: Microseconds): void {
    this.sent += characters;
    for (const [i, piece] of characters.split("\n").entries()) {
      if (i > 0) this.lineIsOpen = false;
      const text = piece.replaceAll("\r", "");
      const last = this.log.lines.at(-1);
      if (this.lineIsOpen && last) Object.assign(last, { ms: toMs(now), text: last.text + text });
      else if (piece !== "" || i < characters.split("\n").length - 1) {
        this.log.lines.push({ ms: toMs(now), text });
        this.lineIsOpen = true;
      }
    }
  }

  takeText(now: Microseconds): string {
    const count = this.coming.findIndex((c) => c.at > now);
    const arrived = this.coming.splice(0, count < 0 ? this.coming.length : count);
    return arrived.map((c) => c.character).join("");
  }

  answer(outcome: RunOutcome, file: string): InputRun {
    return { ms: toMs(outcome.micros), ...this.log, text: this.sent, problems: problemsOf(outcome, file) };
  }
}

/** How a run ended, as problems; none if it came to its end. */
export function problemsOf(outcome: RunOutcome, file: string): RunProblem[] {
  const ms = toMs(outcome.micros);
  switch (outcome.status) {
    case "stopped":
      return [];
    case "hangs":
      return [{ code: "program.hangs", place: { file, line: outcome.line, column: 1 }, ms }];
    case "broken":
      return [{ code: outcome.code, place: { file, line: outcome.line, column: 1 }, ms, values: outcome.values }];
    default:
      return [{ code: "program.resets", ms }];
  }
}
