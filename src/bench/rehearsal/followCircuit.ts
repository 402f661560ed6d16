// A table's circuit on its way through time, from event to event, with what capacitors, coils and motors remember.
//
// Every edge of a switching pin stands where it is. What happens is told in slices. Without switching pins a slice ends when
// something has changed by as much as a person or a meter would notice, and its scene goes from how it began to how it ended. With
// switching pins a slice is some whole turns, of which the last is told; which turns are told thins out, because what fades
// fades ever more slowly. A circuit that comes to rest (or to the same turn over and over) is left alone until something changes.
// Does not know: programs, events, what is noticed.
// Sources: bounds on what is left over are Aitken's, from the last two differences of a geometric sequence.
import {
  type Element,
  nodesOf,
  type OperatingPoint,
  prepareTransient,
  type RunningCircuit,
  type TransientFailure,
} from "../circuit/index.ts";
import { elementId, type PartState } from "../parts/index.ts";
import { boardIds } from "./boardElements.ts";
import { takeValues, wiringOf } from "./circuitShelf.ts";
import { driverElements, inTimeElements, pinAmpsInTime } from "./inTimeElements.ts";
import type { Drive } from "./pinPhases.ts";
import { drivesAt, nextEdge } from "./pinTurns.ts";
import type { Scene, SwitchingPin } from "./run.ts";
import { keyOf, type Point, pointMaker, type Table, type TableState } from "./table.ts";
import { ground } from "./wireUp.ts";

/** A stretch of time as it is told. */
export interface Slice {
  readonly from: number;
  readonly to: number;
  readonly scene: Scene;
}

export interface FollowedCircuit {
  /** Something is different from now on. @returns the circuit right after it. */
  change(now: number, state: TableState, switching: readonly SwitchingPin[], states: ReadonlyMap<string, PartState>): Scene;
  /** Leads the circuit on. @returns the slice that ended on the way, or null when `to` was reached without one. */
  lead(to: number): Slice | null;
  /** What has not been told yet ends here. */
  close(): Slice | null;
  /** s to which the circuit was led. */
  readonly seconds: number;
  /** Nothing changes any more by itself. */
  readonly rests: boolean;
  /** When it has to be looked at again, s. */
  readonly lookAgainAt: number;
  /** What there is from the last slice on until something changes or is told. */
  present(): Scene;
  /** V of a node now. A circuit at rest is led to the moment within its turn. */
  voltsAt(node: string, now: number): number;
  /** s until which the voltage of a node will stay between two others, by how fast it has changed so far. */
  staysUntil(node: string, least: number, most: number): number;
  /** The state that it is in now, with what switching pins drive at this instant. */
  readonly state: TableState;
  /** Why it could not be followed any further; null while it can. */
  readonly failure: Point["failure"];
}

/** V, A of a light as a share, and rad/s as a share by which something has to change to be told anew. */
const grainVolts = 0.2;
const grainShare = 0.2;
/** Scenes are alike whose currents, from 1 mA on, agree within this share. */
const leastAmps = 0.001;
const likeShare = 0.05;
/** A below which a light's current is dark anyway. */
const leastLightAmps = 2e-5;
/** V and A, and share of a speed, that may be left over when a circuit counts as at rest. */
const restVolts = 5e-4;
const restAmps = 1e-4;
const restShare = 5e-3;
/** Share of the largest value so far that one step may be wrong by, in a rehearsal and in a waveform. */
const playedAccuracy = 1e-4;
const drawnAccuracy = 1e-5;
/** Share of a turn within which it is told as a straight line, unless there is an edge. */
const turnGrain = 1 / 32;
/** s. A circuit that moves is looked at this often, although nothing asks for it. */
const patience = 0.005;
/** s after which a voltage is read again of which nobody knows yet how fast it changes. */
const glance = 4e-6;
/** Turns are told at least this often, s, and at least each time their number has grown by a quarter. */
const longestUntold = 0.05;
const growth = 1.25;
/** s in which nobody looks at what is left over: the longest lesson. */
const lifetime = 100;

/** What a followed circuit is made of now. */
interface Running {
  readonly circuit: RunningCircuit;
  readonly wiring: string;
  readonly makePoint: ReturnType<typeof pointMaker>;
  readonly stores: readonly Store[];
  readonly nodes: readonly string[];
  /** Lights that are in it, and everything whose current tells one scene from another. */
  readonly lights: readonly string[];
  readonly carriers: readonly string[];
  /** Real time minus the circuit's own. */
  offset: number;
}
interface Store {
  readonly rest: number;
  readonly isShare: boolean;
  readonly read: (point: OperatingPoint) => number;
  /** What a table at rest would have there; null where it does not know. */
  readonly resting: (point: Point) => number | null;
}
interface Shot {
  readonly at: number;
  readonly point: Point;
  readonly state: TableState;
}

