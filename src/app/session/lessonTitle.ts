// The title of a lesson in a language, and its texts.
//
// Does not know: how lessons are read.
import type { Lesson, LessonText } from "../../bench/lesson/index.ts";
import type { Shipped } from "../engine/engine.ts";

/** The text in the language, else in English, else in the first that is there. */
export function lessonText(lesson: Lesson, tag: string): LessonText | null {
  return lesson.texts.get(tag) ?? lesson.texts.get("en") ?? [...lesson.texts.values()][0] ?? null;
}

/** @returns "Quay lamp at dusk" for quay-lamp-at-dusk; the id where the lesson is not there. */
export function lessonTitle(shipped: Shipped | null, id: string, tag: string): string {
  const lesson = shipped?.lessons.get(id);
  return (lesson && lessonText(lesson, tag)?.title) || id;
}
