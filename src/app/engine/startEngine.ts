// The engine as the page sees it: questions go out, answers come back as promises, and each can be stopped.
//
// Two hands answer. The quick one plans, reads, writes and prints; the slow one buys, because the solver hears nothing while it
// works and a new plan must not wait for it. Each starts when it is first asked, the quick one before that where the page says so. A hand that was stopped in the midst of the
// solver, failed or fell silent is ended, and the next question starts a fresh one. What was remembered lies here, so both
// hands and the next ones share it, and behind it lies what the page keeps on this computer.
// Does not know: how an answer is found, screens, how things are kept.
import type { PaperKind } from "../../documents/index.ts";
import type { Engine, Job, OnProgress, Shipped } from "./engine.ts";
import { gunzip } from "./gunzip.ts";
import { makeHand } from "./makeHand.ts";
import { packedBlock } from "./packedBlocks.ts";
import { fromPlainText } from "./plainText.ts";
import { trustOwn } from "./trustOwn.ts";
import type { Question } from "./wire.ts";

/** Where answers outlive the page: the functions of the store. */
export interface EngineMemory {
  recall(hash: string): Promise<unknown>;
  remember(hash: string, value: unknown): Promise<void>;
}

/** Answers held in the page itself: a few plans, orders and rehearsals. */
const mostHeld = 12;

/** @param memory may come later, and may be left out; then nothing outlives the page. */
export function startEngine(memory?: EngineMemory | Promise<EngineMemory>): Engine {
  trustOwn();
  const shared = hold(memory);
  const quick = makeHand(shared);
  const slow = makeHand(shared);
  const ask = <Answer>(question: Question, onProgress?: OnProgress): Job<Answer> =>
    (isSlow(question) ? slow : quick).ask(question, onProgress) as Job<Answer>;
  let known: Shipped | null = null;
  return {
    start: quick.start,
    shipped() {
      if (known !== null) return ready(known);
      // The page unpacks it without the worker; the worker can where the browser cannot.
      let asked: Job<Shipped> | null = null;
      const answer = unpackedHere().then(async (here) => {
        if (here === null) asked = ask<Shipped>({ ask: "shipped" });
        known ??= here ?? (await asked!.answer);
        return known;
      });
      return { answer, stop: () => asked?.stop() };
    },
    plan: (school, onProgress) => ask({ ask: "plan", school }, onProgress),
    order: (school, seconds, onProgress) => ask({ ask: "order", school, seconds }, onProgress),
    papers: (school, wish, onProgress) => ask({ ask: "papers", school, wish }, onProgress),
    rehearse: (lesson, school, onProgress) => ask({ ask: "rehearse", lesson, school }, onProgress),
    bench: ask,
    readClass(file, bytes) {
      // The demo was read when the page was built.
      if (known !== null && new TextDecoder().decode(bytes) === known.demo.text)
        return ready({ value: known.demo.classFile, problems: [] });
      return ask({ ask: "readClass", file, bytes });
    },
    readRoster: (file, bytes) => ask({ ask: "readRoster", file, bytes }),
    readStock: (file, bytes) => ask({ ask: "readStock", file, bytes }),
    write: (what, school, extra) => ask({ ask: "write", what, school, class: extra?.class ?? null }),
    get runs() {
      return quick.runs === "not yet" ? slow.runs : quick.runs;
    },
  };
}

const ready = <Answer>(answer: Answer): Job<Answer> => ({ answer: Promise.resolve(answer), stop: () => {} });

/** What comes with Benchday, or null where this browser cannot unpack it or the file is not whole. */
async function unpackedHere(): Promise<Shipped | null> {
  try {
    const bytes = await gunzip((await packedBlock("shipped")) ?? "");
    return bytes === null ? null : (fromPlainText(new TextDecoder().decode(bytes)) as Shipped);
  } catch {
    return null;
  }
}

const orderKind: PaperKind = "order";

function isSlow(question: Question): boolean {
  if (question.ask === "papers") return question.wish.kinds.includes(orderKind);
  return question.ask === "order" || (question.ask === "write" && question.what === "order");
}

function hold(memory: EngineMemory | Promise<EngineMemory> | undefined) {
  const held = new Map<string, unknown>();
  const put = (hash: string, value: unknown) => {
    held.delete(hash);
    held.set(hash, value);
    for (const oldest of [...held.keys()].slice(0, Math.max(0, held.size - mostHeld))) held.delete(oldest);
  };
  return {
    async recall(hash: string): Promise<unknown> {
      if (held.has(hash)) return held.get(hash);
      try {
        const value = (await (await memory)?.recall(hash)) ?? undefined;
        if (value !== undefined) put(hash, value);
        return value;
      } catch {
        // What cannot be recalled is worked out again.
        return undefined;
      }
    },
    remember(hash: string, value: unknown): void {
      put(hash, value);
      Promise.resolve(memory)
        .then((shelf) => shelf?.remember(hash, value))
        .catch(() => {
          // It is held here; that it does not outlive the page is the store's to tell.
        });
    },
  };
}
