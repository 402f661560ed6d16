// The six answers through their note: whatever the note holds, reading gives answers and never throws.
import { expect, test } from "vitest";
import type { Day } from "../../../base/index.ts";
import { type Answers, nextQuestion, noAnswers, readAnswers, writeAnswers } from "./answers.ts";

const whole: Answers = {
  pupils: { count: 30, teamSize: 3 },
  meeting: { first: "2027-01-14" as Day, start: 540, minutes: 80, weeks: 1 },
  lessons: ["lighthouse", "signal-lamp"],
  boxes: [{ kit: "harbour-basic", count: 6 }],
  computers: { count: 10 },
  money: { currency: "EUR", budget: "150.00", kit: "harbour-basic", price: "34.00" },
};

const roundTrips: [name: string, answers: Answers][] = [
  ["nothing said", noAnswers],
  ["all said", whole],
  ["all unknown", Object.fromEntries(Object.keys(noAnswers).map((name) => [name, "unknown"])) as unknown as Answers],
  ["no boxes at all", { ...noAnswers, boxes: [] }],
  ["money without sums", { ...noAnswers, money: { currency: "JPY", budget: null, kit: null, price: null } }],
];
for (const [name, answers] of roundTrips)
  test(`${name}: written and read again it is the same`, () => expect(readAnswers(writeAnswers(answers))).toEqual(answers));

const notes: [name: string, note: string | null][] = [
  ["no note", null],
  ["an empty note", ""],
  ["a note that was cut", writeAnswers(whole).slice(0, 5)],
  ["a list", "[1, 2]"],
  ["a number", "7"],
  ["pupils as text", '{"pupils": "thirty"}'],
  ["more pupils than a class has", '{"pupils": {"count": 3000, "teamSize": 3}}'],
  ["half a pupil", '{"pupils": {"count": 12.5, "teamSize": 3}}'],
  ["a day that does not exist", '{"meeting": {"first": "2027-02-30", "start": 540, "minutes": 80, "weeks": 1}}'],
  ["a time after midnight", '{"meeting": {"first": "2027-02-20", "start": 1440, "minutes": 80, "weeks": 1}}'],
  ["lessons that are numbers", '{"lessons": [1]}'],
  ["boxes below nought", '{"boxes": [{"kit": "harbour-basic", "count": -1}]}'],
  ["a currency that does not exist", '{"money": {"currency": "EURO", "budget": null, "kit": null, "price": null}}'],
  ["names that objects have", '{"__proto__": {"pupils": "unknown"}}'],
];
for (const [name, note] of notes) test(`${name}: nothing is answered`, () => expect(readAnswers(note)).toEqual(noAnswers));

test("a sum that is none is left out, the rest of the answer stays", () =>
  expect(readAnswers('{"money": {"currency": "EUR", "budget": "lots", "kit": null, "price": "3.40"}}').money).toEqual({
    currency: "EUR",
    budget: null,
    kit: null,
    price: "3.40",
  }));

const next: [name: string, answers: Answers, question: number | null][] = [
  ["nothing said", noAnswers, 1],
  ["the first said", { ...noAnswers, pupils: whole.pupils }, 2],
  ["not known counts as said", { ...noAnswers, pupils: "unknown", meeting: "unknown" }, 3],
  ["the second left out", { ...whole, meeting: null }, 2],
  ["all said", whole, null],
];
for (const [name, answers, question] of next)
  test(`next question after: ${name}`, () => expect(nextQuestion(answers)).toBe(question));
