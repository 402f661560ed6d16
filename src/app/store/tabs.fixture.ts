// The tabs of one browser for tests: an imitated lock manager (W3C Web Locks, sections on granting, stealing and aborting), its
// channels, and time that a test moves.
import type { Between, Channel, Locks } from "./writerSeat.ts";

/** Locks and channels of one browser, with time that a test moves. */
export function browser() {
  interface Asked {
    readonly grant: () => void;
  }
  let holder: { lose: () => void } | null = null;
  const queue: Asked[] = [];
  const next = () => {
    if (holder === null) queue.shift()?.grant();
  };
  const locks: Locks = {
    request: (_, { ifAvailable, steal, signal }, granted) =>
      new Promise((resolve, reject) => {
        const abort = () => Object.assign(new Error("aborted"), { name: "AbortError" });
        const grant = () => {
          const mine = { lose: () => reject(abort()) };
          holder = mine;
          void Promise.resolve(granted({})).then(() => {
            if (holder === mine) holder = null;
            resolve(undefined);
            next();
          });
        };
        if (steal) {
          holder?.lose();
          holder = null;
          return void Promise.resolve().then(grant);
        }
        if (holder !== null && ifAvailable) return void Promise.resolve(granted(null)).then(resolve);
        if (holder === null)
          return void Promise.resolve().then(() => {
            if (holder === null) grant();
            else if (ifAvailable) void Promise.resolve(granted(null)).then(resolve);
            else queue.push({ grant });
          });
        const asked = { grant };
        queue.push(asked);
        signal?.addEventListener("abort", () => {
          if (!queue.includes(asked)) return;
          queue.splice(queue.indexOf(asked), 1);
          reject(abort());
        });
      }),
  };
  let now = 0;
  let timers: { at: number; run: () => void }[] = [];
  const channels: (Channel & { isFrozen: () => boolean })[] = [];
  const soon = async () => {
    for (let i = 0; i < 40; i++) await null;
  };
  const frozen = new Set<string>();
  return {
    between: (tab: string): Between => ({
      tab,
      locks,
      channel: () => {
        const channel: Channel & { isFrozen: () => boolean } = {
          onmessage: null,
          isFrozen: () => frozen.has(tab),
          postMessage(data) {
            for (const other of [...channels])
              if (other !== channel)
                void Promise.resolve().then(() => !other.isFrozen() && other.onmessage?.({ data } as MessageEvent));
          },
          close: () => void channels.splice(channels.indexOf(channel), 1),
        };
        channels.push(channel);
        return channel;
      },
      after: (ms, run) => {
        const timer = { at: now + ms, run };
        timers.push(timer);
        return () => {
          timers = timers.filter((t) => t !== timer);
        };
      },
    }),
    freeze: (tab: string) => frozen.add(tab),
    async move(ms: number) {
      for (const end = now + ms; now < end; now += 10) {
        await soon();
        for (const timer of timers.filter((t) => t.at <= now)) {
          timers = timers.filter((t) => t !== timer);
          timer.run();
        }
      }
      await soon();
    },
    now: () => now,
  };
}
