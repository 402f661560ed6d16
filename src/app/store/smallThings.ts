// Notes of this computer and remembered answers, in a bucket of their own, so that trouble here never touches a class.
//
// A note is a few words; a remembered answer can be worked out again. So a failure is silence: a note that is not kept, an answer
// that is not known. Each record begins with the checksum of the rest; what does not pass counts as not there. Answers are
// bounded in number and bytes and the oldest goes first; a small record beside each says how old and how large it is.
// Does not know: what is noted or remembered.
import { sha256 } from "@noble/hashes/sha2.js";
import { bytesToHex, utf8ToBytes } from "@noble/hashes/utils.js";
import type { Bucket } from "./bucket.ts";
import { readPlain, writePlain } from "./plainData.ts";

export const memoryLimits = { entries: 200, bytes: 20_000_000 };

export interface SmallThings {
  note(key: string): Promise<string | null>;
  setNote(key: string, value: string): Promise<void>;
  recall(hash: string): Promise<unknown>;
  remember(hash: string, value: unknown): Promise<void>;
  /** Gives up all remembered answers. @returns whether there were any. */
  dropAnswers(): Promise<boolean>;
}

interface Entry {
  readonly hash: string;
  readonly age: number;
  readonly bytes: number;
}

export function smallThings(bucket: Bucket, limits: typeof memoryLimits = memoryLimits): SmallThings {
  /** One after the other, so that two answers at once do not count the same room. */
  let queue: Promise<unknown> = Promise.resolve();
  const inTurn = <T>(act: () => Promise<T>, otherwise: T): Promise<T> => {
    const mine = queue.then(act).catch(() => otherwise);
    queue = mine;
    return mine;
  };
  const read = async (key: string): Promise<unknown> => {
    try {
      const bytes = await bucket.get(key);
      return bytes === null ? undefined : readChecked(bytes);
    } catch {
      return undefined;
    }
  };
  const entries = async (): Promise<Entry[]> =>
    (await bucket.entries("entries/"))
      .map(([key, bytes]) => {
        const read = readChecked(bytes) as Entry | undefined;
        return read ?? { hash: key.slice("entries/".length), age: 0, bytes: limits.bytes };
      })
      .sort((a, b) => a.age - b.age);
  const away = (hash: string) => [
    { key: `entries/${hash}`, bytes: null },
    { key: `answers/${hash}`, bytes: null },
  ];

  return {
    async note(key) {
      const value = await read(`notes/${key}`);
      return typeof value === "string" ? value : null;
    },
    setNote: (key, value) =>
      inTurn(async () => {
        await bucket.put([{ key: `notes/${key}`, bytes: checked(writePlain(value)!) }], { flushed: false });
      }, undefined),
    recall: (hash) => read(`answers/${hash}`),
    remember: (hash, value) =>
      inTurn(async () => {
        const data = writePlain(value);
        if (data === null || data.length + 64 > limits.bytes) return;
        const bytes = checked(data);
        const old = (await entries()).filter((e) => e.hash !== hash);
        let [count, total] = [old.length + 1, old.reduce((sum, e) => sum + e.bytes, bytes.length)];
        const victims: string[] = [];
        for (const e of old) {
          if (count <= limits.entries && total <= limits.bytes) break;
          victims.push(e.hash);
          count -= 1;
          total -= e.bytes;
        }
        const entry: Entry = { hash, age: (old.at(-1)?.age ?? 0) + 1, bytes: bytes.length };
        await bucket.put(
          [
            ...victims.flatMap(away),
            { key: `answers/${hash}`, bytes },
            { key: `entries/${hash}`, bytes: checked(writePlain(entry)!) },
          ],
          { flushed: false },
        );
      }, undefined),
    dropAnswers: () =>
      inTurn(async () => {
        const keys = [...(await bucket.keys("answers/")), ...(await bucket.keys("entries/"))];
        if (keys.length === 0) return false;
        await bucket.put(
          keys.map((key) => ({ key, bytes: null })),
          { flushed: false },
        );
        return true;
      }, false),
  };
}

function checked(data: Uint8Array): Uint8Array {
  const head = utf8ToBytes(`${bytesToHex(sha256(data))}\n`);
  const both = new Uint8Array(head.length + data.length);
  both.set(head);
  both.set(data, head.length);
  return both;
}

function readChecked(bytes: Uint8Array): unknown {
  const data = bytes.subarray(65);
  return new TextDecoder().decode(bytes.subarray(0, 64)) === bytesToHex(sha256(data)) ? readPlain(data) : undefined;
}
