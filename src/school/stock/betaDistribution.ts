// The beta distribution: what a class's counts say about a rate, and how sure that is.
//
// The regularised incomplete beta function by its continued fraction, the quantile by halving the interval.
// Sources: NIST Digital Library of Mathematical Functions, 8.17.22 (fraction), 5.11 (log-gamma by Stirling's series).
// Does not know: what the rate is a rate of.

/** ln Γ(x) for x > 0: Stirling's series above 15, below that through Γ(x + 1) = x Γ(x). DLMF 5.11.1. */
function logGamma(x: number): number {
  let shift = 0;
  let z = x;
  for (; z < 15; z += 1) shift += Math.log(z);
  const y = 1 / (z * z);
  const series = (1 / 12 - y * (1 / 360 - y * (1 / 1260 - y * (1 / 1680 - y / 1188)))) / z;
  return (z - 0.5) * Math.log(z) - z + 0.5 * Math.log(2 * Math.PI) + series - shift;
}

/** P(X ≤ x) for X ~ Beta(a, b), a and b above 0. */
export function betaAtMost(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  // The fraction converges fast only below the mean; above it the mirrored one does (DLMF 8.17.4).
  if (x > (a + 1) / (a + b + 2)) return 1 - betaAtMost(1 - x, b, a);
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x)) / a;
  // Evaluated from the far end: 400 terms are far more than a, b below 10⁵ need.
  let tail = 1;
  for (let m = 400; m >= 1; m -= 1) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    const odd = (-(a + m - 1) * (a + b + m - 1) * x) / ((a + 2 * m - 2) * (a + 2 * m - 1));
    tail = 1 + odd / (1 + even / tail);
  }
  return front / tail;
}

/** @returns x with P(X ≤ x) = chance, to 12 digits. */
export function betaQuantile(chance: number, a: number, b: number): number {
  let low = 0;
  let high = 1;
  while (high - low > 1e-13 * high) {
    const middle = (low + high) / 2;
    if (betaAtMost(middle, a, b) < chance) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
