// The tray list: one sheet a team, with what goes into its tray and what must come back.
//
// The team's number is large enough to be read across the room; each thing has its outline, its number, its place in the
// cupboard and two boxes to tick: handed out, come back. What the cupboard does not hold is on the list too, with a dashed box,
// so that nobody looks for it twice. Twelve things fit on a sheet at a comfortable height, more go on closer rows or a second sheet.
// Does not know: how a tray was composed.
import type { Lesson } from "../bench/lesson/index.ts";
import { bandWords, formatDay, itemName, type Language, say } from "../language/index.ts";
import type { ClassFile } from "../school/file/index.ts";
import type { PlannedLesson, Tray } from "../school/readiness/index.ts";
import { type Html, html, user } from "./html.ts";
import { classAndDate, lessonInCourse, type PaperContent, type Sheet } from "./makePage.ts";
import { lineCount, textWidth } from "./measure.ts";
import { outline } from "./outlines.ts";
import { qrCode } from "./qrCode.ts";
import { sentence } from "./sentence.ts";
import { splitByHeight } from "./splitByHeight.ts";
import { sheetHeight, sheetWidth } from "./styleSheet.ts";
import { groupOf, lessonTitle, pupilName } from "./who.ts";

export interface TrayInput {
  readonly classFile: ClassFile;
  readonly lesson: Lesson;
  readonly planned: PlannedLesson;
}

/** One thing on the list. */
export interface TrayRow {
  readonly item: string;
  readonly count: number;
  /** Names in the circuit, "R1, R2"; empty for what belongs to no circuit. */
  readonly parts: string;
  readonly name: string;
  /** Colour bands, what it stands in for; empty if there is nothing to say. */
  readonly note: string;
  readonly box: string;
  /** Where it comes from when nobody named a place: the kit, or a dash. */
  readonly from: string;
  readonly missing: boolean;
}

export function trayPaper(input: TrayInput, language: Language): PaperContent {
  const { classFile, lesson, planned } = input;
  const group = groupOf(classFile, planned.class);
  const title = lessonTitle(lesson, language);
  const sheets = planned.trays.flatMap((tray) => traySheets(tray, input, title, language));
  return {
    title: say(language, "tray.titleOf", { title }),
    name: say(language, "tray.name"),
    lesson: lessonInCourse(language, group, planned.date, title),
    classAndDate: group ? classAndDate(language, group, planned.date) : null,
    classFile,
    sheets,
  };
}

/** The rows of one tray: large things first, then parts in the order of their names, wires last, then what is missing. */
export function trayRows(tray: Tray, classFile: ClassFile, language: Language): TrayRow[] {
  const row = (
    item: string,
    count: number,
    parts: readonly string[],
    box: string,
    missing: boolean,
    insteadOf: string | null,
  ): TrayRow => ({
    item,
    count,
    parts: parts.join(", "),
    name: itemName(language, item, count),
    note: [bandWords(language, item), insteadOf === null ? "" : say(language, "tray.insteadOf", { item: insteadOf })]
      .filter((t) => t !== "")
      .join(" · "),
    box,
    from: classFile.kits.length > 0 && classFile.stock.every((line) => line.item !== item) ? say(language, "tray.kit") : "—",
    missing,
  });
  const handed = tray.items.map((i) => row(i.item, i.count, i.parts, i.box, false, i.insteadOf));
  const missing = tray.missing.map((i) => row(i.item, i.count, i.parts, "", true, null));
  const sorted = (rows: readonly TrayRow[]) =>
    rows
      .filter((r) => !stays(r.item))
      .sort((a, b) => rank(a.item) - rank(b.item) || a.parts.localeCompare(b.parts, "en", { numeric: true }));
  return [...sorted(handed), ...sorted(missing)];
}

/** What stands on the table anyway and is not carried in a tray. */
function stays(item: string): boolean {
  return /^(computer|usb-port)( |$)/.test(item);
}

function rank(item: string): number {
  const order = ["breadboard", "board", "usb-cable"];
  const kind = item.split(" ")[0] ?? "";
  if (order.includes(kind)) return order.indexOf(kind);
  return kind === "wire" ? 5 : /^(power-bank|adapter|battery-)/.test(kind) ? 6 : 4;
}

/** Heights in mm, as the style sheet gives them. */
const fixed = { head: 7, countIn: 15, block: 13.5, rowMost: 18.4, rowLeast: 11.6 };

function traySheets(tray: Tray, input: TrayInput, title: string, language: Language): Sheet[] {
  const rows = trayRows(tray, input.classFile, language);
  const top = topLine(tray, input, title, language);
  const room = sheetHeight - top.height - fixed.head - fixed.countIn - fixed.block;
  const least = (row: TrayRow) => {
    const name = lineCount(`${row.parts} ${row.name}`, whatWidth, 4.2, "bold") * 5.5;
    const note = row.note === "" ? 0 : lineCount(row.note, whatWidth, 2.8) * 3.7;
    return Math.max(fixed.rowLeast, name + note + 2.4, lineCount(row.box, boxWidth, 4.2) * 5.7 + 2.4);
  };
  const pages = splitByHeight(rows, least, room);
  return pages.map((page) => {
    const spare = room - page.reduce((sum, row) => sum + least(row), 0);
    const each = Math.max(0, spare / Math.max(1, page.length));
    return {
      for: html`${say(language, "paper.team", { team: tray.team })}`,
      body: html`${top.html}${table(page, (row) => Math.min(Math.max(fixed.rowMost, least(row)), least(row) + each), language)}${countIn(language)}`,
    };
  });
}

