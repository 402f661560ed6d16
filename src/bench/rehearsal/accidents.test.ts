// Whatever a beginner wires, a rehearsal answers: never an exception, never NaN, always a verdict.
//
// Lessons of ours with legs moved to other nets, nets lost and nets joined, by chance with fixed seeds. What must hold: figures
// are finite, currents do not come from nowhere, undetermined checks name what they hang on, and the same seed says the same.
import { expect, test } from "vitest";
import { sample } from "../../../test/sample.ts";
import { type Random, seededRandom } from "../../base/index.ts";
import type { LegRef, Lesson, Net } from "../lesson/index.ts";
import { ourLesson } from "./lesson.fixture.ts";
import { rehearseOnce } from "./rehearseOnce.ts";
import { verdicts } from "./result.ts";

/** A lesson miswired in one to three places. */
function miswired(lesson: Lesson, random: Random): Lesson {
  let nets: { legs: LegRef[]; place: Net["place"] }[] = lesson.nets.map((n) => ({ legs: [...n.legs], place: n.place }));
  const spare: LegRef[] = [..."0123456789"].map((i) => ({ part: "board", leg: `D${i}` }));
  const pick = <T>(things: readonly T[]) => things[random.int(0, things.length - 1)] as T;
  for (let i = random.int(1, 3); i > 0; i -= 1) {
    const from = pick(nets);
    const leg = pick(from.legs);
    const kind = random.int(0, 4);
    if (kind === 0) from.legs = from.legs.filter((l) => l !== leg);
    else if (kind === 1) {
      from.legs = from.legs.filter((l) => l !== leg);
      pick(nets).legs.push(leg);
    } else if (kind === 2) from.legs.push(...pick(nets).legs);
    else if (kind === 3) from.legs.push(pick(spare));
    else nets = nets.filter((n) => n !== from);
    nets = nets.filter((n) => n.legs.length > 0);
    if (nets.length === 0) break;
  }
  return { ...lesson, nets };
}

for (const id of ["lighthouse", "signal-lamp", "quay-lamp-at-dusk"])
  test(`${id}, miswired by chance`, () => {
    const lesson = ourLesson(id);
    for (let seed = 1; seed <= sample(25, 1000); seed += 1) {
      const wrong = miswired(lesson, seededRandom(seed, id));
      const once = rehearseOnce(wrong);
      const where = `seed ${seed}`;
      expect(verdicts, where).toContain(once.verdict);
      expect(JSON.stringify(once), where).not.toMatch(/null,"(amps|peakAmps)|NaN|Infinity/);
      for (const figure of [once.supply?.amps, once.supply?.peakAmps, once.supply?.leastVolts])
        expect(Number.isFinite(figure), where).toBe(true);
      expect(once.supply!.amps, where).toBeLessThanOrEqual(once.supply!.peakAmps + 1e-9);
      for (const check of once.checks) expect(check.passed && check.undetermined, where).toBe(false);
      for (const check of once.checks.filter((c) => c.undetermined)) expect(check.hangsOn.length, where).toBeGreaterThan(0);
      for (const hazard of once.hazards) expect(hazard.value, `${where} ${hazard.code}`).not.toBeNaN();
      if (once.verdict === "ready")
        expect(
          once.checks.every((c) => c.passed),
          where,
        ).toBe(true);
      if (seed <= 3) expect(JSON.stringify(rehearseOnce(wrong)), where).toBe(JSON.stringify(once));
    }
  });
