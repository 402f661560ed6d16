// The rota of teams: one side to find yourself, one side to see who sits together.
//
// The first table has a row a pupil and a column a lesson, with the team's number and a letter for the role; it hangs on the
// wall and answers "where do I sit". The second has a row a lesson and a column a team and answers "with whom". Under it stands
// what the rota could keep: how many lessons without the same two together again, the most that mathematics allows, and wishes
// that had to be broken.
// Does not know: how the teams were found.

import type { Lesson } from "../bench/lesson/index.ts";
import { compareNames, formatDay, formatList, formatNumber, type Language, say } from "../language/index.ts";
import type { Role, Rota, Team } from "../school/classroom/index.ts";
import type { ClassFile, ClassGroup } from "../school/file/index.ts";
import { type Html, html, user } from "./html.ts";
import type { PaperContent, Sheet } from "./makePage.ts";
import { lineCount, textWidth } from "./measure.ts";
import { splitByHeight } from "./splitByHeight.ts";
import { sheetHeight, sheetWidth } from "./styleSheet.ts";
import { groupOf, lessonTitle, pupilName, shortNames } from "./who.ts";

export interface RotaInput {
  readonly classFile: ClassFile;
  /** Id of the class. */
  readonly class: string;
  /** Teams for the class's lessons, in the order of their dates. */
  readonly rota: Rota;
  /** Lessons by id, for their names. */
  readonly lessons: ReadonlyMap<string, Lesson>;
}

interface Column {
  readonly index: number;
  readonly title: string;
  readonly day: string;
  readonly teams: readonly Team[];
}

export function rotaPaper(input: RotaInput, language: Language): PaperContent {
  const group = groupOf(input.classFile, input.class);
  const sorted = [...(group?.lessons ?? [])].sort((a, b) => (a.date < b.date ? -1 : 1));
  const columns = input.rota.lessons.map((teams, index) => {
    const date = sorted[index];
    return {
      index,
      teams,
      title: date ? lessonTitle(input.lessons.get(date.lesson), language, date.lesson) : "",
      day: date ? formatDay(language, date.date, "short") : "",
    };
  });
  const sheets = group ? [...pupilSheets(group, columns, language), ...lessonSheets(group, columns, input, language)] : [];
  return {
    title: say(language, "rota.titleOf", { name: group?.name ?? input.class }),
    name: say(language, "rota.name"),
    lesson: null,
    classAndDate: group ? user(group.name) : null,
    classFile: input.classFile,
    sheets,
  };
}

/** The heading with what it means and the legend, and its height in mm. */
function top(heading: string, below: string, right: string): { readonly html: Html; readonly height: number } {
  const width = sheetWidth - legendWidth - 6;
  return {
    html: html`<header class="top"><div><h1>${heading}</h1><p>${below}</p></div><p class="end note legend">${right}</p></header>`,
    height:
      Math.max(
        lineCount(heading, width, 10, "bold") * 11 + lineCount(below, width, 4.2) * 5.7,
        lineCount(right, legendWidth, 2.8) * 3.7,
      ) + 5,
  };
}
const legendWidth = 54;

const letter = (role: Role, language: Language) => say(language, `roleLetter.${role}`);
const legend = (language: Language) =>
  (["builder", "programmer", "checker"] as const)
    .map((r) => say(language, "rota.legend", { letter: letter(r, language), role: say(language, `role.${r}`) }))
    .join(", ");

// ---- where do I sit: pupils down, lessons across

/** Most lessons across and pupils down on one sheet. */
const acrossMost = 16;
const rowLeast = 5.2;

/** Up to so many lessons have room for heads that run across; more are turned. */
const uprightMost = 6;

