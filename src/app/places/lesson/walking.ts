// A walk through a lesson's program in one session: where it stands, what a hand did, which program it is.
//
// Lesson page and wall share it, so that the wall begins where the page stands. Moves that come while one is worked out wait for
// their turn. Each question is whole in itself: where the engine was ended, the next move begins from the same place.
// Does not know: how a walk is made, what is drawn.
import { type ReadonlySignal, signal } from "@preact/signals";
import type { Progress } from "../../../base/index.ts";
import type { Lesson, ProgramFile, Stimulus } from "../../../bench/lesson/index.ts";
import type { HandAct } from "../../../bench/rehearsal/index.ts";
import type { WalkAnswer, WalkMove } from "../../engine/benchQuestions.ts";
import type { Job } from "../../engine/engine.ts";
import { troubleOf } from "../../session/answering.ts";
import type { Session } from "../../session/session.ts";
import { settledFor } from "./settled.ts";

export interface Walking {
  /** The listing gives way to the walk. */
  readonly isOpen: ReadonlySignal<boolean>;
  setOpen(open: boolean): void;
  readonly program: ReadonlySignal<ProgramFile>;
  /** Null: the lesson's own. It begins anew. */
  setProgram(program: ProgramFile | null): void;
  readonly isOwn: ReadonlySignal<boolean>;
  /** Null where the lesson's stimuli come at their times. */
  readonly acts: ReadonlySignal<readonly HandAct[] | null>;
  /** It begins anew. */
  setByHand(byHand: boolean): void;
  /** Sets something at the table at the moment where the walk stands. */
  doByHand(stimulus: Stimulus): void;
  readonly answer: ReadonlySignal<WalkAnswer | null>;
  /** The line that was asked for and does not come; null otherwise. */
  readonly missed: ReadonlySignal<number | null>;
  /** Work that has run for more than a second. */
  readonly progress: ReadonlySignal<Progress | null>;
  readonly trouble: ReadonlySignal<string | null>;
  move(move: WalkMove): void;
  stop(): void;
}

/** s after the step at which a hand acts: the next statement sees it. */
const momentAfter = 1e-6;
/** ms before progress is shown (Nielsen's limit of an unbroken train of thought, from memory). */
const progressAfter = 1000;
/** Presses that may wait: more of them were an accident. */
const mostWaiting = 30;

const all = new WeakMap<Session, Map<string, Walking>>();

/** @param shown the lesson's program in the language of the page. */
export function walkingOf(session: Session, lesson: Lesson, shown: ProgramFile): Walking {
  const ofSession = all.get(session) ?? new Map<string, Walking>();
  all.set(session, ofSession);
  const key = `${lesson.id} ${shown.file}`;
  const known = ofSession.get(key) ?? makeWalking(session, lesson, shown);
  ofSession.set(key, known);
  return known;
}

function makeWalking(session: Session, lesson: Lesson, shown: ProgramFile): Walking {
  const isOpen = signal(false);
  const program = signal(shown);
  const isOwn = signal(true);
  const acts = signal<readonly HandAct[] | null>(null);
  const answer = signal<WalkAnswer | null>(null);
  const missed = signal<number | null>(null);
  const progress = signal<Progress | null>(null);
  const trouble = signal<string | null>(null);
  const waiting: WalkMove[] = [];
  let job: Job<WalkAnswer> | null = null;
  let turn = 0;

  async function work(): Promise<void> {
    const move = job === null ? waiting.shift() : undefined;
    if (move === undefined) return;
    const mine = turn;
    trouble.value = null;
    const timer = setTimeout(() => {
      if (mine === turn) progress.value = { done: 0, total: 1, doing: "walk" };
    }, progressAfter);
    job = session.engine.bench({
      ask: "walk",
      lesson: lesson.id,
      program: program.peek() === lesson.program ? null : program.peek(),
      items: settledFor(session.classFile.peek(), lesson.id).items,
      acts: acts.peek(),
      from: answer.peek()?.step?.number ?? 0,
      move,
    });
    try {
      const came = await job.answer;
      if (mine === turn) {
        answer.value = came;
        missed.value = came.never && move.to === "line" ? move.line : null;
      }
    } catch (fault) {
      if (mine === turn) {
        waiting.length = 0;
        trouble.value = troubleOf(fault);
      }
    }
    clearTimeout(timer);
    if (mine !== turn) return;
    job = null;
    progress.value = null;
    void work();
  }
  function move(to: WalkMove): void {
    if (waiting.length < mostWaiting) waiting.push(to);
    void work();
  }
  function beginAnew(): void {
    turn += 1;
    job?.stop();
    job = null;
    waiting.length = 0;
    answer.value = null;
    missed.value = null;
    progress.value = null;
    move({ to: "start" });
  }
  return {
    isOpen,
    setOpen(open) {
      isOpen.value = open;
      if (open && answer.peek() === null && job === null) move({ to: "start" });
    },
    program,
    setProgram(own) {
      program.value = own ?? shown;
      isOwn.value = own === null;
      beginAnew();
    },
    isOwn,
    acts,
    setByHand(byHand) {
      acts.value = byHand ? [] : null;
      beginAnew();
    },
    doByHand(stimulus) {
      const list = acts.peek();
      const at = (answer.peek()?.step?.micros ?? 0) / 1e6 + momentAfter;
      // Whoever went back and does something else there begins another story.
      if (list === null) return;
      acts.value = [...list.filter((act) => act.at < at), { at, stimulus }];
      move({ to: "here" });
    },
    answer,
    missed,
    progress,
    trouble,
    move,
    stop() {
      waiting.length = 0;
      job?.stop();
    },
  };
}
