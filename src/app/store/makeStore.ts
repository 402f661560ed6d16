// The store over two buckets: one for the classes, one for small things.
//
// A class that is taken off this computer gets a last generation which says so; it is not listed any more, a tab that still has
// it open cannot write over that, and until it is cleared it can be brought back by taking that generation away.
// Does not know: which storage this is.
import type { Bucket } from "./bucket.ts";
import { counterOf, folderOf, makeGeneration, readHead } from "./generation.ts";
import { keptClass, type Surroundings } from "./keptClass.ts";
import { readHeads } from "./readClass.ts";
import { smallThings } from "./smallThings.ts";
import type { KeepingTrouble, OpenClass, Store, StoredClass } from "./store.ts";

export interface StoreOptions extends Omit<Surroundings, "makeRoom"> {
  readonly trouble: () => KeepingTrouble | null;
  readonly persistent: () => boolean;
}

export function makeStore(classes: Bucket, small: Bucket, options: StoreOptions): Store {
  const things = smallThings(small);
  const open = new Map<string, OpenClass>();
  const put = async (...args: Parameters<Bucket["put"]>): Promise<boolean> => {
    try {
      return (await classes.put(...args)) === "done";
    } catch {
      return false;
    }
  };
  const close = async (id: string) => {
    await open.get(id)?.close();
    open.delete(id);
  };
  /** The classes' folders, each with what stands on top of it. */
  const tops = async () => {
    const all = new Map<string, { id: string; counter: number; at: string; title: string; isGone: boolean; top: string }>();
    for (const [key, bytes] of await classes.entries("heads/")) {
      const [, folder = "", name = ""] = key.split("/");
      const id = decodeFolder(folder);
      const read = readHead(id, name, bytes);
      const before = all.get(id);
      const head = read.status === "whole" ? read.head : null;
      all.set(id, {
        id,
        counter: counterOf(name),
        at: head?.at ?? before?.at ?? "",
        title: head?.title ?? before?.title ?? "",
        isGone: head?.gone === true,
        top: name,
      });
    }
    return [...all.values()];
  };

  return {
    async classes() {
      try {
        return (await tops())
          .filter((c) => !c.isGone)
          .sort((a, b) => (a.at < b.at ? 1 : a.at > b.at ? -1 : 0))
          .map(({ id, title, at }): StoredClass => ({ id, title, keptAt: at }));
      } catch {
        return [];
      }
    },
    async open(id, title) {
      await close(id);
      const opened = await keptClass(classes, id, title, { ...options, makeRoom: things.dropAnswers });
      open.set(id, opened);
      return opened;
    },
    async forget(id) {
      await close(id);
      const isOff = async () => {
        const [top] = await readHeads(classes, id);
        return top === undefined || top.head?.gone === true;
      };
      try {
        const [top] = await readHeads(classes, id);
        if (!top || top.head?.gone) return true;
        const about = { counter: top.counter + 1, at: options.now(), note: "", title: top.head?.title ?? "", parent: top.hash };
        const made = makeGeneration(id, null, about);
        const folder = folderOf("heads", id);
        const onlyIf = { prefix: folder, last: folder + top.name };
        // Where the answer was lost, what stands there tells.
        return (await put([{ key: folder + made.name, bytes: made.head }], { onlyIf, flushed: true })) || (await isOff());
      } catch {
        return false;
      }
    },
    async bringBack(id) {
      try {
        const [top] = await readHeads(classes, id);
        if (!top) return false;
        if (!top.head?.gone) return true;
        const key = folderOf("heads", id) + top.name;
        if (await put([{ key, bytes: null }], { onlyIf: { prefix: folderOf("heads", id), last: key }, flushed: true }))
          return true;
        const [now] = await readHeads(classes, id);
        return now !== undefined && !now.head?.gone;
      } catch {
        return false;
      }
    },
    async clearForgotten() {
      try {
        for (const { id, top } of (await tops()).filter((c) => c.isGone)) {
          const folder = folderOf("heads", id);
          const keys = [...(await classes.keys(folder)), ...(await classes.keys(folderOf("bodies", id)))];
          await put(
            keys.map((key) => ({ key, bytes: null })),
            { onlyIf: { prefix: folder, last: folder + top }, flushed: true },
          );
        }
      } catch {
        // It is tried again at the next opening.
      }
    },
    async forgetAll() {
      for (const id of [...open.keys()]) await close(id);
      try {
        await classes.clear();
        await small.clear();
        return true;
      } catch {
        return false;
      }
    },
    note: things.note,
    setNote: things.setNote,
    recall: things.recall,
    remember: things.remember,
    async settled() {
      await Promise.all([...open.values()].map((c) => c.settled()));
    },
    get trouble() {
      return options.trouble();
    },
    get persistent() {
      return options.persistent();
    },
  };
}

/** The class id of a folder's name, the way back of `folderOf`. */
function decodeFolder(folder: string): string {
  return folder.replace(/%([0-9a-f]+)\./g, (_, hex: string) => String.fromCodePoint(Number.parseInt(hex, 16)));
}
