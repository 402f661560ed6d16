// Signs that copied text brings along, and what the keyboard has in their place.
//
// Text programs and web pages change quotes, dashes and blanks to finer ones; keyboards for Chinese and Japanese have marks of
// full width. Unicode, blocks General Punctuation and Halfwidth and Fullwidth Forms.
// Does not know: where they stand.
import type { ExplainCode } from "./explained.ts";

export interface PlainSign {
  readonly code: ExplainCode;
  readonly text: string;
}

const table: readonly (readonly [code: ExplainCode, signs: string, plain: string])[] = [
  ["typographicQuotes", "“”„‟«»〝〞", '"'],
  ["typographicQuotes", "‘’‚‛´`", "'"],
  ["longDash", "‐‑‒–—―−", "-"],
  ["strangeSpace", "\u00a0\u2002\u2003\u2009\u200a\u200b\u202f\u2060\u3000\ufeff", " "],
];

export const plainSigns: ReadonlyMap<string, PlainSign> = new Map([
  ...table.flatMap(([code, signs, text]) => [...signs].map((sign) => [sign, { code, text }] as const)),
  // ！ to ～ stand in the same order as ! to ~.
  ...Array.from(
    { length: 94 },
    (_, i) => [String.fromCharCode(0xff01 + i), { code: "fullWidthMark" as const, text: String.fromCharCode(33 + i) }] as const,
  ),
]);
