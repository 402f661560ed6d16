// The one waveform of a lesson that is worth a picture, where it has one: what a class without an oscilloscope would miss.
//
// A pin that switches by itself comes first (PWM, a servo's pulses, a tone), about four turns of it; then a capacitor as it charges or
// empties; then a contact that bounces. A lesson of steady levels has none: a meter shows all there is.
// Does not know: papers, how a waveform is drawn.
import type { Lesson } from "../lesson/index.ts";
import { makeBuild } from "./build.ts";
import { circuitShelf } from "./circuitShelf.ts";
import { playRuns } from "./playRuns.ts";
import { programPlayer } from "./programPlayer.ts";
import type { Probe } from "./readProbe.ts";
import type { ItemKey } from "./result.ts";
import { figureAt, type Run } from "./run.ts";
import { setTable, type Table } from "./table.ts";
import { type Trace, traceLesson } from "./traceLesson.ts";

interface Window {
  readonly probe: Probe;
  /** s */
  readonly from: number;
  readonly to: number;
}

/** Divisions across, as on an oscilloscope. */
const divisions = 10;
/** V by which a capacitor has to change to be worth a picture. */
const worthVolts = 0.5;

/** @returns the waveform, or null where the lesson has none or cannot be rehearsed. */
export function tellingTrace(lesson: Lesson, options: { readonly supply?: ItemKey; readonly seed?: number } = {}): Trace | null {
  const { supply, seed = 1 } = options;
  const choice = supply === undefined ? {} : { supply };
  const { player } = programPlayer(lesson);
  const { build } = makeBuild(lesson, choice);
  if (!player || !build) return null;
  const table = setTable(build, circuitShelf());
  const run = playRuns(lesson, table, player, seed)[0];
  const window = run && (ofSwitching(table, run) ?? ofCapacitor(table, run) ?? ofBounce(table, lesson));
  if (!window) return null;
  const request = { probes: [window.probe], fromMs: window.from * 1000, toMs: window.to * 1000, seed, ...choice };
  const trace = traceLesson(lesson, request);
  return trace.probes.some((p) => p.points.length > 0) ? trace : null;
}

/** The least of 1, 2, 5, 10 … s a division with which a stretch fits. */
function divisionFor(seconds: number): number {
  const atLeast = seconds / divisions;
  const power = 10 ** Math.floor(Math.log10(atLeast));
  const step = [1, 2, 5, 10].find((n) => n * power >= atLeast * (1 - 1e-9)) ?? 10;
  return step * power;
}

/** Begins at a whole division, at least half of one before something happens. */
function windowAt(probe: Probe, happens: number, division: number): Window {
  const from = Math.max(0, Math.floor(happens / division - 0.5) * division);
  return { probe, from: Number(from.toPrecision(9)), to: Number((from + divisions * division).toPrecision(9)) };
}

/** The first rise that the stretch holds. */
function ofSwitching(table: Table, run: Run): Window | null {
  const long = run.segments
    .flatMap((s) => s.scene.switching.map((pin) => ({ ...pin, from: s.from, seconds: s.to - s.from })))
    .filter((s) => s.duty > 0 && s.duty < 1 && s.seconds * s.hertz >= 4)
    .sort((a, b) => b.seconds - a.seconds)[0];
  if (!long) return null;
  const division = divisionFor(3.5 / long.hertz);
  const rise = long.since + Math.ceil((long.from - long.since) * long.hertz + 0.5) / long.hertz;
  return windowAt({ at: { part: "board", leg: table.pins[long.pin] ?? "" }, unit: "V" }, rise, division);
}

/** From where it begins to change to where it has come within a twentieth of what it comes to. */
function ofCapacitor(table: Table, run: Run): Window | null {
  const { build } = table;
  for (const part of build.parts.values()) {
    const [leg, other] = part.kind.legs;
    const isCapacitor = part.kind.parameters.farads !== undefined && part.kind.noticed(part.values).length === 0;
    if (!isCapacitor || leg === undefined || other === undefined) continue;
    const node = build.wiring.node(part.name, leg);
    const begins = run.segments.map((s) => ({ at: s.from, volts: figureAt(s, s.from, (p) => p.volts(node)) }));
    const ends = run.segments.map((s) => ({ at: s.to, volts: figureAt(s, s.to, (p) => p.volts(node)) }));
    const first = begins[0];
    const moved = ends.findIndex((e) => first !== undefined && Math.abs(e.volts - first.volts) > worthVolts);
    if (!first || moved < 0) continue;
    const start = begins.slice(0, moved + 1).findLast((b) => Math.abs(b.volts - first.volts) < 0.02)?.at ?? first.at;
    // It comes to rest where the next change of the board finds it: there the way turns back or stands.
    let rest = moved;
    const rises = (ends[moved]?.volts ?? 0) > first.volts;
    while (rest + 1 < ends.length && (rises ? 1 : -1) * ((ends[rest + 1]?.volts ?? 0) - (ends[rest]?.volts ?? 0)) > 1e-4)
      rest += 1;
    const final = ends[rest]?.volts ?? 0;
    const near = ends.find((e, i) => i >= moved && Math.abs(e.volts - final) <= 0.05 * Math.abs(final - first.volts));
    const division = divisionFor(Math.max(1e-4, (near?.at ?? start) - start) * 1.3);
    return windowAt({ at: { part: part.name, leg }, unit: "V" }, start, division);
  }
  return null;
}

/** A contact at a pin of the board, when it is first moved. */
function ofBounce(table: Table, lesson: Lesson): Window | null {
  const { build } = table;
  for (const { at, stimuli } of lesson.stimuli)
    for (const stimulus of stimuli) {
      if (stimulus.kind !== "state") continue;
      const part = build.parts.get(stimulus.part);
      const bounce = Number(part?.values["bounce-milliseconds"] ?? 0);
      const pin = table.pins.find((name) =>
        part?.kind.legs.some((leg) => build.wiring.node(part.name, leg) === build.wiring.node("board", name)),
      );
      if (!part || bounce <= 0 || pin === undefined) continue;
      const division = divisionFor(bounce * 1.3);
      return windowAt({ at: { part: "board", leg: pin }, unit: "V" }, at, division);
    }
  return null;
}
