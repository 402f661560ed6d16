// A whole class file from the first six answers, each of which may be "I do not know yet".
//
// What is not known is assumed, and every assumption is told as data, so that the teacher can see and change it. A cupboard of
// which nothing is known is empty: what must be bought is seen better so. It is built by changes, so their checks are its checks.
// Does not know: sentences, fields, the clock.
import { addDays, type Day, type Money, parseDay, weekday } from "../../base/index.ts";
import { type ClassFile, isId, type Kit, type Pupil, teamSizes } from "../file/index.ts";
import { applyChange } from "./applyChange.ts";
import type { Change } from "./change.ts";
import { decimalsOf, tidyName } from "./changeShape.ts";
import type { ChangesProblem } from "./changesProblem.ts";
import { freshIds } from "./freshId.ts";

/** The answers; null is "I do not know yet". */
export interface FirstAnswers {
  readonly pupils:
    | { readonly count: number; readonly teamSize?: number }
    | { readonly list: readonly Pupil[]; readonly teamSize?: number }
    | null;
  /** First day, time, and how many weeks lie between two lessons (1 where not said). Days of the week: 1 Monday to 7 Sunday. */
  readonly when: {
    readonly first: Day;
    /** Minutes after midnight. */
    readonly start: number;
    readonly weeks?: number;
    /** Days of the week with a lesson; that of the first day where not said. */
    readonly weekdays?: readonly number[];
    /** How long a lesson of the school is. */
    readonly minutes?: number;
  } | null;
  /** Ids in the order wished. */
  readonly lessons: readonly string[] | null;
  readonly boxes: readonly { readonly kit: string; readonly count: number }[] | null;
  readonly computers: { readonly count: number; readonly usbMilliamps?: number } | null;
  readonly money: {
    readonly currency: string;
    readonly decimals?: number;
    readonly budget: Money | null;
    /** What a box costs there, if known. */
    readonly box?: { readonly kit: string; readonly price: Money };
  } | null;
}

/** What is said in the class's language, and the day from which an unknown first lesson is reckoned. */
export interface NewClassWords {
  readonly language: string;
  /** Name of a pupil who has none yet, by number from 1: "Pupil 1". */
  readonly pupil: (number: number) => string;
  /** Name of the class. */
  readonly class: string;
  /** Name of a shop that nobody named. */
  readonly shop: string;
  readonly today: Day;
  /** Currency where none is said, ISO 4217. */
  readonly currency: string;
}

/** What comes with Benchday; lessons in the order in which they are usually taught. */
export interface ShippedFacts {
  readonly kits: ReadonlyMap<string, Kit>;
  readonly lessons: ReadonlyMap<string, { readonly minutes: number; readonly needs: readonly string[] }>;
}

/** What was taken for granted. Each is a text `assumed.<code>`. */
export type Assumed =
  | { readonly code: "pupils"; readonly data: { readonly count: number } }
  | { readonly code: "names"; readonly data: { readonly count: number } }
  | { readonly code: "teamSize"; readonly data: { readonly count: number } }
  | { readonly code: "when"; readonly data: { readonly date: Day; readonly clock: number } }
  | { readonly code: "weekly"; readonly data: { readonly count: number } }
  | { readonly code: "noHolidays"; readonly data: { readonly date: Day } }
  | { readonly code: "lessons"; readonly data: { readonly lessons: readonly string[] } }
  /** Lessons that others build on were put in, or put earlier. */
  | { readonly code: "earlierLessons"; readonly data: { readonly lessons: readonly string[] } }
  | { readonly code: "longLessons"; readonly data: { readonly lessons: readonly string[]; readonly minutes: number } }
  | { readonly code: "noBoxes"; readonly data: Record<string, never> }
  | { readonly code: "computers"; readonly data: { readonly count: number } }
  | { readonly code: "batteryUnknown"; readonly data: { readonly count: number } }
  | { readonly code: "usbPorts"; readonly data: { readonly milliamps: number } }
  | { readonly code: "sockets"; readonly data: { readonly count: number } }
  | { readonly code: "currency"; readonly data: { readonly currency: string } }
  /** Days from an order to the things. */
  | { readonly code: "delivery"; readonly data: { readonly count: number } }
  | { readonly code: "noLimit"; readonly data: { readonly currency: string } }
  | { readonly code: "chance"; readonly data: { readonly chance: number } };
export type AssumedCode = Assumed["code"];

/** A usual class of beginners and its teams, and a week from an order to the box (common practice, no source). */
const usual = { pupils: 30, teamSize: 3, start: 9 * 60, chance: 0.95, milliamps: 500, deliveryDays: 7 } as const;

