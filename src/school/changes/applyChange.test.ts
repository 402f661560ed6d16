// What each change does to a small class file, what it refuses, and what it leaves alone.
//
// The class file is invented. A row is: what is tried, the change, and either the file as it should be (only the fields that
// matter) or the code of the problem. To add a case, add a row.
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { sample } from "../../../test/sample.ts";
import { type Day, seededRandom } from "../../base/index.ts";
import { type ClassFile, readClassFile, writeClassFile } from "../file/index.ts";
import { applyChange } from "./applyChange.ts";
import type { Change } from "./change.ts";
import { changeKinds, readChange } from "./changeShape.ts";
import type { ChangesProblem } from "./changesProblem.ts";
import type { ChangeContext } from "./outcome.ts";
import { nastyTexts, randomChange } from "./randomChange.fixture.ts";

const day = (text: string) => text as Day;
const small = readClassFile(
  "small.json",
  `{
  "format": "benchday-class/1", "currency": "EUR", "budget": "20.00",
  "classes": [
    { "id": "7b", "name": "Class 7b", "balance": "reads",
      "pupils": [
        {"id": "p01", "name": "Ana", "marks": {"reads": 1}}, {"id": "p02", "name": "Ben"},
        {"id": "p03", "name": "Cem"}, {"id": "p04", "name": "Dan", "marks": {"reads": 2}}, {"id": "p05", "name": "Eva"}
      ],
      "apart": [["p01", "p02"]], "together": [["p03", "p04"]],
      "lessons": [
        {"lesson": "lighthouse", "date": "2027-01-12", "start": "09:00", "absent": ["p02", "p03"]},
        {"lesson": "barrier", "date": "2027-01-19", "start": "09:00"}
      ] },
    { "id": "7c", "pupils": [{"id": "p01", "name": "Zoë"}], "lessons": [] }
  ],
  "stock": [{"item": "led red", "count": 5, "box": "box 1"}, {"item": "led red", "count": 2, "box": "box 2"}, {"item": "wire", "count": 9}],
  "movements": [{"date": "2027-01-05", "item": "wire", "change": -4, "why": "lost"}],
  "suppliers": [{"id": "pier", "shipping": "4.90", "offers": [{"id": "led", "item": "led red", "count": 20, "price": "2.45"}]}],
  "computers": [{"id": "pc-1", "batteryMinutes": 60}, {"id": "pc-2"}],
  "boards": [{"id": "board-1"}, {"id": "board-2", "works": false, "note": "burnt"}],
  "supplies": [{"item": "battery-9v", "count": 2}],
  "powerCuts": [{"date": "2027-01-12", "from": "11:00", "to": "12:00"}],
  "decisions": [
    {"kind": "skip", "lesson": "lighthouse", "class": "7b", "date": "2027-01-12"},
    {"kind": "supply", "lesson": "barrier", "item": "battery-9v", "date": "2027-01-04"}
  ],
  "prepared": [{"sitting": "7b/lighthouse/2027-01-12", "what": "charge 1"}, {"sitting": "7b/barrier/2027-01-19", "what": "charge 1"}],
  "counts": [{"date": "2027-01-12", "class": "7b", "lesson": "lighthouse", "item": "led red", "out": 2, "back": 1}],
  "log": [{"date": "2027-01-12", "class": "7b", "lesson": "lighthouse", "team": 1, "what": "led-turned"}]
}`,
).value as ClassFile;
const b = (changed: object) => ({ classes: [changed, {}] });
const lighthouse = { class: "7b", lesson: "lighthouse", date: day("2027-01-12") };
const barrier = { class: "7b", lesson: "barrier", date: day("2027-01-19") };
const skip = small.decisions[0]!;
const supply = small.decisions[1]!;
const pc = { id: "pc-3", works: true, batteryMinutes: null, usbMilliamps: 500, usbPorts: 2, note: "" };
const board = { id: "board-2", works: true, deadPins: ["D5"], note: "" };
const pier = small.suppliers[0]!;
const cut = { date: day("2027-02-02"), from: 600, to: 660 };
const lost = { date: day("2027-01-06"), item: "led red", change: -3, why: "lost", note: "" } as const;
const entry = { date: day("2027-01-19"), class: "7b", lesson: "barrier", team: null, what: "servo-stuck", note: "" };
const counted = { date: day("2027-01-12"), class: "7b", lesson: "lighthouse", item: "led red", out: 3, back: 2, broken: 1 };
const roster = (...names: string[]) =>
  names.map((text, i) => ({ id: `p0${i + 1}`, name: text, marks: {} as Record<string, number> }));

