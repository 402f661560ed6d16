// One open class in every case that the storage can bring: damaged, cut, newer, another tab's work on top, a clock that is wrong.
import { utf8ToBytes } from "@noble/hashes/utils.js";
import { expect, test } from "vitest";
import { type Bucket, BucketError } from "./bucket.ts";
import { writeHead } from "./generation.ts";
import { keptClass } from "./keptClass.ts";
import { makeStore } from "./makeStore.ts";
import { memoryBucket } from "./memoryBucket.ts";
import type { OpenClass, Snapshot } from "./store.ts";
import { browser } from "./tabs.fixture.ts";

/** Timers that a test moves. */
function handClock() {
  let at = 0;
  let timers: { at: number; run: () => void }[] = [];
  return {
    after(ms: number, run: () => void) {
      const timer = { at: at + ms, run };
      timers.push(timer);
      return () => {
        timers = timers.filter((t) => t !== timer);
      };
    },
    async move(ms: number) {
      at += ms;
      for (const timer of timers.filter((t) => t.at <= at)) {
        timers = timers.filter((t) => t !== timer);
        timer.run();
      }
      for (let i = 0; i < 50; i++) await null;
    },
  };
}

let tick = 0;
const around = (more: object = {}) => ({
  now: () => new Date(Date.UTC(2026, 10, 25, 10, tick++)).toISOString(),
  between: { locks: null, channel: null, tab: "t", after: handClock().after },
  isLasting: true,
  batch: 150,
  makeRoom: async () => false,
  ...more,
});
const text = (words: string): Snapshot => ({ text: words, beside: `beside ${words}` });
const open = (bucket: Bucket, more: object = {}) => keptClass(bucket, "c", "7b", around(more));
/** A class with these saves. */
async function withSaves(...saves: string[]): Promise<Bucket> {
  const bucket = memoryBucket();
  const kept = await open(bucket);
  for (const words of saves) {
    kept.keep(text(words), words);
    await kept.settled();
  }
  return bucket;
}
async function spoil(bucket: Bucket, folder: "heads" | "bodies", nth: number, how: (bytes: Uint8Array) => Uint8Array | null) {
  const key = (await bucket.keys(`${folder}/c/`)).at(nth)!;
  await bucket.put([{ key, bytes: how((await bucket.get(key))!) }], { flushed: false });
}

const flip = (bytes: Uint8Array) => {
  bytes[bytes.length - 1]! ^= 4;
  return bytes;
};
const cut = (bytes: Uint8Array) => bytes.slice(0, 10);
const spoilt: [what: string, spoilIt: (b: Bucket) => Promise<void>, found: string | null, trouble: string | null][] = [
  ["nothing spoilt", async () => {}, "three", null],
  ["the newest body damaged", (b) => spoil(b, "bodies", -1, flip), "two", "damaged"],
  ["the newest body cut", (b) => spoil(b, "bodies", -1, cut), "two", "damaged"],
  ["the newest body missing", (b) => spoil(b, "bodies", -1, () => null), "two", "damaged"],
  ["the newest head damaged", (b) => spoil(b, "heads", -1, flip), "two", "damaged"],
  ["an older one damaged", (b) => spoil(b, "bodies", 0, flip), "three", null],
  [
    "all damaged",
    async (b) => {
      for (const n of [0, 1, 2]) await spoil(b, "bodies", n, flip);
    },
    null,
    "damaged",
  ],
];
for (const [what, spoilIt, found, trouble] of spoilt)
  test(`${what}: ${found ?? "nothing"} is taken, told as ${trouble}, and nothing is mended unasked`, async () => {
    const bucket = await withSaves("one", "two", "three");
    await spoilIt(bucket);
    const before = await bucket.entries("");
    const kept = await open(bucket);
    expect([kept.found?.text ?? null, kept.trouble]).toEqual([found, trouble]);
    expect(await bucket.entries("")).toEqual(before);
    kept.keep(text("four"), "four");
    await kept.settled();
    expect(kept.state.value.word).toBe("kept");
    const again = await open(bucket);
    expect([again.found?.text, again.trouble]).toEqual(["four", null]);
    // What is damaged is still there to look at.
    expect((await again.generations()).length).toBe(4);
  });

