// The id of a new supplier or offer, from its name: "led-red-20".
//
// Orders name an offer by its id, so it should tell what it is.
// Does not know: where the id is used.

/** @param fallback for a name without Latin letters and figures. @returns an id that none of `taken` is. */
export function newId(name: string, taken: readonly string[], fallback: string): string {
  const words = name
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .split(/[^a-z0-9]+/)
    .filter((word) => word !== "");
  const base = words.join("-").slice(0, 40).replace(/-$/, "") || fallback;
  for (let n = 1; ; n += 1) {
    const id = n === 1 ? base : `${base}-${n}`;
    if (!taken.includes(id)) return id;
  }
}
