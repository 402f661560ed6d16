// What teachers type into the six pages, and what is understood. A new case is one line.
import { expect, test } from "vitest";
import type { Day } from "../../../base/index.ts";
import {
  type FieldTrouble,
  type ReadFields,
  readBoxes,
  readComputers,
  readLessons,
  readMeeting,
  readMoney,
  readPupils,
  type Typed,
} from "./readFields.ts";

const today = "2026-11-25" as Day;
const day = "2027-01-14" as Day;
const typed = { start: "9:00", minutes: "80", weeks: "1" };

const understood: [name: string, read: ReadFields<unknown>, value: unknown][] = [
  ["thirty in threes", readPupils({ count: "30", teamSize: "3" }), { count: 30, teamSize: 3 }],
  ["blanks around a number", readPupils({ count: " 30 ", teamSize: "3" }), { count: 30, teamSize: 3 }],
  ["Arabic digits", readPupils({ count: "٣٠", teamSize: "٣" }), { count: 30, teamSize: 3 }],
  ["a day", readMeeting(day, typed, today), { first: "2027-01-14", start: 540, minutes: 80, weeks: 1 }],
  ["today itself", readMeeting(today, typed, today), { first: today, start: 540, minutes: 80, weeks: 1 }],
  [
    "an hour alone",
    readMeeting(day, { ...typed, start: "13" }, today),
    { first: "2027-01-14", start: 780, minutes: 80, weeks: 1 },
  ],
  [
    "every second week",
    readMeeting(day, { ...typed, weeks: "2" }, today),
    { first: "2027-01-14", start: 540, minutes: 80, weeks: 2 },
  ],
  ["lessons", readLessons(["lighthouse"]), ["lighthouse"]],
  ["boxes of one kind", readBoxes({ a: "6", b: "" }, ["a", "b"]), [{ kit: "a", count: 6 }]],
  ["no boxes", readBoxes({ a: "", b: "0" }, ["a", "b"]), []],
  ["no computers", readComputers({ count: "0" }), { count: 0 }],
  [
    "a budget alone",
    readMoney({ currency: "eur", budget: "150", kit: "", price: "" }),
    { currency: "EUR", budget: "150.00", kit: null, price: null },
  ],
  [
    "a currency by its name",
    readMoney({ currency: "Euro", budget: "", kit: "", price: "" }),
    { currency: "EUR", budget: null, kit: null, price: null },
  ],
  [
    "a decimal comma",
    readMoney({ currency: "EUR", budget: "", kit: "a", price: "34,50" }),
    { currency: "EUR", budget: null, kit: "a", price: "34.50" },
  ],
  [
    "a currency without decimals",
    readMoney({ currency: "JPY", budget: "15000", kit: "", price: "" }),
    { currency: "JPY", budget: "15000", kit: null, price: null },
  ],
  [
    "a box without a price is no price",
    readMoney({ currency: "EUR", budget: "", kit: "a", price: "" }),
    { currency: "EUR", budget: null, kit: null, price: null },
  ],
];
for (const [name, read, value] of understood) test(name, () => expect(read).toEqual({ value }));

const refused: [name: string, read: ReadFields<unknown>, problems: [field: string, code: FieldTrouble][]][] = [
  ["no number of pupils", readPupils({ count: "", teamSize: "3" }), [["count", "notACount"]]],
  ["pupils in words", readPupils({ count: "thirty", teamSize: "3" }), [["count", "notACount"]]],
  ["a team of one", readPupils({ count: "30", teamSize: "1" }), [["teamSize", "notACount"]]],
  [
    "both wrong are told both",
    readPupils({ count: "0", teamSize: "x" } as Typed),
    [
      ["count", "notACount"],
      ["teamSize", "notACount"],
    ],
  ],
  ["no day", readMeeting(null, typed, today), [["first", "noDay"]]],
  ["yesterday", readMeeting("2026-11-24" as Day, typed, today), [["first", "pastDay"]]],
  ["no time", readMeeting(day, { ...typed, start: "25:00" }, today), [["start", "noClock"]]],
  ["a lesson of five minutes", readMeeting(day, { ...typed, minutes: "5" }, today), [["minutes", "notACount"]]],
  ["every week and a half", readMeeting(day, { ...typed, weeks: "1.5" }, today), [["weeks", "notACount"]]],
  ["no lesson ticked", readLessons([]), [["lessons", "noLesson"]]],
  ["boxes in words", readBoxes({ a: "six" }, ["a"]), [["a", "notACount"]]],
  ["a thousand computers", readComputers({ count: "1000" }), [["count", "notACount"]]],
  [
    "a currency of many countries",
    readMoney({ currency: "shillings", budget: "", kit: "", price: "" }),
    [["currency", "noCurrency"]],
  ],
  ["a sum that may be two things", readMoney({ currency: "EUR", budget: "1.234", kit: "", price: "" }), [["budget", "noSum"]]],
  ["a sum below nought", readMoney({ currency: "EUR", budget: "-5", kit: "", price: "" }), [["budget", "noSum"]]],
  ["a price of nothing", readMoney({ currency: "EUR", budget: "", kit: "", price: "34" }), [["kit", "noKit"]]],
];
for (const [name, read, problems] of refused)
  test(name, () => expect("problems" in read && read.problems.map(({ field, code }) => [field, code])).toEqual(problems));

test("what was found goes with the problem, with its bounds", () =>
  expect(readPupils({ count: "300", teamSize: "3" })).toEqual({
    problems: [{ field: "count", code: "notACount", found: "300", least: 2, most: 60 }],
  }));