const does: [name: string, change: Change, file: object, effects?: readonly object[]][] = [
  ["about", { kind: "set-about", about: "ours\r\ntwo" }, { about: "ours\ntwo" }],
  ["language", { kind: "set-language", language: "pt-BR" }, { language: "pt-BR" }],
  [
    "another state",
    { kind: "restore-day", date: day("2027-01-05"), clock: 600, file: { ...small, about: "before", powerCuts: [] } },
    { about: "before", powerCuts: [] },
  ],
  ["together", { kind: "join-copy", name: "copy.json", file: { ...small, about: "both" } }, { about: "both" }],
  ["an entry of an undo list, which holds no file", { kind: "join-copy", name: "copy.json" }, {}],
  [
    "a currency without decimals rounds",
    { kind: "set-currency", currency: "JPY", decimals: 0 },
    { currency: "JPY", decimals: 0, budget: 20, suppliers: [{ shipping: 5, offers: [{ price: 2 }] }] },
    [{ code: "sumsRounded", count: 2 }],
  ],
  [
    "a currency with three decimals keeps the figures",
    { kind: "set-currency", currency: "TND", decimals: 3 },
    { currency: "TND", decimals: 3, budget: 20_000, suppliers: [{ shipping: 4900, offers: [{ price: 2450 }] }] },
    [],
  ],
  ["chance", { kind: "set-chance", chance: 0.9 }, { chance: 0.9 }],
  ["no limit", { kind: "set-budget", budget: null }, { budget: null }],
  ["room", { kind: "set-room", room: { name: "12", sockets: 6, lux: 300 } }, { room: { name: "12", sockets: 6, lux: 300 } }],
  [
    "a class begins empty",
    { kind: "add-class", id: "8a", name: "Class 8a", teamSize: 3 },
    { classes: [{}, {}, { id: "8a", name: "Class 8a", pupils: [], lessons: [] }] },
  ],
  ["a class has another name", { kind: "rename-class", class: "7b", name: " 7b red " }, b({ id: "7b", name: "7b red" })],
  [
    "a class leaves with what was settled and ticked for it; counts and log stay",
    { kind: "remove-class", class: "7b" },
    { classes: [{ id: "7c" }], decisions: [supply], prepared: undefined, counts: small.counts, log: small.log },
    [
      { code: "decisionsDropped", count: 1 },
      { code: "ticksDropped", count: 2 },
    ],
  ],
  ["teams of four", { kind: "set-team-size", class: "7b", teamSize: 4 }, b({ teamSize: 4 })],
  ["no balance", { kind: "set-balance", class: "7b", balance: null }, b({ balance: null })],
  [
    "a list pasted again keeps who has the same name, with wishes and absences",
    { kind: "take-roster", class: "7b", pupils: roster("Fay", "dan", "Ana", "Ben", "Cem") },
    b({
      pupils: [
        { id: "p06", name: "Fay" },
        { id: "p04", name: "dan", marks: { reads: 2 } },
        { id: "p01", name: "Ana", marks: { reads: 1 } },
        { id: "p02", name: "Ben" },
        { id: "p03", name: "Cem" },
      ],
      apart: [["p01", "p02"]],
      together: [["p03", "p04"]],
      balance: "reads",
    }),
    [{ code: "rosterTaken", kept: 4, added: 1, left: 1 }],
  ],
  [
    "a list without two of them drops their wishes",
    { kind: "take-roster", class: "7b", pupils: roster("Ana", "Cem") },
    b({ apart: [], together: [], lessons: [{ absent: ["p03"] }, {}] }),
    [
      { code: "rosterTaken", kept: 2, added: 0, left: 3 },
      { code: "wishesDropped", count: 2 },
      { code: "absencesDropped", count: 1 },
    ],
  ],
  [
    "two of one name: the id of the list tells which",
    {
      kind: "take-roster",
      class: "7c",
      pupils: [
        { id: "p09", name: "Zoë", marks: {} },
        { id: "p01", name: "Zoë", marks: { reads: 3 } },
      ],
    },
    {
      classes: [
        {},
        {
          pupils: [
            { id: "p09", name: "Zoë", marks: {} },
            { id: "p01", name: "Zoë", marks: { reads: 3 } },
          ],
        },
      ],
    },
  ],
  [
    "a pupil joins with the next number",
    { kind: "add-pupil", class: "7b", name: "Fay\u202e " },
    b({ pupils: [{}, {}, {}, {}, {}, { id: "p06", name: "Fay", marks: {} }] }),
    [{ code: "idGiven", id: "p06", name: "Fay" }],
  ],
  [
    "a pupil has another name",
    { kind: "rename-pupil", class: "7b", pupil: "p02", name: "Be\u0301a" },
    b({ pupils: [{}, { id: "p02", name: "B\u00e9a" }, {}, {}, {}] }),
  ],
  [
    "who leaves is in no wish and no absence",
    { kind: "remove-pupil", class: "7b", pupil: "p03" },
    b({ pupils: [{ id: "p01" }, { id: "p02" }, { id: "p04" }, { id: "p05" }], together: [], lessons: [{ absent: ["p02"] }, {}] }),
    [
      { code: "wishesDropped", count: 1 },
      { code: "absencesDropped", count: 1 },
    ],
  ],
  [
    "apart",
    { kind: "keep-apart", class: "7b", pupils: ["p01", "p03"] },
    b({
      apart: [
        ["p01", "p02"],
        ["p01", "p03"],
      ],
    }),
  ],
  [
    "together",
    { kind: "keep-together", class: "7b", pupils: ["p03", "p05"] },
    b({
      together: [
        ["p03", "p04"],
        ["p03", "p05"],
      ],
    }),
  ],
  ["a wish is dropped in any order", { kind: "drop-wish", class: "7b", pupils: ["p02", "p01"] }, b({ apart: [] })],
  [
    "a lesson between two",
    { kind: "add-lesson", sitting: { class: "7b", lesson: "signal-lamp", date: day("2027-01-14") }, start: 600 },
    b({ lessons: [{ lesson: "lighthouse" }, { lesson: "signal-lamp", start: 600, absent: [] }, { lesson: "barrier" }] }),
  ],
  [
    "a lesson moves with absences, what was settled for its day, and ticks",
    { kind: "move-lesson", sitting: lighthouse, date: day("2027-01-26"), start: 615 },
    {
      ...b({
        lessons: [{ lesson: "barrier" }, { lesson: "lighthouse", date: "2027-01-26", start: 615, absent: ["p02", "p03"] }],
      }),
      decisions: [{ ...skip, date: "2027-01-26" }, supply],
      prepared: [{ sitting: "7b/lighthouse/2027-01-26", what: "charge 1" }, { sitting: "7b/barrier/2027-01-19" }],
    },
    [
      { code: "decisionsMoved", count: 1 },
      { code: "ticksMoved", count: 1 },
    ],
  ],
  [
    "a lesson is taken out with what hangs on it",
    { kind: "remove-lesson", sitting: lighthouse },
    { ...b({ lessons: [{ lesson: "barrier" }] }), decisions: [supply], prepared: [{ sitting: "7b/barrier/2027-01-19" }] },
  ],
  [
    "lessons change their order: days, times and absences stay, ticks go with their lesson",
    { kind: "order-lessons", class: "7b", lessons: ["barrier", "lighthouse"] },
    {
      ...b({
        lessons: [
          { lesson: "barrier", date: "2027-01-12", absent: ["p02", "p03"] },
          { lesson: "lighthouse", date: "2027-01-19", absent: [] },
        ],
      }),
      prepared: [{ sitting: "7b/lighthouse/2027-01-19" }, { sitting: "7b/barrier/2027-01-12" }],
    },
  ],
  [
    "away",
    { kind: "mark-absent", sitting: barrier, pupils: ["p05", "p01", "p05"] },
    b({ lessons: [{}, { absent: ["p05", "p01"] }] }),
  ],
  ["there", { kind: "mark-present", sitting: lighthouse, pupils: ["p02", "p01"] }, b({ lessons: [{ absent: ["p03"] }, {}] })],
  [
    "a newer answer to the same question takes the place of the old one",
    { kind: "decide", decision: { kind: "supply", lesson: "barrier", item: "power-bank", date: day("2027-01-08") } },
    { decisions: [skip, { kind: "supply", lesson: "barrier", item: "power-bank", date: "2027-01-08" }] },
  ],
  ["what was settled is open again", { kind: "undecide", decision: { ...skip } }, { decisions: [supply] }],
  [
    "a tick",
    { kind: "tick", sitting: "7b/barrier/2027-01-19", what: "set-out-trays" },
    { prepared: [{}, {}, { sitting: "7b/barrier/2027-01-19", what: "set-out-trays" }] },
  ],
  [
    "a tick is taken off",
    { kind: "untick", sitting: "7b/lighthouse/2027-01-12", what: "charge 1" },
    { prepared: [{ sitting: "7b/barrier/2027-01-19" }] },
  ],
  ["a kit", { kind: "set-kit", kit: "harbour-basic", count: 3 }, { kits: [{ kit: "harbour-basic", count: 3 }] }],
  [
    "stock in a box",
    { kind: "set-stock", line: { item: "led red", count: 7, box: "box 2" } },
    { stock: [{ count: 5 }, { count: 7 }, {}] },
  ],
  [
    "stock under another name of the item",
    { kind: "set-stock", line: { item: "resistor 4.7k", count: 7, box: "" } },
    { stock: [{}, {}, {}, { item: "resistor 4k7", count: 7, box: "" }] },
  ],
  ["no stock", { kind: "remove-stock", item: "led red", box: "box 1" }, { stock: [{ box: "box 2" }, { item: "wire" }] }],
  [
    "a list as the whole stock, lines of one place added up",
    {
      kind: "take-stock",
      how: "replace",
      lines: [
        { item: "wire", count: 4, box: "" },
        { item: "servo", count: 1, box: "" },
        { item: "wire", count: 2, box: "" },
      ],
    },
    {
      stock: [
        { item: "wire", count: 6 },
        { item: "servo", count: 1 },
      ],
    },
  ],
  [
    "a list on top: where no box is said, the first place of the item",
    {
      kind: "take-stock",
      how: "add",
      lines: [
        { item: "led red", count: 10, box: "" },
        { item: "led red", count: 1, box: "box 2" },
        { item: "servo", count: 1, box: "" },
      ],
    },
    { stock: [{ count: 15, box: "box 1" }, { count: 3, box: "box 2" }, { count: 9 }, { item: "servo" }] },
  ],
  [
    "a list that sets what it names: without a box the whole of the item",
    { kind: "take-stock", how: "update", lines: [{ item: "led red", count: 6, box: "" }] },
    { stock: [{ count: 6, box: "box 1" }, { count: 0, box: "box 2" }, { count: 9 }] },
  ],
  ["lost", { kind: "move-stock", movement: lost }, { movements: [{}, lost] }],
  ["a computer", { kind: "set-computer", computer: pc }, { computers: [{}, {}, pc] }],
  ["no computer", { kind: "remove-computer", id: "pc-1" }, { computers: [{ id: "pc-2" }] }],
  ["a board works again, but for one pin", { kind: "set-device", what: "boards", device: board }, { boards: [{}, board] }],
  [
    "a cable has no pins",
    { kind: "set-device", what: "cables", device: { ...board, id: "c1" } },
    { cables: [{ id: "c1", deadPins: [] }] },
  ],
  ["no board", { kind: "remove-device", what: "boards", id: "board-2" }, { boards: [{ id: "board-1" }] }],
  [
    "so many boards: those that are there stay",
    { kind: "count-devices", what: "boards", count: 4 },
    { boards: [{ id: "board-1" }, { id: "board-2", note: "burnt" }, { id: "board-3", works: true }, { id: "board-4" }] },
  ],
  [
    "fewer boards: those of which something is known stay",
    { kind: "count-devices", what: "boards", count: 1 },
    { boards: [{ id: "board-2", note: "burnt" }] },
  ],
  [
    "the first cables",
    { kind: "count-devices", what: "cables", count: 2 },
    { cables: [{ id: "cable-01", works: true, deadPins: [] }, { id: "cable-02" }] },
  ],
  [
    "supplies",
    { kind: "set-supply", line: { item: "power-bank", count: 3, box: "" } },
    { supplies: [{}, { item: "power-bank", count: 3 }] },
  ],
  ["no supplies", { kind: "remove-supply", item: "battery-9v", box: "" }, { supplies: [] }],
  ["a power cut", { kind: "add-power-cut", cut }, { powerCuts: [{}, cut] }],
  ["no power cut", { kind: "remove-power-cut", cut: { ...small.powerCuts[0]! } }, { powerCuts: [] }],
  ["a shop", { kind: "set-supplier", supplier: { ...pier, days: 3 } }, { suppliers: [{ id: "pier", days: 3 }] }],
  ["no shop", { kind: "remove-supplier", id: "pier" }, { suppliers: [] }],
  [
    "an order came",
    { kind: "order-came", movements: [{ ...lost, change: 20, why: "bought" }] },
    { movements: [{}, { item: "led red", change: 20, why: "bought" }] },
  ],
  [
    "a second count corrects the first; counts of two trays add up",
    { kind: "count-in", counts: [counted, { ...counted, broken: 0 }] },
    { counts: [{ ...counted, out: 6, back: 4, broken: 1 }] },
  ],
  ["log", { kind: "log", entry }, { log: [{}, entry] }],
  ["log taken back", { kind: "take-back-log", entry: { ...small.log[0]! } }, { log: [] }],
];

