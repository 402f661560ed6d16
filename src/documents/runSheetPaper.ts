// The run sheet: the teacher's one side of paper for one lesson.
//
// By the clock: what is done, what to say, and a column to write in. Below: what to have out, what the meter should show, cautions,
// and the usual mistakes. One side is the point of it, so what does not fit is left to the lesson's text, whole pieces at a
// time and with a word that says so. Cautions are never left out: they would rather take a second side.
// Does not know: how the lesson was rehearsed.
import type { Lesson } from "../bench/lesson/index.ts";
import { tellingTrace } from "../bench/rehearsal/index.ts";
import { formatClock, formatDay, formatNumber, itemName, type Language, say, sayUnchecked } from "../language/index.ts";
import type { ClassFile } from "../school/file/index.ts";
import type { PlannedLesson } from "../school/readiness/index.ts";
import { expectedReadings, shownVolts } from "./expectedReadings.ts";
import { type Html, html, user } from "./html.ts";
import { classAndDate, lessonInCourse, type PaperContent } from "./makePage.ts";
import { type MarkdownBlock, markdownBlocks } from "./markdownBlocks.ts";
import { lineCount } from "./measure.ts";
import { sentence } from "./sentence.ts";
import { sheetHeight, sheetWidth } from "./styleSheet.ts";
import { waveformFigure } from "./waveformFigure.ts";
import { groupOf, lessonTitle } from "./who.ts";

export interface RunSheetInput {
  readonly classFile: ClassFile;
  readonly lesson: Lesson;
  readonly planned: PlannedLesson;
}

/** Type size and line height of this paper, mm: ten points. */
const size = 3.5;
const line = 4.6;
/** Widths of the columns of words and of what is done in the plan and of one of the two columns below, mm. */
const sayWidth = 97;
const whatWidth = 24.5;
const halfWidth = (sheetWidth - 8) / 2;
const listWidth = halfWidth - 4.2;
/** A heading with its rule, and the title block with its margin, mm. */
const headingHeight = 8.2;
const titleBlockHeight = 13.5;
/** "4 more points in the lesson's text", mm. */
const hintHeight = 3.8;

export function runSheetPaper(input: RunSheetInput, language: Language): PaperContent {
  const { classFile, lesson, planned } = input;
  const group = groupOf(classFile, planned.class);
  const title = lessonTitle(lesson, language);
  const section = (name: string) => markdownBlocks(textOf(lesson, language)?.sections.get(name) ?? "");

  const warnings = [...hazardBlocks(planned, language), ...section("cautions").filter((b) => b.kind !== "table")];
  const readings = readingPieces(lesson, planned, language);
  const mistakes = section("mistakes").filter((b) => b.kind !== "table");
  const sees = section("introduction")
    .filter((b) => b.kind === "table")
    .slice(0, 1);

  const head = topPart(input, title, language);
  const rows = planRows(lesson, planned, language);
  const fixed = head.height + planHead + rows.reduce((sum, r) => sum + r.least, 0) + titleBlockHeight + 1.5;
  const room = sheetHeight - fixed;

  // What to say first is kept before the mistakes get their room: a lesson begins with it. Then all mistakes with what the
  // teams should see, then fewer and fewer mistakes.
  const first = rows.flatMap((r) =>
    r.note === null
      ? []
      : section(r.note)
          .filter((b) => b.kind !== "table")
          .slice(0, 1),
  )[0];
  const kept = first ? blockHeight(first, sayWidth) + hintHeight : 0;
  const wave = wavePieces(lesson, planned, language);
  const pieces = (count: number, withSees: boolean, withWave = false): Piece[] => [
    ...readings,
    ...(withWave ? wave : []),
    ...(mistakes.length === 0
      ? []
      : shortened(say(language, "runSheet.mistakes"), mistakes.slice(0, count), mistakes.length - count, language)),
    ...(withSees ? seesPiece(sees, language) : []),
    ...list(say(language, "runSheet.cautions"), warnings),
  ];
  const choices = [
    ...(wave.length > 0 ? [pieces(mistakes.length, true, true)] : []),
    pieces(mistakes.length, true),
    ...mistakes.map((_, i) => pieces(mistakes.length - i, false)),
    pieces(0, false),
  ];
  const best = (space: number) => choices.map((c) => inTwoColumns(c, space)).find((c) => c.height <= space);
  const fitting = best(room - kept) ?? best(room);
  const plan = fillPlan(rows, section, fitting ? room - fitting.height : room, language);
  // What the plan could not use goes back to the mistakes. Without room for all cautions there are two sides, and room for all.
  const below = (fitting ? best(room - plan.used) : undefined) ?? inTwoColumns(choices[0]!, sheetHeight);
  const oneSide = fitting !== undefined;
  const sides = oneSide
    ? [html`${head.html}${plan.html}${below.html}`]
    : [html`${head.html}${plan.html}`, html`${head.html}${below.html}`];
  return {
    title: say(language, "runSheet.titleOf", { title }),
    name: say(language, "runSheet.name"),
    lesson: lessonInCourse(language, group, planned.date, title),
    classAndDate: group ? classAndDate(language, group, planned.date) : null,
    classFile,
    sheets: sides.map((body) => ({ for: html`${say(language, "paper.teacher")}`, body: html`<div class="run">${body}</div>` })),
  };
}

