// The six first answers: what a new teacher said, what is still open, and how it is written down between two visits.
//
// They lie in a note of this computer until the class is kept. A note may be old, cut or changed by hand: what does not have
// the shape of an answer counts as not answered. "unknown" is an answer too: *I do not know yet*.
// Does not know: fields, sentences, what is made of the answers.
import { currencyDecimals, type Day, parseDay, parseMoney } from "../../../base/index.ts";

export const questionNames = ["pupils", "meeting", "lessons", "boxes", "computers", "money"] as const;
export type QuestionName = (typeof questionNames)[number];

/** Not asked yet, *I do not know yet*, or what was said. */
export type Said<Value> = Value | "unknown" | null;

export interface Answers {
  readonly pupils: Said<{ readonly count: number; readonly teamSize: number }>;
  /** First lesson, when it begins (minutes after midnight), how long a lesson of the school is, weeks from one to the next. */
  readonly meeting: Said<{ readonly first: Day; readonly start: number; readonly minutes: number; readonly weeks: number }>;
  /** Ids, in the order in which they are taught. */
  readonly lessons: Said<readonly string[]>;
  /** How many boxes of each kit there are; an empty list: nothing yet. */
  readonly boxes: Said<readonly { readonly kit: string; readonly count: number }[]>;
  readonly computers: Said<{ readonly count: number }>;
  /** Sums as text, with the point: "150.00". `price` is what one box of `kit` costs there. */
  readonly money: Said<{
    readonly currency: string;
    readonly budget: string | null;
    readonly kit: string | null;
    readonly price: string | null;
  }>;
}

export const noAnswers: Answers = { pupils: null, meeting: null, lessons: null, boxes: null, computers: null, money: null };

/** Most that a class of beginners or a cupboard has; more is a slip of the finger. */
export const most = { pupils: 60, teamSize: 6, boxes: 100, computers: 100, weeks: 8, minutes: 300 } as const;
export const least = { pupils: 2, teamSize: 2, minutes: 10 } as const;

/** @returns the first question without an answer, from 1; null where all six have one. */
export function nextQuestion(answers: Answers): number | null {
  const open = questionNames.findIndex((name) => answers[name] === null);
  return open < 0 ? null : open + 1;
}

export function writeAnswers(answers: Answers): string {
  return JSON.stringify(answers);
}

/** Never throws: what is not an answer is not answered. */
export function readAnswers(text: string | null): Answers {
  const note = asRecord(parsed(text ?? ""));
  const said = <Value>(name: QuestionName, read: (value: unknown) => Value | null): Said<Value> =>
    note[name] === "unknown" ? "unknown" : read(note[name]);
  return {
    pupils: said("pupils", (value) => {
      const { count, teamSize } = asRecord(value);
      return isCount(count, least.pupils, most.pupils) && isCount(teamSize, least.teamSize, most.teamSize)
        ? { count, teamSize }
        : null;
    }),
    meeting: said("meeting", (value) => {
      const { first, start, minutes, weeks } = asRecord(value);
      const day = typeof first === "string" ? parseDay(first) : null;
      const isWhole =
        isCount(start, 0, 24 * 60 - 1) && isCount(minutes, least.minutes, most.minutes) && isCount(weeks, 1, most.weeks);
      return day !== null && isWhole
        ? ({ first: day, start, minutes, weeks } as { first: Day; start: number; minutes: number; weeks: number })
        : null;
    }),
    lessons: said("lessons", (value) => (isList(value) && value.every((id) => typeof id === "string") ? value : null)),
    boxes: said("boxes", (value) => {
      if (!isList(value)) return null;
      const boxes = value
        .map(asRecord)
        .flatMap(({ kit, count }) => (typeof kit === "string" && isCount(count, 1, most.boxes) ? [{ kit, count }] : []));
      return boxes.length === value.length ? boxes : null;
    }),
    computers: said("computers", (value) => {
      const { count } = asRecord(value);
      return isCount(count, 0, most.computers) ? { count } : null;
    }),
    money: said("money", (value) => {
      const { currency, budget, kit, price } = asRecord(value);
      const decimals = typeof currency === "string" ? currencyDecimals(currency) : null;
      if (typeof currency !== "string" || decimals === null) return null;
      const sum = (text: unknown) => (typeof text === "string" && parseMoney(text, decimals) !== null ? text : null);
      return { currency, budget: sum(budget), kit: typeof kit === "string" ? kit : null, price: sum(price) };
    }),
  };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

function asRecord(value: unknown): Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value) ? (value as Record<string, unknown>) : {};
}

function isList(value: unknown): value is readonly never[] {
  return Array.isArray(value);
}

function isCount(value: unknown, from: number, to: number): value is number {
  return typeof value === "number" && Number.isInteger(value) && value >= from && value <= to;
}
