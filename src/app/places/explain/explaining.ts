// What is being explained in one session: a program, a message of the up-loader, and in which words the class's compiler speaks.
//
// One state for the whole page, so that going away and coming back loses nothing. The choice of words is a note of this computer.
// Does not know: fields, sentences.
import { type ReadonlySignal, signal } from "@preact/signals";
import type { Wording } from "../../../bench/program/index.ts";
import type { SetupMessage } from "../../../bench/setup/index.ts";
import type { BenchAnswers, BenchQuestion } from "../../engine/benchQuestions.ts";
import type { Session } from "../../session/session.ts";
import { type Asking, makeAsking } from "../questions/makeAsking.ts";

type ProgramQuestion = BenchQuestion & { readonly ask: "explain" };
type MessageQuestion = BenchQuestion & { readonly ask: "explainMessage" };

/** An answer with what it is about, because the field may hold something newer. */
export interface ExplainedProgram {
  readonly file: string;
  readonly rows: readonly string[];
  readonly said: BenchAnswers["explain"];
}

export interface Explaining {
  readonly program: ReadonlySignal<string>;
  setProgram(text: string): void;
  readonly wording: ReadonlySignal<Wording>;
  /** Kept, and what was explained already is explained again in the other words. */
  setWording(wording: Wording): void;
  readonly programs: Asking<ProgramQuestion, ExplainedProgram>;
  readonly message: ReadonlySignal<string>;
  setMessage(text: string): void;
  /** Chosen from the list in place of a text. */
  readonly chosen: ReadonlySignal<SetupMessage | null>;
  choose(message: SetupMessage | null): void;
  readonly messages: Asking<MessageQuestion, BenchAnswers["explainMessage"]>;
}

/** Signs of a text; the chip holds 32 kB of program, and no program for it is ten times as long. */
export const mostSigns = 300_000;
const noteKey = "compiler-words";
const all = new WeakMap<Session, Explaining>();

export function explainingOf(session: Session): Explaining {
  const known = all.get(session);
  if (known) return known;
  const { store, engine } = session;
  const program = signal("");
  const wording = signal<Wording>("old");
  const message = signal("");
  const chosen = signal<SetupMessage | null>(null);
  const later = (ms: number, then: () => void) => void setTimeout(then, ms);
  let last: ProgramQuestion | null = null;
  const programs = makeAsking<ProgramQuestion, ExplainedProgram>((question, onProgress) => {
    last = question;
    const job = engine.bench(question, onProgress);
    const answer = job.answer.then((said) => ({ file: question.file, rows: rowsOf(question.text), said }));
    return { answer, stop: job.stop };
  }, later);
  const made: Explaining = {
    program,
    setProgram(text) {
      program.value = text;
    },
    wording,
    setWording(words) {
      wording.value = words;
      void store.setNote(noteKey, words);
      if (last !== null) programs.ask({ ...last, wording: words });
    },
    programs,
    message,
    setMessage(text) {
      message.value = text;
    },
    chosen,
    choose(kind) {
      chosen.value = kind;
    },
    messages: makeAsking((question: MessageQuestion, onProgress) => engine.bench(question, onProgress), later),
  };
  void Promise.resolve(store.note(noteKey)).then((words) => {
    if (words === "new" || words === "old") wording.value = words;
  });
  all.set(session, made);
  return made;
}

/** The lines as the explanation counts them. */
function rowsOf(text: string): readonly string[] {
  return text.split("\n").map((row) => row.replace(/\r$/, ""));
}
