// Names behind ids: which class, which pupil, what the lesson is called.
//
// Papers never fail over an id that nobody knows: it is shown as it is, and the check of the class file tells about it.
// Does not know: papers.
import { type Day, parseDay } from "../base/index.ts";
import type { Lesson } from "../bench/lesson/index.ts";
import type { Language } from "../language/index.ts";
import type { ClassFile, ClassGroup } from "../school/file/index.ts";

export function groupOf(classFile: ClassFile, id: string): ClassGroup | undefined {
  return classFile.classes.find((c) => c.id === id);
}

export function pupilName(classFile: ClassFile, group: string, id: string): string {
  return groupOf(classFile, group)?.pupils.find((p) => p.id === id)?.name ?? id;
}

/** The lesson's name in the language, else in the first that it has, else its id. */
export function lessonTitle(lesson: Lesson | undefined, language: Language, id = ""): string {
  const text = lesson?.texts.get(language.tag) ?? lesson?.texts.get("en") ?? [...(lesson?.texts.values() ?? [])][0];
  return text?.title ?? lesson?.id ?? id;
}

/**
 * Names short enough for a narrow column and still different from each other: the first word (of a long double name its first
 * half), with the initial of the last where two begin alike ("Sami K."), or the whole name.
 */
export function shortNames(names: readonly string[]): Map<string, string> {
  const words = (name: string) => name.trim().split(/\s+/);
  const first = (name: string) => words(name)[0] ?? name;
  const half = (name: string) => (first(name).length > longName ? (first(name).split("-")[0] ?? name) : first(name));
  const alone = (of: (name: string) => string, name: string) => names.every((other) => other === name || of(other) !== of(name));
  const withInitial = (name: string) => (words(name).length > 1 ? `${first(name)} ${[...(words(name).at(-1) ?? "")][0]}.` : name);
  return new Map(names.map((name) => [name, [half, first, withInitial].find((of) => alone(of, name))?.(name) ?? name]));
}

/** Letters of a first name that a narrow column still holds. */
const longName = 12;

/** The three parts of a sitting's id, "7b/barrier/2027-03-04"; the day is null where the id is not one. */
export function sittingParts(id: string): { readonly class: string; readonly lesson: string; readonly date: Day | null } {
  const pieces = id.split("/");
  return { class: pieces[0] ?? id, lesson: pieces.slice(1, -1).join("/"), date: parseDay(pieces.at(-1) ?? "") };
}
