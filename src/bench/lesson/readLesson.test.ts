// Lessons that are right: the frozen sample of version 1, the lessons that come with Benchday, and a random reader's worst.
import { readdirSync } from "node:fs";
import { expect, test } from "vitest";
import { cpuMilliseconds } from "../../../test/cpuTime.ts";
import { folderOf, folderOnDisk } from "../../../test/lessons/folders.ts";
import { sample } from "../../../test/sample.ts";
import { seededRandom } from "../../base/index.ts";
import { findKind, partNames } from "../parts/index.ts";
import type { Expectation } from "./lesson.ts";
import { readLesson } from "./readLesson.ts";

const head = "format: benchday-lesson/1\nid: x\nminutes: 1\n";
const sampleFolder = "test/lessons/v1/harbour-watch";
const { value: watch, problems } = readLesson(folderOnDisk(sampleFolder));

test("the frozen sample of version 1 is read without a word", () => {
  expect(problems).toEqual([]);
  expect(watch).not.toBe(null);
});

test("its parts have their kinds, values in SI and items", () => {
  const parts = Object.fromEntries([...watch!.parts.values()].map((p) => [p.name, [p.kind, p.item]]));
  expect(parts).toEqual({
    B1: ["button", "button"],
    S1: ["slide-switch", "slide-switch"],
    LDR1: ["photoresistor", "photoresistor"],
    NTC1: ["thermistor", "thermistor"],
    POT1: ["potentiometer", "potentiometer 10k"],
    R1: ["resistor", "resistor 10k"],
    R2: ["resistor", "resistor 220"],
    R3: ["resistor", "resistor 4k7"],
    R4: ["resistor", "resistor 1k"],
    R5: ["resistor", "resistor 10k"],
    LED1: ["led", "led yellow"],
    LED2: ["led", "led green emerald"],
    C1: ["capacitor", "capacitor 100n"],
    C2: ["electrolytic", "electrolytic 100µ"],
    Q1: ["npn", "npn BC547"],
    D1: ["diode", "diode 1N4148"],
    M1: ["dc-motor", "dc-motor"],
    BZ1: ["piezo", "piezo"],
    SV1: ["servo", "servo"],
    K1: ["relay", "relay"],
    BAT1: ["battery-4aa", "battery-4aa nimh"],
    board: ["board", "board"],
  });
  const values = (name: string) => watch!.parts.get(name)!.values;
  expect(values("B1")["bounce-milliseconds"]).toBe(0.002);
  expect(values("LDR1")).toEqual({ ohms: 12_000, gamma: 0.65 });
  expect(values("R1")).toEqual({ ohms: 10_000, tolerance: 0.01, watts: 0.5 });
  expect(values("C2")).toMatchObject({ farads: 1e-4, volts: 25 });
  expect(values("SV1")["start-milliamps"]).toBe(0.65);
  expect(values("Q1")).toMatchObject({ type: "BC547", gain: 290 });
  expect(watch!.parts.get("R2")!.mayBe).toEqual([180, 270, 330, 470]);
  expect(watch!.parts.get("LED1")!.mayBe).toEqual(["red", "green"]);
  expect(watch!.parts.get("R2")!.place).toEqual({ file: `${sampleFolder}/lesson.yaml`, line: 15, column: 3 });
});

test("its nets keep their order and places", () => {
  expect(watch!.nets.length).toBe(17);
  expect(watch!.nets[1]).toEqual({
    legs: [
      { part: "LDR1", leg: "2" },
      { part: "R1", leg: "1" },
      { part: "board", leg: "A0" },
    ],
    place: { file: `${sampleFolder}/lesson.yaml`, line: 33, column: 5 },
  });
});

