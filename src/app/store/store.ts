// What the page may ask of the place where classes are kept.
//
// "Kept" is said only after the storage said so. The store orders by counter and never by clock, knows who writes, keeps
// generations, and never throws: every answer is a value.
// Does not know: what stands in a class file, screens, how the bytes are stored.
import type { ReadonlySignal } from "@preact/signals";

/** What is stored of one class. Everything is plain data that can be cloned. */
export interface Snapshot {
  /** The class file as its text is written. */
  readonly text: string;
  /** The undo list and what else belongs to the class on this computer, as JSON. */
  readonly beside: string;
}

export interface Generation {
  readonly id: string;
  /** Counts up with every save; the order of things. */
  readonly counter: number;
  /** The clock when it was kept, ISO 8601; may be wrong. */
  readonly at: string;
  readonly bytes: number;
  /** Named for a reader: what the last act was, as the saver gave it. */
  readonly note: string;
  readonly damaged: boolean;
}

export interface StoredClass {
  /** Random id of the class on this computer; part of the database's name. */
  readonly id: string;
  readonly title: string;
  readonly keptAt: string;
}

/** Why something is not kept. Each is a key of the catalogue under `keeping`. */
export type KeepingTrouble =
  | "no-storage" // the browser gives none here: the class comes and goes as a file
  | "full" // quota or disk
  | "blocked" // another tab holds an older version of the database open
  | "newer" // written by a newer Benchday: untouched
  | "damaged" // the newest did not pass its checksum; an older one was taken
  | "rescued" // the browser had lost the class: a spare copy was taken, whole
  | "not-writer" // another tab writes
  | "behind" // another tab wrote meanwhile: parent hash differs
  | "taken-off" // another tab took the class off this computer meanwhile
  | "failed"; // anything else the storage said

export type KeptState =
  | { readonly word: "nothing yet" }
  | { readonly word: "keeping" }
  | { readonly word: "kept"; readonly at: string }
  | { readonly word: "not kept"; readonly since: string; readonly why: KeepingTrouble; readonly detail: string }
  /** A second tab: it follows what the writer does. */
  | { readonly word: "follows" };

/** One class that is open in this tab. */
export interface OpenClass {
  readonly id: string;
  readonly state: ReadonlySignal<KeptState>;
  /** What was found at opening; null where there was nothing. `trouble` says "damaged" or "newer" where it matters. */
  readonly found: Snapshot | null;
  readonly trouble: KeepingTrouble | null;
  /** Keeps the newest of what it is given, batched within 200 ms; `state` tells. */
  keep(snapshot: Snapshot, note: string): void;
  /** After trouble: tries again now. After "behind" it puts what this tab has on top of what the other wrote, which stays as a generation. */
  retry(): void;
  /** Keeps at once what waits, and waits until nothing is under way. What was refused is not tried again. */
  settled(): Promise<void>;
  generations(): Promise<readonly Generation[]>;
  read(generation: string): Promise<Snapshot | null>;
  /** Becomes the writer; the other tab follows from then on. */
  takeOver(): Promise<boolean>;
  /** What the class is called from the next save on. */
  entitle(title: string): void;
  /** Calls when another tab kept something. @returns how to stop listening. */
  follow(onChange: (snapshot: Snapshot) => void): () => void;
  close(): Promise<void>;
}

export interface Store {
  /** Classes on this computer, last kept first. */
  classes(): Promise<readonly StoredClass[]>;
  /** Opens or begins a class. */
  open(id: string, title: string): Promise<OpenClass>;
  /**
   * Takes a class off this computer: it is not listed and not opened any more. Until `clearForgotten` (also called by the next
   * opening of the store) it can be brought back. An open class of that id is closed.
   * @returns false where the storage refused.
   */
  forget(id: string): Promise<boolean>;
  /** Takes a `forget` back. @returns false where nothing is left of it. */
  bringBack(id: string): Promise<boolean>;
  /** Takes away for good what was forgotten. */
  clearForgotten(): Promise<void>;
  /** Takes everything off this computer, at once and for good. @returns false where the storage refused. */
  forgetAll(): Promise<boolean>;
  /** Small things of this computer: paper size, type size, last class, age of the last file copy. */
  note(key: string): Promise<string | null>;
  setNote(key: string, value: string): Promise<void>;
  /** What was computed, by the hash of what it depends on; bounded, the oldest goes first. Never trusted without its checksum. */
  recall(hash: string): Promise<unknown>;
  remember(hash: string, value: unknown): Promise<void>;
  /** Why nothing can be kept at all here, or null. */
  readonly trouble: KeepingTrouble | null;
  /** What `navigator.storage.persist()` answered; false until it does. */
  readonly persistent: boolean;
  /** Keeps at once what waits in any open class: for a page that goes. */
  settled(): Promise<void>;
}
