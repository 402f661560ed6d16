// What a lesson is called in the language of the page, in English where it has no text there, by its id where it has none.
//
// Does not know: where the title stands.
import type { Lesson } from "../../../bench/lesson/index.ts";
import type { Language } from "../../../language/index.ts";

export function lessonTitle(language: Language, lesson: Lesson | undefined, id: string = lesson?.id ?? ""): string {
  return lesson?.texts.get(language.tag)?.title ?? lesson?.texts.get("en")?.title ?? id;
}
