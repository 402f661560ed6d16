// Broken class files: what is wrong, where, and what was probably meant. Each case changes one thing in a small class file that
// is right; the mark ¦ shows where the problem must point. To add a case, add a line.
import { expect, test } from "vitest";
import { changed, mark, unmarked } from "../../../test/files/marked.ts";
import type { Kit } from "./classFile.ts";
import { readClassFile } from "./readClassFile.ts";
import { readKit } from "./readKit.ts";

const kitText = `format: benchday-kit/1
id: small
name: Small
contents: { led red: 3, resistor 330: 4, button: 2 }
`;
const kits: ReadonlyMap<string, Kit> = new Map([["small", readKit("small.yaml", kitText).value!]]);
const lessonMinutes = new Map([
  ["lighthouse", 80],
  ["barrier", 80],
]);

const right = `{
  "format": "benchday-class/1",
  "about": "a small class",
  "language": "en",
  "currency": "EUR",
  "chance": "95 %",
  "budget": "20.00",
  "room": { "name": "Room 1", "sockets": 4, "lux": 300 },
  "classes": [
    {
      "id": "7b",
      "teamSize": 3,
      "balance": "reads",
      "pupils": [
        { "id": "p1", "name": "Ana", "marks": { "reads": 2 } },
        { "id": "p2", "name": "Bo", "marks": { "reads": 1 } },
        { "id": "p3", "name": "Cleo", "marks": { "reads": 3 } },
        { "id": "p4", "name": "Dan", "marks": { "reads": 2 } },
        { "id": "p5", "name": "Efe", "marks": { "reads": 2 } },
        { "id": "p6", "name": "Fay", "marks": { "reads": 1 } }
      ],
      "apart": [
        ["p1", "p2"]
      ],
      "together": [
        ["p3", "p4"]
      ],
      "lessons": [
        { "lesson": "lighthouse", "date": "2027-01-12", "start": "09:00", "absent": ["p5"] },
        { "lesson": "barrier", "date": "2027-01-19", "start": "10:00" }
      ]
    }
  ],
  "kits": [
    { "kit": "small", "count": 2 }
  ],
  "stock": [
    { "item": "resistor 220", "count": 12, "box": "box 3, a7" },
    { "item": "led green", "count": 5 }
  ],
  "movements": [
    { "date": "2026-10-01", "item": "led red", "change": -4, "why": "lost" },
    { "date": "2026-10-02", "item": "led green", "change": 3, "why": "bought" }
  ],
  "suppliers": [
    {
      "id": "pier",
      "shipping": "4.90",
      "freeFrom": "60.00",
      "days": 5,
      "offers": [
        { "id": "led-20", "item": "led red", "count": 20, "price": "2.40" },
        { "id": "box", "kit": "small", "price": "30.00" }
      ]
    }
  ],
  "computers": [
    { "id": "laptop-1", "works": true, "batteryMinutes": 95, "usbMilliamps": 500, "usbPorts": 2 },
    { "id": "laptop-2", "works": false, "usbPorts": 0, "note": "ports torn off" }
  ],
  "boards": [
    { "id": "board-1", "works": true, "deadPins": ["D5", "A0"] }
  ],
  "cables": [
    { "id": "cable-1" }
  ],
  "supplies": [
    { "item": "battery-9v", "count": 4 }
  ],
  "powerCuts": [
    { "date": "2027-02-18", "from": "11:00", "to": "12:30" }
  ],
  "decisions": [
    { "kind": "substitute", "lesson": "lighthouse", "part": "R1", "item": "resistor 330", "date": "2026-11-20" },
    { "kind": "skip", "lesson": "barrier", "class": "7b", "date": "2026-11-21" }
  ],
  "counts": [
    { "date": "2026-11-17", "class": "7b", "lesson": "lighthouse", "item": "led red", "out": 10, "back": 8, "broken": 1 }
  ],
  "log": [
    { "date": "2026-11-17", "class": "7b", "lesson": "lighthouse", "team": 3, "what": "led-turned" }
  ]
}
`;

const read = (text: string) => readClassFile("class.json", text, { kits, lessonMinutes });

