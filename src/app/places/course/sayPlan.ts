// The plan's codes as sentences: why, what helps, what to prepare. Lessons are spoken of by their titles.
//
// Does not know: how a verdict is found, where a sentence is shown.
import { type Language, sayUnchecked } from "../../../language/index.ts";
import type { Figures, Preparation, Reason, Remedy } from "../../../school/readiness/index.ts";
import type { Shipped } from "../../engine/engine.ts";
import { lessonTitle } from "../../session/lessonTitle.ts";

export interface PlanWords {
  readonly reason: (reason: Reason) => string;
  readonly remedy: (remedy: Remedy) => string;
  readonly preparation: (preparation: Preparation) => string;
  readonly title: (lesson: string) => string;
}

export function planWords(language: Language, shipped: Shipped | null): PlanWords {
  const title = (lesson: string): string => lessonTitle(shipped, lesson, language.tag);
  const named = (data: Figures): Record<string, unknown> =>
    typeof data.lesson === "string" ? { ...data, lesson: title(data.lesson) } : { ...data };
  const remedy = ({ code, data, by }: Remedy): string => {
    const says = sayUnchecked(language, `remedy.${code}`, named(data));
    return by === null ? says : sayUnchecked(language, "course.helpsBy", { says, by });
  };
  return {
    reason: ({ code, data }) => sayUnchecked(language, `reason.${code}`, named(data)),
    remedy,
    preparation: ({ code, data }) => sayUnchecked(language, `preparation.${code}`, named(data)),
    title,
  };
}
