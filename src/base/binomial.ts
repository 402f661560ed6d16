// Binomial and Poisson chances, to the last digits, for any size a school has.
//
// Each sum starts at the mode with weight 1 and walks outwards by the ratio of neighbouring terms; the quotient of two such
// sums needs no factorial and no log-gamma, cannot overflow, and loses nothing but rounding. Weights below 1e-300 of the mode
// are left out. The ratios are those of the definitions (Feller, An Introduction to Probability Theory, vol. 1, ch. VI).
// Does not know: parts, spares, losses.

/** Terms this much smaller than the mode are left out: even the far tail then keeps all its digits. */
const negligible = 1e-300;

/** The weights of a distribution that rises to its mode and falls after it, relative to the mode. */
function weights(mode: number, last: number, up: (k: number) => number): { first: number; list: Float64Array } {
  const above: number[] = [];
  for (let k = mode, w = 1; k < last; k += 1) {
    w *= up(k);
    if (w < negligible) break;
    above.push(w);
  }
  const below: number[] = [];
  for (let k = mode, w = 1; k > 0; k -= 1) {
    w /= up(k - 1);
    if (w < negligible) break;
    below.push(w);
  }
  return { first: mode - below.length, list: Float64Array.from([...below.reverse(), 1, ...above]) };
}

/** Adds from the small end of the sum, so that small terms are not lost beside great ones. */
function sum(list: Float64Array, from: number, to: number): number {
  let total = 0;
  const rising = (list[from] ?? 0) <= (list[to - 1] ?? 0);
  for (let i = 0; i < to - from; i += 1) total += list[rising ? from + i : to - 1 - i] ?? 0;
  return total;
}

/** The chances of "k or fewer" and "more than k"; the smaller one is exact to its own last digits. */
function split(shape: { first: number; list: Float64Array }, k: number): { atMost: number; more: number } {
  const cut = Math.min(Math.max(Math.floor(k) - shape.first + 1, 0), shape.list.length);
  const low = sum(shape.list, 0, cut);
  const high = sum(shape.list, cut, shape.list.length);
  return { atMost: low / (low + high), more: high / (low + high) };
}

function binomialShape(n: number, p: number) {
  const odds = p / (1 - p);
  return weights(Math.min(n, Math.floor((n + 1) * p)), n, (k) => ((n - k) / (k + 1)) * odds);
}

/**
 * The chance that at most `k` of `n` independent trials succeed, and that more do.
 *
 * @param n a whole number from 0. @param p chance of one success, 0 to 1. @param k any number; below 0 nothing is at most k.
 */
export function binomial(k: number, n: number, p: number): { atMost: number; more: number } {
  if (k < 0) return { atMost: 0, more: 1 };
  if (k >= n || p <= 0) return { atMost: 1, more: 0 };
  if (p >= 1) return { atMost: 0, more: 1 };
  return split(binomialShape(n, p), k);
}

/** @returns the smallest k with P(Bin(n, p) ≤ k) ≥ `chance`. */
export function binomialQuantile(chance: number, n: number, p: number): number {
  let k = 0;
  while (k < n && binomial(k, n, p).atMost < chance) k += 1;
  return k;
}

/** The chance that a Poisson count of this mean is at most `k`, and that it is more. @param mean from 0. */
export function poisson(k: number, mean: number): { atMost: number; more: number } {
  if (k < 0) return { atMost: 0, more: 1 };
  if (mean <= 0) return { atMost: 1, more: 0 };
  return split(
    weights(Math.floor(mean), Number.POSITIVE_INFINITY, (i) => mean / (i + 1)),
    k,
  );
}

/** @returns the smallest k with P(Poisson(mean) ≤ k) ≥ `chance`; `chance` must be below 1. */
export function poissonQuantile(chance: number, mean: number): number {
  let k = 0;
  while (poisson(k, mean).atMost < chance) k += 1;
  return k;
}

/**
 * The natural logarithm of the chance that at least `wanted` of `have` units work.
 *
 * The event is "`wanted` or more of the `have` units work, each on its own with chance `works`". A logarithm, because the
 * chance that every team works is a product over all needs. @returns −Infinity where it cannot be.
 */
export function logChanceEnough(wanted: number, have: number, works: number): number {
  if (wanted <= 0) return 0;
  if (have < wanted) return Number.NEGATIVE_INFINITY;
  // Counted in failures, because few fail: have − wanted of them may.
  const { atMost, more } = binomial(have - wanted, have, 1 - works);
  return atMost > 0.5 ? Math.log1p(-more) : Math.log(atMost);
}