test("the small class file that every case changes is right", () => {
  const { value, problems } = read(right);
  expect(problems).toEqual([]);
  expect(value?.budget).toBe(2000);
  expect(value?.chance).toBe(0.95);
  expect(value?.classes[0]?.lessons[0]?.start).toBe(540);
  expect(value?.classes[0]?.name).toBe("7b");
  expect(value?.suppliers[0]?.offers[1]?.contains).toEqual({ kind: "kit", kit: "small" });
});

type Case = [name: string, from: string, to: string, code: string, data?: Record<string, unknown>];

const errors: Case[] = [
  // Notation
  ["cut in the middle of a word", right.slice(right.indexOf('Class"') + 200), mark, "document.cutOff"],
  ["cut after a comma", right.slice(right.indexOf('  "kits"')), mark, "document.cutOff"],
  ["an empty file", right, mark, "document.empty"],
  ["a missing comma", '"budget": "20.00",', `"budget": "20.00"`, "document.unexpected"],
  ["a comma too many", '{ "id": "cable-1" }', `{ "id": "cable-1" },¦`.replace("¦", ""), "document.unexpected"],
  ["a single quote", '"language": "en"', `"language": ¦'en'`, "document.unexpected", { found: "'" }],
  ["a number with a comma", '"sockets": 4', `"sockets": 4,¦5`, "document.unexpected"],
  ["a number with a plus", '"sockets": 4', `"sockets": ¦+4`, "document.unexpected"],
  ["a huge number", '"sockets": 4', `"sockets": ¦1e999`, "document.badNumber"],
  ["a field twice", '"language": "en",', `"language": "en", ¦"language": "fr",`, "document.twice", { firstLine: 4 }],
  ["a prototype key", '"sockets": 4', `"sockets": 4, ¦"__proto__": { "x": 1 }`, "document.badName", { found: "__proto__" }],
  ["a constructor key", '"marks": { "reads": 3 }', `"marks": { "reads": 3, ¦"constructor": 1 }`, "document.badName"],
  ["a text of 10 001 letters", '"a small class"', `¦"${"a".repeat(10_001)}"`, "document.longText", { most: 10_000 }],
  [
    "another file's text after it",
    '"team": 3, "what": "led-turned" }\n  ]\n}\n',
    `"what": "x" }\n  ]\n}\n¦{}`,
    "document.trailing",
  ],
  // Version
  ["next year's version", '"benchday-class/1"', `¦"benchday-class/2"`, "file.newerFormat", { found: "benchday-class/2" }],
  ["a lesson instead", '"benchday-class/1"', `¦"benchday-lesson/1"`, "file.otherFormat", { expected: "benchday-class/1" }],
  ["no version number", '"benchday-class/1"', `¦"benchday-class"`, "file.otherFormat"],
  ["version 0", '"benchday-class/1"', `¦"benchday-class/0"`, "file.otherFormat"],
  ["no format", '{\n  "format": "benchday-class/1",', "¦{", "document.missingField", { field: "format" }],
  ["format misspelt", '"format": "benchday-class/1"', `¦"fromat": "benchday-class/1"`, "document.missingField"],
  // Shape
  ["a misspelt field", '"teamSize": 3', `¦"teamsize": 3`, "document.unknownField", { field: "teamsize", near: "teamSize" }],
  ["a misspelt field of an entry", '"box": "box 3, a7"', `¦"boxx": "box 3"`, "document.unknownField", { near: "box" }],
  ["a field of another list", '{ "id": "cable-1" }', `{ "id": "cable-1", ¦"deadPins": [] }`, "document.unknownField"],
  ["a price as a number", '"price": "2.40"', `"price": ¦2.40`, "document.wrongType"],
  ["a price with its currency", '"price": "2.40"', `"price": ¦"2.40 EUR"`, "document.wrongValue", { expected: '"3.40"' }],
  ["a negative price", '"price": "2.40"', `"price": ¦"-2.40"`, "document.wrongValue"],
  ["negative stock", '"count": 12', `"count": ¦-12`, "document.wrongValue", { expected: ">=0", found: "-12" }],
  ["half a resistor", '"count": 12', `"count": ¦12.5`, "document.wrongValue"],
  ["a count as text", '"count": 12', `"count": ¦"12"`, "document.wrongType"],
  ["a packet of nothing", '"count": 20, "price"', `"count": ¦0, "price"`, "document.wrongValue", { expected: ">=1" }],
  ["a date in another order", '"2027-01-12"', `¦"12.01.2027"`, "document.wrongValue", { expected: "YYYY-MM-DD" }],
  ["a time without its nought", '"start": "09:00"', `"start": ¦"9:00"`, "document.wrongValue", { expected: "HH:MM" }],
  ["25 o'clock", '"start": "09:00"', `"start": ¦"25:00"`, "document.wrongValue"],
  ["a chance of 100 %", '"95 %"', `¦"100 %"`, "document.wrongValue", { expected: '"95 %"' }],
  ["a chance of 0 %", '"95 %"', `¦"0 %"`, "document.wrongValue"],
  ["a chance of 95", '"95 %"', "¦95", "document.wrongValue"],
  ["a chance without its sign", '"95 %"', `¦"95"`, "document.wrongValue"],
  ["an unknown reason", '"why": "lost"', `"why": ¦"lots"`, "document.wrongValue", { near: "lost" }],
  ["a pin that the board does not have", '"D5", "A0"', `"D5", ¦"D15"`, "document.wrongValue"],
  ["an id with a slash", '"id": "7b"', `"id": ¦"7/b"`, "document.wrongValue"],
  ["a pupil without a name", '"id": "p3", "name": "Cleo"', `"id": "p3", "name": ¦" "`, "document.wrongValue"],
  ["a name with a control character", '"name": "Cleo"', `"name": ¦"Cleo\\u0007"`, "document.wrongValue"],
  ["three pupils in a pair", '["p1", "p2"]', `¦["p1", "p2", "p3"]`, "document.wrongValue"],
  ["alone together", '["p3", "p4"]', `¦["p3"]`, "document.wrongValue"],
  ["an unknown kind of decision", '"kind": "skip"', `"kind": ¦"skipp"`, "document.wrongValue"],
  ["a language in words", '"language": "en"', `"language": ¦"English"`, "document.wrongValue"],
  // Sense
  ["a day that does not exist", '"2027-01-12"', `¦"2027-02-30"`, "file.noSuchDay", { found: "2027-02-30" }],
  ["a year with its figures swapped", '"2027-02-18"', `¦"0227-02-18"`, "file.noSuchDay", { found: "0227-02-18" }],
  ["29 February of a common year", '"2027-02-18"', `¦"2027-02-29"`, "file.noSuchDay"],
  ["an unknown currency", '"EUR"', `¦"EUE"`, "file.unknownCurrency", { found: "EUE", near: "EUR" }],
  ["a currency in small letters", '"EUR"', `¦"eur"`, "file.unknownCurrency", { near: "EUR" }],
  ["a third decimal of a euro", '"price": "2.40"', `"price": ¦"2.405"`, "file.tooFineSum", { decimals: 2 }],
  ["decimals of a yen", '"EUR",\n  "chance": "95 %",\n  "budget": "20.00"', `"JPY",\n  "budget": ¦"20.50"`, "file.tooFineSum"],
  ["no class", right.slice(right.indexOf('"classes": ['), right.indexOf('  "kits"')), `"classes": ¦[],\n`, "file.noClasses"],
  ["a team of one", '"teamSize": 3', `"teamSize": ¦1`, "file.teamSize", { found: 1, least: 2, most: 6 }],
  ["a team of seven", '"teamSize": 3', `"teamSize": ¦7`, "file.teamSize"],
  ["the same pupil id twice", '"id": "p6", "name"', `"id": ¦"p5", "name"`, "file.sameId", { what: "pupil", firstLine: 19 }],
  ["the same computer twice", '"laptop-2"', `¦"laptop-1"`, "file.sameId", { what: "computer" }],
  ["the same offer twice", '"id": "box"', `"id": ¦"led-20"`, "file.sameId", { what: "offer" }],
  ["a stranger apart", '["p1", "p2"]', `["p1", ¦"p9"]`, "file.unknownPupil", { where: "apart", found: "p9", near: "p1" }],
  ["a name instead of an id", '["p3", "p4"]', `["p3", ¦"Fay"]`, "file.unknownPupil", { where: "together", near: "p6" }],
  ["a stranger absent", '"absent": ["p5"]', `"absent": [¦"Zoe"]`, "file.unknownPupil", { where: "absent", near: null }],
  ["apart from oneself", '["p1", "p2"]', `["p1", ¦"p1"]`, "file.pairWithItself"],
  ["apart and together", '["p1", "p2"]', `¦["p4", "p3"]`, "file.apartAndTogether", { pupils: ["p4", "p3"], otherLine: 26 }],
  [
    "apart, and together by a chain",
    '["p1", "p2"]\n      ],\n      "together": [\n        ["p3", "p4"]',
    `¦["p1", "p3"]\n      ],\n      "together": [\n        ["p1", "p2"], ["p2", "p3"]`,
    "file.apartAndTogether",
  ],
  [
    "four together in a team of three",
    '["p3", "p4"]',
    `¦["p3", "p4", "p5", "p6"]`,
    "file.togetherTooMany",
    { found: 4, most: 3 },
  ],
  ["a mark that nobody has", '"balance": "reads"', `"balance": ¦"raeds"`, "file.unknownMark", { near: "reads" }],
  ["a lesson twice on a day", '"barrier", "date": "2027-01-19"', `¦"lighthouse", "date": "2027-01-12"`, "file.sameSitting"],
  [
    "two lessons at once",
    '"2027-01-19", "start": "10:00"',
    `"2027-01-12", "start": ¦"10:00"`,
    "file.lessonsOverlap",
    { other: "lighthouse", otherStart: "09:00", otherLine: 29 },
  ],
  ["an unknown lesson", '"lesson": "barrier", "date"', `"lesson": ¦"barier", "date"`, "file.unknownLesson", { near: "barrier" }],
  ["an unknown kit", '"kit": "small", "count"', `"kit": ¦"smal", "count"`, "file.unknownKit", { near: "small" }],
  ["an offer of an unknown kit", '"kit": "small", "price"', `"kit": ¦"large", "price"`, "file.unknownKit", { near: null }],
  ["an unknown item", '"resistor 220"', `¦"resitor 220"`, "file.unknownItem", { found: "resitor 220", near: "resistor 220" }],
  ["an item in other words", '"resistor 220"', `¦"220 Ω Resistor"`, "file.unknownItem", { near: "resistor 220" }],
  ["a resistor of no value", '"resistor 220"', `¦"resistor"`, "file.unknownItem", { near: "resistor" }],
  ["a colour misspelt", '"led green", "count"', `¦"led gren", "count"`, "file.unknownItem", { near: "led green" }],
  ["an item nobody knows", '"led green", "count"', `¦"teapot", "count"`, "file.unknownItem", { near: null }],
  ["a lamp as a supply", '"battery-9v"', `¦"led red"`, "file.notASupply"],
  [
    "an offer of nothing",
    '{ "id": "box", "kit": "small", "price"',
    `¦{ "id": "box", "price"`,
    "file.offerHolds",
    { found: "nothing" },
  ],
  [
    "an offer of two things",
    '{ "id": "box", "kit"',
    `¦{ "id": "box", "item": "led red", "kit"`,
    "file.offerHolds",
    { found: "both" },
  ],
  [
    "a packet of nobody knows how many",
    '{ "id": "led-20", "item": "led red", "count": 20',
    `¦{ "id": "led-20", "item": "led red"`,
    "file.offerWithoutCount",
  ],
  ["a kit with a count", '{ "id": "box", "kit": "small"', `¦{ "id": "box", "kit": "small", "count": 2`, "file.kitWithCount"],
  ["a computer with no ports", '"usbMilliamps": 500, "usbPorts": 2', `"usbPorts": ¦0`, "file.noPorts", { computer: "laptop-1" }],
  ["a power cut that ends before it begins", '"to": "12:30"', `"to": ¦"10:30"`, "file.timesBackwards"],
  ["more back than out", '"back": 8', `"back": ¦10`, "file.moreBackThanOut", { out: 10, back: 10, broken: 1 }],
  ["more lost than there were", '"change": -4', `"change": ¦-7`, "file.takesTooMany", { found: 7, there: 6, item: "led red" }],
  [
    "lost before it was bought",
    '{ "date": "2026-10-01", "item": "led red", "change": -4, "why": "lost" }',
    `{ "date": "2026-10-01", "item": "led green", "change": ¦-6, "why": "lost" }`,
    "file.takesTooMany",
    { found: 6, there: 5 },
  ],
  [
    "lost without having any",
    '"led red", "change": -4',
    `"led reb", "change": -4`.replace("reb", "blue").replace("-4", "¦-4"),
    "file.takesTooMany",
    { there: 0 },
  ],
  ["a movement of nothing", '"change": -4', `"change": ¦0`, "file.noChange"],
  ["lost with more", '"change": -4', `"change": ¦4`, "file.wrongSign", { why: "lost", expected: "-" }],
  ["bought with fewer", '"change": 3', `"change": ¦-3`, "file.wrongSign", { why: "bought", expected: "+" }],
];