/** Something that stands in one column and is not parted. */
interface Piece {
  readonly height: number;
  readonly html: Html;
  /** Stays with the piece after it. */
  readonly heading?: boolean;
}

const heading = (words: string): Piece => ({ height: headingHeight, html: html`<h3>${words}</h3>`, heading: true });
const blockHeight = (b: MarkdownBlock, width: number) => lineCount(b.plain, width, size) * line;

function list(words: string, blocks: readonly MarkdownBlock[]): Piece[] {
  return [
    heading(words),
    ...blocks.map((b) => ({ height: blockHeight(b, listWidth) + 0.8, html: html`<p class="dot">${b.html}</p>` })),
  ];
}

/** A list, and how many of its points are left to the lesson's text; the word about it stays with the last point. */
function shortened(words: string, blocks: readonly MarkdownBlock[], left: number, language: Language): Piece[] {
  const pieces = list(words, blocks);
  if (left === 0) return pieces;
  const hint = { height: hintHeight, html: html`<p class="more">${say(language, "runSheet.more", { n: left })}</p>` };
  return [...pieces.slice(0, -1), { ...pieces.at(-1)!, heading: true }, hint];
}

/**
 * Two columns as equal as they can be. The cut goes between pieces and never behind a heading; where it fits into the room, before
 * one.
 */
function inTwoColumns(pieces: readonly Piece[], room: number): { readonly height: number; readonly html: Html } {
  const heightOf = (some: readonly Piece[]) => some.reduce((sum, p) => sum + p.height, 0) + 2.5;
  const cuts = pieces
    .map((piece, at) => ({
      at,
      clean: piece.heading === true,
      height: Math.max(heightOf(pieces.slice(0, at)), heightOf(pieces.slice(at))),
    }))
    .filter(({ at }) => !pieces[at - 1]?.heading)
    .sort((a, b) => a.height - b.height);
  const best = cuts.find((c) => c.clean && c.height <= room) ?? cuts[0] ?? { at: 0, height: 0 };
  const column = (some: readonly Piece[]) => html`<div>${some.map((p) => p.html)}</div>`;
  return {
    height: best.height,
    html: html`<div class="two">${column(pieces.slice(0, best.at))}${column(pieces.slice(best.at))}</div>`,
  };
}

function textOf(lesson: Lesson, language: Language) {
  return lesson.texts.get(language.tag) ?? lesson.texts.get("en") ?? [...lesson.texts.values()][0];
}

// ---- the head: what, when, where, how it stands, what to have out