test("its stimuli are sorted and typed", () => {
  expect(watch!.stimuli.map((s) => [s.at, s.stimuli])).toEqual([
    [
      0,
      [
        { kind: "state", part: "LDR1", state: "lux", value: 400 },
        { kind: "state", part: "NTC1", state: "celsius", value: 20 },
        { kind: "state", part: "POT1", state: "turn", value: 0.5 },
        { kind: "state", part: "S1", state: "position", value: 2 },
        { kind: "state", part: "B1", state: "pressed", value: false },
      ],
    ],
    [
      3,
      [
        { kind: "state", part: "B1", state: "pressed", value: true },
        { kind: "supply", on: false },
        { kind: "text", text: "a" },
      ],
    ],
  ]);
});

test("its checks say when and what", () => {
  const seen = (part: string, word: string): Expectation => ({ kind: "part", part, seen: word, tolerance: 0.1 });
  const at = (moment: number) => ({ kind: "at" as const, at: moment });
  expect(watch!.checks.map((c) => [c.when, c.expectation])).toEqual([
    [at(1), seen("LED1", "dark")],
    [at(1), seen("LED2", "dim")],
    [{ kind: "within", at: 1, within: 0.3 }, seen("LED1", "lit")],
    [
      { kind: "throughout", from: 1, to: 2.5 },
      { kind: "part", part: "LED1", seen: "blinking", hertz: 2, duty: 0.5, tolerance: 0.1 },
    ],
    [at(3), { kind: "text", is: "stop" }],
    [at(3), { kind: "board", seen: "running" }],
    [at(4), { kind: "text", contains: "ok" }],
    [at(4), { kind: "volts", at: { part: "LDR1", leg: "2" }, is: 2.5, tolerance: 0.05 }],
    [at(5), { kind: "part", part: "BZ1", seen: null, hertz: 440, tolerance: 0.1 }],
    [at(5), { kind: "part", part: "SV1", seen: null, degrees: 90, tolerance: 0.1 }],
    [at(5), seen("M1", "turning")],
    [at(5), seen("K1", "on")],
    [at(6), seen("BZ1", "silent")],
    [at(6), { kind: "part", part: "SV1", seen: null, degrees: 10, tolerance: 0.2 }],
    [at(6), seen("M1", "stopped")],
    [at(6), seen("K1", "off")],
  ]);
  expect(watch!.checks[1]!.place).toEqual({ file: `${sampleFolder}/lesson.yaml`, line: 52, column: 37 });
});

test("plan, tools, media, programs and texts", () => {
  expect(watch!.plan.reduce((sum, item) => sum + item.minutes, 0)).toBe(watch!.minutes);
  expect(watch!.plan[5]).toEqual({ what: "change", minutes: 5, mayBeDropped: true, note: null });
  expect(watch!.tools).toEqual(["multimeter", "torch"]);
  expect(watch!.media).toEqual([{ path: "media/build.mp4", language: "en", captions: "media/build.vtt" }]);
  expect(watch!.program.file).toBe(`${sampleFolder}/program.cpp`);
  expect([...watch!.translatedPrograms!.keys()]).toEqual(["fr"]);
  expect([...watch!.texts.keys()]).toEqual(["en", "fr"]);
  const english = watch!.texts.get("en")!;
  expect(english.title).toBe("The watch of the harbour");
  expect([...english.sections.keys()]).toEqual(["teaches", "introduction", "questions", "mistakes", "follow-up", "cautions"]);
  // A heading inside a block of code is text, and a third-level heading belongs to its section.
  expect(english.sections.get("introduction")).toContain("```\n## questions\n```");
  expect(english.sections.get("introduction")).toContain("### At night");
  expect(english.sections.get("questions")).toBe("1. What does he see?");
});

for (const id of readdirSync(new URL("../../../lessons/", import.meta.url)).filter((name) => !name.includes(".")))
  test(`lessons/${id} is read without a word`, () => expect(readLesson(folderOnDisk(`lessons/${id}`)).problems).toEqual([]));