function pupilSheets(group: ClassGroup, columns: readonly Column[], language: Language): Sheet[] {
  const compare = compareNames(language);
  const pupils = [...group.pupils].sort((a, b) => compare(a.name, b.name));
  const head = top(say(language, "rota.whereHeading"), say(language, "rota.whereBelow", { name: group.name }), legend(language));
  return chunks(columns, acrossMost).flatMap((across) => {
    const upright = across.length <= uprightMost;
    const width = (sheetWidth - 48) / across.length - 2;
    const headHeight = upright
      ? Math.max(...across.map((c) => lineCount(`${c.index + 1} ${c.title}`, width, 2.8) + 1)) * 3.8 + 2
      : 35;
    const room = sheetHeight - head.height - headHeight - 13.5 - 3;
    const perSheet = Math.floor(room / rowLeast);
    const rowHeight = Math.min(7.4, room / Math.min(pupils.length, perSheet));
    const lesson = (c: Column) => html`<b>${formatNumber(language, c.index + 1)}</b> ${user(c.title)}<br>${c.day}`;
    return chunks(pupils, perSheet).map((down) => ({
      for: html`${say(language, "rota.forWall")}`,
      body: html`${head.html}
<table class="rota where ${upright ? "across" : ""}" style="--row:${rowHeight.toFixed(2)}mm"><thead><tr><th></th>${across.map((c) => html`<th scope="col">${upright ? lesson(c) : html`<div class="up">${lesson(c)}</div>`}</th>`)}</tr></thead><tbody>${down.map(
        (p, i) =>
          html`<tr class="${i % 3 === 2 ? "third" : ""}"><th scope="row" style="font-size:${nameSize(p.name)}mm">${user(p.name)}</th>${across.map((c) => html`<td>${seat(c, p.id, language)}</td>`)}</tr>`,
      )}</tbody></table>`,
    }));
  });
}

/** A name that does not fit its column on one line is set smaller, never cut. */
function nameSize(name: string): number {
  return [3.6, 3.2, 2.8].find((size) => textWidth(name, size, "bold") <= 46) ?? 2.6;
}

function seat(column: Column, pupil: string, language: Language): Html {
  const team = column.teams.find((t) => t.pupils.includes(pupil));
  if (!team) return html`–`;
  const roles = team.roles.filter((r) => r.pupil === pupil).map((r) => letter(r.role, language));
  return html`<b>${team.number}</b> ${roles.join("")}`;
}

// ---- with whom: lessons down, teams across

const teamsMost = 12;
/** Width of the column with the lesson's name, mm. */
const lessonWidth = 27;

function lessonSheets(group: ClassGroup, columns: readonly Column[], input: RotaInput, language: Language): Sheet[] {
  const short = shortNames(group.pupils.map((p) => p.name));
  const name = (id: string) => {
    const whole = pupilName(input.classFile, input.class, id);
    return short.get(whole) ?? whole;
  };
  const most = Math.max(1, ...columns.map((c) => c.teams.length));
  const notes = promises(input, language);
  const notesHeight = notes.reduce((sum, note) => sum + lineCount(note, sheetWidth, 3.4) * 4.6, 4);
  const turned = teamsDown(group, columns, name, notes, notesHeight, language);
  if (turned !== null) return [turned];
  const across = Math.min(most, teamsMost);
  const width = (sheetWidth - lessonWidth) / across - 1.7;
  const height = (c: Column, size: number) => {
    const cell = (t: Team) =>
      t.pupils.reduce((sum, id) => {
        const words = memberWords(t, id, name, language);
        const mm = memberSize(words, size, width);
        return sum + lineCount(`${words.letters} ${words.name}`, width, mm) * mm * 1.24;
      }, 0);
    const lesson = (lineCount(`${c.index + 1} ${c.title}`, lessonWidth - 1, size) + 1) * size * 1.24;
    return Math.max(lesson, ...c.teams.map(cell)) + 1.9;
  };
  const head = top(say(language, "rota.whomHeading"), say(language, "rota.whomBelow", { name: group.name }), legend(language));
  const room = sheetHeight - head.height - 9 - 13.5 - notesHeight;
  // The largest type that keeps all lessons on one side; with small type a long course takes a second one.
  const size = columns.reduce((sum, c) => sum + height(c, 3), 0) <= room ? 3 : 2.8;
  return chunks(
    Array.from({ length: most }, (_, i) => i + 1),
    teamsMost,
  ).flatMap((numbers) =>
    splitByHeight(columns, (c) => height(c, size), room).map((down, i, pages) => ({
      for: html`${say(language, "rota.forTeacher")}`,
      body: html`${head.html}
<table class="rota whom" style="font-size:${size}mm"><thead><tr><th>${say(language, "rota.lesson")}</th>${numbers.map((n) => html`<th scope="col"><b>${n}</b></th>`)}</tr></thead><tbody>${down.map(
        (c) =>
          html`<tr><th scope="row">${formatNumber(language, c.index + 1)} ${user(c.title)}<br><small>${c.day}</small></th>${numbers.map(
            (n) =>
              html`<td>${members(
                c.teams.find((t) => t.number === n),
                name,
                size,
                width,
                language,
              )}</td>`,
          )}</tr>`,
      )}</tbody></table>${i === pages.length - 1 ? html`<div class="promises">${notes.map((n) => html`<p>${n}</p>`)}</div>` : null}`,
    })),
  );
}

/** Width of the column with the team's number, mm. */
const numberWidth = 14;

