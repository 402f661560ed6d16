// A class file made of the six answers, with what is assumed where a teacher does not know yet.
//
// What was not asked yet is assumed too, so that the engine has a whole class to plan from the first answer on. The assumptions
// are few, stand here in one list, and are told on the page with the place where each is refined.
// Does not know: sentences, the page.
import { addDays, currencyDecimals, type Day, parseMoney } from "../../../base/index.ts";
import { type Language, say } from "../../../language/index.ts";
import type { ClassFile, Supplier } from "../../../school/file/index.ts";
import type { Shipped } from "../../engine/engine.ts";
import { type Answers, type QuestionName, questionNames, type Said } from "./answers.ts";
import { teachingOrder } from "./teachingOrder.ts";

/** What stands in for an answer that nobody gave. Common practice, no source: the usual class of such lessons. */
export const assumed = {
  pupils: { count: 30, teamSize: 3 },
  /** Days from today to the first lesson: time to order. */
  daysUntilFirst: 28,
  start: 9 * 60,
  weeks: 1,
  currency: "EUR",
  /** Chance that every team works in a lesson. */
  chance: 0.95,
  /** Days from order to delivery at a shop of which only a price is known. */
  deliveryDays: 7,
  /** Ports and mA of a computer that nobody looked at (USB 2.0, high-power port). */
  usbPorts: 2,
  usbMilliamps: 500,
} as const;

/** @returns the questions whose answer is assumed so far. */
export function assumedQuestions(answers: Answers): QuestionName[] {
  return questionNames.filter((name) => answers[name] === "unknown");
}

/** The lessons of the answers; all that come with Benchday where nobody chose. Those that are not there any more are left out. */
export function lessonsOf(answers: Answers, shipped: Pick<Shipped, "lessons">): string[] {
  const order = teachingOrder(shipped.lessons);
  const chosen = known(answers.lessons);
  return chosen === null ? order : order.filter((id) => chosen.includes(id));
}

/** @param language for the names that nobody gave yet: "Pupil 1". */
export function classOf(answers: Answers, shipped: Pick<Shipped, "lessons" | "kits">, language: Language, today: Day): ClassFile {
  const { count, teamSize } = known(answers.pupils) ?? assumed.pupils;
  const meeting = known(answers.meeting);
  const first = meeting?.first ?? addDays(today, assumed.daysUntilFirst);
  const weeks = meeting?.weeks ?? assumed.weeks;
  const money = known(answers.money);
  const currency = money?.currency ?? assumed.currency;
  const decimals = currencyDecimals(currency) ?? 2;
  const teams = Math.ceil(count / teamSize);
  // Nobody knows yet: one for each team, so that the first answer speaks of the parts. What was said, also none, is taken.
  const computers = known(answers.computers)?.count ?? teams;
  const numbered = (stem: string, n: number) => `${stem}${String(n + 1).padStart(2, "0")}`;
  return {
    format: "benchday-class/1",
    about: say(language, "questions.about"),
    lessonFolder: null,
    kitFolder: null,
    language: language.tag,
    currency,
    decimals,
    chance: assumed.chance,
    budget: money?.budget == null ? null : parseMoney(money.budget, decimals),
    room: { name: "", sockets: 0, lux: null },
    classes: [
      {
        id: "class-1",
        name: say(language, "questions.className"),
        teamSize,
        pupils: Array.from({ length: count }, (_, n) => ({
          id: numbered("p", n),
          name: say(language, "questions.pupilName", { number: n + 1 }),
          marks: {},
        })),
        apart: [],
        together: [],
        balance: null,
        lessons: lessonsOf(answers, shipped).map((lesson, n) => ({
          lesson,
          date: addDays(first, 7 * weeks * n),
          start: meeting?.start ?? assumed.start,
          absent: [],
        })),
      },
    ],
    kits: (known(answers.boxes) ?? []).filter(({ kit }) => shipped.kits.has(kit)),
    stock: [],
    movements: [],
    suppliers: suppliersOf(answers, shipped, language, decimals),
    computers: Array.from({ length: computers }, (_, n) => ({
      id: numbered("computer-", n),
      works: true,
      batteryMinutes: null,
      usbMilliamps: assumed.usbMilliamps,
      usbPorts: assumed.usbPorts,
      note: "",
    })),
    boards: [],
    cables: [],
    supplies: [],
    powerCuts: [],
    decisions: [],
    counts: [],
    log: [],
  };
}

/** The one shop of which a price is known: the teacher's own. Prices that come with a kit are invented and never used. */
function suppliersOf(answers: Answers, { kits }: Pick<Shipped, "kits">, language: Language, decimals: number): Supplier[] {
  const money = known(answers.money);
  const price = money?.price == null ? null : parseMoney(money.price, decimals);
  if (money?.kit == null || price === null || !kits.has(money.kit)) return [];
  return [
    {
      id: "my-shop",
      name: say(language, "questions.shopName"),
      shipping: 0,
      freeFrom: null,
      days: assumed.deliveryDays,
      offers: [{ id: "box-1", contains: { kind: "kit", kit: money.kit }, price, available: null }],
    },
  ];
}

function known<Value>(said: Said<Value>): Value | null {
  return said === "unknown" ? null : said;
}
