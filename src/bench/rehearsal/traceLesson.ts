// What an oscilloscope would show of a lesson: the voltage of a net or the current of a leg, from one moment to another.
//
// The lesson is rehearsed up to the end of the stretch; within it every edge stands where it is: PWM, tones, servo pulses and the
// bounce of a contact are drawn turn by turn, not averaged.
// Does not know: screens, scales (documents), checks.
import type { Lesson } from "../lesson/index.ts";
import { type BuildChoice, makeBuild } from "./build.ts";
import { circuitShelf } from "./circuitShelf.ts";
import { followCircuit } from "./followCircuit.ts";
import { inTimeElements, keepsAnything } from "./inTimeElements.ts";
import { playRunUntil } from "./playRuns.ts";
import { programPlayer } from "./programPlayer.ts";
import { isLeg, type Probe, probeName } from "./readProbe.ts";
import type { ItemKey, RehearsalProblem } from "./result.ts";
import { setTable, stateAtReset } from "./table.ts";
import { type TracePoint, thinPoints } from "./thinPoints.ts";
import { traceRun } from "./traceRun.ts";

export interface TraceRequest {
  readonly probes: readonly Probe[];
  /** Part to item; parts that are left out stay as the author wrote them. */
  readonly items?: ReadonlyMap<string, ItemKey>;
  /** Item that feeds the board; without it the lesson's own, else a laptop's port. */
  readonly supply?: ItemKey;
  /** The stretch that is looked at, ms since the board left reset. */
  readonly fromMs: number;
  readonly toMs: number;
  readonly seed?: number;
  /** Points of one probe at most; 2000 unless told otherwise. */
  readonly mostPoints?: number;
}

export interface TracedProbe extends Probe {
  /** In the order of time; straight lines between them; two at one instant are an edge. Empty where the net is never held. */
  readonly points: readonly TracePoint[];
  /** Stretches in which nothing holds the net, so that it has no voltage: s. No line goes across them. */
  readonly gaps: readonly (readonly [from: number, to: number])[];
  /** The least and the most of the stretch, thinned points or not; 0 without points. */
  readonly least: number;
  readonly most: number;
}

export interface Trace {
  readonly lesson: string;
  readonly fromMs: number;
  readonly toMs: number;
  readonly probes: readonly TracedProbe[];
  readonly problems: readonly RehearsalProblem[];
}

/** ms. What is later is not traced: an hour of blinking is no waveform. */
const longestMs = 600_000;
const usualMostPoints = 2000;

/**
 * @returns the waveforms of the run in which doubtful inputs read low and the supply holds; with `problems` and no probes where the lesson cannot
 * be rehearsed. Never throws for any lesson.
 */
export function traceLesson(lesson: Lesson, request: TraceRequest): Trace {
  const { items, supply, seed = 1, mostPoints = usualMostPoints } = request;
  const fromMs = Math.min(longestMs, Math.max(0, request.fromMs));
  const toMs = Math.min(longestMs, Math.max(fromMs, request.toMs));
  const failed = (problems: readonly RehearsalProblem[]): Trace => ({ lesson: lesson.id, fromMs, toMs, probes: [], problems });
  const missing = request.probes.filter((probe) => !isLeg(lesson, probe.at));
  if (missing.length > 0) return failed(missing.map((p) => ({ code: "rehearsal.probeNotThere", probe: probeName(p) })));
  const { player, problems } = programPlayer(lesson);
  if (!player) return failed(problems);
  const choice: BuildChoice = { ...(items ? { items } : {}), ...(supply === undefined ? {} : { supply }) };
  const { build, problems: unbuilt } = makeBuild(lesson, choice);
  if (!build) return failed(unbuilt);
  const table = setTable(build, circuitShelf());
  const kept = inTimeElements(build, table.pins, stateAtReset(table));
  const circuit = keepsAnything(kept) ? followCircuit(table, fromMs / 1000) : null;
  const run = playRunUntil(lesson, table, player, { inputs: "low", supply: "holds" }, toMs / 1000, seed, circuit);
  const lines = traceRun(table, run, request.probes, fromMs / 1000, toMs / 1000);
  const probes = lines.map(({ probe, points, gaps, least, most }): TracedProbe => {
    return { ...probe, points: thinPoints(points, mostPoints), gaps, least, most };
  });
  const lost: RehearsalProblem[] = run.lost ? [{ code: "rehearsal.memoryNotFollowed", reason: run.lost }] : [];
  return { lesson: lesson.id, fromMs, toMs, probes, problems: lost };
}
