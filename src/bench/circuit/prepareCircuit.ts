// A circuit made ready to be solved many times with other values: thousands of variations are a rehearsal's daily work.
//
// Wiring, order of elimination and all indices are found once. A value changes in place, and the next solve starts from the
// last answer, which takes two or three passes. Only a series resistance that becomes zero or stops being zero changes the
// wiring; then the circuit is assembled again, unasked.
// Does not know: parts, tolerances, time.
import { assemble, findStarvedNode, type MutableElement, startFrom } from "./assemble.ts";
import { findBadElements } from "./findBadElements.ts";
import { findOperatingPoint } from "./findOperatingPoint.ts";
import { hasValue, isFitValue, zeroChangesWiring } from "./findUnfitValues.ts";
import type { Netlist } from "./netlist.ts";
import { restamp } from "./newton.ts";
import type { DcOptions, DcOutcome, OperatingPoint } from "./outcome.ts";
import { SolvedPoint } from "./solvedPoint.ts";

export interface PreparedCircuit {
  /**
   * Changes one number of one element ("R1", "ohms"); the next solve uses it. A value that no part has is that solve's outcome.
   * @returns false if the circuit has no such element or the element no such number.
   */
  setValue(id: string, field: string, value: number): boolean;
  /** The operating point, sought from the last answer where there is one. It stays as it is whatever is solved later. */
  solve(): DcOutcome;
  /** As solve, but makes no objects: the answer is read at `now`. */
  settle(): DcOutcome["status"];
  /** A window on the last answer, changed by the next solve. Means nothing after a status other than "solved". */
  readonly now: OperatingPoint;
  /** Newton passes of the last solve. */
  readonly passes: number;
  /** Forgets the last answer: the next solve starts from nothing. */
  forget(): void;
}

type Failure = Exclude<DcOutcome, { status: "solved" }>;

/** Never throws and never fails: what is wrong with a circuit is the outcome of solving it. */
export function prepareCircuit(netlist: Netlist, options: DcOptions = {}): PreparedCircuit {
  const elements = netlist.elements.map((element): MutableElement => ({ ...element }));
  const byId = new Map(elements.map((element) => [element.id, element]));
  const bad = findBadElements(elements);
  let assembly = assemble(elements, options);
  let wiringChanged = false;
  let valuesChanged = true;
  if (options.from instanceof SolvedPoint) startFrom(assembly, options.from);

  /** What can be said without arithmetic, or null. */
  function findObstacle(): Failure | null {
    if (bad.size > 0) for (const outcome of bad.values()) return outcome;
    const { sourceLoop, withoutPath } = assembly.topology;
    if (sourceLoop !== null) return { status: "sourceLoop", elements: sourceLoop };
    for (const { source, node } of withoutPath) if (source.amps !== 0) return { status: "currentWithoutPath", node };
    return null;
  }

  function run(): Failure | null {
    if (wiringChanged && bad.size === 0) {
      const { machine, now } = assembly;
      assembly = assemble(elements, options);
      if (machine.eq.start !== "nothing") startFrom(assembly, now);
      wiringChanged = false;
      valuesChanged = true;
    }
    const obstacle = findObstacle();
    if (obstacle !== null) return obstacle;
    const { machine } = assembly;
    if (valuesChanged) restamp(machine);
    valuesChanged = false;
    if (findOperatingPoint(machine)) return null;
    machine.eq.start = "nothing";
    const starved = findStarvedNode(assembly, elements);
    if (starved !== null) return { status: "currentWithoutPath", node: starved };
    const { worst, passes, residualAmps } = machine;
    return { status: "notConverged", worstNode: machine.finished.owners[worst] ?? "0", passes, residualAmps };
  }

  return {
    setValue(id, field, value) {
      const element = byId.get(id);
      if (element === undefined || !hasValue(element.kind, field)) return false;
      const old = element[field];
      if (value === old) return true;
      if (zeroChangesWiring(element.kind, field) && ((old ?? 0) === 0) !== (value === 0)) wiringChanged = true;
      element[field] = value;
      if (!isFitValue(element.kind, field, value)) bad.set(`${id} ${field}`, { status: "badElement", id, field, value });
      else if (bad.size > 0) bad.delete(`${id} ${field}`);
      const place = assembly.places.get(id);
      place?.family.take(place.index);
      valuesChanged = true;
      return true;
    },
    solve() {
      const failure = run();
      if (failure !== null) return failure;
      const { eq, passes, residualAmps } = assembly.machine;
      const point = new SolvedPoint(assembly.now.layout, eq.x.slice(), eq.currents.slice());
      return { status: "solved", point, passes, residualAmps, floating: assembly.floating };
    },
    settle() {
      return run()?.status ?? "solved";
    },
    get now() {
      return assembly.now;
    },
    get passes() {
      return assembly.machine.passes;
    },
    forget() {
      assembly.machine.eq.start = "nothing";
    },
  };
}
