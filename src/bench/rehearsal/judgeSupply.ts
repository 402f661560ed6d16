// Whether a supply carries the lesson: what is drawn from it, how far it sags, how long it lasts, and what nobody can foresee.
//
// A port promises its rated current and no more: a peak above it is undetermined, for no standard says where real ports give way
// (USB 2.0, section 7.2.1.2.1, only wants them to bear short transients and to stop by 5 A, from memory); to draw more for a
// second is not to be planned on. The board's fuse holds below its hold current and trips above its trip current.
// Does not know: checks, other supplies.
import { boardFacts } from "../parts/index.ts";
import type { Build } from "./build.ts";
import type { CircuitShelf } from "./circuitShelf.ts";
import { freshVolts } from "./findHazards.ts";
import { type Heat, lastingMean, lastingSeconds, regulatorWatts, timelineOf } from "./findHeat.ts";
import { longestCable } from "./longestCable.ts";
import type { Hazard, SupplyReason, SupplyResult } from "./result.ts";
import { meanOf, type Run, type Segment } from "./run.ts";
import type { Point } from "./table.ts";
import { touchLimits } from "./touch.ts";
import { usableShare } from "./usableShare.ts";

type Outcome = "fits" | "undetermined" | "does not fit";

/**
 * @param run one in which the supply holds: what it would have to give. @param shelf the circuits that are ready.
 * @param heats what gets warm in that run, the hottest first.
 */
export function judgeSupply(build: Build, run: Run, shelf: CircuitShelf, heats: readonly Heat[]): SupplyResult {
  const { facts, item } = build.supply;
  const fed = fedSegments(run);
  const averageAmps = timeMean(fed, (p) => p.supplyAmps);
  const peakAmps = extreme(fed, Math.max, (p) => p.supplyAmps);
  const leastVolts = extreme(fed, Math.min, (p) => p.rail);
  const hours = facts.ampHours && averageAmps > 0 ? (usableShare(build, fed, shelf) * facts.ampHours.value) / averageAmps : null;
  const regulatorCelsius = facts.into === "VIN" ? heat(build, fed) : null;
  const lowest = fed.find((s) => s.scene.phases.some((p) => p.point.rail <= leastVolts));

  const hottest = heats[0];
  const findings: [reason: SupplyReason, outcome: Outcome][] = [
    ["over-current", tooMuch(build, fed, peakAmps)],
    ["sags", tooLow(leastVolts)],
    ["too-high", railTooHigh(build, fed) || vinTooHigh(build, fed) ? "does not fit" : "fits"],
    ["switches-itself-off", tooLittle(build, fed, averageAmps)],
    ["regulator-hot", tooHot(regulatorCelsius, heats)],
    ["empties-before-end", hours !== null && hours < build.lesson.minutes / 60 ? "does not fit" : "fits"],
  ];
  const why = findings.filter(([, outcome]) => outcome !== "fits");
  const fits = why.some(([, o]) => o === "does not fit") ? "does not fit" : why.length > 0 ? "undetermined" : "fits";
  return {
    supply: item,
    fits,
    why: why.map(([reason]) => reason),
    amps: averageAmps,
    peakAmps,
    leastVolts,
    leastVoltsMs: Math.round((lowest?.from ?? 0) * 1000),
    hours,
    lessons: hours === null ? null : fits === "does not fit" ? 0 : Math.floor(hours / (build.lesson.minutes / 60) + 1e-9),
    regulatorCelsius,
    cableMetres: longestCable(build, fed, shelf),
    hottest: hottest ? { part: hottest.part, celsius: hottest.celsius, touch: hottest.touch } : null,
  };
}

/** The segments of a run in which the board has power. */
export function fedSegments(run: Run): readonly Segment[] {
  return run.segments.filter((s) => s.scene.on && s.to > s.from);
}

/** The regulator's heat as a hazard. */
export function regulatorHazards(result: SupplyResult): readonly Hazard[] {
  const { mostCelsius } = boardFacts.regulator;
  const value = result.regulatorCelsius;
  if (value === null || value <= mostCelsius.value) return [];
  const severity = value > absoluteCelsius ? "unsafe" : "caution";
  const limit = severity === "unsafe" ? absoluteCelsius : mostCelsius.value;
  return [{ code: "regulator-hot", severity, part: "board", value, limit, unit: "°C", ms: 0, source: mostCelsius.source }];
}

