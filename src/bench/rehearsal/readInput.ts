// What the chip reads at a pin: low, high, a number, or nothing that anybody could foresee.
//
// Each reading is tried with the input's leakage drawn both ways (at most 1 µA, ATmega328P data sheet, table 29-1): where that
// decides the outcome, and where the voltage lies between the guaranteed levels, the reading is undetermined. It is never
// rounded to what would be convenient.
// Does not know: the program, what to do about an undetermined reading (undetermined.ts).
import { boardFacts } from "../parts/index.ts";
import type { Level } from "../program/index.ts";
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
  if (!range) return null;
  const rail = table.point(state).rail;
  if (range.most <= pin.lowShare.value * rail) return 0;
  if (range.least >= pin.highShare.value * rail) return 1;
  return null;
}

/** @returns 0..1023 as the converter gives it, code = floor(V · 1024 / V_CC), or null if nobody can foresee it. */
export function judgeNumber(table: Table, state: TableState, pinName: string): number | null {
  const range = voltsRange(table, state, pinName);
  if (!range || range.most - range.least > undeterminedSwing) return null;
  return converterCode(range.usual, table.point(state).rail);
}

/** ATmega328P data sheet, analog to digital converter: 10 bits, V · 1024 / V_ref; the largest code is 1023. */
export function converterCode(volts: number, reference: number): number {
  if (!(reference > 0)) return 0;
  // A voltage that is a whole number of steps must not fall one short by the last bit of a double.
  const code = Math.floor((volts * adc.steps.value) / reference + 1e-6);
  return Math.min(adc.steps.value - 1, Math.max(0, code));
}

function voltsRange(table: Table, state: TableState, pinName: string): { least: number; usual: number; most: number } | null {
  const node = table.build.wiring.node("board", pinName);
  const point = table.point(state);
  if (!point.on || !table.pins.includes(pinName) || point.floating.has(node)) return null;
  const usual = point.volts(node);
  const down = table.voltsWithLeak(state, node, -pin.leakageAmps.value);
  const up = table.voltsWithLeak(state, node, pin.leakageAmps.value);
  if (down === null || up === null) return null;
  return { least: Math.min(down, up, usual), usual, most: Math.max(down, up, usual) };
}
