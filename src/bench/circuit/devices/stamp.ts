// Adding to the matrix: one place, or the four places of a conductance between two nodes.
//
// Does not know: devices.
import type { EquationBuilder } from "../equations.ts";

/** Adds at one place. */
export function add(matrix: Float64Array, place: number, value: number): void {
  matrix[place] = (matrix[place] as number) + value;
}

/** The four places of a conductance between a[k] and b[k], one after another: aa, bb, ab, ba. */
export function conductancePlaces(builder: EquationBuilder, a: ArrayLike<number>, b: ArrayLike<number>): Int32Array {
  const at = new Int32Array(4 * a.length);
  for (let k = 0; k < a.length; k += 1) {
    const [from, to] = [a[k] as number, b[k] as number];
    at.set([builder.place(from, from), builder.place(to, to), builder.place(from, to), builder.place(to, from)], 4 * k);
  }
  return at;
}

/** Adds a conductance at the four places that belong to number k. */
export function addConductance(matrix: Float64Array, at: Int32Array, k: number, siemens: number): void {
  const p = 4 * k;
  add(matrix, at[p] as number, siemens);
  add(matrix, at[p + 1] as number, siemens);
  add(matrix, at[p + 2] as number, -siemens);
  add(matrix, at[p + 3] as number, -siemens);
}

/** Adds the same value at several places. */
export function addEach(matrix: Float64Array, places: Int32Array, value: number): void {
  for (let k = 0; k < places.length; k += 1) add(matrix, places[k] as number, value);
}