// The example by which the format was agreed.
test("the night lamp", () => {
  const lesson = `format: benchday-lesson/1
id: night-lamp
minutes: 80
parts:
  LDR1: { part: photoresistor }
  R1:   { part: resistor, ohms: 10k }
  R2:   { part: resistor, ohms: 220, may-be: [180, 270, 330, 470] }
  LED1: { part: led, colour: yellow }
nets:
  - [board.5V, LDR1.1]
  - [LDR1.2, R1.1, board.A0]
  - [R1.2, LED1.cathode, board.GND]
  - [board.D9, R2.1]
  - [R2.2, LED1.anode]
rehearsal:
  - { at: 0s, set: { LDR1.lux: 400 } }
  - { at: 1s, expect: { LED1: dark } }
  - { at: 2s, set: { LDR1.lux: 3 } }
  - { at: 3s, expect: { LED1: lit } }
`;
  const { value, problems: found } = readLesson(
    folderOf("night-lamp", { "lesson.yaml": lesson, "program.cpp": "void setup() {}" }),
  );
  expect(found.map((p) => p.code)).toEqual(["lesson.textMissing"]);
  expect(value!.stimuli.map((s) => s.at)).toEqual([0, 2]);
  expect(value!.checks.map((c) => c.expectation)).toEqual([
    { kind: "part", part: "LED1", seen: "dark", tolerance: 0.1 },
    { kind: "part", part: "LED1", seen: "lit", tolerance: 0.1 },
  ]);
});

// Every kind under every name of its legs: what the catalogue says, a lesson may write.
for (const name of partNames)
  test(`a lesson may hold a ${name}`, () => {
    const { kind } = findKind(name)!;
    if (kind.role === "board" || kind.legs.length === 0) return;
    const needed = Object.entries(kind.parameters).flatMap(([parameter, spec]) => (spec.usual ? [] : [`, ${parameter}: 1`]));
    const pins = Array.from({ length: 14 }, (_, i) => `D${i}`).concat([
      "A0",
      "A1",
      "A2",
      "A3",
      "A4",
      "A5",
      "5V",
      "3V3",
      "VIN",
      "AREF",
      "RESET",
      "USB",
    ]);
    const joined = kind.joined ?? [];
    const legs = kind.legs.filter((leg) => !joined.some((group) => group.indexOf(leg) > 0));
    const names = legs.map((leg) => Object.entries(kind.alsoCalled ?? {}).find(([, proper]) => proper === leg)?.[0] ?? leg);
    const lesson = `${head}parts:\n  X1: { part: ${name}${needed.join("")} }\nnets:\n${names.map((leg, i) => `  - [board.${pins[i]}, X1.${leg}]\n`).join("")}`;
    const { value, problems: found } = readLesson(
      folderOf("x", { "lesson.yaml": lesson, "program.cpp": "int a;", "text/en.md": "# x" }),
    );
    expect(found.filter((p) => p.severity !== "warning")).toEqual([]);
    expect(value!.nets.flatMap((net) => net.legs.filter((l) => l.part === "X1").map((l) => l.leg))).toEqual(legs);
    expect(value!.parts.get("X1")!.kind).toBe(kind.id);
  });

