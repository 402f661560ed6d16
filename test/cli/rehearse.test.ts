// What `benchday rehearse` says in words and answers as JSON: hazards with what to do now, supplies, margins, variants, doubts.
//
// A teacher without electronics reads this, so no code, no bare unit symbol and no key of a text may stand in it.
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import en from "../../locales/en.json" with { type: "json" };
import { hazardCodes } from "../../src/bench/rehearsal/index.ts";
import { answerOf, benchday, freshFolder } from "./benchday.ts";

// biome-ignore lint/suspicious/noExplicitAny: the answers are looked at as another program would, without our types.
type Any = any;

/** A lamp without its resistor's protection beside a key that floats. */
const yaml = `format: benchday-lesson/1
id: hot
minutes: 30
parts:
  R1: { part: resistor, ohms: 22 }
  LED1: { part: led, colour: red }
  B1: { part: button }
nets:
  - [board.D9, R1.1]
  - [R1.2, LED1.anode]
  - [board.D2, B1.1]
  - [LED1.cathode, B1.2, board.GND]
rehearsal:
  - { at: 1s, expect: { board: running } }
`;
const program = `int seen;
void setup() { pinMode(9, OUTPUT); digitalWrite(9, HIGH); }
void loop() { seen = digitalRead(2); delay(10); }
`;
const folder = freshFolder();
mkdirSync(join(folder, "hot"));
writeFileSync(join(folder, "hot/lesson.yaml"), yaml);
writeFileSync(join(folder, "hot/program.cpp"), program);

describe("in words", () => {
  const ran = benchday(["rehearse", "hot"], { cwd: folder });
  test("a hazard is told with figure, limit, what to do now, and whose limit it is", () => {
    expect(ran.status).toBe(1);
    expect(ran.out).toMatch(/unsafe: Pin D9 carries \d+(\.\d+)? mA\. Limit: 40 mA\./);
    const text = ran.out.replace(/\s+/g, " ");
    expect(text).toContain("Unplug. Put a larger resistor between pin D9 and its part");
    expect(text).toContain("Unplug. Give LED1 a larger resistor in series");
    expect(text).toContain("The limit is from: ATmega328P data sheet, section 29.1");
  });
  test("an input that floats is told, though no check hangs on it", () => {
    const text = ran.out.replace(/\s+/g, " ");
    expect(text).toContain("Nothing fixes the voltage at board.D2.");
    expect(text).toContain("Write INPUT_PULLUP in the program");
  });
  test("every supply says how far the voltage falls, what is hottest, and which cable will do", () => {
    const text = ran.out.replace(/\s+/g, " ");
    expect(text).toMatch(/USB port, 500 mA: fits The set takes \d+(\.\d+)? mA on average/);
    expect(text).toMatch(/The board's 5 V net falls to 4\.\d+ V, first at/);
    expect(text).toMatch(/Hottest part: LED1, \d+(\.\d+)? °C, /);
    expect(text).toContain("Any USB cable will do");
    expect(text).toMatch(/It lasts \d+ hours: \d+ lessons on one charge/);
  });
  test("no key of a text and no code stands in it", () => {
    expect(ran.out).not.toMatch(/\b(hazard|hazardTry|doubt|doubtTry|rehearsing|supplyWhy|touch|fits|verdict)\.[a-z]/);
    for (const code of hazardCodes.filter((c) => c.includes("-"))) expect(ran.out).not.toContain(code);
  });
});

test("margins and variants of a lesson that is ready, in words", () => {
  const text = benchday(["rehearse", "lighthouse"]).out.replace(/\s+/g, " ");
  // From 20 mA down through the pin, cable and fuse: about 120 Ω (rehearse.test.ts works it out).
  expect(text).toMatch(/R1 works above 1[12]\d Ω, up to ten times its 220 Ω\./);
  expect(text).toContain("LED1: LED, blue ready");
  expect(text).toContain("R1: resistor, 330 Ω ready");
});

test("every hazard has a sentence for what to do now, and it begins with an act", () => {
  const tries = en.rehearsal.hazardTry as Record<string, string>;
  for (const code of hazardCodes) expect(tries[code], code).toMatch(/^(Unplug|Hands off|Take|Light|Feed|Do not|Put)\b/);
});

describe("as JSON", () => {
  const answer: Any = answerOf(["rehearse", "hot"], { cwd: folder });
  test("hazards: code, severity, place, number, limit, unit, moment, source", () => {
    expect(answer.hazards.map((h: Any) => h.code)).toEqual(expect.arrayContaining(["pin-overcurrent", "led-overcurrent"]));
    for (const h of answer.hazards)
      expect(h).toMatchObject({
        code: expect.any(String),
        severity: expect.stringMatching(/^(caution|unsafe)$/),
        part: expect.any(String),
        value: expect.any(Number),
        limit: expect.any(Number),
        unit: expect.any(String),
        ms: expect.any(Number),
        source: expect.stringMatching(/./),
      });
  });
  test("doubts: code, place, moment", () =>
    expect(answer.doubts).toContainEqual(expect.objectContaining({ code: "input-floats", place: "board.D2", ms: 0 })));
  test("supplies: hottest part with its class, sag, hours, lessons, cable", () => {
    for (const s of answer.supplies) {
      expect(s.hottest).toMatchObject({ part: expect.any(String), celsius: expect.any(Number) });
      expect(["cold", "warm", "hot"]).toContain(s.hottest.touch);
      expect(s.leastVolts).toBeGreaterThan(3);
      expect(s.lessons === null).toBe(s.hours === null);
      // Whole lessons of half an hour, none from a supply that does not do.
      if (s.hours !== null) expect(s.lessons).toBe(s.fits === false ? 0 : Math.floor(s.hours * 2 + 1e-9));
    }
    const bank = answer.supplies.find((s: Any) => s.supply === "power-bank");
    expect(bank.hours).toBeCloseTo(6.29 / bank.amps, 3);
    expect(answer.supplies.find((s: Any) => s.supply === "battery-9v").cableMetres).toBeNull();
  });
  test("margins carry the value and its unit", () => {
    const lighthouse: Any = answerOf(["rehearse", "lighthouse"]);
    expect(lighthouse.margins).toContainEqual(
      expect.objectContaining({ part: "R1", parameter: "ohms", is: 220, unit: "Ω", up: null }),
    );
  });
});
