// Notes and remembered answers: bounded, checked, and silent in trouble.
import { expect, test } from "vitest";
import { type Bucket, BucketError } from "./bucket.ts";
import { memoryBucket } from "./memoryBucket.ts";
import { smallThings } from "./smallThings.ts";

test("an answer is known by its hash, with maps and sets", async () => {
  const things = smallThings(memoryBucket());
  const answer = new Map([["teams", new Set(["Awa", "Ben"])]]);
  await things.remember("h1", answer);
  expect(await things.recall("h1")).toEqual(answer);
  expect(await things.recall("h2")).toBe(undefined);
});
test("the oldest go first, by number", async () => {
  const things = smallThings(memoryBucket(), { entries: 3, bytes: 1e6 });
  for (const n of [1, 2, 3]) await things.remember(`h${n}`, n);
  await things.remember("h1", "again");
  await things.remember("h4", 4);
  expect(await Promise.all(["h1", "h2", "h3", "h4"].map(things.recall))).toEqual(["again", undefined, 3, 4]);
});
test("the oldest go first, by bytes; what is larger than all the room is not kept", async () => {
  const things = smallThings(memoryBucket(), { entries: 100, bytes: 10_000 });
  for (const n of [1, 2, 3, 4]) await things.remember(`h${n}`, "x".repeat(3000));
  await things.remember("large", "x".repeat(20_000));
  expect((await Promise.all(["h1", "h2", "h3", "h4", "large"].map(things.recall))).map((a) => a !== undefined)).toEqual([
    false,
    true,
    true,
    true,
    false,
  ]);
});
test("an answer with a flipped bit is not known, and a note neither", async () => {
  const bucket = memoryBucket();
  const things = smallThings(bucket);
  await things.remember("h", { cost: 4200 });
  await things.setNote("paper", "A4");
  for (const key of ["answers/h", "notes/paper"]) {
    const bytes = (await bucket.get(key))!;
    bytes[bytes.length - 2]! ^= 1;
    await bucket.put([{ key, bytes }], { flushed: false });
  }
  expect(await things.recall("h")).toBe(undefined);
  expect(await things.note("paper")).toBe(null);
});
test("notes keep their words", async () => {
  const things = smallThings(memoryBucket());
  await things.setNote("last class/ü", "ö\n");
  expect(await things.note("last class/ü")).toBe("ö\n");
  expect(await things.note("other")).toBe(null);
});
test("a storage that fails is silence", async () => {
  const fail = () => Promise.reject(new BucketError("full", ""));
  const broken: Bucket = { put: fail, get: fail, keys: fail, entries: fail, clear: fail, close: () => {} };
  const things = smallThings(broken);
  await things.setNote("a", "b");
  await things.remember("h", 1);
  expect([await things.note("a"), await things.recall("h"), await things.dropAnswers()]).toEqual([null, undefined, false]);
});
