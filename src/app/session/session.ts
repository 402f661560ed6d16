// What every screen sees: the class that is open, what is known about it, and the acts that may be done to it.
//
// One object for the whole page, handed down by context. Screens read signals and call `act`; they hold no arithmetic and no
// copy of the class. Tests of screens hand in a session of their own.
// Does not know: how a class is kept, how an answer is computed, how anything looks.
import type { ReadonlySignal } from "@preact/signals";
import type { Day, Progress } from "../../base/index.ts";
import type { Language } from "../../language/index.ts";
import type { Change, Described } from "../../school/changes/index.ts";
import type { ClassFile, ClassGroup } from "../../school/file/index.ts";
import type { OrderPlan } from "../../school/order/index.ts";
import type { Plan } from "../../school/readiness/index.ts";
import type { Engine, Job, OnProgress, School, Shipped } from "../engine/engine.ts";
import type { KeepingTrouble, KeptState, OpenClass, Snapshot, Store } from "../store/store.ts";

/** A computed answer as a screen sees it. The old value stays readable while a new one is worked out. */
export interface Answer<Value> {
  readonly value: Value | null;
  /** True where `value` belongs to the class as it is now. */
  readonly fresh: boolean;
  /** Work that has run for more than a second; null otherwise. */
  readonly progress: Progress | null;
  /** A key of the catalogue under `engine`, where the work failed or was stopped. */
  readonly trouble: string | null;
}

export interface Act {
  readonly change: Change;
  /** Its sentence, as a code with names. */
  readonly says: Described;
  /** Clock of the act, "10:04". */
  readonly at: string;
  /** What the undo list says now. */
  readonly undone: boolean;
}

/** A class as it was on screen, held in memory: what the storage has of it may be older. */
export interface HeldClass {
  readonly id: string;
  readonly title: string;
  readonly snapshot: Snapshot;
}

/** Something that a person must be told once, as the key of its text; also a problem of a change that was done late. */
export interface Notice {
  readonly code:
    | `session.${"clockBack" | "classUnreadable" | "demoUnreadable" | "notDone" | "follows"}`
    | `keeping.${KeepingTrouble}`
    | (string & {});
  readonly data: Readonly<Record<string, unknown>>;
}

export interface Session {
  readonly engine: Engine;
  readonly store: Store;
  readonly shipped: ReadonlySignal<Shipped | null>;
  readonly open: ReadonlySignal<OpenClass | null>;
  readonly kept: ReadonlySignal<KeptState>;
  /** Null before a class is open: the first page is shown. */
  readonly classFile: ReadonlySignal<ClassFile | null>;
  /** True for the invented demo class. */
  readonly isDemo: ReadonlySignal<boolean>;
  /** The class of the file that Today, Course and Pupils speak of; chosen in the head where there are several. */
  readonly group: ReadonlySignal<ClassGroup | null>;
  chooseGroup(id: string): void;
  readonly language: ReadonlySignal<Language>;
  /** The class speaks this language from now on; without a class the page does. */
  chooseLanguage(tag: string): void;
  readonly today: ReadonlySignal<Day>;
  /** Minutes after midnight, moving. */
  readonly clock: ReadonlySignal<number>;
  readonly school: ReadonlySignal<School | null>;
  readonly plan: ReadonlySignal<Answer<Plan>>;
  /** Asked for by the order place only: `askOrder` starts it, a change of the class makes it stale. */
  readonly order: ReadonlySignal<Answer<OrderPlan>>;
  askOrder(): void;
  /** Stops what is being worked out; what is known already stays. */
  stopWork(): void;
  /** Starts again after a stop or trouble. */
  workAgain(): void;
  /**
   * Does it, tells it, keeps it. @returns the problem where the change cannot be done (then nothing changed). In the first
   * moment of the page it is done a little later, and a problem becomes a notice.
   */
  act(change: Change): { readonly code: string } | null;
  readonly lastAct: ReadonlySignal<Act | null>;
  /** What `undo` takes back next, also what was done before the page was opened; null where there is nothing. */
  readonly undoes: ReadonlySignal<Described | null>;
  /** How many acts can be taken back and done again. */
  readonly undoDepth: ReadonlySignal<{ readonly back: number; readonly again: number }>;
  undo(): void;
  redo(): void;
  /** Four signs of the hash of the class file: the same data, the same signs, on every page and paper. */
  readonly fingerprint: ReadonlySignal<string>;
  readonly notice: ReadonlySignal<Notice | null>;
  dismissNotice(): void;
  /** Days since the class was last saved as a file, or since it was begun where it never was. Null without a class. */
  readonly copyAge: ReadonlySignal<{ readonly days: number; readonly never: boolean } | null>;
  /** A copy was saved just now. */
  copied(): void;
  /** Opens a class: a new one, one from a file, the demo, one kept here. The one that was open stays kept. */
  begin(classFile: ClassFile, how: "new" | "file" | "demo"): Promise<void>;
  reopen(id: string): Promise<void>;
  /** Throws the open class off this computer and offers to take that back until the next act. */
  throwAway(): Promise<void>;
  /** What was thrown away last and can be taken back. */
  readonly thrown: ReadonlySignal<HeldClass | null>;
  takeBack(): Promise<void>;
  /** Classes that were left for another one while the storage had refused to keep them. Each stays until it is fetched or let go. */
  readonly left: ReadonlySignal<readonly HeldClass[]>;
  fetchLeft(held: HeldClass): Promise<void>;
  letGo(held: HeldClass): void;
  /** Opens the demo, as it was left or new. */
  openDemo(): Promise<void>;
  /** Hands a file to the person: download, or the browser's own way to save. */
  saveFile(name: string, text: string, type: string): Promise<void>;
  /** Runs a job and keeps its progress in a signal of its own. */
  run<Value>(job: (onProgress: OnProgress) => Job<Value>): Promise<Value>;
  /** Progress of what `run` runs, after a second. */
  readonly running: ReadonlySignal<Progress | null>;
}
