// A disk whose power can be cut: what was not flushed comes back as any subset, in any order, torn at 512 bytes.
//
// Harsher than a browser's database, which writes a transaction whole or not at all: here each record of a put that was not
// flushed may be there, or not, or in part. What was flushed before the cut stays. Reads before the cut see everything written.
// Model: Pillai and others, "All File Systems Are Not Created Equal" (OSDI 2014); sector of 512 bytes.
import type { Bucket } from "../../../src/app/store/bucket.ts";

export type Luck = () => number;

/** Seeded numbers from 0 to 1 (mulberry32). */
export function luckOf(seed: number): Luck {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = Math.imul(a ^ (a >>> 15), a | 1);
    t = (t + Math.imul(t ^ (t >>> 7), t | 61)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

type Records = Map<string, Uint8Array>;

export interface SimulatedDisk {
  readonly bucket: Bucket;
  /** Resolves when the power went. Nothing that was asked then is ever answered. */
  readonly cut: Promise<void>;
  /** Cuts now, if it is not cut yet. @returns what is on the disk when it is started again. */
  survivors(): Records;
  /** Steps made so far. */
  readonly steps: number;
}

export interface DiskFaults {
  /** Says "flushed" and has not. */
  readonly lies?: boolean;
}

/** @param cutAt the step at which the power goes; each call makes a few. */
export function simulatedDisk(stable: Records, luck: Luck, cutAt: number, faults: DiskFaults = {}): SimulatedDisk {
  const seen: Records = new Map(stable);
  let unflushed: { key: string; bytes: Uint8Array | null }[] = [];
  let steps = 0;
  let isCut = false;
  let tellCut = () => {};
  const cut = new Promise<void>((resolve) => {
    tellCut = resolve;
  });
  const never = new Promise<never>(() => {});
  /** A moment at which the power may go. */
  const moment = async (): Promise<void> => {
    await null;
    steps += 1;
    if (steps >= cutAt && !isCut) {
      isCut = true;
      tellCut();
    }
    if (isCut) return never;
  };
  const under = (prefix: string) => [...seen.keys()].filter((key) => key.startsWith(prefix)).sort();
  const flush = () => {
    for (const { key, bytes } of unflushed) {
      if (bytes === null) stable.delete(key);
      else stable.set(key, bytes);
    }
    unflushed = [];
  };

  const bucket: Bucket = {
    async put(writes, { onlyIf, flushed }) {
      await moment();
      if (onlyIf && (under(onlyIf.prefix).at(-1) ?? null) !== onlyIf.last) return "behind";
      for (const { key, bytes } of writes) {
        if (bytes === null) seen.delete(key);
        else seen.set(key, bytes.slice());
        unflushed.push({ key, bytes: bytes?.slice() ?? null });
      }
      await moment();
      if (flushed && !faults.lies) flush();
      await moment();
      return "done";
    },
    async get(key) {
      await moment();
      return seen.get(key)?.slice() ?? null;
    },
    async keys(prefix) {
      await moment();
      return under(prefix);
    },
    async entries(prefix) {
      await moment();
      return under(prefix).map((key) => [key, seen.get(key)!.slice()] as const);
    },
    async clear() {
      await moment();
      for (const key of [...seen.keys()]) {
        seen.delete(key);
        unflushed.push({ key, bytes: null });
      }
      await moment();
      flush();
    },
    close() {},
  };

  return {
    bucket,
    cut,
    get steps() {
      return steps;
    },
    survivors() {
      isCut = true;
      const left: Records = new Map(stable);
      const order = unflushed.map((write) => ({ write, rank: luck() })).sort((a, b) => a.rank - b.rank);
      for (const { write } of order) {
        const chance = luck();
        if (chance < 0.35) continue;
        if (write.bytes === null) left.delete(write.key);
        else left.set(write.key, chance < 0.6 ? write.bytes : torn(write.bytes, left.get(write.key) ?? null, luck));
      }
      return left;
    },
  };
}

/** Each sector is the new one, the old one, or zeros; the end may be missing. */
function torn(bytes: Uint8Array, old: Uint8Array | null, luck: Luck): Uint8Array {
  const out = bytes.slice(0, luck() < 0.4 ? Math.floor((luck() * (bytes.length + 511)) / 512) * 512 : bytes.length);
  for (let at = 0; at < out.length; at += 512) {
    if (luck() < 0.5) continue;
    const before = old?.subarray(at, at + 512);
    out.fill(0, at, at + 512);
    if (before) out.set(before.subarray(0, Math.min(before.length, out.length - at)), at);
  }
  return out;
}
