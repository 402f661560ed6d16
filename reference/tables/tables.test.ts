// Our lessons' tables, rehearsed from lesson.yaml and program.cpp, against ngspice on decks that were written by hand.
//
// A deck says what a person would draw for one moment of the lesson: port, cable, fuse, board, pins, parts. What the rehearsal
// tells (meter readings, the light's current, what the supply gives at most) must be what ngspice finds there.
import { expect, test } from "vitest";
import { type OneRehearsal, rehearseOnce } from "../../src/bench/rehearsal/index.ts";
import { ourLesson } from "../../src/bench/rehearsal/lesson.fixture.ts";
import { type Recording, readDecks, runNgspice } from "../circuits/record.ts";
import { hasTool, sha256, toolVersion } from "../tools.ts";
import recordedJson from "./recorded.json" with { type: "json" };

const recorded: Recording = recordedJson;
const folder = new URL("decks", import.meta.url).pathname;
const decks = readDecks(folder);

type Told = (once: OneRehearsal) => number;
const volts =
  (ms: number, part: string, leg: string): Told =>
  (once) =>
    once.readings.find((r) => r.ms === ms && r.at.part === part && r.at.leg === leg)?.volts ?? Number.NaN;
const seenAmps =
  (part: string, seen: string): Told =>
  (once) =>
    Number(once.observations.find((o) => o.part === part && o.seen === seen)?.figures.amps ?? Number.NaN);

interface Case {
  readonly deck: string;
  readonly lesson: string;
  readonly items?: readonly (readonly [part: string, item: string])[];
  /** What the rehearsal tells, and the same of ngspice from its voltages. */
  readonly compared: readonly (readonly [what: string, ours: Told, theirs: (v: (node: string) => number) => number])[];
}

const cases: readonly Case[] = [
  {
    deck: "lighthouse-lit",
    lesson: "lighthouse",
    compared: [
      ["R1.1", volts(250, "R1", "1"), (v) => v("d9")],
      ["R1.2", volts(250, "R1", "2"), (v) => v("anode1")],
      ["A of the supply at most", (o) => o.supply?.peakAmps ?? 0, (v) => (v("port") - v("cable")) / 0.1],
      ["V of the rail at least", (o) => o.supply?.leastVolts ?? 0, (v) => v("rail")],
    ],
  },
  {
    deck: "lighthouse-22-ohms",
    lesson: "lighthouse",
    items: [["R1", "resistor 22"]],
    compared: [
      [
        "A of the pin, a hazard",
        (o) => o.hazards.find((h) => h.code === "pin-overcurrent")?.value ?? 0,
        (v) => (v("rail") - v("d9")) / 25,
      ],
      [
        "A of the LED, a hazard",
        (o) => o.hazards.find((h) => h.code === "led-overcurrent")?.value ?? 0,
        (v) => (v("d9") - v("anode1")) / 22,
      ],
    ],
  },
  {
    deck: "signal-lamp-pressed",
    lesson: "signal-lamp",
    compared: [
      ["B1.1", volts(1100, "B1", "1"), (v) => v("d2")],
      ["R1.1", volts(1100, "R1", "1"), (v) => v("d9")],
      ["R1.2", volts(1100, "R1", "2"), (v) => v("anode1")],
      ["R2.2", volts(1100, "R2", "2"), (v) => v("anode2")],
      ["A of the supply at most", (o) => o.supply?.peakAmps ?? 0, (v) => (v("port") - v("cable")) / 0.1],
    ],
  },
  {
    deck: "signal-lamp-released",
    lesson: "signal-lamp",
    compared: [
      ["B1.1", volts(2100, "B1", "1"), (v) => v("d2")],
      ["R1.1", volts(2100, "R1", "1"), (v) => v("d9")],
      ["R2.1", volts(2100, "R2", "1"), (v) => v("d10")],
    ],
  },
  {
    deck: "quay-lamp-day",
    lesson: "quay-lamp-at-dusk",
    compared: [
      ["LDR1.1", volts(1500, "LDR1", "1"), (v) => v("rail")],
      ["LDR1.2", volts(1500, "LDR1", "2"), (v) => v("a0")],
    ],
  },
  {
    deck: "quay-lamp-dusk",
    lesson: "quay-lamp-at-dusk",
    compared: [
      ["LDR1.2", volts(3000, "LDR1", "2"), (v) => v("a0")],
      [
        "the number that the program writes",
        (o) => Number(o.observations.find((x) => x.part === "text" && x.ms > 2000)?.seen),
        (v) => Math.floor((1024 * v("a0")) / v("rail")),
      ],
    ],
  },
  {
    deck: "barrier-open-pulse-low",
    lesson: "barrier",
    compared: [["A of the green lamp", seenAmps("LED2", "lit"), (v) => (v("d10") - v("anode2")) / 220]],
  },
  {
    deck: "barrier-start",
    lesson: "barrier",
    compared: [
      ["A of the supply at most", (o) => o.supply?.peakAmps ?? 0, (v) => (v("port") - v("cable")) / 0.1],
      ["V of the rail at least", (o) => o.supply?.leastVolts ?? 0, (v) => v("rail")],
    ],
  },
];

/** Readings are rounded to 0.1 mV; a servo's pulse moves the rail by its 47 µA for a twentieth of the time. */
const isNear = (ours: number, theirs: number) => Math.abs(ours - theirs) <= Math.max(6e-5, 2e-5 * Math.abs(theirs));

function differences({ lesson, items, compared }: Case, printed: string): string[] {
  const found = new Map([...printed.matchAll(/^(\S+) = (\S+)$/gm)].map((m) => [m[1] as string, Number(m[2])]));
  const v = (node: string) => found.get(node) ?? Number.NaN;
  // The board's own adapter has the port's resistance, and carries the barrier.
  const once = rehearseOnce(ourLesson(lesson), { supply: "adapter 2000mA", ...(items ? { items: new Map(items) } : {}) });
  return compared.flatMap(([what, ours, theirs]) =>
    isNear(ours(once), theirs(v)) ? [] : [`${what}: ${ours(once)}, ngspice ${theirs(v)}`],
  );
}

for (const one of cases)
  test(`${one.deck} as ngspice has it`, () => {
    const record = recorded.decks[one.deck];
    expect(record?.input, "the deck has changed since it was recorded").toBe(sha256(decks.get(one.deck) as string));
    expect(record?.output).toBe(sha256(record?.printed ?? ""));
    expect(differences(one, record?.printed ?? "")).toEqual([]);
  });

test("every deck is compared, and nothing is recorded for decks that are gone", () => {
  expect([...decks.keys()].sort()).toEqual(cases.map((c) => c.deck).sort());
  expect(Object.keys(recorded.decks).sort()).toEqual([...decks.keys()].sort());
});

test("a wrong answer would be noticed", () => {
  const lit = cases[0] as Case;
  const printed = (recorded.decks["lighthouse-lit"]?.printed ?? "").replace(/^d9 = .*$/m, "d9 = 4.6335");
  expect(differences(lit, printed)).toHaveLength(1);
});

const derive = process.env.REQUIRE_TOOLS || hasTool("ngspice") ? test : test.skip;
derive("derived again by ngspice", () => {
  expect(toolVersion("ngspice")).toBe(recorded.version);
  for (const one of cases) expect(differences(one, runNgspice(`${folder}/${one.deck}.cir`)), one.deck).toEqual([]);
});