for (const [name, from, to, code, data] of errors)
  test(`${name}: ${code}`, () => {
    const { text, line, column } = unmarked(changed(right, from, to));
    const { value, problems } = read(text);
    expect(value).toBe(null);
    const [first] = problems;
    expect(first).toMatchObject({ code, ...data });
    expect(first?.severity).toBe(undefined);
    expect(first?.place?.file).toBe("class.json");
    if (to.includes(mark)) expect(first?.place).toEqual({ file: "class.json", line, column });
    // One slip is told once; only another currency makes every sum wrong.
    if (name !== "decimals of a yen") expect(problems.length).toBe(1);
  });

const warnings: Case[] = [
  [
    "a class of nobody",
    right.slice(right.indexOf("[\n        {"), right.indexOf('      "lessons"')),
    `¦[],\n`,
    "file.noPupils",
    { class: "7b" },
  ],
  ["the same name twice", '"name": "Dan"', `"name": ¦"ana"`, "file.sameName", { class: "7b", firstLine: 15 }],
  [
    "a letter that turns the text round",
    '"name": "Dan"',
    `"name": "¦\u202eDan"`,
    "file.charactersLeftOut",
    { found: "Dan", character: "U+202E" },
  ],
  [
    "the same as an escape",
    '"name": "Dan"',
    `"name": "Da¦\\u2067n"`,
    "file.charactersLeftOut",
    { found: "Dan", character: "U+2067" },
  ],
  ["half a character", '"name": "Dan"', `"name": "Dan¦\\ud83d"`, "file.charactersLeftOut", { found: "Dan", character: "U+D83D" }],
  [
    "a count of a class that has left",
    '"class": "7b", "lesson": "lighthouse", "item"',
    `"class": ¦"7a", "lesson": "lighthouse", "item"`,
    "file.unknownClass",
    { near: "7b" },
  ],
];
for (const [name, from, to, code, data] of warnings)
  test(`${name} is a warning: ${code}`, () => {
    const { text, line, column } = unmarked(changed(right, from, to));
    const { value, problems } = read(text);
    expect(value).not.toBe(null);
    expect(problems).toMatchObject([{ code, severity: "warning", place: { file: "class.json", line, column }, ...data }]);
  });

