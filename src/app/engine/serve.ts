// The engine's side of the talk: takes questions, works on them in slices, tells progress, stops when told.
//
// One thing at a time, the most urgent first: short questions before long ones, and of two plans the newer. Between slices the
// event loop runs, so that a worker hears "stop" and a page stays alive. Only the solver works in one piece.
// Does not know: whether it runs in a worker or in the page, how an answer is found.
import type { IntegerModel, IntegerOptions, IntegerOutcome, Progress } from "../../base/index.ts";
import { type Answerer, makeAnswerer } from "./answerer.ts";
import type { EngineTrouble, Shipped } from "./engine.ts";
import { loadSolver } from "./loadSolver.ts";
import { fromPlainText } from "./plainText.ts";
import { unpackText } from "./unpack.ts";
import type { FromEngine, Question, ToEngine } from "./wire.ts";
import type { Wait, Work } from "./work.ts";

/** Milliseconds of work between two looks at the event loop: under the 50 that a person notices. */
const sliceMs = 30;
/** Milliseconds between two tellings of progress. */
const tellMs = 100;

interface Task {
  readonly id: number;
  readonly question: Question;
  readonly work: Work<unknown>;
  isWaiting: boolean;
  /** What a wait gave, to be handed in at the next step. */
  given: { readonly value: unknown } | { readonly fault: unknown } | null;
  toldAt: number;
}

/** @returns where the page's messages go in. */
export function serve(tell: (message: FromEngine) => void): (message: ToEngine) => void {
  const tasks: Task[] = [];
  const stopped = new Set<number>();
  const recalling = new Map<string, ((value: unknown) => void)[]>();
  let answerer: Promise<Answerer> | null = null;
  let isWorking = false;
  let solver: Promise<Solve> | null = null;
  let giveSolver: (packed: string) => void = () => {};

  function begin(packed: string, version: string): Promise<Answerer> {
    return unpackText(packed).then((text) =>
      makeAnswerer({
        shipped: fromPlainText(text) as Shipped,
        version,
        recall: (hash) =>
          new Promise((resolve) => {
            recalling.set(hash, [...(recalling.get(hash) ?? []), resolve]);
            tell({ say: "recall", hash });
          }),
        remember: (hash, value) => tell({ say: "remember", hash, value }),
        solve: async (model, options) => {
          solver ??= new Promise<string>((resolve) => {
            giveSolver = resolve;
            tell({ say: "wantSolver" });
          }).then(loadSolver);
          const solve = await solver;
          tell({ say: "deaf", seconds: options.seconds });
          // The word must leave before the thread is busy.
          await breathe();
          return solve(model, options);
        },
      }),
    );
  }

  async function ask(id: number, question: Question): Promise<void> {
    try {
      if (answerer === null) throw new Error("asked before it was begun");
      const work = (await answerer)(question);
      if (stopped.delete(id)) tell({ say: "stopped", id });
      else tasks.push({ id, question, work, isWaiting: false, given: null, toldAt: 0 });
    } catch (fault) {
      tell({ say: "broken", id, ...troubleOf(fault) });
    }
    void workOn();
  }

  async function workOn(): Promise<void> {
    if (isWorking) return;
    isWorking = true;
    for (let task = mostUrgent(tasks); task; task = mostUrgent(tasks)) {
      slice(task);
      await breathe();
    }
    isWorking = false;
  }

  function end(task: Task, message: FromEngine): void {
    tasks.splice(tasks.indexOf(task), 1);
    tell(message);
  }

  function slice(task: Task): void {
    const until = performance.now() + sliceMs;
    const { id } = task;
    try {
      while (performance.now() < until && !task.isWaiting) {
        const { given } = task;
        task.given = null;
        const step = given && "fault" in given ? task.work.throw(given.fault) : task.work.next(given?.value);
        if (step.done) {
          end(task, { say: "answer", id, value: step.value });
          return;
        }
        if ("wait" in step.value) waitWith(task, step.value);
        else tellProgress(task, step.value);
      }
    } catch (fault) {
      end(task, { say: "broken", id, ...troubleOf(fault) });
    }
  }

  function waitWith(task: Task, { wait }: Wait): void {
    task.isWaiting = true;
    const go = (given: Task["given"]) => {
      task.isWaiting = false;
      task.given = given;
      void workOn();
    };
    wait.then(
      (value) => go({ value }),
      (fault) => go({ fault }),
    );
  }

  function tellProgress(task: Task, progress: Progress): void {
    const now = performance.now();
    if (now - task.toldAt < tellMs) return;
    task.toldAt = now;
    tell({ say: "progress", id: task.id, progress });
  }

  function stop(id: number): void {
    const task = tasks.find((t) => t.id === id);
    if (task) end(task, { say: "stopped", id });
    else stopped.add(id);
  }

  return (message) => {
    if (message.say === "begin") answerer = begin(message.shipped, message.version);
    else if (message.say === "ask") void ask(message.id, message.question);
    else if (message.say === "stop") stop(message.id);
    else if (message.say === "solver") giveSolver(message.packed);
    else if (message.say === "there?") tell({ say: "here" });
    else {
      for (const go of recalling.get(message.hash) ?? []) go(message.value);
      recalling.delete(message.hash);
    }
  };
}

type Solve = (model: IntegerModel, options: IntegerOptions) => Promise<IntegerOutcome>;

/** The long ones last, and of those a plan before what is printed or bought. */
const urgency: Readonly<Record<Question["ask"], number>> = {
  shipped: 0,
  readClass: 1,
  readRoster: 1,
  readStock: 1,
  write: 1,
  explain: 1,
  explainMessage: 1,
  walk: 1,
  trace: 1,
  plan: 2,
  rehearse: 3,
  papers: 4,
  order: 5,
};

function mostUrgent(tasks: readonly Task[]): Task | undefined {
  const ready = tasks.filter((t) => !t.isWaiting);
  return ready.sort((a, b) => urgency[a.question.ask] - urgency[b.question.ask] || b.id - a.id)[0];
}

/** Lets messages in and the page draw. A message port is quicker than a timer, which browsers hold back. */
function breathe(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });
}

function troubleOf(fault: unknown): { trouble: EngineTrouble; detail: string } {
  const detail = fault instanceof Error ? `${fault.name}: ${fault.message}` : String(fault);
  const isMemory = /out of memory|allocation failed|Invalid (?:array|typed array|string) length|cannot enlarge memory|OOM/i.test(
    detail,
  );
  return { trouble: isMemory ? "memory" : "broken", detail };
}
