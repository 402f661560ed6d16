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

/** Key of an item of stock, as bench/parts writes it: "resistor 220", "usb-port 500mA". */
export type ItemKey = string;

/** What a person notices, as codes; an angle is written with its figure, as lessons write it. */
export type SeenWord =
  | "dark"
  | "dim"
  | "lit"
  | "too bright"
  | "blinking"
  | "silent"
  | "sounding"
  | "moving"
  | "trembling"
  | "stopped"
  | "turning"
  | "turning back"
  | "stalled"
  | "on"
  | "off"
  | "running"
  | "resets"
  | "undetermined"
  | `${number} degrees`;

/** How loud a sound is on a team's own table in a class, the faintest first. */
export const loudnessWords = ["faint", "clear", "loud"] as const;
export type LoudnessWord = (typeof loudnessWords)[number];

/** From this moment on a person notices this, until the next observation of the same part. */
export interface Observation {
  readonly ms: number;
  /** Part name, "board" or "text". */
  readonly part: string;
  /** A `SeenWord`; for "text" the line itself, which is data and no code. */
  readonly seen: string;
  /** Figures that belong to it: hertz, duty (a share), degrees, swing (degrees that it trembles by), amps, volts; loudness, a `LoudnessWord`. */
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
  /** A `SeenWord`, the last line of text, or for volts "volts". */
  readonly seen: string;
  readonly figures: Readonly<Record<string, number | string>>;
  readonly line: number;
}

/** Every kind of stress that a rehearsal can find. */
export const hazardCodes = [
  "pin-overcurrent",
  "port-group-overcurrent",
  "chip-overcurrent",
  "pin-overvoltage",
  "pin-negative",
  "pins-fight",
  "short",
  "battery-short",
  "usb-overcurrent",
  "board-overvoltage",
  "regulator-hot",
  "led-overcurrent",
  "transistor-overcurrent",
  "part-overcurrent",
  "resistor-overload",
  "transistor-overload",
  "part-overload",
  "hot-surface",
  "reversed-electrolytic",
  "reverse-overvoltage",
  "part-overvoltage",
  "over-3.3-volts",
  "coil-without-diode",
] as const;
export type HazardCode = (typeof hazardCodes)[number];

export interface Hazard {
  readonly code: HazardCode;
  readonly severity: "caution" | "unsafe";
  /** Part, pin ("D9"), port group, "board" or the supply's item. */
  readonly part: string;
  readonly value: number;
  readonly limit: number;
  readonly unit: "A" | "W" | "V" | "°C";
  /** The first moment at which it happens. */
  readonly ms: number;
  readonly source: string;
}

/** What nobody can foresee, or what is read worse than it seems. */
export const doubtCodes = [
  "input-floats",
  "input-between",
  "input-weak",
  "source-impedance",
  "supply-over",
  "chip-between",
  "fuse-between",
  "grounds-apart",
] as const;
export type DoubtCode = (typeof doubtCodes)[number];

/** Told even where no check hangs on it. */
export interface Doubt {
  readonly code: DoubtCode;
  /** Net, supply's item, part or "board". */
  readonly place: string;
  /** The figure, and between which nobody knows; null where there is none. */
  readonly value: number | null;
  readonly least: number | null;
  readonly most: number | null;
  readonly unit: "V" | "A" | "Ω" | null;
  /** Steps of the converter that a reading may be off right after another pin's; only of `source-impedance`. */
  readonly steps: number | null;
  /** The first moment. */
  readonly ms: number;
  readonly source: string;
}

/** Why a supply does not fit, or why nobody can say. */
export const supplyReasons = [
  "over-current",
  "sags",
  "too-high",
  "switches-itself-off",
  "regulator-hot",
  "empties-before-end",
] as const;
export type SupplyReason = (typeof supplyReasons)[number];

/** What a finger makes of a surface; "hot" must not be touched. */
export const touchClasses = ["cold", "warm", "hot"] as const;
export type TouchClass = (typeof touchClasses)[number];

export interface HotPart {
  /** Part name; "board" for its regulator. */
  readonly part: string;
  /** °C of its surface in a room of 25 °C when its worst second goes on. */
  readonly celsius: number;
  readonly touch: TouchClass;
}

