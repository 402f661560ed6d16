// What the chip reads at a pin: low, high, a number, or nothing that anybody could foresee.
//
// Each reading is tried with the input's leakage drawn both ways (at most 1 µA, ATmega328P data sheet, table 29-1): where that
// decides the outcome, and where the voltage lies between the guaranteed levels, the reading is undetermined. It is never
// rounded to what would be convenient.
// Does not know: the program, what to do about an undetermined reading (playWorld.ts).
import { boardFacts } from "../parts/index.ts";
import type { Level } from "../program/index.ts";
import type { Doubt } from "./result.ts";
import type { Table, TableState } from "./table.ts";

const { pin, adc } = boardFacts;

/**
 * V that the leakage may move an analog input before its reading counts as undetermined. A tenth of the range: 1 µA through
 * 250 kΩ each way. Ours: the data sheet only says that sources up to about 10 kΩ are read as exactly as promised.
 */
const undeterminedSwing = 0.5;

/** @returns the level that the chip reads, or null if nobody can foresee it. An input on no net floats. */
export function judgeLevel(table: Table, state: TableState, pinName: string): Level | null {
  const range = voltsRange(table, state, pinName);
  return range && levelOf(range, table.point(state).rail);
}

/** @returns the level that a voltage within a range is read as, or null if nobody can foresee it. */
export function levelOf(range: VoltsRange, rail: number): Level | null {
  if (range.most <= pin.lowShare.value * rail) return 0;
  if (range.least >= pin.highShare.value * rail) return 1;
  return null;
}

/** A doubt without its moment. */
export type ReadingDoubt = Omit<Doubt, "ms">;

/** Ω of the largest source whose reading, by the data sheet, settles in time. */
const settles = adc.inputOhmsMost;

/**
 * @param kind whether the program asks for a level or a number.
 * @returns why nobody can foresee the reading, or why it is worse than it seems; null where it is firm.
 */
export function readingDoubt(table: Table, state: TableState, pinName: string, kind: "level" | "number"): ReadingDoubt | null {
  const place = table.build.wiring.node("board", pinName);
  const about = { place, value: null, least: null, most: null, unit: null, steps: null } as const;
  const { source } = pin.leakageAmps;
  const range = voltsRange(table, state, pinName);
  const rail = table.point(state).rail;
  if (!range) return table.point(state).on ? levelDoubt(place, null, rail) : null;
  // What a leak of 1 µA each way moves is the resistance behind the net.
  const ohms = (range.most - range.least) / (2 * pin.leakageAmps.value);
  if (kind === "number" && range.most - range.least > undeterminedSwing)
    return {
      ...about,
      code: "input-weak",
      value: ohms,
      most: undeterminedSwing / (2 * pin.leakageAmps.value),
      unit: "Ω",
      source,
    };
  if (kind === "number") {
    if (ohms <= settles.value) return null;
    const steps = unsettledSteps(ohms);
    return { ...about, code: "source-impedance", value: ohms, most: settles.value, unit: "Ω", steps, source: settles.source };
  }
  return levelOf(range, rail) === null ? levelDoubt(place, range, rail) : null;
}

/** @param range what the pin has now; null where nothing holds it. @returns why its level cannot be foreseen. */
export function levelDoubt(place: string, range: VoltsRange | null, rail: number): ReadingDoubt {
  const about = { place, value: null, least: null, most: null, unit: null, steps: null } as const;
  const { source } = pin.leakageAmps;
  if (!range) return { ...about, code: "input-floats", source };
  const [least, most] = [pin.lowShare.value * rail, pin.highShare.value * rail];
  const { usual: value } = range;
  if (value > least && value < most)
    return { ...about, code: "input-between", value, least, most, unit: "V", source: pin.lowShare.source };
  const ohms = (range.most - range.least) / (2 * pin.leakageAmps.value);
  return { ...about, code: "input-weak", value: ohms, unit: "Ω", source };
}

/**
 * Steps that a reading may be off when the converter looked at the other end of its range just before.
 *
 * Its capacitor of 14 pF has one and a half of the converter's turns, 12 µs at 125 kHz, to follow through at most 100 kΩ of the
 * chip's own and the source (ATmega328P data sheet, analog input circuitry): what is left of 1024 steps is e^(−t/RC).
 */
export function unsettledSteps(sourceOhms: number): number {
  const { steps, sampleSeconds, sampleFarads, sampleOhmsMost } = adc;
  return steps.value * Math.exp(-sampleSeconds.value / ((sourceOhms + sampleOhmsMost.value) * sampleFarads.value));
}

/** @returns 0..1023 as the converter gives it, code = floor(V · 1024 / V_CC), or null if nobody can foresee it. */
export function judgeNumber(table: Table, state: TableState, pinName: string): number | null {
  const range = voltsRange(table, state, pinName);
  return range && numberOf(range, table.point(state).rail);
}

/** @returns what the converter gives for a voltage within a range, or null if nobody can foresee it. */
export function numberOf(range: VoltsRange, rail: number): number | null {
  return range.most - range.least > undeterminedSwing ? null : converterCode(range.usual, rail);
}

/** @returns the volts between which the usual one may move before the level, or that there is none, changes. */
export function stretchOf(level: Level | null, range: VoltsRange, rail: number): readonly [least: number, most: number] {
  const low = pin.lowShare.value * rail - (range.most - range.usual);
  const high = pin.highShare.value * rail + (range.usual - range.least);
  if (level === 0) return [Number.NEGATIVE_INFINITY, low];
  return level === 1 ? [high, Number.POSITIVE_INFINITY] : [low, high];
}

/**
 * The range of a voltage that moves: the leakage shifts it by as much as it would after ever so long, at most.
 *
 * @param volts what it is at this instant. @returns null where nothing holds the net even then.
 */
export function rangeAround(table: Table, state: TableState, pinName: string, volts: number): VoltsRange | null {
  const rest = voltsRange(table, state, pinName);
  if (!rest) return null;
  return { least: volts - (rest.usual - rest.least), usual: volts, most: volts + (rest.most - rest.usual) };
}

/** ATmega328P data sheet, analog to digital converter: 10 bits, V · 1024 / V_ref; the largest code is 1023. */
export function converterCode(volts: number, reference: number): number {
  if (!(reference > 0)) return 0;
  // A voltage that is a whole number of steps must not fall one short by the last bit of a double.
  const code = Math.floor((volts * adc.steps.value) / reference + 1e-6);
  return Math.min(adc.steps.value - 1, Math.max(0, code));
}

/** V at a pin: the usual one, and how far the leakage may move it. */
export interface VoltsRange {
  readonly least: number;
  readonly usual: number;
  readonly most: number;
}

function voltsRange(table: Table, state: TableState, pinName: string): VoltsRange | null {
  const node = table.build.wiring.node("board", pinName);
  const point = table.point(state);
  if (!point.on || !table.pins.includes(pinName) || point.floating.has(node)) return null;
  const usual = point.volts(node);
  const down = table.voltsWithLeak(state, node, -pin.leakageAmps.value);
  const up = table.voltsWithLeak(state, node, pin.leakageAmps.value);
  if (down === null || up === null) return null;
  return { least: Math.min(down, up, usual), usual, most: Math.max(down, up, usual) };
}