const refuses: [name: string, change: unknown, code: ChangesProblem["code"], data?: object][] = [
  ["no change at all", null, "changes.badChange"],
  ["an unknown kind", { kind: "burn" }, "changes.badChange", { found: "burn" }],
  ["a kind that objects have", { kind: "constructor" }, "changes.badChange"],
  ["a field too many", { kind: "set-about", about: "", more: 1 }, "changes.badChange"],
  ["a field missing", { kind: "rename-class", class: "7b" }, "changes.badChange"],
  ["an unknown class", { kind: "remove-class", class: "7d" }, "changes.unknownClass", { found: "7d", near: "7b" }],
  ["an unknown pupil", { kind: "remove-pupil", class: "7b", pupil: "p9" }, "changes.unknownPupil", { class: "Class 7b" }],
  ["a pupil of the other class", { kind: "keep-apart", class: "7c", pupils: ["p01", "p02"] }, "changes.unknownPupil"],
  ["a class that is there", { kind: "add-class", id: "7c", name: "x", teamSize: 3 }, "changes.alreadyThere", { found: "7c" }],
  ["an id with a slash", { kind: "add-class", id: "7/c", name: "x", teamSize: 3 }, "changes.badId"],
  ["an id that objects have", { kind: "add-class", id: "__proto__", name: "x", teamSize: 3 }, "changes.badId"],
  ["an empty name", { kind: "add-pupil", class: "7b", name: " \u200f\u0007 " }, "changes.emptyName"],
  ["a name that cannot be seen", { kind: "add-pupil", class: "7b", name: "\u200b" }, "changes.emptyName"],
  [
    "a name of 10,001 letters",
    { kind: "add-pupil", class: "7b", name: "x".repeat(10_001) },
    "changes.longText",
    { most: 10_000 },
  ],
  ["a name of a million", { kind: "add-pupil", class: "7b", name: "x".repeat(1_000_000) }, "changes.longText"],
  ["a name that is a number", { kind: "add-pupil", class: "7b", name: 7 }, "changes.badChange"],
  ["a team of one", { kind: "set-team-size", class: "7b", teamSize: 1 }, "changes.badTeamSize", { least: 2, most: 6 }],
  ["an unknown mark", { kind: "set-balance", class: "7b", balance: "reeds" }, "changes.unknownMark", { near: "reads" }],
  [
    "a mark that objects have",
    { kind: "take-roster", class: "7b", pupils: [{ id: "p01", name: "A", marks: JSON.parse('{"__proto__": 1}') }] },
    "changes.badMark",
  ],
  [
    "the same under a turning sign",
    { kind: "take-roster", class: "7b", pupils: [{ id: "p01", name: "A", marks: { "__pro\u202eto__": 1 } }] },
    "changes.badMark",
  ],
  [
    "a mark that is no number",
    { kind: "take-roster", class: "7b", pupils: [{ id: "p01", name: "A", marks: { reads: Number.NaN } }] },
    "changes.badMark",
  ],
  ["apart from oneself", { kind: "keep-apart", class: "7b", pupils: ["p01", "p01"] }, "changes.pupilTwice", { pupil: "Ana" }],
  ["apart already", { kind: "keep-apart", class: "7b", pupils: ["p02", "p01"] }, "changes.alreadyThere"],
  [
    "apart, but together",
    { kind: "keep-apart", class: "7b", pupils: ["p03", "p04"] },
    "changes.apartAndTogether",
    { pupils: ["Cem", "Dan"] },
  ],
  ["together, but apart", { kind: "keep-together", class: "7b", pupils: ["p01", "p02"] }, "changes.apartAndTogether"],
  [
    "together with too many by a chain",
    { kind: "keep-together", class: "7b", pupils: ["p04", "p05", "p01"] },
    "changes.togetherTooMany",
    { most: 3 },
  ],
  [
    "a wish that nobody had",
    { kind: "drop-wish", class: "7b", pupils: ["p01", "p05"] },
    "changes.notThere",
    { found: "Ana, Eva" },
  ],
  ["the same lesson on the same day", { kind: "add-lesson", sitting: lighthouse, start: 900 }, "changes.alreadyThere"],
  ["two lessons at once", { kind: "add-lesson", sitting: { ...lighthouse, lesson: "x" }, start: 540 }, "changes.lessonsOverlap"],
  [
    "a day that does not exist",
    { kind: "add-lesson", sitting: { ...lighthouse, date: "2027-02-30" }, start: 540 },
    "changes.badDay",
  ],
  ["a year of the past", { kind: "add-lesson", sitting: { ...lighthouse, date: "0227-02-03" }, start: 540 }, "changes.badDay"],
  ["midnight of tomorrow", { kind: "add-lesson", sitting: barrier, start: 1440 }, "changes.badTime"],
  [
    "a lesson on top of another",
    { kind: "move-lesson", sitting: lighthouse, date: "2027-01-19", start: 540 },
    "changes.lessonsOverlap",
  ],
  ["a meeting that is not there", { kind: "remove-lesson", sitting: { ...barrier, class: "7c" } }, "changes.unknownSitting"],
  ["an order that forgets one", { kind: "order-lessons", class: "7b", lessons: ["barrier"] }, "changes.notAllLessons"],
  [
    "an order that names one twice",
    { kind: "order-lessons", class: "7b", lessons: ["barrier", "barrier"] },
    "changes.notAllLessons",
  ],
  ["a stranger away", { kind: "mark-absent", sitting: barrier, pupils: ["p99"] }, "changes.unknownPupil"],
  ["undoing what was not settled", { kind: "undecide", decision: { ...skip, class: "7c" } }, "changes.notThere"],
  ["leaving out for no class", { kind: "decide", decision: { ...skip, class: "9" } }, "changes.unknownClass"],
  ["a tick of no meeting", { kind: "tick", sitting: "7c/barrier/2027-01-19", what: "charge 1" }, "changes.unknownSitting"],
  ["half a kit", { kind: "set-kit", kit: "harbour-basic", count: 0.5 }, "changes.badCount", { found: "0.5" }],
  ["less than nothing", { kind: "set-stock", line: { item: "wire", count: -1, box: "" } }, "changes.badCount"],
  [
    "not a number",
    { kind: "set-stock", line: { item: "wire", count: Number.NaN, box: "" } },
    "changes.badCount",
    { found: "NaN" },
  ],
  ["a teapot", { kind: "set-stock", line: { item: "teapot", count: 1, box: "" } }, "changes.unknownItem", { found: "teapot" }],
  [
    "an item nearly",
    { kind: "set-stock", line: { item: "servoo", count: 1, box: "" } },
    "changes.unknownItem",
    { near: "servo" },
  ],
  ["stock in a box where it is not", { kind: "remove-stock", item: "wire", box: "box 9" }, "changes.notThere"],
  [
    "stock below what is lost since",
    { kind: "set-stock", line: { item: "wire", count: 3, box: "" } },
    "changes.takesTooMany",
    { item: "wire", count: 3 },
  ],
  ["a list below what is lost since", { kind: "take-stock", how: "replace", lines: [] }, "changes.takesTooMany"],
  ["more lost than there is", { kind: "move-stock", movement: { ...lost, change: -8 } }, "changes.takesTooMany", { count: 7 }],
  ["lost upwards", { kind: "move-stock", movement: { ...lost, change: 3 } }, "changes.wrongSign", { why: "lost", expected: "-" }],
  ["nothing moved", { kind: "move-stock", movement: { ...lost, change: 0 } }, "changes.noMovement", { item: "led red" }],
  [
    "a computer without ports",
    { kind: "set-computer", computer: { ...pc, usbPorts: 0 } },
    "changes.noPorts",
    { computer: "pc-3" },
  ],
  ["a pin that no board has", { kind: "set-device", what: "boards", device: { ...board, deadPins: ["D14"] } }, "changes.badPin"],
  ["a board that is not there", { kind: "remove-device", what: "boards", id: "board-9" }, "changes.notThere"],
  ["a servo as a supply", { kind: "set-supply", line: { item: "servo", count: 1, box: "" } }, "changes.notASupply"],
  ["a power cut backwards", { kind: "add-power-cut", cut: { ...cut, to: 600 } }, "changes.timesBackwards", { fromClock: 600 }],
  ["a power cut twice", { kind: "add-power-cut", cut: small.powerCuts[0] }, "changes.alreadyThere"],
  ["a shop with a sum below nought", { kind: "set-supplier", supplier: { ...pier, shipping: -1 } }, "changes.badSum"],
  ["ten digits before the point", { kind: "set-budget", budget: 1e11 }, "changes.badSum"],
  [
    "two offers of one id",
    { kind: "set-supplier", supplier: { ...pier, offers: [pier.offers[0], pier.offers[0]] } },
    "changes.alreadyThere",
  ],
  ["a currency with other decimals", { kind: "set-currency", currency: "EUR", decimals: 0 }, "changes.badCurrency"],
  ["no currency", { kind: "set-currency", currency: "EURO", decimals: 2 }, "changes.badCurrency", { near: "EUR" }],
  ["a certain chance", { kind: "set-chance", chance: 1 }, "changes.badChance"],
  ["a language by its name", { kind: "set-language", language: "English" }, "changes.badLanguage"],
  ["light below nought", { kind: "set-room", room: { name: "", sockets: 0, lux: -1 } }, "changes.badNumber"],
  ["more back than out", { kind: "count-in", counts: [{ ...counted, out: 2 }] }, "changes.moreBackThanOut", { out: 2, back: 2 }],
  ["a count of no class", { kind: "count-in", counts: [{ ...counted, class: "9" }] }, "changes.unknownClass"],
  ["a note that is not there", { kind: "take-back-log", entry }, "changes.notThere"],
];

