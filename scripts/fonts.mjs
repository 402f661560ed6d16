// Makes the font of the papers anew: a subset of Noto Sans as WOFF2, and the widths of its signs.
//
// Run by hand, and only when a sign is missing: npm i --no-save subset-font@2.9.0, then node scripts/fonts.mjs. The font comes
// in pieces from @fontsource/noto-sans (SIL Open Font Licence 1.1, src/documents/fonts/OFL.txt): one for each range of signs.
// Each piece is cut to the signs that we keep; the widths stand beside it so that papers can count lines without a browser.
import { Buffer } from "node:buffer";
import { readFileSync, writeFileSync } from "node:fs";
import { convert } from "fontverter";
import subsetFont from "subset-font";

const range = (from, to) => Array.from({ length: to - from + 1 }, (_, i) => String.fromCodePoint(from + i)).join("");
/** Latin as Europe, Turkey, Vietnam and the standard languages of Africa write it, and the signs of the trade. */
const signs = [
  range(0x20, 0x7e),
  range(0xa0, 0xff),
  range(0x100, 0x17f),
  "ƁɓƊɗƘƙƴƝɲŊŋƐɛƆɔƎǝȘșȚțṢṣḥẖẸẹỊịỌọỤụƠơƯư",
  range(0x1ea0, 0x1ef9),
  "\u0300\u0301\u0303\u0309\u0323",
  "ΔΠΣΦΩαβγδεθλμπρστφω",
  "\u2009\u202f\u2010\u2011–—‘’‚“”„†•…‰′″‹›€₦₵₹₺₽₨₫₱№−",
].join("");
const pieces = ["latin", "latin-ext", "vietnamese", "greek"];

const faces = { regular: 400, bold: 700 };
const out = [
  "// Made by scripts/fonts.mjs from Noto Sans (SIL Open Font Licence 1.1, OFL.txt beside this file). Do not edit.",
  "//",
  "// The font of the papers in pieces: which signs a piece holds, the piece as base64 WOFF2, and the widths of its signs in",
  "// thousandths of an em, grouped by width.",
  "// Does not know: who uses it.",
  "",
  "export interface FontPiece {",
  "  /** CSS unicode-range. */",
  "  readonly range: string;",
  "  readonly woff2: string;",
  "  readonly widths: readonly (readonly [width: number, signs: string])[];",
  "}",
];
for (const [name, weight] of Object.entries(faces)) {
  const taken = new Set();
  const made = [];
  let bytes = 0;
  for (const piece of pieces) {
    const file = `node_modules/@fontsource/noto-sans/files/noto-sans-${piece}-${weight}-normal.woff2`;
    const whole = readFileSync(new URL(`../${file}`, import.meta.url));
    const held = [...advances(await convert(whole, "truetype")).keys()].filter((s) => signs.includes(s) && !taken.has(s));
    for (const sign of held) taken.add(sign);
    const text = held.join("");
    const woff2 = await subsetFont(whole, text, { targetFormat: "woff2" });
    const widths = advances(await subsetFont(whole, text, { targetFormat: "truetype" }));
    for (const sign of [...widths.keys()]) if (!held.includes(sign)) widths.delete(sign);
    bytes += woff2.length;
    made.push(
      `  {\n    range: "${unicodeRange(held)}",\n    woff2:\n      "${Buffer.from(woff2).toString("base64")}",\n    widths: [\n${grouped(
        widths,
      )
        .map(([w, s]) => `      [${w}, ${JSON.stringify(s)}],`)
        .join("\n")}\n    ],\n  },`,
    );
  }
  out.push("", `export const ${name}: readonly FontPiece[] = [`, ...made, "];");
  const left = [...signs].filter((s) => !taken.has(s));
  console.log(name, bytes, "bytes,", taken.size, "signs; not in the font:", left.join(" ") || "none");
}
writeFileSync(new URL("../src/documents/fonts/notoSans.ts", import.meta.url), `${out.join("\n")}\n`);

/** "U+20-7E,U+A0": the signs as ranges. */
function unicodeRange(held) {
  const codes = held.map((s) => s.codePointAt(0)).sort((a, b) => a - b);
  const runs = [];
  for (const code of codes) {
    const last = runs.at(-1);
    if (last && last[1] === code - 1) last[1] = code;
    else runs.push([code, code]);
  }
  const hex = (n) => n.toString(16).toUpperCase();
  return runs.map(([a, b]) => (a === b ? `U+${hex(a)}` : `U+${hex(a)}-${hex(b)}`)).join(",");
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
  const found = new Map();
  for (let s = 0; s < segments; s += 1) {
    const end = font.readUInt16BE(map + 14 + 2 * s);
    const startAt = map + 16 + 2 * segments + 2 * s;
    const start = font.readUInt16BE(startAt);
    const delta = font.readUInt16BE(startAt + 2 * segments);
    const offsetAt = startAt + 4 * segments;
    const offset = font.readUInt16BE(offsetAt);
    for (let code = start; code <= end && code !== 0xffff; code += 1) {
      const at = offset === 0 ? code : font.readUInt16BE(offsetAt + offset + 2 * (code - start));
      const glyph = offset !== 0 && at === 0 ? 0 : (at + delta) & 0xffff;
      if (glyph !== 0) found.set(String.fromCharCode(code), advance(glyph));
    }
  }
  return found;
}

/** Signs of equal width stand together: width, then the signs. */
function grouped(widths) {
  const by = new Map();
  for (const [sign, width] of [...widths].sort()) by.set(width, (by.get(width) ?? "") + sign);
  return [...by].sort(([a], [b]) => a - b);
}
