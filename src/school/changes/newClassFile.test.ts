// A class file from six answers: what is said stands in it, what is not known is assumed and told, and it can always be read.
//
// The shipped lessons and kits of the cases are the project's own. To add a case, add a row: answers, what the file must hold,
// which codes must be among the assumptions.
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { sample } from "../../../test/sample.ts";
import { type Day, seededRandom } from "../../base/index.ts";
import { type ClassFile, readClassFile, readKit, writeClassFile } from "../file/index.ts";
import { type AssumedCode, type FirstAnswers, type NewClassWords, newClassFile, type ShippedFacts } from "./newClassFile.ts";
import { nastyTexts } from "./randomChange.fixture.ts";

const read = (path: string) => readFileSync(new URL(`../../../${path}`, import.meta.url), "utf8");
const shipped: ShippedFacts = {
  kits: new Map(["harbour-basic", "harbour-plain"].map((id) => [id, readKit(id, read(`kits/${id}.yaml`)).value!] as const)),
  lessons: new Map([
    ["barrier", { minutes: 90, needs: ["signal-lamp", "quay-lamp"] }],
    ["lighthouse", { minutes: 90, needs: [] }],
    ["signal-lamp", { minutes: 60, needs: ["lighthouse"] }],
    ["quay-lamp", { minutes: 90, needs: ["lighthouse"] }],
  ]),
};
const lessonMinutes = new Map([...shipped.lessons].map(([id, { minutes }]) => [id, minutes]));
const words: NewClassWords = {
  language: "fr",
  pupil: (number) => `Élève ${number}`,
  class: "Ma classe",
  shop: "Mon magasin",
  // A Wednesday.
  today: "2027-01-06" as Day,
  currency: "EUR",
};
const unknown: FirstAnswers = { pupils: null, when: null, lessons: null, boxes: null, computers: null, money: null };
const first = "2027-02-02" as Day; // a Tuesday
const roster = [
  { id: "a7", name: "Awa", marks: { reads: 2 } },
  { id: "a8", name: "Bo", marks: {} },
];

const cases: [
  name: string,
  answers: Partial<FirstAnswers>,
  file: object,
  assumed: readonly AssumedCode[],
  not: readonly AssumedCode[],
][] = [
  [
    "nothing known",
    {},
    // 30 pupils in threes: ten computers, and a socket for each.
    { language: "fr", currency: "EUR", budget: null, chance: 0.95, kits: [], stock: [], boards: [], room: { sockets: 10 } },
    [
      ...(["pupils", "names", "teamSize", "when", "weekly", "lessons", "noBoxes", "computers", "batteryUnknown"] as const),
      ...(["usbPorts", "sockets", "currency", "noLimit"] as const),
    ],
    ["earlierLessons", "delivery"],
  ],
  [
    "pupils counted",
    { pupils: { count: 7, teamSize: 4 } },
    { classes: [{ teamSize: 4, pupils: { length: 7, 0: { id: "p01", name: "Élève 1" }, 6: { id: "p07", name: "Élève 7" } } }] },
    ["names"],
    ["pupils", "teamSize"],
  ],
  [
    "pupils by name",
    { pupils: { list: roster } },
    { classes: [{ teamSize: 3, pupils: roster }] },
    ["teamSize"],
    ["names", "pupils"],
  ],
  [
    "a first day, every second week",
    { when: { first, start: 615, weeks: 2 }, lessons: ["lighthouse", "signal-lamp"] },
    {
      classes: [
        {
          lessons: [
            { date: "2027-02-02", start: 615 },
            { date: "2027-02-16", start: 615 },
          ],
        },
      ],
    },
    ["noHolidays"],
    ["when", "weekly", "lessons"],
  ],
  [
    "Mondays and Thursdays from a Tuesday on",
    { when: { first, start: 540, weekdays: [4, 1] }, lessons: ["lighthouse", "signal-lamp", "quay-lamp"] },
    { classes: [{ lessons: [{ date: "2027-02-04" }, { date: "2027-02-08" }, { date: "2027-02-11" }] }] },
    ["weekly"],
    [],
  ],
  [
    "no day known: a Monday that leaves two weeks",
    { lessons: ["lighthouse"] },
    { classes: [{ lessons: [{ lesson: "lighthouse", date: "2027-01-25", start: 540 }] }] },
    ["when"],
    ["noHolidays"],
  ],
  [
    "the last lesson alone brings what it builds on",
    { lessons: ["barrier"] },
    {
      classes: [
        { lessons: [{ lesson: "lighthouse" }, { lesson: "signal-lamp" }, { lesson: "quay-lamp" }, { lesson: "barrier" }] },
      ],
    },
    ["earlierLessons"],
    ["lessons"],
  ],
  [
    "an order against the grain is turned",
    { lessons: ["signal-lamp", "lighthouse"] },
    { classes: [{ lessons: [{ lesson: "lighthouse" }, { lesson: "signal-lamp" }] }] },
    ["earlierLessons"],
    [],
  ],
  ["no lesson", { lessons: [] }, { classes: [{ lessons: [] }] }, [], ["lessons", "noHolidays"]],
  ["lessons longer than the school's", { when: { first, start: 540, minutes: 60 } }, {}, ["longLessons"], []],
  ["boxes", { boxes: [{ kit: "harbour-basic", count: 6 }] }, { kits: [{ kit: "harbour-basic", count: 6 }] }, [], ["noBoxes"]],
  [
    "computers with USB 3",
    { computers: { count: 2, usbMilliamps: 900 } },
    {
      computers: [
        { id: "computer-01", works: true, batteryMinutes: null, usbMilliamps: 900, usbPorts: 2 },
        { id: "computer-02", usbMilliamps: 900 },
      ],
    },
    ["batteryUnknown"],
    ["usbPorts", "computers"],
  ],
  [
    "no computer: a socket for each of three teams",
    { pupils: { count: 9 }, computers: { count: 0 } },
    { computers: [], room: { sockets: 3 } },
    ["sockets"],
    ["computers", "batteryUnknown", "usbPorts"],
  ],
  [
    "money, and what a box costs",
    { money: { currency: "JPY", budget: 20_000, box: { kit: "harbour-basic", price: 5400 } } },
    {
      currency: "JPY",
      decimals: 0,
      budget: 20_000,
      suppliers: [{ name: "Mon magasin", days: 7, offers: [{ contains: { kind: "kit", kit: "harbour-basic" }, price: 5400 }] }],
    },
    ["delivery"],
    ["noLimit", "currency"],
  ],
];

