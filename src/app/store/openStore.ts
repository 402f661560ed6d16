// Opens the store of this browser, whatever the browser gives.
//
// Two databases: classes, and small things apart from them. Names do not depend on the page's address: every file on a card
// shares one origin, and a moved page finds its classes again. In a frame without an origin even a look at `indexedDB` is an
// error; there, and where private modes refuse it, everything lasts as long as the page and "kept" is never said. It never
// rejects and never waits longer than two seconds: a database that does not open is tried again at each call.
// Does not know: what is stored.
import { BucketError, troubleOf } from "./bucket.ts";
import { cacheBucket } from "./cacheBucket.ts";
import { indexedDbBucket } from "./indexedDbBucket.ts";
import { makeStore } from "./makeStore.ts";
import { memoryBucket } from "./memoryBucket.ts";
import { type SpareCopies, spareCopies } from "./spareCopies.ts";
import type { KeepingTrouble, Store } from "./store.ts";
import type { Between } from "./writerSeat.ts";

export interface OpenStoreOptions {
  /** What the databases' names begin with; tests take their own. */
  readonly name?: string;
  /** The clock, for tests. */
  readonly now?: () => string;
  /** ms to wait for the database. */
  readonly openWithin?: number;
}

/** Opens the store; always answers. */
export async function openStore(options: OpenStoreOptions = {}): Promise<Store> {
  const { name = "benchday", now = () => new Date().toISOString(), openWithin = 2000 } = options;
  const around = { now, between: betweenTabs(), batch: 150 };
  const none = () =>
    makeStore(memoryBucket(), memoryBucket(), {
      ...around,
      between: { ...around.between, locks: null, channel: null },
      isLasting: false,
      trouble: () => "no-storage",
      persistent: () => false,
    });
  if (!hasDatabase()) return none();

  let spared: SpareCopies | null = null;
  const first = indexedDbBucket({ name: `${name}-classes`, openWithin, onMade: () => spared?.lookAgain() });
  const cache = cacheOf();
  if (cache) spared = spareCopies(first, cacheBucket(cache, `${name}-spare`), (ms) => new Promise((go) => setTimeout(go, ms)));
  const classes = spared ?? first;
  const small = indexedDbBucket({ name: `${name}-small`, openWithin });
  let trouble: KeepingTrouble | null = null;
  try {
    await Promise.race([classes.keys("heads/"), late(openWithin + 100)]);
  } catch (error) {
    const kind = (error as { name?: unknown } | null)?.name;
    // Private windows of some browsers let the database be seen and not opened (from memory).
    if (kind === "SecurityError" || kind === "InvalidStateError") return none();
    trouble = troubleOf(error);
    // It may be over by the time somebody looks again.
    const again = () =>
      classes.keys("heads/").then(
        () => {
          trouble = null;
        },
        () => setTimeout(again, 1000),
      );
    if (trouble !== "newer") setTimeout(again, 1000);
  }

  let isPersistent = false;
  try {
    // Not waited for: one browser asks the person first.
    navigator.storage?.persist?.().then(
      (answer) => {
        isPersistent = answer;
      },
      () => {},
    );
  } catch {
    // Then it is not.
  }
  const store = makeStore(classes, small, {
    ...around,
    isLasting: true,
    dropSpare: async () => (await spared?.dropSpare()) ?? false,
    wasBroughtBack: (folder) => spared?.broughtBack.has(folder) ?? false,
    trouble: () => trouble,
    persistent: () => isPersistent,
  });
  if (trouble === null) void store.clearForgotten();
  if (typeof document !== "undefined")
    document.addEventListener("visibilitychange", () => {
      if (document.visibilityState === "hidden") void store.settled();
    });
  return store;
}

function hasDatabase(): boolean {
  try {
    return typeof indexedDB === "object" && indexedDB !== null;
  } catch {
    return false;
  }
}

/** Where spare copies go, or null. */
function cacheOf(): CacheStorage | null {
  try {
    return typeof caches === "object" ? caches : null;
  } catch {
    return null;
  }
}

function late(ms: number): Promise<never> {
  return new Promise((_, reject) => setTimeout(() => reject(new BucketError("blocked", "no answer")), ms));
}

function betweenTabs(): Between {
  const tab = [...crypto.getRandomValues(new Uint32Array(3))].map((n) => n.toString(36)).join("");
  let locks: Between["locks"] = null;
  try {
    locks = typeof navigator === "object" && navigator.locks ? (navigator.locks as unknown as Between["locks"]) : null;
  } catch {
    // Then there are none.
  }
  return {
    tab,
    locks,
    channel:
      typeof BroadcastChannel === "function"
        ? (name) => {
            const channel = new BroadcastChannel(name);
            // Under Node a channel would keep the process; browsers have no such thing.
            (channel as { unref?: () => void }).unref?.();
            return channel;
          }
        : null,
    after: (ms, run) => {
      const timer = setTimeout(run, ms);
      return () => clearTimeout(timer);
    },
  };
}
