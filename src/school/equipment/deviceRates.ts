// How often a device that worked the last time does not work in a lesson, and the chance that enough of them do.
//
// Does not know: which devices there are, what they cost.
import { logChanceEnough } from "../../base/index.ts";

export type DeviceKind = "board" | "usb-cable" | "computer";

/** Chance that one device fails at one lesson. */
export interface DeviceRate {
  readonly usual: number;
  /** At the first lesson after a pause. */
  readonly afterPause: number;
  readonly source: string;
}

export const deviceRates: Readonly<Record<DeviceKind, DeviceRate>> = {
  board: {
    usual: 0.001,
    afterPause: 0.002,
    source: "0 to 0.2 % a lesson with ten teams and a count-in: common practice, no source",
  },
  "usb-cable": {
    usual: 0.0075,
    afterPause: 0.03,
    source: "as jumper wires, 0.5 to 1 % a lesson: common practice, no source",
  },
  computer: {
    usual: 0.003,
    afterPause: 0.1,
    source:
      "a tenth of the machines a year (a school computing list, 2013) over 40 lessons; after a pause 1 to 2 of 10 sets do not work at the first try, mostly for driver, port or cable: common practice, no source",
  },
};

/** Days without a lesson after which one counts as the first again: longer than a fortnight's holiday. Common practice, no source. */
export const pauseDays = 21;

/**
 * P(at least `wanted` of `have` work), each on its own with chance `works`: the upper tail of the binomial distribution.
 *
 * @returns 1 for nothing wanted, 0 where fewer are there than wanted.
 */
export function chanceEnough(have: number, wanted: number, works: number): number {
  return Math.exp(logChanceEnough(wanted, have, works));
}