const nothingNew: [name: string, change: Change][] = [
  ["the same text", { kind: "set-about", about: "" }],
  ["the same name", { kind: "rename-pupil", class: "7b", pupil: "p01", name: " Ana" }],
  ["the same day", { kind: "move-lesson", sitting: barrier, date: barrier.date, start: 540 }],
  ["the same order", { kind: "order-lessons", class: "7b", lessons: ["lighthouse", "barrier"] }],
  ["away already", { kind: "mark-absent", sitting: lighthouse, pupils: ["p02"] }],
  ["there already", { kind: "mark-present", sitting: barrier, pupils: ["p02"] }],
  ["settled already", { kind: "decide", decision: { ...supply } }],
  ["ticked already", { kind: "tick", sitting: "7b/barrier/2027-01-19", what: "charge 1" }],
  ["not ticked", { kind: "untick", sitting: "7b/barrier/2027-01-19", what: "nothing" }],
  ["as many as there are", { kind: "count-devices", what: "computers", count: 2 }],
  ["none of a kit that is not there", { kind: "set-kit", kit: "x", count: 0 }],
  ["the same shop", { kind: "set-supplier", supplier: { ...pier } }],
  ["the same list", { kind: "take-stock", how: "update", lines: small.stock }],
  ["the same pupils", { kind: "take-roster", class: "7b", pupils: small.classes[0]!.pupils }],
  ["an order of nothing", { kind: "order-came", movements: [] }],
];

