// The list of steps against plain Gaussian elimination with full rows, on random sparse matrices.
import { expect, test } from "vitest";
import { sample } from "../../../test/sample.ts";
import { type Random, seededRandom } from "../../base/index.ts";
import { makeEliminationList, replay, type SparsePattern } from "./eliminationList.ts";

interface Matrix {
  readonly pattern: SparsePattern;
  readonly values: Float64Array;
}

/** A matrix from rows of numbers; zeros are no places. */
function matrix(rows: readonly (readonly number[])[]): Matrix {
  const at: { row: number; column: number; value: number }[] = [{ row: 0, column: 0, value: 0 }];
  rows.forEach((row, r) => {
    row.forEach((value, c) => {
      if (value !== 0) at.push({ row: r + 1, column: c + 1, value });
    });
  });
  const pattern = { size: rows.length, rows: at.map((p) => p.row), columns: at.map((p) => p.column), firm: new Set<number>() };
  return { pattern, values: Float64Array.from(at, (p) => p.value) };
}

/** @returns x, or null where a pivot is zero. */
function solve({ pattern, values }: Matrix, b: readonly number[]): number[] | null {
  const made = makeEliminationList(pattern, values);
  if ("emptyColumn" in made) return null;
  const work = new Float64Array(made.list.places);
  work.set(values);
  const x = new Float64Array(pattern.size + 1);
  return replay(made.list, work, Float64Array.from([0, ...b]), x) ? [...x.subarray(1)] : null;
}

/** Textbook elimination with the largest pivot of each column. */
function solveDense(rows: readonly (readonly number[])[], b: readonly number[]): number[] {
  const a = rows.map((row, r) => [...row, b[r] as number]);
  const n = a.length;
  for (let k = 0; k < n; k += 1) {
    const best = a.slice(k).reduce((m, row, i) => (Math.abs(row[k]!) > Math.abs(a[m]![k]!) ? i + k : m), k);
    [a[k], a[best]] = [a[best]!, a[k]!];
    for (let r = k + 1; r < n; r += 1) {
      const factor = a[r]![k]! / a[k]![k]!;
      for (let c = k; c <= n; c += 1) a[r]![c] = a[r]![c]! - factor * a[k]![c]!;
    }
  }
  const x = new Array<number>(n).fill(0);
  for (let k = n - 1; k >= 0; k -= 1) {
    let sum = a[k]![n]!;
    for (let c = k + 1; c < n; c += 1) sum -= a[k]![c]! * x[c]!;
    x[k] = sum / a[k]![k]!;
  }
  return x;
}

/** Conductances between nodes and to ground, and a few sources with a zero on the diagonal, as a circuit gives. */
function randomSystem(random: Random): number[][] {
  const nodes = random.int(1, 12);
  const sources = random.int(0, Math.min(3, nodes));
  const n = nodes + sources;
  const rows = Array.from({ length: n }, () => new Array<number>(n).fill(0));
  const add = (r: number, c: number, value: number) => {
    rows[r]![c] = rows[r]![c]! + value;
  };
  for (let k = 0; k < nodes; k += 1) {
    add(k, k, 10 ** -random.int(2, 5));
    const other = random.int(0, nodes - 1);
    const siemens = 10 ** -random.int(1, 5) * (1 + random.next());
    add(k, k, siemens);
    add(other, other, siemens);
    add(k, other, -siemens);
    add(other, k, -siemens);
    // A transistor's slope, which makes the matrix unsymmetrical.
    if (random.int(0, 3) === 0) add(k, random.int(0, nodes - 1), 0.04 * random.next());
  }
  for (let s = 0; s < sources; s += 1) {
    add(nodes + s, s, 1);
    add(s, nodes + s, 1);
  }
  return rows;
}

test("gives what plain elimination gives", () => {
  for (let seed = 0; seed < sample(300, 20_000); seed += 1) {
    const random = seededRandom(seed);
    const rows = randomSystem(random);
    const b = rows.map(() => random.next() - 0.5);
    const x = solve(matrix(rows), b);
    const expected = solveDense(rows, b);
    const size = Math.max(...expected.map(Math.abs));
    expect(x, `seed ${seed}`).not.toBeNull();
    for (const [k, value] of expected.entries()) expect(Math.abs(x![k]! - value), `seed ${seed}`).toBeLessThan(1e-8 * size);
  }
});

test("a zero on the diagonal is no obstacle", () => {
  const swapped = matrix([
    [0, 1],
    [1, 0],
  ]);
  expect(solve(swapped, [3, 4])).toEqual([4, 3]);
});

test("a column without a pivot is named", () => {
  const rows = [
    [1, 0],
    [1, 0],
  ];
  const { pattern, values } = matrix(rows);
  expect(makeEliminationList(pattern, values)).toEqual({ emptyColumn: 2 });
});

test("a replay at numbers that make a pivot zero says so", () => {
  const first = matrix([
    [2, 1],
    [1, 1],
  ]);
  const made = makeEliminationList(first.pattern, first.values);
  if (!("list" in made)) throw new Error("no list");
  const singular = Float64Array.from([0, 2, 2, 1, 1]);
  expect(replay(made.list, singular, new Float64Array(3), new Float64Array(3))).toBe(false);
});

test("a chain of resistors has no fill, in whatever order its nodes are numbered", () => {
  const n = 40;
  const order = seededRandom(1).shuffled(Array.from({ length: n }, (_, k) => k));
  const rows = Array.from({ length: n }, () => new Array<number>(n).fill(0));
  for (let k = 0; k + 1 < n; k += 1) {
    const [a, b] = [order[k]!, order[k + 1]!];
    rows[a]![a] = 2;
    rows[b]![b] = 2;
    rows[a]![b] = -1;
    rows[b]![a] = -1;
  }
  const { pattern, values } = matrix(rows);
  const made = makeEliminationList(pattern, values);
  expect("list" in made && made.list.places).toBe(pattern.rows.length);
});