describe("answers", () => {
  for (const [name, answers, file, assumed, not] of cases)
    test(name, () => {
      const outcome = newClassFile({ ...unknown, ...answers }, shipped, words);
      if ("problem" in outcome) throw new Error(JSON.stringify(outcome.problem));
      expect(outcome.value).toMatchObject(file);
      const codes = outcome.assumed.map(({ code }) => code);
      expect(assumed.filter((code) => !codes.includes(code))).toEqual([]);
      expect(not.filter((code) => codes.includes(code))).toEqual([]);
      expect(new Set(codes).size).toBe(codes.length);
      expectReadable(outcome.value);
    });
});

const wrong: [name: string, answers: Partial<FirstAnswers>, code: string][] = [
  ["no pupil", { pupils: { count: 0 } }, "changes.badCount"],
  ["half a pupil", { pupils: { count: 2.5 } }, "changes.badCount"],
  ["a billion pupils", { pupils: { count: 1e9 } }, "changes.badCount"],
  ["a team of nobody", { pupils: { count: 9, teamSize: 0 } }, "changes.badTeamSize"],
  ["a team of nine", { pupils: { count: 9, teamSize: 9 } }, "changes.badTeamSize"],
  ["a nameless pupil", { pupils: { list: [{ id: "1", name: " ", marks: {} }] } }, "changes.emptyName"],
  ["a day that does not exist", { when: { first: "2027-02-30" as Day, start: 540 } }, "changes.badDay"],
  ["the year 999999", { when: { first: "+999999-01-01" as Day, start: 540 } }, "changes.badDay"],
  ["the last week that there is, and after it", { when: { first: "2199-12-31" as Day, start: 540 } }, "changes.badDay"],
  ["25 o'clock", { when: { first, start: 1500 } }, "changes.badTime"],
  ["no weeks between", { when: { first, start: 540, weeks: 0 } }, "changes.badCount"],
  ["an eighth day of the week", { when: { first, start: 540, weekdays: [8] } }, "changes.badCount"],
  ["a lesson that is not there", { lessons: ["lighthous"] }, "changes.unknownLesson"],
  ["a kit that is not there", { boxes: [{ kit: "harbour", count: 1 }] }, "changes.unknownKit"],
  ["a million computers", { computers: { count: 1_000_000 } }, "changes.badCount"],
  ["a port without current", { computers: { count: 1, usbMilliamps: 0 } }, "changes.badCount"],
  ["no such money", { money: { currency: "EURO", budget: null } }, "changes.badCurrency"],
  ["less than nothing to spend", { money: { currency: "EUR", budget: -1 } }, "changes.badSum"],
  [
    "a price of a kit that is not there",
    { money: { currency: "EUR", budget: 1, box: { kit: "x", price: 1 } } },
    "changes.unknownKit",
  ],
];
describe("answers that do not fit", () => {
  for (const [name, answers, code] of wrong)
    test(`${name}: ${code}`, () =>
      expect(newClassFile({ ...unknown, ...answers }, shipped, words)).toMatchObject({ problem: { code } }));
});

