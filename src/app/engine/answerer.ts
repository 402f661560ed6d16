// Answers each question of the page with the functions of the core, and remembers what was costly.
//
// What is remembered goes by a hash of all it depends on: class file, day, seed, and the version of engine and shipped files.
// It lies here in memory, and the page keeps it across restarts. Rehearsals are kept as one bundle beside the plans, because
// they outlive every change of the class that leaves its parts alone.
// Does not know: messages, workers, how the solver is loaded.
import {
  contentHash,
  type IntegerModel,
  type IntegerOptions,
  type IntegerOutcome,
  type LongWork,
  type Progress,
  type Reading,
  seededRandom,
  type World,
} from "../../base/index.ts";
import type { RehearsalResult } from "../../bench/rehearsal/index.ts";
import { makePapers, paperOrders } from "../../documents/index.ts";
import { languageFor } from "../../language/index.ts";
import {
  type ClassFile,
  decodeText,
  type FileProblem,
  orderCsv,
  readClassFile,
  readRoster,
  readStockCsv,
  rosterCsv,
  stockCsv,
  writeClassFile,
} from "../../school/file/index.ts";
import { type OrderPlan, planOrder } from "../../school/order/index.ts";
import { type PlannedClass, planClass, rehearseForSchool } from "../../school/readiness/index.ts";
import { makeBenchAnswers } from "./answerBench.ts";
import type { EngineProblem, PapersAnswer, PapersWish, ReadAnswer, School, Shipped } from "./engine.ts";
import type { Question } from "./wire.ts";
import { slices, type Work, waitFor } from "./work.ts";

/** What the answers need from outside. */
export interface Surroundings {
  readonly shipped: Shipped;
  /** Names this state of engine and of what is shipped; part of every hash. */
  readonly version: string;
  /** What was kept under a hash, or undefined. */
  recall(hash: string): Promise<unknown>;
  remember(hash: string, value: unknown): void;
  solve(model: IntegerModel, options: IntegerOptions): Promise<IntegerOutcome>;
}

export type Answerer = (question: Question) => Work<unknown>;

/** An order with the seconds that were spent on it: more of them may find a cheaper one, unless it is proven. */
interface KeptOrder {
  readonly seconds: number;
  readonly purchase: OrderPlan;
}

export function makeAnswerer(around: Surroundings): Answerer {
  const { shipped } = around;
  const memory = makeMemory(around);
  const answerBench = makeBenchAnswers(shipped.lessons);

  function worldOf({ today, seed }: School): World {
    return {
      today,
      random: (name) => seededRandom(seed, name),
      read: () => null,
      remember: memory.part,
      known: memory.hasPart,
      solve: around.solve,
    };
  }

  function* plan(school: School): Work<PlannedClass> {
    return yield* memory.whole({ plan: school }, function* (): Work<PlannedClass> {
      yield* memory.openParts();
      const { lessons, kits } = shipped;
      const made = yield* slices(planClass({ classFile: school.classFile, lessons, kits, seed: school.seed }, worldOf(school)));
      memory.closeParts();
      return made;
    });
  }

  function* order(school: School, seconds: number): Work<OrderPlan> {
    const key = { order: school };
    const kept = (yield* memory.recall(key)) as KeptOrder | undefined;
    if (kept && (kept.purchase.status !== "feasible" || kept.seconds >= seconds)) return kept.purchase;
    const { sittings, store, rates } = yield* plan(school);
    yield { done: 0, total: 1, doing: "order" };
    const { classFile, today } = school;
    const asked = { classFile, kits: shipped.kits, sittings, cupboard: store, rates, today, seconds };
    const purchase = yield* waitFor(planOrder(asked, worldOf(school)));
    memory.keep(key, { seconds, purchase } satisfies KeptOrder);
    return purchase;
  }

  function* papers(school: School, wish: PapersWish): Work<PapersAnswer> {
    const planned = yield* plan(school);
    const purchase = wish.kinds.includes("order") ? yield* order(school, usualSeconds) : null;
    const { lessons, kits } = shipped;
    const orders = paperOrders({ classFile: school.classFile, lessons, kits, plan: planned.plan, purchase }, wish);
    yield { done: 0, total: orders.length, doing: "papers" };
    const made = makePapers(orders, {
      language: languageFor(wish.language),
      paperSize: wish.paperSize,
      source: wish.source,
    });
    return {
      title: made.title,
      sheets: made.sheets,
      html: made.html,
      parts: orders.map(({ kind, input }, i) => ({
        kind,
        sitting: "planned" in input ? input.planned.id : null,
        sheets: made.parts[i] ?? 0,
      })),
    };
  }

  function* rehearse(id: string, school: School | null): Work<RehearsalResult> {
    return yield* memory.whole({ rehearse: id, school }, function* (): Work<RehearsalResult> {
      const { lessons, kits } = shipped;
      const lesson = lessons.get(id);
      if (!lesson) throw new Error(`no lesson ${id}`);
      const at = school && { classFile: school.classFile, kits, today: school.today };
      return yield* slices(named(rehearseForSchool(lesson, at, school?.seed ?? 1)));
    });
  }

  function readClass(file: string, bytes: Uint8Array): ReadAnswer<ClassFile> {
    const { lessons, kits } = shipped;
    const lessonMinutes = new Map([...lessons].map(([id, lesson]) => [id, lesson.minutes]));
    return asAnswer(readClassFile(file, decodeText(bytes).text, { lessonMinutes, kits }));
  }

  function* write(what: "class" | "order" | "stock" | "roster", school: School, group: string | null): Work<string> {
    const { classFile } = school;
    if (what === "class") return writeClassFile(classFile);
    // A spreadsheet set to a decimal comma takes semicolons between cells.
    const style = { separator: languageFor(classFile.language).decimalMark === "," ? (";" as const) : ("," as const) };
    if (what === "stock") return stockCsv(classFile.stock, style);
    if (what === "order") return orderCsv(classFile, (yield* order(school, usualSeconds)).lines, style);
    const pupils = classFile.classes.filter((c) => group === null || c.id === group).flatMap((c) => c.pupils);
    return rosterCsv(pupils, style);
  }

  return function* answer(question): Work<unknown> {
    switch (question.ask) {
      case "shipped":
        return shipped;
      case "plan":
        return (yield* plan(question.school)).plan;
      case "order":
        return yield* order(question.school, question.seconds);
      case "papers":
        return yield* papers(question.school, question.wish);
      case "rehearse":
        return yield* rehearse(question.lesson, question.school);
      case "readClass":
        return readClass(question.file, question.bytes);
      case "readRoster":
        return asAnswer(readRoster(question.file, question.bytes));
      case "readStock":
        return asAnswer(readStockCsv(question.file, question.bytes));
      case "write":
        return yield* write(question.what, question.school, question.class);
      case "trace":
        return yield* memory.whole(question, () => answerBench(question));
      default:
        return yield* answerBench(question);
    }
  };
}

