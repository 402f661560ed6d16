// What the page may ask of the engines: long questions that are answered beside the page, with progress and a stop.
//
// The page holds no arithmetic and loads no engine: it knows this interface only. Behind it stands a worker where the browser
// gives one, else the same code in the page itself. Everything that goes to and fro can be cloned (no functions, no classes).
// Does not know: how an answer is found, what is shown.
import type { Day, Progress } from "../../base/index.ts";
import type { Lesson } from "../../bench/lesson/index.ts";
import type { RehearsalResult } from "../../bench/rehearsal/index.ts";
import type { PaperKind } from "../../documents/index.ts";
import type { ClassFile, Kit, Pupil, StockLine } from "../../school/file/index.ts";
import type { OrderPlan } from "../../school/order/index.ts";
import type { Plan } from "../../school/readiness/index.ts";
import type { BenchAnswers, BenchQuestion } from "./benchQuestions.ts";

/** A problem as `sayProblem` of language speaks it: code, data, and a place where there is one. */
export interface EngineProblem {
  readonly code: string;
  readonly severity?: "error" | "warning";
  readonly place?: { readonly file: string; readonly line?: number; readonly column?: number };
  readonly [field: string]: unknown;
}

/** What was read. A value is there if and only if no problem is an error. */
export interface ReadAnswer<Value> {
  readonly value: Value | null;
  readonly problems: readonly EngineProblem[];
}

/** A question that is being worked on. */
export interface Job<Answer> {
  /** Rejects with `Stopped` after `stop()`, with `EngineBroken` where the engine itself failed; never with anything else. */
  readonly answer: Promise<Answer>;
  /** Ends the work. The engine is there again for the next question; what it remembered may be gone. */
  stop(): void;
}

export class Stopped extends Error {}
/** What went wrong with the engine itself, and with it what helps: a key of the catalogue under `engine`. */
export type EngineTrouble = "broken" | "memory" | "missing";
/** The worker ended, the memory is full, parts of the file are missing, or a fault of ours. */
export class EngineBroken extends Error {
  readonly remedy: EngineTrouble;
  /** @param detail what the browser said, for a report; never shown as the message. */
  constructor(remedy: EngineTrouble = "broken", detail = "") {
    super(detail === "" ? remedy : `${remedy}: ${detail}`);
    this.remedy = remedy;
  }
}

/** What comes with Benchday: lessons and kits by id. */
export interface Shipped {
  readonly lessons: ReadonlyMap<string, Lesson>;
  readonly kits: ReadonlyMap<string, Kit>;
  /** The demo class as its file is written, and the day on which it is looked at. */
  readonly demo: { readonly text: string; readonly today: Day; readonly classFile: ClassFile };
}

/** A class file and the day that counts as today. Its lessons and kits are the shipped ones. */
export interface School {
  readonly classFile: ClassFile;
  readonly today: Day;
  readonly seed: number;
}

export interface PapersWish {
  readonly kinds: readonly PaperKind[];
  /** Sittings whose papers are wanted, in the order of use; empty for papers of the whole class file. */
  readonly sittings: readonly string[];
  /** Classes whose rota is wanted; all where empty. */
  readonly classes: readonly string[];
  readonly language: string;
  readonly paperSize: "A4" | "Letter";
  /** What the title block says the paper was computed from. */
  readonly source: string;
}

export interface PapersAnswer {
  readonly title: string;
  readonly sheets: number;
  /** A whole HTML page, nothing fetched. */
  readonly html: string;
  /** Sheets of each paper, in the order of `kinds` and sittings. */
  readonly parts: readonly { readonly kind: PaperKind; readonly sitting: string | null; readonly sheets: number }[];
}

/** `doing` of a progress is one of `EngineDoing`, a key of the catalogue under `engine`. At most some ten calls a second. */
export type OnProgress = (progress: Progress) => void;
export type EngineDoing =
  | "teams"
  | "rehearse"
  | "readsProgram"
  | "triesSupplies"
  | "triesValues"
  | "seeksMargins"
  | "order"
  | "papers"
  | "explain"
  | "explainMessage"
  | "walk"
  | "trace";

export interface Engine {
  /** Makes ready for the first question, which starts it in any case. */
  start(): void;
  /** Lessons, kits and the demo, read once. */
  shipped(): Job<Shipped>;
  /** Same school, same answer: remembered by hash. */
  plan(school: School, onProgress?: OnProgress): Job<Plan>;
  /** Unpacks the solver when first asked. The plan that it needs is made or remembered. */
  order(school: School, seconds: number, onProgress?: OnProgress): Job<OrderPlan>;
  papers(school: School, wish: PapersWish, onProgress?: OnProgress): Job<PapersAnswer>;
  /** A lesson rehearsed with the items of this class, or on its own where `school` is null; for the lesson page. */
  rehearse(lesson: string, school: School | null, onProgress?: OnProgress): Job<RehearsalResult>;
  /** A question about one team's table, which needs no class. */
  bench<Ask extends BenchQuestion["ask"]>(
    question: BenchQuestion & { readonly ask: Ask },
    onProgress?: OnProgress,
  ): Job<BenchAnswers[Ask]>;
  /** Checks and reads a class file against the shipped lessons and kits. */
  readClass(fileName: string, bytes: Uint8Array): Job<ReadAnswer<ClassFile>>;
  readRoster(fileName: string, bytes: Uint8Array): Job<ReadAnswer<readonly Pupil[]>>;
  readStock(fileName: string, bytes: Uint8Array): Job<ReadAnswer<readonly StockLine[]>>;
  /** Class file as text, byte-stable; CSV of an order, a stock list, a roster: UTF-8 with BOM, cells defused. */
  write(what: "class" | "order" | "stock" | "roster", school: School, extra?: { readonly class?: string }): Job<string>;
  /** How it runs: beside the page or in it. Known after the first answer. */
  readonly runs: "worker" | "page" | "not yet";
}