describe("a change does what it says, and leaves the rest alone", () => {
  for (const [name, change, wanted, effects] of does)
    test(`${change.kind}: ${name}`, () => {
      const before = JSON.stringify(small);
      const outcome = applyChange(small, change);
      if ("problem" in outcome) throw new Error(JSON.stringify(outcome.problem));
      const { prepared, ...rest } = wanted as Partial<ClassFile>;
      expect(outcome.value).toMatchObject(rest);
      if ("prepared" in wanted)
        prepared === undefined
          ? expect("prepared" in outcome.value).toBe(false)
          : expect(outcome.value.prepared).toMatchObject(prepared);
      if (effects) expect(outcome.effects).toEqual(effects);
      expect(JSON.stringify(small)).toBe(before);
      // What the row does not name is the same object as before.
      for (const field of Object.keys(small) as (keyof ClassFile)[])
        if (!(field in wanted) && JSON.stringify(outcome.value[field]) === JSON.stringify(small[field]))
          expect(outcome.value[field], field).toBe(small[field]);
      const untouched = Object.keys(small).filter((field) => !(field in wanted) && field !== "decisions" && field !== "prepared");
      for (const field of untouched as (keyof ClassFile)[]) expect(outcome.value[field], field).toBe(small[field]);
      const read = readClassFile("after.json", writeClassFile(outcome.value));
      expect(read.problems.filter((p) => p.severity !== "warning")).toEqual([]);
      expect(read.value).toEqual(outcome.value);
    });
  test("every kind has a row", () => {
    expect(changeKinds.filter((kind) => !does.some(([, change]) => change.kind === kind))).toEqual([]);
  });
});

