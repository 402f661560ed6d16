// Reads the program of a lesson and its translations, which may differ from it only in comments and texts.
//
// Does not know: whether the program is right (bench/program).
import { plainText } from "../../base/index.ts";
import type { ProgramFile } from "./lesson.ts";
import type { LessonProblem, Report } from "./lessonProblem.ts";
import type { LessonSource } from "./lessonSource.ts";
import { firstDifference } from "./programTokens.ts";

/** Characters. The chip's memory holds no longer one. */
const most = 100_000;
const programName = "program.cpp";

export interface Programs {
  readonly program: ProgramFile | null;
  readonly translations: ReadonlyMap<string, ProgramFile>;
}

/** @param lessonFile where a missing program is told. */
export function readPrograms(source: LessonSource, lessonFile: string, report: Report): Programs {
  const program = readFile(source, programName, report);
  if (program === null)
    report({
      code: "lesson.fileMissing",
      place: { file: lessonFile, line: 1, column: 1 },
      file: `${source.folder}/${programName}`,
    });
  const translations = new Map<string, ProgramFile>();
  for (const name of source.list("")) {
    const language = /^program\.([a-z]{2,3}(?:-[A-Za-z0-9]{2,8})*)\.cpp$/.exec(name)?.[1];
    if (language === undefined) continue;
    const translation = readFile(source, name, report);
    if (translation === null) continue;
    translations.set(language, translation);
    const problem = program && differenceOf(program, translation);
    if (problem) report(problem);
  }
  return { program, translations };
}

function readFile(source: LessonSource, name: string, report: Report): ProgramFile | null {
  const text = source.read(name);
  if (text === null) return null;
  const file = `${source.folder}/${name}`;
  const place = { file, line: 1, column: 1 };
  if (text.length > most) report({ code: "lesson.programTooLong", place, file, most, found: text.length });
  else if (text.trim() === "") report({ code: "lesson.programEmpty", place, file });
  return { file, text: text.length > most ? "" : text.replace(/^\ufeff/, "") };
}

function differenceOf(program: ProgramFile, translation: ProgramFile): LessonProblem | null {
  const difference = firstDifference(program.text, translation.text);
  if (!difference) return null;
  const lines = translation.text.split("\n");
  const end = { line: lines.length, column: (lines.at(-1)?.length ?? 0) + 1 };
  const { line, column } = difference.translation ?? end;
  return {
    code: "lesson.programDiffers",
    place: { file: translation.file, line, column },
    expected: plainText(difference.original?.text ?? "").slice(0, 40),
    found: plainText(difference.translation?.text ?? "").slice(0, 40),
    original: program.file,
    line: difference.original?.line ?? program.text.split("\n").length,
  };
}