test("a newer version is refused, untouched, told, and can be read as it stands", async () => {
  const bucket = await withSaves("one");
  const name = "000000000009-00000000000000000000000000000000";
  await bucket.put(
    [
      { key: `heads/c/${name}`, bytes: writeHead(2, utf8ToBytes('{"new":"words"}')) },
      { key: `bodies/c/${name}`, bytes: utf8ToBytes("a text of next year") },
    ],
    { flushed: true },
  );
  const before = await bucket.entries("");
  const kept = await open(bucket);
  expect([kept.found, kept.trouble]).toEqual([null, "newer"]);
  kept.keep(text("two"), "two");
  await kept.settled();
  kept.retry();
  await kept.settled();
  expect(kept.state.value).toMatchObject({ word: "not kept", why: "newer" });
  expect(await bucket.entries("")).toEqual(before);
  expect((await kept.read(name))?.text).toBe("a text of next year");
});

test("the clock goes back ten years and forward again: the order is that of the saves", async () => {
  const bucket = memoryBucket();
  for (const [i, at] of [
    "2026-11-25T10:00:00Z",
    "2016-11-25T10:00:00Z",
    "2036-01-01T00:00:00Z",
    "2016-01-01T00:00:00Z",
  ].entries()) {
    const kept = await keptClass(bucket, "c", "7b", { ...around(), now: () => at });
    expect(kept.found?.text ?? "").toBe(i === 0 ? "" : `save ${i - 1}`);
    kept.keep(text(`save ${i}`), String(i));
    await kept.settled();
  }
  const kept = await open(bucket);
  expect(kept.found?.text).toBe("save 3");
  expect((await kept.generations()).map((g) => g.note)).toEqual(["3", "2", "1", "0"]);
});

test("changes are batched: nothing is written for 150 ms, then the newest, and kept is said after the answer", async () => {
  const clock = handClock();
  const inner = memoryBucket();
  let answer = () => {};
  let puts = 0;
  const slow: Bucket = {
    ...inner,
    put: async (...args) => {
      puts += 1;
      await new Promise<void>((go) => {
        answer = go;
      });
      return inner.put(...args);
    },
  };
  const kept = await open(slow, { between: { locks: null, channel: null, tab: "t", after: clock.after } });
  expect(kept.state.value.word).toBe("nothing yet");
  for (const words of ["a", "b", "c"]) {
    kept.keep(text(words), words);
    await clock.move(40);
  }
  expect([puts, kept.state.value.word]).toEqual([0, "keeping"]);
  await clock.move(40);
  expect([puts, kept.state.value.word]).toEqual([1, "keeping"]);
  answer();
  await clock.move(0);
  expect(kept.state.value.word).toBe("kept");
  expect((await kept.generations()).map((g) => g.note)).toEqual(["c"]);
});

test("another tab's work on top is never written over unasked; a word from the person puts ours above it and both stay", async () => {
  const bucket = await withSaves("one");
  const [here, there] = [await open(bucket), await open(bucket)];
  there.keep(text("theirs"), "theirs");
  await there.settled();
  here.keep(text("ours"), "ours");
  await here.settled();
  expect(here.state.value).toMatchObject({ word: "not kept", why: "behind" });
  here.keep(text("ours, more"), "ours, more");
  await here.settled();
  expect((await open(bucket)).found?.text).toBe("theirs");
  here.retry();
  await here.settled();
  expect(here.state.value.word).toBe("kept");
  const now = await open(bucket);
  expect(now.found?.text).toBe("ours, more");
  expect((await now.generations()).map((g) => g.note)).toEqual(["ours, more", "theirs", "one"]);
});