const fine: [name: string, from: string, to: string][] = [
  ["a budget of nought", '"20.00"', '"0"'],
  ["no budget", '"20.00"', "null"],
  ["a decimal comma", '"20.00"', '"20,5"'],
  ["a chance as a number", '"95 %"', "0.9"],
  ["a chance with decimals", '"95 %"', '"97.5%"'],
  ["a whole character written as two escapes", '"name": "Dan"', '"name": "Dan\\ud83d\\ude00"'],
  ["a doubled backslash before an escape's letters", '"name": "Dan"', '"name": "D\\\\u202e"'],
  ["a name in another script", '"name": "Dan"', '"name": "ليلى الخطيب"'],
  ["two lessons on a day, one after the other", '"2027-01-19", "start": "10:00"', '"2027-01-12", "start": "10:20"'],
  ["lost on the day it was bought", '"led red", "change": -4', '"led red", "change": -6'],
  ["a text of 10 000 letters", '"a small class"', `"${"a".repeat(10_000)}"`],
];
for (const [name, from, to] of fine) test(`${name} is fine`, () => expect(read(changed(right, from, to)).problems).toEqual([]));

test("two spellings of one character are the same name", () => {
  const { value, problems } = read(changed(right, '"name": "Dan"', '"name": "Jose\u0301"'));
  expect(problems).toEqual([]);
  expect(value?.classes[0]?.pupils[3]?.name).toBe("Jos\u00e9");
});

