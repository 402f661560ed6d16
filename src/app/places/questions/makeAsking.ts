// One question at a time to the engine: the newest wins, its progress is shown after a second, it can be stopped.
//
// What was known before stays readable while a new answer is worked out. An answer that comes after a newer question was
// asked is thrown away, whether or not the engine could still be stopped.
// Does not know: what is asked, screens.
import { type ReadonlySignal, signal } from "@preact/signals";
import { EngineBroken, type Job, type OnProgress, Stopped } from "../../engine/engine.ts";
import type { Answer } from "../../session/session.ts";

export interface Asking<Question, Value> {
  readonly answer: ReadonlySignal<Answer<Value>>;
  /** The same question again, while it is asked or answered, asks nothing. */
  ask(question: Question): void;
  /** Ends the work; what is known stays. */
  stop(): void;
  /** Asks the last question once more, after a stop or trouble. */
  again(): void;
}

/** Work that takes longer shows how far it is (Nielsen's limit for a thought that is not interrupted, from memory). */
export const silentMs = 1000;

const nothing = { value: null, fresh: false, progress: null, trouble: null } as const;

/** @param later calls back after so many milliseconds. @returns how to ask. Questions are told apart by their JSON. */
export function makeAsking<Question, Value>(
  begin: (question: Question, onProgress: OnProgress) => Job<Value>,
  later: (ms: number, then: () => void) => void,
): Asking<Question, Value> {
  const answer = signal<Answer<Value>>(nothing);
  let turn = 0;
  let job: Job<Value> | null = null;
  let asked: { readonly question: Question; readonly key: string } | null = null;

  function start(question: Question, key: string): void {
    turn += 1;
    const mine = turn;
    job?.stop();
    asked = { question, key };
    answer.value = { ...answer.peek(), fresh: false, progress: null, trouble: null };
    let isSlow = false;
    let latest: Answer<Value>["progress"] = null;
    const show = () => {
      if (mine === turn && isSlow && latest !== null && job !== null) answer.value = { ...answer.peek(), progress: latest };
    };
    later(silentMs, () => {
      isSlow = true;
      show();
    });
    const mineJob = begin(question, (progress) => {
      latest = progress;
      show();
    });
    job = mineJob;
    mineJob.answer.then(
      (value) => {
        if (mine !== turn) return;
        job = null;
        answer.value = { value, fresh: true, progress: null, trouble: null };
      },
      (fault: unknown) => {
        if (mine !== turn) return;
        job = null;
        answer.value = { ...answer.peek(), progress: null, trouble: troubleOf(fault) };
      },
    );
  }

  return {
    answer,
    ask(question) {
      const key = JSON.stringify(question);
      if (asked?.key === key && (job !== null || answer.peek().fresh)) return;
      start(question, key);
    },
    stop: () => job?.stop(),
    again: () => {
      if (asked !== null) start(asked.question, asked.key);
    },
  };
}

function troubleOf(fault: unknown): string {
  if (fault instanceof Stopped) return "stopped";
  return fault instanceof EngineBroken ? fault.remedy : "broken";
}
