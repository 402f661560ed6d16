// The session: opens a class, does acts on it, has it kept, and has its plan worked out.
//
// Every act goes one way: the named change is applied, the undo list grows, the text goes to the store, the plan is asked for anew
// a moment later. What another tab keeps comes in the same way it is opened. Time, store and engine are handed in, so that a test can hold them.
// Does not know: screens, how changes are done, how things are kept.
import { batch, computed, effect, signal } from "@preact/signals";
import { contentHash, type Day, type Progress } from "../../base/index.ts";
import { languageFor } from "../../language/index.ts";
import { type ClassFile, writeClassFile } from "../../school/file/index.ts";
import type { OrderPlan } from "../../school/order/index.ts";
import type { Plan } from "../../school/readiness/index.ts";
import type { Engine, Job, OnProgress, School, Shipped } from "../engine/engine.ts";
import { fetchLater, later } from "../laterCode.ts";
import type { KeptState, OpenClass, Snapshot, Store } from "../store/index.ts";
import { type Acts, beginActs, openActs, type Step } from "./acts.ts";
import { answering } from "./answering.ts";
import { sayAct } from "./sayAct.ts";
import type { Act, HeldClass, Notice, Session } from "./session.ts";
import { minuteOf, startTime } from "./time.ts";

export interface SessionWorld {
  readonly engine: Engine;
  readonly store: Store;
  /** Resolves when the store has opened, or has found that it cannot. */
  readonly opened: Promise<unknown>;
  readonly now: () => Date;
  /** A new id for a class on this computer. */
  readonly freshId: () => string;
  readonly saveFile: (name: string, text: string, type: string) => Promise<void>;
  /** A language asked for from outside, above that of the class: for looking at a translation. */
  readonly forcedLanguage: string | null;
  readonly browserLanguage: string;
  /** Which class is opened first. */
  readonly opensFirst: "last" | "demo";
}

/** The demo's id in the store: it is one class, however often it is opened. */
const demoId = "demo";
/** ms after the last change before the plan is asked for. */
const planAfter = 150;
/** Seconds that the solver may take before it gives the best it has. */
const orderSeconds = 30;
/** Seeds everything that chance decides, so that the page and the commands say the same. */
const seed = 1;
/** ms after which a storage that was held is looked at again. */
const askAgainAfter = 1000;
/** ms that the demo waits for the storage before its plan is worked out all the same. */
const planWithoutAfter = 1000;
/** Minutes that clocks may differ before a person is told. */
const clockSlack = 10;

const note = {
  last: "last-class",
  language: "language",
  group: (id: string): string => `group:${id}`,
  copy: (id: string): string => `copy:${id}`,
};

