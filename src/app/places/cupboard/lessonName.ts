// Names behind the ids of a lesson and a class, as sentences speak of them.
//
// An id that nobody knows is shown as it is.
// Does not know: dates, papers.
import { type Day, parseDay } from "../../../base/index.ts";
import { lessonTitle } from "../../session/lessonTitle.ts";
import type { Session } from "../../session/session.ts";

/** @returns the lesson's title in the language of the page, and the name of the class. */
export function lessonName(
  session: Pick<Session, "shipped" | "classFile" | "language">,
  { class: group, lesson }: { readonly class: string; readonly lesson: string },
): { lesson: string; name: string } {
  return {
    lesson: lessonTitle(session.shipped.value, lesson, session.language.value.tag),
    name: session.classFile.value?.classes.find((c) => c.id === group)?.name ?? group,
  };
}

/** The parts of a sitting's id, "7b/barrier/2027-03-04"; the day is null where the id is not one. */
export function sittingParts(id: string): { readonly class: string; readonly lesson: string; readonly date: Day | null } {
  const pieces = id.split("/");
  return { class: pieces[0] ?? id, lesson: pieces.slice(1, -1).join("/"), date: parseDay(pieces.at(-1) ?? "") };
}
