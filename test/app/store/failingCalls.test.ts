// Reliability test R5: every call to the storage fails once, in every way, in thirty scenarios.
//
// After each: the class on screen is untouched (the store holds what was to be kept), the person is told once and told the right
// cause, a word from the person keeps it after all, and what was acknowledged before is still there. The same is done one floor
// lower, at the calls of the browser's database (fake-indexeddb), to see that its errors become the right trouble.
import "fake-indexeddb/auto";
import { afterAll, expect, test } from "vitest";
import { type Bucket, BucketError } from "../../../src/app/store/bucket.ts";
import { indexedDbBucket } from "../../../src/app/store/indexedDbBucket.ts";
import { makeStore } from "../../../src/app/store/makeStore.ts";
import { memoryBucket } from "../../../src/app/store/memoryBucket.ts";
import type { KeepingTrouble, OpenClass, Store } from "../../../src/app/store/store.ts";
import { sample } from "../../sample.ts";

/**
 * One letter an act: k keep, s settled, t try again, c close and open, g list generations, l list classes, r read the oldest
 * generation, f forget, b bring back, n a note, m remember and recall, a another class, x clear what was forgotten.
 */
const scenarios = [
  "ks",
  "ksks",
  "kks",
  "kskskskc",
  "ksc",
  "kscks",
  "ckcsc",
  "ksgks",
  "ksrks",
  "kslks",
  "ksfb",
  "ksfbks",
  "ksflbl",
  "ksfx",
  "ksfcks",
  "nks",
  "ksn",
  "mks",
  "ksmks",
  "mmmks",
  "aks",
  "ksaks",
  "ksafbks",
  "kskgrkls",
  "kc",
  "kksckksc",
  "ksksksksksksksksksksksksksksksksksksksksksksksksks",
  "ksksksksksksksksksksksksksksksksksksksksksksksksmcks",
  "nmksgrlfbxc",
  "kktskkts",
];

const errors: readonly (readonly [what: string, make: () => unknown, trouble: KeepingTrouble])[] = [
  ["no room", () => new DOMException("", "QuotaExceededError"), "full"],
  ["broken off", () => new DOMException("", "AbortError"), "failed"],
  ["unknown", () => new DOMException("Internal error", "UnknownError"), "failed"],
  ["another version", () => new DOMException("", "VersionError"), "newer"],
  ["blocked", () => new BucketError("blocked", "no answer"), "blocked"],
];

/** The n-th call fails: before anything is done, or after all is done so that only the answer is lost. */
function failing(inner: Bucket, count: { calls: number }, nth: number, isAfter: boolean, error: () => unknown): Bucket {
  const guarded = async <T>(act: () => Promise<T>): Promise<T> => {
    count.calls += 1;
    if (count.calls !== nth) return act();
    if (isAfter) await act();
    throw error();
  };
  return {
    put: (...args) => guarded(() => inner.put(...args)),
    get: (key) => guarded(() => inner.get(key)),
    keys: (prefix) => guarded(() => inner.keys(prefix)),
    entries: (prefix) => guarded(() => inner.entries(prefix)),
    clear: () => guarded(() => inner.clear()),
    close: () => inner.close(),
  };
}

const storeOver = (classes: Bucket, small: Bucket): Store => {
  let clock = 0;
  return makeStore(classes, small, {
    now: () => new Date(1.8e12 + clock++ * 6e4).toISOString(),
    between: { locks: null, channel: null, tab: "t", after: () => () => {} },
    batch: 150,
    isLasting: true,
    trouble: () => null,
    persistent: () => false,
  });
};

/** What one run saw. */
interface Seen {
  /** Content that was called kept last. */
  acked: number;
  given: number;
  /** Troubles in the order in which they were told. */
  told: KeepingTrouble[];
  isForgotten: boolean;
}

async function play(store: Store, script: string): Promise<{ seen: Seen; open: OpenClass }> {
  const seen: Seen = { acked: 0, given: 0, told: [], isForgotten: false };
  let open = await store.open("one", "One");
  let stop = () => {};
  const listen = () => {
    stop();
    let last = "";
    stop = open.state.subscribe((state) => {
      if (state.word === "kept" && Number(open.found?.text ?? 0) !== seen.given && last !== "") seen.acked = seen.given;
      if (state.word === "not kept" && last !== "not kept") seen.told.push(state.why);
      last = state.word;
    });
  };
  listen();
  for (const act of script) {
    if (act === "k") open.keep({ text: String(++seen.given), beside: "" }, `change ${seen.given}`);
    if (act === "s") await open.settled();
    if (act === "t") open.retry();
    if (act === "c") {
      await open.settled();
      // A page that goes while something is not kept would be told so; the person tries again first.
      open.retry();
      await open.close();
      open = await store.open("one", "One");
      listen();
    }
    if (act === "g") await open.generations();
    if (act === "l") await store.classes();
    if (act === "r") await open.read((await open.generations()).at(-1)?.id ?? "");
    if (act === "f") seen.isForgotten = (await store.forget("one")) || seen.isForgotten;
    if (act === "b" && seen.isForgotten) {
      seen.isForgotten = !((await store.bringBack("one")) || (await store.bringBack("one")));
      open = await store.open("one", "One");
      listen();
    }
    if (act === "n") await store.setNote("paper", "A4");
    if (act === "m") {
      await store.remember("h", new Map([["a", 1]]));
      await store.recall("h");
    }
    if (act === "a") {
      const other = await store.open("two", "Two");
      other.keep({ text: "other", beside: "" }, "other");
      await other.settled();
    }
    if (act === "x") {
      await store.clearForgotten();
    }
  }
  await open.settled();
  return { seen, open };
}

