// A text with a mark where a problem must point: the mark is taken out, and its line and column are what is expected.
//
// So the expected place of a broken file is seen in the file itself and never counted by hand or by our readers.
export const mark = "¦";

/** @returns the text without its mark, and where the mark stood, both counted from 1; the whole text if there is no mark. */
export function unmarked(text: string): { text: string; line: number; column: number } {
  const at = text.indexOf(mark);
  const before = at === -1 ? "" : text.slice(0, at);
  const lines = before.split("\n");
  return { text: text.replace(mark, ""), line: lines.length, column: (lines.at(-1)?.length ?? 0) + 1 };
}

/** Puts `to` in place of the only `from`; a test whose base text has changed must not pass by accident. */
export function changed(base: string, from: string, to: string): string {
  if (base.split(from).length !== 2) throw new Error(`"${from}" must stand in the text exactly once`);
  return base.replace(from, () => to);
}
