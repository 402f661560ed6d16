// What a source does over time: SPICE's pulse, sine and points, their values, and the instants at which they bend.
//
// A bend is where a step must end: a step across it would smear the edge. At a bend with a jump (no rise time) there are two
// values, so that whoever asks says from which side.
// Does not know: sources, circuits.
// Source: ngspice 39 manual, section 4.1 (independent sources for voltage or current).

/** From `low` over `rise` to `high`, after `width` over `fall` back; again every `period`, once without one. Seconds, V or A. */
export interface Pulse {
  readonly kind: "pulse";
  readonly low: number;
  readonly high: number;
  readonly delay: number;
  readonly rise: number;
  readonly fall: number;
  readonly width: number;
  readonly period?: number;
}

/** offset + amplitude · exp(−(t − delay) · damping) · sin(2π · hertz · (t − delay)); before `delay` the offset. */
export interface Sine {
  readonly kind: "sine";
  readonly offset: number;
  readonly amplitude: number;
  readonly hertz: number;
  readonly delay?: number;
  /** 1/s. */
  readonly damping?: number;
}

/** Straight lines between [second, value], in order of time; level before the first and after the last. */
export interface Points {
  readonly kind: "points";
  readonly points: readonly (readonly [seconds: number, value: number])[];
}

export type Waveform = Pulse | Sine | Points;

/** Two instants closer than this are one: the rounding of a sum of periods, s. */
function sameInstant(seconds: number): number {
  return 1e-15 * Math.abs(seconds) + 1e-18;
}

/** @param before at a jump, the value that ends there; else the one that begins. */
export function valueAt(wave: Waveform, seconds: number, before = false): number {
  if (wave.kind === "sine") {
    const since = seconds - (wave.delay ?? 0);
    if (since <= 0) return wave.offset;
    const size = wave.amplitude * Math.exp(-since * (wave.damping ?? 0));
    return wave.offset + size * Math.sin(2 * Math.PI * wave.hertz * since);
  }
  const at = before ? seconds - sameInstant(seconds) : seconds + sameInstant(seconds);
  if (wave.kind === "points") return pointValue(wave.points, at);
  const { low, high, rise, fall, width } = wave;
  let since = at - wave.delay;
  if (since < 0) return low;
  if (wave.period !== undefined) since -= Math.floor(since / wave.period) * wave.period;
  if (since < rise) return low + ((high - low) * since) / rise;
  if (since < rise + width) return high;
  const falling = since - rise - width;
  return falling < fall ? high + ((low - high) * falling) / fall : low;
}

function pointValue(points: Points["points"], at: number): number {
  let [lastSeconds, lastValue] = points[0] as readonly [number, number];
  for (const [seconds, value] of points) {
    if (at < seconds) {
      if (seconds === lastSeconds) return value;
      return lastValue + ((value - lastValue) * (at - lastSeconds)) / (seconds - lastSeconds);
    }
    lastSeconds = seconds;
    lastValue = value;
  }
  return lastValue;
}

/** @returns the first instant after `seconds` at which the wave bends or jumps; infinite when there is none. */
export function nextBend(wave: Waveform, seconds: number): number {
  const after = seconds + sameInstant(seconds);
  if (wave.kind === "sine") return (wave.delay ?? 0) > after ? (wave.delay as number) : Number.POSITIVE_INFINITY;
  if (wave.kind === "points") return wave.points.find(([s]) => s > after)?.[0] ?? Number.POSITIVE_INFINITY;
  const { delay, rise, fall, width, period } = wave;
  const turn = period === undefined || after < delay ? 0 : Math.floor((after - delay) / period);
  for (let k = turn; k <= turn + 1; k += 1) {
    const start = delay + k * (period ?? 0);
    const end = period === undefined ? Number.POSITIVE_INFINITY : start + period;
    if (start > after) return start;
    if (start + rise > after && start + rise < end) return start + rise;
    if (start + rise + width > after && start + rise + width < end) return start + rise + width;
    if (start + rise + width + fall > after && start + rise + width + fall < end) return start + rise + width + fall;
    if (period === undefined) break;
  }
  return period === undefined ? Number.POSITIVE_INFINITY : delay + (turn + 1) * period;
}

/** s. A longer step could leap over a whole period and never see it. */
export function longestStep(wave: Waveform): number {
  return wave.kind === "sine" && wave.hertz > 0 ? 1 / (24 * wave.hertz) : Number.POSITIVE_INFINITY;
}

/** Whether the wave changes at once at some instant. */
export function jumps(wave: Waveform): boolean {
  if (wave.kind === "pulse") return wave.rise === 0 || wave.fall === 0 || breaksOff(wave);
  return wave.kind === "points" && wave.points.some(([s], k) => k > 0 && s === wave.points[k - 1]?.[0]);
}

/** Whether a pulse's period ends before it has come back. */
function breaksOff({ rise, fall, width, period }: Pulse): boolean {
  return period !== undefined && rise + width + fall > period;
}

const isCount = (value: number | undefined) => value === undefined || (value >= 0 && value <= 1e9);
const isLevel = (value: number) => Math.abs(value) <= 1e6;

/** Whether all numbers are ones that a source can have. */
export function isFitWave(wave: Waveform): boolean {
  switch (wave.kind) {
    case "sine":
      return isLevel(wave.offset) && isLevel(wave.amplitude) && [wave.hertz, wave.delay, wave.damping].every(isCount);
    case "pulse": {
      const { low, high, delay, rise, fall, width, period } = wave;
      return (
        isLevel(low) &&
        isLevel(high) &&
        [delay, rise, fall, width].every(isCount) &&
        (period === undefined || (period >= 1e-12 && period <= 1e9))
      );
    }
    case "points": {
      const { points } = wave;
      const ordered = points.every(
        ([s, value], k) => isCount(s) && isLevel(value) && (k === 0 || s >= (points[k - 1]?.[0] as number)),
      );
      return points.length > 0 && ordered;
    }
  }
}