function topPart({ classFile, lesson, planned }: RunSheetInput, title: string, language: Language): Piece {
  const clock = (minutes: number) => formatClock(language, minutes);
  const when = sentence(
    language,
    "runSheet.when",
    {
      day: formatDay(language, planned.date, "weekday"),
      from: clock(planned.start),
      to: clock(planned.start + lesson.minutes),
      hasRoom: classFile.room.name.trim() === "" ? "no" : "yes",
    },
    { room: user(classFile.room.name), name: user(groupOf(classFile, planned.class)?.name ?? planned.class) },
  );
  const why = planned.reasons
    .filter((r) => r.verdict === planned.verdict && r.verdict !== "ready")
    .slice(0, 2)
    .map((r) => say(language, `reason.${r.code}`, r.data));
  const stands = html`<b>${say(language, `verdict.${planned.verdict}`)}</b>${why.length > 0 ? `. ${why.join(" ")}` : ""}`;
  const out = [
    say(language, "runSheet.trays", { n: planned.teams.length }),
    say(language, "runSheet.computers", { n: computersOut(classFile, planned.teams.length) }),
    ...(planned.supply !== null && !planned.supply.startsWith("usb-port")
      ? [itemName(language, planned.supply, planned.teams.length)]
      : []),
    ...lesson.tools.map((tool) => (language.text(`tool.${tool}`) === null ? tool : sayUnchecked(language, `tool.${tool}`))),
  ];
  const titleLines = lineCount(title, 150, 10, "bold");
  const ticks = out.reduce((sum, words) => sum + words.length * 2 + 14, 24) > sheetWidth ? 2 : 1;
  return {
    html: html`<header class="top"><div><small>${say(language, "runSheet.heading")}</small><h1>${user(title)}</h1><p>${when}</p></div><div class="end"><small>${say(language, "runSheet.begins")}</small><div class="clock">${clock(planned.start)}</div></div></header><p class="stands">${stands}</p><div class="out"><b>${say(language, "runSheet.haveOut")}</b>${out.map((words) => html`<span><i class="tick"></i>${words}</span>`)}</div>`,
    height:
      11.7 +
      titleLines * 11 +
      2 +
      lineCount(`${planned.verdict}. ${why.join(" ")}`, sheetWidth - 4, size) * line +
      1 +
      ticks * 7 +
      0.6,
  };
}

/** One a team, as far as those that work go round; one a team too where nobody has counted them. */
function computersOut({ computers }: ClassFile, teams: number): number {
  const serving = computers.filter((c) => c.works && c.usbPorts > 0).length;
  return serving === 0 ? teams : Math.min(teams, serving);
}

// ---- the plan by the clock

const planHead = 5;

interface PlanRow {
  readonly clock: string;
  readonly minutes: number;
  readonly what: string;
  readonly mayBeDropped: boolean;
  /** What is always said or done here. */
  readonly does: string;
  readonly note: string | null;
  readonly least: number;
}

function planRows(lesson: Lesson, planned: PlannedLesson, language: Language): PlanRow[] {
  let at = planned.start;
  return lesson.plan.map((item) => {
    const does = language.text(`activityDoes.${item.what}`) === null ? "" : sayUnchecked(language, `activityDoes.${item.what}`);
    const what = language.text(`activity.${item.what}`) === null ? item.what : sayUnchecked(language, `activity.${item.what}`);
    const dropped = item.mayBeDropped ? lineCount(say(language, "runSheet.mayBeDropped"), whatWidth, 2.8) * hintHeight + 1 : 0;
    const row = {
      clock: formatClock(language, at),
      minutes: item.minutes,
      what,
      mayBeDropped: item.mayBeDropped,
      does,
      note: item.note,
      least: Math.max(lineCount(does, sayWidth, size) * line, lineCount(what, whatWidth, size, "bold") * line + dropped) + 2,
    };
    at += item.minutes;
    return row;
  });
}

