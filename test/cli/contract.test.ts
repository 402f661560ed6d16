// What each command answers with --json, field by field: other programs and next year's page rely on it.
//
// Shapes are written as small patterns; figures are checked where they follow from the input alone. More fields may be added.
import { mkdirSync, readdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { answerOf, benchday, freshFolder } from "./benchday.ts";

const demo = ["demo/harbour.json", "--today", "2026-12-01"];
const verdicts = ["unsafe", "fails its rehearsal", "needs another supply", "short of parts", "not rehearsed yet", "ready"];
// biome-ignore lint/suspicious/noExplicitAny: the answers are looked at as another program would, without our types.
type Any = any;

describe("check", () => {
  test("problems with code, file, line and column", () => {
    const folder = freshFolder();
    writeFileSync(join(folder, "c.json"), '{ "format": "benchday-class/1",\n  "curency": "EUR" }\n');
    const answer: Any = answerOf(["check", "c.json"], { cwd: folder });
    expect(answer.problems).toContainEqual(
      expect.objectContaining({ code: "document.unknownField", file: "c.json", line: 2, column: 3, near: "currency" }),
    );
  });
  test("everything that comes with Benchday is well", () => {
    const ran = benchday(["check", "lessons", "kits", "demo/harbour.json"]);
    expect(ran.err).toBe("");
    expect(ran.status).toBe(0);
  });
});

describe("run", () => {
  const folder = freshFolder();
  writeFileSync(
    join(folder, "p.cpp"),
    `void setup() { pinMode(2, INPUT_PULLUP); pinMode(9, OUTPUT); Serial.begin(9600); analogWrite(5, 64); tone(8, 440, 250); }
void loop() { if (Serial.available() > 0) { char c = Serial.read(); Serial.println(c); } digitalWrite(9, digitalRead(2) == LOW); }
`,
  );
  writeFileSync(
    join(folder, "i.json"),
    JSON.stringify([
      { ms: 100, pin: "D2", level: "low" },
      { ms: 300, text: "a" },
    ]),
  );
  const answer: Any = answerOf(["run", "p.cpp", "--inputs", "i.json", "--for", "500ms"], { cwd: folder });
  test("times, modes, levels", () => {
    expect(answer.ms).toBe(500);
    expect(answer.modes).toContainEqual({ ms: expect.any(Number), pin: "D2", mode: "pull-up" });
    const rise = answer.pins.find((p: Any) => p.pin === "D9" && p.level === "high");
    expect(rise.ms).toBeGreaterThanOrEqual(100);
    expect(rise.ms).toBeLessThan(101);
  });
  test("PWM, tones, text", () => {
    expect(answer.pwm).toContainEqual({ ms: expect.any(Number), pin: "D5", value: 64 });
    expect(answer.tones[0]).toMatchObject({ pin: "D8", hz: 440 });
    expect(answer.tones[0].endMs - answer.tones[0].ms).toBeCloseTo(250, 0);
    expect(answer.text).toBe("a\r\n");
    expect(answer.lines).toEqual([{ ms: expect.any(Number), text: "a" }]);
    expect(answer.problems).toEqual([]);
  });
});

describe("rehearse", () => {
  const answer: Any = answerOf(["rehearse", "lighthouse"]);
  test("verdict, observations, checks", () => {
    expect(verdicts).toContain(answer.verdict);
    for (const o of answer.observations)
      expect(o).toMatchObject({ ms: expect.any(Number), part: expect.any(String), seen: expect.any(String) });
    for (const c of answer.checks) expect(c).toMatchObject({ ms: expect.any(Number), passed: true, seen: expect.any(String) });
  });
  test("supplies fit, do not, or nobody can say", () => {
    for (const s of answer.supplies) expect([true, false, null]).toContain(s.fits);
    // A bank that switches itself off below some 60 mA cannot carry one lamp; a port can.
    expect(answer.supplies.find((s: Any) => s.supply === "usb-port 500mA")).toMatchObject({ fits: true });
    expect(answer.supplies.find((s: Any) => s.supply === "power-bank").fits).not.toBe(true);
    for (const s of answer.supplies) expect(s.amps).toBeGreaterThan(0.02);
  });
  test("variants and margins", () => {
    for (const v of answer.variants) expect(verdicts).toContain(v.verdict);
    expect(answer.margins.map((m: Any) => m.part)).toContain("R1");
  });
  test("voltage and current over time: PWM of 490.196 Hz, edge by edge", () => {
    const traced: Any = answerOf(["rehearse", "dimmer", "--trace", "D9,LED1.anode:A", "--from", "1500ms", "--to", "1510ms"]);
    expect(traced.problems).toEqual([]);
    expect(traced.probes.map((p: Any) => [p.at, p.unit])).toEqual([
      ["board.D9", "V"],
      ["LED1.anode", "A"],
    ]);
    const points: [number, number][] = traced.probes[0].points;
    const rises = points.flatMap(([s, v], i) => (i > 0 && v - (points[i - 1]?.[1] ?? 0) > 2 ? [s] : []));
    expect(rises.length).toBeGreaterThanOrEqual(4);
    expect((rises[1] ?? 0) - (rises[0] ?? 0)).toBeCloseTo(1 / 490.196, 6);
    expect(traced.probes[1].most).toBeGreaterThan(0.005);
    const missing: Any = answerOf(["rehearse", "dimmer", "--trace", "D77"]);
    expect(missing.problems).toEqual([expect.objectContaining({ code: "rehearsal.probeNotThere", probe: "D77" })]);
  });
  test("an unsafe lesson: value and limit of each hazard, severity by the data sheet", () => {
    const folder = freshFolder();
    mkdirSync(join(folder, "hot"));
    writeFileSync(
      join(folder, "hot/lesson.yaml"),
      `format: benchday-lesson/1
id: hot
minutes: 10
parts:
  R1: { part: resistor, ohms: 22 }
  LED1: { part: led, colour: red }
nets:
  - [board.D9, R1.1]
  - [R1.2, LED1.anode]
  - [LED1.cathode, board.GND]
rehearsal:
  - { at: 1s, expect: { board: running } }
`,
    );
    writeFileSync(
      join(folder, "hot/program.cpp"),
      "void setup() { pinMode(9, OUTPUT); digitalWrite(9, HIGH); }\nvoid loop() {}\n",
    );
    const hot: Any = answerOf(["rehearse", "hot"], { cwd: folder });
    expect(hot.verdict).toBe("unsafe");
    // About (5 − 2.2) V over 22 Ω + 25 Ω, more than the 40 mA that a pin bears.
    expect(hot.hazards).toContainEqual(
      expect.objectContaining({ code: "pin-overcurrent", severity: "unsafe", part: "D9", limit: 0.04 }),
    );
    const pin = hot.hazards.find((h: Any) => h.code === "pin-overcurrent");
    expect(pin.value).toBeGreaterThan(0.05);
    expect(pin.value).toBeLessThan(0.07);
  });
});

describe("plan", () => {
  const answer: Any = answerOf(["plan", ...demo]);
  test("lessons", () => {
    expect(answer.lessons).toHaveLength(8);
    for (const l of answer.lessons) {
      expect(l.id).toBe(`${l.class}/${l.lesson}/${l.date}`);
      expect(verdicts).toContain(l.verdict);
      expect(l.chance).toBeGreaterThanOrEqual(0);
      expect(l.chance).toBeLessThanOrEqual(1);
      for (const s of l.short) expect(s).toEqual({ part: expect.any(String), count: expect.any(Number) });
    }
  });
  test("teams by day: every pupil who is there once", () => {
    expect(answer.teams).toHaveLength(8);
    for (const day of answer.teams) {
      const seated = day.teams.flat();
      expect(new Set(seated).size).toBe(seated.length);
    }
  });
  test("what to prepare, in the order of the days", () => {
    const days = answer.prepare.map((p: Any) => p.date);
    expect(days).toEqual([...days].sort());
    for (const p of answer.prepare) expect(p.date >= "2026-12-01").toBe(true);
  });
});

test("order: status, cost, bound, gap, and lines that add up with the shipping", () => {
  const answer: Any = answerOf(["order", ...demo]);
  expect(answer.status).toBe("optimal");
  expect(answer.bound).toBe(answer.cost);
  expect(answer.gap).toBe(0);
  const sum = (list: Any[]) => list.reduce((total, l) => total + l.cost, 0);
  expect(sum(answer.lines) + sum(answer.shipping)).toBe(answer.cost);
  for (const l of answer.lines)
    expect(l).toMatchObject({
      supplier: expect.any(String),
      offer: expect.any(String),
      packets: expect.any(Number),
      why: expect.any(Array),
    });
});

test("teams: 30 in threes for 14 lessons, as many as mathematics allows", () => {
  const answer: Any = answerOf(["teams", "--pupils", "30", "--size", "3", "--lessons", "14"]);
  expect(answer).toMatchObject({ bound: 14, repeated: 0, fresh: 14 });
  const met = new Set<string>();
  for (const lesson of answer.lessons) {
    expect(lesson.flat().sort()).toEqual(Array.from({ length: 30 }, (_, i) => String(i + 1)).sort());
    for (const team of lesson)
      for (const [i, a] of team.entries())
        for (const b of team.slice(i + 1)) {
          const pair = [a, b].sort().join(" ");
          expect(met.has(pair), pair).toBe(false);
          met.add(pair);
        }
  }
});

test("print: a file for each paper, the same from another folder", () => {
  const out = freshFolder();
  const answer: Any = answerOf([
    "print",
    demo[0] as string,
    "tray",
    "--lesson",
    "barrier",
    "--out",
    out,
    "--today",
    "2026-12-01",
  ]);
  expect(answer.papers.map((p: Any) => p.sheets)).toEqual([10, 8]);
  expect(readdirSync(out)).toHaveLength(2);
});

test("the same question gives the same bytes", () => {
  for (const words of [
    ["plan", ...demo],
    ["order", ...demo],
    ["teams", "--pupils", "31", "--seed", "7"],
    ["rehearse", "barrier"],
  ])
    expect(benchday([...words, "--json"]).out, words[0]).toBe(benchday([...words, "--json"]).out);
});

test("the language that is made shows no forgotten text", () => {
  // Dates, names of people, shops and lessons, and names of parts and legs are not texts of ours.
  const left = ["teams --pupils 9 --lessons 4", "check lessons kits", "run lessons/signal-lamp/program.cpp --for 1s"].map(
    (words) => benchday([...words.split(" "), "--language", "xx"]).out.replace(/\[\[[^\]]*\]\]/g, ""),
  );
  for (const text of left) expect(text).not.toMatch(/[a-z]{4,}/);
});