test("what was left out of a name is out of it", () => {
  const { value } = read(changed(right, '"name": "Dan"', '"name": "\u202eD\u2066an"'));
  expect(value?.classes[0]?.pupils[3]?.name).toBe("Dan");
});

test("four hundred pupils can be read, with a warning", () => {
  const many = Array.from({ length: 394 }, (_, i) => `{ "id": "x${i}", "name": "Pupil ${i}" },\n`).join("");
  const { text, line, column } = unmarked(changed(right, '[\n        { "id": "p1"', `¦[\n${many}        { "id": "p1"`));
  const { value, problems } = read(text);
  expect(value?.classes[0]?.pupils.length).toBe(400);
  expect(problems).toMatchObject([
    { code: "file.manyPupils", severity: "warning", found: 400, most: 60, place: { file: "class.json", line, column } },
  ]);
});

test("sixty pupils are one class without a word", () => {
  const many = Array.from({ length: 54 }, (_, i) => `{ "id": "x${i}", "name": "Pupil ${i}" },\n`).join("");
  expect(read(changed(right, '[\n        { "id": "p1"', `[\n${many}        { "id": "p1"`)).problems).toEqual([]);
});

test("what is listed one by one is not stock: a movement of it is judged only where there is no list", () => {
  const gone = changed(right, '"led red", "change": -4', '"board", "change": -4');
  expect(read(gone).problems).toEqual([]);
  const listless = changed(
    gone,
    '"boards": [\n    { "id": "board-1", "works": true, "deadPins": ["D5", "A0"] }\n  ]',
    '"boards": []',
  );
  expect(read(listless).problems).toMatchObject([{ code: "file.takesTooMany", item: "board", there: 0 }]);
});

