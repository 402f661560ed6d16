// A lesson's whole rehearsal: as written, with each supply, with every value at hand, at the corners of the tolerances.
//
// Long work: it yields between builds, so that page, worker and command can show and stop it. The verdict is that of the lesson
// as written on the best supply that is offered; variants say which other parts would do.
// Does not know: how many parts there are, which class it is for.
import type { LongWork, Progress } from "../../base/index.ts";
import type { Lesson } from "../lesson/index.ts";
import { type BuildChoice, makeBuild } from "./build.ts";
import { circuitShelf } from "./circuitShelf.ts";
import { type Corner, choiceAt, findCorners, sampleCorners } from "./corners.ts";
import { findMargins } from "./findMargins.ts";
import { listVariants } from "./listVariants.ts";
import { programPlayer } from "./programPlayer.ts";
import { type Bench, type RehearsedBuild, rehearseBuild } from "./rehearseBuild.ts";
import { asResult, blamedVerdict, blameSupply, notBuilt, type OneRehearsal, strongSupply } from "./rehearseOnce.ts";
import {
  type ItemKey,
  type Margin,
  type RehearsalResult,
  type RehearsalStage,
  type VariantResult,
  type VariantWhat,
  verdicts,
} from "./result.ts";

export interface RehearsalOptions {
  /** Supplies that the class has, tried in place of the lesson's own; the best of them is used. */
  readonly supplies?: readonly ItemKey[];
  /** What the class's kits and stock hold: every item of a part's kind with another value becomes a variant. */
  readonly items?: readonly ItemKey[];
  /** Rehearse at the corners of the tolerances; true unless told otherwise. */
  readonly corners?: boolean;
  /** Look for the margins of every value; false unless told otherwise, because it takes some hundred rehearsals. */
  readonly margins?: boolean;
  readonly seed?: number;
}

/** Random tables that look for a corner which the derivatives missed. */
const samples = 12;

/** The lesson as written, on one supply. */
interface Trial {
  readonly choice: BuildChoice;
  readonly done: RehearsedBuild;
  readonly result: OneRehearsal;
}

/**
 * @returns the result; its verdict is that of the lesson as its author wrote it. Where no supply on offer will do and a strong
 * one would, that is "needs another supply", and `supplies` tells the strong one too. Never throws for any lesson.
 */
export function* rehearse(lesson: Lesson, options: RehearsalOptions = {}): LongWork<RehearsalResult> {
  yield stage(0, 1, "rehearsal.readsProgram");
  const { player, problems } = programPlayer(lesson);
  if (!player) return resultOf(lesson, notBuilt("fails its rehearsal", problems));
  return yield* rehearseOn(lesson, { player, shelf: circuitShelf(), seed: options.seed ?? 1 }, options);
}

/** As `rehearse`, with whatever runs the program. */
export function* rehearseOn(lesson: Lesson, bench: Bench, options: RehearsalOptions): LongWork<RehearsalResult> {
  const offered = options.supplies && options.supplies.length > 0 ? [...new Set(options.supplies)] : [undefined];
  const trials: Trial[] = [];
  for (const [i, supply] of offered.entries()) {
    yield stage(i, offered.length + 1, "rehearsal.triesSupplies");
    const trial = tryLesson(lesson, supply === undefined ? {} : { supply }, bench);
    if (!("done" in trial)) return resultOf(lesson, trial);
    trials.push(trial);
  }
  const best = trials.reduce((a, b) => (rank(b) > rank(a) ? b : a));
  // Values are tried where the lesson itself would work, so that a weak supply does not hide what they do.
  const strong = best.result.verdict === "needs another supply" ? tryLesson(lesson, { supply: strongSupply }, bench) : best;
  const firm = "done" in strong ? strong : best;
  const told = trials.includes(firm) ? trials : [...trials, firm];
  const variants = told.map((trial): VariantResult => {
    const what: VariantWhat = trial === best ? { kind: "nominal" } : { kind: "supply", supply: trial.done.supply.supply };
    return variantOf(what, trial.result.verdict, trial.done);
  });

  const planned = planVariants(lesson, options, firm, bench);
  for (const [i, what] of planned.entries()) {
    yield stage(offered.length + i, offered.length + planned.length, "rehearsal.triesValues");
    const variant = tryVariant(lesson, what, firm.choice, bench);
    if (!isSample(what) || isNews(variant, variants)) variants.push(variant);
  }
  const margins = options.margins && firm.result.verdict === "ready" ? yield* marginsOf(firm, bench, planned.length) : [];
  return { ...resultOf(lesson, best.result), supplies: told.map((t) => t.done.supply), variants, margins };
}

