// A bucket in the browser's cache for answers: each record is a file of its own, and nothing is shared between them.
//
// Used only for spare copies (spareCopies.ts): it says nothing about flushing and writes records one after the other. The addresses
// are made up and never asked for.
// Does not know: what the bytes mean.
import type { Bucket, PutOptions, Write } from "./bucket.ts";

const address = "https://benchday.invalid/";

/** A bucket over the cache `name`. Nothing is touched before the first call. */
export function cacheBucket(caches: CacheStorage, name: string): Bucket {
  // One handle: what is deleted is only given up when no handle to it is left.
  let handle: Promise<Cache> | null = null;
  const open = () => {
    handle ??= caches.open(name).catch((error: unknown) => {
      handle = null;
      throw error;
    });
    return handle;
  };
  const keys = async (prefix: string) =>
    (await (await open()).keys())
      .map(({ url }) => decodeURIComponent(url.slice(address.length)))
      .filter((key) => key.startsWith(prefix))
      .sort();
  const at = (key: string) => address + encodeURIComponent(key);
  const get = async (key: string) => {
    const found = await (await open()).match(at(key));
    return found ? new Uint8Array(await found.arrayBuffer()) : null;
  };
  return {
    async put(writes: readonly Write[], _: PutOptions) {
      const cache = await open();
      for (const { key, bytes } of writes) {
        if (bytes === null) await cache.delete(at(key));
        else await cache.put(at(key), new Response(bytes.slice()));
      }
      return "done";
    },
    get,
    keys,
    async entries(prefix) {
      const found: (readonly [string, Uint8Array])[] = [];
      for (const key of await keys(prefix)) {
        const bytes = await get(key);
        if (bytes) found.push([key, bytes]);
      }
      return found;
    },
    async clear() {
      // Record by record, so that their room is free at once and not when the cache as a whole is collected.
      const cache = await open();
      for (const request of await cache.keys()) await cache.delete(request);
    },
    close: () => {},
  };
}
