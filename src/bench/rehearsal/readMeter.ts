// What a multimeter shows at a correct build: volts of each net against GND at the moments of the checks.
//
// A meter is slow: of fast switching it shows the mean. A net that nothing holds has no reading. A moment that shows nothing new
// is left out: nobody measures the same state twice.
// Does not know: which reading matters to whom.
import type { Check } from "../lesson/index.ts";
import type { Build } from "./build.ts";
import { stretch } from "./judgeCheck.ts";
import { toMs } from "./observe.ts";
import type { MeterReading } from "./result.ts";
import { figureAt, type Run, segmentAt } from "./run.ts";
import { ground } from "./wireUp.ts";

/** @returns readings in the order of time, then of the lesson's nets; each net is measured at its first leg that is not the board's. */
export function readMeter(build: Build, run: Run, checks: readonly Check[]): readonly MeterReading[] {
  const moments = [...new Set(checks.map(momentOf))].sort((a, b) => a - b);
  const readings: MeterReading[] = [];
  const known = new Set<string>();
  for (const moment of moments) {
    const segment = segmentAt(run, moment);
    if (!segment) continue;
    const { scene } = segment;
    const now = [...build.wiring.nodes].flatMap(([node, legs]): MeterReading[] => {
      const at = legs.find((l) => l.part !== "board") ?? legs[0];
      if (node === ground || legs.length < 2 || !at || scene.phases.some((p) => p.point.floating.has(node))) return [];
      const volts = figureAt(segment, moment, (p) => p.volts(node));
      return [{ ms: toMs(moment), at, volts: Number(volts.toFixed(4)) }];
    });
    const shown = now.map((r) => r.volts.toFixed(1)).join();
    if (!known.has(shown)) readings.push(...now);
    known.add(shown);
  }
  return readings;
}

/** When a person would measure for a check: at its moment, at the end of a wait, in the middle of a stretch. */
function momentOf(check: Check): number {
  const [from, to] = stretch(check.when);
  if (check.when.kind === "within") return to;
  return check.when.kind === "throughout" ? (from + to) / 2 : from;
}
