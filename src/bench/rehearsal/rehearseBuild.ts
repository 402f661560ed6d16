// One build of a lesson, rehearsed: runs, checks, hazards, supply, and the verdict on just this build.
//
// Does not know: other builds, other supplies.
import type { RunOutcome } from "../program/index.ts";
import { type Build, partsNotModelled } from "./build.ts";
import type { CircuitShelf } from "./circuitShelf.ts";
import { combineChecks } from "./combine.ts";
import { findDoubts } from "./findDoubts.ts";
import { findHazards } from "./findHazards.ts";
import { findHeat, hotHazards } from "./findHeat.ts";
import { fedSegments, judgeSupply, regulatorHazards } from "./judgeSupply.ts";
import { type Player, playRuns } from "./playRuns.ts";
import type { CheckResult, Doubt, Hazard, ReadinessWord, RehearsalProblem, SupplyResult } from "./result.ts";
import type { Run } from "./run.ts";
import { setTable, type Table } from "./table.ts";

/** What rehearses: the program's player, the circuits that are ready, and the seed of all chance. */
export interface Bench {
  readonly player: Player;
  readonly shelf: CircuitShelf;
  readonly seed: number;
}

export interface RehearsedBuild {
  readonly build: Build;
  readonly table: Table;
  readonly runs: readonly Run[];
  readonly checks: readonly CheckResult[];
  readonly hazards: readonly Hazard[];
  readonly supply: SupplyResult;
  readonly doubts: readonly Doubt[];
  readonly problems: readonly RehearsalProblem[];
  /** With this very supply: "needs another supply" where everything passes but the supply. */
  readonly verdict: ReadinessWord;
}

/** @param bench what several builds of one lesson share. */
export function rehearseBuild(build: Build, bench: Bench): RehearsedBuild {
  const { player, shelf, seed } = bench;
  const table = setTable(build, shelf);
  const runs = playRuns(build.lesson, table, player, seed);
  const checks = combineChecks(build, runs, build.lesson.checks);
  const holding = runs.find((r) => r.scenario.supply === "holds") ?? runs[0]!;
  const heats = findHeat(build, fedSegments(holding));
  const supply = judgeSupply(build, holding, shelf, heats);
  const hazards = [...findHazards(build, table.pins, runs), ...regulatorHazards(supply), ...hotHazards(heats)];
  const problems = problemsOf(build, table, runs);
  const verdict = verdictOf(checks, hazards, supply, problems);
  return { build, table, runs, checks, hazards, supply, doubts: findDoubts(build, runs), problems, verdict };
}

function verdictOf(
  checks: readonly CheckResult[],
  hazards: readonly Hazard[],
  supply: SupplyResult,
  problems: readonly RehearsalProblem[],
): ReadinessWord {
  if (hazards.some((h) => h.severity === "unsafe")) return "unsafe";
  if (problems.some((p) => saysNothing.has(p.code))) return "not rehearsed yet";
  if (problems.length > 0 || checks.some((c) => !c.passed)) return "fails its rehearsal";
  return supply.fits === "fits" ? "ready" : "needs another supply";
}

/** Problems after which nothing that was seen can be relied on. */
const saysNothing: ReadonlySet<RehearsalProblem["code"]> = new Set([
  "rehearsal.partNotModelled",
  "rehearsal.memoryNotFollowed",
  "rehearsal.circuitHasNoAnswer",
]);

function problemsOf(build: Build, table: Table, runs: readonly Run[]): readonly RehearsalProblem[] {
  const problems: RehearsalProblem[] = partsNotModelled(build).map((part) => ({
    code: "rehearsal.partNotModelled",
    part: part.name,
    kind: part.kind.id,
  }));
  const failure = [...table.points()].find((p) => p.failure !== null)?.failure;
  if (failure) problems.push({ code: "rehearsal.circuitHasNoAnswer", reason: failure });
  const lost = runs.find((run) => run.lost !== null)?.lost;
  if (lost) problems.push({ code: "rehearsal.memoryNotFollowed", reason: lost });
  const ended = new Map(runs.map((run) => [endOfProgram(run.outcome)?.code, endOfProgram(run.outcome)]));
  return [...problems, ...[...ended.values()].flatMap((p) => (p ? [p] : []))];
}

function endOfProgram(outcome: RunOutcome): RehearsalProblem | null {
  if (outcome.status === "hangs") return { code: "rehearsal.programHangs", line: outcome.line, ms: outcome.micros / 1000 };
  if (outcome.status === "broken")
    return {
      code: "rehearsal.programBreaks",
      line: outcome.line,
      ms: outcome.micros / 1000,
      reason: outcome.code,
      values: outcome.values,
    };
  return null;
}
