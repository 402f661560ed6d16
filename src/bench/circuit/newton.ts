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
  /** A. What may not add up at a node. */
  amps: 1e-10,
  /** The same within a step through time. */
  ampsInTime: 5e-10,
  /** Or this share of the largest current: the rounding of 1000 A is not an error. */
  ampsShare: 1e-12,
};

/** After so many passes supplies change their regions one at a time, so that they cannot chase each other. */
const simultaneousPasses = 12;

/**
 * After so many passes residuals that are rounding are an answer, whatever the steps: where amperes flow in a group of nodes
 * that only leaks hold, the last bits of the amperes move its voltage by more than a microvolt for ever.
 */
const patience = 25;
/** Share of the largest current that is rounding. */
const rounding = 1e-15;

/** A circuit's equations with the devices in them and the means to solve them. */
export interface Machine {
  readonly finished: FinishedEquations;
  readonly eq: Equations;
  readonly families: readonly DeviceFamily[];
  readonly pattern: SparsePattern;
  list: EliminationList | null;
  /** One solve is exact. */
  readonly isLinear: boolean;
  /** V. A pass that changed every node by less may be the last. */
  lastStep: number;
  /** A. What may not add up at a node. */
  amps: number;
  /** Newton step by unknown. */
  readonly step: Float64Array;
  /** S from every node to ground, for continuation; 0 for the real circuit. */
  leak: number;
  /** The largest change of a node's voltage in the last pass, V. */
  stepVolts: number;
  /** Passes (linear solves) since the caller set it to 0. */
  passes: number;
  /** The largest current that did not add up in the last pass, A, and the unknown whose row it was. */
  residualAmps: number;
  worst: number;
}

/** @returns the machine at rest, with all values taken. */
export function makeMachine(finished: FinishedEquations, families: readonly DeviceFamily[], isLinear: boolean): Machine {
  return {
    finished,
    eq: finished.equations,
    families,
    pattern: finished.pattern,
    list: null,
    isLinear,
    lastStep: tolerances.lastStep,
    amps: tolerances.amps,
    step: new Float64Array(finished.pattern.size + 1),
    leak: 0,
    stepVolts: 0,
    passes: 0,
    residualAmps: 0,
    worst: 0,
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
 * @param isPassedBy nobody looks at the answer: x is enough, and currents and what does not add up may be those of the last
 * pass but one.
 * @returns whether it converged; x, state and currents then agree with one another.
 */
export function runNewton(machine: Machine, most: number, isPassedBy = false): boolean {
  const { eq } = machine;
  machine.stepVolts = Number.POSITIVE_INFINITY;
  let smallEnough = false;
  let refused = 0;
  for (let pass = 0; ; pass += 1) {
    eq.switchesLeft = pass < simultaneousPasses ? Number.MAX_SAFE_INTEGER : machine.stepVolts < 1e-3 ? 1 : 0;
    loadAll(machine);
    if (smallEnough && eq.unsettled === 0) {
      // Micro-ohms beside volts: the last bits of the voltages alone may exceed the tolerance. Three more passes end that.
      if (measureResidual(machine) || refused === 3) return true;
      refused += 1;
    }
    if (pass > patience && eq.unsettled === 0) {
      measureResidual(machine);
      if (machine.residualAmps <= rounding * largestAmps(machine)) return true;
    }
    if (pass === most) {
      measureResidual(machine);
      return false;
    }
    const unsettled = eq.unsettled;
    if (!solveStep(machine)) return false;
    machine.passes += 1;
    if (!takeStep(machine)) return false;
    smallEnough = unsettled === 0 && machine.stepVolts <= machine.lastStep;
    if (isPassedBy && unsettled === 0 && (machine.isLinear || smallEnough)) return true;
  }
}

/** Whether the present guess, unchanged, is an answer: all currents add up and no device wants another region. */
export function addsUp(machine: Machine): boolean {
  machine.eq.switchesLeft = 0;
  loadAll(machine);
  return measureResidual(machine) && machine.eq.unsettled === 0;
}

function loadAll({ eq, families, leak, finished }: Machine): void {
  // Loops, because these arrays are short and a call to fill them costs more than it does.
  const { residual, jacobian, fixed } = eq;
  for (let k = 0; k < residual.length; k += 1) residual[k] = 0;
  for (let k = 0; k < fixed.length; k += 1) jacobian[k] = fixed[k] as number;
  for (let k = fixed.length; k < jacobian.length; k += 1) jacobian[k] = 0;
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
  const { nodeRows } = finished;
  let worst = 0;
  let size = 0;
  for (let k = 0; k < nodeRows.length; k += 1) {
    const unknown = nodeRows[k] as number;
    const amps = Math.abs(eq.residual[unknown] as number);
    if (amps > size) {
      size = amps;
      worst = unknown;
    }
  }
  machine.residualAmps = size;
  machine.worst = worst;
  return size <= machine.amps || size <= tolerances.ampsShare * largestAmps(machine);
}

function largestAmps({ eq }: Machine): number {
  let largest = 0;
  for (const amps of eq.currents) largest = Math.max(largest, Math.abs(amps));
  return largest;
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

/** Leaves the largest change of a node's voltage in `stepVolts`. @returns false, with no step taken, if it was no number. */
function takeStep(machine: Machine): boolean {
  const { step, finished } = machine;
  const { nodeRows } = finished;
  const { x } = machine.eq;
  let size = 0;
  for (let k = 0; k < nodeRows.length; k += 1) {
    const change = Math.abs(step[nodeRows[k] as number] as number);
    if (!(change <= Number.MAX_VALUE)) return false;
    if (change > size) size = change;
  }
  for (let unknown = 1; unknown < step.length; unknown += 1) x[unknown] = (x[unknown] as number) - (step[unknown] as number);
  machine.stepVolts = size;
  return true;
}
