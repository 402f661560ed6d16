// Reads what a command is pointed at: lessons, kits, and a class file with everything that belongs to it.
//
// A class file names folders relative to itself; where it names none, the lessons and kits that come with Benchday are used.
// A class with one unreadable lesson can still be planned: that lesson is then reported and stands in the plan as unreadable.
// Does not know: what is done with them.
import { basename, dirname, join, relative, resolve } from "node:path";
import { type Lesson, type LessonProblem, readLesson } from "../bench/lesson/index.ts";
import { type ProgramProblem, parseProgram } from "../bench/program/index.ts";
import { type ClassFile, type FileProblem, type Kit, readClassFile, readKit } from "../school/file/index.ts";
import { isFolder, listFolder, ownFolder, readBytes, readText } from "./files.ts";

/** What only the commands can find wrong. */
export type CliProblem =
  | { readonly code: "cli.noSuchFile" | "cli.isFolder" | "cli.notReadable" | "cli.tooLarge"; readonly path: string }
  | { readonly code: "cli.notWritable"; readonly path: string; readonly reason: string }
  | { readonly code: "cli.notText"; readonly path: string }
  | { readonly code: "cli.unknownKindOfFile"; readonly path: string }
  | { readonly code: "cli.nothingHere"; readonly path: string }
  | { readonly code: "cli.noSuchLesson"; readonly found: string; readonly near: string | null }
  | { readonly code: "cli.noSuchClass"; readonly found: string; readonly near: string | null }
  | { readonly code: "cli.noPapers"; readonly paper: string }
  | { readonly code: "cli.noBrowser" }
  | { readonly code: "cli.browserFailed"; readonly path: string };

export type LoadProblem = CliProblem | LessonProblem | ProgramProblem | FileProblem;

export interface Loaded<Value> {
  readonly value: Value | null;
  readonly problems: readonly LoadProblem[];
}

/** A class file with its kits and lessons. */
export interface SchoolFiles {
  readonly path: string;
  readonly classFile: ClassFile;
  readonly kits: ReadonlyMap<string, Kit>;
  /** Lessons by id that could be read; null for those with errors. */
  readonly lessons: ReadonlyMap<string, Lesson | null>;
}

/** Reads a text file strictly as UTF-8, so that damage is told and not shown as strange signs. */
export function loadText(path: string): Loaded<string> {
  const read = readBytes(path);
  if (!("bytes" in read)) return { value: null, problems: [read] };
  try {
    return { value: new TextDecoder("utf-8", { fatal: true }).decode(read.bytes), problems: [] };
  } catch {
    return { value: null, problems: [{ code: "cli.notText", path }] };
  }
}

/** @param path a lesson's folder, its lesson.yaml, or the id of a lesson that comes with Benchday. */
export function loadLesson(path: string): Loaded<Lesson> {
  const folder = lessonFolder(path);
  if (folder === null) return { value: null, problems: [{ code: "cli.noSuchFile", path }] };
  const read = readLesson({
    folder: shown(folder),
    read: (below) => readText(join(folder, below)),
    list: (below) => listFolder(join(folder, below)),
  });
  if (read.value === null) return read;
  // A program that does not compile leaves a lesson that can be read, planned and printed; it fails its rehearsal.
  const program = parseProgram(read.value.program.file, read.value.program.text);
  return { value: read.value, problems: [...read.problems, ...program.problems] };
}

export function loadKit(path: string): Loaded<Kit> {
  const text = loadText(path);
  return text.value === null ? { value: null, problems: text.problems } : readKit(shown(path), text.value);
}

/** Reads a class file and everything beside it. Problems of lessons that the class does not hold are not looked for. */
export function loadSchool(path: string): Loaded<SchoolFiles> {
  const text = loadText(path);
  if (text.value === null) return { value: null, problems: text.problems };
  // A first reading without its neighbours says which neighbours to read.
  const alone = readClassFile(shown(path), text.value);
  if (alone.value === null) return { value: null, problems: alone.problems };
  const problems: LoadProblem[] = [];
  const beside = (folder: string | null, own: string) =>
    folder === null ? join(ownFolder, own) : resolve(dirname(path), folder);
  const kits = new Map<string, Kit>();
  const kitFolder = beside(alone.value.kitFolder, "kits");
  for (const name of listFolder(kitFolder).filter((n) => n.endsWith(".yaml"))) {
    const kit = loadKit(join(kitFolder, name));
    problems.push(...kit.problems);
    if (kit.value) kits.set(kit.value.id, kit.value);
  }
  const lessons = new Map<string, Lesson | null>();
  const lessonsFolder = beside(alone.value.lessonFolder, "lessons");
  const wanted = new Set(alone.value.classes.flatMap((c) => c.lessons.map((l) => l.lesson)));
  for (const name of listFolder(lessonsFolder).filter((n) => wanted.has(n))) {
    const lesson = loadLesson(join(lessonsFolder, name));
    problems.push(...lesson.problems);
    lessons.set(name, lesson.value);
  }
  const minutes = new Map<string, number>();
  for (const name of listFolder(lessonsFolder)) minutes.set(name, lessons.get(name)?.minutes ?? 0);
  const whole = readClassFile(shown(path), text.value, { lessonMinutes: minutes, kits });
  if (whole.value === null) return { value: null, problems: whole.problems };
  return { value: { path, classFile: whole.value, kits, lessons }, problems: [...whole.problems, ...problems] };
}

function lessonFolder(path: string): string | null {
  if (isFolder(path)) return path;
  if (basename(path) === "lesson.yaml") return dirname(path);
  const own = join(ownFolder, "lessons", path);
  return isFolder(own) ? own : null;
}

/** Paths in messages are relative where that is shorter. */
export function shown(path: string): string {
  const short = relative(process.cwd(), path);
  return short !== "" && short.length < path.length ? short : path;
}
