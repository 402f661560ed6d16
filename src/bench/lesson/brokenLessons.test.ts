// Lessons with one slip each: what is told, and where.
//
// A case takes the good lesson below and puts something else in the place of one of its lines. ▶ stands before the place that
// must be told; it is taken out before reading.
import { expect, test } from "vitest";
import { folderOf } from "../../../test/lessons/folders.ts";
import { readLesson } from "./readLesson.ts";

const good = `format: benchday-lesson/1
id: night-lamp
minutes: 80
parts:
  LDR1: { part: photoresistor }
  R1:   { part: resistor, ohms: 10k }
  R2:   { part: resistor, ohms: 220, may-be: [180, 270, 330, 470] }
  LED1: { part: led, colour: yellow }
  B1:   { part: button }
  SV1:  { part: servo }
  RGB1: { part: rgb-led }
nets:
  - [board.5V, LDR1.1, SV1.plus]
  - [LDR1.2, R1.1, board.A0]
  - [R1.2, LED1.cathode, board.GND, B1.2, SV1.minus, RGB1.common]
  - [board.D9, R2.1]
  - [R2.2, LED1.anode]
  - [board.D2, B1.1]
  - [board.D6, SV1.signal]
  - [board.D10, RGB1.red, RGB1.green, RGB1.blue]
rehearsal:
  - { at: 0s, set: { LDR1.lux: 400 } }
  - { at: 1s, expect: { LED1: dark } }
plan:
  - { what: build, minutes: 80 }
`.split("\n");
const program = "void setup() {}\nvoid loop() {}\n";
const text = "# The night lamp\n\n## teaches\n\nx\n\n## introduction\n\nx\n\n## cautions\n\nx\n";
const files = (lesson: string) => ({ "lesson.yaml": lesson, "program.cpp": program, "text/en.md": text });

test("the good lesson is good", () => {
  expect(readLesson(folderOf("lessons/night-lamp", files(good.join("\n")))).problems).toEqual([]);
});

/** Line of the good lesson that begins with this, from 0. */
const lineOf = (start: string) => {
  const found = good.flatMap((line, i) => (line.trim().startsWith(start) ? [i] : []));
  if (found.length !== 1) throw new Error(`${start} begins ${found.length} lines`);
  return found[0]!;
};

