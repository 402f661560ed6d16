// Chance that depends only on seed, name and number: the same reading at the same moment, however the program came there.
//
// Integer mixing after Chris Wellons' "lowbias32" (public domain, 2018, from memory); quality matters little here.
// Does not know: what it is used for.

/** @returns a number from 0 up to but not including 1. */
export function noise(seed: number, name: number, slot: number): number {
  let h = Math.imul(seed ^ 0x9e3779b9, 0x85ebca6b) ^ Math.imul(name + 1, 0xc2b2ae35) ^ Math.imul(slot + 1, 0x27d4eb2f);
  h = Math.imul(h ^ (h >>> 16), 0x7feb352d);
  h = Math.imul(h ^ (h >>> 15), 0x846ca68b);
  return ((h ^ (h >>> 16)) >>> 0) / 0x1_0000_0000;
}
