// A fast source of chance for local search, started from a seed of `base`.
//
// The search draws tens of millions of numbers; xorshift (Marsaglia 2003, Journal of Statistical Software 8(14)) costs three
// shifts, and its quality is far above what a search needs.
// Does not know: what is drawn.

export interface QuickRandom {
  /** A whole number from 0 up to but not including `below`. */
  below(below: number): number;
  /** A number from 0 up to but not including 1. */
  next(): number;
}

/** @param seed any whole number; 0 is replaced, because xorshift would stay at 0. */
export function quickRandom(seed: number): QuickRandom {
  let state = seed | 0 || 0x9e3779b9;
  const step = () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return state >>> 0;
  };
  for (let i = 0; i < 8; i += 1) step();
  return {
    below: (below) => Math.floor((step() / 0x1_0000_0000) * below),
    next: () => step() / 0x1_0000_0000,
  };
}
