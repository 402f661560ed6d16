// The text of a list that stands in a box, without its doubtful rows.
//
// Does not know: columns, what the cells mean.

/** @returns the text without these lines, counted from 1 as the reader of tables counts them. */
export function withoutLines(text: string, lines: readonly number[]): string {
  const out = new Set(lines);
  return text
    .split(/(?<=\r\n|\n|\r(?!\n))/)
    .filter((_, i) => !out.has(i + 1))
    .join("");
}
