// An act as a sentence in the past tense: "Awa is away.", or "Taken back: Awa is away."
//
// Does not know: what an act does; its code and data come from the act itself.
import { type Language, say, sayUnchecked } from "../../language/index.ts";
import type { Shipped } from "../engine/engine.ts";
import { lessonTitle } from "./lessonTitle.ts";
import type { Act } from "./session.ts";

/** @returns the sentence; lessons are called by their titles. */
export function sayAct(language: Language, { says, undone }: Pick<Act, "says" | "undone">, shipped: Shipped | null): string {
  const { code, data } = says;
  const lesson = typeof data.lesson === "string" ? { lesson: lessonTitle(shipped, data.lesson, language.tag) } : {};
  const act = sayUnchecked(language, code, { ...data, ...lesson });
  return undone ? say(language, "session.undone", { act }) : act;
}
