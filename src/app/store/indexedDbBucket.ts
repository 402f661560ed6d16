// A bucket in the browser's own database.
//
// Each write is one transaction; the answer comes at its *complete*, and for what a person made with durability "strict",
// which waits until the system has flushed (Chromium's default has been "relaxed" since version 121). The database is opened
// at the first call and again after it was closed under us, so that a place that was blocked comes back by itself. Nothing
// waits for ever: a call that is not answered in time fails as "blocked".
// Does not know: what the bytes mean, how often it is called.
import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import { type Bucket, BucketError, type PutOptions, type Write } from "./bucket.ts";

interface Records extends DBSchema {
  records: { key: string; value: Uint8Array };
}

export interface IndexedDbOptions {
  readonly name: string;
  /** ms until an opening that is not answered fails. */
  readonly openWithin?: number;
  /** ms until another call that is not answered fails. */
  readonly answerWithin?: number;
  /** Called when the database was not there and was made: at the first use, and after a browser threw it away. */
  readonly onMade?: () => void;
}

/** The version of the database itself; what stands in the records says its own. */
const databaseVersion = 1;

/** A bucket over the database `name`. Nothing is touched before the first call. */
export function indexedDbBucket({ name, openWithin = 3000, answerWithin = 20_000, onMade }: IndexedDbOptions): Bucket {
  let opening: Promise<IDBPDatabase<Records>> | null = null;
  /** True where the database is of a later version than ours: it is read and never written. */
  let isNewer = false;

  const forgetHandle = () => {
    opening = null;
  };
  const openAt = (version: number | undefined) =>
    openDB<Records>(name, version, {
      upgrade: (db, from) => {
        if (from !== 0) return;
        db.createObjectStore("records");
        onMade?.();
      },
      // Another tab wants a later version or wants it gone: get out of its way. The next call opens again.
      blocking: (_now, _then, event) => {
        (event.target as IDBDatabase).close();
        forgetHandle();
      },
      terminated: forgetHandle,
    });
  const open = (): Promise<IDBPDatabase<Records>> => {
    if (opening) return opening;
    const asked = (async () => {
      try {
        return await openAt(databaseVersion);
      } catch (error) {
        if ((error as { name?: unknown }).name !== "VersionError") throw error;
        const db = await openAt(undefined);
        isNewer = db.version > databaseVersion;
        return db;
      }
    })();
    const answer = within(openWithin, asked, "the database does not open").then((db) => {
      if (db.objectStoreNames.contains("records")) return db;
      db.close();
      throw new BucketError("newer", "the database has another shape");
    });
    opening = answer;
    answer.catch(() => {
      if (opening === answer) opening = null;
      // An opening that comes after all must not stay open unknown to us, or it would block others.
      asked.then((db) => opening === null && db.close()).catch(() => {});
    });
    return answer;
  };
  /** Does it on the open database; a handle that was closed under us is taken anew once. */
  const on = async <T>(act: (db: IDBPDatabase<Records>) => Promise<T>): Promise<T> => {
    const db = await open();
    try {
      return await within(answerWithin, act(db), "the database does not answer");
    } catch (error) {
      if ((error as { name?: unknown }).name !== "InvalidStateError") throw error;
      forgetHandle();
      return await within(answerWithin, act(await open()), "the database does not answer");
    }
  };

  return {
    put: (writes: readonly Write[], { onlyIf, flushed }: PutOptions) =>
      on(async (db) => {
        if (isNewer) throw new BucketError("newer", "the database is of a later version");
        const act = db.transaction("records", "readwrite", { durability: flushed ? "strict" : "relaxed" });
        const ended = act.done;
        ended.catch(() => {});
        if (onlyIf) {
          const cursor = await act.store.openKeyCursor(under(onlyIf.prefix), "prev");
          if ((cursor?.key ?? null) !== onlyIf.last) {
            await ended;
            return "behind";
          }
        }
        try {
          await Promise.all(
            writes.map(async ({ key, bytes }) => (bytes === null ? act.store.delete(key) : act.store.put(bytes, key))),
          );
        } catch (error) {
          try {
            act.abort();
          } catch {
            // It ended by itself.
          }
          // What ended the transaction tells more than the request that it took along.
          await ended.catch((reason: unknown) => {
            const why = reason as { name?: unknown } | null;
            if (why && why.name !== "AbortError") throw reason;
          });
          throw error;
        }
        await ended;
        return "done";
      }),
    get: (key) => on(async (db) => (await db.get("records", key)) ?? null),
    keys: (prefix) => on((db) => db.getAllKeys("records", under(prefix))),
    entries: (prefix) =>
      on(async (db) => {
        const act = db.transaction("records");
        act.done.catch(() => {});
        const [keys, values] = await Promise.all([
          (async () => act.store.getAllKeys(under(prefix)))(),
          (async () => act.store.getAll(under(prefix)))(),
        ]);
        return keys.map((key, i) => [key, values[i]!] as const);
      }),
    clear: () =>
      on(async (db) => {
        if (isNewer) throw new BucketError("newer", "the database is of a later version");
        const act = db.transaction("records", "readwrite", { durability: "strict" });
        const ended = act.done;
        ended.catch(() => {});
        await act.store.clear();
        await ended;
      }),
    close: () => {
      opening?.then((db) => db.close()).catch(() => {});
      forgetHandle();
    },
  };
}

/** Every name that begins with the prefix. */
function under(prefix: string): IDBKeyRange {
  return IDBKeyRange.bound(prefix, `${prefix}\uffff`);
}

function within<T>(ms: number, answer: Promise<T>, otherwise: string): Promise<T> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => reject(new BucketError("blocked", otherwise)), ms);
    answer.then(resolve, reject).finally(() => clearTimeout(timer));
  });
}