function stage(done: number, total: number, doing: RehearsalStage): Progress {
  return { done, total, doing };
}

function tryLesson(lesson: Lesson, choice: BuildChoice, bench: Bench): Trial | OneRehearsal {
  const { build, problems } = makeBuild(lesson, choice);
  if (!build) return notBuilt("not rehearsed yet", problems);
  const done = rehearseBuild(build, bench);
  return { choice, done, result: asResult(done, blameSupply(lesson, choice, bench)) };
}

function rank(trial: Trial): number {
  return verdicts.indexOf(trial.result.verdict);
}

/** The variants in the order in which they are told: values, then corners, then samples. */
function planVariants(lesson: Lesson, options: RehearsalOptions, firm: Trial, bench: Bench): readonly VariantWhat[] {
  const { build, runs } = firm.done;
  const values = listVariants(lesson, options.items ?? []);
  const run = runs[0];
  if (options.corners === false || !run) return values;
  return [...values, ...findCorners(build, firm.choice, run, bench.shelf), ...sampleCorners(build, samples, bench.seed)];
}

function tryVariant(lesson: Lesson, what: VariantWhat, firm: BuildChoice, bench: Bench): VariantResult {
  const choice =
    what.kind === "value"
      ? { ...firm, items: new Map([[what.part, what.item]]) }
      : what.kind === "corner"
        ? choiceAt(firm, what.values)
        : firm;
  const { build } = makeBuild(lesson, choice);
  if (!build) return { what, verdict: "not rehearsed yet", failedChecks: [], hazards: [] };
  const done = rehearseBuild(build, bench);
  // A strong supply is tried with a usual cable and fuse.
  const { circumstances: _, ...parts } = choice;
  return variantOf(what, blamedVerdict(done, blameSupply(lesson, parts, bench)), done);
}

function variantOf(what: VariantWhat, verdict: VariantResult["verdict"], done: RehearsedBuild): VariantResult {
  return { what, verdict, failedChecks: done.checks.flatMap((c, i) => (c.passed ? [] : [i])), hazards: done.hazards };
}

function isSample(what: VariantWhat): what is Corner {
  return what.kind === "corner" && what.corner.startsWith("sample");
}

/** A sample is told only if it does worse than every corner. */
function isNews(result: VariantResult, told: readonly VariantResult[]): boolean {
  const worst = Math.min(...told.filter((v) => v.what.kind === "corner").map((v) => verdicts.indexOf(v.verdict)));
  return verdicts.indexOf(result.verdict) < worst;
}

function* marginsOf(firm: Trial, bench: Bench, done: number): LongWork<readonly Margin[]> {
  const looking = findMargins(firm.done.build, firm.choice, (build) => rehearseBuild(build, bench).verdict === "ready");
  for (;;) {
    const step = looking.next();
    if (step.done) return step.value;
    yield stage(done, done + 1, "rehearsal.seeksMargins");
  }
}

function resultOf(lesson: Lesson, one: OneRehearsal): RehearsalResult {
  return {
    lesson: lesson.id,
    verdict: one.verdict,
    observations: one.observations,
    checks: one.checks,
    hazards: one.hazards,
    doubts: one.doubts,
    supplies: one.supply ? [one.supply] : [],
    readings: one.readings,
    variants: [],
    margins: [],
    problems: one.problems,
  };
}