/** What must hold after any single fault, once the storage works again. */
async function checkAfter(where: string, { seen, open }: { seen: Seen; open: OpenClass }, again: Store, trouble: KeepingTrouble) {
  expect(seen.told.length, `${where}: told more than once: ${seen.told}`).toBeLessThanOrEqual(1);
  if (seen.told.length === 1) expect([trouble, "behind"], where).toContain(seen.told[0]);
  if (seen.isForgotten) return;
  const state = open.state.value;
  if (state.word === "not kept" && seen.acked < seen.given) {
    open.retry();
    await open.settled();
    // "behind" by a lost answer is put right by the first try, or the person says so once more.
    if (open.state.value.word !== "kept") open.retry();
    await open.settled();
    expect(open.state.value.word, `${where}: a word from the person keeps it`).toBe("kept");
    seen.acked = seen.given;
  }
  const reread = await again.open("one", "One");
  expect(Number(reread.found?.text ?? 0), `${where}: acknowledged and gone`).toBeGreaterThanOrEqual(seen.acked);
  expect(Number(reread.found?.text ?? 0), `${where}: never given`).toBeLessThanOrEqual(seen.given);
  expect(reread.trouble, where).toBe(null);
}

let runs = 0;
for (const script of scenarios)
  test(`every call of "${script}" fails once, in every way`, async () => {
    const clean = { calls: 0 };
    const none = () => null;
    await play(storeOver(failing(memoryBucket(), clean, -1, false, none), memoryBucket()), script);
    for (const [what, make, trouble] of errors)
      for (const isAfter of [false, true])
        for (let nth = 1; nth <= clean.calls; nth++) {
          const count = { calls: 0 };
          const inner = memoryBucket();
          const played = await play(storeOver(failing(inner, count, nth, isAfter, make), memoryBucket()), script);
          const where = `"${script}", call ${nth}, ${what}, ${isAfter ? "answer lost" : "not done"}`;
          await checkAfter(where, played, storeOver(inner, memoryBucket()), trouble);
          runs += 1;
        }
  });
test("trouble with small things never touches a class", async () => {
  for (let nth = 1; nth <= 12; nth++) {
    const small = failing(memoryBucket(), { calls: 0 }, nth, false, () => new DOMException("", "UnknownError"));
    const { seen, open } = await play(storeOver(memoryBucket(), small), "nmksnmksm");
    expect(seen.told).toEqual([]);
    expect(open.state.value.word).toBe("kept");
  }
});
afterAll(() => console.log(`single faults tried: ${runs}`));

// The same at the calls of the database itself.
const patched: readonly (readonly [object: { prototype: object }, names: readonly string[]])[] = [
  [IDBFactory, ["open"]],
  [IDBDatabase, ["transaction"]],
  [IDBObjectStore, ["put", "delete", "get", "getAll", "getAllKeys", "openKeyCursor", "clear"]],
];

/** Makes the n-th call throw. @returns how to put all back, and the count. */
function failNth(nth: number, error: () => unknown): { count: { calls: number }; restore: () => void } {
  const count = { calls: 0 };
  const undo: (() => void)[] = [];
  for (const [{ prototype }, names] of patched)
    for (const name of names) {
      const methods = prototype as Record<string, (...args: unknown[]) => unknown>;
      const original = methods[name]!;
      methods[name] = function (this: unknown, ...args: unknown[]) {
        // The imitation calls itself; only what comes from outside counts.
        const isOwn = /fake-indexeddb/.test(new Error().stack?.split("\n")[2] ?? "");
        if (!isOwn) count.calls += 1;
        if (!isOwn && count.calls === nth) throw error();
        return original.apply(this, args);
      };
      undo.push(() => {
        methods[name] = original;
      });
    }
  return {
    count,
    restore: () => {
      for (const u of undo) u();
    },
  };
}

const low = ["ks", "kscks", "ksfbks", "nmksc"];
for (const script of low)
  test(`every call to the database in "${script}" fails once, in every way`, async () => {
    const buckets = () => {
      globalThis.indexedDB = new IDBFactory();
      return [indexedDbBucket({ name: "classes" }), indexedDbBucket({ name: "small" })] as const;
    };
    const clean = failNth(-1, () => null);
    await play(storeOver(...buckets()), script);
    clean.restore();
    const kinds = errors.filter(([what]) => what !== "blocked").slice(0, sample(2, 9));
    for (const [what, make, trouble] of kinds)
      for (let nth = 1; nth <= clean.count.calls; nth++) {
        const two = buckets();
        const fault = failNth(nth, make);
        const played = await play(storeOver(...two), script);
        fault.restore();
        await checkAfter(`"${script}", database call ${nth}, ${what}`, played, storeOver(...two), trouble);
      }
  });