/** Seconds for an order that is asked for on the way to something else. */
const usualSeconds = 30;

/** Problems of every kind are codes with data; the page needs no more of their types. */
const asAnswer = <Value>({ value, problems }: Reading<Value, FileProblem>): ReadAnswer<Value> => ({
  value,
  problems: problems as unknown as readonly EngineProblem[],
});

/** Stages of a rehearsal carry the room's name; the page's words do not. */
function* named<Value>(work: LongWork<Value>): LongWork<Value> {
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
    yield { ...step.value, doing: step.value.doing.replace(/^rehearsal\./, "") } satisfies Progress;
  }
}

/** Results under a hash of what they depend on: whole answers, and the rehearsals that plans are made from. */
function makeMemory({ version, recall, remember }: Surroundings) {
  const parts = new Map<string, unknown>();
  const used = new Set<string>();
  let areOpen = false;
  let isNew = false;
  const hashOf = (of: unknown) => contentHash({ version, of });
  const bundle = hashOf("rehearsals");
  const keep = (key: object, value: unknown) => remember(hashOf(key), value);

  return {
    keep,
    *recall(key: object): Work<unknown> {
      return yield* waitFor(recall(hashOf(key)));
    },
    *whole<Value>(key: object, make: () => Work<Value>): Work<Value> {
      const kept = (yield* waitFor(recall(hashOf(key)))) as Value | undefined;
      if (kept !== undefined) return kept;
      const made = yield* make();
      keep(key, made);
      return made;
    },
    /** `remember` of the world: the core calls it in the midst of its work, so it cannot wait for the page. */
    part<Value>(key: string, compute: () => Value): Value {
      used.add(key);
      if (!parts.has(key)) {
        parts.set(key, compute());
        isNew = true;
      }
      return parts.get(key) as Value;
    },
    hasPart: (key: string) => parts.has(key),
    *openParts(): Work<void> {
      used.clear();
      if (areOpen) return;
      const kept = yield* waitFor(recall(bundle));
      areOpen = true;
      if (kept instanceof Map) for (const [key, value] of kept) parts.set(key as string, value);
    },
    closeParts(): void {
      if (isNew) remember(bundle, new Map([...used].map((key) => [key, parts.get(key)])));
      isNew = false;
    },
  };
}