test("lessons that wait for each other are taken as they come", () => {
  const lessons = new Map([
    ["a", { minutes: 60, needs: ["b"] }],
    ["b", { minutes: 60, needs: ["a"] }],
    ["c", { minutes: 60, needs: ["c", "nowhere"] }],
  ]);
  const outcome = newClassFile(unknown, { ...shipped, lessons }, words);
  if ("problem" in outcome) throw new Error(outcome.problem.code);
  expect(outcome.value.classes[0]!.lessons.map(({ lesson }) => lesson).sort()).toEqual(["a", "b", "c"]);
});

test("a class is called by its name where that can be an id, else by a number", () => {
  for (const [name, id] of [
    ["7b", "7b"],
    ["Ma classe", "Ma classe"],
    ["7/b", "1"],
    ["__proto__", "1"],
  ] as const) {
    const outcome = newClassFile(unknown, shipped, { ...words, class: name });
    expect("value" in outcome ? outcome.value.classes.map((g) => [g.id, g.name]) : null).toEqual([[id, name]]);
  }
});

test("any six answers make a class file that can be read, or are refused", () => {
  const random = seededRandom(20_261_125, "answers");
  const pick = <T>(list: readonly T[]): T => list[random.int(0, list.length - 1)] as T;
  const maybe = <T>(value: T): T | null => (random.next() < 0.3 ? null : value);
  const text = () => pick(nastyTexts);
  const number = () => pick([0, 1, 2, 3, 7, 30, 60, -1, 0.5, Number.NaN, 1e12]);
  const ids = [...shipped.lessons.keys()];
  let made = 0;
  for (let n = 0; n < sample(300, 5_000); n += 1) {
    const isNice = random.next() < 0.7;
    const count = () => (isNice ? random.int(1, 40) : number());
    const answers: FirstAnswers = {
      pupils: maybe(
        random.next() < 0.5
          ? { count: count(), teamSize: isNice ? random.int(2, 6) : number() }
          : {
              list: [
                { id: pick(["p1", "p2"]), name: isNice ? "Awa" : text(), marks: isNice ? { reads: 1 } : { [text()]: number() } },
              ],
            },
      ),
      when: maybe({
        first: (isNice ? first : pick([text(), first])) as Day,
        start: isNice ? 540 : number(),
        weeks: isNice ? random.int(1, 3) : number(),
        weekdays: isNice ? [2, 4] : [number()],
      }),
      lessons: maybe(
        random
          .shuffled(ids)
          .slice(random.int(0, 3))
          .concat(isNice ? [] : [text()]),
      ),
      boxes: maybe([{ kit: isNice ? "harbour-plain" : text(), count: count() }]),
      computers: maybe({ count: count() }),
      money: maybe({ currency: isNice ? "EUR" : text(), budget: maybe(isNice ? 10_000 : number()) }),
    };
    const outcome = newClassFile(answers, shipped, { ...words, class: isNice ? "7b" : text(), shop: isNice ? "Shop" : text() });
    if ("problem" in outcome) {
      expect(outcome.problem.code).toMatch(/^changes\./);
      continue;
    }
    made += 1;
    expectReadable(outcome.value);
  }
  expect(made).toBeGreaterThan(100);
});

function expectReadable(file: ClassFile): void {
  const again = readClassFile("class.json", writeClassFile(file), { kits: shipped.kits, lessonMinutes });
  expect(again.problems.filter((p) => p.severity !== "warning")).toEqual([]);
  expect(again.value).toEqual(file);
}
