// Supplies that change their ways: the regions they can be in and how they move between them.
//
// A limited source or a regulator is linear in each region. A guess that leaves its region moves to the neighbour only; late
// in a solve one device at a time moves, by lowest number, which ends for every passive load (the least-index rule).
// Does not know: which supply it is.
// Source of the rule: Murty, Linear Complementarity, Linear and Nonlinear Programming (1988), chapter 4.
import type { EquationBuilder, Equations } from "../equations.ts";
import { add } from "./stamp.ts";

/** Numbers, because they are kept with the junction voltages. A regulator follows when its input is too low to hold its output. */
export const region = { giving: 0, atLimit: 1, blocked: 2, following: 3 } as const;

/** Whether the current in a region is the same at any voltage. */
export function fixesCurrent(now: number): boolean {
  return now === region.atLimit || now === region.blocked;
}

/** Unknowns are wrong by rounding: a region ends only this far beyond its bounds (relative; A or V near zero). */
export const slack = 1e-12;

/** @returns the region to compute with now; counts the device as unsettled when it wants another. */
export function moveTo(eq: Equations, at: number, wanted: number): number {
  const now = eq.state[at] as number;
  if (wanted === now) return now;
  eq.unsettled += 1;
  if (eq.switchesLeft === 0) return now;
  eq.switchesLeft -= 1;
  eq.state[at] = wanted;
  return wanted;
}

/** Places of a supply's own row: its two ends and its current. */
export function supplyRow(builder: EquationBuilder, plus: Int32Array, minus: Int32Array, branch: Int32Array): Int32Array {
  const at = new Int32Array(3 * branch.length);
  branch.forEach((row, k) => {
    at.set([builder.place(row, plus[k] as number), builder.place(row, minus[k] as number), builder.place(row, row)], 3 * k);
  });
  return at;
}

/** The row says V(plus) − V(minus) − ohms · current = …. */
export function addVoltageRow(matrix: Float64Array, at: Int32Array, k: number, ohms: number): void {
  add(matrix, at[3 * k] as number, 1);
  add(matrix, at[3 * k + 1] as number, -1);
  add(matrix, at[3 * k + 2] as number, -ohms);
}

/** The row says current = …. */
export function addCurrentRow(matrix: Float64Array, at: Int32Array, k: number): void {
  add(matrix, at[3 * k + 2] as number, 1);
}
