// Seeded chance: the same seed gives the same numbers on every machine and in every year.
//
// pure-rand's xoroshiro128+ underneath; a name is hashed into the seed so that two users of one seed draw independently.
// Does not know: the clock, Math.random.
import { uniformInt } from "pure-rand/distribution/uniformInt";
import { xoroshiro128plus } from "pure-rand/generator/xoroshiro128plus";

export interface Random {
  /** A number from 0 up to but not including 1, with 32 random bits. */
  next(): number;
  /** A whole number from low to high, both included. */
  int(low: number, high: number): number;
  /** The same things in a random order; the input stays as it was. */
  shuffled<T>(things: readonly T[]): T[];
}

/** @param name distinguishes users of one seed. */
export function seededRandom(seed: number, name = ""): Random {
  const generator = xoroshiro128plus(mixSeed(seed, name));
  const int = (low: number, high: number) => uniformInt(generator, low, high);
  return {
    next: () => int(0, 0xffffffff) / 0x100000000,
    int,
    shuffled: <T>(things: readonly T[]) => {
      const out = [...things];
      for (let i = out.length - 1; i > 0; i -= 1) {
        const j = int(0, i);
        [out[i], out[j]] = [out[j] as T, out[i] as T];
      }
      return out;
    },
  };
}

function mixSeed(seed: number, name: string): number {
  let h = seed | 0;
  for (let i = 0; i < name.length; i += 1) h = Math.imul(h ^ name.charCodeAt(i), 0x01000193);
  return h | 0;
}
