// A walk through a lesson's program sees the lesson's table: its stimuli reach the pins, its lamps follow, a hand can press.
//
// Line numbers are those of lessons/*/program.cpp. LED1 of the lighthouse carries (5 V − 2 V) / (220 Ω + the pin's 25 Ω), about
// 12 mA (Ohm's law; a red LED holds about 2 V).
import { expect, test } from "vitest";
import { parseProgram } from "../program/index.ts";
import { ourLesson, smallLesson } from "./lesson.fixture.ts";
import { rehearseOnce, strongSupply } from "./rehearseOnce.ts";
import { type HandAct, type LessonWalk, type WalkLessonOptions, walkLesson } from "./walkLesson.ts";

function walkOf(id: string, options: WalkLessonOptions = {}): LessonWalk {
  const { value, problems } = walkLesson(ourLesson(id), options);
  if (value === null) throw new Error(JSON.stringify(problems));
  return value;
}
const shows = (walk: LessonWalk, part: string) => walk.seen().find((o) => o.part === part);

test("the lamp of the lighthouse is lit behind the line that lights it, and dark behind the other", () => {
  const lighthouse = walkOf("lighthouse");
  const { walk } = lighthouse;
  expect(shows(lighthouse, "LED1")?.seen).toBe("dark");
  expect(walk.toPinChange()).toMatchObject({ line: 16, ran: 15 });
  expect(shows(lighthouse, "LED1")?.seen).toBe("lit");
  expect(shows(lighthouse, "LED1")?.figures.amps).toBeCloseTo(0.0122, 2);
  // 500 ms of light, as the program says.
  const lit = walk.now.micros;
  expect(walk.toPinChange()).toMatchObject({ line: 18, ran: 17 });
  expect((walk.now.micros - lit) / 1000).toBeCloseTo(500, 0);
  expect(shows(lighthouse, "LED1")?.seen).toBe("dark");
  walk.backToPinChange();
  expect(shows(lighthouse, "LED1")?.seen).toBe("lit");
});

test("the key of the signal lamp goes down at 1 s, as its rehearsal says, and the program reads it", () => {
  const lamp = walkOf("signal-lamp");
  const at = lamp.walk.toLine(20);
  expect(at.micros / 1e6).toBeGreaterThan(1);
  expect(at.micros / 1e6).toBeLessThan(1.1);
  expect(at.locals.find((v) => v.name === "now")?.text).toBe("0");
});

test("a hand presses when it likes, and what was before stays as it was", () => {
  const none: HandAct[] = [];
  const still = walkOf("signal-lamp", { acts: none, seconds: 5 });
  expect(still.walk.toLine(20).ended?.why).toMatch(/until|stopped/);
  const before = walkOf("signal-lamp", { acts: none }).walk.toMoment(2e6);
  const press: HandAct = {
    at: before.micros / 1e6 + 1e-6,
    stimulus: { kind: "state", part: "B1", state: "pressed", value: true },
  };
  const pressed = walkOf("signal-lamp", { acts: [press] });
  expect(pressed.walk.toStep(before.number)).toEqual(before);
  expect(pressed.walk.toLine(20).micros / 1e6).toBeLessThan(2.1);
  pressed.walk.step();
  expect(shows(pressed, "LED1")?.seen).toBe("lit");
});

test("a dimmed lamp is seen at the mean of its pulses: half of the turn, half of the current", () => {
  const dimmer = walkOf("dimmer");
  dimmer.walk.toMoment(1.8e6);
  const half = shows(dimmer, "LED1");
  dimmer.walk.toMoment(2.8e6);
  const full = shows(dimmer, "LED1");
  expect([half?.seen, full?.seen]).toEqual(["lit", "lit"]);
  expect(Number(half?.figures.amps) / Number(full?.figures.amps)).toBeCloseTo(127 / 255, 2);
});

test("another program runs in the same circuit", () => {
  const text = "void setup() { pinMode(9, OUTPUT); }\nvoid loop() {\n  digitalWrite(9, HIGH);\n}\n";
  const program = parseProgram("mine.cpp", text).value;
  const mine = walkOf("lighthouse", { program: program! });
  mine.walk.toPinChange();
  expect(shows(mine, "LED1")?.seen).toBe("lit");
});

test("a lamp that fades out on its capacitor shows in a walk what the rehearsal saw at that moment", () => {
  const lesson = smallLesson(
    `R1: { part: resistor, ohms: 220 }
     C1: { part: electrolytic, farads: 470u }
     R2: { part: resistor, ohms: 470 }
     LED1: { part: led, colour: red }`,
    `board.D9 R1.1
     R1.2 C1.plus R2.1
     R2.2 LED1.anode
     LED1.cathode C1.minus board.GND`,
    "{ at: 6s, expect: { LED1: dark } }",
    "void setup() { pinMode(9, OUTPUT); digitalWrite(9, HIGH); delay(1000); pinMode(9, INPUT); } void loop() { delay(10); }",
  );
  const observed = rehearseOnce(lesson, { supply: strongSupply }).observations.filter((o) => o.part === "LED1");
  // It fades in as well, through 220 Ω.
  expect(observed.map((o) => o.seen)).toEqual(["dark", "dim", "lit", "dim", "dark"]);
  const { value } = walkLesson(lesson);
  if (value === null) throw new Error("no walk");
  for (const { ms } of observed.slice(1)) {
    value.walk.toMoment((ms + 100) * 1000);
    const word = observed.findLast((o) => o.ms <= value.walk.now.micros / 1000)?.seen;
    expect(shows(value, "LED1")?.seen).toBe(word);
  }
});
