// What was done to a class file, so that it can be taken back and done again, exactly.
//
// An entry holds the change, what it is called, and the way back as the old values of what it touched, not a copy of the file.
// Once undone, the entry holds the way forward instead. Ids that left are remembered, so that nothing new takes one of them.
// Does not know: storage, screens, clocks.
import type { ClassFile } from "../file/index.ts";
import { applyChange } from "./applyChange.ts";
import type { Change } from "./change.ts";
import { type Described, describe } from "./describe.ts";
import { idKeys } from "./freshId.ts";
import type { ChangeContext, Outcome } from "./outcome.ts";
import { difference, type Patch, patched } from "./patch.ts";

export interface HistoryEntry {
  readonly change: Change;
  /** Said with the names of the moment: who left has none later. */
  readonly says: Described;
  /** What takes it back, or does it again once it is undone. */
  readonly patch: Patch;
}

export interface History {
  /** As it is now. */
  readonly file: ClassFile;
  /** Oldest first; the last one is taken back first. */
  readonly done: readonly HistoryEntry[];
  /** The last one is done again first. */
  readonly undone: readonly HistoryEntry[];
  /** Ids that were in use and are not, as "scope/id". */
  readonly retired: readonly string[];
}

/** So many acts can be taken back: more than anybody remembers. */
export const historyDepth = 200;

/** What is known besides; ids that left are known to the history itself. */
export interface ActContext extends Omit<ChangeContext, "retired"> {
  /** The title of a lesson by its id, for the sentence of the act. */
  readonly titleOf?: (lesson: string) => string;
}

export function begin(file: ClassFile): History {
  return { file, done: [], undone: [], retired: [] };
}

/**
 * @param context shipped lessons and kits where known.
 * @returns the history after the act, its last entry saying it; the same history where the change says nothing new; or the problem.
 */
export function act(history: History, change: Change, context: ActContext = {}): Outcome<History> {
  const { file } = history;
  const outcome = applyChange(file, change, { ...context, retired: new Set(history.retired) });
  if ("problem" in outcome) return outcome;
  const patch = difference(outcome.value, file);
  if (patch === null) return { value: history, effects: outcome.effects };
  const entry = { change: withoutFile(change), says: describe(change, file, context.titleOf), patch };
  return {
    value: {
      file: outcome.value,
      done: [...history.done, entry].slice(-historyDepth),
      undone: [],
      retired: withLeft(history.retired, file, outcome.value),
    },
    effects: outcome.effects,
  };
}

/** The way back holds all that a whole file changed. */
function withoutFile(change: Change): Change {
  if (change.kind !== "restore-day" && change.kind !== "join-copy") return change;
  const { file: _, ...rest } = change;
  return rest;
}

/** @returns the history with its last act taken back; the same history where there is none. */
export function undo(history: History): History {
  return turned(history, "done", "undone");
}

/** @returns the history with the act that was taken back last done again; the same history where there is none. */
export function redo(history: History): History {
  return turned(history, "undone", "done");
}

function turned(history: History, from: "done" | "undone", to: "done" | "undone"): History {
  const entry = history[from].at(-1);
  if (!entry) return history;
  const file = patched(history.file, entry.patch) as ClassFile;
  const patch = difference(file, history.file) ?? { do: "fields", of: [] };
  return {
    ...history,
    file,
    [from]: history[from].slice(0, -1),
    [to]: [...history[to], { ...entry, patch }],
    retired: withLeft(history.retired, history.file, file),
  };
}

function withLeft(retired: readonly string[], before: ClassFile, after: ClassFile): readonly string[] {
  const lists = ["classes", "boards", "cables", "computers"] as const;
  if (lists.every((list) => before[list] === after[list])) return retired;
  const now = idKeys(after);
  const known = new Set(retired);
  const left = [...idKeys(before)].filter((key) => !now.has(key) && !known.has(key));
  return left.length > 0 ? [...retired, ...left] : retired;
}