type Assume = (fact: Assumed) => void;
interface Refusal {
  readonly problem: ChangesProblem;
}

/** @returns the class file with what was assumed for it, or the first answer that does not fit. Never throws. */
export function newClassFile(
  answers: FirstAnswers,
  shipped: ShippedFacts,
  words: NewClassWords,
): { readonly value: ClassFile; readonly assumed: readonly Assumed[] } | Refusal {
  const wrong = findWrong(answers, words);
  if (wrong) return { problem: wrong };
  const assumed: Assumed[] = [];
  const assume: Assume = (fact) => assumed.push(fact);
  const { money, boxes } = answers;
  const name = tidyName(words.class);
  // Papers and commands call a class by its id.
  const group = isId(name) ? name : "1";
  const pupils = pupilsOf(answers.pupils, words, assume);
  const teamSize = answers.pupils?.teamSize ?? usual.teamSize;
  if (answers.pupils?.teamSize === undefined) assume({ code: "teamSize", data: { count: teamSize } });
  const order = teachingOrder(answers.lessons, shipped.lessons, assume);
  const lessons = meetings(answers.when, order, shipped, words.today, assume);
  if (boxes === null) assume({ code: "noBoxes", data: {} });
  const teams = Math.max(1, Math.ceil(pupils.length / teamSize));
  const computers = computersOf(answers.computers, teams, assume);
  // Nobody is asked for sockets. None would say that nothing can be charged; one for each computer takes nothing away.
  const sockets = computers.length > 0 ? computers.length : teams;
  assume({ code: "sockets", data: { count: sockets } });
  const currency = money?.currency ?? words.currency;
  if (money === null) assume({ code: "currency", data: { currency } });
  if (money?.box) assume({ code: "delivery", data: { count: usual.deliveryDays } });
  if (money === null || money.budget === null) assume({ code: "noLimit", data: { currency } });
  assume({ code: "chance", data: { chance: usual.chance } });
  const changes: Change[] = [
    { kind: "set-language", language: words.language },
    { kind: "set-currency", currency, decimals: money?.decimals ?? decimalsOf(currency) },
    { kind: "set-budget", budget: money?.budget ?? null },
    { kind: "set-room", room: { name: "", sockets, lux: null } },
    { kind: "add-class", id: group, name: words.class, teamSize },
    { kind: "take-roster", class: group, pupils },
    ...lessons.map(({ lesson, date, start }): Change => ({ kind: "add-lesson", sitting: { class: group, lesson, date }, start })),
    ...(boxes ?? []).map(({ kit, count }): Change => ({ kind: "set-kit", kit, count })),
    ...computers,
    ...(money?.box ? [shop(money.box, words)] : []),
  ];
  const lessonMinutes = new Map([...shipped.lessons].map(([id, { minutes }]) => [id, minutes]));
  let value = blank(currency);
  for (const change of changes) {
    const outcome = applyChange(value, change, { kits: shipped.kits, lessonMinutes });
    if ("problem" in outcome) return outcome;
    value = outcome.value;
  }
  return { value, assumed };
}

/** What would not even let the changes be made. */
function findWrong({ pupils, when, computers }: FirstAnswers, { today }: NewClassWords): ChangesProblem | null {
  const isCount = (n: number, least: number, most: number) => Number.isInteger(n) && n >= least && n <= most;
  const count = pupils && "count" in pupils ? pupils.count : 1;
  if (!isCount(count, 1, 2000)) return { code: "changes.badCount", found: String(count) };
  const size = pupils?.teamSize ?? usual.teamSize;
  if (!isCount(size, teamSizes.least, teamSizes.most)) return { code: "changes.badTeamSize", found: String(size), ...teamSizes };
  if (computers && !isCount(computers.count, 0, 1000)) return { code: "changes.badCount", found: String(computers.count) };
  for (const day of [today, when?.first ?? today])
    if (!/^2[01]/.test(String(day)) || parseDay(day) === null) return { code: "changes.badDay", found: String(day).slice(0, 60) };
  const weeks = when?.weeks ?? 1;
  if (!isCount(weeks, 1, 52)) return { code: "changes.badCount", found: String(weeks) };
  for (const n of when?.weekdays ?? []) if (!isCount(n, 1, 7)) return { code: "changes.badCount", found: String(n) };
  return null;
}

/** A class file that says nothing yet. It has no class, so it is not to be kept as it is. */
function blank(currency: string): ClassFile {
  return {
    format: "benchday-class/1",
    about: "",
    lessonFolder: null,
    kitFolder: null,
    language: "en",
    currency,
    decimals: decimalsOf(currency),
    chance: usual.chance,
    budget: null,
    room: { name: "", sockets: 0, lux: null },
    classes: [],
    kits: [],
    stock: [],
    movements: [],
    suppliers: [],
    computers: [],
    boards: [],
    cables: [],
    supplies: [],
    powerCuts: [],
    decisions: [],
    counts: [],
    log: [],
  };
}