// What a hand, a bad copy or a stranger could make of a lesson: none may throw, and each problem has a place in a file.
test("no mutation of a lesson makes reading throw", () => {
  const good = folderOnDisk(sampleFolder);
  const files = Object.fromEntries(
    ["lesson.yaml", "program.cpp", "program.fr.cpp", "text/en.md", "text/fr.md"].map((path) => [path, good.read(path)!]),
  );
  const random = seededRandom(7, "mutations");
  const pick = <T>(things: readonly T[]): T => things[random.int(0, things.length - 1)]!;
  const scraps = [
    "",
    "{",
    "}",
    "[",
    "]",
    ":",
    ": ",
    "- ",
    ",",
    '"',
    "'",
    "#",
    "\n",
    "\t",
    "  ",
    "&a ",
    "*a",
    "!!x ",
    "<<: ",
    "|",
    ">",
    "%",
    "@",
  ];
  const words = [
    "null",
    "true",
    "-1",
    "1e999",
    "NaN",
    "0x",
    "🦆",
    "\u202e",
    "\u0000",
    "\ud800",
    "__proto__: 1",
    "constructor",
    "x".repeat(300),
  ];
  let unbroken = 0;
  const count = sample(500, 10_000);
  for (let i = 0; i < count; i += 1) {
    const path = pick(["lesson.yaml", "lesson.yaml", "lesson.yaml", ...Object.keys(files)]);
    let text = files[path]!;
    for (let n = random.int(1, 4); n > 0; n -= 1) {
      const at = random.int(0, text.length);
      const length = pick([0, 1, 2, 5, 20]);
      const insert = pick([pick(scraps), pick(words), text.slice(at, at + random.int(0, 80)), String(random.int(-5, 2000))]);
      text = text.slice(0, at) + insert + text.slice(at + length);
      if (random.int(0, 30) === 0) text = text.slice(0, at);
    }
    const { value, problems: found } = readLesson(folderOf("lessons/harbour-watch", { ...files, [path]: text }));
    if (value) unbroken += 1;
    const errors = found.filter((p) => p.severity !== "warning");
    expect(value === null).toBe(errors.length > 0);
    for (const { place } of found) {
      expect(place.file.startsWith("lessons/harbour-watch/")).toBe(true);
      expect(place.line >= 1 && place.column >= 1).toBe(true);
    }
  }
  // Both outcomes are met, so that the law above says something.
  expect(unbroken).toBeGreaterThan(count / 20);
  expect(unbroken).toBeLessThan(count);
});

// Lessons that a stranger could make to stop the machine: each is answered within the second that a person would wait.
const hostile: [name: string, lesson: string][] = [
  [
    "thousands of parts",
    `${head}parts:\n${Array.from({ length: 15_000 }, (_, i) => `  X${i}: {part: led}\n`).join("")}nets: []\n`,
  ],
  [
    "thousands of unknown parts",
    `${head}parts:\n${Array.from({ length: 300 }, (_, i) => `  X${i}: {part: lod${i}}\n`).join("")}nets: []\n`,
  ],
  [
    "thousands of unknown legs",
    `${head}parts:\n${Array.from({ length: 300 }, (_, i) => `  X${i}: {part: led}\n`).join("")}nets:\n${Array.from({ length: 300 }, (_, i) => `  - [${Array.from({ length: 100 }, (_, j) => `Y${i}_${j}.1`).join(",")}]\n`).join("")}`,
  ],
  [
    "thousands of unknown fields",
    `${head}parts: {}\nnets: []\nrehearsal:\n${Array.from({ length: 1900 }, (_, i) => `  - {at: 0s, ${Array.from({ length: 10 }, (_, j) => `f${i}_${j}: 1`).join(", ")}}\n`).join("")}`,
  ],
  [
    "thousands of unknown stimuli",
    `${head}parts: {}\nnets: []\nrehearsal:\n${Array.from({ length: 1900 }, (_, i) => `  - {at: 0s, set: {${Array.from({ length: 8 }, (_, j) => `f${i}.${j}: 1`).join(", ")}}}\n`).join("")}`,
  ],
];
for (const [name, lesson] of hostile)
  test(`answers ${name} soon`, () => {
    const files = { "lesson.yaml": lesson, "program.cpp": "int a;", "text/en.md": "# x" };
    const busy = cpuMilliseconds(() => {
      const { value, problems: found } = readLesson(folderOf("lessons/x", files));
      expect(value).toBe(null);
      expect(found.length).toBeLessThanOrEqual(100);
    });
    // At most 0.7 s on the machine it was written on; a slower one may take three times that.
    expect(busy).toBeLessThan(2000);
  });
