// Gaussian elimination of a sparse matrix as a list of steps, made once and replayed for new numbers.
//
// The places that are not zero never change while a circuit keeps its wiring, so order, fill and every index are found once;
// afterwards a solve is a walk over one Int32Array. Pivots are chosen by least fill (Markowitz), at numbers that the caller
// takes as typical: diagonal places of nodes and the ±1 of sources first, because those stay good pivots when a transistor
// switches. A replay that meets a zero pivot says so, and the caller makes a new list at the numbers of the day.
// Does not know: circuits.
// Source: Markowitz, Management Science 3 (1957); Duff, Erisman, Reid: Direct Methods for Sparse Matrices, chapters 7 and 9.

/** The places of a square matrix that are not zero. Rows and columns count from 1; place 0 is a bin for what nobody needs. */
export interface SparsePattern {
  readonly size: number;
  /** Row and column by place. */
  readonly rows: readonly number[];
  readonly columns: readonly number[];
  /** Places whose value is ±1 for good (entries of ideal sources). */
  readonly firm: ReadonlySet<number>;
}

export interface EliminationList {
  /**
   * By pivot: place, row, rows below, columns to the right, the columns' places in the pivot row; then by row below: place in
   * the pivot column, row, places of its columns.
   */
  readonly forward: Int32Array;
  /** By pivot, last first: place, row, column, columns to the right; then pairs of place and column. */
  readonly back: Int32Array;
  /** Length that the array of values must have: places of the pattern and of the fill. */
  readonly places: number;
}

/** A pivot may be this much smaller than the largest number in its column; SPICE's PIVREL. */
const leastRelativePivot = 1e-3;

/**
 * Chooses pivots and writes the list.
 *
 * @param values by place; not changed.
 * @returns the list, or the column for which no pivot is left.
 */
export function makeEliminationList(
  pattern: SparsePattern,
  values: Float64Array,
): { readonly list: EliminationList } | { readonly emptyColumn: number } {
  const { size, rows, columns } = pattern;
  const work = Array.from({ length: rows.length }, (_, place) => values[place] as number);
  const touched = new Set<number>();
  const wide = size + 1;
  const placeAt = new Int32Array(wide * wide);
  const rowColumns: number[][] = Array.from({ length: wide }, () => []);
  const columnRows: number[][] = Array.from({ length: wide }, () => []);
  for (let place = 1; place < rows.length; place += 1) {
    const row = rows[place] as number;
    const column = columns[place] as number;
    placeAt[row * wide + column] = place;
    rowColumns[row]?.push(column);
    columnRows[column]?.push(row);
  }
  const forward: number[] = [];
  const backward: number[][] = [];
  const columnsLeft = new Set(columnRows.keys());
  columnsLeft.delete(0);

  while (columnsLeft.size > 0) {
    const pivot = choosePivot();
    if (pivot.place === 0) return { emptyColumn: pivot.column };
    eliminate(pivot.row, pivot.column, pivot.place);
  }
  return { list: { forward: Int32Array.from(forward), back: Int32Array.from(backward.reverse().flat()), places: work.length } };

  /** The place with the least possible fill among the trusted ones; any place at all when no trusted one will do. */
  function choosePivot() {
    const best = { place: 0, row: 0, column: 0, cost: Number.POSITIVE_INFINITY, trusted: false };
    for (const column of columnsLeft) {
      const members = columnRows[column] as number[];
      let largest = 0;
      for (const row of members) largest = Math.max(largest, Math.abs(work[placeAt[row * wide + column] as number] as number));
      if (best.place === 0 && (best.column === 0 || largest === 0)) best.column = column;
      if (largest === 0) continue;
      for (const row of members) {
        const place = placeAt[row * wide + column] as number;
        if (!(Math.abs(work[place] as number) >= leastRelativePivot * largest)) continue;
        const trusted = row === column || (pattern.firm.has(place) && !touched.has(place));
        if (best.trusted && !trusted) continue;
        const cost = ((rowColumns[row] as number[]).length - 1) * (members.length - 1);
        const better =
          trusted !== best.trusted || cost < best.cost || (cost === best.cost && row === column && best.row !== best.column);
        if (better) Object.assign(best, { place, row, column, cost, trusted });
      }
      if (best.trusted && best.cost === 0) break;
    }
    return best;
  }

  function eliminate(row: number, column: number, place: number): void {
    const right = (rowColumns[row] as number[]).filter((c) => c !== column);
    const below = (columnRows[column] as number[]).filter((r) => r !== row);
    forward.push(place, row, below.length, right.length);
    for (const c of right) forward.push(placeAt[row * wide + c] as number);
    const pivot = work[place] as number;
    for (const r of below) {
      const first = placeAt[r * wide + column] as number;
      const factor = (work[first] as number) / pivot;
      forward.push(first, r);
      for (const c of right) {
        let target = placeAt[r * wide + c] as number;
        if (target === 0) {
          target = work.length;
          work.push(0);
          placeAt[r * wide + c] = target;
          rowColumns[r]?.push(c);
          columnRows[c]?.push(r);
        }
        work[target] = (work[target] as number) - factor * (work[placeAt[row * wide + c] as number] as number);
        touched.add(target);
        forward.push(target);
      }
    }
    backward.push([place, row, column, right.length, ...right.flatMap((c) => [placeAt[row * wide + c] as number, c])]);
    for (const r of below) rowColumns[r] = (rowColumns[r] as number[]).filter((c) => c !== column);
    for (const c of right) columnRows[c] = (columnRows[c] as number[]).filter((r) => r !== row);
    columnsLeft.delete(column);
  }
}

/**
 * Solves A·x = b by replaying the list.
 *
 * @param values A by place, fill places zero; overwritten.
 * @param b by row, from 1; overwritten.
 * @param x by column, from 1.
 * @returns whether every pivot could be divided by.
 */
export function replay(list: EliminationList, values: Float64Array, b: Float64Array, x: Float64Array): boolean {
  const { forward, back } = list;
  for (let at = 0; at < forward.length; ) {
    const place = forward[at] as number;
    const inverse = 1 / (values[place] as number);
    // NaN and both infinities fail this comparison.
    if (!(Math.abs(inverse) < 1e200)) return false;
    values[place] = inverse;
    const known = b[forward[at + 1] as number] as number;
    const below = forward[at + 2] as number;
    const right = forward[at + 3] as number;
    const pivotRow = at + 4;
    at = pivotRow + right;
    for (let k = 0; k < below; k += 1) {
      const factor = (values[forward[at] as number] as number) * inverse;
      const row = forward[at + 1] as number;
      at += 2;
      if (factor !== 0) {
        b[row] = (b[row] as number) - factor * known;
        for (let j = 0; j < right; j += 1) {
          const target = forward[at + j] as number;
          values[target] = (values[target] as number) - factor * (values[forward[pivotRow + j] as number] as number);
        }
      }
      at += right;
    }
  }
  for (let at = 0; at < back.length; ) {
    const inverse = values[back[at] as number] as number;
    let sum = b[back[at + 1] as number] as number;
    const column = back[at + 2] as number;
    const end = at + 4 + 2 * (back[at + 3] as number);
    for (at += 4; at < end; at += 2) sum -= (values[back[at] as number] as number) * (x[back[at + 1] as number] as number);
    x[column] = sum * inverse;
  }
  return true;
}
