// Reliability test R4: the power goes at any step of any history, and nothing that was called kept is lost.
//
// A history is three lives of one computer: open the class, change it, keep it, close it, open it again, until the power goes. The
// checker knows only this: what was acknowledged is there, whole; what was not is whole or absent. The checker is itself tested with
// a disk that lies, a store that says "kept" too early, and one without checksums.
import { expect, test } from "vitest";
import type { Bucket } from "../../../src/app/store/bucket.ts";
import { keptClass, type Surroundings } from "../../../src/app/store/keptClass.ts";
import type { KeptState, Snapshot } from "../../../src/app/store/store.ts";
import { sample } from "../../sample.ts";
import { type DiskFaults, type Luck, luckOf, simulatedDisk } from "./simulatedDisk.ts";

/** As much of an open class as the history and the checker use. */
interface Kept {
  readonly found: Snapshot | null;
  readonly state: { readonly value: KeptState; subscribe(tell: (state: KeptState) => void): () => void };
  keep(snapshot: Snapshot, note: string): void;
  settled(): Promise<void>;
  generations(): Promise<readonly { readonly id: string; readonly note: string; readonly damaged: boolean }[]>;
  read(generation: string): Promise<Snapshot | null>;
  close(): Promise<void>;
}
type OpenKept = (bucket: Bucket, luck: Luck) => Promise<Kept>;

/** Content that tells by itself whether it is whole: every length from nothing to a few sectors. */
function snapshotOf(n: number): Snapshot {
  const length = (n * 7919) % 2600;
  return {
    text: `${n}:${String(n * 31)
      .repeat(length / 4)
      .slice(0, length)}`,
    beside: `beside ${n}`,
  };
}
function numberIn(snapshot: Snapshot | null): number | "not whole" {
  const n = Number.parseInt(snapshot?.text ?? "", 10);
  const whole = snapshotOf(n);
  return snapshot?.text === whole.text && snapshot.beside === whole.beside ? n : "not whole";
}

const real: OpenKept = (bucket, luck) =>
  keptClass(bucket, "class-1", "7b", {
    // A clock that jumps by years, both ways: the order must not depend on it.
    now: () => new Date(1.8e12 + (luck() - 0.5) * 1e12).toISOString(),
    between: { locks: null, channel: null, tab: "t", after: () => () => {} },
    isLasting: true,
    batch: 150,
    makeRoom: async () => false,
  } satisfies Surroundings);

interface Outcome {
  readonly faults: readonly string[];
  readonly acknowledged: number;
  readonly cuts: number;
}

/** Lives one history and checks after each cut. */
async function history(seed: number, open: OpenKept, diskFaults: DiskFaults = {}): Promise<Outcome> {
  const luck = luckOf(seed);
  const faults: string[] = [];
  let records = new Map<string, Uint8Array>();
  let given = 0;
  const acked: number[] = [];
  let cuts = 0;
  for (let life = 0; life < 3; life++) {
    const disk = simulatedDisk(records, luck, 1 + Math.floor(luck() * 70), diskFaults);
    const live = async (): Promise<"ended"> => {
      let kept = await open(disk.bucket, luck);
      const listen = () =>
        kept.state.subscribe((state) => {
          if (state.word === "kept" && given > (acked.at(-1) ?? 0) && given > before) acked.push(given);
        });
      let before = given;
      let stop = listen();
      for (let act = 0; act < 16; act++) {
        const choice = luck();
        if (choice < 0.6) {
          given += 1;
          kept.keep(snapshotOf(given), String(given));
        }
        if (choice < 0.45) await kept.settled();
        if (choice > 0.95) {
          await kept.close();
          stop();
          kept = await open(disk.bucket, luck);
          before = given;
          stop = listen();
        }
      }
      await kept.settled();
      return "ended";
    };
    const how = await Promise.race([live(), disk.cut]);
    if (how !== "ended") cuts += 1;
    records = disk.survivors();

    // The checker.
    const again = await open(simulatedDisk(new Map(records), luck, Infinity).bucket, luck);
    const newest = acked.at(-1) ?? 0;
    const found = again.found === null ? 0 : numberIn(again.found);
    if (found === "not whole") faults.push(`life ${life}: what is found is not whole`);
    else if (found < newest) faults.push(`life ${life}: ${newest} was acknowledged and ${found} is found`);
    else if (found > given) faults.push(`life ${life}: ${found} was never given`);
    const whole = new Set<number>();
    for (const { id, note, damaged } of await again.generations()) {
      if (damaged) continue;
      const n = numberIn(await again.read(id));
      if (n === "not whole" || String(n) !== note) faults.push(`life ${life}: a generation is not whole and not called damaged`);
      else whole.add(n);
    }
    // The last 20 generations always stay, so that the last 15 that were acknowledged must be there.
    for (const n of acked.slice(-15)) if (!whole.has(n)) faults.push(`life ${life}: ${n} was acknowledged and is gone`);
    if (faults.length > 0) break;
  }
  return { faults, acknowledged: acked.length, cuts };
}

