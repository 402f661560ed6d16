// One open class: takes what is to be kept, keeps it, and tells truly how that stands.
//
// At most 200 ms of changes go into one save, and one save is under way at a time. Each save is a new generation under a name of
// its own, made from the one that this tab knows to be on top; the storage refuses it if another stands there. "Kept" is said
// after the storage's answer. A save that failed is not tried again by itself: what was to be kept stays in memory, its trouble
// is told, and the next change or a word from the person tries afresh, under a new name.
// Does not know: what a class file is, which storage this is.
import { type ReadonlySignal, signal } from "@preact/signals";
import { type Bucket, detailOf, troubleOf } from "./bucket.ts";
import { folderOf, makeGeneration, rawBody, readBody, readHead } from "./generation.ts";
import { readClass, readHeads, type Standing, type StandingGeneration } from "./readClass.ts";
import type { Generation, KeepingTrouble, KeptState, OpenClass, Snapshot } from "./store.ts";
import { thinGenerations } from "./thinGenerations.ts";
import { type Between, type Seat, takeSeat } from "./writerSeat.ts";

export interface Surroundings {
  /** The clock as said, ISO 8601. */
  readonly now: () => string;
  readonly between: Between;
  /** False where what is kept goes with the page: "kept" is never said then. */
  readonly isLasting: boolean;
  /** ms of changes that go into one save. */
  readonly batch: number;
  /** Whether the class's folder of heads was lost and brought back from the spare. */
  readonly wasBroughtBack?: (folder: string) => boolean;
  /** Makes room where the storage is full: by what can be worked out again. @returns whether anything was given up. */
  readonly makeRoom: () => Promise<boolean>;
  /** Makes room by the spare copies, when nothing else is left. */
  readonly dropSpare?: () => Promise<boolean>;
}

interface Waiting {
  readonly snapshot: Snapshot;
  readonly note: string;
}

