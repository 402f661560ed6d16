// The world on the other side of the board's pins: stimuli, bouncing contacts, servos, the supply, and the circuit behind it all.
//
// It is the `BoardPort` that the program runs against. Whenever a pin, a stimulus or a state changes, it looks up the table's
// new state; in between nothing is computed. It also writes down the history that observations and checks are made from.
// Does not know: checks, what a person would notice, C++.
import type { Lesson } from "../lesson/index.ts";
import { boardFacts, type PartState } from "../parts/index.ts";
import type { BoardPort, Level, PinMode, PinNumber, Verdict } from "../program/index.ts";
import { pinName } from "./boardElements.ts";
import { bounceEdges } from "./bounce.ts";
import { followParts } from "./followParts.ts";
import { noise } from "./noise.ts";
import { dutyOf, type PinActivity, phasesOf, restingPin, timerOf } from "./pinPhases.ts";
import { judgeLevel, judgeNumber } from "./readInput.ts";
import { type Run, type Scenario, type Scene, type Segment, sceneKeyOf } from "./run.ts";
import { firstState, type Table, type TableState } from "./table.ts";
import { watchSupply } from "./watchSupply.ts";

/** One life of the world: it outlives resets of the board. */
export interface PlayedWorld {
  /** The port for the program's next life, which begins at `lifeFrom` seconds. */
  port(lifeFrom: number): BoardPort;
  /** After the board was reset or lost its supply: when its program starts again; null if never before the end. */
  startsAgainAt(): number | null;
  /** The history so far, up to the end. */
  history(): Omit<Run, "outcome">;
}

interface Event {
  readonly at: number;
  readonly happen: () => void;
}

/** s for which a noisy input keeps a level. */
const noiseSlot = 0.005;
/** s that the brown-out detector takes. ATmega328P data sheet: 2 µs, from memory. */
const brownOutSeconds = 2e-6;
/** A relay that cuts its own coil would follow for ever; what it does is then not told. */
const mostPasses = 8;
const slack = 1e-9;