const at0 = "- { at: 0s";
const at1 = "- { at: 1s";
const slips: [name: string, line: string, instead: string, problem: object][] = [
  // The file
  [
    "a newer format",
    "format",
    "format: ▶benchday-lesson/2",
    { code: "lesson.newerFormat", found: "benchday-lesson/2", expected: "benchday-lesson/1" },
  ],
  ["another format", "format", "format: ▶benchday-kit/1", { code: "lesson.unknownFormat", found: "benchday-kit/1" }],
  ["a format that is a number", "format", "format: ▶1", { code: "lesson.unknownFormat", found: "1" }],
  ["an unknown field", "minutes", "minutes: 80\n▶minuts: 80", { code: "document.unknownField", near: "minutes" }],
  ["minutes in words", "minutes", "minutes: ▶eighty", { code: "document.wrongType", expected: "number", found: "eighty" }],
  ["no minutes", "minutes", "minutes: ▶0", { code: "document.wrongValue", expected: ">=1", found: "0" }],
  ["an id with capitals", "id", "id: ▶Night Lamp", { code: "document.wrongValue", expected: "a-z 0-9 -", found: "Night Lamp" }],
  ["a field twice", "minutes", "minutes: 80\n▶minutes: 90", { code: "document.twice", name: "minutes", firstLine: 3 }],
  ["a tab", "minutes", "minutes: 80\n▶\tneeds: []", { code: "document.tab" }],
  ["a bracket left open", "- [board.D9", "  - [board.D9, R2.1\n  ▶- [x.1, y.1]", { code: "document.unexpected" }],
  [
    "a lesson that needs itself",
    "minutes",
    "minutes: 80\nneeds: [▶night-lamp]",
    { code: "lesson.needsItself", id: "night-lamp" },
  ],
  // Parts
  [
    "an unknown part",
    "R1:",
    "  R1:   { part: ▶resister, ohms: 10k }",
    { code: "lesson.unknownPart", found: "resister", near: "resistor" },
  ],
  ["an unknown type", "B1:", "  B1: { part: ▶BC574 }", { code: "lesson.unknownPart", found: "BC574", near: "BC547" }],
  ["a part like none", "B1:", "  B1: { part: ▶sausage }", { code: "lesson.unknownPart", near: null }],
  ["no part", "B1:", "  B1: ▶{ colour: red }", { code: "document.missingField", field: "part" }],
  [
    "a name with a blank",
    "B1:",
    "  B1:   { part: button }\n  ▶B 1: { part: button }",
    { code: "lesson.badPartName", found: "B 1" },
  ],
  [
    "a name that means something else",
    "B1:",
    "  B1:   { part: button }\n  ▶text: { part: button }",
    { code: "lesson.reservedName", found: "text" },
  ],
  [
    "a resistor called board",
    "B1:",
    "  B1:   { part: button }\n  ▶board: { part: resistor, ohms: 1 }",
    { code: "lesson.reservedName", found: "board" },
  ],
  ["a second board", "B1:", "  ▶B1: { part: board }", { code: "lesson.reservedName", found: "board" }],
  [
    "an unknown parameter",
    "R1:",
    "  R1:   { part: resistor, ▶ohm: 10k, ohms: 10k }",
    { code: "lesson.unknownParameter", part: "R1", found: "ohm", near: "ohms" },
  ],
  [
    "a parameter of another part",
    "B1:",
    "  B1:   { part: button, ▶colour: red }",
    { code: "lesson.unknownParameter", near: null },
  ],
  ["a missing parameter", "R1:", "  R1:   ▶{ part: resistor }", { code: "lesson.missingParameter", part: "R1", name: "ohms" }],
  [
    "a wrong unit",
    "R1:",
    "  R1:   { part: resistor, ohms: ▶10kV }",
    { code: "lesson.wrongUnit", name: "ohms", expected: "Ω", found: "kV" },
  ],
  [
    "no quantity",
    "R1:",
    "  R1:   { part: resistor, ohms: ▶much }",
    { code: "lesson.notAQuantity", name: "ohms", expected: "Ω", found: "much" },
  ],
  ["yes for a quantity", "R1:", "  R1:   { part: resistor, ohms: ▶true }", { code: "lesson.notAQuantity", found: "true" }],
  [
    "a negative resistor",
    "R1:",
    "  R1:   { part: resistor, ohms: ▶-5 }",
    { code: "lesson.outOfRange", name: "ohms", found: "-5", least: 0.1 },
  ],
  ["a resistor of 0 Ω", "R1:", "  R1:   { part: resistor, ohms: ▶0 }", { code: "lesson.outOfRange", found: "0" }],
  [
    "a share without its sign",
    "R1:",
    "  R1:   { part: resistor, ohms: 10k, tolerance: ▶5 }",
    { code: "lesson.unitMissing", expected: "%", found: "5" },
  ],
  [
    "an unknown colour",
    "LED1:",
    "  LED1: { part: led, colour: ▶yelow }",
    { code: "lesson.unknownWord", found: "yelow", near: "yellow" },
  ],
  [
    "a list for a value",
    "LED1:",
    "  LED1: { part: led, colour: ▶[red] }",
    { code: "document.wrongType", expected: "text, number, boolean" },
  ],
  [
    "a value that may be, with a wrong unit",
    "R2:",
    "  R2:   { part: resistor, ohms: 220, may-be: [180, ▶270V] }",
    { code: "lesson.wrongUnit", found: "V" },
  ],
  ["a button that may be", "B1:", "  B1:   { part: button, ▶may-be: [1] }", { code: "lesson.nothingMayBe", part: "B1" }],
  [
    "a name in capitals that is forbidden",
    "B1:",
    "  ▶__proto__: { part: button }",
    { code: "document.badName", found: "__proto__" },
  ],
  // Nets
  ["a leg without a part", "- [board.D2", "  - [board.D2, B1.1, ▶GND]", { code: "lesson.badLeg", found: "GND" }],
  ["a leg without a name", "- [board.D2", "  - [board.D2, B1.1, ▶B1.]", { code: "lesson.badLeg", found: "B1." }],
  [
    "a leg of a part that is not there",
    "- [board.D2",
    "  - [board.D2, B1.1, ▶B2.1]",
    { code: "lesson.noSuchPart", found: "B2", near: "B1" },
  ],
  [
    "an unknown leg",
    "- [R2.2",
    "  - [R2.2, ▶LED1.anod]",
    { code: "lesson.unknownLeg", part: "LED1", found: "anod", near: "anode", expected: "anode, cathode" },
  ],
  [
    "a pin that the board has not",
    "- [board.D9",
    "  - [▶board.D20, R2.1]",
    { code: "lesson.unknownLeg", part: "board", near: "D0" },
  ],
  ["a leg in two nets", "- [R2.2", "  - [R2.2, LED1.anode, ▶R1.1]", { code: "lesson.legTwice", leg: "R1.1", firstLine: 14 }],
  ["a leg twice in a net", "- [R2.2", "  - [R2.2, LED1.anode, ▶R2.2]", { code: "lesson.legTwice", leg: "R2.2", firstLine: 17 }],
  [
    "a leg in two nets under two names",
    "- [R2.2",
    "  - [R2.2, LED1.anode, ▶LED1.minus]",
    { code: "lesson.legTwice", leg: "LED1.cathode", firstLine: 15 },
  ],
  ["a net with one leg", "- [board.D2", "  - [▶board.D2]\n  - [board.D3, B1.1]", { code: "lesson.lonelyLeg", leg: "board.D2" }],
  ["a net without legs", "- [board.D2", "  - ▶[]\n  - [board.D2, B1.1]", { code: "lesson.emptyNet" }],
  [
    "legs of one contact in two nets",
    "- [board.D6",
    "  - [board.D6, SV1.signal, ▶B1.1b]",
    { code: "lesson.joinedLegsApart", leg: "B1.1b", other: "B1.1", firstLine: 18 },
  ],
  ["a number for a leg", "- [board.D2", "  - [board.D2, B1.1, ▶5]", { code: "document.wrongType", expected: "text", found: "5" }],
  // When
  ["a step with nothing", at0, "  - ▶{ at: 0s }", { code: "lesson.emptyStep" }],
  ["a step without a time", at1, "  - ▶{ expect: { LED1: dark } }", { code: "lesson.timeMissing" }],
  ["a moment and a span", at1, "  - ▶{ at: 1s, from: 1s, to: 2s, expect: { LED1: dark } }", { code: "lesson.timesMixed" }],
  ["half a span", at1, "  - ▶{ from: 1s, expect: { LED1: dark } }", { code: "lesson.timesMixed" }],
  ["set during a span", at1, "  - ▶{ from: 1s, to: 2s, set: { LDR1.lux: 3 } }", { code: "lesson.timesMixed" }],
  ["a check before the start", at1, "  - { at: ▶-1s, expect: { LED1: dark } }", { code: "lesson.beforeStart", found: "-1s" }],
  [
    "a time without a unit",
    at1,
    "  - { at: ▶1, expect: { LED1: dark } }",
    { code: "lesson.unitMissing", name: "at", expected: "s", found: "1" },
  ],
  [
    "a time with a wrong unit",
    at1,
    "  - { at: ▶1 Hz, expect: { LED1: dark } }",
    { code: "lesson.wrongUnit", expected: "s", found: "Hz" },
  ],
  ["a time that is none", at1, "  - { at: ▶soon, expect: { LED1: dark } }", { code: "lesson.notAQuantity", found: "soon" }],
  ["a time beyond an hour", at1, "  - { at: ▶4000s, expect: { LED1: dark } }", { code: "lesson.outOfRange", most: 3600 }],
  [
    "a span that ends before it begins",
    at1,
    "  - { from: 2s, to: ▶1s, expect: { LED1: dark } }",
    { code: "lesson.endsBeforeItBegins", from: "2s", to: "1s" },
  ],
  [
    "a word for within",
    at1,
    "  - { at: 1s, within: ▶a moment, expect: { LED1: dark } }",
    { code: "lesson.notAQuantity", name: "within" },
  ],
  [
    "an unknown field of a step",
    at1,
    "  - { at: 1s, ▶expects: { LED1: dark } }",
    { code: "document.unknownField", near: "expect" },
  ],
  // What is set
  [
    "a stimulus on a part that is not there",
    at0,
    "  - { at: 0s, set: { ▶LDR2.lux: 400 } }",
    { code: "lesson.unknownStimulus", found: "LDR2.lux", near: "LDR1.lux" },
  ],
  ["a stimulus without a part", at0, "  - { at: 0s, set: { ▶suply: off } }", { code: "lesson.unknownStimulus", near: "supply" }],
  [
    "an unknown state",
    at0,
    "  - { at: 0s, set: { ▶LDR1.luxx: 400 } }",
    { code: "lesson.unknownState", part: "LDR1", near: "lux", expected: "lux" },
  ],
  [
    "a state of a part that has none",
    at0,
    "  - { at: 0s, set: { ▶R1.hot: true } }",
    { code: "lesson.unknownState", part: "R1", near: null, expected: "" },
  ],
  [
    "a part without its state",
    at0,
    "  - { at: 0s, set: { ▶B1: true } }",
    { code: "lesson.unknownState", part: "B1", found: "", expected: "pressed" },
  ],
  [
    "a number for yes or no",
    at0,
    "  - { at: 0s, set: { B1.pressed: ▶5 } }",
    { code: "lesson.unknownWord", name: "pressed", expected: "true, false", found: "5" },
  ],
  ["light in volts", at0, "  - { at: 0s, set: { LDR1.lux: ▶400V } }", { code: "lesson.wrongUnit", expected: "lx", found: "V" }],
  ["darker than dark", at0, "  - { at: 0s, set: { LDR1.lux: ▶-1 } }", { code: "lesson.outOfRange", least: 0 }],
  [
    "a supply in between",
    at0,
    "  - { at: 0s, set: { supply: ▶half } }",
    { code: "lesson.unknownWord", expected: "on, off", found: "half" },
  ],
  [
    "a number for a text that is sent",
    at0,
    "  - { at: 0s, set: { text: ▶5 } }",
    { code: "document.wrongType", expected: "text", found: "5" },
  ],
  // What is expected
  [
    "a check of a part that is not there",
    at1,
    "  - { at: 1s, expect: { ▶LED2: dark } }",
    { code: "lesson.noSuchPart", found: "LED2", near: "LED1" },
  ],
  [
    "nothing can be noticed at a resistor",
    at1,
    "  - { at: 1s, expect: { ▶R1: dark } }",
    { code: "lesson.nothingToNotice", part: "R1" },
  ],
  [
    "a word of another sense",
    at1,
    "  - { at: 1s, expect: { LED1: ▶silent } }",
    { code: "lesson.unknownExpectation", part: "LED1", found: "silent", near: null },
  ],
  ["a word misspelt", at1, "  - { at: 1s, expect: { LED1: ▶blinkin } }", { code: "lesson.unknownExpectation", near: "blinking" }],
  [
    "a servo that is lit",
    at1,
    "  - { at: 1s, expect: { SV1: ▶lit } }",
    { code: "lesson.unknownExpectation", part: "SV1", expected: "90 degrees" },
  ],
  ["a servo beyond a turn", at1, "  - { at: 1s, expect: { SV1: ▶400 degrees } }", { code: "lesson.outOfRange", name: "degrees" }],
  [
    "an unknown figure",
    at1,
    "  - { at: 1s, expect: { LED1: { seen: blinking, ▶hert: 2 } } }",
    { code: "lesson.unknownFigure", found: "hert", near: "hertz" },
  ],
  [
    "a figure of another sense",
    at1,
    "  - { at: 1s, expect: { LED1: { ▶degrees: 90 } } }",
    { code: "lesson.unknownFigure", part: "LED1", found: "degrees" },
  ],
  [
    "a duty without its sign",
    at1,
    "  - { at: 1s, expect: { LED1: { seen: blinking, duty: ▶50 } } }",
    { code: "lesson.unitMissing", name: "duty", expected: "%" },
  ],
  [
    "a duty beyond the whole",
    at1,
    "  - { at: 1s, expect: { LED1: { seen: blinking, duty: ▶150% } } }",
    { code: "lesson.outOfRange", most: 1 },
  ],
  [
    "only a tolerance",
    at1,
    "  - { at: 1s, expect: { LED1: ▶{ tolerance: 10% } } }",
    { code: "lesson.emptyExpectation", part: "LED1" },
  ],
  ["an expectation of nothing", at1, "  - { at: 1s, expect: { LED1: ▶{} } }", { code: "lesson.emptyExpectation", part: "LED1" }],
  [
    "a light without its name",
    at1,
    "  - { at: 1s, expect: { ▶RGB1: lit } }",
    { code: "lesson.lightMissing", part: "RGB1", expected: "red, green, blue" },
  ],
  [
    "an unknown light",
    at1,
    "  - { at: 1s, expect: { ▶RGB1.gren: lit } }",
    { code: "lesson.unknownLight", found: "gren", near: "green" },
  ],
  [
    "a light of a part that has one",
    at1,
    "  - { at: 1s, expect: { ▶LED1.red: lit } }",
    { code: "lesson.unknownLight", part: "LED1", found: "red" },
  ],
  [
    "a board that flies",
    at1,
    "  - { at: 1s, expect: { board: ▶runing } }",
    { code: "lesson.unknownWord", expected: "running, resets", near: "running" },
  ],
  [
    "a figure of a text",
    at1,
    "  - { at: 1s, expect: { text: { ▶contain: ok } } }",
    { code: "lesson.unknownFigure", near: "contains" },
  ],
  ["volts without a leg", at1, "  - { at: 1s, expect: { volts: ▶{ is: 2.5 } } }", { code: "document.missingField", field: "at" }],
  [
    "volts at an unknown leg",
    at1,
    "  - { at: 1s, expect: { volts: { at: ▶LDR1.3, is: 2.5 } } }",
    { code: "lesson.unknownLeg", part: "LDR1", found: "3" },
  ],
  [
    "volts in ohms",
    at1,
    "  - { at: 1s, expect: { volts: { at: LDR1.2, is: ▶2.5 Ω } } }",
    { code: "lesson.wrongUnit", expected: "V", found: "Ω" },
  ],
  [
    "an unknown figure of volts",
    at1,
    "  - { at: 1s, expect: { volts: { at: LDR1.2, is: 2.5, ▶tolerence: 5% } } }",
    { code: "lesson.unknownFigure", near: "tolerance" },
  ],
  // The plan and the rest
  [
    "an unknown activity",
    "- { what",
    "  - { what: ▶biuld, minutes: 80 }",
    { code: "document.wrongValue", found: "biuld", near: "build" },
  ],
  [
    "a note that is no section",
    "- { what",
    "  - { what: build, minutes: 80, note: ▶question }",
    { code: "document.wrongValue", near: "questions" },
  ],
  [
    "a film outside the folder",
    "plan",
    "media:\n  - { path: ▶../film.mp4, language: en }\nplan:",
    { code: "lesson.badPath", found: "../film.mp4" },
  ],
  ["a film from the root", "plan", "media:\n  - { path: ▶/film.mp4, language: en }\nplan:", { code: "lesson.badPath" }],
  [
    "an unknown language",
    "plan",
    "media:\n  - { path: film.mp4, language: ▶English language }\nplan:",
    { code: "document.wrongValue", found: "English language" },
  ],
];

