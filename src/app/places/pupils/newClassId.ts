// The id of a new class, from its name: "7c" for "Class 7c", something free in any case.
//
// Commands and papers speak of a class by its id, so it should look like its name.
// Does not know: which lessons the class has.

/** @returns an id of letters, figures and hyphens that none of `taken` is. */
export function newClassId(name: string, taken: readonly string[]): string {
  const words = name
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .split(/[^a-z0-9]+/)
    .filter((word) => word !== "");
  // The word with a figure is what a school calls a class by.
  const short = words.find((word) => /\d/.test(word)) ?? words.at(-1) ?? "class";
  const base = short.slice(0, 20);
  for (let n = 1; ; n += 1) {
    const id = n === 1 ? base : `${base}-${n}`;
    if (!taken.includes(id)) return id;
  }
}
