// Which tab writes a class: one at a time, by a lock of the browser; the others follow and may take over.
//
// The lock is not free at once after a tab closes (0.34 s were seen), so that a tab which finds it taken asks who has it: if
// somebody answers it follows, if nobody does it waits a little for the lock. A tab that follows stays in the queue and becomes
// the writer when the writer's tab goes. To take over it asks, the writer finishes its save and stops, and the lock is taken from
// it; a writer that does not answer in time loses it too. What keeps the data safe is not this lock but the store's look at the
// top generation in each save: the lock only spares people the clash.
// Does not know: what is written.

/** As much of a LockManager as is needed. */
export interface Locks {
  request(
    name: string,
    options: { ifAvailable?: boolean; steal?: boolean; signal?: AbortSignal },
    granted: (lock: unknown) => Promise<void> | undefined,
  ): Promise<unknown>;
}

export interface Channel {
  postMessage(message: unknown): void;
  onmessage: ((event: MessageEvent) => unknown) | null;
  close(): void;
}

export interface Between {
  readonly locks: Locks | null;
  readonly channel: ((name: string) => Channel) | null;
  /** Runs later. @returns how to call it off. */
  readonly after: (ms: number, run: () => void) => () => void;
  /** A name for this tab. */
  readonly tab: string;
}

export const seatTimes = {
  /** ms for somebody to say that it writes. */
  answer: 200,
  /** ms to wait for a lock that nobody answers for. */
  free: 1500,
  /** ms that a writer has to hand over. */
  handOver: 1500,
  /** ms after which a writer that handed over and was not relieved writes on. */
  relief: 4000,
};

export interface SeatCalls {
  /** This tab became the writer, or stopped being it. */
  onSeat(writes: boolean): Promise<void> | void;
  /** Another tab kept something. */
  onKept(): void;
  /** Finish what is under way: another tab takes over. */
  handOver(): Promise<void>;
}

export interface Seat {
  readonly writes: boolean;
  takeOver(): Promise<boolean>;
  tellKept(): void;
  leave(): void;
}

interface Message {
  readonly say: "who" | "me" | "want" | "yours" | "kept";
  readonly from: string;
  readonly to?: string;
}

/** Sits down at a class: as its writer if the place is free, else as one that follows. */
export async function takeSeat(name: string, between: Between, calls: SeatCalls): Promise<Seat> {
  const { locks, after, tab } = between;
  let writes = locks === null;
  /** The seat is promised to another tab; and whether this tab was told so already. */
  let isHandingOver = false;
  let isTold = false;
  let hasLeft = false;
  /** True where the browser has locks and refuses them: then there is no order among tabs but the look at the top generation. */
  let isRefused = false;
  let release: (() => void) | null = null;
  let leaveQueue: (() => void) | null = null;
  let waiting: ((message: Message) => void)[] = [];

  const channel = between.channel?.(name) ?? null;
  const post = (say: Message["say"], to?: string) => channel?.postMessage({ say, from: tab, ...(to ? { to } : {}) });
  /** Waits for a message, at most so long. */
  const hear = (ms: number, wanted: (message: Message) => boolean): Promise<boolean> =>
    new Promise((resolve) => {
      const end = (answer: boolean) => {
        cancel();
        waiting = waiting.filter((w) => w !== look);
        resolve(answer);
      };
      const look = (message: Message) => wanted(message) && end(true);
      const cancel = after(ms, () => end(false));
      waiting.push(look);
    });

  /** Asks for the lock. @returns whether it was given; it is then held until `release` or until another tab takes it. */
  const ask = (options: { ifAvailable?: boolean; steal?: boolean; signal?: AbortSignal }): Promise<boolean> =>
    new Promise((resolve) => {
      if (locks === null || hasLeft) return resolve(false);
      let isMine = false;
      locks
        .request(name, options, (lock) => {
          if (lock === null || hasLeft) {
            resolve(false);
            return undefined;
          }
          isMine = true;
          return new Promise<void>((let_) => {
            release = let_;
            resolve(true);
          });
        })
        .catch((error: unknown) => {
          if ((error as { name?: unknown } | null)?.name !== "AbortError") isRefused = true;
          resolve(false);
          // Taken from us by a tab that took over, or called off while it waited.
          if (isMine && !hasLeft) void lose();
        });
    });
  const win = async () => {
    writes = true;
    isHandingOver = false;
    leaveQueue = null;
    await calls.onSeat(true);
  };
  const lose = async () => {
    const mustTell = writes || (isHandingOver && !isTold);
    writes = false;
    isHandingOver = false;
    release = null;
    queueUp();
    if (mustTell) await calls.onSeat(false);
  };
  const queueUp = (): Promise<boolean> => {
    leaveQueue?.();
    const stop = new AbortController();
    leaveQueue = () => stop.abort();
    return ask({ signal: stop.signal }).then(async (given) => {
      if (given) await win();
      return given;
    });
  };

  if (channel)
    channel.onmessage = ({ data }) => {
      const message = data as Message;
      if (typeof message !== "object" || message === null || message.from === tab || hasLeft) return;
      if (message.to !== undefined && message.to !== tab) return;
      for (const look of [...waiting]) look(message);
      if (message.say === "who" && (writes || isHandingOver)) post("me", message.from);
      if (message.say === "kept") calls.onKept();
      if (message.say === "want" && writes && locks !== null) {
        writes = false;
        isHandingOver = true;
        isTold = false;
        void calls.handOver().then(async () => {
          if (!isHandingOver) return;
          isTold = true;
          await calls.onSeat(false);
          post("yours", message.from);
          after(seatTimes.relief, () => {
            // Whoever wanted it is gone: the lock is still ours.
            if (isHandingOver && !hasLeft) void win();
          });
        });
      }
    };

  if (locks !== null) {
    if ((await ask({ ifAvailable: true })) || isRefused) writes = true;
    else {
      const queued = queueUp();
      post("who");
      const answered = hear(seatTimes.answer, (m) => m.say === "me");
      const isAnswered = await Promise.race([answered, queued.then(() => false)]);
      if (!isAnswered && !writes) {
        let cancel = () => {};
        await Promise.race([
          queued,
          new Promise<void>((resolve) => {
            cancel = after(seatTimes.free, resolve);
          }),
        ]);
        cancel();
      }
    }
  }

  return {
    get writes() {
      return writes;
    },
    async takeOver() {
      if (writes) return true;
      if (locks === null || hasLeft) return false;
      const heard = hear(seatTimes.handOver, (m) => m.say === "yours");
      post("want");
      await heard;
      if (writes) return true;
      leaveQueue?.();
      leaveQueue = null;
      if (!(await ask({ steal: true }))) {
        void queueUp();
        return false;
      }
      await win();
      return writes;
    },
    tellKept: () => post("kept"),
    leave() {
      hasLeft = true;
      writes = false;
      leaveQueue?.();
      release?.();
      channel?.close();
    },
  };
}
