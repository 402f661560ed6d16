// An answer that is worked out beside the page: the old one stays readable, progress shows after a second, the work can be stopped.
//
// A newer question takes the place of the older one. What a stopped or broken question leaves is told as trouble, never thrown.
// Does not know: which question.
import { type ReadonlySignal, signal } from "@preact/signals";
import type { Progress } from "../../base/index.ts";
import { EngineBroken, type Job, type OnProgress, type School, Stopped } from "../engine/engine.ts";
import type { Answer } from "./session.ts";

/** ms before progress is shown (Nielsen's limit of an unbroken train of thought, from memory). */
const progressAfter = 1000;

export interface Answering<Value> {
  readonly answer: ReadonlySignal<Answer<Value>>;
  ask(school: School): void;
  /** The value belongs to an older class from now on. Like all here it may be called from an effect, and subscribes to nothing. */
  grow(): void;
  /** Forgets the value: it belongs to another class. */
  clear(): void;
  stop(): void;
}

const nothing = { value: null, fresh: false, progress: null, trouble: null } as const;

/** @param start asks the engine. @param now ms of a clock that only goes forward. */
export function answering<Value>(
  start: (school: School, onProgress: OnProgress) => Job<Value>,
  now: () => number,
): Answering<Value> {
  const answer = signal<Answer<Value>>(nothing);
  let job: Job<Value> | null = null;
  let asked = 0;
  /** How often the class has changed: work that began before a change brings an old answer. */
  let changes = 0;
  const set = (change: Partial<Answer<Value>>): void => {
    answer.value = { ...answer.peek(), ...change };
  };
  const drop = (): void => {
    asked += 1;
    job?.stop();
    job = null;
  };
  return {
    answer,
    ask(school) {
      drop();
      const mine = asked;
      const changesThen = changes;
      const since = now();
      set({ fresh: false, progress: null, trouble: null });
      const onProgress = (progress: Progress): void => {
        if (mine === asked && now() - since > progressAfter) set({ progress });
      };
      const started = start(school, onProgress);
      job = started;
      started.answer.then(
        (value) => {
          if (mine !== asked) return;
          job = null;
          answer.value = { value, fresh: changesThen === changes, progress: null, trouble: null };
        },
        (error: unknown) => {
          if (mine !== asked) return;
          job = null;
          set({ progress: null, trouble: troubleOf(error) });
        },
      );
    },
    grow() {
      changes += 1;
      if (answer.peek().value !== null) set({ fresh: false });
    },
    clear() {
      drop();
      answer.value = nothing;
    },
    stop() {
      if (job === null) return;
      drop();
      set({ progress: null, trouble: "stopped" });
    },
  };
}

/** A key of the catalogue under `engine`. */
export function troubleOf(error: unknown): string {
  if (error instanceof Stopped) return "stopped";
  return error instanceof EngineBroken ? error.remedy : "broken";
}