for (const [name, start, instead, problem] of slips) test(`error: ${name}`, () => expectFirst(start, instead, problem, null));

const doubts: [name: string, line: string, instead: string, problem: object][] = [
  [
    "an id that is not the folder's",
    "id",
    "id: ▶day-lamp",
    { code: "lesson.idIsNotFolder", id: "day-lamp", folder: "night-lamp" },
  ],
  ["minutes that are not the plan's", "minutes", "minutes: ▶90", { code: "lesson.minutesDiffer", minutes: 90, sum: 80 }],
  [
    "a part in no net",
    "B1:",
    "  B1:   { part: button }\n  ▶B2:   { part: button }",
    { code: "lesson.partUnconnected", part: "B2" },
  ],
  [
    "a part bridged by a net",
    "- [R2.2",
    "  - [R2.2, LED1.anode]\n  - [C1.1, ▶C1.2, board.3V3]",
    { code: "lesson.partBridged", part: "C1" },
  ],
  [
    "a film that is not there",
    "plan",
    "media:\n  - { path: ▶media/film.mp4, language: en }\nplan:",
    { code: "lesson.mediaMissing", file: "lessons/night-lamp/media/film.mp4" },
  ],
  [
    "a note on a section that no text has",
    "- { what",
    "  - { what: build, minutes: 80, note: ▶questions }",
    { code: "lesson.noteWithoutSection", note: "questions" },
  ],
];
for (const [name, start, instead, problem] of doubts)
  test(`warning: ${name}`, () => expectFirst(start, instead, problem, "warning"));

