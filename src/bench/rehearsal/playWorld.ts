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
import type { FollowedCircuit, Slice } from "./followCircuit.ts";
import { followParts } from "./followParts.ts";
import { noise } from "./noise.ts";
import { dutyOf, type PinActivity, phasesOf, restingPin, steadyDrive, timerOf } from "./pinPhases.ts";
import {
  judgeLevel,
  judgeNumber,
  levelDoubt,
  levelOf,
  numberOf,
  rangeAround,
  readingDoubt,
  stretchOf,
  type VoltsRange,
} from "./readInput.ts";
import type { Doubt } from "./result.ts";
import { type Run, type Scenario, type Scene, type Segment, sceneKeyOf } from "./run.ts";
import { firstState, keyOf, type Table, type TableState } from "./table.ts";
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

const { adc } = boardFacts;
const { lowShare, highShare } = boardFacts.pin;
/** s for which a noisy input keeps a level. */
const noiseSlot = 0.005;
/** s that the brown-out detector takes. ATmega328P data sheet: 2 µs, from memory. */
const brownOutSeconds = 2e-6;
/** A relay that cuts its own coil would follow for ever; what it does is then not told. */
const mostPasses = 8;
const slack = 1e-9;

/** @param circuit where the circuit is followed in time; without it every state is taken to be at rest. */
export function playWorld(
  lesson: Lesson,
  table: Table,
  scenario: Scenario,
  end: number,
  seed: number,
  circuit: FollowedCircuit | null = null,
): PlayedWorld {
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
  const doubts = new Map<string, Doubt>();
  const noteDoubt = (doubt: Omit<Doubt, "ms"> | null) => {
    const key = doubt && `${doubt.code} ${doubt.place}`;
    if (doubt && key && !doubts.has(key)) doubts.set(key, { ...doubt, ms: Math.round(now * 1000) });
  };
  let doubtfulSupply = false;
  let scene: Scene | null = null;
  let sceneKey = "";
  /** The state that the followed circuit is in. */
  let lookedAt = "";
  let readsNoise = false;
  /** What was read in the present scene: programs that poll ask a hundred thousand times a second. */
  const levels = new Map<PinNumber, Level | null>();
  const numbers = new Map<PinNumber, number | null>();
  /** Until when they hold, by pin, where the circuit is followed. */
  const keptUntil = new Map<PinNumber, number>();

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
    if (!circuit) return lookAtRest();
    const active = activities();
    const state = tableState(active.map(steadyDrive).join(""));
    const switching = switchingOf(active);
    const key = keyOf(state) + JSON.stringify(switching);
    if (key === lookedAt) return circuit.present();
    lookedAt = key;
    const told = circuit.close();
    if (told) put(told.from, told.to, told.scene);
    return circuit.change(now, state, switching, new Map(states));
  };
  const switchingOf = (active: readonly PinActivity[]) =>
    active.flatMap((a, pin) => {
      if (!a.switching || a.mode !== "output") return [];
      const { hertz, duty, since } = a.switching;
      return [{ pin, hertz, duty, since }];
    });
  /** The scene as it would be after ever so long. */
  const lookAtRest = (): Scene => {
    const active = activities();
    const phases = phasesOf(active).map(({ share, drives }) => {
      const state = tableState(drives);
      return { share, state, point: table.point(state) };
    });
    return { phases, switching: switchingOf(active), states: new Map(states), on: isFed() };
  };

  const forgetReadings = () => {
    levels.clear();
    numbers.clear();
    keptUntil.clear();
  };
  /** Writes into the history that a scene began. */
  const put = (from: number, to: number, shown: Scene) => {
    const last = segments.at(-1);
    if (last && from - last.from <= slack) segments.pop();
    else if (last) segments[segments.length - 1] = { ...last, to: from };
    segments.push({ from: last && from - last.from <= slack ? last.from : from, to, scene: shown });
  };
  /** Which pulses a servo hears is a matter of levels, not of time. */
  const followAll = (shown: Scene) => {
    const followed = parts.follow(shown, now, pulses, circuit && pulses.size > 0 ? lookAtRest() : shown);
    for (const at of followed.wakeAt) schedule(at, () => undefined);
    for (const [part, state, value] of followed.becomes) setState(part, state, value);
    return followed.changed;
  };
  /** The followed circuit has come to the end of a slice. */
  const take = (slice: Slice) => {
    now = slice.to;
    put(slice.from, slice.to, slice.scene);
    scene = circuit?.present() ?? slice.scene;
    put(slice.to, end, scene);
    // What parts do is decided by how it is at the end of the slice.
    const last = slice.scene.phases.at(-1);
    const atEnd = slice.scene.followed === "ramp" && last ? { ...slice.scene, phases: [{ ...last, share: 1 }] } : slice.scene;
    if (followAll(atEnd)) settle();
    else judgeSupply(slice.scene);
  };
  /** Leads the followed circuit towards a moment. @returns whether it got there; else something was told on the way, and more may be due. */
  const lead = (to: number): boolean => {
    if (!circuit || circuit.rests || circuit.seconds >= to) return true;
    const slice = circuit.lead(to);
    if (slice) take(slice);
    return slice === null;
  };

  /** The table after a change: parts follow, the supply is judged, the history goes on. */
  const settle = () => {
    for (let pass = 0; pass < mostPasses; pass += 1) {
      scene = look();
      if (!followAll(scene)) break;
    }
    if (!scene) return;
    const key = sceneKeyOf(scene);
    if (key !== sceneKey || circuit) {
      put(now, end, scene);
      sceneKey = key;
      forgetReadings();
    }
    judgeSupply(scene);
  };

  const judgeSupply = (at: Scene) => {
    const wasFed = isFed();
    const { runs, isDoubtful, doubts: told, askAgainAt } = supply.judge(at, now);
    for (const doubt of told) noteDoubt(doubt);
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
    while (!pending) {
      if (!lead(Math.min(to, events[0]?.at ?? to))) continue;
      const next = events[0];
      if (!next || next.at > to + slack) break;
      events.shift();
      now = Math.max(next.at, circuit ? (circuit.rests ? next.at : circuit.seconds) : now);
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
  /** As `arrive`, but a followed circuit is left behind as long as nothing has to be known of it. */
  const arriveLightly = (micros: number): boolean => {
    const to = lifeFrom + micros * 1e-6;
    if (!circuit || (events[0]?.at ?? Number.POSITIVE_INFINITY) <= to + slack || circuit.lookAgainAt <= to) return arrive(micros);
    now = Math.max(now, to);
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
  /** What is read at a pin of a followed circuit, kept as long as its voltage surely stays within what reads the same. */
  const readFollowed = <Value>(
    kept: Map<PinNumber, Value>,
    pin: PinNumber,
    followed: FollowedCircuit,
    judge: (range: VoltsRange | null, rail: number) => { value: Value; within: readonly [least: number, most: number] },
  ): Value => {
    const known = kept.get(pin);
    if (known !== undefined && now < (keptUntil.get(pin) ?? now)) return known;
    advance(now);
    const node = build.wiring.node("board", pinName(pin));
    const volts = followed.voltsAt(node, now);
    const rail = followed.voltsAt(build.wiring.node("board", "5V"), now);
    const { value, within } = judge(rangeAround(table, followed.state, pinName(pin), volts), rail);
    kept.set(pin, value);
    keptUntil.set(pin, Math.max(now + 1e-6, followed.staysUntil(node, ...within)));
    return value;
  };
  const readLevel = (pin: PinNumber, followed: FollowedCircuit): Level =>
    readFollowed(levels, pin, followed, (range, rail) => {
      const level = range && levelOf(range, rail);
      if (range && level !== null) return { value: level, within: stretchOf(level, range, rail) };
      noteDoubt(levelDoubt(build.wiring.node("board", pinName(pin)), range, rail));
      // The chip's own threshold lies somewhere between the levels that are promised; its input has a hysteresis, so that a
      // voltage that passes is seen to pass once (ATmega328P data sheet, I/O ports: Schmitt trigger).
      const volts = followed.voltsAt(build.wiring.node("board", pinName(pin)), now);
      const share = (volts / rail - lowShare.value) / (highShare.value - lowShare.value);
      const doubt = undetermined(pin);
      const passes = range !== null && scenario.inputs === "noisy";
      const value: Level = (passes ? share >= noise(seed, pin, 0) : doubt >= 0.5) ? 1 : 0;
      const within = range ? stretchOf(null, range, rail) : ([volts, volts] as const);
      return { value, within: passes ? [volts - 0.02 * rail, volts + 0.02 * rail] : within };
    }) as Level;
  const readNumber = (pin: PinNumber, followed: FollowedCircuit): number =>
    readFollowed(numbers, pin, followed, (range, rail) => {
      const code = range && numberOf(range, rail);
      if (!range) noteDoubt(levelDoubt(build.wiring.node("board", pinName(pin)), null, rail));
      const value = code ?? Math.min(1023, Math.floor(undetermined(pin) * 1024));
      const step = rail / adc.steps.value;
      return { value, within: [value * step, (value + 1) * step] };
    }) as number;

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
      let next = Math.min(events[0]?.at ?? Number.POSITIVE_INFINITY, noiseAt, end);
      if (circuit) {
        next = Math.min(next, Math.max(circuit.lookAgainAt, now));
        for (const until of keptUntil.values()) if (until > now && until < next) next = until;
      }
      return (next - lifeFrom) * 1e6;
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
      if (!arriveLightly(micros)) return 0;
      if (circuit) return readLevel(pin, circuit);
      const level = remembered(levels, pin, () => {
        noteDoubt(readingDoubt(table, stateNow(), pinName(pin), "level"));
        return judgeLevel(table, stateNow(), pinName(pin));
      });
      return level ?? (undetermined(pin) >= 0.5 ? 1 : 0);
    },
    analogRead(pin, micros): number {
      if (!arriveLightly(micros)) return 0;
      if (circuit) return readNumber(pin, circuit);
      const code = remembered(numbers, pin, () => {
        noteDoubt(readingDoubt(table, stateNow(), pinName(pin), "number"));
        return judgeNumber(table, stateNow(), pinName(pin));
      });
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
      if (arriveLightly(micros)) texts.push({ at: now, characters });
    },
    takeText(micros) {
      if (!arriveLightly(micros)) return "";
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
        steps: parts.steps(),
        text: texts,
        pauses,
        doubtfulNets: [...doubtfulNets],
        doubts: [...doubts.values()],
        doubtfulSupply,
        lost: circuit?.failure ?? null,
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
