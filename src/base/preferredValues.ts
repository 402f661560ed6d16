// Preferred values of resistors and capacitors: the series E6, E12 and E24 of IEC 60063.
//
// The series are not the rounded powers of 10^(1/24): 27, 30, 33, 36, 39, 43, 47 and 82 are older habits that the standard
// kept, so they stand here as a table. (A copy on the net prints 4.2 in place of 4.3.)
// Does not know: which values a shop sells.

export type Series = "E6" | "E12" | "E24";

/** Two digits of each value of a decade, rising. Source: IEC 60063:2015, table 1. */
export const preferredDigits: Readonly<Record<Series, readonly number[]>> = {
  E6: [10, 15, 22, 33, 47, 68],
  E12: [10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82],
  E24: [10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91],
};

/** Digits times a power of ten by way of text, so that 4.7 is the double nearest to 4.7. */
const scaled = (digits: number, power: number) => Number(`${digits}e${power}`);

/** @returns all values of a series from `least` to `most`, both included, rising. Both must be positive and finite. */
export function preferredValues(series: Series, least: number, most: number): number[] {
  const values: number[] = [];
  if (!(least > 0) || !Number.isFinite(most)) return values;
  for (let power = Math.floor(Math.log10(least)) - 2; scaled(10, power) <= most; power += 1)
    for (const digits of preferredDigits[series]) {
      const value = scaled(digits, power);
      if (value >= least * (1 - 1e-9) && value <= most * (1 + 1e-9)) values.push(value);
    }
  return values;
}

/**
 * @returns the value of a series nearest to `value` by ratio (220 Ω differs from 270 Ω as much as 22 kΩ from 27 kΩ), the smaller
 * of two equally near; null if `value` is not positive and finite.
 */
export function nearestPreferred(series: Series, value: number): number | null {
  if (!(value > 0) || !Number.isFinite(value)) return null;
  let best: number | null = null;
  for (const candidate of preferredValues(series, value / 2, value * 2))
    if (best === null || Math.abs(Math.log(candidate / value)) < Math.abs(Math.log(best / value)) - 1e-12) best = candidate;
  return best;
}

/** @returns whether a value stands in the series. */
export function isPreferred(series: Series, value: number): boolean {
  const nearest = nearestPreferred(series, value);
  return nearest !== null && Math.abs(nearest / value - 1) < 1e-6;
}