function pupilsOf(said: FirstAnswers["pupils"], { pupil }: NewClassWords, assume: Assume): readonly Pupil[] {
  if (said && "list" in said) return said.list;
  const count = said?.count ?? usual.pupils;
  if (!said) assume({ code: "pupils", data: { count } });
  assume({ code: "names", data: { count } });
  const next = freshIds("pupils new", [], count > 99 ? "p001" : "p01");
  return Array.from({ length: count }, (_, i) => ({ id: next(), name: pupil(i + 1), marks: {} }));
}

/** The lessons wished, each after those that it builds on; all that there are where none is wished. */
function teachingOrder(wished: readonly string[] | null, lessons: ShippedFacts["lessons"], assume: Assume): readonly string[] {
  const order: string[] = [];
  const waiting = new Set<string>();
  const take = (id: string) => {
    // A lesson that waits for itself is taken where it stands.
    if (order.includes(id) || waiting.has(id)) return;
    waiting.add(id);
    for (const need of lessons.get(id)?.needs ?? []) if (lessons.has(need)) take(need);
    order.push(id);
  };
  const asked = [...new Set(wished ?? lessons.keys())];
  asked.forEach(take);
  if (wished === null) assume({ code: "lessons", data: { lessons: order } });
  else {
    const earlier = order.filter(
      (id, i) => !asked.includes(id) || asked.some((other, n) => n < asked.indexOf(id) && order.indexOf(other) > i),
    );
    if (earlier.length > 0) assume({ code: "earlierLessons", data: { lessons: earlier } });
  }
  return order;
}

function meetings(
  said: FirstAnswers["when"],
  lessons: readonly string[],
  shipped: ShippedFacts,
  today: Day,
  assume: Assume,
): readonly { readonly lesson: string; readonly date: Day; readonly start: number }[] {
  // Two weeks leave time to order (common practice, no source); the Monday after them begins a week.
  const soon = addDays(today, 14 + ((8 - weekday(today)) % 7));
  const { first, start, weeks, weekdays, minutes } = said ?? { first: soon, start: usual.start };
  if (!said) assume({ code: "when", data: { date: first, clock: start } });
  if (weeks === undefined) assume({ code: "weekly", data: { count: 1 } });
  const days = weekdays && weekdays.length > 0 ? [...new Set(weekdays)].sort((a, b) => a - b) : [weekday(first)];
  const monday = addDays(first, 1 - weekday(first));
  const dates: Day[] = [];
  for (let week = 0; dates.length < lessons.length; week += weeks ?? 1)
    for (const day of days) {
      const date = addDays(monday, 7 * week + day - 1);
      if (date >= first && dates.length < lessons.length) dates.push(date);
    }
  const last = dates.at(-1);
  if (last !== undefined && last !== first) assume({ code: "noHolidays", data: { date: last } });
  const long = lessons.filter((id) => minutes !== undefined && (shipped.lessons.get(id)?.minutes ?? 0) > minutes);
  if (long.length > 0) assume({ code: "longLessons", data: { lessons: long, minutes: minutes ?? 0 } });
  return lessons.map((lesson, i) => ({ lesson, date: dates[i] ?? first, start }));
}

function computersOf(said: FirstAnswers["computers"], teams: number, assume: Assume): readonly Change[] {
  const count = said?.count ?? teams;
  const usbMilliamps = said?.usbMilliamps ?? usual.milliamps;
  if (!said) assume({ code: "computers", data: { count } });
  if (count === 0) return [];
  assume({ code: "batteryUnknown", data: { count } });
  if (said?.usbMilliamps === undefined) assume({ code: "usbPorts", data: { milliamps: usbMilliamps } });
  const next = freshIds("computers", [], count > 99 ? "computer-001" : "computer-01");
  return Array.from({ length: count }, () => ({
    kind: "set-computer",
    computer: { id: next(), works: true, batteryMinutes: null, usbMilliamps, usbPorts: 2, note: "" },
  }));
}

function shop(box: { readonly kit: string; readonly price: Money }, words: NewClassWords): Change {
  const contains = { kind: "kit", kit: box.kit } as const;
  const offers = [{ id: box.kit, contains, price: box.price, available: null }];
  return {
    kind: "set-supplier",
    supplier: { id: "shop-1", name: words.shop, shipping: 0, freeFrom: null, days: usual.deliveryDays, offers },
  };
}
