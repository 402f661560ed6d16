// Scales as on an oscilloscope: round steps a division, and where the divisions lie.
//
// Does not know: what is drawn.

export interface WaveScale {
  /** V or A a division. */
  readonly step: number;
  /** Values of the lowest and the highest line, both multiples of the step. */
  readonly low: number;
  readonly high: number;
}

/** Divisions across. */
export const across = 10;
/** Divisions upwards at most. */
const mostUp = 8;

/** The least of 1, 2, 5, 10, 20 … times a power of ten that is not under a number. */
export function roundStep(atLeast: number): number {
  const power = 10 ** Math.floor(Math.log10(atLeast));
  const step = [1, 2, 5, 10].find((n) => n * power >= atLeast * (1 - 1e-9)) ?? 10;
  return Number((step * power).toPrecision(3));
}

/**
 * @param isClose only what the curve fills, as for a supply that sags a little; else zero is on it, so that a glance says how far
 * from nothing a curve is.
 * @returns a scale that holds both values.
 */
export function waveScale(least: number, most: number, isClose = false): WaveScale {
  const [bottom, top] = isClose ? [least, most] : [Math.min(0, least), Math.max(0, most)];
  // A flat line still needs a scale: one in a hundred of its height, or a thousandth of nothing.
  const span = Math.max(top - bottom, Math.abs(top) / 100, 1e-6);
  let step = roundStep(span / mostUp);
  for (;;) {
    const low = Math.floor(bottom / step + 1e-6);
    const high = Math.max(low + 1, Math.ceil(top / step - 1e-6));
    if (high - low <= mostUp) return { step, low: clean(low * step), high: clean(high * step) };
    step = roundStep(step * 1.5);
  }
}

/** The values of the lines, the lowest first. */
export function scaleLines({ step, low, high }: WaveScale): readonly number[] {
  return Array.from({ length: Math.round((high - low) / step) + 1 }, (_, n) => clean(low + n * step));
}

function clean(value: number): number {
  return Number(value.toPrecision(9));
}
