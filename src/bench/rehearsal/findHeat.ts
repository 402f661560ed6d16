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
  const timeline = timelineOf(fed);
  const heats = [...build.parts.values()].flatMap((part): Heat[] => {
    const warming = part.kind.warming?.(part.values);
    if (!warming) return [];
    const { value: watts, at } = lastingMean(timeline, (point) => wattsOf(part, point));
    const celsius = room + warming.kelvinPerWatt.value * watts;
    const touch = touchClass(celsius, warming.surface);
    return [{ part: part.name, celsius, touch, surface: warming.surface, ms: Math.round(at * 1000) }];
  });
  if (build.supply.facts.into === "VIN") heats.push(regulatorCase(build, timeline));
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

function regulatorCase(build: Build, timeline: Timeline): Heat {
  const { kelvinPerWatt, caseKelvinPerWatt } = boardFacts.regulator;
  const { value: watts, at } = lastingMean(timeline, (point) => regulatorWatts(build, point));
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

/** The run as it is summed over: when each segment ends and which of the different scenes it shows. Gaps count as nothing. */
export interface Timeline {
  readonly from: Float64Array;
  readonly to: Float64Array;
  readonly shows: Uint32Array;
  readonly scenes: readonly Scene[];
}

/** Made once for all figures of a run. */
export function timelineOf(segments: readonly Segment[]): Timeline {
  const numbers = new Map<string, number>();
  const scenes: Scene[] = [];
  return {
    from: Float64Array.from(segments, (s) => s.from),
    to: Float64Array.from(segments, (s) => s.to),
    shows: Uint32Array.from(segments, ({ scene }) => {
      const key = sceneKeyOf(scene);
      const number = numbers.get(key) ?? scenes.push(scene) - 1;
      numbers.set(key, number);
      return number;
    }),
    scenes,
  };
}

/**
 * The mean of a figure over the worst second, or over all of a shorter run.
 * @returns the mean, and the moment in s at which that second begins.
 */
export function lastingMean(
  { from, to, shows, scenes }: Timeline,
  figure: (point: Point) => number,
): { readonly value: number; readonly at: number } {
  const figures = scenes.map((scene) => meanOf(scene, figure));
  const count = from.length;
  /** The figure summed over all time before each segment. */
  const sums = new Float64Array(count + 1);
  let whole = 0;
  for (let i = 0; i < count; i += 1) {
    whole += to[i]! - from[i]!;
    sums[i + 1] = sums[i]! + figures[shows[i]!]! * (to[i]! - from[i]!);
  }
  if (count === 0 || whole <= 0) return { value: 0, at: 0 };
  const window = Math.min(lastingSeconds, whole);
  /** The sum before a moment in or after segment i. */
  const sumAt = (i: number, moment: number) =>
    i < 0 ? 0 : sums[i]! + figures[shows[i]!]! * (Math.min(to[i]!, moment) - from[i]!);
  let worst = { value: sums[count]! / whole, at: from[0]! };
  const offer = (sum: number, at: number) => {
    if (sum / window > worst.value) worst = { value: sum / window, at: Math.max(0, at) };
  };
  // A mean over a window is most where the window begins or ends with a change.
  let [ahead, behind] = [0, -1];
  for (let i = 0; i < count; i += 1) {
    const [begin, end] = [from[i]!, to[i]!];
    while (ahead + 1 < count && from[ahead + 1]! <= begin + window) ahead += 1;
    offer(sumAt(ahead, begin + window) - sums[i]!, begin);
    while (behind + 1 < count && from[behind + 1]! <= end - window) behind += 1;
    offer(sums[i + 1]! - sumAt(behind, end - window), end - window);
  }
  return worst;
}
