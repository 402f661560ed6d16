// How far a part's value may go before a check fails or something is unsafe: the teacher's answer to "what if we have only…?".
//
// Looked for in steps of the E6 series outwards up to ten times, then halved until the edge is known within 1 %. Steps first,
// because what works need not work everywhere in between.
// Does not know: which values can be bought.
import type { PartValues } from "../parts/index.ts";
import { type Build, type BuildChoice, makeBuild } from "./build.ts";
import type { Margin } from "./result.ts";

/** Steps a decade while walking outwards, as in E6 (IEC 60063). */
const stepsADecade = 6;
/** Share within which the edge is told. */
const edgeShare = 0.01;

/** @param works whether a build passes its checks and stresses nothing unsafely. */
export function* findMargins(
  build: Build,
  choice: BuildChoice,
  works: (build: Build) => boolean,
): Generator<string, readonly Margin[], void> {
  const margins: Margin[] = [];
  for (const part of build.parts.values())
    for (const [parameter, spec] of Object.entries(part.kind.parameters)) {
      const value = part.values[parameter];
      const { unit } = spec;
      if (!(unit === "Ω" || unit === "F" || unit === "H") || typeof value !== "number") continue;
      if (value <= 0 || !(spec.tellsApart || spec.tolerance)) continue;
      const worksAt = (share: number) => {
        const values = new Map<string, PartValues>(choice.values);
        values.set(part.name, { ...values.get(part.name), [parameter]: value * share });
        const changed = makeBuild(build.lesson, { ...choice, values }).build;
        return changed !== null && works(changed);
      };
      yield `${part.name}.${parameter}`;
      margins.push({ part: part.name, parameter, is: value, unit, down: findEdge(worksAt, -1), up: findEdge(worksAt, 1) });
    }
  return margins;
}

/** @returns the first share in that direction at which it no longer works, or null within a decade. */
function findEdge(worksAt: (share: number) => boolean, direction: 1 | -1): number | null {
  const share = (log: number) => 10 ** (direction * log);
  let good = 0;
  for (let step = 1; step <= stepsADecade; step += 1) {
    let bad = step / stepsADecade;
    if (worksAt(share(bad))) {
      good = bad;
      continue;
    }
    while (10 ** (bad - good) > 1 + edgeShare) {
      const middle = (good + bad) / 2;
      if (worksAt(share(middle))) good = middle;
      else bad = middle;
    }
    return Number(share(bad).toPrecision(3));
  }
  return null;
}