export interface SupplyResult {
  /** Key of the item: "usb-port 500mA", "power-bank", "adapter 1A", "battery-9v". */
  readonly supply: ItemKey;
  readonly fits: "fits" | "does not fit" | "undetermined";
  readonly why: readonly SupplyReason[];
  /** A on average over the lesson's rehearsal. */
  readonly amps: number;
  readonly peakAmps: number;
  /** The least voltage of the board's 5 V net, V. */
  readonly leastVolts: number;
  /** The first moment at which it is that low. */
  readonly leastVoltsMs: number;
  /** Hours until it is empty, or until its voltage no longer carries the lesson; null for what does not empty. */
  readonly hours: number | null;
  /** Whole lessons of this length on one charge or one set of cells: 0 where it does not fit, null as `hours`. */
  readonly lessons: number | null;
  /** °C of the board's regulator in a room of 25 °C; null where the supply does not pass it. */
  readonly regulatorCelsius: number | null;
  /** m of thin cable (AWG 28) with which the board still has what it needs, at most 5; null where no cable lies between. */
  readonly cableMetres: number | null;
  /** The hottest part with this supply; null where nothing warms up. */
  readonly hottest: HotPart | null;
}

/** Meter readings that a correct build shows: V of a leg against GND at a moment. A meter shows the mean of fast switching. */
export interface MeterReading {
  readonly ms: number;
  readonly at: LegRef;
  readonly volts: number;
}

/** What makes a variant differ from the lesson as written. */
export type VariantWhat =
  | { readonly kind: "nominal" }
  | {
      readonly kind: "value";
      readonly part: string;
      readonly parameter: string;
      readonly value: number | string;
      readonly item: ItemKey;
    }
  /**
   * `corner`: what is driven to its least or most, in data's words: "least LED1.amps 5" (5 numbers the state of the circuit), or
   * "sample 7" for a table as chance makes it. `values`: figures by "R1.ohms" or "board.fuseOhms", SI.
   */
  | { readonly kind: "corner"; readonly corner: string; readonly values: Readonly<Record<string, number>> }
  | { readonly kind: "supply"; readonly supply: ItemKey };

/** One other way to build it: a value from a kit or from `may-be`, a corner of the tolerances, another supply. */
export interface VariantResult {
  readonly what: VariantWhat;
  readonly verdict: ReadinessWord;
  /** Numbers of the checks that do not pass, counted from 0 in the lesson's order. */
  readonly failedChecks: readonly number[];
  readonly hazards: readonly Hazard[];
}

/** How far a part's value may go before a check fails or something becomes unsafe. */
export interface Margin {
  readonly part: string;
  readonly parameter: string;
  /** The value as it is written, SI, and its unit. */
  readonly is: number;
  readonly unit: "Ω" | "F" | "H";
  /** Share of the nominal value at which it begins to fail: 0.4 means that 0.4 times is too little. Null: not within ÷ 10. */
  readonly down: number | null;
  /** As `down`, upwards; null: not within × 10. */
  readonly up: number | null;
}

/** What a rehearsal is doing, told with its progress. */
export type RehearsalStage =
  | "rehearsal.readsProgram"
  | "rehearsal.triesSupplies"
  | "rehearsal.triesValues"
  | "rehearsal.seeksMargins";

/** What kept a lesson from being rehearsed, or from being rehearsed in full. */
export const rehearsalProblemCodes = [
  "rehearsal.programHasErrors",
  "rehearsal.programBreaks",
  "rehearsal.programHangs",
  "rehearsal.partNotModelled",
  "rehearsal.itemDoesNotFit",
  "rehearsal.noSupply",
  "rehearsal.circuitHasNoAnswer",
  "rehearsal.memoryNotFollowed",
  "rehearsal.probeNotThere",
] as const;
export type RehearsalProblemCode = (typeof rehearsalProblemCodes)[number];

export interface RehearsalProblem {
  readonly code: RehearsalProblemCode;
  readonly line?: number;
  readonly [name: string]: unknown;
}

export interface RehearsalResult {
  readonly lesson: string;
  readonly verdict: ReadinessWord;
  readonly observations: readonly Observation[];
  readonly checks: readonly CheckResult[];
  readonly hazards: readonly Hazard[];
  readonly doubts: readonly Doubt[];
  readonly supplies: readonly SupplyResult[];
  readonly readings: readonly MeterReading[];
  readonly variants: readonly VariantResult[];
  readonly margins: readonly Margin[];
  /** Problems that kept it from being rehearsed at all (program does not compile, circuit has no answer). */
  readonly problems: readonly RehearsalProblem[];
}