/** Makes the session and opens a class; the demo stands before the storage has answered, and what is done to it waits for that. */
export async function makeSession(world: SessionWorld): Promise<Session> {
  const { engine, store, now } = world;
  const time = startTime(now);
  const shipped = signal<Shipped | null>(null);
  const open = signal<OpenClass | null>(null);
  const acts = signal<Acts | null>(null);
  const groupId = signal<string | null>(null);
  const pageLanguage = signal(world.browserLanguage);
  const lastAct = signal<Act | null>(null);
  const notice = signal<Notice | null>(null);
  const copy = signal<string | null>(null);
  const thrown = signal<HeldClass | null>(null);
  const left = signal<readonly HeldClass[]>([]);
  const running = signal<Progress | null>(null);
  /** Resolves when the class on screen is open in the store; null where nothing waits for that. */
  const entering = signal<Promise<void> | null>(null);
  const entersSlowly = signal(false);

  const shippedAnswer = engine.shipped().answer.then((files) => {
    shipped.value = files;
    return files;
  });
  shippedAnswer.catch(() => {
    // Told by the plan, which needs them too.
  });

  const classFile = computed(() => acts.value?.classFile ?? null);
  const isDemo = computed(() => open.value?.id === demoId || entering.value !== null);
  const today = computed<Day>(() => (isDemo.value && shipped.value ? shipped.value.demo.today : time.day.value));
  const kept = computed<KeptState>(() => open.value?.state.value ?? { word: "nothing yet" });
  const group = computed(() => {
    const groups = classFile.value?.classes ?? [];
    return groups.find((g) => g.id === groupId.value) ?? groups[0] ?? null;
  });
  const language = computed(() => languageFor(world.forcedLanguage ?? classFile.value?.language ?? pageLanguage.value));
  const text = computed(() => (classFile.value ? writeClassFile(classFile.value) : ""));
  const school = computed<School | null>(() => {
    const file = classFile.value;
    // Another state of it may be kept: nothing is worked out for a moment's sake.
    return file && (entering.value === null || entersSlowly.value) ? { classFile: file, today: today.value, seed } : null;
  });
  const ms = (): number => performance.now();
  const plan = answering<Plan>((s, p) => engine.plan(s, p), ms);
  const order = answering<OrderPlan>((s, p) => engine.order(s, orderSeconds, p), ms);

  // A change makes what was worked out old at once, and asks anew when the changes pause.
  let timer: ReturnType<typeof setTimeout> | undefined;
  const askSoon = (asked: School | null): void => {
    clearTimeout(timer);
    if (asked === null) {
      plan.clear();
      order.clear();
      return;
    }
    plan.grow();
    order.grow();
    timer = setTimeout(() => plan.ask(asked), plan.answer.peek().value === null ? 0 : planAfter);
  };
  effect(() => askSoon(school.value));

  const clockText = (): string => {
    const at = minuteOf(now());
    return `${String(Math.floor(at / 60)).padStart(2, "0")}:${String(at % 60).padStart(2, "0")}`;
  };
  const keep = (said: string): void => {
    const list = acts.peek();
    if (list) open.peek()?.keep({ text: text.peek(), beside: list.beside() }, said);
  };

  /** Reads a kept text; null where it cannot be read. */
  const read = async (snapshot: Snapshot): Promise<Acts | null> => {
    const answer = await engine.readClass("class.json", new TextEncoder().encode(snapshot.text)).answer;
    return answer.value && openActs(answer.value, snapshot.beside, () => shipped.peek());
  };

  let stopFollowing = (): void => {};
  /** @param copyNote when its last file copy was made, where that is known without a look into the store. */
  const enter = async (next: OpenClass, list: Acts, copyNote?: string): Promise<void> => {
    const before = open.peek();
    const held = before && holdOpen();
    stopFollowing();
    const [chosen, copied] =
      copyNote === undefined
        ? await Promise.all([store.note(note.group(next.id)), store.note(note.copy(next.id))])
        : [null, copyNote];
    batch(() => {
      open.value = next;
      entering.value = null;
      acts.value = list;
      groupId.value = chosen;
      copy.value = copied;
      lastAct.value = null;
      plan.clear();
      order.clear();
    });
    // The same class opened a second time is no change that would be heard, but its plan was forgotten.
    askSoon(school.peek());
    stopFollowing = next.follow((snapshot) => {
      void read(snapshot).then((followed) => {
        if (followed && open.peek() === next)
          batch(() => {
            acts.value = followed;
            lastAct.value = null;
          });
      });
    });
    if (before && before !== next) {
      await before.close();
      const state = before.state.peek();
      // Only this page has what the storage refused: it is held until somebody decides.
      if (held && state.word === "not kept" && state.why !== "no-storage")
        left.value = [...left.peek().filter(({ id }) => id !== held.id), held];
    }
    void store.setNote(note.last, next.id);
    const state = next.state.peek();
    if (state.word === "kept" && Date.parse(state.at) - now().getTime() > clockSlack * 60_000)
      notice.value = { code: "session.clockBack", data: { day: today.peek(), last: state.at.slice(0, 10) } };
    else notice.value = next.trouble ? { code: `keeping.${next.trouble}`, data: {} } : null;
  };

  /** @param next the place that was opened for it and is empty. */
  const beginIn = async (next: OpenClass, file: ClassFile, how: "new" | "file" | "demo"): Promise<void> => {
    const moment = now().toISOString();
    const copied = how === "file" ? moment : `never ${moment}`;
    void store.setNote(note.copy(next.id), copied);
    await enter(
      next,
      beginActs(file, () => shipped.peek()),
      copied,
    );
    keep("");
  };
  const begin = async (file: ClassFile, how: "new" | "file" | "demo"): Promise<void> =>
    beginIn(await store.open(how === "demo" ? demoId : world.freshId(), titleOf(file)), file, how);

  /** The open class as it is on screen. */
  const holdOpen = (): HeldClass | null => {
    const [at, list] = [open.peek(), acts.peek()];
    return at && list && { id: at.id, title: titleOf(list.classFile), snapshot: { text: text.peek(), beside: list.beside() } };
  };
  /** True where another tab keeps the class: what would change it is refused and told. */
  const isFollowing = (): boolean => {
    if (kept.peek().word !== "follows") return false;
    notice.value = { code: "session.follows", data: {} };
    return true;
  };
  const reopen = async (id: string): Promise<void> => {
    const next = await store.open(id, "");
    const list = next.found && (await read(next.found));
    if (list) return enter(next, list);
    if (next.trouble) notice.value = { code: `keeping.${next.trouble}`, data: {} };
    else if (next.found) notice.value = { code: "session.classUnreadable", data: {} };
    await next.close();
  };

  const openDemo = async (): Promise<void> => {
    const [{ demo }, next] = await Promise.all([shippedAnswer, store.open(demoId, "")]);
    const kept = next.found && (await read(next.found));
    if (kept) return enter(next, kept);
    next.entitle(titleOf(demo.classFile));
    return beginIn(next, demo.classFile, "demo");
  };
  /** The demo as it comes with Benchday is on screen at once, and as it was left when the storage has answered. */
  const showDemo = async (): Promise<void> => {
    const { demo } = await shippedAnswer;
    batch(() => {
      acts.value = beginActs(demo.classFile, () => shipped.peek());
      entering.value = openDemo();
    });
    setTimeout(() => {
      entersSlowly.value = true;
    }, planWithoutAfter);
  };

  const tell = ({ acts: list, change, says }: Step, undone: boolean): void => {
    if (thrown.peek()) void store.clearForgotten();
    batch(() => {
      acts.value = list;
      lastAct.value = { change, says, at: clockText(), undone };
      thrown.value = null;
    });
    open.peek()?.entitle(titleOf(list.classFile));
    keep(sayAct(language.peek(), { says, undone }, shipped.peek()));
  };

  const mustWait = (): boolean => later.peek() === null || entering.peek() !== null;
  // In the order of the taps: each waits for the same.
  const whenItCan = (doIt: () => void): void => {
    Promise.all([fetchLater(), entering.peek()]).then(doIt, () => {
      notice.value = { code: "session.notDone", data: {} };
    });
  };

  const session: Session = {
    engine,
    store,
    shipped,
    open,
    kept,
    classFile,
    isDemo,
    group,
    language,
    today,
    clock: time.minute,
    school,
    plan: plan.answer,
    order: order.answer,
    lastAct,
    undoes: computed(() => acts.value?.undoes ?? null),
    notice,
    running,
    thrown,
    left,
    // It is dear, and not missed in the first moment.
    fingerprint: computed(() => (classFile.value && later.value ? contentHash(text.value).slice(0, 4) : "")),
    undoDepth: computed(() => acts.value?.depth ?? { back: 0, again: 0 }),
    copyAge: computed(() => copyAgeOf(copy.value, time.day.value)),
    chooseGroup(id) {
      groupId.value = id;
      const at = open.peek();
      if (at) void store.setNote(note.group(at.id), id);
    },
    chooseLanguage(tag) {
      pageLanguage.value = tag;
      void store.setNote(note.language, tag);
      if (classFile.peek()) session.act({ kind: "set-language", language: tag });
    },
    askOrder() {
      const asked = school.peek();
      if (asked && !order.answer.peek().fresh) order.ask(asked);
    },
    stopWork() {
      plan.stop();
      order.stop();
    },
    workAgain() {
      const asked = school.peek();
      if (asked) plan.ask(asked);
    },
    act(change) {
      const list = acts.peek();
      if (list === null) return { code: "session.noClass" };
      if (kept.peek().word === "follows") return { code: "session.follows" };
      if (mustWait()) {
        // A tap in the first moment is done when it can be; what then stands against it is told above the place.
        whenItCan(() => {
          const problem = session.act(change);
          if (problem !== null) notice.value = { code: problem.code, data: { ...problem } };
        });
        return null;
      }
      const answer = list.act(change);
      if (answer === null) return null;
      if ("problem" in answer) return answer.problem;
      tell(answer, false);
      return null;
    },
    undo() {
      if (mustWait()) return whenItCan(session.undo);
      const step = acts.peek()?.undo();
      if (step && kept.peek().word !== "follows") tell(step, true);
    },
    redo() {
      if (mustWait()) return whenItCan(session.redo);
      const step = acts.peek()?.redo();
      if (step && kept.peek().word !== "follows") tell(step, false);
    },
    dismissNotice() {
      notice.value = null;
    },
    copied() {
      const at = open.peek();
      const moment = now().toISOString();
      copy.value = moment;
      if (at) void store.setNote(note.copy(at.id), moment);
    },
    begin,
    reopen,
    openDemo,
    async throwAway() {
      const at = open.peek();
      const held = holdOpen();
      if (!at || !held || isFollowing()) return;
      stopFollowing();
      batch(() => {
        open.value = null;
        acts.value = null;
        lastAct.value = null;
        thrown.value = held;
      });
      await at.close();
      if (await store.forget(at.id)) return store.setNote(note.last, "");
      // The storage refused: the class is still there, as it was on screen.
      thrown.value = null;
      await session.fetchLeft(held);
      notice.value = { code: "keeping.failed", data: {} };
    },
    async takeBack() {
      const what = thrown.peek();
      const list = what && (await read(what.snapshot));
      if (!what || !list) return;
      // With its earlier days where the store still has them; else as a copy of what was on screen.
      const back = await store.bringBack(what.id);
      await enter(await store.open(back || what.id === demoId ? what.id : world.freshId(), what.title), list);
      thrown.value = null;
      keep("");
    },
    async fetchLeft(held) {
      const list = await read(held.snapshot);
      if (!list) return;
      await enter(await store.open(held.id, held.title), list);
      session.letGo(held);
      keep("");
    },
    letGo(held) {
      left.value = left.peek().filter((other) => other !== held);
    },
    saveFile: world.saveFile,
    async run<Value>(job: (onProgress: OnProgress) => Job<Value>): Promise<Value> {
      const since = ms();
      try {
        return await job((progress) => {
          if (ms() - since > 1000) running.value = progress;
        }).answer;
      } finally {
        running.value = null;
      }
    },
  };

  if (world.opensFirst === "demo") {
    void store.note(note.language).then((tag) => {
      if (tag !== null) pageLanguage.value = tag;
    });
    await showDemo();
    return session;
  }
  const openLast = async (): Promise<void> => {
    const [tag, last] = await Promise.all([store.note(note.language), store.note(note.last)]);
    if (tag !== null) pageLanguage.value = tag;
    if (last && open.peek() === null) await reopen(last);
  };
  /** Another tab may hold the storage for long: the page goes on without, and with it when it is free, unless a class was opened. */
  const waitForStorage = (): void => {
    setTimeout(() => {
      if (open.peek() !== null) return;
      if (store.trouble === "blocked") return waitForStorage();
      notice.value = null;
      void openLast();
    }, askAgainAfter);
  };
  await world.opened;
  if (store.trouble === "blocked") {
    notice.value = { code: "keeping.blocked", data: {} };
    waitForStorage();
  } else await openLast();
  return session;
}

const titleOf = (file: ClassFile): string => file.classes.map((g) => g.name).join(", ");

function copyAgeOf(kept: string | null, today: Day): { days: number; never: boolean } | null {
  if (kept === null) return null;
  const never = kept.startsWith("never ");
  const days = Math.floor((Date.parse(today) - Date.parse(never ? kept.slice(6) : kept)) / 86_400_000);
  return Number.isNaN(days) ? null : { days: Math.max(0, days), never };
}