function expectFirst(start: string, instead: string, problem: object, severity: "warning" | null): void {
  const lines = good.map((line, i) => (i === lineOf(start) ? instead : line));
  // Case "bridged" needs a capacitor.
  if (instead.includes("C1.")) lines[lineOf("B1:")] += "\n  C1:   { part: capacitor, farads: 1n }";
  const marked = lines.join("\n");
  const before = marked.includes("▶") ? marked.slice(0, marked.indexOf("▶")).split("\n") : [""];
  const { value, problems } = readLesson(folderOf("lessons/night-lamp", files(marked.replace("▶", ""))));
  const place = { file: "lessons/night-lamp/lesson.yaml", line: before.length, column: before.at(-1)!.length + 1 };
  expect(value === null).toBe(severity === null);
  // A slip has one problem: what follows from it is not told as well.
  expect(problems).toEqual([expect.objectContaining({ ...problem, place })]);
  expect(problems[0]?.severity ?? null).toBe(severity);
}

const folder = "lessons/night-lamp";
const others: [name: string, files: Record<string, string>, file: string, line: number, column: number, problem: object][] = [
  ["no lesson.yaml", { "lesson.yaml": "" }, "lesson.yaml", 1, 1, { code: "document.empty" }],
  [
    "a translated program that does something else",
    { "program.fr.cpp": "// rien\nvoid setup() {}\nvoid loop() { delay(1); }\n" },
    "program.fr.cpp",
    3,
    15,
    { code: "lesson.programDiffers", expected: "}", found: "delay", line: 2 },
  ],
  [
    "a translated program that ends early",
    { "program.fr.cpp": "void setup() {}\n" },
    "program.fr.cpp",
    2,
    1,
    { code: "lesson.programDiffers", expected: "void", found: "" },
  ],
  ["an empty program", { "program.cpp": " \n" }, "program.cpp", 1, 1, { code: "lesson.programEmpty" }],
  [
    "a heading misspelt",
    { "text/en.md": `${text}\n## question\n` },
    "text/en.md",
    15,
    1,
    { code: "lesson.unknownHeading", found: "question", near: "questions" },
  ],
  [
    "a heading twice",
    { "text/en.md": `${text}\n## teaches\n` },
    "text/en.md",
    15,
    1,
    { code: "lesson.headingTwice", heading: "teaches", firstLine: 3 },
  ],
  [
    "a second title",
    { "text/en.md": `${text}\n# Another\n` },
    "text/en.md",
    15,
    1,
    { code: "lesson.unknownHeading", found: "Another" },
  ],
  ["no title", { "text/en.md": text.replace("# The night lamp", "") }, "text/en.md", 1, 1, { code: "lesson.titleMissing" }],
  [
    "text before the first heading",
    { "text/en.md": text.replace("\n\n", "\n\nHello\n\n") },
    "text/en.md",
    3,
    1,
    { code: "lesson.textOutsideSection", found: "Hello" },
  ],
];
for (const [name, changed, file, line, column, problem] of others)
  test(`error: ${name}`, () => {
    const { value, problems } = readLesson(folderOf(folder, { ...files(good.join("\n")), ...changed }));
    expect(value).toBe(null);
    expect(problems).toEqual([expect.objectContaining({ ...problem, place: { file: `${folder}/${file}`, line, column } })]);
  });

