// The papers as a printer sees them: every sheet on A4 and Letter, nothing clipped, little ink, nothing too small, codes that read.
//
// All variants go through the browser together, because starting it is what costs time: the usual class, one with names of 40
// signs, 31 pupils and trays of thirty things, texts stretched as other languages stretch them, and a page set from right to left.
// The pictures beside this file are of the usual class; when one differs, the new one is written beside it as NAME-changed.png:
// look at both, and if the new one is right, let it take the old one's place (README.md).
import { execFileSync, spawnSync } from "node:child_process";
import { existsSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import pixelmatch from "pixelmatch";
import { PNG } from "pngjs";
import { beforeAll, describe, expect, test } from "vitest";
import { makePapers, type PaperSize } from "../../src/documents/index.ts";
import { textWidth } from "../../src/documents/measure.ts";
import { styleSheet } from "../../src/documents/styleSheet.ts";
import { languageFor } from "../../src/language/index.ts";
import { sample } from "../sample.ts";
import { ask, chromium, greyPages, hasPoppler, inFolder, pageCount, printPdf, screenshot } from "./chromium.ts";
import { everyPaper, inventedGroup, inventedLesson, longNames } from "./invented.ts";

const required = process.env.REQUIRE_TOOLS !== undefined;
const missing = chromium === null ? "no Chromium" : hasPoppler ? null : "no poppler";
const ready = missing === null;
/** Skips by name where a tool is missing, and fails where tools are required. */
const withTools = (name: string, run: () => void) =>
  ready || required ? test(name, run) : test.skip(`${name} (not looked at: ${missing})`, run);

const usual = everyPaper(inventedGroup());
const long = everyPaper(inventedGroup(31, longNames), inventedLesson("quay-lamp-at-dusk"), undefined, 30);
const variants = [
  { name: "usual", orders: usual, tag: "en" },
  { name: "long", orders: long, tag: "en" },
  { name: "stretched", orders: usual, tag: "xl" },
  { name: "right to left", orders: usual, tag: "xr" },
];

/** All variants as one page: the sheets of each in an element with its own direction. */
function wholePage(paperSize: PaperSize): { html: string; sheets: number[] } {
  const made = variants.map(({ orders, tag }) =>
    makePapers(orders, { language: languageFor(tag), paperSize, source: "harbour.json" }),
  );
  const body = (html: string) => html.slice(html.indexOf("<body>") + 6, html.indexOf("</body>"));
  const first = made[0]!.html;
  const parts = made.map(({ html }) => `<div class="variant" dir="${/dir="(\w+)"/.exec(html)![1]}">${body(html)}</div>`);
  // A sheet that opens a variant starts a new side too.
  const style = "<style>@media print{.variant+.variant{break-before:page}}</style>";
  return {
    html: `${first.slice(0, first.indexOf("<body>"))}${style}<body>${parts.join("\n")}</body></html>`,
    sheets: made.map((m) => m.sheets),
  };
}

/** What a browser answers about each sheet: what sticks out, the room left above the title block, the least type. */
interface Sheet {
  readonly out: string[];
  readonly free: number;
  readonly leastType: number;
  readonly least: string;
  readonly text: string;
  /** Where codes stand, mm from the sheet's corner. */
  readonly codes: readonly { readonly x: number; readonly y: number }[];
}

const look = `
const mm = 25.4 / 96;
return [...document.querySelectorAll(".sheet")].map((sheet) => {
  const s = sheet.getBoundingClientRect();
  const foot = sheet.querySelector(".foot").getBoundingClientRect();
  const out = [];
  let leastType = 99, least = "", last = s.top;
  for (const e of sheet.querySelectorAll("*")) {
    const inSvg = e.closest("svg");
    if (inSvg && e.tagName !== "svg" && e.tagName !== "text") continue;
    const r = e.getBoundingClientRect();
    if (r.width === 0 && r.height === 0) continue;
    const what = e.tagName.toLowerCase() + "." + (e.getAttribute("class") || "") + " " + e.textContent.trim().slice(0, 40);
    if (r.left < s.left - 1 || r.right > s.right + 1 || r.top < s.top - 1 || r.bottom > s.bottom + 1) out.push("over the edge: " + what);
    if (!e.closest(".foot") && !inSvg && e.children.length === 0) last = Math.max(last, r.bottom);
    // Text that is wider than the cell it stands in.
    if (!inSvg && /^(td|th|p|div|small)$/i.test(e.tagName) && e.scrollWidth > e.clientWidth + 1 && getComputedStyle(e).display !== "inline") out.push("wider than its place: " + what);
    const own = [...e.childNodes].some((n) => n.nodeType === 3 && n.textContent.trim() !== "");
    if (own) {
      const scale = inSvg ? e.getScreenCTM().a : 1;
      const size = parseFloat(getComputedStyle(e).fontSize) * scale * mm;
      if (size < leastType) { leastType = size; least = what; }
    }
  }
  if (Math.abs(foot.bottom - s.bottom) > 1) out.push("the title block is not at the foot");
  const codes = [...sheet.querySelectorAll(".qr")].map((e) => e.getBoundingClientRect()).map((r) => ({ x: (r.left - s.left) * mm, y: (r.top - s.top) * mm }));
  return { codes, out, free: (foot.top - last) * mm, leastType, least, text: sheet.innerText };
});`;

/** Texts of many signs, to compare the counted width with the browser's. */
const lines = [
  "The lamp is red while the arm is down or moves. It is green only when the arm is up.",
  "orange orange brown, gold · in place of resistor, 220 Ω",
  "Sébastien N'Diaye, Đorđe Petrović, Nguyễn Thị Hạnh, Zoltán Bíró, Ọlá Adébáyọ̀",
  "0123456789 10:30 €3.40 95 % −5 °C 4.7 kΩ 2.2 µF",
  "AVAST! To Tyrone; Wave, LTD. “Quoted” – it’s 1/2…",
].flatMap((text) => (["regular", "bold"] as const).flatMap((weight) => [2.8, 4.2, 10].map((size) => ({ text, size, weight }))));
const escaped = (text: string) => text.replace(/&/g, "&amp;").replace(/</g, "&lt;");
const measured = `<!doctype html><html><head><meta charset="utf-8"><style>${styleSheet("A4")}</style></head><body>${lines
  .map(
    ({ text, size, weight }) =>
      `<p><span style="white-space:nowrap;font-size:${size}mm;font-weight:${weight === "bold" ? 700 : 400}">${escaped(text)}</span></p>`,
  )
  .join("")}</body></html>`;
const measure = 'return [...document.querySelectorAll("span")].map((e) => (e.getBoundingClientRect().width * 25.4) / 96);';

let widths: number[] = [];
let sheets: Sheet[] = [];
let pdfPages: Record<PaperSize, number> = { A4: 0, Letter: 0 };
let grey: { width: number; height: number; dots: Buffer }[] = [];
let counts: number[] = [];
let codes: string[] = [];
let pdfFonts = "";
let picture: PNG | null = null;
const hasZbar = spawnSync("zbarimg", ["--version"], { stdio: "ignore" }).status === 0;

const total = () => counts.reduce((a, b) => a + b, 0);

beforeAll(() => {
  if (!ready) return;
  inFolder((folder) => {
    const a4 = wholePage("A4");
    counts = a4.sheets;
    sheets = ask<Sheet[]>(folder, a4.html, look);
    const pdf = printPdf(folder, a4.html, "a4");
    pdfPages = { A4: pageCount(pdf), Letter: pageCount(printPdf(folder, wholePage("Letter").html, "letter")) };
    pdfFonts = execFileSync("pdffonts", [pdf], { encoding: "utf8" });
    grey = greyPages(folder, pdf, 150, 1, sample(counts[0]!, total()));
    widths = ask<number[]>(folder, measured, measure);
    if (hasZbar) codes = readCodes(folder, pdf);
    const page = makePapers(usual, { language: languageFor("en"), paperSize: "A4", source: "harbour.json" });
    picture = PNG.sync.read(screenshot(folder, page.html, 760, 40 + page.sheets * 1017));
  });
}, 300_000);

describe("in print", () => {
  withTools("every sheet is one side, on A4 and on Letter", () => {
    expect(pdfPages).toEqual({ A4: total(), Letter: total() });
    expect(sheets.length).toBe(total());
  });
  withTools("nothing is clipped, over the edge or wider than its place", () => {
    expect(sheets.flatMap((s, i) => s.out.map((o) => `sheet ${i + 1}: ${o}`))).toEqual([]);
  });
  withTools("the title block stands on its own, at least 1 mm below the rest", () => {
    expect(sheets.map((s, i) => [i + 1, Math.round(s.free * 10) / 10] as const).filter(([, free]) => free < 1)).toEqual([]);
  });
  withTools("no type under 2.6 mm", () => {
    expect(sheets.filter((s) => s.leastType < 2.59).map((s) => `${s.leastType.toFixed(2)} ${s.least}`)).toEqual([]);
  });
  withTools("widths that are counted are those of the browser, at most 2 % more (kerning) and 0.5 % less", () => {
    const wrong = lines.flatMap(({ text, size, weight }, i) => {
      const ratio = textWidth(text, size, weight) / widths[i]!;
      return ratio > 1.02 || ratio < 0.995 ? [`${text}: ${ratio.toFixed(3)}`] : [];
    });
    expect(wrong).toEqual([]);
  });
  withTools("ink: at most 6 % of a side is black, 7 % of the fullest sides that we can think of", () => {
    const dark = grey.map(({ dots }) => dots.reduce((sum, dot) => sum + (255 - dot), 0) / (255 * dots.length));
    expect(Math.max(...dark.slice(0, counts[0]))).toBeLessThanOrEqual(0.06);
    expect(Math.max(...dark)).toBeLessThanOrEqual(0.07);
    expect(Math.min(...dark)).toBeGreaterThan(0.002);
  });
  withTools("the papers' own font is in the PDF, and no other for Latin text", () => {
    const fonts = pdfFonts
      .split("\n")
      .slice(2)
      .filter((l) => l !== "");
    expect(fonts.length).toBeGreaterThan(0);
    expect(fonts.filter((l) => !/NotoSans-?(Regular|Bold)? |NotoSans/.test(l))).toEqual([]);
    expect(fonts.filter((l) => !/ yes yes/.test(l))).toEqual([]);
  });
  (hasZbar
    ? withTools
    : (name: string, run: () => void) => (required ? test(name, run) : test.skip(`${name} (not read: no zbarimg)`, run)))(
    "every code on trays and labels reads back as the text beside it",
    () => {
      const wanted = usual.flatMap((o) =>
        o.kind === "tray"
          ? o.input.planned.trays.map((t) => `${o.input.planned.id}/${t.team}`)
          : o.kind === "label"
            ? o.input.classFile.stock.map((l) => l.item)
            : [],
      );
      // Two trays and fourteen labels.
      expect(codes.length).toBe(16);
      expect(codes.filter((c) => !wanted.includes(c))).toEqual([]);
      expect(new Set(codes).size).toBe(16);
    },
  );
  withTools("run sheet on one side, rota on two, for the usual class", () => {
    const usualSheets = sheets.slice(0, counts[0]);
    expect(usualSheets.filter((s) => /run sheet/.test(s.text)).length).toBe(1);
    expect(usualSheets.filter((s) => /\brota\b/.test(s.text)).length).toBe(2);
  });
});

/** Reads the codes of the first three sheets (two trays, a sheet of labels), each cut out as a phone would see it. */
function readCodes(folder: string, pdf: string): string[] {
  const dpi = 200;
  const dots = (mm: number) => Math.round((mm / 25.4) * dpi);
  // A4 with the margins of the style sheet: the sheet stands 10 mm from the side and 18.5 mm from the top.
  const files = greyPages(folder, pdf, dpi, 1, 3).flatMap(({ width, dots: page }, i) =>
    sheets[i]!.codes.map(({ x, y }, n) => {
      const [left, top, side] = [dots(x + 10), dots(y + 18.5), dots(22)];
      const rows = Array.from({ length: side }, (_, r) =>
        page.subarray((top + r) * width + left, (top + r) * width + left + side),
      );
      const file = join(folder, `code-${i}-${String(n).padStart(2, "0")}.pgm`);
      writeFileSync(file, Buffer.concat([Buffer.from(`P5\n${side} ${side}\n255\n`), ...rows]));
      return file;
    }),
  );
  return spawnSync("zbarimg", ["-q", "--raw", ...files], { encoding: "utf8" })
    .stdout.trim()
    .split("\n");
}

/** The sheets of the usual class of which a picture is kept, by their place. */
const kept: [name: string, sheet: number][] = [
  ["tray", 0],
  ["label", 2],
  ["order", 4],
  ["order-supplier", 5],
  ["run-sheet", 7],
  ["rota-where", 8],
  ["rota-whom", 9],
];
/** Share of dots that may differ: hinting and smoothing of another version of the browser. */
const mayDiffer = 0.0005;

describe("pictures", () => {
  for (const [name, sheet] of kept)
    withTools(`${name} looks as it did`, () => {
      const now = cut(picture!, sheet);
      const file = join(import.meta.dirname, `${name}.png`);
      const changed = join(import.meta.dirname, `${name}-changed.png`);
      rmSync(changed, { force: true });
      if (!existsSync(file)) {
        writeFileSync(changed, packed(now));
        throw new Error(`${name}.png is not there: look at ${name}-changed.png and keep it under that name`);
      }
      const before = PNG.sync.read(readFileSync(file));
      const share = differing(before, now);
      if (share > mayDiffer) writeFileSync(changed, packed(now));
      expect(share, `${name}-changed.png was written beside it: look at both`).toBeLessThanOrEqual(mayDiffer);
    });
});

withTools("a planted change is seen: another team's tray is another picture", () => {
  expect(differing(cut(picture!, 0), cut(picture!, 1))).toBeGreaterThan(mayDiffer);
});

/** Share of dots that differ between two pictures; 1 where their sizes do. */
function differing(before: PNG, now: PNG): number {
  if (before.width !== now.width || before.height !== now.height) return 1;
  return pixelmatch(before.data, now.data, undefined, now.width, now.height, { threshold: 0.2 }) / (now.width * now.height);
}

/** The picture of one sheet: 190 by 259 mm at 96 dots an inch, margins of 10 mm between them. */
function cut(whole: PNG, sheet: number): PNG {
  const [width, height, gap] = [719, 979, 37.8];
  const left = Math.round((whole.width - 718.1) / 2);
  // Margins of neighbours collapse into one.
  const top = Math.round(gap + sheet * (978.9 + gap));
  const out = new PNG({ width, height });
  PNG.bitblt(whole, out, left, top, width, height, 0, 0);
  return out;
}

function packed(png: PNG): Buffer {
  return PNG.sync.write(png, { colorType: 0, inputColorType: 6, deflateLevel: 9 });
}
