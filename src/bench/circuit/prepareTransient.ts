// A circuit on its way through time: it can be led to an instant, have a value changed there, and be led on.
//
// Each step is one solve with capacitors and inductors that remember the last one. Its length follows from the error that it
// would make (stepHistory.ts); it ends exactly where a source bends, where a value is changed or read, and where a contact
// turns over. After such an edge the first step is backward Euler, which forgets what was before, then come trapezoidal ones.
// A step that is rejected leaves no trace: what is remembered changes only when a step is accepted.
// Does not know: samples (solveTransient.ts), parts, programs.
// Source: Nagel, SPICE2, memo UCB/ERL-M520 (1975), chapters on numerical integration and time-step control.
import { assemble, findStarvedNode, type MutableElement, startFrom } from "./assemble.ts";
import type { StoringFamily } from "./equations.ts";
import { findBadElements } from "./findBadElements.ts";
import { findOperatingPoint } from "./findOperatingPoint.ts";
import { hasValue, isFitValue, zeroChangesWiring } from "./findUnfitValues.ts";
import type { Netlist } from "./netlist.ts";
import { restamp, runNewton, tolerances } from "./newton.ts";
import type { OperatingPoint, TransientFailure, TransientOptions } from "./outcome.ts";
import { prepareCircuit } from "./prepareCircuit.ts";
import { SolvedPoint } from "./solvedPoint.ts";
import { StepHistory } from "./stepHistory.ts";
import type { ElementKind } from "./terminals.ts";
import { jumps, longestStep, nextBend, valueAt } from "./waveform.ts";

export interface RunningCircuit {
  /** s since the start. */
  readonly seconds: number;
  /**
   * Leads the circuit on to an instant; to the present one, it shows the circuit right after a changed value.
   * @returns null, or why it stopped before. From then on it stays where it stopped.
   */
  advanceTo(seconds: number): TransientFailure | null;
  /**
   * As `advanceTo`, but by one step at most, as long as its error allows. Right after a changed value it first shows the circuit
   * as it is then, without any time passing.
   */
  stepTowards(seconds: number): TransientFailure | null;
  /**
   * Takes over what capacitors, inductors and motors keep at a point of this or another circuit, matched by name; what that does not
   * have is at rest. No time passes.
   */
  resume(from: OperatingPoint): void;
  /**
   * Leaps over turns of something periodic that are alike: what is kept goes on from turn to turn as it did over the last two, each
   * change being the last one times their ratio (Aitken). No time passes here; the caller counts it.
   *
   * @param older two turns ago, @param old one turn ago: points of this very circuit.
   */
  leap(older: OperatingPoint, old: OperatingPoint, turns: number): void;
  /** s. How long the next step may be by its error; infinite in a circuit that keeps nothing. */
  readonly nextStepSeconds: number;
  /**
   * Changes one number of one element from now on ("PIN", "volts"). A source with a wave keeps its wave.
   * @returns false if the circuit has no such element or the element no such number.
   */
  setValue(id: string, field: string, value: number): boolean;
  /** A window on the present voltages and currents, changed by the next advance. */
  readonly now: OperatingPoint;
  /** The present voltages and currents, to keep. */
  point(): OperatingPoint;
  /** Nodes that nothing fixes. */
  readonly floating: readonly string[];
  /** Steps accepted and rejected, and Newton passes, so far. */
  readonly steps: number;
  readonly rejected: number;
  readonly passes: number;
  /** The largest current that did not add up at a node in an accepted step, A. */
  readonly residualAmps: number;
}

/** Share of the largest value so far that one step may be wrong by, unless told otherwise. */
const usualAccuracy = 1e-5;
/** Steps after which a circuit is given up. */
const usualMostSteps = 2_000_000;
/** s. So short that nothing stored changes: the circuit right after an edge. */
const instant = 1e-13;
/** s. What takes longer is no instant. */
const longestInstant = 1e-5;
/** s. To this an instant at which a contact turns over by itself is met. */
const turnSeconds = 1e-7;
/** The field that says how an element stands or what is left in it. */
const standing: Partial<Record<ElementKind, string>> = { switch: "closed", fuse: "tripped", battery: "charge" };
/** Newton passes for a step; a step that needs more is too long. */
const passesPerStep = 30;