/**
 * The same for few lessons: teams down, lessons across, so that names have room.
 *
 * @returns null where there are too many lessons or the teams do not fit on one side.
 */
function teamsDown(
  group: ClassGroup,
  columns: readonly Column[],
  name: (id: string) => string,
  notes: readonly string[],
  notesHeight: number,
  language: Language,
): Sheet | null {
  const most = Math.max(1, ...columns.map((c) => c.teams.length));
  if (columns.length === 0 || columns.length > uprightMost || most < columns.length) return null;
  const width = (sheetWidth - numberWidth) / columns.length - 1.7;
  const head = top(say(language, "rota.whomHeading"), say(language, "rota.whomBelow", { name: group.name }), legend(language));
  const headHeight = Math.max(...columns.map((c) => lineCount(`${c.index + 1} ${c.title}`, width, 2.8) + 1)) * 3.8 + 2;
  const room = sheetHeight - head.height - headHeight - 13.5 - notesHeight;
  const largest = Math.max(...columns.flatMap((c) => c.teams.map((t) => t.pupils.length)));
  const fits = (mm: number) =>
    (largest * mm * 1.24 + 1.9) * most <= room &&
    columns.every((c) =>
      c.teams.every((t) => t.pupils.every((id) => memberSize(memberWords(t, id, name, language), mm, width) === mm)),
    );
  const size = [3.8, 3.4, 3].find(fits);
  if (size === undefined) return null;
  const numbers = Array.from({ length: most }, (_, i) => i + 1);
  return {
    for: html`${say(language, "rota.forTeacher")}`,
    body: html`${head.html}
<table class="rota whom down" style="font-size:${size}mm"><thead><tr><th>${say(language, "tray.team")}</th>${columns.map(
      (c) => html`<th scope="col"><b>${formatNumber(language, c.index + 1)}</b> ${user(c.title)}<br>${c.day}</th>`,
    )}</tr></thead><tbody>${numbers.map(
      (n) =>
        html`<tr><th scope="row"><b>${n}</b></th>${columns.map(
          (c) =>
            html`<td>${members(
              c.teams.find((t) => t.number === n),
              name,
              size,
              width,
              language,
            )}</td>`,
        )}</tr>`,
    )}</tbody></table><div class="promises">${notes.map((note) => html`<p>${note}</p>`)}</div>`,
  };
}

/** Builder, programmer, checker, one below the other; a name that is too wide for its column is set smaller. */
function members(team: Team | undefined, name: (id: string) => string, size: number, width: number, language: Language): Html {
  const order = ["builder", "programmer", "checker"] as const;
  const rank = (id: string) => order.findIndex((role) => team?.roles.some((r) => r.pupil === id && r.role === role));
  const sorted = [...(team?.pupils ?? [])].sort((a, b) => rank(a) - rank(b));
  return html`${sorted.map((id) => {
    const words = memberWords(team, id, name, language);
    const fitting = memberSize(words, size, width);
    return html`<div style="font-size:${fitting}mm">${words.letters} ${user(words.name)}</div>`;
  })}`;
}

interface MemberWords {
  readonly letters: string;
  readonly name: string;
}

function memberWords(team: Team | undefined, id: string, name: (id: string) => string, language: Language): MemberWords {
  const roles = team?.roles.filter((r) => r.pupil === id) ?? [];
  return { letters: roles.map((r) => letter(r.role, language)).join(""), name: name(id) };
}

function memberSize({ letters, name }: MemberWords, size: number, width: number): number {
  return [size, 2.8].find((mm) => textWidth(`${letters} ${name}`, mm) <= width) ?? 2.6;
}

/** What the rota keeps and what it does not. */
function promises({ rota, classFile, class: group }: RotaInput, language: Language): string[] {
  return [
    say(language, rota.fresh >= rota.lessons.length ? "rota.allFresh" : "rota.fresh", {
      fresh: rota.fresh,
      lessons: rota.lessons.length,
      bound: rota.bound,
    }),
    ...(rota.repeated > 0 ? [say(language, "rota.repeated", { repeated: rota.repeated })] : []),
    ...rota.broken.map((b) =>
      say(language, `brokenWish.${b.code}`, {
        names: formatList(
          language,
          b.pupils.map((p) => pupilName(classFile, group, p)),
        ),
        lesson: b.lesson + 1,
      }),
    ),
  ];
}

function chunks<T>(things: readonly T[], size: number): T[][] {
  const out: T[][] = [];
  for (let i = 0; i < things.length; i += size) out.push(things.slice(i, i + size));
  return out;
}
