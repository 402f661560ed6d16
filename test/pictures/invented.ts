// An invented class and what was planned for it, for the pictures and tests of the papers. Nothing here was computed or measured:
// people, sums, dates and readings are made up to be typical, or as long and as many as a paper must bear.

import { readFileSync } from "node:fs";
import type { Day } from "../../src/base/index.ts";
import type { Lesson, LessonPart, LessonText } from "../../src/bench/lesson/index.ts";
import type { RehearsalResult, Trace } from "../../src/bench/rehearsal/index.ts";
import type { PaperOrder } from "../../src/documents/index.ts";
import type { Role, Rota, Team } from "../../src/school/classroom/index.ts";
import type { ClassFile, ClassGroup, Kit } from "../../src/school/file/index.ts";
import type { Purchase } from "../../src/school/order/index.ts";
import type { PlannedLesson, Tray } from "../../src/school/readiness/index.ts";

const root = new URL("../..", import.meta.url).pathname;
const day = (text: string) => text as Day;
const place = { file: "invented", line: 1, column: 1 };

const firstNames =
  "Mara Idris Noor Tomas Lien Awa Piet Yara Kofi Sanne Bilal Ruta Ines Jonas Dilan Hugo Amal Petra Sami Greta Linh Zoya Emil Rosa Oskar Nadia Tariq Elif Bram Chidi Mira".split(
    " ",
  );
const lastNames =
  "Visser Okafor Haddad Novak Tran Diallo Bakker Nasser Mensah Jansen Aziz Petrauskas Costa Weber Kaya Martin Said Horvat Karim Lindqvist Pham Ivanova Berg Moreno Dahl Petrovic Aslam Demir Smit Eze Kovac".split(
    " ",
  );

export const demoDates = [
  ["lighthouse", "2027-01-14"],
  ["signal-lamp", "2027-01-21"],
  ["quay-lights", "2027-01-28"],
  ["foghorn", "2027-02-04"],
  ["quay-lamp-at-dusk", "2027-02-11"],
  ["dimmer", "2027-02-25"],
  ["barrier", "2027-03-04"],
  ["water-temperature", "2027-03-11"],
  ["tide-gauge", "2027-03-18"],
  ["crane", "2027-04-01"],
  ["ferry-fan", "2027-04-08"],
  ["whole-harbour", "2027-04-15"],
] as const;

/** Names of 40 signs, as long as a class list may well hold. */
export const longNames: readonly string[] = Array.from({ length: 31 }, (_, i) =>
  `${firstNames[i]}-Wilhelmina ${lastNames[i]}-Papadopoulou van der Meulen`.slice(0, 40),
);

export function inventedGroup(pupils = 30, names?: readonly string[]): ClassGroup {
  return {
    id: "7b",
    name: "7b",
    teamSize: 3,
    pupils: Array.from({ length: pupils }, (_, i) => ({
      id: `p${i + 1}`,
      name: names?.[i] ?? `${firstNames[i % 31]} ${lastNames[(i + Math.floor(i / 31)) % 31]}`,
      marks: {},
    })),
    apart: [],
    together: [],
    balance: null,
    lessons: demoDates.map(([lesson, date]) => ({ lesson, date: day(date), start: 630, absent: [] })),
  };
}

