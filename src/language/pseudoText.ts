// Two ways to show a text that reveal what is wrong around it.
//
// As its key and values: text that is not in double brackets was forgotten in the code. Stretched, with its vowels said long:
// a layout that breaks is too tight for the languages that need more room than English (a third to a half more; short words up
// to twice as much: common practice, no source).
// Does not know: which texts there are.

/** @returns "[[verdict.ready(value)]]". */
export function keyShown(key: string, values: readonly (string | number)[]): string {
  return `[[${key}${values.length > 0 ? `(${values.join("; ")})` : ""}]]`;
}

/** Up to this many signs a word is a short one. */
const shortText = 12;

/** @returns the text about 1.4 times as long, a short one about twice. */
export function stretched(text: string): string {
  return text.replace(/[aeiou]/gi, (vowel) => vowel + vowel.toLowerCase().repeat(text.length <= shortText ? 2 : 1));
}
