// The six questions of one session: answers, which live on in a note, and what the engine says to them.
//
// One state for the whole page, so that going back and forth between the questions loses nothing and asks nothing twice.
// Does not know: fields, sentences, how a class is made of the answers (classOf.ts).
import { effect, type ReadonlySignal, signal } from "@preact/signals";
import type { Assumed } from "../../../school/changes/index.ts";
import type { OrderPlan } from "../../../school/order/index.ts";
import type { Plan } from "../../../school/readiness/index.ts";
import type { School } from "../../engine/engine.ts";
import type { Session } from "../../session/session.ts";
import { type Answers, noAnswers, readAnswers, writeAnswers } from "./answers.ts";
import { classOf } from "./classOf.ts";
import { type Asking, makeAsking } from "./makeAsking.ts";

export interface Questions {
  readonly answers: ReadonlySignal<Answers>;
  /** False until the note of an earlier visit was looked for. */
  readonly isLoaded: ReadonlySignal<boolean>;
  /** The class that the answers make; null before the first answer. */
  readonly school: ReadonlySignal<School | null>;
  /** What was taken for granted for it. */
  readonly assumed: ReadonlySignal<readonly Assumed[]>;
  readonly plan: Asking<School, Plan>;
  /** Asked for only where a price was said. */
  readonly order: Asking<School, OrderPlan>;
  set(answers: Answers): void;
}

const noteKey = "six-questions";
/** Seconds for the search; a first order of one kind of box is found at once. */
const orderSeconds = 10;
const all = new WeakMap<Session, Questions>();

export function questionsOf(session: Session): Questions {
  const known = all.get(session);
  if (known) return known;
  const answers = signal(noAnswers);
  const isLoaded = signal(false);
  const school = signal<School | null>(null);
  const assumed = signal<readonly Assumed[]>([]);
  const later = (ms: number, then: () => void) => void setTimeout(then, ms);
  const plan = makeAsking<School, Plan>((about, tell) => session.engine.plan(about, tell), later);
  const order = makeAsking<School, OrderPlan>((about, tell) => session.engine.order(about, orderSeconds, tell), later);
  const made: Questions = {
    answers,
    isLoaded,
    school,
    assumed,
    plan,
    order,
    set(next) {
      answers.value = next;
      void session.store.setNote(noteKey, writeAnswers(next));
    },
  };
  all.set(session, made);
  void session.store.note(noteKey).then((note) => {
    answers.value = readAnswers(note);
    isLoaded.value = true;
  });
  effect(() => {
    const shipped = session.shipped.value;
    const said = answers.value;
    if (shipped === null || Object.values(said).every((answer) => answer === null)) {
      school.value = null;
      return;
    }
    const made = classOf(said, shipped, session.language.peek(), session.today.value);
    assumed.value = made?.assumed ?? [];
    if (made === null) {
      school.value = null;
      return;
    }
    const about = { classFile: made.value, today: session.today.value, seed: 1 };
    school.value = about;
    plan.ask(about);
    if (about.classFile.suppliers.length > 0) order.ask(about);
  });
  return made;
}