export function playWorld(lesson: Lesson, table: Table, scenario: Scenario, end: number, seed: number): PlayedWorld {
  const { build } = table;
  const pinNumbers = table.pins.map((pin) => (pin.startsWith("A") ? 14 + Number(pin.slice(1)) : Number(pin.slice(1))));
  const parts = followParts(build);

  let now = 0;
  let lifeFrom = 0;
  let alive = true;
  const pins = new Map<PinNumber, PinActivity>();
  /** Angles that pins ask of servos, by index among the pins in use. */
  const pulses = new Map<number, number>();
  const states = new Map<string, PartState>();
  const supply = watchSupply(build, scenario);
  let supplyOn = true;
  const isFed = () => supplyOn && !supply.fuseIsOpen;
  /** Whether the chip could run as the table is now. */
  let mayRun = true;
  let inbox = "";
  let pending: "reset" | "off" | null = null;

  const segments: Segment[] = [];
  const texts: { at: number; characters: string }[] = [];
  const pauses: { from: number; to: number; why: "reset" | "off" }[] = [];
  const doubtfulNets = new Set<string>();
  let doubtfulSupply = false;
  let scene: Scene | null = null;
  let sceneKey = "";
  let readsNoise = false;
  /** What was read in the present scene: programs that poll ask a hundred thousand times a second. */
  const levels = new Map<PinNumber, Level | null>();
  const numbers = new Map<PinNumber, number | null>();

  const events: Event[] = [];
  const schedule = (at: number, happen: () => void) => {
    const after = events.findIndex((e) => e.at > at);
    events.splice(after === -1 ? events.length : after, 0, { at, happen });
  };
  for (const step of lesson.stimuli) for (const stimulus of step.stimuli) schedule(step.at, () => stimulate(stimulus));

  const setState = (part: string, state: string, value: number | boolean) => {
    states.set(part, { ...(states.get(part) ?? firstState(build, part)), [state]: value });
  };
  const stimulate = (stimulus: Lesson["stimuli"][number]["stimuli"][number]) => {
    if (stimulus.kind === "text") inbox += stimulus.text;
    else if (stimulus.kind === "supply") supplyOn = stimulus.on;
    else {
      const { part, state, value } = stimulus;
      const before = (states.get(part) ?? firstState(build, part))[state];
      const bounce = Number(build.parts.get(part)?.values["bounce-milliseconds"] ?? 0);
      setState(part, state, value);
      if (before === value || bounce <= 0) return;
      for (const edge of bounceEdges(bounce, `${part}@${now}`, seed))
        schedule(now + edge.after, () => setState(part, state, edge.made ? value : (before ?? false)));
    }
  };

  const tableState = (drives: string): TableState => ({
    drives,
    states: parts.electrical(states),
    doing: parts.doing(),
    supplyOn: isFed(),
    limited: scenario.supply === "gives way",
  });
  const activities = () => pinNumbers.map((pin) => pins.get(pin) ?? restingPin);

  const look = (): Scene => {
    const active = activities();
    const phases = phasesOf(active).map(({ share, drives }) => {
      const state = tableState(drives);
      return { share, state, point: table.point(state) };
    });
    const switching = active.flatMap((a, pin) => {
      if (!a.switching || a.mode !== "output") return [];
      const { hertz, duty, since } = a.switching;
      return [{ pin, hertz, duty, since }];
    });
    return { phases, switching, states: new Map(states), on: isFed() };
  };

  /** The table after a change: parts follow, the supply is judged, the history goes on. */
  const settle = () => {
    for (let pass = 0; pass < mostPasses; pass += 1) {
      scene = look();
      const followed = parts.follow(scene, now, pulses);
      for (const at of followed.wakeAt) schedule(at, () => undefined);
      for (const [part, pulled] of followed.pulled) setState(part, "pulled", pulled);
      if (!followed.changed) break;
    }
    if (!scene) return;
    const key = sceneKeyOf(scene);
    if (key !== sceneKey) {
      const last = segments.at(-1);
      if (last && now - last.from <= slack) segments.pop();
      else if (last) segments[segments.length - 1] = { ...last, to: now };
      segments.push({ from: last && now - last.from <= slack ? last.from : now, to: end, scene });
      sceneKey = key;
      levels.clear();
      numbers.clear();
    }
    judgeSupply(scene);
  };

  const judgeSupply = (at: Scene) => {
    const wasFed = isFed();
    const { runs, isDoubtful, askAgainAt } = supply.judge(at, now);
    doubtfulSupply ||= isDoubtful;
    mayRun = runs;
    // With an open fuse the table is another one.
    if (askAgainAt < end) schedule(askAgainAt, () => undefined);
    if (wasFed !== isFed()) schedule(now, () => undefined);
    if (!alive || runs) return;
    if (!at.on) pending ??= "off";
    const life = lifeFrom;
    schedule(now + brownOutSeconds, () => {
      if (alive && life === lifeFrom) pending ??= "reset";
    });
  };

  /** Everything that is due at or before a moment happens, in order; time stands still where the board is about to pause. */
  const advance = (to: number) => {
    for (let next = events[0]; next && next.at <= to + slack && !pending; next = events[0]) {
      events.shift();
      now = Math.max(now, next.at);
      next.happen();
      settle();
    }
    if (!pending) now = Math.max(now, to);
  };
  /**
   * The program has come to a moment of its life. It looks for events only now and then, so they may be overdue.
   * @returns whether the board still runs: what a program does after the board has paused never happened.
   */
  const arrive = (micros: number): boolean => {
    advance(lifeFrom + micros * 1e-6);
    return pending === null;
  };

  const change = (micros: number, pin: PinNumber, what: (before: PinActivity) => PinActivity) => {
    if (!arrive(micros)) return;
    const before = pins.get(pin) ?? restingPin;
    const after = what(before);
    // Programs write the same level over and over; that costs nothing.
    if (after.mode === before.mode && after.level === before.level && sameSwitching(after, before)) return;
    pins.set(pin, after);
    if (pinNumbers.includes(pin)) settle();
  };

  const stateNow = (): TableState => {
    const { phases, switching } = scene ?? look();
    // With other pins switching, the moment within their turn decides; all turns are taken to begin at the reset.
    const turn = switching[0] ? (now * switching[0].hertz) % 1 : 0;
    let sum = 0;
    const phase = phases.find((p) => {
      sum += p.share;
      return turn < sum;
    });
    return (phase ?? phases[0])?.state ?? tableState("");
  };
  /** With other pins switching it may be another a moment later, so then nothing is kept. */
  const remembered = <Value>(kept: Map<PinNumber, Value>, pin: PinNumber, judge: () => Value): Value => {
    const known = kept.get(pin);
    if (known !== undefined) return known;
    const value = judge();
    if (scene?.switching.length === 0) kept.set(pin, value);
    return value;
  };
  const undetermined = (pin: PinNumber): number => {
    doubtfulNets.add(build.wiring.node("board", pinName(pin)));
    if (scenario.inputs !== "noisy") return scenario.inputs === "low" ? 0 : 1;
    readsNoise = true;
    return noise(seed, pin, slotAt(now));
  };

  const pauseBoard = () => {
    pauses.push({ from: now, to: Number.POSITIVE_INFINITY, why: pending ?? "reset" });
    pending = null;
    alive = false;
    pins.clear();
    pulses.clear();
    settle();
  };

  settle();
  advance(0);

  const port: BoardPort = {
    nextEvent() {
      if (pending) return (now - lifeFrom) * 1e6;
      const noiseAt = readsNoise ? (slotAt(now) + 1) * noiseSlot : Number.POSITIVE_INFINITY;
      return (Math.min(events[0]?.at ?? Number.POSITIVE_INFINITY, noiseAt, end) - lifeFrom) * 1e6;
    },
    reach(micros): Verdict {
      if (!arrive(micros)) {
        // The program ends here; whether and when it starts again is seen then (startsAgainAt).
        pauseBoard();
        return "stop";
      }
      return now >= end - slack ? "stop" : "go on";
    },
    digitalRead(pin, micros): Level {
      if (!arrive(micros)) return 0;
      const level = remembered(levels, pin, () => judgeLevel(table, stateNow(), pinName(pin)));
      return level ?? (undetermined(pin) >= 0.5 ? 1 : 0);
    },
    analogRead(pin, micros): number {
      if (!arrive(micros)) return 0;
      const code = remembered(numbers, pin, () => judgeNumber(table, stateNow(), pinName(pin)));
      return code ?? Math.min(1023, Math.floor(undetermined(pin) * 1024));
    },
    setMode(pin, mode: PinMode, micros) {
      change(micros, pin, (before) => ({ ...before, mode }));
    },
    digitalWrite(pin, level, micros) {
      change(micros, pin, (before) => ({ ...before, level, switching: null }));
    },
    analogWrite(pin, value, hertz, micros) {
      // The chip's timers run from its reset on.
      const switching = { duty: dutyOf(value, hertz), hertz, clock: timerOf(pin), since: lifeFrom };
      change(micros, pin, (before) => ({ ...before, switching }));
    },
    tone(pin, hertz, until, micros) {
      if (!arrive(micros)) return;
      change(micros, pin, (before) => ({ ...before, switching: { duty: 0.5, hertz, clock: `tone${pin}`, since: now } }));
      const started = pins.get(pin);
      if (until < Number.POSITIVE_INFINITY)
        schedule(lifeFrom + until * 1e-6, () => {
          if (pins.get(pin) === started && started) pins.set(pin, { ...started, switching: null });
        });
    },
    noTone(pin, micros) {
      change(micros, pin, (before) => ({ ...before, switching: null }));
    },
    servo(pin, pulse, micros) {
      if (!arrive(micros)) return;
      const index = pinNumbers.indexOf(pin);
      if (pulse && index !== -1) pulses.set(index, pulse.degrees);
      else pulses.delete(index);
      // 20 ms from pulse to pulse (data pages of servos).
      const clock = `servo${pin}`;
      change(micros, pin, (before) => {
        const since = before.switching?.clock === clock ? before.switching.since : now;
        const switching = pulse ? { duty: pulse.micros / 20_000, hertz: 50, clock, since } : null;
        return { ...before, mode: pulse ? "output" : before.mode, switching };
      });
    },
    text(characters, micros) {
      if (arrive(micros)) texts.push({ at: now, characters });
    },
    takeText(micros) {
      if (!arrive(micros)) return "";
      const text = inbox;
      inbox = "";
      return text;
    },
  };

  return {
    port(from) {
      lifeFrom = from;
      alive = true;
      return port;
    },
    startsAgainAt() {
      const pause = pauses.at(-1);
      if (!pause || pause.to < Number.POSITIVE_INFINITY) return null;
      // The world goes on without the board until it has power and its boot loader has waited.
      const wait = boardFacts.chip.startSeconds.value;
      let ready = pause.from + wait;
      while (now < end) {
        const next = Math.min(events[0]?.at ?? Number.POSITIVE_INFINITY, end);
        if (mayRun && ready <= next) {
          advance(ready);
          pauses[pauses.length - 1] = { ...pause, to: ready };
          return ready < end ? ready : null;
        }
        // The wait begins when the chip can run, so it is counted from the change that let it.
        if (!mayRun) ready = next + wait;
        advance(next);
      }
      return null;
    },
    history() {
      if (pending) pauseBoard();
      advance(end);
      return {
        scenario,
        segments,
        moves: parts.moves(),
        text: texts,
        pauses,
        doubtfulNets: [...doubtfulNets],
        doubtfulSupply,
        end,
      };
    },
  };
}

/** The number of the slot at a moment; its very beginning belongs to it, whatever the last bit of a double says. */
function slotAt(now: number): number {
  return Math.floor(now / noiseSlot + 1e-6);
}

function sameSwitching({ switching: a }: PinActivity, { switching: b }: PinActivity): boolean {
  return a === b || (a !== null && b !== null && a.duty === b.duty && a.hertz === b.hertz && a.clock === b.clock);
}
