// Labels for boxes and compartments: fourteen to a sheet, to cut out and stick on.
//
// Each has the place in large letters, what lies there with its outline and, for resistors, the bands in words, and a QR code
// with its text beside it, so that a code nobody can read is no loss. Labels come in the order of the places; what has no
// place yet gets a line to write it on. No class and no names: a label outlives a school year.
// Does not know: how many there are today.
import { bandWords, itemName, type Language, say } from "../language/index.ts";
import type { ClassFile } from "../school/file/index.ts";
import { type Html, html, user } from "./html.ts";
import type { PaperContent } from "./makePage.ts";
import { lineCount } from "./measure.ts";
import { outline } from "./outlines.ts";
import { qrCode } from "./qrCode.ts";

export interface LabelInput {
  readonly classFile: ClassFile;
  /** Only these items; all of stock and supplies where it is left out. */
  readonly items?: readonly string[];
}

export interface Label {
  readonly item: string;
  readonly name: string;
  readonly note: string;
  readonly box: string;
}

/** Labels on a sheet: two columns of seven, with room for a knife. */
const perSheet = 14;

export function labelPaper(input: LabelInput, language: Language): PaperContent {
  const all = labels(input, language);
  const pages = Math.max(1, Math.ceil(all.length / perSheet));
  return {
    title: say(language, "label.heading"),
    name: say(language, "label.name"),
    lesson: null,
    classAndDate: null,
    classFile: input.classFile,
    sheets: Array.from({ length: pages }, (_, i) => ({
      for: html`${say(language, "label.forCupboard")}`,
      body: html`<h1 class="hint">${say(language, "label.heading")}<small>${say(language, "label.cut")}</small></h1><div class="labels">${all.slice(i * perSheet, (i + 1) * perSheet).map((l) => oneLabel(l))}</div>`,
    })),
  };
}

/** Every item once for each place it lies in, by place, then by name. */
export function labels({ classFile, items }: LabelInput, language: Language): Label[] {
  const lines = [...classFile.stock, ...classFile.supplies].filter((line) => items === undefined || items.includes(line.item));
  const seen = new Map(lines.map((line) => [`${line.item}\n${line.box}`, line]));
  return [...seen.values()]
    .map(({ item, box }) => ({ item, box, name: itemName(language, item, 2), note: bandWords(language, item) }))
    .sort((a, b) => Number(a.box === "") - Number(b.box === "") || order(a.box, b.box) || order(a.name, b.name));
}

const order = (a: string, b: string) => a.localeCompare(b, "en", { numeric: true });

/** Width of the text on a label, mm, and the type sizes of the place, largest first. */
const textWidth = 47;
const placeSizes = [6, 5, 4.2, 3.4, 2.8];

function oneLabel(label: Label): Html {
  const size = placeSizes.find((mm) => lineCount(label.box, textWidth, mm, "bold") <= (mm > 4 ? 1 : 3)) ?? 2.8;
  const nameSize = lineCount(label.name, textWidth, 4.2) <= 2 ? 4.2 : 2.8;
  const place = label.box === "" ? html`<i class="line"></i>` : html`<b style="font-size:${size}mm">${user(label.box)}</b>`;
  return html`
<section class="label">${qrCode(label.item)}<div class="says"><p class="place">${place}</p><p style="font-size:${nameSize}mm">${label.name}</p>${label.note === "" ? null : html`<p class="note">${label.note}</p>`}<p class="note ltr code">${label.item}</p></div>${outline(label.item)}</section>`;
}