test("a failed save keeps since, is not tried again by itself, and the next change tries", async () => {
  const inner = memoryBucket();
  let puts = 0;
  let isFull = true;
  const bucket: Bucket = {
    ...inner,
    put: async (...args) => {
      puts += 1;
      if (isFull) throw new BucketError("full", "no room");
      return inner.put(...args);
    },
  };
  const clock = handClock();
  const kept = await open(bucket, { between: { locks: null, channel: null, tab: "t", after: clock.after } });
  kept.keep(text("a"), "a");
  await kept.settled();
  const first = kept.state.value;
  expect(first).toMatchObject({ word: "not kept", why: "full" });
  await clock.move(60_000);
  expect(puts).toBe(1);
  kept.keep(text("b"), "b");
  await clock.move(200);
  expect(puts).toBe(2);
  expect(kept.state.value).toEqual({ ...first, detail: "BucketError: no room" });
  isFull = false;
  kept.retry();
  await kept.settled();
  expect(kept.state.value.word).toBe("kept");
  expect((await open(inner)).found?.text).toBe("b");
});

test("where nothing lasts, kept is never said", async () => {
  const words: string[] = [];
  const kept = await open(memoryBucket(), { isLasting: false });
  kept.state.subscribe((s) => words.push(s.word));
  for (const w of ["a", "b"]) {
    kept.keep(text(w), w);
    await kept.settled();
  }
  expect(words).not.toContain("kept");
  expect(kept.state.value).toMatchObject({ word: "not kept", why: "no-storage" });
});

test("where nothing lasts, a class that was left and is opened again is not called kept either", async () => {
  const bucket = memoryBucket();
  const first = await open(bucket, { isLasting: false });
  first.keep(text("a"), "a");
  await first.settled();
  await first.close();
  const again = await open(bucket, { isLasting: false });
  expect(again.found?.text).toBe("a");
  expect(again.state.value).toMatchObject({ word: "not kept", why: "no-storage" });
});

/** Two tabs over one storage that fails for as long as a test wants. */
async function twoTabs() {
  const inner = await withSaves("one");
  const all = browser();
  const storage = { isFull: false };
  const bucket: Bucket = {
    ...inner,
    put: async (...args) => {
      if (storage.isFull) throw new BucketError("full", "no room");
      return inner.put(...args);
    },
  };
  const sit = async (tab: string): Promise<OpenClass> => {
    let sat: OpenClass | null = null;
    void open(bucket, { between: all.between(tab) }).then((kept) => {
      sat = kept;
    });
    for (let i = 0; i < 300 && sat === null; i++) await all.move(10);
    return sat as unknown as OpenClass;
  };
  const [here, there] = [await sit("a"), await sit("b")];
  const shown: string[] = [];
  here.follow((snapshot) => shown.push(snapshot.text));
  return { inner, all, storage, here, there, shown };
}

test("another tab takes over while ours is not kept: ours stays on screen and in memory, and can be put on top", async () => {
  const { inner, all, storage, here, there, shown } = await twoTabs();
  storage.isFull = true;
  here.keep(text("ours"), "ours");
  await all.move(300);
  expect(here.state.value).toMatchObject({ word: "not kept", why: "full" });
  void there.takeOver();
  await all.move(2000);
  storage.isFull = false;
  there.keep(text("theirs"), "theirs");
  await all.move(300);
  expect(there.state.value.word).toBe("kept");
  expect(here.state.value).toMatchObject({ word: "not kept", why: "not-writer" });
  here.keep(text("ours, more"), "ours, more");
  await all.move(300);
  expect(shown).toEqual([]);
  void here.takeOver();
  await all.move(2000);
  expect(here.state.value).toMatchObject({ word: "not kept", why: "behind" });
  expect(shown).toEqual([]);
  here.retry();
  await all.move(300);
  expect(here.state.value.word).toBe("kept");
  const now = await open(inner);
  expect(now.found?.text).toBe("ours, more");
  expect((await now.generations()).map((g) => g.note)).toEqual(["ours, more", "theirs", "one"]);
});