export function inventedClassFile(group: ClassGroup = inventedGroup()): ClassFile {
  return {
    format: "benchday-class/1",
    about: "Invented.",
    lessonFolder: null,
    kitFolder: null,
    language: "en",
    currency: "EUR",
    decimals: 2,
    chance: 0.95,
    budget: 20000,
    room: { name: "room 12", sockets: 6, lux: 400 },
    classes: [group],
    kits: [
      { kit: "quay-a", count: 5 },
      { kit: "quay-b", count: 5 },
    ],
    stock: [
      { item: "resistor 220", count: 28, box: "box 3, a3" },
      { item: "resistor 330", count: 24, box: "box 3, a4" },
      { item: "resistor 1k", count: 30, box: "box 3, a5" },
      { item: "resistor 4k7", count: 12, box: "box 3, a6" },
      { item: "resistor 10k", count: 25, box: "box 3, a7" },
      { item: "led red", count: 31, box: "box 3, b1" },
      { item: "led yellow", count: 18, box: "box 3, b2" },
      { item: "led green emerald", count: 20, box: "box 3, b3" },
      { item: "photoresistor", count: 12, box: "box 3, b5" },
      { item: "thermistor 10k", count: 8, box: "box 3, b6" },
      { item: "potentiometer 10k", count: 10, box: "box 4, a1" },
      { item: "button", count: 22, box: "box 4, a2" },
      { item: "capacitor 100n", count: 15, box: "box 4, a3" },
      { item: "servo", count: 9, box: "box 5" },
      { item: "diode 1N4007", count: 10, box: "box 4, c2" },
      { item: "npn BC547", count: 12, box: "box 4, c3" },
      { item: "wire", count: 240, box: "box 2" },
      { item: "breadboard", count: 11, box: "box 1" },
      { item: "ultrasonic", count: 4, box: "" },
    ],
    movements: [],
    suppliers: [
      {
        id: "lantern",
        name: "Lantern Parts (invented)",
        shipping: 495,
        freeFrom: 6000,
        days: 7,
        offers: [
          { id: "L-1042", contains: { kind: "item", item: "photoresistor", count: 10 }, price: 240, available: null },
          { id: "L-2207", contains: { kind: "item", item: "resistor 220", count: 50 }, price: 190, available: null },
          { id: "L-3310", contains: { kind: "item", item: "servo", count: 1 }, price: 450, available: 20 },
        ],
      },
      {
        id: "north-quay",
        name: "North Quay School Supplies (invented)",
        shipping: 690,
        freeFrom: null,
        days: 14,
        offers: [
          { id: "KIT-B", contains: { kind: "kit", kit: "quay-b" }, price: 3290, available: 4 },
          { id: "4C-AA", contains: { kind: "item", item: "battery-4aa", count: 1 }, price: 210, available: null },
        ],
      },
    ],
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

export const inventedKits: ReadonlyMap<string, Kit> = new Map([
  [
    "quay-b",
    { format: "benchday-kit/1", id: "quay-b", name: "Quay B", contents: new Map([["board", 1]]), note: "" } satisfies Kit,
  ],
]);

function part(name: string, kind: string, item: string): [string, LessonPart] {
  return [name, { name, kind, values: {}, mayBe: [], item, place }];
}

/** The text of a demo lesson, cut at its headings. */
function lessonText(id: string): LessonText {
  const pieces = readFileSync(`${root}lessons/${id}/text/en.md`, "utf8").split(/^## /m);
  return {
    language: "en",
    title: pieces[0]!.replace(/^#\s*/, "").trim(),
    sections: new Map(pieces.slice(1).map((piece) => [piece.split("\n")[0]!.trim(), piece.slice(piece.indexOf("\n")).trim()])),
  };
}

export function inventedLesson(id: "barrier" | "quay-lamp-at-dusk" = "barrier"): Lesson {
  const barrier = id === "barrier";
  return {
    format: "benchday-lesson/1",
    id,
    minutes: 80,
    needs: ["signal-lamp"],
    parts: new Map(
      barrier
        ? [
            part("B1", "button", "button"),
            part("SERVO1", "servo", "servo"),
            part("R1", "resistor", "resistor 220"),
            part("R2", "resistor", "resistor 220"),
            part("LED1", "led", "led red"),
            part("LED2", "led", "led green"),
          ]
        : [
            part("LDR1", "photoresistor", "photoresistor"),
            part("R1", "resistor", "resistor 10k"),
            part("R2", "resistor", "resistor 220"),
            part("LED1", "led", "led yellow"),
          ],
    ),
    nets: (barrier
      ? [
          ["board.D2", "B1.1"],
          ["board.D6", "SERVO1.signal"],
          ["board.5V", "SERVO1.plus"],
          ["board.D9", "R1.1"],
          ["R1.2", "LED1.anode"],
          ["board.D10", "R2.1"],
          ["R2.2", "LED2.anode"],
          ["B1.2", "SERVO1.minus", "LED1.cathode", "LED2.cathode", "board.GND"],
        ]
      : [
          ["board.5V", "LDR1.1"],
          ["LDR1.2", "R1.1", "board.A0"],
          ["board.D9", "R2.1"],
          ["R2.2", "LED1.anode"],
          ["R1.2", "LED1.cathode", "board.GND"],
        ]
    ).map((legs) => ({ legs: legs.map((l) => ({ part: l.split(".")[0]!, leg: l.split(".")[1]! })), place })),
    stimuli: barrier
      ? [
          { at: 2, stimuli: [{ kind: "state", part: "B1", state: "pressed", value: true }], place },
          { at: 2.5, stimuli: [{ kind: "state", part: "B1", state: "pressed", value: false }], place },
        ]
      : [
          { at: 0, stimuli: [{ kind: "state", part: "LDR1", state: "lux", value: 400 }], place },
          { at: 4, stimuli: [{ kind: "state", part: "LDR1", state: "lux", value: 0.5 }], place },
        ],
    checks: [],
    tools: ["multimeter"],
    plan: [
      { what: "hand-out", minutes: 5, mayBeDropped: false, note: null },
      { what: "talk", minutes: 5, mayBeDropped: false, note: "introduction" },
      { what: "build", minutes: 15, mayBeDropped: false, note: null },
      { what: "program", minutes: 20, mayBeDropped: false, note: null },
      { what: "try", minutes: 10, mayBeDropped: false, note: "questions" },
      { what: "change", minutes: 10, mayBeDropped: true, note: null },
      { what: "present", minutes: 5, mayBeDropped: true, note: null },
      { what: "count-in", minutes: 10, mayBeDropped: false, note: null },
    ],
    media: [],
    program: { file: "program.cpp", text: "" },
    texts: new Map([["en", lessonText(id)]]),
  };
}

const roles: readonly Role[] = ["builder", "programmer", "checker"];

/** Teams of three (or two) in a row, turned by `by` places: names meet again, which a rota for a class would avoid. */
export function inventedTeams(group: ClassGroup, by = 0): Team[] {
  const ids = group.pupils.map((p) => p.id);
  const count = Math.ceil(ids.length / 3);
  return Array.from({ length: count }, (_, t) => {
    const pupils = ids.filter((_, i) => (i + Math.floor(i / count) * by) % count === t);
    return {
      number: t + 1,
      pupils,
      roles: pupils.map((pupil, i) => ({ pupil, role: roles[(i + by) % 3]! })),
    };
  });
}

export function inventedRota(group: ClassGroup, lessons = 12): Rota {
  return {
    lessons: Array.from({ length: lessons }, (_, l) => inventedTeams(group, l)),
    bound: 14,
    fresh: 10,
    repeated: 4,
    broken: [{ code: "apart", pupils: ["p1", "p2"], lesson: 3 }],
  };
}

export function inventedTray(team: number, things = 9): Tray {
  const all: Tray["items"] = [
    { item: "breadboard", count: 1, parts: [], insteadOf: null, box: "box 1" },
    { item: "board", count: 1, parts: [], insteadOf: null, box: "box 1" },
    { item: "usb-cable", count: 1, parts: [], insteadOf: null, box: "box 1" },
    { item: "button", count: 1, parts: ["B1"], insteadOf: null, box: "box 4, a2" },
    { item: "led green", count: 1, parts: ["LED2"], insteadOf: null, box: "box 3, b3" },
    { item: "led red", count: 1, parts: ["LED1"], insteadOf: null, box: "box 3, b1" },
    { item: "resistor 220", count: 1, parts: ["R1"], insteadOf: null, box: "box 3, a3" },
    { item: "resistor 330", count: 1, parts: ["R2"], insteadOf: "resistor 220", box: "box 3, a4" },
    { item: "wire", count: 9, parts: [], insteadOf: null, box: "box 2" },
    { item: "potentiometer 10k", count: 1, parts: ["POT1"], insteadOf: null, box: "box 4, a1" },
    { item: "photoresistor", count: 1, parts: ["LDR1"], insteadOf: null, box: "box 3, b5" },
    { item: "thermistor 10k", count: 1, parts: ["NTC1"], insteadOf: null, box: "box 3, b6" },
    { item: "capacitor 100n", count: 2, parts: ["C1", "C2"], insteadOf: null, box: "box 4, a3" },
    { item: "slide-switch", count: 1, parts: ["S1"], insteadOf: null, box: "" },
    { item: "rgb-led", count: 1, parts: ["LED3"], insteadOf: null, box: "the tin with the blue lid on the upper shelf" },
    { item: "diode 1N4007", count: 1, parts: ["D1"], insteadOf: null, box: "box 4, c2" },
    { item: "npn BC547", count: 1, parts: ["Q1"], insteadOf: null, box: "box 4, c3" },
    { item: "74HC595", count: 1, parts: ["U1"], insteadOf: null, box: "box 4, c4" },
    { item: "power-bank", count: 1, parts: [], insteadOf: null, box: "box 6" },
    { item: "battery-9v", count: 1, parts: [], insteadOf: null, box: "box 6" },
    { item: "battery-4aa", count: 1, parts: [], insteadOf: null, box: "box 6" },
    { item: "adapter 1000mA", count: 1, parts: [], insteadOf: null, box: "box 6" },
    { item: "dc-motor", count: 1, parts: ["M1"], insteadOf: null, box: "box 5" },
    { item: "ultrasonic", count: 1, parts: ["US1"], insteadOf: null, box: "box 5" },
    { item: "display-16x2", count: 1, parts: ["DISP1"], insteadOf: null, box: "box 5" },
    { item: "relay", count: 1, parts: ["K1"], insteadOf: null, box: "box 5" },
    { item: "stepper", count: 1, parts: ["M2"], insteadOf: null, box: "box 5" },
    { item: "piezo", count: 1, parts: ["BZ1"], insteadOf: null, box: "box 5" },
    { item: "joystick", count: 1, parts: ["JOY1"], insteadOf: null, box: "box 5" },
    { item: "whatever-it-is", count: 1, parts: ["X1"], insteadOf: null, box: "box 5" },
  ];
  return { team, items: all.slice(0, things), missing: [{ item: "servo", count: 1, parts: ["SERVO1"] }] };
}

const rehearsal: RehearsalResult = {
  lesson: "barrier",
  verdict: "ready",
  observations: [],
  checks: [],
  hazards: [
    {
      code: "usb-overcurrent",
      severity: "caution",
      part: "usb-port 500mA",
      value: 0.52,
      limit: 0.5,
      unit: "A",
      ms: 2100,
      source: "invented",
    },
  ],
  doubts: [],
  supplies: [],
  readings: [
    [1000, "board.5V", 4.9],
    [1000, "board.D2", 4.9],
    [1000, "board.D9", 4.6],
    [1000, "R1.2", 2.0],
    [1000, "board.D10", 0],
    [1000, "R2.2", 0],
    [4000, "board.5V", 4.8],
    [4000, "board.D2", 4.8],
    [4000, "board.D9", 0],
    [4000, "R1.2", 0],
    [4000, "board.D10", 4.5],
    [4000, "R2.2", 2.1],
  ].map(([ms, leg, volts]) => {
    const [name = "", pin = ""] = String(leg).split(".");
    return { ms: Number(ms), at: { part: name, leg: pin }, volts: Number(volts) };
  }),
  variants: [],
  margins: [],
  problems: [],
};

export function inventedPlan(group: ClassGroup, trays: readonly Tray[], lesson = "barrier", date = "2027-03-04"): PlannedLesson {
  return {
    id: `${group.id}/${lesson}/${date}`,
    class: group.id,
    lesson,
    date: day(date),
    start: 630,
    verdict: "short of parts",
    reasons: [{ verdict: "short of parts", code: "part-short", data: { item: "servo", count: 1, wanted: 10 } }],
    remedies: [{ code: "order", data: { item: "servo", count: 1 }, by: day("2027-02-18") }],
    chance: 0.91,
    short: [{ part: "servo", count: 1 }],
    teams: inventedTeams(group),
    moved: [],
    trays,
    stock: { sitting: `${group.id}/${lesson}/${date}`, coverage: [], chance: 0.91, teams: [], units: [] },
    rehearsal,
    supply: "usb-port 500mA",
  };
}

export const inventedPurchase: Purchase = {
  status: "optimal",
  cost: 8955,
  bound: 8955,
  gap: 0,
  lines: [
    {
      supplier: "lantern",
      offer: "L-3310",
      packets: 2,
      cost: 900,
      why: [
        { sitting: "7b/barrier/2027-03-04", item: "servo", count: 1, reason: "missing" },
        { sitting: "7b/barrier/2027-03-04", item: "servo", count: 1, reason: "spare" },
      ],
    },
    {
      supplier: "lantern",
      offer: "L-1042",
      packets: 1,
      cost: 240,
      why: [{ sitting: "7b/quay-lamp-at-dusk/2027-02-11", item: "photoresistor", count: 3, reason: "spare" }],
    },
    {
      supplier: "lantern",
      offer: "L-2207",
      packets: 1,
      cost: 190,
      why: [
        { sitting: "7b/dimmer/2027-02-25", item: "resistor 220", count: 8, reason: "missing" },
        { sitting: "7b/tide-gauge/2027-03-18", item: "resistor 220", count: 20, reason: "missing" },
      ],
    },
    {
      supplier: "north-quay",
      offer: "KIT-B",
      packets: 1,
      cost: 3290,
      why: [{ sitting: "7b/tide-gauge/2027-03-18", item: "ultrasonic", count: 1, reason: "missing" }],
    },
    {
      supplier: "north-quay",
      offer: "4C-AA",
      packets: 15,
      cost: 3150,
      why: [{ sitting: "7b/barrier/2027-03-04", item: "battery-4aa", count: 10, reason: "supply" }],
    },
  ],
  shipping: [
    { supplier: "lantern", cost: 495 },
    { supplier: "north-quay", cost: 690 },
  ],
  held: demoDates.slice(4, 9).map(([lesson, date]) => `7b/${lesson}/${date}`),
  notHeld: [{ sitting: "7b/crane/2027-04-01", reason: "budget", items: ["stepper"] }],
  chances: demoDates.slice(4, 9).map(([lesson, date], i) => ({ sitting: `7b/${lesson}/${date}`, chance: 0.97 - 0.005 * i })),
  costOfAll: 15210,
};

/** An order of forty lines for thirty lessons: more than a sheet holds. */
export function longPurchase(): Purchase {
  const sittings = Array.from(
    { length: 30 },
    (_, i) => `7b/${demoDates[i % 12]![0]}/2027-${String(1 + (i % 9)).padStart(2, "0")}-1${i % 10}`,
  );
  return {
    ...inventedPurchase,
    status: "feasible",
    bound: 8000,
    lines: Array.from({ length: 40 }, (_, i) => {
      const line = inventedPurchase.lines[i % inventedPurchase.lines.length]!;
      const why = sittings.slice(i % 20, (i % 20) + 1 + (i % 6)).map((sitting) => ({ ...line.why[0]!, sitting }));
      return { ...line, why };
    }),
    held: sittings.slice(0, 24),
    notHeld: sittings
      .slice(24)
      .map((sitting) => ({ sitting, reason: "too late" as const, items: ["stepper", "servo", "ultrasonic"] })),
    chances: [],
  };
}

/** The lesson with its title and every section of its text replaced. */
export function withTexts(lesson: Lesson, at: (n: number) => string): Lesson {
  const ids = ["teaches", "introduction", "questions", "mistakes", "follow-up", "cautions"] as const;
  const text = { language: "en", title: at(4), sections: new Map(ids.map((id, n) => [id, at(n)])) } as LessonText;
  return { ...lesson, tools: ["multimeter", at(5)], texts: new Map([["en", text]]) };
}

/**
 * Every paper once, for one class and lesson.
 *
 * @param at texts to put where people write: boxes, suppliers, offers, the room.
 * @param things on the tray of team 7; with more than nine the order is long too.
 */
/** A servo's pulses: 1.5 ms of 5 V every 20 ms. */
const inventedTrace: Trace = {
  lesson: "barrier",
  fromMs: 0,
  toMs: 100,
  probes: [
    {
      at: { part: "board", leg: "D6" },
      unit: "V",
      points: [0, 1, 2, 3, 4].flatMap((k) => [
        [0.02 * k, 0] as const,
        [0.02 * k + 0.01, 0] as const,
        [0.02 * k + 0.01, 5] as const,
        [0.02 * k + 0.0115, 5] as const,
        [0.02 * k + 0.0115, 0] as const,
      ]),
      gaps: [],
      least: 0,
      most: 5,
    },
  ],
  problems: [],
};

export function everyPaper(
  group: ClassGroup,
  lesson: Lesson = inventedLesson(),
  at?: (n: number) => string,
  things = 9,
): PaperOrder[] {
  const plain = inventedClassFile(group);
  const classFile: ClassFile =
    at === undefined
      ? plain
      : {
          ...plain,
          room: { ...plain.room, name: at(6) },
          stock: plain.stock.map((line, n) => ({ ...line, box: at(n) })),
          suppliers: plain.suppliers.map((s, n) => ({ ...s, name: at(n + 1) })),
        };
  const tray = (team: number, count: number): Tray => {
    const made = inventedTray(team, count);
    return at === undefined ? made : { ...made, items: made.items.map((i, n) => ({ ...i, box: at(n), parts: [at(n + 2)] })) };
  };
  const planned = inventedPlan(group, [tray(1, 9), tray(7, things)]);
  const lessons = new Map([
    ["barrier", lesson],
    ["quay-lamp-at-dusk", inventedLesson("quay-lamp-at-dusk")],
  ]);
  return [
    { kind: "tray", input: { classFile, lesson, planned } },
    { kind: "label", input: { classFile } },
    {
      kind: "order",
      input: { classFile, purchase: things > 9 ? longPurchase() : inventedPurchase, kits: inventedKits, lessons },
    },
    { kind: "run-sheet", input: { classFile, lesson, planned } },
    { kind: "rota", input: { classFile, class: group.id, rota: inventedRota(group), lessons } },
    { kind: "waveform", input: { classFile, lesson, planned, trace: inventedTrace } },
  ];
}
