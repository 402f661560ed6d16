// What a rehearsal found, as data: what a person would see, which checks passed, what is stressed, what carries it.
//
// Does not know: how it was found, any class.
import type { Expectation, LegRef, When } from "../lesson/index.ts";

/** Readiness in words, worst first (the order is the meaning). */
export const verdicts = [
  "unsafe",
  "fails its rehearsal",
  "needs another supply",
  "short of parts",
  "not rehearsed yet",
  "ready",
] as const;
export type ReadinessWord = (typeof verdicts)[number];

/** The worst of several verdicts; "ready" of none. */
export function worstVerdict(words: readonly ReadinessWord[]): ReadinessWord {
  return verdicts[Math.min(verdicts.length - 1, ...words.map((w) => verdicts.indexOf(w)))] ?? "ready";
}

/** From this moment on a person notices this, until the next observation of the same part. */
export interface Observation {
  readonly ms: number;
  /** Part name, "board" or "text". */
  readonly part: string;
  /** A code: dark, dim, lit, too bright, blinking, silent, sounding, 90 degrees, running, resets, undetermined … */
  readonly seen: string;
  /** Figures that belong to it: hertz, duty, degrees, amps, text. */
  readonly figures: Readonly<Record<string, number | string>>;
}

export interface CheckResult {
  readonly ms: number;
  readonly passed: boolean;
  /** Undetermined is an outcome of its own and never passes. `hangsOn` names the nets or parts that nobody can foresee. */
  readonly undetermined: boolean;
  readonly hangsOn: readonly string[];
  readonly when: When;
  readonly expected: Expectation;
  readonly seen: string;
  readonly figures: Readonly<Record<string, number | string>>;
  readonly line: number;
}

export interface Hazard {
  /** pin-overcurrent, port-group-overcurrent, chip-overcurrent, led-overcurrent, resistor-overload, short, pins-fight, usb-overcurrent … */
  readonly code: string;
  readonly severity: "caution" | "unsafe";
  /** Part, pin or supply. */
  readonly part: string;
  readonly value: number;
  readonly limit: number;
  readonly unit: "A" | "W" | "V" | "°C";
  readonly ms: number;
  readonly source: string;
}

export interface SupplyResult {
  /** Key of the item: "usb-port 500mA", "power-bank", "adapter 1A", "battery-9v". */
  readonly supply: string;
  readonly fits: "fits" | "does not fit" | "undetermined";
  /** Codes why not: over-current, sags, too-high, switches-itself-off, regulator-hot, empties-before-end. */
  readonly why: readonly string[];
  readonly averageAmps: number;
  readonly peakAmps: number;
  readonly leastVolts: number;
  /** Hours until empty; null for what does not empty. */
  readonly hours: number | null;
}

/** Meter readings that a correct build shows: V of a leg against GND at a moment. */
export interface MeterReading {
  readonly ms: number;
  readonly at: LegRef;
  readonly volts: number;
}

/** One other way to build it: a value from a kit or from `may-be`, a corner of the tolerances, another supply. */
export interface VariantResult {
  readonly what:
    | { readonly kind: "nominal" }
    | {
        readonly kind: "value";
        readonly part: string;
        readonly parameter: string;
        readonly value: number | string;
        readonly item: string;
      }
    | { readonly kind: "corner"; readonly corner: string }
    | { readonly kind: "supply"; readonly supply: string };
  readonly verdict: ReadinessWord;
  readonly failedChecks: readonly number[];
  readonly hazards: readonly Hazard[];
}

export interface RehearsalResult {
  readonly lesson: string;
  readonly verdict: ReadinessWord;
  readonly observations: readonly Observation[];
  readonly checks: readonly CheckResult[];
  readonly hazards: readonly Hazard[];
  readonly supplies: readonly SupplyResult[];
  readonly readings: readonly MeterReading[];
  readonly variants: readonly VariantResult[];
  /** How far a part's value may go before a check fails: part, parameter, share down and up (null: not found within ×/÷ 10). */
  readonly margins: readonly {
    readonly part: string;
    readonly parameter: string;
    readonly down: number | null;
    readonly up: number | null;
  }[];
  /** Problems that kept it from being rehearsed at all (program does not compile, circuit has no answer). */
  readonly problems: readonly { readonly code: string; readonly line?: number; readonly [name: string]: unknown }[];
}