/** Widths of the columns "what" and "from", mm. */
const whatWidth = 70;
const boxWidth = 25;

function topLine(
  tray: Tray,
  { classFile, planned }: TrayInput,
  title: string,
  language: Language,
): { html: Html; height: number } {
  const team = planned.teams.find((t) => t.number === tray.team);
  const clauses = (["builder", "programmer", "checker"] as const).flatMap((role) => {
    const names = (team?.roles ?? []).filter((r) => r.role === role).map((r) => pupilName(classFile, planned.class, r.pupil));
    return names.length === 0 ? [] : [{ role, names }];
  });
  const does = html`${clauses.map(({ role, names }, i) => html`${i > 0 ? ", " : ""}<bdi>${sentence(language, `tray.${role}`, { n: names.length }, { names: joined(names) })}</bdi>`)}`;
  const day = formatDay(language, planned.date, "short");
  const code = `${planned.id}/${tray.team}`;
  const codeWidth = Math.max(...code.split("/").map((part) => textWidth(`${part}/`, 2.6))) + 1.5;
  const width = sheetWidth - 22 - codeWidth - textWidth(String(tray.team), 22, "bold") - 12;
  const spoken = clauses.map(({ role, names }) => say(language, `tray.${role}`, { n: names.length, names: names.join(", ") }));
  const lines = lineCount(`${title}, ${day}`, width, 4.2) + clauseLines(spoken, width);
  return {
    html: html`<header class="top"><div><h1>${say(language, "tray.heading")}</h1><p>${sentence(language, "tray.lessonOnDay", { day }, { title: user(title) })}</p><p class="does">${does}</p></div><div class="qrbox"><small class="ltr">${pieces(code)}</small>${qrCode(code)}</div><div class="end"><small>${say(language, "tray.team")}</small><div class="big">${tray.team}</div></div></header>`,
    height: Math.max(26, 11 + lines * 5.7) + 5,
  };
}

/** Lines that clauses take when each is kept together as long as it fits. */
function clauseLines(clauses: readonly string[], width: number): number {
  let lines = 0;
  let used = width;
  for (const clause of clauses) {
    const wide = textWidth(`${clause}, `, 4.2);
    if (used + wide <= width) {
      used += wide;
      continue;
    }
    lines += lineCount(clause, width, 4.2);
    used = Math.min(wide, width);
  }
  return lines;
}

/** The code's text, broken where it has strokes. */
function pieces(code: string): Html {
  const parts = code.split("/");
  return html`${parts.map((part, i) => html`${user(i < parts.length - 1 ? `${part}/` : part)}<br>`)}`;
}

function joined(names: readonly string[]): Html {
  return html`${names.map((name, i) => html`${i > 0 ? ", " : ""}${user(name)}`)}`;
}

function table(rows: readonly TrayRow[], height: (row: TrayRow) => number, language: Language): Html {
  const head = (key: "howMany" | "what" | "from" | "inTheTray" | "back" | "broken") => say(language, `tray.${key}`);
  return html`<table class="tray"><thead><tr><th></th><th class="num">${head("howMany")}</th><th>${head("what")}</th><th>${head("from")}</th><th>${head("inTheTray")}</th><th>${head("back")}</th><th>${head("broken")}</th></tr></thead><tbody>${rows.map(
    (row) => html`
<tr style="--row:${height(row).toFixed(1)}mm;--t:${letterScale(height(row))}"><td>${outline(row.item)}</td><td class="count num">${row.count}</td><th scope="row">${row.parts === "" ? null : html`<span class="part">${row.parts}</span> `}${row.name}${row.note === "" ? null : html`<small class="under">${row.note}</small>`}</th><td>${row.missing ? html`<b>${say(language, "tray.missing")}</b>` : row.box === "" ? row.from : user(row.box)}</td><td><i class="${row.missing ? "tick none" : "tick"}"></i></td><td><i class="tick"></i></td><td><i class="line"></i></td></tr>`,
  )}</tbody></table>`;
}

/** By how much the letters of an outline grow so that they stay readable in a row of this height: 8 units become 2.7 mm. */
function letterScale(row: number): string {
  const unit = Math.min(19 / 52, Math.min(17, row - 1.2) / 50);
  return Math.max(1, 2.7 / (8 * unit)).toFixed(2);
}

function countIn(language: Language): Html {
  return html`<p class="countin"><span>${say(language, "tray.missingAtCountIn")}</span><i class="line wide"></i><span>${say(language, "tray.checkedBy")}</span><i class="line"></i></p>`;
}