const histories = sample(2000, 20_000);
test(`${histories} histories with the power cut at any step lose nothing that was acknowledged`, async () => {
  let acknowledged = 0;
  let cuts = 0;
  for (let seed = 1; seed <= histories; seed++) {
    const outcome = await history(seed, real);
    expect(outcome.faults, `seed ${seed}`).toEqual([]);
    acknowledged += outcome.acknowledged;
    cuts += outcome.cuts;
  }
  console.log(`power cuts: ${cuts}, acknowledged saves: ${acknowledged}`);
  expect(cuts).toBeGreaterThan(histories);
  expect(acknowledged).toBeGreaterThan(4 * histories);
});

/** How many of so many histories the checker finds fault with. */
async function caught(open: OpenKept, faults: DiskFaults = {}): Promise<number> {
  let count = 0;
  for (let seed = 1; seed <= 200; seed++) if ((await history(seed, open, faults)).faults.length > 0) count += 1;
  return count;
}

test("the checker catches a disk that says flushed and has not", async () =>
  expect(await caught(real, { lies: true })).toBeGreaterThan(20));
test("the checker catches a store that says kept before the storage answered", async () =>
  expect(await caught(planted({ isEarly: true, hasSums: true, isInPlace: false }))).toBeGreaterThan(10));
test("the checker catches a store without checksums", async () =>
  expect(await caught(planted({ isEarly: false, hasSums: false, isInPlace: false }))).toBeGreaterThan(10));
test("the checker catches a store that writes over the last save", async () =>
  expect(await caught(planted({ isEarly: false, hasSums: true, isInPlace: true }))).toBeGreaterThan(10));
test("the checker passes the planted store where nothing is planted", async () =>
  expect(await caught(planted({ isEarly: false, hasSums: true, isInPlace: false }))).toBe(0));

/** A small store of another make, with a fault on request: each is one that people have made. */
function planted({ isEarly, hasSums, isInPlace }: { isEarly: boolean; hasSums: boolean; isInPlace: boolean }): OpenKept {
  const weigh = (text: string) => [...text].reduce((sum, c) => (sum * 31 + c.charCodeAt(0)) % 1_000_003, 7);
  const write = (snapshot: Snapshot) => {
    const text = JSON.stringify(snapshot);
    return new TextEncoder().encode(`${weigh(text)} ${text}`);
  };
  const read = (bytes: Uint8Array | undefined): Snapshot | null => {
    const text = new TextDecoder().decode(bytes ?? new Uint8Array());
    const [sum, body] = [text.split(" ", 1)[0], text.slice(text.indexOf(" ") + 1)];
    if (hasSums && Number(sum) !== weigh(body)) return null;
    try {
      return JSON.parse(body) as Snapshot;
    } catch {
      return hasSums || body === "" ? null : { text: body, beside: "" };
    }
  };
  return async (bucket) => {
    const entries = (await bucket.entries("save/")).map(([key, bytes]) => ({ key, snapshot: read(bytes) }));
    const good = entries.filter((e) => e.snapshot !== null);
    let counter = Number(entries.at(-1)?.key.slice(5) ?? 0);
    let tell = (_: KeptState) => {};
    const state = {
      value: { word: "nothing yet" } as KeptState,
      subscribe(listener: (state: KeptState) => void) {
        tell = listener;
        return () => {
          tell = () => {};
        };
      },
    };
    const say = (word: "kept" | "keeping") => {
      state.value = word === "kept" ? { word, at: "" } : { word };
      tell(state.value);
    };
    let waiting: Snapshot | null = null;
    const settled = async () => {
      if (waiting === null) return;
      const bytes = write(waiting);
      waiting = null;
      counter += 1;
      if (isEarly) say("kept");
      const key = isInPlace ? "save/0" : `save/${String(counter).padStart(9, "0")}`;
      await bucket.put([{ key, bytes }], { flushed: true });
      say("kept");
    };
    return {
      found: good.at(-1)?.snapshot ?? null,
      state,
      keep: (snapshot) => {
        waiting = snapshot;
      },
      settled,
      generations: async () =>
        isInPlace
          ? []
          : entries.map((e) => ({
              id: e.key,
              note: String(Number.parseInt(e.snapshot?.text ?? "", 10)),
              damaged: e.snapshot === null,
            })),
      read: async (id) => entries.find((e) => e.key === id)?.snapshot ?? null,
      close: settled,
    };
  };
}
