// What nobody can foresee in a lesson, told once for each place: inputs that float, voltages in between, supplies beyond what they
// promise, grounds that are not joined.
//
// It is told even where no check hangs on it: on another table, or under a hand, it shows.
// Does not know: what the program makes of a reading.
import type { Build } from "./build.ts";
import type { Doubt } from "./result.ts";
import type { Run } from "./run.ts";
import { ground } from "./wireUp.ts";

export function findDoubts(build: Build, runs: readonly Run[]): readonly Doubt[] {
  const first = new Map<string, Doubt>();
  for (const doubt of [...groundsApart(build), ...runs.flatMap((run) => run.doubts ?? [])]) {
    const key = `${doubt.code} ${doubt.place}`;
    const known = first.get(key);
    if (!known || doubt.ms < known.ms) first.set(key, doubt);
  }
  return [...first.values()].sort((a, b) => a.ms - b.ms || a.code.localeCompare(b.code) || a.place.localeCompare(b.place));
}

/** Supplies of the lesson that no wire, and no other supply, joins to the board's GND. Current needs a way back. */
function groundsApart(build: Build): readonly Doubt[] {
  const supplies = [...build.parts.values()].filter((part) => part.kind.supply);
  const joined = new Set([ground, build.supply.plus, build.supply.minus, build.wiring.node("board", "5V")]);
  const ends = (name: string) => [build.wiring.node(name, "plus"), build.wiring.node(name, "minus")];
  // Cells in a row: each that is found joins its other end.
  for (let found = true; found; ) {
    found = false;
    for (const { name } of supplies) {
      const [plus = "", minus = ""] = ends(name);
      if (joined.has(plus) === joined.has(minus)) continue;
      joined.add(plus).add(minus);
      found = true;
    }
  }
  return supplies
    .filter(({ name }) => ends(name).every((node) => !joined.has(node)))
    .map(({ name }) => ({
      code: "grounds-apart",
      place: name,
      value: null,
      least: null,
      most: null,
      unit: null,
      steps: null,
      ms: 0,
      source: "Kirchhoff: current needs a way back",
    }));
}