/** Opens a class over a bucket; never rejects. */
export async function keptClass(bucket: Bucket, id: string, called: string, around: Surroundings): Promise<OpenClass> {
  const { after } = around.between;
  const state = signal<KeptState>({ word: "nothing yet" });
  const listeners = new Set<(snapshot: Snapshot) => void>();
  const bodies = folderOf("bodies", id);
  const heads = folderOf("heads", id);

  let title = called;
  let seat: Seat | null = null;
  let isClosed = false;
  /** What stands there as far as this tab knows; null where it could not be read. */
  let standing = null as Standing | null;
  /** Names this tab tried to write without hearing how it ended. */
  const tried = new Set<string>();
  let counter = 0;
  let waiting: Waiting | null = null;
  let saving = null as Promise<void> | null;
  let callOff = null as (() => void) | null;
  /** The first change that is not kept. */
  let since: string | null = null;
  let readTrouble = null as { why: KeepingTrouble; detail: string } | null;

  const fail = (why: KeepingTrouble, detail: string) => {
    since ??= around.now();
    state.value = { word: "not kept", since, why, detail };
  };
  const rest = (): KeptState => {
    if (seat && !seat.writes) return { word: "follows" };
    return standing?.taken ? { word: "kept", at: standing.taken.head.at } : { word: "nothing yet" };
  };
  const lookNow = async () => {
    try {
      standing = await readClass(bucket, id);
      readTrouble = null;
      counter = Math.max(counter, standing.generations[0]?.counter ?? 0);
    } catch (error) {
      readTrouble = { why: troubleOf(error), detail: detailOf(error) };
    }
  };
  /** One look after the other, and none into a save of our own: an older answer must not cover a newer one. */
  let looking: Promise<unknown> = Promise.resolve();
  const inTurn = (act: () => Promise<void>): Promise<void> => {
    const mine = looking.then(() => saving).then(act);
    looking = mine;
    return mine;
  };
  /** Says how things stand after a look, when nothing waits. */
  const settle = () => {
    since = null;
    state.value = rest();
    if (readTrouble) fail(readTrouble.why, readTrouble.detail);
    // What stands there goes with the page: found or written, it is not kept.
    else if (!around.isLasting && standing?.taken) fail("no-storage", "");
  };
  const look = () => inTurn(lookNow);
  /** Reads again and tells who listens if something newer stands there. */
  const catchUp = () =>
    inTurn(async () => {
      const before = standing?.taken?.name ?? null;
      await lookNow();
      const now = standing?.taken;
      if (now && now.name !== before && !isClosed) for (const listener of [...listeners]) listener(now.snapshot);
    });
  const writes = () => seat?.writes ?? false;

  const save = async ({ snapshot, note }: Waiting): Promise<void> => {
    // Not read yet, for trouble: what stands there decides, and is never written over unseen.
    if (standing === null) {
      await lookNow();
      if (readTrouble) return refuse({ snapshot, note }, readTrouble.why, readTrouble.detail);
      if ((standing as Standing | null)?.taken) return refuse({ snapshot, note }, "behind", "a class stands there unread");
    }
    const stood = standing as unknown as Standing;
    if (stood.trouble === "newer") return refuse({ snapshot, note }, "newer", "");
    const at = around.now();
    counter += 1;
    const parent = stood.taken?.hash ?? null;
    const made = makeGeneration(id, snapshot, { counter, at, note, title, parent });
    tried.add(made.name);
    const records = [
      { key: bodies + made.name, bytes: made.body },
      { key: heads + made.name, bytes: made.head },
    ];
    const put = (top: string | null) =>
      bucket.put(records, { onlyIf: { prefix: heads, last: top === null ? null : heads + top }, flushed: true });
    const generations: StandingGeneration[] = [];
    let answer: "done" | "behind";
    let wasTakenOff = false;
    try {
      answer = await put(stood.top).catch(async (error: unknown) => {
        // A quota can be made room under; a disk that failed is not written to again unasked.
        if ((error as { name?: unknown } | null)?.name !== "QuotaExceededError") throw error;
        for (const giveUp of [around.makeRoom, makeRoom, around.dropSpare]) {
          if (!(await giveUp?.())) continue;
          const again = await put(stood.top).catch(() => null);
          if (again) return again;
        }
        throw error;
      });
      if (answer === "behind") {
        // A save of ours whose answer never came may be what stands there.
        const [top] = await readHeads(bucket, id);
        wasTakenOff = stood.top !== null && (top === undefined || top.head?.gone === true);
        if (top && tried.has(top.name)) {
          generations.unshift(top);
          answer = await put(top.name);
        }
      }
    } catch (error) {
      return refuse({ snapshot, note }, troubleOf(error), detailOf(error));
    }
    if (answer === "behind") return refuse({ snapshot, note }, wasTakenOff ? "taken-off" : "behind", "");
    tried.clear();
    const generation = { name: made.name, counter, status: "whole", head: made.read, hash: made.hash } as const;
    standing = {
      generations: [generation, ...generations, ...(standing ?? stood).generations],
      top: made.name,
      taken: { name: made.name, head: made.read, hash: made.hash, snapshot },
      trouble: null,
      isGone: false,
    };
    if (!around.isLasting) fail("no-storage", "");
    else {
      since = null;
      state.value = waiting !== null ? { word: "keeping" } : writes() ? { word: "kept", at } : { word: "follows" };
    }
    seat?.tellKept();
    await thin(standing);
  };
  const refuse = (what: Waiting, why: KeepingTrouble, detail: string) => {
    waiting ??= what;
    fail(why, detail);
  };
  const thin = async (stood: Standing) => {
    const victims = new Set(
      thinGenerations(
        stood.generations
          .filter((g) => g.status !== "newer")
          .map((g) => ({
            name: g.name,
            counter: g.counter,
            at: g.head?.at ?? null,
            bytes: g.head?.bytes ?? 0,
            damaged: g.status === "damaged",
          })),
      ),
    );
    if (victims.size > 0) await takeAway(stood, victims);
  };
  const takeAway = async (stood: Standing, victims: ReadonlySet<string>): Promise<boolean> => {
    try {
      await bucket.put(
        [...victims].flatMap((name) => [
          { key: heads + name, bytes: null },
          { key: bodies + name, bytes: null },
        ]),
        { flushed: false },
      );
    } catch {
      // They stay, and go at the next save: nothing that a person made depends on it.
      return false;
    }
    const generations = stood.generations.filter((g) => !victims.has(g.name));
    if (standing) standing = { ...standing, generations };
    return true;
  };
  /** Where nothing else helps, half of the older generations of this class go, and never the newest three that are whole. */
  const makeRoom = async (): Promise<boolean> => {
    if (standing === null) return false;
    const older = standing.generations.filter((g) => g.status === "whole").slice(3);
    const victims = new Set(older.slice(Math.floor(older.length / 2)).map((g) => g.name));
    return victims.size > 0 && (await takeAway(standing, victims));
  };

  /** @param before what must be done before the save, as part of it. */
  const flush = (before?: () => Promise<void>): Promise<void> => {
    const isPlanned = callOff !== null;
    callOff?.();
    callOff = null;
    if (saving) return saving.then(() => (isPlanned ? flush() : undefined));
    const now = waiting;
    if (now === null) return Promise.resolve();
    waiting = null;
    saving = (before?.() ?? Promise.resolve())
      .then(() => save(now))
      .catch((error: unknown) => refuse(now, troubleOf(error), detailOf(error)))
      .finally(() => {
        saving = null;
      });
    return saving;
  };
  const plan = () => {
    if (callOff !== null || isClosed) return;
    callOff = after(around.batch, () => {
      callOff = null;
      void flush();
    });
  };

  const settled = async () => {
    if (callOff !== null) await flush();
    while (saving) await saving;
  };

  seat = await takeSeat(`benchday-class-${id}`, around.between, {
    async onSeat(writes) {
      if (seat === null || isClosed) return;
      if (!writes) {
        // What could not be kept before the seat went stays in memory: nobody else has it.
        if (waiting !== null) fail("not-writer", "");
        else if (state.value.word !== "not kept") state.value = { word: "follows" };
        return;
      }
      if (waiting === null) {
        await catchUp();
        if (waiting === null) settle();
        return;
      }
      // Back in the seat with something unkept: it is kept where nobody wrote meanwhile, else a person decides.
      const top = standing?.top ?? null;
      await look();
      if ((standing?.top ?? null) === top) void flush();
      else fail("behind", "");
    },
    onKept() {
      // What is on screen and not kept is not exchanged for what another tab kept.
      if (seat === null || seat.writes || isClosed || waiting !== null) return;
      void catchUp().then(() => {
        if (seat && !seat.writes) {
          since = null;
          state.value = { word: "follows" };
        }
      });
    },
    handOver: async () => {
      await flush();
    },
  });
  await look();
  // Reading harms nothing: a storage that was only hurt for a moment is asked once more.
  if (readTrouble) await look();
  settle();
  const isBack = around.wasBroughtBack?.(heads) === true;
  const trouble = standing?.trouble ?? readTrouble?.why ?? (isBack ? "rescued" : null);

  return {
    id,
    state: state as ReadonlySignal<KeptState>,
    found: standing?.taken?.snapshot ?? null,
    trouble,
    keep(snapshot, note) {
      if (isClosed) return;
      if (!writes()) {
        if (waiting !== null) waiting = { snapshot, note };
        return fail("not-writer", "");
      }
      waiting = { snapshot, note };
      if (state.value.word === "not kept") {
        // Another tab's work stands on top: only a word from the person puts ours over it.
        if (state.value.why === "behind" || state.value.why === "taken-off" || state.value.why === "newer") return;
      } else state.value = { word: "keeping" };
      plan();
    },
    retry() {
      if (isClosed || saving !== null) return;
      if (waiting === null) {
        // What could not be read at the opening is read now, and handed to who listens.
        if (standing === null) void catchUp().then(settle);
        return;
      }
      if (!writes()) return fail("not-writer", "");
      const isBehind = state.value.word === "not kept" && (state.value.why === "behind" || state.value.why === "taken-off");
      state.value = { word: "keeping" };
      // The person has seen that another tab wrote: what it wrote stays as a generation and ours goes on top.
      void flush(isBehind ? lookNow : undefined);
    },
    entitle(words) {
      title = words;
    },
    settled,
    async generations() {
      try {
        const found = await readHeads(bucket, id);
        const answer: Generation[] = [];
        for (const { name, counter, status, head } of found) {
          if (head?.gone) continue;
          const body = await bucket.get(bodies + name);
          answer.push({
            id: name,
            counter,
            at: head?.at ?? "",
            bytes: head?.bytes ?? body?.length ?? 0,
            note: head?.note ?? "",
            damaged: status === "damaged" || (head !== null && readBody(head, body) === null),
          });
        }
        return answer;
      } catch {
        return [];
      }
    },
    async read(generation) {
      try {
        const head = await bucket.get(heads + generation);
        const body = await bucket.get(bodies + generation);
        if (head === null || body === null) return null;
        const read = readHead(id, generation, head);
        if (read.status === "newer") return rawBody(body);
        return read.status === "whole" ? readBody(read.head, body) : null;
      } catch {
        return null;
      }
    },
    takeOver: () => seat?.takeOver() ?? Promise.resolve(false),
    follow(onChange) {
      listeners.add(onChange);
      return () => listeners.delete(onChange);
    },
    async close() {
      if (isClosed) return;
      await settled();
      isClosed = true;
      callOff?.();
      seat?.leave();
    },
  };
}
