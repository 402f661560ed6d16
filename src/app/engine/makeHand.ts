// One running engine with its questions: starts it lazily, watches whether it lives, ends it when it must.
//
// Does not know: which question goes to which hand, what the answers mean.
import { EngineBroken, type EngineTrouble, type Job, type OnProgress, Stopped } from "./engine.ts";
import { type Host, openHost } from "./openHost.ts";
import { builtVersion, packedBlock } from "./packedBlocks.ts";
import type { FromEngine, Question } from "./wire.ts";

export interface Hand {
  ask(question: Question, onProgress?: OnProgress): Job<unknown>;
  /** Starts before it is asked. Where that fails, the first question tries again and tells. */
  start(): void;
  readonly runs: "worker" | "page" | "not yet";
}

export interface SharedMemory {
  recall(hash: string): Promise<unknown>;
  remember(hash: string, value: unknown): void;
}

interface Pending {
  readonly question: Question;
  readonly onProgress: OnProgress | undefined;
  readonly resolve: (value: unknown) => void;
  readonly reject: (fault: Error) => void;
  /** How often it was handed to an engine; one that broke two of them is not tried again. */
  tries: number;
}

/** A stop that is not heard within this time is one inside the solver: the worker is ended. */
const stopMs = 400;
/** A sign of life is asked for this often, */
const beatMs = 1000;
/**
 * and after so many in vain the worker is given up and its questions go to a fresh one. Beats, not a clock: a laptop that slept
 * has missed none. Work is done in slices, so that on the slowest laptop a sign comes within three.
 */
const mostMissed = 7;

export function makeHand(memory: SharedMemory): Hand {
  const pending = new Map<number, Pending>();
  /** Stopped here, and not yet confirmed by the engine. */
  const stopping = new Set<number>();
  let lastId = 0;
  let runs: Hand["runs"] = "not yet";
  let host: Host | null = null;
  let isOpening = false;
  let beat: ReturnType<typeof setInterval> | undefined;
  let missed = 0;

  async function open(): Promise<void> {
    if (host || isOpening) return;
    isOpening = true;
    try {
      const opened = await openHost({ hear, lost: (detail) => lose("broken", detail) });
      const shipped = await packedBlock("shipped");
      if (shipped === null) throw new EngineBroken("missing", "shipped");
      host = opened;
      runs = opened.where;
      opened.send({ say: "begin", shipped, version: builtVersion() });
      for (const id of pending.keys()) hand(id);
      watch();
    } catch (fault) {
      refuseAll(fault instanceof EngineBroken ? fault : new EngineBroken("broken", String(fault)));
    } finally {
      isOpening = false;
    }
  }

  function hand(id: number): void {
    const task = pending.get(id);
    if (!task || !host) return;
    task.tries += 1;
    host.send({ say: "ask", id, question: task.question });
  }

  function watch(): void {
    clearInterval(beat);
    missed = 0;
    if (host?.where !== "worker") return;
    beat = setInterval(() => {
      if (pending.size === 0) {
        clearInterval(beat);
        beat = undefined;
        return;
      }
      missed += 1;
      if (missed > mostMissed) startAfresh();
      else host?.send({ say: "there?" });
    }, beatMs);
  }

  function close(): void {
    clearInterval(beat);
    beat = undefined;
    host?.end();
    host = null;
    stopping.clear();
  }

  function lose(trouble: EngineTrouble, detail: string): void {
    close();
    refuseAll(new EngineBroken(trouble, detail));
  }

  function refuseAll(fault: EngineBroken): void {
    for (const [id, task] of [...pending]) {
      pending.delete(id);
      task.reject(fault);
    }
  }

  /** Ends the engine; what it still had to answer goes to a fresh one. */
  function startAfresh(): void {
    close();
    for (const [id, task] of [...pending]) {
      if (task.tries < 2) continue;
      pending.delete(id);
      task.reject(new EngineBroken("broken", "asked twice"));
    }
    if (pending.size > 0) void open();
  }

  function hear(message: FromEngine): void {
    missed = message.say === "deaf" ? -Math.ceil((message.seconds * 1000) / beatMs) : 0;
    switch (message.say) {
      case "progress":
        pending.get(message.id)?.onProgress?.(message.progress);
        break;
      case "answer":
        pending.get(message.id)?.resolve(message.value);
        pending.delete(message.id);
        break;
      case "stopped":
        stopping.delete(message.id);
        break;
      case "broken":
        pending.get(message.id)?.reject(new EngineBroken(message.trouble, message.detail));
        pending.delete(message.id);
        startAfresh();
        break;
      case "recall": {
        const asker = host;
        void memory.recall(message.hash).then((value) => asker?.send({ say: "recalled", hash: message.hash, value }));
        break;
      }
      case "remember":
        memory.remember(message.hash, message.value);
        break;
      case "wantSolver": {
        const asker = host;
        void packedBlock("solver").then((packed) => asker?.send({ say: "solver", packed: packed ?? "" }));
        break;
      }
      default:
        break;
    }
  }

  function stop(id: number): void {
    const task = pending.get(id);
    if (!task) return;
    pending.delete(id);
    task.reject(new Stopped("stopped"));
    if (!host || task.tries === 0) return;
    stopping.add(id);
    host.send({ say: "stop", id });
    const asked = host;
    // In the page a stop is heard at the latest when the solver is done; there is nothing to end.
    if (host.where === "worker")
      setTimeout(() => {
        if (host === asked && stopping.has(id)) startAfresh();
      }, stopMs);
  }

  return {
    start: () => void open(),
    ask(question, onProgress) {
      lastId += 1;
      const id = lastId;
      const answer = new Promise<unknown>((resolve, reject) => {
        pending.set(id, { question, onProgress, resolve, reject, tries: 0 });
      });
      if (host) {
        hand(id);
        if (beat === undefined) watch();
      } else void open();
      return { answer, stop: () => stop(id) };
    },
    get runs() {
      return runs;
    },
  };
}
