// One way to build a lesson, rehearsed on its own: these items, this supply.
//
// What a class is handed is often a mixture that no variant of the lesson covers; two small drifts can add up. The answer is
// plain data, so that it can be remembered.
// Does not know: which items there are, how many.
import type { Lesson } from "../lesson/index.ts";
import { type BuildChoice, makeBuild } from "./build.ts";
import { circuitShelf } from "./circuitShelf.ts";
import { combineObservations } from "./combine.ts";
import { programPlayer } from "./programPlayer.ts";
import { readMeter } from "./readMeter.ts";
import { type Bench, type RehearsedBuild, rehearseBuild } from "./rehearseBuild.ts";
import type {
  CheckResult,
  Doubt,
  Hazard,
  ItemKey,
  MeterReading,
  Observation,
  ReadinessWord,
  RehearsalProblem,
  SupplyResult,
} from "./result.ts";

export interface OneRehearsal {
  /** "needs another supply" where it fails or is in doubt with this supply, and is ready with a strong one. */
  readonly verdict: ReadinessWord;
  readonly observations: readonly Observation[];
  readonly checks: readonly CheckResult[];
  readonly hazards: readonly Hazard[];
  readonly doubts: readonly Doubt[];
  /** Null where it could not be built at all. */
  readonly supply: SupplyResult | null;
  readonly readings: readonly MeterReading[];
  readonly problems: readonly RehearsalProblem[];
}

export interface OnceOptions {
  /** Part to item; parts that are left out stay as the author wrote them. */
  readonly items?: ReadonlyMap<string, ItemKey>;
  /** Item that feeds the board; without it the lesson's own, else a laptop's port. */
  readonly supply?: ItemKey;
  readonly seed?: number;
}

/** Supply that carries whatever a table of beginners' parts draws; used to tell a weak supply from a wrong circuit. */
export const strongSupply: ItemKey = "adapter 2000mA";

export function rehearseOnce(lesson: Lesson, options: OnceOptions = {}): OneRehearsal {
  const { seed = 1, items, supply } = options;
  const { player, problems } = programPlayer(lesson);
  if (!player) return notBuilt("fails its rehearsal", problems);
  const choice: BuildChoice = { ...(items ? { items } : {}), ...(supply === undefined ? {} : { supply }) };
  const made = makeBuild(lesson, choice);
  if (!made.build) return notBuilt("not rehearsed yet", made.problems);
  const bench = { player, shelf: circuitShelf(), seed };
  return asResult(rehearseBuild(made.build, bench), blameSupply(lesson, choice, bench));
}

export function notBuilt(verdict: ReadinessWord, problems: readonly RehearsalProblem[]): OneRehearsal {
  return { verdict, observations: [], checks: [], hazards: [], doubts: [], supply: null, readings: [], problems };
}

/** @param blame whether the same build is ready with a strong supply; asked only where this one is not. */
export function asResult(done: RehearsedBuild, blame: () => boolean): OneRehearsal {
  return {
    verdict: blamedVerdict(done, blame),
    observations: combineObservations(done.build, done.runs),
    checks: done.checks,
    hazards: done.hazards,
    doubts: done.doubts,
    supply: done.supply,
    readings: done.runs[0] ? readMeter(done.build, done.runs[0], done.build.lesson.checks) : [],
    problems: done.problems,
  };
}

export function blamedVerdict(done: RehearsedBuild, blame: () => boolean): ReadinessWord {
  const couldBeSupply = done.verdict === "fails its rehearsal" && done.supply.fits !== "fits";
  return couldBeSupply && blame() ? "needs another supply" : done.verdict;
}

/** @returns a question, answered when asked: is the same choice ready with a strong supply? */
export function blameSupply(lesson: Lesson, choice: BuildChoice, bench: Bench): () => boolean {
  return () => {
    const { build } = makeBuild(lesson, { ...choice, supply: strongSupply });
    return build !== null && rehearseBuild(build, bench).verdict === "ready";
  };
}
