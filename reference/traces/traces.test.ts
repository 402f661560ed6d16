// Waveforms of small lessons, from lesson.yaml and program.cpp, against ngspice: 100 ms of PWM into capacitors, an LED, a coil.
//
// Voltages agree within 1 mV at every moment that is looked at, an LED's current within 5 µA, a coil's within 50 µA.
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { traceLesson } from "../../src/bench/rehearsal/index.ts";
import type { Recording } from "../circuits/record.ts";
import { hasTool, sha256, toolVersion } from "../tools.ts";
import { type TracedLesson, tracedLessons } from "./lessons.ts";
import { measure } from "./record.ts";
import recordedJson from "./recorded.json" with { type: "json" };

const recorded: Recording = recordedJson;
const pathOf = (deck: string) => new URL(`decks/${deck}.cir`, import.meta.url).pathname;

function differences({ lesson, probe, name, moments, tolerance }: TracedLesson, printed: string): string[] {
  const theirs = new Map([...printed.matchAll(/^(\S+) = (\S+)$/gm)].map((m) => [m[1] as string, Number(m[2])]));
  const { probes } = traceLesson(lesson, { probes: [probe], fromMs: 0, toMs: 100, mostPoints: 1_000_000 });
  const points = probes[0]?.points ?? [];
  return moments.flatMap((ms, k) => {
    const i = points.findIndex(([s]) => s > ms / 1000);
    const [[t0, a], [t1, b]] = [points[i - 1] ?? [0, Number.NaN], points[i] ?? [0, Number.NaN]];
    const ours = a + ((b - a) * (ms / 1000 - t0)) / (t1 - t0);
    const found = theirs.get(`${name}${k}`) ?? Number.NaN;
    return Math.abs(ours - found) <= tolerance ? [] : [`${ms} ms: ${ours}, ngspice ${found}`];
  });
}

for (const one of tracedLessons)
  test(`${one.deck} as ngspice has it`, () => {
    const record = recorded.decks[one.deck];
    expect(record?.input, "the deck has changed since it was recorded").toBe(sha256(readFileSync(pathOf(one.deck), "utf8")));
    expect(record?.output).toBe(sha256(record?.printed ?? ""));
    expect(differences(one, record?.printed ?? "")).toEqual([]);
  });

test("two millivolts would be noticed", () => {
  const [first] = tracedLessons;
  if (!first) throw new Error("no lessons");
  const printed = (recorded.decks[first.deck]?.printed ?? "").replace(/^x5 = (\S+)$/m, (_, v) => `x5 = ${Number(v) + 0.002}`);
  expect(differences(first, printed)).toHaveLength(1);
});

const derive = process.env.REQUIRE_TOOLS || hasTool("ngspice") ? test : test.skip;
derive(
  "derived again by ngspice",
  () => {
    expect(toolVersion("ngspice")).toBe(recorded.version);
    for (const one of tracedLessons) expect(differences(one, measure(pathOf(one.deck))), one.deck).toEqual([]);
  },
  60_000,
);