describe("what does not fit is refused, and nothing is done", () => {
  for (const [name, change, code, data] of refuses)
    test(`${name}: ${code}`, () => {
      const before = JSON.stringify(small);
      expect(applyChange(small, change as Change)).toMatchObject({ problem: { code, ...data } });
      expect(JSON.stringify(small)).toBe(before);
    });
  test("the last class stays", () => {
    const one = { ...small, classes: small.classes.slice(1) };
    expect(applyChange(one, { kind: "remove-class", class: "7c" })).toEqual({
      problem: { code: "changes.lastClass", class: "7c" },
    });
  });
});

describe("what is said already changes nothing: the very same object", () => {
  for (const [name, change] of nothingNew)
    test(`${change.kind}: ${name}`, () => {
      const outcome = applyChange(small, change);
      if ("problem" in outcome) throw new Error(JSON.stringify(outcome.problem));
      expect(outcome.value).toBe(small);
    });
});

describe("with lessons and kits known", () => {
  const kit = { format: "benchday-kit/1", id: "box", name: "Box", contents: new Map([["servo", 2]]), note: "" } as const;
  const context: ChangeContext = {
    lessonMinutes: new Map([
      ["lighthouse", 90],
      ["barrier", 90],
    ]),
    kits: new Map([["box", kit]]),
  };
  const cases: [name: string, change: Change, code: ChangesProblem["code"] | null, file?: Partial<ClassFile>][] = [
    ["an unknown lesson", { kind: "add-lesson", sitting: { ...barrier, lesson: "barier" }, start: 900 }, "changes.unknownLesson"],
    [
      "a lesson into another",
      { kind: "add-lesson", sitting: { ...lighthouse, lesson: "barrier" }, start: 629 },
      "changes.lessonsOverlap",
    ],
    ["a lesson right after another", { kind: "add-lesson", sitting: { ...lighthouse, lesson: "barrier" }, start: 630 }, null],
    ["an unknown kit", { kind: "set-kit", kit: "bux", count: 1 }, "changes.unknownKit"],
    [
      "an offer of an unknown kit",
      {
        kind: "set-supplier",
        supplier: { ...pier, offers: [{ id: "k", contains: { kind: "kit", kit: "bux" }, price: 1, available: null }] },
      },
      "changes.unknownKit",
    ],
    [
      "what lies in the kits may be lost",
      { kind: "move-stock", movement: { ...lost, item: "servo", change: -2 } },
      null,
      { kits: [{ kit: "box", count: 1 }] },
    ],
    [
      "not more of it",
      { kind: "move-stock", movement: { ...lost, item: "servo", change: -3 } },
      "changes.takesTooMany",
      { kits: [{ kit: "box", count: 1 }] },
    ],
  ];
  for (const [name, change, code, more] of cases)
    test(name, () => {
      const outcome = applyChange({ ...small, ...more }, change, context);
      expect("problem" in outcome ? outcome.problem.code : null).toBe(code);
    });
});

