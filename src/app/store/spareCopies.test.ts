// What the first place loses comes back from the spare; what was taken away on purpose does not.
import { expect, test } from "vitest";
import { type Bucket, BucketError } from "./bucket.ts";
import { keptClass } from "./keptClass.ts";
import { makeStore } from "./makeStore.ts";
import { memoryBucket } from "./memoryBucket.ts";
import { spareCopies } from "./spareCopies.ts";

const late = () => new Promise<void>((go) => setTimeout(go, 50));
const around = {
  now: () => "2026-11-25T10:00:00Z",
  between: { locks: null, channel: null, tab: "t", after: () => () => {} },
  isLasting: true,
  batch: 150,
  makeRoom: async () => false,
};
/** The store over a first place and a spare, as after a start. */
const start = (first: Bucket, spare: Bucket) => {
  const both = spareCopies(first, spare, late);
  return {
    both,
    store: makeStore(both, memoryBucket(), {
      ...around,
      wasBroughtBack: (folder) => both.broughtBack.has(folder),
      trouble: () => null,
      persistent: () => false,
    }),
  };
};
async function keep(store: ReturnType<typeof start>["store"], ...saves: string[]) {
  const kept = await store.open("c", "7b");
  for (const words of saves) {
    kept.keep({ text: words, beside: "" }, words);
    await kept.settled();
  }
  await kept.close();
  await late();
  return kept;
}

test("the first place is thrown away between two starts: all comes back, and that is told", async () => {
  const [first, spare] = [memoryBucket(), memoryBucket()];
  await keep(start(first, spare).store, "one", "two", "three");
  const before = await first.entries("");
  await first.clear();
  const { store } = start(first, spare);
  expect((await store.classes()).length).toBe(1);
  const kept = await store.open("c", "7b");
  expect([kept.found?.text, kept.trouble]).toEqual(["three", "rescued"]);
  expect(await first.entries("")).toEqual(before);
});
test("it falls back to an older save: the newer ones come back", async () => {
  const [first, spare] = [memoryBucket(), memoryBucket()];
  await keep(start(first, spare).store, "one", "two", "three");
  for (const key of [...(await first.keys("heads/")).slice(1), ...(await first.keys("bodies/")).slice(1)])
    await first.put([{ key, bytes: null }], { flushed: false });
  expect((await start(first, spare).store.open("c", "")).found?.text).toBe("three");
});
test("it is thrown away while the class is open: the next save goes on top of what came back", async () => {
  const [first, spare] = [memoryBucket(), memoryBucket()];
  const { store } = start(first, spare);
  const kept = await store.open("c", "7b");
  for (const words of ["one", "two", "three"]) {
    kept.keep({ text: words, beside: "" }, words);
    await kept.settled();
    await late();
    if (words === "two") await first.clear();
  }
  expect(kept.state.value.word).toBe("kept");
  expect((await kept.generations()).map((g) => g.note)).toEqual(["three", "two", "one"]);
});
test("what was forgotten stays forgotten, though the first place lost it", async () => {
  const [first, spare] = [memoryBucket(), memoryBucket()];
  const one = start(first, spare).store;
  await keep(one, "one");
  await one.forget("c");
  await late();
  await first.clear();
  expect(await start(first, spare).store.classes()).toEqual([]);
  await one.forgetAll();
  expect([await first.keys(""), await spare.keys("")]).toEqual([[], []]);
});
test("a spare that fails troubles nobody and is made good when it works again", async () => {
  const [first, inner] = [memoryBucket(), memoryBucket()];
  let isBroken = true;
  const hurt = <T>(act: () => Promise<T>) => (isBroken ? Promise.reject(new BucketError("full", "")) : act());
  const spare: Bucket = {
    put: (...args) => hurt(() => inner.put(...args)),
    get: (key) => hurt(() => inner.get(key)),
    keys: (prefix) => hurt(() => inner.keys(prefix)),
    entries: (prefix) => hurt(() => inner.entries(prefix)),
    clear: () => hurt(() => inner.clear()),
    close: () => {},
  };
  const { store } = start(first, spare);
  expect((await keep(store, "one", "two")).state.value.word).toBe("kept");
  isBroken = false;
  await keep(store, "three");
  expect(await inner.entries("")).toEqual(await first.entries(""));
});
test("the spare has everything again before the first save after a start touches the first place", async () => {
  const [inner, spare] = [memoryBucket(), memoryBucket()];
  await keep(start(inner, spare).store, "one", "two", "three", "four");
  // A kill took the copies that the browser had not written yet.
  for (const folder of ["heads/", "bodies/"])
    for (const key of (await spare.keys(folder)).slice(1)) await spare.put([{ key, bytes: null }], { flushed: false });
  const lacking: number[] = [];
  const first: Bucket = {
    ...inner,
    put: async (...args) => {
      const there = await spare.keys("");
      lacking.push((await inner.keys("")).filter((key) => !there.includes(key)).length);
      return inner.put(...args);
    },
  };
  await keep(start(first, spare).store, "five");
  expect(lacking).toEqual([0]);
});
test("nothing is written to the first place while the spare still copies the save before", async () => {
  const [first, inner] = [memoryBucket(), memoryBucket()];
  const order: string[] = [];
  const both = spareCopies(
    {
      ...first,
      put: (...args) => {
        order.push("first");
        return first.put(...args);
      },
    },
    {
      ...inner,
      put: async (...args) => {
        await new Promise((go) => setTimeout(go, 10));
        order.push("spare");
        return inner.put(...args);
      },
    },
    late,
  );
  const kept = await keptClass(both, "c", "7b", around);
  for (const words of ["one", "two", "three"]) {
    kept.keep({ text: words, beside: "" }, words);
    await kept.settled();
  }
  await late();
  expect(order.join(" ")).toMatch(/^(first (spare ?)+)+$/);
});
