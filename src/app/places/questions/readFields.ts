// What was typed on one of the six pages: an answer, or what is wrong with which field.
//
// Read only when the person goes on, never while typing. Codes are keys of the catalogue under `questionField`; what was
// found goes with them, so that the sentence can show it.
// Does not know: sentences, the page.
import { type Day, writeMoney } from "../../../base/index.ts";
import { latinDigits, readClock, readCount } from "../cupboard/readTyped.ts";
import { readCurrency } from "../order/readCurrency.ts";
import { readSum } from "../order/readSum.ts";
import { type Answers, least, most } from "./answers.ts";

export type FieldTrouble =
  /** found, least, most */
  "notACount" | "noDay" | "pastDay" | "noClock" | "noLesson" | "noCurrency" | "noSum" | "noKit";

export interface FieldProblem {
  readonly field: string;
  readonly code: FieldTrouble;
  readonly found: string;
  readonly least?: number;
  readonly most?: number;
}

export type ReadFields<Value> = { readonly value: Value } | { readonly problems: readonly FieldProblem[] };

/** What stands in the fields of a page, by the name of the field. */
export type Typed = Readonly<Record<string, string>>;

type Answered<Name extends keyof Answers> = Exclude<Answers[Name], null | "unknown">;

/** Fields: count, teamSize. */
export function readPupils(typed: Typed): ReadFields<Answered<"pupils">> {
  const form = new Form(typed);
  const count = form.count("count", least.pupils, most.pupils);
  const teamSize = form.count("teamSize", least.teamSize, most.teamSize);
  return form.answer(() => ({ count, teamSize }));
}

/**
 * Fields: first, start, minutes, weeks. A first lesson before today is a slip: there would be nothing to plan.
 *
 * @param first null where the three parts of the date make no day.
 */
export function readMeeting(first: Day | null, typed: Typed, today: Day): ReadFields<Answered<"meeting">> {
  const form = new Form(typed);
  if (first === null) form.tell("first", "noDay", "");
  else if (first < today) form.tell("first", "pastDay", first);
  const start = readClock(form.text("start"));
  if (start === null) form.tell("start", "noClock");
  const minutes = form.count("minutes", least.minutes, most.minutes);
  const weeks = form.count("weeks", 1, most.weeks);
  return form.answer(() => ({ first: first!, start: start!, minutes, weeks }));
}

/** @param wanted ids that were ticked, in the order of teaching. */
export function readLessons(wanted: readonly string[]): ReadFields<Answered<"lessons">> {
  return wanted.length > 0 ? { value: wanted } : { problems: [{ field: "lessons", code: "noLesson", found: "" }] };
}

/** Fields: one for each kit, by its id. An empty one is none. */
export function readBoxes(typed: Typed, kits: readonly string[]): ReadFields<Answered<"boxes">> {
  const form = new Form(typed);
  const boxes = kits.map((kit) => ({ kit, count: form.text(kit) === "" ? 0 : form.count(kit, 0, most.boxes) }));
  return form.answer(() => boxes.filter(({ count }) => count > 0));
}

/** Field: count. */
export function readComputers(typed: Typed): ReadFields<Answered<"computers">> {
  const form = new Form(typed);
  const count = form.count("count", 0, most.computers);
  return form.answer(() => ({ count }));
}

/** Fields: currency, budget and price (both may stay empty), kit. A price without its box, or the other way, is asked for. */
export function readMoney(typed: Typed): ReadFields<Answered<"money">> {
  const form = new Form(typed);
  const money = readCurrency(form.text("currency"));
  const currency = money?.currency ?? "";
  const decimals = money?.decimals ?? null;
  if (decimals === null) form.tell("currency", "noCurrency");
  const sum = (field: string): string | null => {
    const text = form.text(field);
    if (text === "" || decimals === null) return null;
    const read = readSum(text, decimals);
    if (read === null) form.tell(field, "noSum");
    return read === null ? null : writeMoney(read, decimals);
  };
  const budget = sum("budget");
  const price = sum("price");
  const kit = form.text("kit");
  if (price !== null && kit === "") form.tell("kit", "noKit", "");
  return form.answer(() => ({ currency, budget, kit: price === null ? null : kit, price }));
}

/** The fields of a page while they are read; gathers what is wrong. */
class Form {
  readonly #typed: Typed;
  readonly #problems: FieldProblem[] = [];

  constructor(typed: Typed) {
    this.#typed = typed;
  }

  text(field: string): string {
    return latinDigits(this.#typed[field] ?? "").trim();
  }

  count(field: string, from: number, to: number): number {
    const count = readCount(this.text(field));
    if (count !== null && count >= from && count <= to) return count;
    this.#problems.push({ field, code: "notACount", found: this.text(field), least: from, most: to });
    return from;
  }

  tell(field: string, code: FieldTrouble, found: string = this.text(field)): void {
    this.#problems.push({ field, code, found });
  }

  answer<Value>(make: () => Value): ReadFields<Value> {
    return this.#problems.length > 0 ? { problems: this.#problems } : { value: make() };
  }
}
