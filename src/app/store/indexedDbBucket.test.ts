// The browser's database as a bucket: blocked, of a later version, thrown away under us (over fake-indexeddb).
import "fake-indexeddb/auto";
import { expect, test } from "vitest";
import { indexedDbBucket } from "./indexedDbBucket.ts";
import { openStore } from "./openStore.ts";

const bytes = (text: string) => new TextEncoder().encode(text);
/** Opens a database as a stranger would, who never lets go. */
const stranger = (name: string, version: number, upgrade: (db: IDBDatabase) => void = () => {}) =>
  new Promise<IDBDatabase>((resolve, reject) => {
    const asked = indexedDB.open(name, version);
    asked.onupgradeneeded = () => upgrade(asked.result);
    asked.onsuccess = () => resolve(asked.result);
    asked.onerror = () => reject(asked.error);
  });

test("names are folders, sorted, and a put is all or nothing", async () => {
  const bucket = indexedDbBucket({ name: "folders" });
  const put = (last: string | null, ...keys: string[]) =>
    bucket.put(
      keys.map((key) => ({ key, bytes: bytes(key) })),
      { onlyIf: { prefix: "a/", last }, flushed: true },
    );
  expect(await put(null, "b/1", "a/2", "a/1")).toBe("done");
  expect(await put("a/1", "a/3")).toBe("behind");
  expect(await put("a/2", "a/3")).toBe("done");
  expect(await bucket.keys("a/")).toEqual(["a/1", "a/2", "a/3"]);
  expect((await bucket.entries("b/")).map(([key, b]) => [key, new TextDecoder().decode(b)])).toEqual([["b/1", "b/1"]]);
  await bucket.put([{ key: "a/3", bytes: null }], { flushed: false });
  expect(await bucket.get("a/3")).toBe(null);
});
test("a database that another holds is told as blocked in time, and comes back by itself", async () => {
  const holder = await stranger("held-classes", 1, (db) => db.createObjectStore("records"));
  const gone = indexedDB.deleteDatabase("held-classes");
  const start = Date.now();
  const store = await openStore({ name: "held", openWithin: 100 });
  expect(Date.now() - start).toBeLessThan(2000);
  expect(store.trouble).toBe("blocked");
  const kept = await store.open("c", "7b");
  expect(kept.trouble).toBe("blocked");
  kept.keep({ text: "x", beside: "" }, "x");
  await kept.settled();
  expect(kept.state.value).toMatchObject({ word: "not kept", why: "blocked" });
  holder.close();
  await new Promise((go) => {
    gone.onsuccess = go;
  });
  kept.retry();
  await kept.settled();
  expect(kept.state.value.word).toBe("kept");
});
test("a later version of the database is read and never written", async () => {
  const db = await stranger("later-classes", 7, (d) => d.createObjectStore("records"));
  db.close();
  const bucket = indexedDbBucket({ name: "later-classes" });
  expect(await bucket.keys("")).toEqual([]);
  await expect(bucket.put([{ key: "a", bytes: bytes("a") }], { flushed: true })).rejects.toMatchObject({ trouble: "newer" });
  const other = await stranger("other-classes", 7, (d) => d.createObjectStore("elsewhere"));
  other.close();
  const store = await openStore({ name: "other", openWithin: 500 });
  expect(store.trouble).toBe("newer");
  const kept = await store.open("c", "7b");
  kept.keep({ text: "x", beside: "" }, "x");
  await kept.settled();
  expect(kept.state.value).toMatchObject({ word: "not kept", why: "newer" });
});
test("we get out of the way of a later version, and then write nothing", async () => {
  const bucket = indexedDbBucket({ name: "way" });
  await bucket.put([{ key: "a", bytes: bytes("a") }], { flushed: true });
  const db = await stranger("way", 2);
  await expect(bucket.put([{ key: "b", bytes: bytes("b") }], { flushed: true })).rejects.toMatchObject({ trouble: "newer" });
  expect(await bucket.keys("")).toEqual(["a"]);
  db.close();
});
test("a database that was deleted under us is made again, and that is said", async () => {
  let made = 0;
  const bucket = indexedDbBucket({
    name: "deleted",
    onMade: () => {
      made += 1;
    },
  });
  await bucket.put([{ key: "a", bytes: bytes("a") }], { flushed: true });
  await new Promise((go) => {
    indexedDB.deleteDatabase("deleted").onsuccess = go;
  });
  expect(await bucket.keys("")).toEqual([]);
  expect(made).toBe(2);
});
test("without a database the store answers, works and says so", async () => {
  const before = globalThis.indexedDB;
  const forms: [what: string, give: PropertyDescriptor][] = [
    ["none", { value: undefined }],
    [
      "one that may not be touched",
      {
        get() {
          throw new DOMException("", "SecurityError");
        },
      },
    ],
    [
      "one that refuses",
      {
        value: {
          open: () => {
            throw new DOMException("", "SecurityError");
          },
        },
      },
    ],
    [
      "one of a private window",
      {
        value: {
          open: () => {
            throw new DOMException("", "InvalidStateError");
          },
        },
      },
    ],
  ];
  for (const [what, give] of forms) {
    Object.defineProperty(globalThis, "indexedDB", { configurable: true, ...give });
    try {
      const store = await openStore({ name: "none" });
      expect(store.trouble, what).toBe("no-storage");
      const kept = await store.open("c", "7b");
      kept.keep({ text: "x", beside: "" }, "x");
      await kept.settled();
      expect(kept.state.value, what).toMatchObject({ word: "not kept", why: "no-storage" });
      expect((await kept.read((await kept.generations())[0]!.id))?.text).toBe("x");
      await store.setNote("a", "b");
      expect(await store.note("a")).toBe("b");
    } finally {
      Object.defineProperty(globalThis, "indexedDB", { configurable: true, writable: true, value: before });
    }
  }
});
