// The id of a new thing in the class file, from its name: "led-red-20" for an offer, "7c" for "Class 7c".
//
// Commands, orders and papers name things by their ids, so an id should tell what it is.
// Does not know: where the id is used.

/** @param fallback for a name without Latin letters and figures. @returns an id that none of `taken` is. */
export function newId(name: string, taken: readonly string[], fallback: string): string {
  return free(wordsOf(name).join("-").slice(0, 40).replace(/-$/, "") || fallback, taken);
}

/** As `newId`, by the one word that a school calls a class by: that with a figure, else the last. */
export function newClassId(name: string, taken: readonly string[]): string {
  const words = wordsOf(name);
  const short = words.find((word) => /\d/.test(word)) ?? words.at(-1) ?? "class";
  return free(short.slice(0, 20), taken);
}

/** The words in small Latin letters and figures, without accents. */
function wordsOf(name: string): readonly string[] {
  return name
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .split(/[^a-z0-9]+/)
    .filter((word) => word !== "");
}

function free(base: string, taken: readonly string[]): string {
  for (let n = 1; ; n += 1) {
    const id = n === 1 ? base : `${base}-${n}`;
    if (!taken.includes(id)) return id;
  }
}
