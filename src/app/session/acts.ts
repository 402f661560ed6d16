// The open class with its undo list, as the session holds it.
//
// The list lies beside the class as JSON and comes back after a reload. One that is damaged or does not fit is left behind: it is never
// worth more than the class.
// How an act is done comes a moment after the first screen: the session waits for it before it calls.
// Does not know: how a change is done; where the list is kept.
import type { Change, Described, History, HistoryEntry } from "../../school/changes/index.ts";
import type { ClassFile } from "../../school/file/index.ts";
import type { Shipped } from "../engine/engine.ts";
import { type Later, later } from "../laterCode.ts";

export interface Step {
  readonly acts: Acts;
  readonly change: Change;
  readonly says: Described;
}

export interface Acts {
  readonly classFile: ClassFile;
  /** What is taken back next, in words. */
  readonly undoes: Described | null;
  readonly depth: { readonly back: number; readonly again: number };
  /** @returns null where the change says nothing new. */
  act(change: Change): Step | { readonly problem: { readonly code: string } } | null;
  undo(): Step | null;
  redo(): Step | null;
  /** The undo list as JSON. */
  beside(): string;
}

/** A class that nothing was done to. */
export function beginActs(classFile: ClassFile, shipped: () => Shipped | null): Acts {
  return actsOf(unchanged(classFile), shipped);
}

/** @param beside what `beside()` gave, or any other text. */
export function openActs(classFile: ClassFile, beside: string, shipped: () => Shipped | null): Acts {
  return actsOf({ ...unchanged(classFile), ...readList(beside) }, shipped);
}

const unchanged = (file: ClassFile): History => ({ file, done: [], undone: [], retired: [] });

function doing(): Later {
  const code = later.peek();
  if (code === null) throw new Error("an act before its code");
  return code;
}

function actsOf(history: History, shipped: () => Shipped | null): Acts {
  const turned = (next: History, entry: HistoryEntry | undefined): Step | null =>
    next === history || !entry ? null : { acts: actsOf(next, shipped), change: entry.change, says: entry.says };
  return {
    classFile: history.file,
    undoes: history.done.at(-1)?.says ?? null,
    depth: { back: history.done.length, again: history.undone.length },
    act(change) {
      const files = shipped();
      const known = files && {
        lessonMinutes: new Map([...files.lessons].map(([id, lesson]) => [id, lesson.minutes])),
        kits: files.kits,
      };
      const outcome = doing().act(history, change, known ?? {});
      return "problem" in outcome ? outcome : turned(outcome.value, outcome.value.done.at(-1));
    },
    undo: () => fitting(() => turned(doing().undo(history), history.done.at(-1))),
    redo: () => fitting(() => turned(doing().redo(history), history.undone.at(-1))),
    beside() {
      const { done, undone, retired } = history;
      return JSON.stringify({ done, undone, retired });
    },
  };
}

/** A list that came from elsewhere may hold a step that does not fit: then there is none. */
function fitting(step: () => Step | null): Step | null {
  try {
    return step();
  } catch {
    return null;
  }
}

function readList(text: string): Partial<History> {
  try {
    const read: unknown = JSON.parse(text);
    if (typeof read !== "object" || read === null) return {};
    const { done, undone, retired } = read as Record<string, unknown>;
    if (!isEntries(done) || !isEntries(undone) || !Array.isArray(retired) || !retired.every((r) => typeof r === "string"))
      return {};
    return { done, undone, retired };
  } catch {
    return {};
  }
}

function isEntries(list: unknown): list is readonly HistoryEntry[] {
  return (
    Array.isArray(list) && list.every((e) => typeof e?.change?.kind === "string" && typeof e?.says?.code === "string" && e.patch)
  );
}
