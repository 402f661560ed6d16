// The least whole number for which a test holds, by halving.
//
// Does not know: what is tested.

/** @param test false below some number and true from it on; it is true at `high`. @returns that number, from `low` to `high`. */
export function leastThat(low: number, high: number, test: (n: number) => boolean): number {
  let [no, yes] = [low - 1, high];
  while (yes - no > 1) {
    const middle = Math.floor((no + yes) / 2);
    if (test(middle)) yes = middle;
    else no = middle;
  }
  return yes;
}