test("error: no program, no lesson at all", () => {
  const { "program.cpp": _, ...rest } = files(good.join("\n"));
  expect(readLesson(folderOf(folder, rest)).problems).toEqual([
    expect.objectContaining({ code: "lesson.fileMissing", file: `${folder}/program.cpp` }),
  ]);
  const { value, problems } = readLesson(folderOf(folder, {}));
  expect(value).toBe(null);
  expect(problems.map((p) => p.code)).toContain("lesson.fileMissing");
});

test("error: files too long, told without their contents", () => {
  const long = { "program.cpp": "x".repeat(100_001), "text/en.md": "x".repeat(200_001) };
  const { problems } = readLesson(folderOf(folder, { ...files(good.join("\n")), ...long }));
  expect(problems).toEqual([
    expect.objectContaining({ code: "lesson.programTooLong", most: 100_000, found: 100_001 }),
    expect.objectContaining({ code: "lesson.textTooLong", most: 200_000, found: 200_001 }),
  ]);
});

test("error: a relay's contact follows its coil and cannot be set", () => {
  const lines = [...good];
  lines[lineOf("B1:")] += "\n  K1:   { part: relay }";
  lines[lineOf("- [board.D6")] += "\n  - [K1.coil1, board.D5]\n  - [K1.coil2, board.D4]";
  lines[lineOf(at0)] = "  - { at: 0s, set: { K1.pulled: true } }";
  expect(readLesson(folderOf(folder, files(lines.join("\n")))).problems).toEqual([
    expect.objectContaining({ code: "lesson.stateIsInner", part: "K1", state: "pulled" }),
  ]);
});

