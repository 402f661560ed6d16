// What happened in one run, before anybody looked: which electrical state lasted how long, which way things moved, what was sent.
//
// Does not know: what a person would notice of it, which checks there are.
import type { PartState, RotorStep } from "../parts/index.ts";
import type { RunOutcome } from "../program/index.ts";
import type { Move } from "./driveServo.ts";
import type { Doubt } from "./result.ts";
import type { Point, TableState } from "./table.ts";

/** How the doubts of a run are settled, because nobody can foresee them. */
export interface Scenario {
  /** What an undetermined input reads. */
  readonly inputs: "low" | "high" | "noisy";
  /** Whether supply, fuse and chip bear more than they promise. */
  readonly supply: "holds" | "gives way";
}

/** A pin that switches by itself: its index in the table's pins, Hz, share of the turn high, and when a turn began, s. */
export interface SwitchingPin {
  readonly pin: number;
  readonly hertz: number;
  readonly duty: number;
  readonly since: number;
}

/** A state of the table: its phases with their shares of the time, and how often a second they change. */
export interface Scene {
  readonly phases: readonly { readonly share: number; readonly point: Point; readonly state: TableState }[];
  /** Pins that switch. */
  readonly switching: readonly SwitchingPin[];
  /** States of the parts that a stimulus or a coil has changed. */
  readonly states: ReadonlyMap<string, PartState>;
  readonly on: boolean;
  /**
   * Where the circuit was followed in time: "ramp", its two phases are how it began and ended and go over into each other;
   * "turn", its phases are what one turn of the switching pins went through, in order.
   */
  readonly followed?: "ramp" | "turn";
  /** Of a turn that stands for several: the phases of the turn before them, from which they went over into this one. */
  readonly before?: Scene["phases"];
  /** Stands for its phases where scenes are told apart: followed scenes that nearly agree are one. */
  readonly likeness?: string;
}

export interface Segment {
  /** s */
  readonly from: number;
  readonly to: number;
  readonly scene: Scene;
}

export interface Run {
  readonly scenario: Scenario;
  /** Without gaps from 0 to the end. */
  readonly segments: readonly Segment[];
  /** Angles by part. */
  readonly moves: ReadonlyMap<string, readonly Move[]>;
  /** Steps of rotors by part. */
  readonly steps: ReadonlyMap<string, readonly RotorStep[]>;
  /** Text of the board as it was sent, s. */
  readonly text: readonly { readonly at: number; readonly characters: string }[];
  /** When the board was reset, or lost its supply, and when it ran again (Infinity: not any more). */
  readonly pauses: readonly { readonly from: number; readonly to: number; readonly why: "reset" | "off" }[];
  /** Nets whose reading nobody can foresee. */
  readonly doubtfulNets: readonly string[];
  /** The same and other doubts with their figures and first moments; left out where none were looked for. */
  readonly doubts?: readonly Doubt[];
  /** The supply was asked for more than it promises, or the chip had too little to be sure of. */
  readonly doubtfulSupply: boolean;
  /** Why the circuit could not be followed in time to the end; null where it could, or had not to be. */
  readonly lost: Point["failure"];
  /** How the program ended. */
  readonly outcome: RunOutcome;
  /** s */
  readonly end: number;
}

/** @returns what tells a scene from others: its states, their shares, and how fast they change. */
export function sceneKeyOf(scene: Scene): string {
  if (scene.likeness !== undefined) return scene.likeness;
  const hertz = scene.switching.map((s) => `${s.pin}@${s.hertz}`).join();
  return scene.phases.map((p) => `${p.share}*${p.point.key}`).join(";") + hertz;
}

/** @returns the segment at a moment. */
export function segmentAt(run: Run, at: number): Segment | undefined {
  return run.segments.findLast((s) => s.from <= at);
}

/** A figure of a segment at a moment as a slow meter shows it: the mean of its phases, or on the way from one to the other. */
export function figureAt({ from, to, scene }: Segment, at: number, figure: (point: Point) => number): number {
  const [begin, end] = endsOf(scene, figure);
  if (begin === end || to <= from) return end;
  const share = Math.min(1, Math.max(0, (at - from) / (to - from)));
  return begin * (1 - share) + end * share;
}

/** A figure at the beginning and at the end of a scene, of switching pins its mean; the same twice where the circuit is at rest. */
export function endsOf(scene: Scene, figure: (point: Point) => number): readonly [begin: number, end: number] {
  const [first, last] = [scene.phases[0], scene.phases.at(-1)];
  if (scene.followed === "ramp" && first && last) return [figure(first.point), figure(last.point)];
  const end = meanOf(scene, figure);
  return [scene.before ? meanOf({ phases: scene.before }, figure) : end, end];
}

/** The mean of a figure over the phases of a scene. */
export function meanOf(scene: Pick<Scene, "phases">, figure: (point: Point) => number): number {
  let sum = 0;
  for (const { share, point } of scene.phases) sum += share * figure(point);
  return sum;
}

/** The least or most of a figure over the phases of a scene. @param pick Math.min or Math.max. */
export function extremeOf(scene: Scene, pick: (...values: number[]) => number, figure: (point: Point) => number): number {
  return pick(...scene.phases.map((p) => figure(p.point)));
}
