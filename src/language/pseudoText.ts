// The pseudo-language: a text shown as its key and values, and longer than the real one.
//
// Text that is not in double brackets was forgotten in the code; a layout that breaks is too tight for the languages that
// need more room than English (a third to a half more; short words up to twice as much: common practice, no source).
// Does not know: which texts there are.

/** @returns "[[verdict.ready(value)]]", filled up with "~ ~" to 1.4 times the length of the text (short ones: twice). */
export function pseudoText(key: string, values: readonly (string | number)[], text: string): string {
  const plain = `${key}${values.length > 0 ? `(${values.join("; ")})` : ""}`;
  const wanted = Math.ceil(text.length * (text.length < 12 ? 2 : 1.4)) - plain.length - 4;
  return `[[${plain}${wanted > 0 ? ` ${"~ ".repeat(Math.ceil(wanted / 2)).trim()}` : ""}]]`;
}
