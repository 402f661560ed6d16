// Reads the text of a lesson in one language: a title, then sections under fixed headings.
//
// `# The lighthouse` is the title; `## questions` begins a section. The headings are ids and stay English in every language, so
// that a paper can ask for "questions" and show its own word. Bodies stay Markdown; nothing is rendered here.
// Does not know: Markdown beyond headings and code blocks, languages.
import { near, plainText } from "../../base/index.ts";
import { type LessonText, type SectionId, sectionIds } from "./lesson.ts";
import type { Report } from "./lessonProblem.ts";

/** Characters of one text; a lesson needs three pages. */
const most = 200_000;

/** @param file name that problems carry. @returns the text, with what could be read of it. */
export function readText(file: string, language: string, text: string, report: Report): LessonText {
  const at = (line: number, column = 1) => ({ file, line, column });
  const sections = new Map<string, string>();
  if (text.length > most) {
    report({ code: "lesson.textTooLong", place: at(1), file, most, found: text.length });
    return { language, title: "", sections };
  }
  const begins = new Map<SectionId, number>();
  let title = "";
  let section: SectionId | "unknown" | null = null;
  let body: string[] = [];
  let fence: string | null = null;
  let isOutsideTold = false;
  const close = () => {
    if (section !== null && section !== "unknown" && !sections.has(section)) sections.set(section, body.join("\n").trim());
    body = [];
  };
  for (const [i, raw] of plainText(text.replace(/^\ufeff/, ""))
    .split(/\r\n|\n|\r/)
    .entries()) {
    const line = i + 1;
    const mark = /^ {0,3}(`{3,}|~{3,})/.exec(raw)?.[1];
    if (mark !== undefined && (fence === null || (mark[0] === fence[0] && mark.length >= fence.length)))
      fence = fence === null ? mark : null;
    const heading = fence === null && mark === undefined ? /^(#{1,2})(?:[ \t]+(.*?))?[ \t]*#*[ \t]*$/.exec(raw) : null;
    if (heading?.[1] === "#" && title === "" && section === null) title = (heading[2] ?? "").trim();
    else if (heading) {
      close();
      section = openSection(heading[2] ?? "", at(line), begins, report);
    } else if (section !== null) body.push(raw);
    else if (raw.trim() !== "" && !isOutsideTold) {
      report({ code: "lesson.textOutsideSection", place: at(line), found: raw.trim().slice(0, 40) });
      isOutsideTold = true;
    }
  }
  close();
  if (title === "") report({ code: "lesson.titleMissing", place: at(1) });
  for (const heading of ["teaches", "introduction", "cautions"])
    if (!sections.has(heading)) report({ code: "lesson.headingMissing", severity: "warning", place: at(1), heading });
  return { language, title, sections };
}

/** @returns the section that a heading begins. A first-level heading in the middle is a heading that nobody knows. */
function openSection(
  written: string,
  place: { readonly file: string; readonly line: number; readonly column: number },
  begins: Map<SectionId, number>,
  report: Report,
): SectionId | "unknown" {
  const id = sectionIds.find((s) => s === written.trim());
  if (id === undefined) {
    const found = written.trim().slice(0, 40);
    report({ code: "lesson.unknownHeading", place, found, near: near(found, sectionIds), expected: sectionIds.join(", ") });
    return "unknown";
  }
  const before = begins.get(id);
  if (before !== undefined) report({ code: "lesson.headingTwice", place, heading: id, firstLine: before });
  else begins.set(id, place.line);
  return id;
}
