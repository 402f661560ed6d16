// The word that was probably meant: the nearest of those that are allowed here.
//
// Used for every slip of the pen in a file or a command. Case does not count, and neighbours that changed places are one slip
// (optimal string alignment, the restricted Damerau–Levenshtein distance). A word that shares too little is no help, so that
// nothing is offered rather than something wild.
// Does not know: what the words mean.

/** Longer words are not compared: no name of ours is, and the work grows with the product of the lengths. */
const longest = 60;

/**
 * @returns the nearest of `words`, or null if none is within one slip for every three letters (at least one). Of several equally
 * near it is the first that begins with the same letter (people rarely miss the first: R2 is meant by R3, not B3), else the first.
 */
export function near(word: string, words: Iterable<string>): string | null {
  if (word === "" || word.length > longest) return null;
  const lower = word.toLowerCase();
  const most = Math.max(1, Math.floor(word.length / 3));
  let best: string | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const candidate of words) {
    if (candidate === "" || candidate.length > longest || Math.abs(candidate.length - word.length) > most) continue;
    const other = candidate.toLowerCase();
    const slips = slipsBetween(lower, other);
    // A word of one or two letters shares nothing with one of the same length that differs in all of them.
    if (slips > most || slips >= Math.max(word.length, candidate.length)) continue;
    const distance = slips + (other[0] === lower[0] ? 0 : 0.5);
    if (distance < least) {
      best = candidate;
      least = distance;
    }
  }
  return best;
}

/** Letters put in, left out, changed or swapped with their neighbour to turn one word into the other. */
function slipsBetween(a: string, b: string): number {
  let twoBack: number[] = [];
  let oneBack = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      let slips = Math.min(oneBack[j]! + 1, row[j - 1]! + 1, oneBack[j - 1]! + same);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) slips = Math.min(slips, twoBack[j - 2]! + 1);
      row.push(slips);
    }
    twoBack = oneBack;
    oneBack = row;
  }
  return oneBack[b.length]!;
}