test("the seat comes back and nobody wrote meanwhile: what was not kept is kept", async () => {
  const { inner, all, storage, here, there } = await twoTabs();
  storage.isFull = true;
  here.keep(text("ours"), "ours");
  await all.move(300);
  void there.takeOver();
  await all.move(2000);
  storage.isFull = false;
  void here.takeOver();
  await all.move(2000);
  expect(here.state.value.word).toBe("kept");
  expect((await open(inner)).found?.text).toBe("ours");
});

test("120 saves leave the last twenty, and the newest is found", async () => {
  const bucket = await withSaves(...Array.from({ length: 120 }, (_, i) => `save ${i}`));
  const kept = await open(bucket);
  expect(kept.found?.text).toBe("save 119");
  const notes = (await kept.generations()).map((g) => g.note);
  expect(notes.slice(0, 20)).toEqual(Array.from({ length: 20 }, (_, i) => `save ${119 - i}`));
  expect(notes.length).toBeLessThan(25);
});

test("a class is forgotten, brought back whole, forgotten for good, and its neighbour stays", async () => {
  const classes = memoryBucket();
  const store = makeStore(classes, memoryBucket(), { ...around(), trouble: () => null, persistent: () => false });
  for (const id of ["a/1", "a"]) {
    const kept = await store.open(id, `Class ${id}`);
    kept.keep(text(id), id);
    await kept.settled();
  }
  expect((await store.classes()).map((c) => [c.id, c.title])).toEqual([
    ["a", "Class a"],
    ["a/1", "Class a/1"],
  ]);
  const stale = await keptClass(classes, "a", "x", around());
  expect(await store.forget("a")).toBe(true);
  expect((await store.classes()).map((c) => c.id)).toEqual(["a/1"]);
  expect((await store.open("a", "")).found).toBe(null);
  // A tab that did not hear of it cannot write it back.
  stale.keep(text("late"), "late");
  await stale.settled();
  expect(stale.state.value).toMatchObject({ word: "not kept", why: "taken-off" });
  expect(await store.bringBack("a")).toBe(true);
  expect((await store.open("a", "")).found?.text).toBe("a");
  await store.forget("a");
  await store.clearForgotten();
  expect(await store.bringBack("a")).toBe(false);
  expect(await classes.keys("bodies/a/")).toEqual([]);
  expect((await store.open("a/1", "")).found?.text).toBe("a/1");
  expect(await store.forgetAll()).toBe(true);
  expect([await store.classes(), await classes.keys("")]).toEqual([[], []]);
});

test("a class is listed under its new title from the next save on", async () => {
  const store = makeStore(memoryBucket(), memoryBucket(), { ...around(), trouble: () => null, persistent: () => false });
  const kept = await store.open("a", "7b");
  kept.entitle("8b");
  kept.keep(text("x"), "x");
  await store.settled();
  expect((await store.classes()).map((c) => c.title)).toEqual(["8b"]);
});

test("a class that another tab took off is told as such, and a word from the person keeps it again", async () => {
  for (const isCleared of [false, true]) {
    const classes = memoryBucket();
    const kept = await keptClass(classes, "a", "7b", around());
    kept.keep(text("one"), "one");
    await kept.settled();
    const other = makeStore(classes, memoryBucket(), { ...around(), trouble: () => null, persistent: () => false });
    await other.forget("a");
    if (isCleared) await other.clearForgotten();
    kept.keep(text("two"), "two");
    await kept.settled();
    expect(kept.state.value).toMatchObject({ word: "not kept", why: "taken-off" });
    // Nothing is written by itself.
    kept.keep(text("three"), "three");
    await kept.settled();
    expect(kept.state.value).toMatchObject({ word: "not kept", why: "taken-off" });
    kept.retry();
    await kept.settled();
    expect(kept.state.value.word).toBe("kept");
    expect((await keptClass(classes, "a", "", around())).found?.text).toBe("three");
  }
});
