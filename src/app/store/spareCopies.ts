// A bucket with a spare copy of everything in a second place that breaks in another way.
//
// Why: Chromium 156 was seen to throw its whole database away. A save on a full disk leaves half a record in the database's log; after
// room returns, saves go on behind it and are called complete; at the next start the log counts as corrupt and everything in it is
// deleted, also what was kept weeks before (test/app/store/room.test.ts does it). So nothing is written to the first place while the
// spare lacks what was called kept, and where the first place lacks what the spare holds, it is brought back and that is told.
// The spare is never asked for an answer that the first place can give, and its trouble is nobody's trouble.
// Does not know: which places these are.
import type { Bucket, PutOptions, Write } from "./bucket.ts";
import { counterOf, readHead } from "./generation.ts";

export interface SpareCopies extends Bucket {
  /** The first place was made anew: look whether the spare holds more. */
  lookAgain(): void;
  /** Gives up the spare copies, to make room. They are made again with the next save. @returns whether there were any. */
  dropSpare(): Promise<boolean>;
  /** Folders of heads that were brought back from the spare since the page began. */
  readonly broughtBack: ReadonlySet<string>;
}

/** @param waitFor ms that a save waits for the spare of the save before it. */
export function spareCopies(first: Bucket, spare: Bucket, late: (ms: number) => Promise<void>, waitFor = 2000): SpareCopies {
  const broughtBack = new Set<string>();
  let mustLook = true;
  let looking: Promise<boolean> | null = null;
  let copying: Promise<unknown> = Promise.resolve();
  let isIncomplete = false;

  const tops = (keys: readonly string[]) => {
    const out = new Map<string, { key: string; counter: number }>();
    for (const key of keys) {
      const folder = key.slice(0, key.lastIndexOf("/") + 1);
      out.set(folder, { key, counter: counterOf(key.slice(folder.length)) });
    }
    return out;
  };
  const bodyOf = (headKey: string) => headKey.replace(/^heads/, "bodies");
  /** Copies heads with their bodies. A head comes after its body, so that a head is never alone. */
  const copy = async (from: Bucket, keys: readonly string[]): Promise<Write[]> => {
    const writes: Write[] = [];
    for (const key of keys) {
      const [body, head] = [await from.get(bodyOf(key)), await from.get(key)];
      if (body) writes.push({ key: bodyOf(key), bytes: body });
      if (head) writes.push({ key, bytes: head });
    }
    return writes;
  };

  /** Brings back what only the spare holds. @returns whether anything came. */
  const bringBack = async (): Promise<boolean> => {
    // The spare is read first: a save that comes between is then in both or newer in the first.
    const spareKeys = await spare.keys("heads/").catch(() => []);
    const firstKeys = await first.keys("heads/");
    mustLook = false;
    const inFirst = tops(firstKeys);
    let came = false;
    for (const [folder, { key, counter }] of tops(spareKeys)) {
      const top = inFirst.get(folder);
      if (top && top.counter >= counter) continue;
      const head = await spare.get(key);
      // A class that was taken off this computer stays off.
      if (head === null || isGone(folder, key, head)) continue;
      const missing = spareKeys.filter((k) => k.startsWith(folder) && !firstKeys.includes(k));
      const writes = await copy(spare, missing);
      const onlyIf = { prefix: folder, last: top?.key ?? null };
      if ((await first.put(writes, { onlyIf, flushed: true })) !== "done") continue;
      broughtBack.add(folder);
      came = true;
    }
    isIncomplete = true;
    return came;
  };
  const look = (): Promise<boolean> => {
    looking ??= bringBack().finally(() => {
      looking = null;
    });
    return looking;
  };
  /** Brings the spare up to the first place. */
  const complete = async () => {
    const [here, there] = [await first.keys("heads/"), await spare.keys("heads/")];
    const writes: Write[] = there
      .filter((key) => !here.includes(key))
      .flatMap((key) => [
        { key, bytes: null },
        { key: bodyOf(key), bytes: null },
      ]);
    if (writes.length > 0) await spare.put(writes, { flushed: false });
    // One by one, the newest first: each is worth having alone.
    for (const key of here.filter((k) => !there.includes(k)).reverse())
      await spare.put(await copy(first, [key]), { flushed: false });
    isIncomplete = false;
  };
  const copyOn = (writes: readonly Write[]) => {
    copying = (async () => {
      try {
        if (isIncomplete) await complete();
        else await spare.put(writes, { flushed: false });
      } catch {
        isIncomplete = true;
      }
    })();
  };
  const asked = async <T>(act: () => Promise<T>): Promise<T> => {
    if (mustLook) await look();
    const answer = await act();
    // It was made anew under this very call.
    if (mustLook && (await look())) return act();
    return answer;
  };

  return {
    broughtBack,
    async dropSpare() {
      await copying;
      isIncomplete = true;
      const had = (await spare.keys("").catch(() => [])).length > 0;
      if (had) await spare.clear().catch(() => {});
      return had;
    },
    lookAgain() {
      mustLook = true;
    },
    async put(writes: readonly Write[], options: PutOptions) {
      if (mustLook) await look();
      // A page that was ended took the last copies with it: they are made again before the first place is touched.
      if (isIncomplete) copyOn([]);
      await Promise.race([copying, late(waitFor)]);
      let answer = await first.put(writes, options);
      // Perhaps it is not that another tab wrote, but that what was on top is lost.
      if (answer === "behind" && (await look())) answer = await first.put(writes, options);
      if (answer === "done") copyOn(writes);
      return answer;
    },
    get: (key) => asked(() => first.get(key)),
    keys: (prefix) => asked(() => first.keys(prefix)),
    entries: (prefix) => asked(() => first.entries(prefix)),
    async clear() {
      await copying;
      await first.clear();
      await spare.clear();
    },
    close() {
      first.close();
      spare.close();
    },
  };
}

function isGone(folder: string, key: string, bytes: Uint8Array): boolean {
  const id = folder
    .slice("heads/".length, -1)
    .replace(/%([0-9a-f]+)\./g, (_, hex: string) => String.fromCodePoint(Number.parseInt(hex, 16)));
  const read = readHead(id, key.slice(folder.length), bytes);
  return read.status === "whole" && read.head.gone === true;
}
