// Runs a build's program against its circuit, as often as its doubts ask for.
//
// First everything undetermined reads low and the supply holds. If an input was undetermined, the run is repeated with it high
// and noisy; if the supply was asked for more than it promises, with a supply that gives way. Whatever differs between those
// runs is what nobody can foresee.
// Does not know: checks, how C++ is run (it is handed a player).
import type { Lesson } from "../lesson/index.ts";
import type { BoardPort, Microseconds, RunOutcome } from "../program/index.ts";
import { type FollowedCircuit, followCircuit } from "./followCircuit.ts";
import { needsFollowing } from "./needsFollowing.ts";
import { playWorld } from "./playWorld.ts";
import type { Run, Scenario } from "./run.ts";
import type { Table } from "./table.ts";

/** Runs the program from reset until it stops, resets or the time is over. */
export type Player = (port: BoardPort, until: Microseconds, seed: number) => RunOutcome;

/** s after the last stimulus or check at which a rehearsal ends. */
const afterwards = 0.2;

/** @returns when the rehearsal of a lesson is over, s. */
export function endOf(lesson: Lesson): number {
  const moments = [
    ...lesson.stimuli.map((s) => s.at),
    ...lesson.checks.map(({ when }) => (when.kind === "at" ? when.at : when.kind === "within" ? when.at + when.within : when.to)),
  ];
  return Math.max(1, ...moments) + afterwards;
}

/**
 * @returns at least one run; the first is the one in which doubts read low and the supply holds. Where what the circuit remembers
 * matters it was followed in time.
 */
export function playRuns(lesson: Lesson, table: Table, player: Player, seed: number): readonly Run[] {
  const atRest = playAll(lesson, table, player, seed, false);
  return needsFollowing(table, atRest) ? playAll(lesson, table, player, seed, true) : atRest;
}

function playAll(lesson: Lesson, table: Table, player: Player, seed: number, isFollowed: boolean): readonly Run[] {
  const play = (scenario: Scenario) => {
    const circuit = isFollowed ? followCircuit(table) : null;
    return playRunUntil(lesson, table, player, scenario, endOf(lesson), seed, circuit);
  };
  const first = play({ inputs: "low", supply: "holds" });
  const runs = [first];
  if (first.doubtfulNets.length > 0)
    runs.push(play({ inputs: "high", supply: "holds" }), play({ inputs: "noisy", supply: "holds" }));
  // The supply may give way only in the run that an undetermined input leads to.
  for (const run of [...runs]) if (run.doubtfulSupply) runs.push(play({ inputs: run.scenario.inputs, supply: "gives way" }));
  return runs;
}

/** @param end s at which the run is over. @param circuit where the circuit is followed in time. */
export function playRunUntil(
  lesson: Lesson,
  table: Table,
  player: Player,
  scenario: Scenario,
  end: number,
  seed: number,
  circuit: FollowedCircuit | null = null,
): Run {
  const world = playWorld(lesson, table, scenario, end, seed, circuit);
  let from = 0;
  for (;;) {
    const outcome = player(world.port(from), (end - from) * 1e6, seed);
    const again = outcome.status === "stopped" ? world.startsAgainAt() : null;
    if (again === null) return { ...world.history(), outcome };
    from = again;
  }
}
