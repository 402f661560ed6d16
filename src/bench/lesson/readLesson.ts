// Reads a lesson from its folder: lesson.yaml, program.cpp, text/<language>.md, and what else belongs to it.
//
// Everything that is wrong is told at once, with its place; a lesson with an error is not used at all, so that nothing is
// half-read. Warnings leave it usable.
// Does not know: where the folder lies, whether the lesson works (bench/rehearsal).
import { checkShape, type Document, type Reading, readYaml, sortProblems } from "../../base/index.ts";
import type { Lesson, LessonText, Media, PlanItem } from "./lesson.ts";
import { currentFormat, migrate, readFormat } from "./lessonFormat.ts";
import type { LessonProblem, Report } from "./lessonProblem.ts";
import { type LessonShape, lessonSchema } from "./lessonSchema.ts";
import type { LessonSource } from "./lessonSource.ts";
import { legsUsed, readNets } from "./readNets.ts";
import { readParts } from "./readParts.ts";
import { readPrograms } from "./readProgram.ts";
import { readRehearsal } from "./readRehearsal.ts";
import { readText } from "./readText.ts";

const lessonName = "lesson.yaml";
/** A file full of slips is told the first of them; finding more for nobody would cost a stranger's file its time. */
const mostProblems = 100;
const enough = Symbol("enough problems");

/** @returns the lesson, or null, with all problems: errors first, then by file and line. Never throws. */
export function readLesson(source: LessonSource): Reading<Lesson, LessonProblem> {
  const problems: LessonProblem[] = [];
  let errors = 0;
  const report: Report = (problem) => {
    if (problem.severity === "warning" && problems.length >= 2 * mostProblems) return;
    problems.push(problem);
    if (problem.severity !== "warning") errors += 1;
    if (errors >= mostProblems) throw enough;
  };
  let lesson: Lesson | null = null;
  try {
    lesson = readAll(source, report);
  } catch (stop) {
    if (stop !== enough) throw stop;
  }
  return { value: errors > 0 ? null : lesson, problems: sortProblems(problems).slice(0, mostProblems) };
}

function readAll(source: LessonSource, report: Report): Lesson | null {
  const file = `${source.folder}/${lessonName}`;
  const text = source.read(lessonName);
  if (text === null) {
    report({ code: "lesson.fileMissing", place: { file, line: 1, column: 1 }, file });
    return null;
  }
  const { value: written, problems } = readYaml(file, text);
  problems.forEach(report);
  const document = written && inPresentFormat(written, report);
  // Texts and programs are read even then, so that their problems are told in the same run.
  const programs = readPrograms(source, file, report);
  const texts = readTexts(source, file, report);
  if (document === null) return null;
  const { value: shape, problems: shapeProblems } = checkShape(document, lessonSchema);
  shapeProblems.forEach(report);
  if (shape === null) return null;

  const folderName = source.folder.split("/").at(-1) ?? "";
  if (folderName !== "" && folderName !== "." && shape.id !== folderName)
    report({
      code: "lesson.idIsNotFolder",
      severity: "warning",
      place: document.place(["id"]),
      id: shape.id,
      folder: folderName,
    });
  if (shape.needs.includes(shape.id))
    report({ code: "lesson.needsItself", place: document.place(["needs", shape.needs.indexOf(shape.id)]), id: shape.id });

  const declared = new Set([...Object.keys(shape.parts), "board"]);
  const parts = readParts(document, shape.parts, legsUsed(shape.nets), report);
  const nets = readNets(document, shape.nets, parts, declared, report);
  const rehearsal = readRehearsal(shape.rehearsal, { document, parts, declared, report });
  const plan = readPlan(document, shape, texts, report);
  const media = readMedia(document, shape, source, report);
  if (programs.program === null) return null;
  return {
    format: currentFormat,
    id: shape.id,
    minutes: shape.minutes,
    needs: shape.needs,
    parts,
    nets,
    ...rehearsal,
    tools: shape.tools,
    plan,
    media,
    program: programs.program,
    translatedPrograms: programs.translations,
    texts,
  };
}

/** @returns the document in the present format, or null after reporting what is wrong. */
function inPresentFormat(document: Document, report: Report): Document | null {
  const data = document.data;
  // A text or a list for the whole file is told by the schema, which knows better what was expected.
  if (typeof data !== "object" || data === null || Array.isArray(data) || !("format" in data)) return document;
  const format = readFormat(data.format);
  const place = document.place(["format"]);
  const found = String(data.format).slice(0, 40);
  if (format.status === "known") return { ...document, data: migrate(data, format.version) };
  report({
    code: format.status === "newer" ? "lesson.newerFormat" : "lesson.unknownFormat",
    place,
    found,
    expected: currentFormat,
  });
  return null;
}

function readTexts(source: LessonSource, lessonFile: string, report: Report): ReadonlyMap<string, LessonText> {
  const texts = new Map<string, LessonText>();
  for (const name of source.list("text")) {
    const language = /^([a-z]{2,3}(?:-[A-Za-z0-9]{2,8})*)\.md$/.exec(name)?.[1];
    const text = language === undefined ? null : source.read(`text/${name}`);
    if (language !== undefined && text !== null)
      texts.set(language, readText(`${source.folder}/text/${name}`, language, text, report));
  }
  if (texts.size === 0)
    report({
      code: "lesson.textMissing",
      severity: "warning",
      place: { file: lessonFile, line: 1, column: 1 },
      folder: `${source.folder}/text`,
    });
  return texts;
}

function readPlan(
  document: Document,
  shape: LessonShape,
  texts: ReadonlyMap<string, LessonText>,
  report: Report,
): readonly PlanItem[] {
  const sum = shape.plan.reduce((minutes, item) => minutes + item.minutes, 0);
  if (shape.plan.length > 0 && sum !== shape.minutes)
    report({
      code: "lesson.minutesDiffer",
      severity: "warning",
      place: document.place(["minutes"]),
      minutes: shape.minutes,
      sum,
    });
  return shape.plan.map((item, i) => {
    const note = item.note ?? null;
    if (note !== null && texts.size > 0 && ![...texts.values()].some((text) => text.sections.has(note)))
      report({ code: "lesson.noteWithoutSection", severity: "warning", place: document.place(["plan", i, "note"]), note });
    return { what: item.what, minutes: item.minutes, mayBeDropped: item["may-be-dropped"], note };
  });
}

/** Films and pictures stay inside the lesson's folder: a pack may come from a stranger. */
function readMedia(document: Document, shape: LessonShape, source: LessonSource, report: Report): readonly Media[] {
  return shape.media.map((item, i) => {
    for (const field of ["path", "captions"] as const) {
      const path = item[field];
      if (path === undefined) continue;
      const place = document.place(["media", i, field]);
      const steps = path.split("/");
      if (steps.some((step) => step === "" || step === "." || step === "..") || /[\\:\u0000-\u001f]/.test(path))
        report({ code: "lesson.badPath", place, found: path.slice(0, 40) });
      else if (!source.list(steps.slice(0, -1).join("/")).includes(steps.at(-1)!))
        report({ code: "lesson.mediaMissing", severity: "warning", place, file: `${source.folder}/${path}` });
    }
    return { path: item.path, language: item.language, captions: item.captions ?? null };
  });
}
