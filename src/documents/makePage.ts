// What a paper is: sheets with a title block, put together into one page that prints the same on A4 and Letter.
//
// Each kind of paper says what stands on its sheets; this file gives them their frame. The page is whole in itself: style and
// fonts inside, no script, nothing fetched (a content policy forbids it even to a slip of ours).
// Does not know: any kind of paper.

import { contentHash, type Day } from "../base/index.ts";
import { formatDay, formatNumber, type Language, say } from "../language/index.ts";
import type { ClassFile, ClassGroup } from "../school/file/index.ts";
import { type Html, html, htmlText, user } from "./html.ts";
import { sentence } from "./sentence.ts";
import { type PaperSize, styleSheet } from "./styleSheet.ts";

export interface PaperOptions {
  readonly language: Language;
  readonly paperSize: PaperSize;
  /** Name of the class file, shown in the title block: "harbour.json". */
  readonly source?: string;
}

/** One side of paper. */
export interface Sheet {
  /** Who gets it: "team 7", "the teacher". */
  readonly for: Html;
  readonly body: Html;
}

/** A paper before it gets its frame. */
export interface PaperContent {
  /** For the window's title and lists: plain text. */
  readonly title: string;
  /** What it is, for the title block: "tray list". */
  readonly name: string;
  readonly lesson: Html | null;
  readonly classAndDate: Html | null;
  readonly classFile: ClassFile;
  readonly sheets: readonly Sheet[];
}

/** @returns one page with the sheets of all papers, in order. */
export function makePage(papers: readonly PaperContent[], options: PaperOptions): string {
  const { language, paperSize } = options;
  const title = papers.map((p) => p.title).join("; ");
  const sheets = papers.flatMap((paper) => {
    const from = computedFrom(paper.classFile, options.source);
    return paper.sheets.map((sheet, i) => {
      const block = titleBlock(paper, sheet, i, from, language);
      return html`<article class="sheet">${sheet.body}<div class="foot">${block}</div></article>\n`;
    });
  });
  // The style sheet is ours and holds no text of others; it goes in as it is because "<" and quotes in it must not be escaped.
  const policy = "default-src 'none'; style-src 'unsafe-inline'; font-src data:; img-src data:";
  const head = html`<meta charset="utf-8"><meta http-equiv="Content-Security-Policy" content="${policy}"><meta name="viewport" content="width=device-width"><title>${title}</title>`;
  return `<!doctype html>
<html lang="${/^x[lrx]$/.test(language.tag) ? "en" : language.tag}" dir="${language.direction}">
<head>${htmlText(head)}<style>${styleSheet(paperSize)}</style></head>
<body>
${htmlText(html`${sheets}`)}</body>
</html>
`;
}

/** Name of the file and four hex digits of its content: two sheets with the same four were computed from the same data. */
export function computedFrom(classFile: ClassFile, source: string | undefined): string {
  const hash = contentHash(classFile).slice(0, 4);
  return source === undefined ? hash : `${source}, ${hash}`;
}

function titleBlock(paper: PaperContent, sheet: Sheet, index: number, from: string, language: Language): Html {
  const cell = (key: "paper" | "for" | "lesson" | "classAndDate" | "computedFrom" | "sheet", content: Html | string | null) =>
    content === null ? null : html`<div><span>${say(language, `paper.${key}`)}</span>${content}</div>`;
  return html`<footer class="block">${cell("paper", paper.name)}${cell("for", sheet.for)}${cell("lesson", paper.lesson)}${cell("classAndDate", paper.classAndDate)}${cell("computedFrom", user(from))}${cell("sheet", say(language, "paper.sheetOf", { n: index + 1, m: paper.sheets.length }))}</footer>`;
}

/** "class 7b, 11 February 2027". */
export function classAndDate(language: Language, group: ClassGroup, date: Day): Html {
  return sentence(language, "paper.classOnDay", { day: formatDay(language, date) }, { name: user(group.name) });
}

/** "5, quay lamp at dusk": the how-manieth of the class's lessons it is, and its name. */
export function lessonInCourse(language: Language, group: ClassGroup | undefined, date: Day, title: string): Html {
  const sorted = [...(group?.lessons ?? [])].sort((a, b) => (a.date < b.date ? -1 : 1));
  const index = sorted.findIndex((l) => l.date === date);
  return index < 0
    ? user(title)
    : sentence(language, "paper.lessonNumbered", { n: formatNumber(language, index + 1) }, { title: user(title) });
}
