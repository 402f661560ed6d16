// A bucket that lasts as long as the page: where the browser gives no storage, and in tests.
//
// It copies what it is given and what it gives, so that nobody changes a record behind its back.
// Does not know: what the bytes mean.
import type { Bucket, PutOptions, Write } from "./bucket.ts";

export function memoryBucket(): Bucket {
  const records = new Map<string, Uint8Array>();
  const under = (prefix: string) => [...records.keys()].filter((key) => key.startsWith(prefix)).sort();
  return {
    async put(writes: readonly Write[], { onlyIf }: PutOptions) {
      if (onlyIf && (under(onlyIf.prefix).at(-1) ?? null) !== onlyIf.last) return "behind";
      for (const { key, bytes } of writes) {
        if (bytes === null) records.delete(key);
        else records.set(key, bytes.slice());
      }
      return "done";
    },
    get: async (key) => records.get(key)?.slice() ?? null,
    keys: async (prefix) => under(prefix),
    entries: async (prefix) => under(prefix).map((key) => [key, records.get(key)!.slice()] as const),
    clear: async () => records.clear(),
    close: () => {},
  };
}