/** Never throws and never fails: what is wrong is told by the first advance. */
export function prepareTransient(netlist: Netlist, options: TransientOptions = {}): RunningCircuit {
  const { accuracy = usualAccuracy, mostSteps = usualMostSteps } = options;
  // Newton squares its error: about 20 · step² is left of a junction's voltage, about what a volt may be wrong by in a step.
  const lastStep = Math.sqrt(accuracy / 25);
  const elements = netlist.elements.map((element): MutableElement => ({ ...element }));
  const byId = new Map(elements.map((element) => [element.id, element]));
  const waved = elements.flatMap((source) => {
    if (source.kind !== "voltageSource" && source.kind !== "currentSource") return [];
    const field = source.kind === "voltageSource" ? "volts" : "amps";
    return source.wave === undefined ? [] : [{ source: source as MutableElement, wave: source.wave, field }];
  });
  let failure: TransientFailure | null = null;
  let seconds = 0;
  let steps = 0;
  let rejected = 0;
  let passes = 0;
  let residualAmps = 0;
  for (const bad of findBadElements(elements).values()) failure ??= { ...bad, seconds };

  for (const { source, wave, field } of failure ? [] : waved) source[field] = valueAt(wave, 0);
  let assembly = failure ? assemble([], options, true) : assemble(elements, options, true);
  let history = new StepHistory(assembly.stores, accuracy);
  let savedX = assembly.machine.eq.x.slice();
  let savedState = assembly.machine.eq.state.slice();
  let lastX = savedX.slice();
  let xBefore = savedX.slice();
  /** s. The length that the last step would have liked its follower to have. */
  let wanted = Number.POSITIVE_INFINITY;
  let lastLength = 0;
  let lengthBefore = 0;
  let bend = nextBendOfAll();
  /** Something jumped: the circuit right after it has not been solved yet. */
  let jumped = false;
  /** Backward Euler steps still to take. */
  let calming = 0;
  let valuesChanged = true;
  /** The instant at which even the shortest step failed and the circuit was settled anew. */
  let rescuedAt = Number.NaN;
  const stride = Math.min(...waved.map(({ wave }) => longestStep(wave)));
  if (!failure) start();

  /** Gives every source with a wave its value at an instant. */
  function takeWaves(at: number, before: boolean): void {
    for (const { source, wave, field } of waved) {
      const value = valueAt(wave, at, before);
      if (source[field] === value) continue;
      source[field] = value;
      const place = assembly.places.get(source.id);
      place?.family.take(place.index);
    }
  }

  function nextBendOfAll(): number {
    let next = Number.POSITIVE_INFINITY;
    for (const { wave } of waved) next = Math.min(next, nextBend(wave, seconds));
    for (const family of assembly.turning) next = Math.min(next, family.nextTurn(seconds));
    return next;
  }

  /** From the operating point, or from what capacitors and inductors are said to keep. */
  function start(): void {
    const { topology } = assembly;
    if (topology.sourceLoop !== null) {
      failure = { status: "sourceLoop", elements: topology.sourceLoop, seconds };
      return;
    }
    for (const { node } of topology.withoutPath) failure ??= { status: "currentWithoutPath", node, seconds };
    if (failure) return;
    if (options.from instanceof SolvedPoint) recall(options.from);
    else if (options.fromInitial !== true) {
      const outcome = prepareCircuit({ elements }, options).solve();
      if (outcome.status !== "solved") {
        failure = { ...outcome, seconds };
        return;
      }
      recall(outcome.point as SolvedPoint);
    }
    settleEdge();
  }

  /** Stores what a point of this circuit has in its capacitors and inductors. */
  function recall(point: SolvedPoint): void {
    const { machine, stores, places } = assembly;
    startFrom(assembly, point);
    for (const { id, kind } of elements) {
      const place = places.get(id);
      if (place === undefined || (kind !== "inductor" && kind !== "motor")) continue;
      if (point.layout.elements.get(id)?.element.kind !== kind) continue;
      const speed = kind === "motor" ? point.state(id) : 0;
      (place.family as StoringFamily).put?.(machine.eq, place.index, point.amps(id), speed);
    }
    // At rest: no charge is on its way.
    machine.eq.stepSeconds = 0;
    for (const store of stores) store.keep(machine.eq);
  }

  /** Ohms have come or gone where inner nodes hang on it. */
  function rewire(): void {
    const before = assembly.now;
    for (const element of elements) {
      const field = standing[element.kind];
      if (field !== undefined) (element as Record<string, unknown>)[field] = before.state(element.id);
    }
    assembly = assemble(elements, options, true);
    recall(before);
    history = new StepHistory(assembly.stores, accuracy);
    savedX = assembly.machine.eq.x.slice();
    lastX = savedX.slice();
    xBefore = savedX.slice();
    savedState = assembly.machine.eq.state.slice();
  }

  /**
   * Solves the circuit right after an edge: what is stored is as before, all else may be new. Where that has no answer, as
   * with a coil whose current has lost its way, the shortest step that has one is taken for the instant: the current breaks off.
   */
  function settleEdge(): void {
    const { machine, stores } = assembly;
    takeWaves(seconds, false);
    if (valuesChanged) restamp(machine);
    valuesChanged = false;
    machine.eq.slopes = 1;
    let solved = solveWithin(instant);
    for (let length = instant; !solved && length < longestInstant; ) {
      length *= 100;
      if (!solveWithin(length)) continue;
      for (const store of stores) store.keep(machine.eq);
      solved = solveWithin(instant) || solveWithin(length);
    }
    if (!solved) failure = notConverged();
    residualAmps = Math.max(residualAmps, machine.residualAmps);
    history.begin(machine.eq);
    jumped = false;
  }

  function solveWithin(length: number): boolean {
    const { machine } = assembly;
    machine.eq.stepSeconds = length;
    machine.lastStep = tolerances.lastStep;
    machine.amps = tolerances.amps;
    const solved = findOperatingPoint(machine);
    passes += machine.passes;
    return solved;
  }

  function notConverged(): TransientFailure {
    const starved = findStarvedNode(assembly, elements);
    if (starved !== null) return { status: "currentWithoutPath", node: starved, seconds };
    const { worst, finished, residualAmps: missing } = assembly.machine;
    return { status: "notConverged", worstNode: finished.owners[worst] ?? "0", passes, residualAmps: missing, seconds };
  }

  /** One step towards `stop`, as long as its error allows. @param isSeen somebody looks at its end, even where that is not `stop`. */
  function step(stop: number, isSeen = false): void {
    const { machine, stores, turning } = assembly;
    const { eq } = machine;
    const end = Math.min(stop, bend);
    const gap = end - seconds;
    const shortest = 1e-14 * end;
    let length = Math.min(wanted, stores.length > 0 ? stride : gap);
    for (const family of turning) length = Math.min(length, family.longestStep(eq));
    if (history.smoothSteps === 0 && stores.length > 0) length = Math.min(length, history.firstStep(), gap / 16);
    let slopes: 1 | 2 = history.smoothSteps > 0 && calming === 0 ? 2 : 1;
    savedX.set(eq.x);
    savedState.set(eq.state);
    for (let tries = 0; ; tries += 1) {
      length = Math.max(length, shortest);
      // Two halves instead of nearly all and a sliver.
      const isLast = length > 0.99 * gap;
      if (isLast) length = gap;
      else if (length > gap / 2) length = gap / 2;
      eq.stepSeconds = length;
      eq.slopes = slopes;
      takeWaves(isLast ? end : seconds + length, isLast);
      guess(length);
      machine.passes = 0;
      machine.lastStep = lastStep;
      machine.amps = tolerances.ampsInTime;
      let solved = runNewton(machine, passesPerStep, !isSeen && turning.length === 0 && (!isLast || end < stop));
      // So short a step that fails is no matter of length.
      if (!solved && length <= shortest) solved = findOperatingPoint(machine);
      passes += machine.passes;
      const error = solved ? history.error(eq, length) : Number.POSITIVE_INFINITY;
      const swings = solved && slopes === 2 && history.swings(length);
      if (solved && error <= 1 && length > turnSeconds && wantsTurn(length)) {
        // Something turns over on the way: half the way, until it is met.
        length = Math.max(length / 2, turnSeconds);
        eq.x.set(savedX);
        eq.state.set(savedState);
        rejected += 1;
        if (steps + rejected >= mostSteps) return;
        continue;
      }
      if (solved && ((error <= 1 && !swings) || length <= shortest)) {
        accept(length, error, slopes, tries === 0 && isLast);
        seconds = isLast ? end : seconds + length;
        for (const family of turning) if (family.pass(eq, length, seconds)) turnedOver();
        if (isLast && end === bend) passBend();
        return;
      }
      if (!solved && length <= shortest) {
        eq.x.set(savedX);
        eq.state.set(savedState);
        if (rescuedAt === seconds) failure = notConverged();
        else settleEdge();
        rescuedAt = seconds;
        return;
      }
      rejected += 1;
      if (steps + rejected >= mostSteps) return;
      if (swings) {
        slopes = 1;
        calming = 3;
      } else length *= solved ? Math.max(0.1, 0.9 * error ** (-1 / (slopes + 1))) : 0.125;
      eq.x.set(savedX);
      eq.state.set(savedState);
    }
  }

  /** Goes on as in the last steps, in a line or, after two, in a parabola: the first guess of the next solve. */
  function guess(length: number): void {
    if (history.smoothSteps === 0 || length > 4 * lastLength) return;
    const { x } = assembly.machine.eq;
    const share = length / lastLength;
    if (history.smoothSteps === 1) {
      for (let k = 1; k < x.length; k += 1) x[k] = (x[k] as number) + share * ((x[k] as number) - (lastX[k] as number));
      return;
    }
    const older = (length * (length + lastLength)) / (lengthBefore * (lastLength + lengthBefore));
    const old = (length * (length + lastLength + lengthBefore)) / (lastLength * lengthBefore);
    const now = 1 + old - older;
    for (let k = 1; k < x.length; k += 1)
      x[k] = now * (x[k] as number) - old * (lastX[k] as number) + older * (xBefore[k] as number);
  }

  /** @param isCut the step was made shorter than its error asked for. */
  function accept(length: number, error: number, slopes: 1 | 2, isCut: boolean): void {
    const { machine, stores } = assembly;
    for (const store of stores) store.keep(machine.eq);
    history.accept(length);
    // So short and still wrong: something jumped that no source told, as a charge that meets an ideal source.
    // Its rounding would swing on in trapezoidal steps; ten of backward Euler, each four times as long, end that.
    if (error > 1) {
      history.smoothSteps = 0;
      calming = 10;
    }
    const free = xBefore;
    xBefore = lastX;
    lastX = savedX;
    savedX = free;
    lengthBefore = lastLength;
    lastLength = length;
    steps += 1;
    if (calming > 0) calming -= 1;
    residualAmps = Math.max(residualAmps, machine.residualAmps);
    const next = length * Math.min(2, 0.94 * error ** (-1 / (slopes + 1)));
    // A step cut short by an edge says little about the next one.
    wanted = isCut ? Math.max(next, wanted) : next;
    if (stores.length === 0) wanted = Number.POSITIVE_INFINITY;
  }

  function wantsTurn(length: number): boolean {
    for (const family of assembly.turning) if (family.wantsTurn(assembly.machine.eq, length)) return true;
    return false;
  }

  function turnedOver(): void {
    valuesChanged = true;
    jumped = true;
  }

  function passBend(): void {
    bend = nextBendOfAll();
    history.begin(assembly.machine.eq);
    for (const { wave } of waved) if (valueAt(wave, seconds, true) !== valueAt(wave, seconds)) jumped ||= jumps(wave);
  }

  return {
    get seconds() {
      return seconds;
    },
    advanceTo(stop) {
      if (jumped && failure === null) settleEdge();
      while (failure === null && seconds < stop) {
        if (steps + rejected >= mostSteps) failure = { status: "tooManySteps", steps, seconds };
        else {
          if (jumped) settleEdge();
          if (failure === null) step(stop);
        }
      }
      return failure;
    },
    stepTowards(stop) {
      if (failure !== null || seconds >= stop) return failure;
      if (steps + rejected >= mostSteps) failure = { status: "tooManySteps", steps, seconds };
      else if (jumped) settleEdge();
      else step(stop, true);
      return failure;
    },
    resume(from) {
      if (failure !== null || !(from instanceof SolvedPoint)) return;
      recall(from);
      jumped = true;
    },
    leap(older, old, turns) {
      if (failure !== null || !(older instanceof SolvedPoint) || !(old instanceof SolvedPoint)) return;
      const { machine, stores } = assembly;
      const { x } = machine.eq;
      if (older.unknowns.length !== x.length || old.unknowns.length !== x.length) return;
      for (let k = 1; k < x.length; k += 1) {
        const before = (old.unknowns[k] as number) - (older.unknowns[k] as number);
        const change = (x[k] as number) - (old.unknowns[k] as number);
        const ratio = before === 0 ? 0 : change / before;
        // What comes to rest does so in a geometric sequence; what still gathers speed goes on in a parabola; what swings from
        // turn to turn is faster than a turn, and the next one shows where it stands.
        const goes =
          ratio > 0 && ratio < 1
            ? (change * ratio * (1 - ratio ** turns)) / (1 - ratio)
            : ratio >= 1
              ? turns * change + ((change - before) * turns * (turns + 1)) / 2
              : 0;
        x[k] = (x[k] as number) + goes;
      }
      machine.eq.stepSeconds = 0;
      for (const store of stores) store.keep(machine.eq);
      jumped = true;
    },
    get nextStepSeconds() {
      return assembly.stores.length > 0 ? wanted : Number.POSITIVE_INFINITY;
    },
    setValue(id, field, value) {
      const element = byId.get(id);
      if (element === undefined || !hasValue(element.kind, field)) return false;
      const old = element[field];
      if (value === old) return true;
      element[field] = value;
      if (!isFitValue(element.kind, field, value)) failure ??= { status: "badElement", id, field, value, seconds };
      else if (zeroChangesWiring(element.kind, field) && (((old as number | undefined) ?? 0) === 0) !== (value === 0)) rewire();
      const place = assembly.places.get(id);
      place?.family.take(place.index);
      valuesChanged = true;
      jumped = true;
      return true;
    },
    get now() {
      return assembly.now;
    },
    point() {
      const { eq } = assembly.machine;
      return new SolvedPoint(assembly.now.layout, eq.x.slice(), eq.currents.slice());
    },
    get floating() {
      return assembly.floating;
    },
    get steps() {
      return steps;
    },
    get rejected() {
      return rejected;
    },
    get passes() {
      return passes;
    },
    get residualAmps() {
      return residualAmps;
    },
  };
}
