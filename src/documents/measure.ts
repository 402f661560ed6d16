// How wide a text is and how many lines it takes, counted from the widths of the embedded font.
//
// A sheet's number stands on it ("1 of 2"), so what goes on which sheet is decided before a browser sees it, and the same on
// every machine. Kerning and hyphens are left out; a sign that the font lacks counts as a wide one. What is counted here is
// checked against a real browser in test/pictures.
// Does not know: papers, markup.
import { bold, type FontPiece, regular } from "./fonts/notoSans.ts";

export type Weight = "regular" | "bold";

const widths: Readonly<Record<Weight, ReadonlyMap<string, number>>> = {
  regular: bySign(regular),
  bold: bySign(bold),
};
/** Thousandths of an em for signs of other scripts: a wide Latin letter, a full square for what East Asia writes. */
const otherWidth = 700;
const squareWidth = 1000;

/** @returns the width of a line of text in the unit of `size`. */
export function textWidth(text: string, size: number, weight: Weight = "regular"): number {
  let sum = 0;
  for (const sign of text) sum += widths[weight].get(sign) ?? (sign >= "\u2e80" ? squareWidth : otherWidth);
  return (sum * size) / 1000;
}

/** @returns on how many lines the text stands when it is broken at blanks and behind hyphens, and inside words wider than a line. */
export function lineCount(text: string, width: number, size: number, weight: Weight = "regular"): number {
  const blank = textWidth(" ", size, weight);
  let lines = 1;
  let used = 0;
  for (const word of text.split(/[ \n\t]+/)) {
    for (const [i, piece] of word.split(/(?<=[-\u2010\u2013/])(?=\p{L})/u).entries()) {
      const wide = textWidth(piece, size, weight);
      const before = used === 0 || i > 0 ? 0 : blank;
      if (used + before + wide <= width) {
        used += before + wide;
        continue;
      }
      if (used > 0) lines += 1;
      used = wide;
      while (used > width) {
        lines += 1;
        used -= width;
      }
    }
  }
  return lines;
}

function bySign(pieces: readonly FontPiece[]): ReadonlyMap<string, number> {
  return new Map(pieces.flatMap((p) => p.widths.flatMap(([width, signs]) => [...signs].map((sign) => [sign, width] as const))));
}
