// The colour code of resistors, IEC 60062: bands to ohms and back, as words.
//
// Four bands: two digits, multiplier, tolerance. Five: three digits. Three bands are four without the last, ±20 %.
// Does not know: how a colour is called in a language, or printed; which end of a resistor is the first.

export const bandColours = [
  "black",
  "brown",
  "red",
  "orange",
  "yellow",
  "green",
  "blue",
  "violet",
  "grey",
  "white",
  "gold",
  "silver",
  "pink",
] as const;
export type BandColour = (typeof bandColours)[number];

/** Power of ten that a multiplier band stands for. Pink came with IEC 60062:2016. */
const multipliers: Readonly<Record<BandColour, number>> = {
  black: 0,
  brown: 1,
  red: 2,
  orange: 3,
  yellow: 4,
  green: 5,
  blue: 6,
  violet: 7,
  grey: 8,
  white: 9,
  gold: -1,
  silver: -2,
  pink: -3,
};

/** Share that a tolerance band stands for. Older lists give grey ±0.05 %; the edition of 2016 has ±0.01 % (from memory). */
const tolerances: Readonly<Partial<Record<BandColour, number>>> = {
  brown: 0.01,
  red: 0.02,
  orange: 0.0005,
  yellow: 0.0002,
  green: 0.005,
  blue: 0.0025,
  violet: 0.001,
  grey: 0.0001,
  gold: 0.05,
  silver: 0.1,
};

/**
 * The bands of a resistor, from the end where reading begins.
 *
 * @param ohms positive.
 * @param tolerance share; ±5 %, ±10 % and ±20 % are marked with two digits, finer ones with three.
 * @returns colours, or none if the value cannot be marked exactly (too many digits, out of range, or a tolerance without a band).
 */
export function colourBands(ohms: number, tolerance = 0.05): BandColour[] {
  if (!(ohms > 0) || !Number.isFinite(ohms)) return [];
  const digits = tolerance >= 0.05 - 1e-9 ? 2 : 3;
  const [mantissa, exponent] = ohms.toExponential(digits - 1).split("e") as [string, string];
  if (Math.abs(Number(`${mantissa}e${exponent}`) / ohms - 1) > 1e-9) return [];
  const power = Number(exponent) - (digits - 1);
  const multiplier = bandColours.find((colour) => multipliers[colour] === power);
  const last = bandColours.find((colour) => Math.abs((tolerances[colour] ?? -1) - tolerance) < 1e-9);
  if (multiplier === undefined || (last === undefined && Math.abs(tolerance - 0.2) > 1e-9)) return [];
  const digitColours = [...mantissa.replace(".", "")].map((digit) => bandColours[Number(digit)]!);
  return [...digitColours, multiplier, ...(last === undefined ? [] : [last])];
}

export type BandOutcome =
  | { readonly status: "read"; readonly ohms: number; readonly tolerance: number }
  /** The band (from 0) that cannot stand there. */
  | { readonly status: "badBand"; readonly at: number }
  | { readonly status: "wrongCount"; readonly found: number };

/** Reads three, four or five bands; a sixth (temperature coefficient) is passed over. */
export function readBands(bands: readonly BandColour[]): BandOutcome {
  if (bands.length < 3 || bands.length > 6) return { status: "wrongCount", found: bands.length };
  const digits = bands.length >= 5 ? 3 : 2;
  let number = 0;
  for (let i = 0; i < digits; i += 1) {
    const digit = bandColours.indexOf(bands[i]!);
    if (digit < 0 || digit > 9) return { status: "badBand", at: i };
    number = number * 10 + digit;
  }
  const power = multipliers[bands[digits]!];
  if (power === undefined) return { status: "badBand", at: digits };
  const last = bands[digits + 1];
  const tolerance = last === undefined ? 0.2 : tolerances[last];
  if (tolerance === undefined) return { status: "badBand", at: digits + 1 };
  return { status: "read", ohms: Number(`${number}e${power}`), tolerance };
}