/** Words of the lesson's text go in as long as there is room, paragraph by paragraph, row by row. */
function fillPlan(
  rows: readonly PlanRow[],
  section: (name: string) => readonly MarkdownBlock[],
  room: number,
  language: Language,
): { readonly html: Html; readonly used: number } {
  let left = room;
  const said = rows.map((row) => {
    const blocks = row.note === null ? [] : section(row.note).filter((b) => b.kind !== "table");
    const taken: MarkdownBlock[] = [];
    // A row without words of its own has an empty line for these.
    if (row.does === "" && blocks.length > 0) left += line;
    for (const b of blocks) {
      const height = blockHeight(b, sayWidth - (b.kind === "item" ? 4 : 0)) + 0.8;
      const hint = taken.length + 1 < blocks.length ? hintHeight : 0;
      if (height + hint > left) break;
      left -= height;
      taken.push(b);
    }
    const more = blocks.length - taken.length;
    if (more > 0) left -= hintHeight;
    return { taken, more };
  });
  const table = html`<table class="plan"><thead><tr><th>${say(language, "runSheet.clock")}</th><th class="num">${say(language, "runSheet.minutes")}</th><th>${say(language, "runSheet.what")}</th><th>${say(language, "runSheet.say")}</th><th>${say(language, "runSheet.write")}</th></tr></thead><tbody>${rows.map(
    (row, i) => html`
<tr style="--row:${row.least.toFixed(1)}mm"><th scope="row" class="ltr">${row.clock}</th><td class="num">${formatNumber(language, row.minutes)}</td><td><b>${row.what}</b>${row.mayBeDropped ? html`<br><small>${say(language, "runSheet.mayBeDropped")}</small>` : null}</td><td>${row.does === "" ? null : html`<p>${row.does}</p>`}${said[i]!.taken.map((b) => (b.kind === "item" ? html`<p class="dot">${b.html}</p>` : html`<p>${b.html}</p>`))}${said[i]!.more > 0 ? html`<p class="more">${say(language, "runSheet.more", { n: said[i]!.more })}</p>` : null}</td><td></td></tr>`,
  )}</tbody></table>`;
  return { html: table, used: room - left };
}

// ---- below

function hazardBlocks(planned: PlannedLesson, language: Language): MarkdownBlock[] {
  return (planned.rehearsal?.hazards ?? []).map((h) => {
    const plain = say(language, `hazard.${h.code}`, { ...h });
    return { kind: "item", html: html`${plain}`, plain, rows: [], plainRows: [] };
  });
}

/** What each team should see: the first table of the introduction. */
function seesPiece(tables: readonly MarkdownBlock[], language: Language): Piece[] {
  return tables.flatMap((b) => {
    const [first = [], ...rest] = b.rows;
    const lines = b.plainRows.map((row) =>
      Math.max(1, ...row.map((cell) => lineCount(cell, halfWidth / Math.max(1, row.length) - 2, size))),
    );
    return [
      heading(say(language, "runSheet.sees")),
      {
        height: 1 + lines.reduce((sum, n) => sum + n * line + 1, 0),
        html: html`<table class="small even"><thead><tr>${first.map((c) => html`<th>${c}</th>`)}</tr></thead><tbody>${rest.map((row) => html`<tr>${row.map((c) => html`<td>${c}</td>`)}</tr>`)}</tbody></table>`,
      },
    ];
  });
}

/** What an oscilloscope would show, where the lesson has something that a meter does not; the first to go where room is short. */
function wavePieces(lesson: Lesson, planned: PlannedLesson, language: Language): Piece[] {
  const trace = tellingTrace(lesson, planned.supply === null ? {} : { supply: planned.supply });
  const probe = trace?.probes[0];
  if (!trace || !probe) return [];
  const size = { width: halfWidth, height: waveHeight, letter: 2.8 };
  return [
    heading(say(language, "runSheet.wave")),
    { height: waveHeight + 1, html: html`<div>${waveformFigure(trace, probe, language, size)}</div>` },
  ];
}

/** mm of the figure: eight divisions of 4 mm and its words. */
const waveHeight = 38;

/** Width of the column that names the point, mm. */
const pointWidth = 27;

function readingPieces(lesson: Lesson, planned: PlannedLesson, language: Language): Piece[] {
  const { moments, points } = expectedReadings(lesson, planned.rehearsal?.readings ?? [], language);
  if (points.length === 0) return [];
  const body = html`<table class="small readings"><thead><tr><th>${say(language, "runSheet.leads")}</th>${moments.map((m) => html`<th class="num">${m}</th>`)}</tr></thead><tbody>${points.map(
    ({ name, volts }) =>
      html`<tr><th scope="row">${name}</th>${volts.map((v) => html`<td class="num">${shownVolts(language, v)}</td>`)}</tr>`,
  )}</tbody></table>`;
  const headLines = Math.max(...moments.map((m) => lineCount(m, (halfWidth - pointWidth) / moments.length - 2, 2.8)));
  return [heading(say(language, "runSheet.readings")), { height: 2 + headLines * 3.7 + points.length * 5.5, html: body }];
}
