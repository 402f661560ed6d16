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
 * Names short enough for a narrow column and still different from each other: the first word, with as much of the rest as
 * tells two pupils apart ("Sami K."), or the whole name.
 */
export function shortNames(names: readonly string[]): Map<string, string> {
  const out = new Map<string, string>();
  const first = (name: string) => name.trim().split(/\s+/)[0] ?? name;
  for (const name of names) {
    const same = names.filter((other) => other !== name && first(other) === first(name));
    const rest = name.trim().split(/\s+/).slice(1);
    if (same.length === 0) out.set(name, first(name));
    else {
      const initial = rest.at(-1)?.[0];
      const others = same.map((other) => other.trim().split(/\s+/).at(-1)?.[0]);
      out.set(name, initial !== undefined && !others.includes(initial) ? `${first(name)} ${initial}.` : name);
    }
  }
  return out;
}

/** The three parts of a sitting's id, "7b/barrier/2027-03-04"; the day is null where the id is not one. */
export function sittingParts(id: string): { readonly class: string; readonly lesson: string; readonly date: Day | null } {
  const pieces = id.split("/");
  return { class: pieces[0] ?? id, lesson: pieces.slice(1, -1).join("/"), date: parseDay(pieces.at(-1) ?? "") };
}
