// An act as a sentence in the past tense: "Awa is away."
//
// Does not know: what an act does; its code and data come from the act itself.
import { type Language, sayUnchecked } from "../../language/index.ts";
import type { Described } from "../../school/changes/index.ts";
import type { Shipped } from "../engine/engine.ts";
import { lessonTitle } from "./lessonTitle.ts";

/** @returns the sentence; lessons are called by their titles. */
export function sayAct(language: Language, { code, data }: Described, shipped: Shipped | null): string {
  const lesson = typeof data.lesson === "string" ? { lesson: lessonTitle(shipped, data.lesson, language.tag) } : {};
  return sayUnchecked(language, code, { ...data, ...lesson });
}