test("warning: no text, and a text without what it should have", () => {
  const { "text/en.md": _, ...rest } = files(good.join("\n"));
  expect(readLesson(folderOf(folder, rest)).problems).toEqual([
    expect.objectContaining({ code: "lesson.textMissing", severity: "warning", folder: `${folder}/text` }),
  ]);
  const short = { ...rest, "text/en.md": "# The night lamp\n\n## teaches\n\n## introduction\n" };
  expect(readLesson(folderOf(folder, short)).problems).toEqual([
    expect.objectContaining({ code: "lesson.headingMissing", severity: "warning", heading: "cautions" }),
  ]);
});

test("error: no format, told where the mapping begins", () => {
  const { value, problems } = readLesson(folderOf(folder, files(good.slice(1).join("\n"))));
  expect(value).toBe(null);
  expect(problems).toEqual([
    expect.objectContaining({
      code: "document.missingField",
      field: "format",
      place: { file: `${folder}/lesson.yaml`, line: 1, column: 1 },
    }),
  ]);
});

test("two slips are told together, in the order of the file", () => {
  const lines = [...good];
  lines[lineOf("R1:")] = "  R1: { part: resistr, ohms: 10k }";
  lines[lineOf("- [R2.2")] = "  - [R2.2, LED1.anod]";
  const { problems } = readLesson(folderOf(folder, files(lines.join("\n"))));
  // The legs of R1 cannot be judged and are passed over.
  expect(problems.map((p) => [p.code, p.place.line])).toEqual([
    ["lesson.unknownPart", 6],
    ["lesson.unknownLeg", 17],
  ]);
});
