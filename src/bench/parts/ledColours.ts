// Light-emitting diodes by colour: the parameters of their curve, and from which current on a person sees what.
//
// I = IS·(exp((V − I·RS)/(N·VT)) − 1), VT = 25.865 mV at 27 °C. RS was chosen and N, IS follow from two points: the forward
// voltage at 2 mA, read off typical curves (from memory), and at 20 mA, typical of the data sheets named.
// Does not know: legs, how many of them are in one case.
import type { Diode } from "../circuit/index.ts";
import type { Limit, Noticing, Sourced } from "./partKind.ts";

export interface LedColour {
  readonly saturationAmps: number;
  readonly emission: number;
  readonly seriesOhms: number;
  /** V at 2 mA and at 20 mA that the three were fitted to. */
  readonly volts: Sourced<readonly [at2mA: number, at20mA: number]>;
  /** V at 20 mA: the least and the most that the data sheets allow. */
  readonly spreadVolts: Sourced<readonly [least: number, most: number]>;
  /** A that the data sheets forbid to exceed; where they differ, the least. */
  readonly mostAmps: Sourced<number>;
  readonly reverseVolts: Sourced<number>;
}

const of = (
  [seriesOhms, emission, saturationAmps]: readonly [number, number, number],
  volts: readonly [number, number],
  voltsSource: string,
  mostAmps: number,
  mostSource: string,
  spread: readonly [least: number, most: number],
  reverseVolts = 5,
): LedColour => ({
  seriesOhms,
  emission,
  saturationAmps,
  volts: { value: volts, source: `at 2 mA from memory; at 20 mA ${voltsSource}` },
  spreadVolts: { value: spread, source: voltsSource },
  mostAmps: { value: mostAmps, source: mostSource },
  reverseVolts: { value: reverseVolts, source: mostSource },
});

const nitride = "data sheet ASMT-QTB4, page 3: 2.80–3.80 V";
const catalogue5mm = "catalogue table of 5 mm LEDs";

/** By colour, and "green emerald" for the blue-green kind. */
export const ledColours: Readonly<Record<string, LedColour>> = {
  red: of([4, 3.828, 7.585e-11], [1.7, 2.0], "data sheet ASMT-QTB4, page 3: 1.80–2.40 V", 0.03, catalogue5mm, [1.8, 2.4]),
  orange: of([5, 3.526, 5.987e-12], [1.8, 2.1], "as yellow, from memory", 0.03, "from memory", [1.8, 2.5]),
  yellow: of(
    [5, 3.526, 5.987e-12],
    [1.8, 2.1],
    `${catalogue5mm}: at most 2.5 V; at least 1.8 V from memory`,
    0.03,
    catalogue5mm,
    [1.8, 2.5],
  ),
  green: of(
    [5, 3.19, 3.248e-13],
    [1.87, 2.15],
    `${catalogue5mm}: 2.2 V, at most 2.5 V (GaP, 565 nm); at least 1.9 V from memory`,
    0.025,
    catalogue5mm,
    [1.9, 2.5],
  ),
  "green emerald": of(
    [12, 5.608, 2.746e-11],
    [2.65, 3.2],
    nitride,
    0.02,
    "data sheets ASMT-QTB4 and WW05A3SBQ4: 20–30 mA",
    [2.8, 3.8],
    4,
  ),
  blue: of([10, 5.373, 8.434e-12], [2.7, 3.2], nitride, 0.02, "data sheet WW05A3SBQ4: 20 mA", [2.8, 3.8]),
  white: of(
    [10, 5.373, 8.434e-12],
    [2.7, 3.2],
    "summary of white T-1 LEDs: 3.2 V; 2.8–3.6 V from memory",
    0.02,
    "from memory: 20–30 mA",
    [2.8, 3.6],
  ),
  ultraviolet: of(
    [6, 4.063, 8.993e-16],
    [3.0, 3.35],
    "question on 395 nm LEDs: 3.3 V, at most 4.0 V; at least 3.1 V from memory",
    0.02,
    "the same: 20 mA",
    [3.1, 4],
  ),
  infrared: of(
    [1.5, 2.065, 6.149e-12],
    [1.05, 1.2],
    "data sheet TSUS4300: 1.3 V, at most 1.7 V at 100 mA; at 20 mA 1.05–1.4 V from memory",
    0.1,
    "data sheet TSUS4300",
    [1.05, 1.4],
  ),
};

/** The colours that a lesson may name. */
export const ledColourWords = ["red", "orange", "yellow", "green", "blue", "white", "ultraviolet", "infrared"] as const;

/** @param type "emerald" makes a green one blue-green; it changes no other colour. */
export function ledColour(colour: string, type = "standard"): LedColour {
  return ledColours[type === "emerald" && colour === "green" ? "green emerald" : colour] ?? ledColours.red!;
}

/**
 * The diode of one LED.
 *
 * @param volts V at 20 mA of this very one, where it is not the usual one: its curve is moved along by the difference.
 */
export function ledDiode(id: string, anode: string, cathode: string, colour: LedColour, volts?: number | string): Diode {
  const { emission, seriesOhms } = colour;
  const more = typeof volts === "number" ? volts - colour.volts.value[1] : 0;
  const saturationAmps = more === 0 ? colour.saturationAmps : colour.saturationAmps * Math.exp(-more / (emission * thermalVolts));
  return { kind: "diode", id, anode, cathode, saturationAmps, emission, seriesOhms };
}

/** V: kT/q at 27 °C. */
const thermalVolts = 0.025864917;

/** How far LEDs of one colour differ: V at 20 mA. */
export function ledSpread({ volts, spreadVolts }: LedColour): Sourced<readonly [number, number, number]> {
  const [least, most] = spreadVolts.value;
  return { value: [least, volts.value[1], most], source: spreadVolts.source };
}

/** What is too much for one LED. */
export function ledLimits(colour: LedColour, element?: string): readonly Limit[] {
  const where = element === undefined ? {} : { element };
  return [
    {
      what: "amps",
      caution: { value: Math.min(0.02, colour.mostAmps.value), source: "test current of LED data sheets: 20 mA" },
      unsafe: colour.mostAmps,
      ...where,
    },
    // Beyond it the leakage is unspecified; 5 V reversed behind 220 Ω normally does no harm.
    { what: "reverseVolts", caution: colour.reverseVolts, ...where },
  ];
}

/**
 * What a person sees of one LED: bands for a modern diffused 5 mm part of unknown type in a room of 400 lx. A front at least
 * three times as bright as white paper beside it is lit, at least 0.3 times dim.
 */
export function ledLight(colour: LedColour, element?: string): Noticing {
  return {
    sense: "light",
    dimAmps: 0.00005,
    litAmps: 0.001,
    tooBrightAmps: Math.min(0.02, colour.mostAmps.value),
    source: "our own model: intensity proportional to current, 80 mcd at 10 mA, paper 102 cd/m² at 400 lx; factors from memory",
    ...(element === undefined ? {} : { element }),
  };
}
