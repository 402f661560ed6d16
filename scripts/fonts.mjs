// Makes the font of the papers anew: a subset of Noto Sans as WOFF2, and the widths of its signs.
//
// Run by hand, and only when a sign is missing: npm i --no-save subset-font@2.9.0, then
//   node scripts/fonts.mjs NotoSans-Regular.ttf NotoSans-Bold.ttf
// The two files come from Debian's fonts-noto-core or from the makers of Noto (SIL Open Font Licence 1.1, see
// src/documents/fonts/OFL.txt). The widths are kept beside the font so that papers can count lines without a browser.
import { Buffer } from "node:buffer";
import { readFileSync, writeFileSync } from "node:fs";
import subsetFont from "subset-font";

const range = (from, to) => Array.from({ length: to - from + 1 }, (_, i) => String.fromCodePoint(from + i)).join("");
/** Latin as Europe, Turkey, Vietnam's neighbours and Africa's written standards use it, and the signs of the trade. */
const signs = [
  range(0x20, 0x7e),
  range(0xa0, 0xff),
  range(0x100, 0x17f),
  "ƁɓƊɗƘƙƴƝɲŊŋƐɛƆɔƎǝȘșȚțẸẹỊịỌọỤụṢṣẽỹḥẖ",
  "ΔΠΣΦΩαβγδεθλμπρστφωϑ\u2126\u00b5",
  "\u2009\u202f\u2010\u2011–—‘’‚“”„†•…‰′″‹›€₦₵₹₺₽₨₫₱№",
  "−×÷±≤≥≠≈∞√∆∑",
  "₀₁₂₃₄₅₆₇₈₉",
].join("");

const files = process.argv.slice(2);
if (files.length !== 2) throw new Error("usage: node scripts/fonts.mjs REGULAR.ttf BOLD.ttf");
const fonts = [];
for (const file of files) {
  const whole = readFileSync(file);
  const woff2 = await subsetFont(whole, signs, { targetFormat: "woff2" });
  const plain = await subsetFont(whole, signs, { targetFormat: "truetype" });
  fonts.push({ woff2, widths: advances(plain) });
}

/** Advance widths in thousandths of an em, read from the tables head, hhea, hmtx and cmap (format 4) of a TrueType file. */
function advances(font) {
  const table = {};
  for (let i = 0; i < font.readUInt16BE(4); i += 1) {
    const at = 12 + 16 * i;
    table[font.toString("latin1", at, at + 4)] = font.readUInt32BE(at + 8);
  }
  const em = font.readUInt16BE(table.head + 18);
  const metrics = font.readUInt16BE(table.hhea + 34);
  const advance = (glyph) => Math.round((1000 * font.readUInt16BE(table.hmtx + 4 * Math.min(glyph, metrics - 1))) / em);
  let map = null;
  for (let i = 0; i < font.readUInt16BE(table.cmap + 2); i += 1) {
    const at = table.cmap + font.readUInt32BE(table.cmap + 8 + 8 * i);
    if (font.readUInt16BE(at) === 4) map = at;
  }
  const segments = font.readUInt16BE(map + 6) / 2;
  const out = new Map();
  for (let s = 0; s < segments; s += 1) {
    const end = font.readUInt16BE(map + 14 + 2 * s);
    const startAt = map + 16 + 2 * segments + 2 * s;
    const start = font.readUInt16BE(startAt);
    const delta = font.readUInt16BE(startAt + 2 * segments);
    const offsetAt = startAt + 4 * segments;
    const offset = font.readUInt16BE(offsetAt);
    for (let code = start; code <= end && code !== 0xffff; code += 1) {
      const found = offset === 0 ? code : font.readUInt16BE(offsetAt + offset + 2 * (code - start));
      const glyph = found === 0 ? 0 : (found + delta) & 0xffff;
      if (glyph !== 0) out.set(String.fromCharCode(code), advance(glyph));
    }
  }
  return out;
}

/** Signs of equal width stand together: width, then the signs. */
function grouped(widths) {
  const by = new Map();
  for (const [sign, width] of [...widths].sort()) by.set(width, (by.get(width) ?? "") + sign);
  return [...by].sort(([a], [b]) => a - b);
}

const lines = [
  "// Made by scripts/fonts.mjs from Noto Sans (SIL Open Font Licence 1.1, OFL.txt beside this file). Do not edit.",
  "//",
  "// The font of the papers as base64 WOFF2, and the widths of its signs in thousandths of an em, grouped by width.",
  "// Does not know: who uses it.",
];
for (const [i, name] of ["regular", "bold"].entries()) {
  lines.push(`export const ${name}Woff2 =\n  "${Buffer.from(fonts[i].woff2).toString("base64")}";`);
  lines.push(
    `export const ${name}Widths: readonly (readonly [width: number, signs: string])[] = [\n${grouped(fonts[i].widths)
      .map(([w, s]) => `  [${w}, ${JSON.stringify(s)}],`)
      .join("\n")}\n];`,
  );
  console.log(name, fonts[i].woff2.length, "bytes,", fonts[i].widths.size, "signs");
}
writeFileSync("src/documents/fonts/notoSans.ts", `${lines.join("\n")}\n`);