test("a class file that would be larger than is read is refused", { timeout: 60_000 }, () => {
  const note = "x".repeat(9_990);
  const log = Array.from({ length: 780 }, () => ({ ...entry, note }));
  const large = { ...small, log };
  const change: Change = { kind: "log", entry: { ...entry, note } };
  expect(applyChange(large, change)).toMatchObject({ effects: [] });
  expect(applyChange({ ...small, log: [...log, ...log.slice(0, 20)] }, change)).toEqual({
    problem: { code: "changes.fileTooLarge" },
  });
});

test("lists have their bounds", () => {
  const many = Array.from({ length: 2_000 }, (_, i) => ({ id: `n${i}`, name: `N ${i}`, marks: {} }));
  const full = applyChange(small, { kind: "take-roster", class: "7c", pupils: many });
  if ("problem" in full) throw new Error(full.problem.code);
  expect(applyChange(full.value, { kind: "add-pupil", class: "7c", name: "One more" })).toEqual({
    problem: { code: "changes.tooMany", most: 2_000 },
  });
});

test("nasty texts in every field are refused or kept as text, and harm nothing", () => {
  const demo = readClassFile("harbour.json", readFileSync(new URL("../../../demo/harbour.json", import.meta.url), "utf8")).value!;
  const own = Object.getOwnPropertyNames(Object.prototype).sort();
  /** The change with one of its texts, or one of its names of fields, put in another's place. */
  const spoilt = (value: unknown, text: string, at: { left: number }): unknown => {
    if (typeof value === "string") return at.left-- === 0 ? text : value;
    if (Array.isArray(value)) return value.map((inside) => spoilt(inside, text, at));
    if (typeof value !== "object" || value === null) return value;
    return Object.fromEntries(
      Object.entries(value).map(([field, inside]) => [
        field !== "kind" && at.left-- === 0 ? text : field,
        field === "kind" ? inside : spoilt(inside, text, at),
      ]),
    );
  };
  const random = seededRandom(20_261_125, "nasty");
  let kept = 0;
  for (const kind of changeKinds)
    for (let n = 0; n < sample(12, 400); n += 1) {
      const change = spoilt(randomChange(demo, random, kind), nastyTexts[n % nastyTexts.length]!, { left: random.int(0, 9) });
      const outcome = applyChange(demo, change as Change);
      if ("problem" in outcome) {
        expect(outcome.problem.code).toMatch(/^changes\./);
        continue;
      }
      kept += 1;
      const read = readClassFile("after.json", writeClassFile(outcome.value));
      expect(
        read.problems.filter((p) => p.severity !== "warning"),
        JSON.stringify(change),
      ).toEqual([]);
      if (n % 8 === 0) expect(read.value, JSON.stringify(change)).toEqual(outcome.value);
    }
  expect(kept).toBeGreaterThan(50);
  expect(Object.getOwnPropertyNames(Object.prototype).sort()).toEqual(own);
  expect(({} as Record<string, unknown>).polluted).toBe(undefined);
});

test("anything at all is answered", () => {
  const random = seededRandom(3, "anything");
  const anything = (depth: number): unknown =>
    [
      () => null,
      () => undefined,
      () => random.int(-5, 5),
      () => "7b",
      () => nastyTexts[random.int(0, nastyTexts.length - 1)],
      () => Number.NaN,
      () => (depth > 3 ? [] : [anything(depth + 1), anything(depth + 1)]),
      () => (depth > 3 ? {} : { class: anything(depth + 1), name: anything(depth + 1), id: anything(depth + 1) }),
      () => () => 1,
      () => Symbol("x"),
      () => 10n,
    ][random.int(0, 10)]!();
  for (let n = 0; n < sample(2_000, 20_000); n += 1) {
    const kind = changeKinds[n % changeKinds.length]!;
    const { kind: _kind, ...fields } = randomChange(small, random, kind);
    const change = Object.fromEntries([
      ["kind", kind],
      ...Object.entries(fields).map(([field, value]) => [field, random.next() < 0.5 ? anything(0) : value]),
    ]);
    const read = readChange(change);
    if ("problem" in read) expect(read.problem.code).toMatch(/^changes\./);
    else expect(() => applyChange(small, change as Change)).not.toThrow();
  }
});
