// The class that the six answers make so far. What was not asked yet counts as not known, so that there is a whole class to plan
// from the first answer on.
//
// Prices that come with a kit are invented and never go in: a cost comes from the teacher's own price alone.
// Does not know: sentences, the page, what is assumed where nothing is known (school/changes).
import { currencyDecimals, type Day, parseMoney } from "../../../base/index.ts";
import { type Language, say } from "../../../language/index.ts";
import { type Assumed, type FirstAnswers, newClassFile } from "../../../school/changes/index.ts";
import type { ClassFile } from "../../../school/file/index.ts";
import type { Shipped } from "../../engine/engine.ts";
import type { Answers, Said } from "./answers.ts";

/** Where nobody said: the currency of the papers until a price is named. */
export const usualCurrency = "EUR";

/**
 * @param language for the names that nobody gave yet: "Pupil 1".
 * @returns null where the answers make no class, which answers that were read before never do.
 */
export function classOf(
  answers: Answers,
  shipped: Pick<Shipped, "lessons" | "kits">,
  language: Language,
  today: Day,
): { readonly value: ClassFile; readonly assumed: readonly Assumed[] } | null {
  const made = newClassFile(firstAnswers(answers, shipped), shipped, {
    language: language.tag,
    pupil: (number) => say(language, "questions.pupilName", { number }),
    class: say(language, "questions.className"),
    shop: say(language, "questions.shopName"),
    today,
    currency: usualCurrency,
  });
  return "problem" in made ? null : made;
}

/** Lessons and kits that are not there any more, since the note was written, are left out. */
function firstAnswers(answers: Answers, { lessons, kits }: Pick<Shipped, "lessons" | "kits">): FirstAnswers {
  const meeting = known(answers.meeting);
  const chosen = known(answers.lessons)?.filter((id) => lessons.has(id)) ?? null;
  return {
    pupils: known(answers.pupils),
    when:
      meeting === null ? null : { first: meeting.first, start: meeting.start, weeks: meeting.weeks, minutes: meeting.minutes },
    lessons: chosen !== null && chosen.length > 0 ? chosen : null,
    boxes: known(answers.boxes)?.filter(({ kit }) => kits.has(kit)) ?? null,
    computers: known(answers.computers),
    money: moneyOf(known(answers.money), kits),
  };
}

function moneyOf(said: Exclude<Answers["money"], "unknown">, kits: Shipped["kits"]): FirstAnswers["money"] {
  if (said === null) return null;
  const decimals = currencyDecimals(said.currency) ?? 2;
  const sum = (text: string | null) => (text === null ? null : parseMoney(text, decimals));
  const price = sum(said.price);
  return {
    currency: said.currency,
    decimals,
    budget: sum(said.budget),
    ...(said.kit !== null && price !== null && kits.has(said.kit) ? { box: { kit: said.kit, price } } : {}),
  };
}

function known<Value>(said: Said<Value>): Value | null {
  return said === "unknown" ? null : said;
}