/** @param exactFrom s from which on every step is told for itself, for waveforms; never unless told otherwise. */
export function followCircuit(table: Table, exactFrom = Number.POSITIVE_INFINITY): FollowedCircuit {
  const { build, pins } = table;
  const draws = exactFrom < Number.POSITIVE_INFINITY;
  const accuracy = draws ? drawnAccuracy : playedAccuracy;
  const lights = [...build.parts.values()].flatMap((part) =>
    part.kind.noticed(part.values).flatMap((n) => (n.sense === "light" ? [elementId(part.name, n.element)] : [])),
  );
  let running: Running | null = null;
  /** Circuits by their wiring: a key that bounces takes up the same two again and again. */
  const shelf = new Map<string, Running>();
  let failure: Point["failure"] = null;
  let seconds = 0;
  let rests = false;
  let base: TableState | null = null;
  let switching: readonly SwitchingPin[] = [];
  let states: ReadonlyMap<string, PartState> = new Map();
  let changedAt = 0;

  // The slice that is being made.
  let sliceFrom = 0;
  let shots: Shot[] = [];
  let lastTold: Scene | null = null;
  /** Watched figures at the beginning of the slice. */
  let begun: number[] = [];

  // Turns: their length, how many are over, the next that is told, and what was stored at the ends of the last ones.
  let turnSeconds = 0;
  let turns = 0;
  let toldTurn = 0;
  let toldAt = 0;
  let storedBefore: number[] = [];
  let differences: number[] = [];
  let calm = 0;
  /** The ends of the turns since the last that was told. */
  let turnEnds: OperatingPoint[] = [];
  let drives = "";
  /** Nodes that were read since the last change. */
  const seen = new Map<string, { at: number; volts: number; drives: string }>();

  const isExact = () => seconds >= exactFrom;
  const stateWith = (letters: string): TableState => ({ ...(base as TableState), drives: letters });
  const now = () => (running as Running).circuit.now;

  function shoot(): Shot {
    const { circuit, makePoint } = running as Running;
    const state = stateWith(drives);
    return { at: seconds, state, point: makePoint(keyOf(state), circuit.point(), failure, state.supplyOn) };
  }

  /** Takes a state's elements: their numbers where the wiring is as it was, else a new circuit that remembers the old one. */
  function take(state: TableState): Running {
    const elements = inTimeElements(build, pins, state);
    const wiring = wiringOf(elements);
    if (running && running.wiring === wiring) {
      for (const element of elements) takeValues(running.circuit, element, undefined);
      return running;
    }
    const from = running?.circuit.point();
    const known = shelf.get(wiring);
    if (known && from) {
      for (const element of elements) takeValues(known.circuit, element, undefined);
      known.circuit.resume(from);
      known.offset = seconds - known.circuit.seconds;
      return known;
    }
    const circuit = prepareTransient({ elements }, from ? { accuracy, from } : { accuracy });
    const makePoint = pointMaker(build, elements, circuit.floating, pinAmpsInTime);
    const nodes = [...new Set(elements.flatMap(nodesOf))].filter((node) => node !== ground);
    const ids = new Set(elements.map((e) => e.id));
    const lit = lights.filter((id) => ids.has(id));
    const carriers = elements.flatMap((e) =>
      e.id === boardIds.supply || e.kind === "inductor" || e.kind === "motor" ? [e.id] : [],
    );
    const fresh = { circuit, wiring, makePoint, stores: storesOf(elements), nodes, lights: lit, carriers, offset: seconds };
    shelf.set(wiring, fresh);
    return fresh;
  }

  /** Pins turn over; the circuit right after it. */
  function turnPins(): void {
    const { circuit } = running as Running;
    const before = drives;
    drives = drivesAt((base as TableState).drives, switching, seconds);
    for (const { pin } of switching)
      if (drives[pin] !== before[pin])
        for (const element of driverElements(build, pins[pin] as string, drives[pin] as Drive))
          takeValues(circuit, element, undefined);
    settle();
  }

  function settle(): void {
    const { circuit } = running as Running;
    noteFailure(circuit.advanceTo(circuit.seconds));
  }

  function noteFailure(failed: TransientFailure | null): void {
    if (!failed) return;
    // It stays as it is: whoever asks is told why.
    failure = failed.status === "tooManySteps" ? "notConverged" : failed.status;
    rests = true;
  }

  const watched = (): number[] => {
    const { nodes, stores, lights: lit } = running as Running;
    const point = now();
    const volts = nodes.map((node) => point.volts(node) / grainVolts);
    const amps = lit.map((id) => Math.log(Math.max(leastLightAmps, point.amps(id))) / grainShare);
    const speeds = stores.flatMap((s) => (s.isShare ? [Math.log(1 + Math.abs(s.read(point))) / grainShare] : []));
    return [...volts, ...amps, ...speeds];
  };

  const sceneOf = (phases: Scene["phases"], followed: "ramp" | "turn"): Scene => {
    const { nodes, carriers } = running as Running;
    const like = (point: Point) => {
      const volts = nodes.map((n) => Math.round(point.volts(n) / grainVolts));
      const amps = carriers.map((id) => Math.round(Math.asinh(point.amps(id) / leastAmps) / likeShare));
      return `${volts.join()};${amps.join()}`;
    };
    const [first, last] = [phases[0], phases.at(-1)];
    const likeness = first && last ? `${first.point.key}~${like(first.point)}~${like(last.point)}~${followed}` : "";
    return { phases, switching, states, on: base?.supplyOn === true, followed, likeness };
  };
  const rampOf = (a: Shot, b: Shot): Scene =>
    sceneOf(
      [
        { share: 0.5, point: a.point, state: a.state },
        { share: 0.5, point: b.point, state: b.state },
      ],
      "ramp",
    );
  /** Each shot counts for half of the time to its neighbours. */
  const turnOf = (list: readonly Shot[]): Scene => {
    const [first, last] = [list[0] as Shot, list.at(-1) as Shot];
    const whole = last.at - first.at;
    if (whole <= 0) return sceneOf([{ share: 1, point: last.point, state: last.state }], "turn");
    const phases = list.map((shot, i) => {
      const [before, after] = [list[i - 1]?.at ?? shot.at, list[i + 1]?.at ?? shot.at];
      return { share: (after - before) / (2 * whole), point: shot.point, state: shot.state };
    });
    return sceneOf(phases, "turn");
  };

  function tell(scene: Scene): Slice {
    const slice = { from: sliceFrom, to: seconds, scene };
    sliceFrom = seconds;
    lastTold = scene;
    return slice;
  }

  /** Leads the circuit to an edge or an instant, by one step or all the way. */
  function go(to: number, byStep: boolean): void {
    const { circuit, offset } = running as Running;
    const stop = Math.max(circuit.seconds, to - offset);
    noteFailure(byStep ? circuit.stepTowards(stop) : circuit.advanceTo(stop));
    seconds = circuit.seconds >= stop ? to : circuit.seconds + offset;
  }

  function stored(): number[] {
    const point = now();
    return (running as Running).stores.map((s) => s.read(point));
  }
  const restOf = (store: Store, value: number) => (store.isShare ? restShare * Math.max(1, Math.abs(value)) : store.rest);

  /** Whether what a turn changed shrinks so that little is left. */
  function turnIsCalm(): boolean {
    const { stores } = running as Running;
    const values = stored();
    let isCalm = storedBefore.length === values.length;
    const changes = values.map((value, k) => value - (storedBefore[k] ?? Number.POSITIVE_INFINITY));
    for (const [k, store] of stores.entries()) {
      const change = Math.abs(changes[k] as number);
      const before = Math.abs(differences[k] ?? Number.POSITIVE_INFINITY);
      const rest = restOf(store, values[k] as number);
      const left = change < before ? (change * change) / (before - change) : Number.POSITIVE_INFINITY;
      if (!(change < 1e-4 * rest || left < rest)) isCalm = false;
    }
    storedBefore = values;
    differences = changes;
    calm = isCalm ? calm + 1 : 0;
    return calm >= 3;
  }

  /** Whether nothing that is stored will change any more by as much as matters. */
  function isStill(before: readonly number[], after: readonly number[], took: number): boolean {
    const { stores } = running as Running;
    const resting = table.point(base as TableState);
    return stores.every((store, k) => {
      const value = after[k] as number;
      const rate = Math.abs(value - (before[k] as number)) / took;
      const rest = restOf(store, value);
      if (rate * lifetime < rest) return true;
      // As far as a table at rest knows what the store would come to.
      const atRest = resting.on ? store.resting(resting) : null;
      return atRest !== null && Math.abs(value - atRest) < rest && rate * patience < rest;
    });
  }

  function leadSteady(to: number): Slice | null {
    while (seconds < to && !rests) {
      const before = stored();
      const began = seconds;
      go(to, true);
      if (seconds === began) continue;
      const after = stored();
      const still = failure !== null || isStill(before, after, seconds - began);
      const figures = watched();
      const isNews = figures.some((f, k) => !(Math.abs(f - (begun[k] ?? 0)) < 1));
      if (!still && !isNews && !isExact()) continue;
      const shot = shoot();
      const slice = tell(rampOf(shots[0] as Shot, shot));
      shots = [shot];
      begun = figures;
      rests = still;
      return slice;
    }
    return null;
  }

  function leadTurns(to: number): Slice | null {
    while (seconds < to && !rests) {
      const turnEnd = changedAt + (turns + 1) * turnSeconds;
      const edge = Math.min(...switching.map((pin) => nextEdge(pin, seconds)));
      const stop = Math.min(to, edge, turnEnd);
      const isTold = turns >= toldTurn || isExact();
      const began = seconds;
      go(stop, isTold);
      const isDue = seconds >= stop || isExact() || seconds - (shots.at(-1)?.at ?? 0) >= turnGrain * turnSeconds;
      if (isTold && seconds > began && isDue) shots.push(shoot());
      if (seconds < stop) {
        if (isExact()) return tellStep();
        continue;
      }
      const step = isExact() ? tellStep() : null;
      if (seconds >= edge) {
        turnPins();
        if (isTold) shots.push(shoot());
        if (step) shots = shots.slice(-1);
      }
      if (seconds >= turnEnd) turns += 1;
      if (step) return step;
      if (seconds < turnEnd) continue;
      const isCalm = turnIsCalm();
      if (isTold) {
        const told = turnOf(shots);
        const slice = tell(turns > 1 && lastTold ? { ...told, before: lastTold.phases } : told);
        shots = [shots.at(-1) as Shot];
        toldTurn = Math.max(turns, Math.floor(turns * growth));
        toldAt = seconds;
        turnEnds = [(running as Running).circuit.point()];
        rests ||= isCalm && !draws;
        return slice;
      }
      if (isCalm || seconds - toldAt >= longestUntold) toldTurn = turns;
      else leapTurns(to);
      if (turns >= toldTurn) shots = [shoot()];
    }
    return null;
  }

  /**
   * Turns that nobody is told are leapt over: two are played after the last that was told, and one before the next, so that what is
   * faster than a turn comes to its own again.
   */
  function leapTurns(to: number): void {
    const { circuit } = running as Running;
    if (draws) return;
    turnEnds.push(circuit.point());
    const [older, old] = turnEnds.slice(-3);
    const last = Math.min(
      toldTurn,
      turns + Math.floor((longestUntold - (seconds - toldAt)) / turnSeconds),
      turns + Math.floor((to - seconds) / turnSeconds),
    );
    const over = last - turns - 1;
    if (turnEnds.length < 3 || over < 1 || !older || !old) return;
    circuit.leap(older, old, over);
    turns += over;
    seconds += over * turnSeconds;
    (running as Running).offset += over * turnSeconds;
    settle();
    turnEnds = [];
    storedBefore = [];
    differences = [];
    calm = 0;
  }

  function tellStep(): Slice {
    const last = shots.at(-1) as Shot;
    const slice = tell(rampOf(shots[0] as Shot, last));
    shots = [last];
    return slice;
  }

  /** A circuit at rest is led to the present; with switching pins it is only ever led on within a turn. */
  function catchUp(to: number): void {
    if (!running || !rests || to <= seconds) return;
    const behind = to - seconds;
    const skipped = turnSeconds > 0 && failure === null ? Math.floor(behind / turnSeconds + 1e-9) * turnSeconds : behind;
    running.offset += skipped;
    seconds += skipped;
    while (seconds < to && failure === null) {
      const edge = Math.min(...switching.map((pin) => nextEdge(pin, seconds)));
      go(Math.min(to, edge), false);
      if (seconds >= edge) turnPins();
    }
    seconds = to;
  }

  return {
    get seconds() {
      return seconds;
    },
    get rests() {
      return rests;
    },
    get failure() {
      return failure;
    },
    get state() {
      return stateWith(drives);
    },
    get lookAgainAt() {
      if (rests || !running) return Number.POSITIVE_INFINITY;
      // Of turns that nobody is told there is nothing to know in between.
      if (turnSeconds > 0) return Math.max(seconds + patience, changedAt + (toldTurn + 1) * turnSeconds);
      return seconds + Math.max(patience, Math.min(1, running.circuit.nextStepSeconds));
    },
    change(at, state, turning, told) {
      catchUp(at);
      seconds = at;
      base = state;
      states = told;
      switching = draws ? turning : inStep(turning);
      changedAt = at;
      sliceFrom = at;
      turnSeconds = switching.length > 0 ? 1 / Math.min(...switching.map((s) => s.hertz)) : 0;
      turns = 0;
      toldTurn = 0;
      toldAt = at;
      calm = 0;
      storedBefore = [];
      differences = [];
      turnEnds = [];
      seen.clear();
      drives = drivesAt(state.drives, switching, at);
      running = take(stateWith(drives));
      rests = false;
      failure = null;
      settle();
      rests ||= running.stores.length === 0 && switching.length === 0;
      shots = [shoot()];
      begun = watched();
      lastTold = turnOf(shots);
      return lastTold;
    },
    lead(to) {
      if (rests || !running) return null;
      return switching.length > 0 ? leadTurns(to) : leadSteady(to);
    },
    close() {
      if (!running || rests || seconds <= sliceFrom) return null;
      if (switching.length > 0 && !isExact() && turns < toldTurn && lastTold) return tell(lastTold);
      const last = shoot();
      const slice = tell(switching.length > 0 && !isExact() ? turnOf([...shots, last]) : rampOf(shots[0] as Shot, last));
      shots = [last];
      return slice;
    },
    present() {
      const last = shots.at(-1) as Shot;
      if (switching.length > 0 && lastTold) return { ...lastTold, before: lastTold.phases };
      return sceneOf([{ share: 1, point: last.point, state: last.state }], "ramp");
    },
    voltsAt(node, at) {
      catchUp(at);
      const { circuit, nodes } = running as Running;
      return nodes.includes(node) ? circuit.now.volts(node) : 0;
    },
    staysUntil(node, least, most) {
      const { circuit, nodes } = running as Running;
      if (!nodes.includes(node) || (rests && switching.length === 0)) return Number.POSITIVE_INFINITY;
      const volts = circuit.now.volts(node);
      const before = seen.get(node);
      seen.set(node, { at: seconds, volts, drives });
      const edge = Math.min(...switching.map((pin) => nextEdge(pin, seconds)));
      if (!before || before.at >= seconds || before.drives !== drives) return Math.min(edge, seconds + glance);
      const perSecond = (volts - before.volts) / (seconds - before.at);
      const room = perSecond > 0 ? most - volts : volts - least;
      // Half of the way, and no further than the circuit itself would dare.
      const safe = Math.min(room / (2 * Math.abs(perSecond) + 1e-12), circuit.nextStepSeconds, patience);
      return Math.min(edge, seconds + Math.max(glance, safe));
    },
  };
}

/** Several clocks are taken to be in step with the slowest, so that a turn of all of them is one of it. */
function inStep(switching: readonly SwitchingPin[]): readonly SwitchingPin[] {
  const slowest = Math.min(...switching.map((s) => s.hertz));
  return switching.map((s) => ({ ...s, hertz: slowest * Math.max(1, Math.round(s.hertz / slowest)) }));
}

/** What keeps energy or speed in these elements. */
function storesOf(elements: readonly Element[]): readonly Store[] {
  return elements.flatMap((e): Store[] => {
    if (e.kind === "capacitor") {
      const resting = (point: Point) => (point.holds(e.a) && point.holds(e.b) ? point.volts(e.a) - point.volts(e.b) : null);
      return [{ rest: restVolts, isShare: false, read: (p) => p.volts(e.a) - p.volts(e.b), resting }];
    }
    if (e.kind === "inductor") return [{ rest: restAmps, isShare: false, read: (p) => p.amps(e.id), resting: () => null }];
    if (e.kind === "motor")
      return [
        { rest: restAmps, isShare: false, read: (p) => p.amps(e.id), resting: () => null },
        { rest: restShare, isShare: true, read: (p) => p.state(e.id), resting: () => null },
      ];
    return [];
  });
}
