// How warm each part gets: room plus what it turns into heat times its thermal resistance, as if it went on for ever.
//
// Heat is a matter of minutes and a rehearsal of seconds. What goes on for a second of the rehearsal may go on for a lesson (a
// held key, a fan that turns), so the worst second counts, and the mean of the whole where that is more. Starts and pulses are
// averaged away. The board's regulator counts with its case; its junction is told with the supply.
// Does not know: neighbours that warm each other, fans, how long a part takes to warm up.
import { boardFacts } from "../parts/index.ts";
import type { Build, BuiltPart } from "./build.ts";
import type { Hazard, HotPart } from "./result.ts";
import { meanOf, type Scene, type Segment, sceneKeyOf } from "./run.ts";
import type { Point } from "./table.ts";
import { touchClass, touchLimits } from "./touch.ts";

/** s that a load has to last in the rehearsal to be taken as one that may last in class. Our choice. */
export const lastingSeconds = 1;

/** A part with its surface: a hot part, and whether it is plastic or metal. */
export interface Heat extends HotPart {
  readonly surface: keyof typeof touchLimits;
  /** The first moment of the worst second. */
  readonly ms: number;
}

/** @param fed the segments in which the board has power. @returns every part that warms up, the hottest first. */
export function findHeat(build: Build, fed: readonly Segment[]): readonly Heat[] {
  const room = boardFacts.roomCelsius.value;
  const heats = [...build.parts.values()].flatMap((part): Heat[] => {
    const warming = part.kind.warming?.(part.values);
    if (!warming) return [];
    const { value: watts, at } = lastingMean(fed, (point) => wattsOf(part, point));
    const celsius = room + warming.kelvinPerWatt.value * watts;
    const touch = touchClass(celsius, warming.surface);
    return [{ part: part.name, celsius, touch, surface: warming.surface, ms: Math.round(at * 1000) }];
  });
  if (build.supply.facts.into === "VIN") heats.push(regulatorCase(build, fed));
  return heats.sort((a, b) => b.celsius - a.celsius);
}

/** What is too hot to touch. */
export function hotHazards(heats: readonly Heat[]): readonly Hazard[] {
  return heats.flatMap(({ part, celsius, surface, ms }): Hazard[] => {
    const { hot, burns } = touchLimits[surface];
    if (celsius <= hot.value) return [];
    const severity = celsius > burns.value ? "unsafe" : "caution";
    const limit = severity === "unsafe" ? burns : hot;
    return [{ code: "hot-surface", severity, part, value: celsius, limit: limit.value, unit: "°C", ms, source: limit.source }];
  });
}

/** W that the board's regulator turns into heat. */
export function regulatorWatts(build: Build, point: Point): number {
  const input = point.volts(build.wiring.node("board", "VIN")) - boardFacts.regulator.diodeVolts.value;
  return Math.max(0, input - point.rail) * point.supplyAmps;
}

function regulatorCase(build: Build, fed: readonly Segment[]): Heat {
  const { kelvinPerWatt, caseKelvinPerWatt } = boardFacts.regulator;
  const { value: watts, at } = lastingMean(fed, (point) => regulatorWatts(build, point));
  const celsius = boardFacts.roomCelsius.value + (kelvinPerWatt.value - caseKelvinPerWatt.value) * watts;
  return { part: "board", celsius, touch: touchClass(celsius, "plastic"), surface: "plastic", ms: Math.round(at * 1000) };
}

/** W of all elements of a part: its own, those inside it, and what it draws. */
function wattsOf(part: BuiltPart, point: Point): number {
  let sum = 0;
  for (const id of point.elements.keys())
    if (id === part.name || id.startsWith(`${part.name}.`)) sum += Math.max(0, point.watts(id));
  return sum;
}

/**
 * The mean of a figure over the worst second, or over all of a shorter run.
 * @returns the mean, and the moment in s at which that second begins.
 */
export function lastingMean(
  segments: readonly Segment[],
  figure: (point: Point) => number,
): { readonly value: number; readonly at: number } {
  const known = new Map<string, number>();
  const inScene = (scene: Scene) => {
    const key = sceneKeyOf(scene);
    const value = known.get(key) ?? meanOf(scene, figure);
    known.set(key, value);
    return value;
  };
  const parts = segments.map((s) => ({ from: s.from, to: s.to, value: inScene(s.scene) }));
  const whole = parts.reduce((sum, p) => sum + (p.to - p.from), 0);
  const first = parts[0];
  if (!first || whole <= 0) return { value: 0, at: 0 };
  const window = Math.min(lastingSeconds, whole);
  let worst = { value: parts.reduce((sum, p) => sum + p.value * (p.to - p.from), 0) / whole, at: first.from };
  // A mean over a window is most where the window begins or ends with a change.
  for (const [i, { from }] of parts.entries()) {
    const mean = meanWithin(parts, i, from, from + window);
    if (mean > worst.value) worst = { value: mean, at: from };
  }
  for (const [i, { to }] of parts.entries()) {
    let start = i;
    while (start > 0 && (parts[start]?.from ?? 0) > to - window) start -= 1;
    const mean = meanWithin(parts, start, to - window, to);
    if (mean > worst.value) worst = { value: mean, at: Math.max(0, to - window) };
  }
  return worst;
}

/** Time without power counts as nothing. */
function meanWithin(
  parts: readonly { readonly from: number; readonly to: number; readonly value: number }[],
  start: number,
  from: number,
  to: number,
): number {
  let sum = 0;
  for (let i = start; i < parts.length; i += 1) {
    const part = parts[i];
    if (!part || part.from >= to) break;
    sum += part.value * Math.max(0, Math.min(to, part.to) - Math.max(from, part.from));
  }
  return sum / (to - from);
}
