// Newton's method on the equations of a circuit.
//
// Each pass lets every device write its currents and slopes at the present guess, solves for the step, and takes it. Devices
// hold back what would overflow (limitJunction) and say so; a pass in which anything was held back is never the last. The
// residual is computed from the devices' own currents, so a poor pivot costs passes but never a wrong answer.
// Does not know: what to do when it does not converge (findOperatingPoint.ts).
import { type EliminationList, makeEliminationList, replay, type SparsePattern } from "./eliminationList.ts";
import type { DeviceFamily, Equations, FinishedEquations } from "./equations.ts";

export const tolerances = {
  /**
   * V. The last step may be this large: Newton squares its error, and a junction's curve bends by 1/(2·kT/q) ≈ 20 a volt, so
   * what is left is below 20 · (2 µV)² ≈ 1e-10 V.
   */
  lastStep: 2e-6,
  /** Share of the largest voltage that a last step may have besides, for rounding. */
  voltsShare: 1e-13,
  /** A. What may not add up at a node. */
  amps: 1e-10,
  /** Share of the largest current that may not add up besides: the rounding of 1000 A is not an error. */
  ampsShare: 1e-12,
};

/** After so many passes supplies change their regions one at a time, so that they cannot chase each other. */
const simultaneousPasses = 12;

/** A circuit's equations with the devices in them and the means to solve them. */
export interface Machine {
  readonly finished: FinishedEquations;
  readonly eq: Equations;
  readonly families: readonly DeviceFamily[];
  readonly pattern: SparsePattern;
  list: EliminationList | null;
  /** Newton step by unknown. */
  readonly step: Float64Array;
  /** S from every node to ground, for continuation; 0 for the real circuit. */
  leak: number;
  /** Passes (linear solves) since the caller set it to 0. */
  passes: number;
  /** The largest current that did not add up in the last pass, A, and the unknown whose row it was. */
  residualAmps: number;
  worst: number;
  /** The largest voltage of the last pass, V. */
  largestVolts: number;
}

/** @returns the machine at rest, with all values taken. */
export function makeMachine(finished: FinishedEquations, families: readonly DeviceFamily[]): Machine {
  return {
    finished,
    eq: finished.equations,
    families,
    pattern: finished.pattern,
    list: null,
    step: new Float64Array(finished.pattern.size + 1),
    leak: 0,
    passes: 0,
    residualAmps: 0,
    worst: 0,
    largestVolts: 0,
  };
}

/** Gathers again what no pass changes; due after any value was changed. */
export function restamp({ eq, families }: Machine): void {
  eq.fixed.fill(0);
  for (const family of families) family.stampFixed(eq);
}

/**
 * Runs passes from the present guess, as `eq.start` says.
 *
 * @param most passes that may be spent.
 * @returns whether it converged; x, state and currents then agree with one another.
 */
export function runNewton(machine: Machine, most: number): boolean {
  const { eq } = machine;
  let step = Number.POSITIVE_INFINITY;
  let smallEnough = false;
  let refused = 0;
  for (let pass = 0; ; pass += 1) {
    eq.switchesLeft = pass < simultaneousPasses ? Number.MAX_SAFE_INTEGER : step < 1e-3 ? 1 : 0;
    loadAll(machine);
    if (smallEnough && eq.unsettled === 0) {
      // Micro-ohms beside volts: the last bits of the voltages alone may exceed the tolerance. Three more passes end that.
      if (measureResidual(machine) || refused === 3) return true;
      refused += 1;
    }
    if (pass === most) {
      measureResidual(machine);
      return false;
    }
    const unsettled = eq.unsettled;
    if (!solveStep(machine)) return false;
    machine.passes += 1;
    step = takeStep(machine);
    if (!Number.isFinite(step)) return false;
    smallEnough = unsettled === 0 && step <= tolerances.lastStep + tolerances.voltsShare * machine.largestVolts;
  }
}

function loadAll({ eq, families, leak, finished }: Machine): void {
  eq.residual.fill(0);
  eq.jacobian.set(eq.fixed);
  eq.jacobian.fill(0, eq.fixed.length);
  eq.unsettled = 0;
  for (const family of families) family.load(eq);
  eq.start = "last";
  if (leak > 0) {
    const { nodeRows, nodeDiagonals } = finished;
    for (let k = 0; k < nodeRows.length; k += 1) {
      const unknown = nodeRows[k] as number;
      const place = nodeDiagonals[k] as number;
      eq.residual[unknown] = (eq.residual[unknown] as number) + leak * (eq.x[unknown] as number);
      eq.jacobian[place] = (eq.jacobian[place] as number) + leak;
    }
  }
}

/** Measures what does not add up, over all nodes. @returns whether it is small enough. */
function measureResidual(machine: Machine): boolean {
  const { eq, finished } = machine;
  let worst = 0;
  let size = 0;
  for (let k = 0; k < finished.nodeRows.length; k += 1) {
    const unknown = finished.nodeRows[k] as number;
    const amps = Math.abs(eq.residual[unknown] as number);
    if (amps > size) {
      size = amps;
      worst = unknown;
    }
  }
  let largest = 0;
  for (let k = 0; k < eq.currents.length; k += 1) largest = Math.max(largest, Math.abs(eq.currents[k] as number));
  machine.residualAmps = size;
  machine.worst = worst;
  return size <= tolerances.amps + tolerances.ampsShare * largest;
}

/** Solves jacobian · step = residual, with a new elimination list when there is none or it meets a bad pivot. */
function solveStep(machine: Machine): boolean {
  const { eq, step } = machine;
  if (machine.list && replay(machine.list, eq.jacobian, eq.residual, step)) return true;
  // The replay has overwritten the matrix.
  if (machine.list) loadAll(machine);
  const made = makeEliminationList(machine.pattern, eq.jacobian);
  if ("emptyColumn" in made) {
    machine.list = null;
    machine.worst = made.emptyColumn;
    return false;
  }
  machine.list = made.list;
  if (eq.jacobian.length < made.list.places) {
    const longer = new Float64Array(made.list.places);
    longer.set(eq.jacobian);
    eq.jacobian = longer;
  }
  return replay(made.list, eq.jacobian, eq.residual, step);
}

/** @returns the largest change of a node's voltage; NaN or infinite if the step was no number. */
function takeStep(machine: Machine): number {
  const { eq, step, finished } = machine;
  let size = 0;
  let largest = 0;
  for (let k = 0; k < finished.nodeRows.length; k += 1) {
    const unknown = finished.nodeRows[k] as number;
    const change = step[unknown] as number;
    const size1 = Math.abs(change);
    if (!(size1 < Number.POSITIVE_INFINITY)) return size1;
    if (size1 > size) size = size1;
    largest = Math.max(largest, Math.abs((eq.x[unknown] as number) - change));
  }
  for (let unknown = 1; unknown < step.length; unknown += 1)
    eq.x[unknown] = (eq.x[unknown] as number) - (step[unknown] as number);
  machine.largestVolts = largest;
  return size;
}