/** °C. Data sheet NCP1117: absolute maximum of the junction. */
const absoluteCelsius = 150;

function tooMuch(build: Build, fed: readonly Segment[], peakAmps: number): Outcome {
  const { facts } = build.supply;
  const limit =
    facts.into === "VIN" && !facts.limitAmps
      ? boardFacts.regulator.limitAmps.value
      : (facts.limitAmps?.value ?? Number.POSITIVE_INFINITY);
  const lasts = (least: number, figure: (p: Point) => number) =>
    longest(fed, (s) => meanOf(s.scene, figure) > least) >= lastingSeconds;
  const { holdAmps, tripAmps } = boardFacts.fuse;
  if (lasts(limit, (p) => p.supplyAmps) || lasts(tripAmps.value, (p) => p.fuseAmps)) return "does not fit";
  return peakAmps > limit || lasts(holdAmps.value, (p) => p.fuseAmps) ? "undetermined" : "fits";
}

function tooLow(leastVolts: number): Outcome {
  const { brownOutVolts, leastVoltsForClock } = boardFacts.chip;
  if (leastVolts < brownOutVolts.value) return "does not fit";
  return leastVolts < leastVoltsForClock.value ? "undetermined" : "fits";
}

function vinTooHigh(build: Build, fed: readonly Segment[]): boolean {
  if (build.supply.facts.into !== "VIN") return false;
  return extreme(fed, Math.max, (p) => p.volts(build.wiring.node("board", "VIN"))) > boardFacts.regulator.mostVolts.value;
}

/** s after which the first power banks sleep: 5–120 s, common practice, no standard. */
const firstAsleep = 5;

/** A power bank that is never asked for enough goes to sleep; one that is asked now and then, or too little for long, may. */
function tooLittle(build: Build, fed: readonly Segment[], averageAmps: number): Outcome {
  const least = build.supply.facts.offBelowAmps?.value ?? 0;
  if (fed.every((s) => meanOf(s.scene, (p) => p.supplyAmps) < least)) return least > 0 ? "does not fit" : "fits";
  const rest = longest(fed, (s) => meanOf(s.scene, (p) => p.supplyAmps) < least);
  return averageAmps < least || rest >= firstAsleep ? "undetermined" : "fits";
}

/** Its junction, which gives way, and its case, which burns a finger. */
function tooHot(celsius: number | null, heats: readonly Heat[]): Outcome {
  const surface = heats.find((h) => h.part === "board");
  if (surface && surface.celsius > touchLimits[surface.surface].burns.value) return "does not fit";
  if (celsius === null || celsius <= boardFacts.regulator.mostCelsius.value) return "fits";
  return celsius > absoluteCelsius ? "does not fit" : "undetermined";
}

/** °C of the regulator's junction: room + K/W · (V at its input − V at its output) · A, in its worst second. */
function heat(build: Build, fed: readonly Segment[]): number {
  const { value: watts } = lastingMean(timelineOf(fed), (p) => regulatorWatts(build, p));
  return boardFacts.roomCelsius.value + boardFacts.regulator.kelvinPerWatt.value * watts;
}

function timeMean(segments: readonly Segment[], figure: (p: Point) => number): number {
  let [sum, time] = [0, 0];
  for (const s of segments) {
    sum += meanOf(s.scene, figure) * (s.to - s.from);
    time += s.to - s.from;
  }
  return time > 0 ? sum / time : 0;
}

function extreme(segments: readonly Segment[], pick: (...values: number[]) => number, figure: (p: Point) => number): number {
  const values = segments.flatMap((s) => s.scene.phases.map((p) => figure(p.point)));
  return values.length > 0 ? values.reduce((a, b) => pick(a, b)) : 0;
}

/** Above 5.5 V the chip is outside its rating; fresh cells must stay below its absolute maximum. */
function railTooHigh(build: Build, fed: readonly Segment[]): boolean {
  const rail = extreme(fed, Math.max, (p) => p.rail);
  return rail > boardFacts.chip.mostVolts.value || rail + freshVolts(build.supply.facts) > boardFacts.chip.unsafeVolts.value;
}

/** s of the longest unbroken stretch for which something holds. */
function longest(segments: readonly Segment[], holds: (s: Segment) => boolean): number {
  let [best, from, to] = [0, 0, 0];
  for (const s of segments) {
    if (!holds(s)) continue;
    if (s.from !== to) from = s.from;
    to = s.to;
    best = Math.max(best, to - from);
  }
  return best;
}