test("the smallest class file is a currency, a class and its pupils", () => {
  const text = '{"format":"benchday-class/1","currency":"KES","classes":[{"id":"5a","pupils":[{"id":"1","name":"Ana"}]}]}';
  const { value, problems } = readClassFile("class.json", text);
  expect(problems).toEqual([]);
  expect(value).toMatchObject({ language: "en", chance: 0.95, budget: null, kits: [], decimals: 2 });
  expect(value?.classes[0]).toMatchObject({ name: "5a", teamSize: 3, balance: null, lessons: [] });
});

test("a field that must be there under another name is told as both", () => {
  const { problems } = read(changed(right, '"classes": [', '"clases": ['));
  expect(problems).toMatchObject([
    { code: "document.missingField", field: "classes", place: { line: 1 } },
    { code: "document.unknownField", field: "clases", near: "classes", place: { line: 9, column: 3 } },
  ]);
});

test("several slips are told at once, in the order of the lines", () => {
  const twice = changed(changed(right, '"count": 12', '"count": -1'), '"sockets": 4', '"sockets": "4"');
  const lineOf = (part: string) => twice.slice(0, twice.indexOf(part)).split("\n").length;
  expect(read(twice).problems.map((p) => [p.code, p.place?.line])).toEqual([
    ["document.wrongType", lineOf('"sockets"')],
    ["document.wrongValue", lineOf('"count": -1')],
  ]);
});

test("of a hundred lines that lose a character, the first twenty are told", () => {
  const many = Array.from({ length: 100 }, (_, i) => `{ "id": "x${i}", "name": "\u202ePupil ${i}" },\n`).join("");
  const { problems } = read(changed(right, '[\n        { "id": "p1"', `[\n${many}{ "id": "p1"`));
  expect(problems.filter((p) => p.code === "file.charactersLeftOut").map((p) => p.place?.line)).toEqual(
    Array.from({ length: 20 }, (_, i) => 15 + i),
  );
});

test("warnings hide no error, however many they are", () => {
  const many = Array.from({ length: 150 }, (_, i) => `{ "id": "x${i}", "name": "Ana" },\n`).join("");
  const text = changed(changed(right, '[\n        { "id": "p1"', `[\n${many}{ "id": "p1"`), '"change": -4', '"change": -7');
  const { value, problems } = read(text);
  expect(value).toBe(null);
  expect(problems[0]).toMatchObject({ code: "file.takesTooMany" });
  expect(problems.some((p) => p.code === "file.sameName")).toBe(true);
});

test("what is not known is not judged", () => {
  const strange = changed(right, '"change": -4', '"change": -400').replaceAll("lighthouse", "nothing-known");
  expect(readClassFile("class.json", strange).problems).toEqual([]);
});
