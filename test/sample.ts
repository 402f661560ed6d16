// How many cases a test runs: a few in `npm test`, many in `npm run test:long`.
//
// Seeds stay fixed, so that a failure can be run again.

/** True in `npm run test:long`. */
export const isLong = process.env.LONG === "1";

/** @returns `few` in a normal run and `many` in the long one. */
export function sample(few: number, many: number): number {
  return isLong ? many : few;
}
