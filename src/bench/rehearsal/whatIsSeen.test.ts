// What a person notices, as one table over all senses. Expected: what each program does, the pitch it asks for, the data sheets'
// resonances, and flicker fusion at 50 turns a second (common practice). A new case is one line.
import { describe, expect, test } from "vitest";
import { smallLesson } from "./lesson.fixture.ts";
import { rehearseOnce } from "./rehearseOnce.ts";

const strong = "adapter 2000mA";
const seen = (parts: string, nets: string, program: string, stimuli = "") => {
  const steps = `${stimuli}\n{ at: 5s, expect: { board: running } }`;
  return rehearseOnce(smallLesson(parts, nets, steps, program), { supply: strong }).observations.filter(
    (o) => o.part !== "board",
  );
};
const loop = (body: string) => `void setup() { pinMode(9, OUTPUT); } void loop() { ${body} }`;

describe("light", () => {
  const lamp = (ohms: string, program: string, colour = "red") =>
    seen(
      `R1: { part: resistor, ohms: ${ohms}, watts: 10 }\n LED1: { part: led, colour: ${colour} }`,
      "board.D9 R1.1\n R1.2 LED1.anode\n LED1.cathode board.GND",
      program,
    );
  const high = loop("digitalWrite(9, HIGH); delay(10);");
  const blink = (on: number, off: number) => loop(`digitalWrite(9, HIGH); delay(${on}); digitalWrite(9, LOW); delay(${off});`);
  const pwm = (value: number) => `void setup() { pinMode(9, OUTPUT); analogWrite(9, ${value}); } void loop() { delay(10); }`;
  const cases: [name: string, ohms: string, program: string, word: string, hertz?: number, duty?: number][] = [
    ["220 Ω", "220", high, "lit"],
    ["100 kΩ", "100k", high, "dark"],
    ["10 kΩ", "10k", high, "dim"],
    ["68 Ω", "68", high, "too bright"],
    ["once a second", "220", blink(500, 500), "blinking", 1, 0.5],
    ["five times a second, a tenth of the time", "220", blink(20, 180), "blinking", 5, 0.1],
    ["25 times a second is still seen", "220", blink(20, 20), "blinking", 25, 0.5],
    ["62 times a second is not", "220", blink(8, 8), "lit"],
    ["PWM of a half is steady", "220", pwm(128), "lit"],
    ["PWM of one step is dim", "220", pwm(2), "dim"],
  ];
  for (const [name, ohms, program, word, hertz, duty] of cases)
    test(`${name}: ${word}`, () => {
      const list = lamp(ohms, program).filter((o) => o.part === "LED1");
      const told = list.find((o) => o.seen === "blinking") ?? list.findLast((o) => o.ms < 1000);
      expect(told?.seen).toBe(word);
      if (hertz !== undefined) expect(Number(told?.figures.hertz)).toBeCloseTo(hertz, 1);
      if (duty !== undefined) expect(Number(told?.figures.duty)).toBeCloseTo(duty, 1);
    });
});

describe("sound", () => {
  const tone = (hertz: number) => `void setup() { tone(9, ${hertz}); } void loop() { delay(10); }`;
  const beep = (part: string, nets: string, program: string) =>
    seen(part, nets, program).find((o) => o.part === "BZ1" && o.seen === "sounding")?.figures ?? null;
  const piezo = ["BZ1: { part: piezo }", "board.D9 BZ1.1\n BZ1.2 board.GND"] as const;
  const behind = (ohms: string, part: string) =>
    [
      `R1: { part: resistor, ohms: ${ohms}, watts: 10 }\n BZ1: { part: ${part} }`,
      "board.D9 R1.1\n R1.2 BZ1.1\n BZ1.2 board.GND",
    ] as const;
  const active = ["BZ1: { part: active-buzzer }", "board.D9 BZ1.plus\n BZ1.minus board.GND"] as const;
  const cases: [
    name: string,
    circuit: readonly [string, string],
    program: string,
    hertz: number | null,
    loudness: string | null,
  ][] = [
    ["a piezo at 440 Hz, 5 V: 14 dB", piezo, tone(440), 440, "clear"],
    ["a piezo at 3 kHz, its resonance: 34 dB", piezo, tone(3000), 3000, "loud"],
    ["a piezo at 31 Hz is a low buzz", piezo, tone(31), 31, "clear"],
    ["a piezo at a steady level", piezo, loop("digitalWrite(9, HIGH); delay(10);"), null, null],
    ["a speaker behind 220 Ω: 0.16 V, 10 dB", behind("220", "speaker"), tone(440), 440, "clear"],
    ["a speaker behind 680 Ω: 0.056 V, 1 dB", behind("680", "speaker"), tone(440), 440, "faint"],
    ["a speaker behind 1 kΩ: too weak", behind("1k", "speaker"), tone(440), null, null],
    ["a buzzer that sounds by itself", active, loop("digitalWrite(9, HIGH); delay(10);"), null, "loud"],
  ];
  for (const [name, [part, nets], program, hertz, loudness] of cases)
    test(name, () => {
      const figures = beep(part, nets, program);
      if (loudness === null) expect(figures).toBeNull();
      else {
        expect(figures?.loudness).toBe(loudness);
        expect(figures?.hertz === undefined ? null : Math.round(Number(figures.hertz))).toBe(hertz);
      }
    });
});

describe("servo", () => {
  const told = (body: string) =>
    seen(
      "SERVO1: { part: servo }",
      "board.D9 SERVO1.signal\n board.5V SERVO1.plus\n SERVO1.minus board.GND",
      `#include <Servo.h>\nServo arm;\nvoid setup() { arm.attach(9); arm.write(90); delay(500); }\nvoid loop() { ${body} }`,
    ).filter((o) => o.part === "SERVO1" && o.ms > 400);
  const cases: [name: string, body: string, words: string[], swing?: number][] = [
    ["stays", "delay(10);", []],
    ["86 and 94 in turn, five times a second", "arm.write(86); delay(100); arm.write(94); delay(100);", ["trembling"], 8],
    ["60 and 120 in turn is waving", "arm.write(60); delay(300); arm.write(120); delay(300);", ["moving"]],
    ["86 and 94, once in two seconds", "arm.write(86); delay(700); arm.write(94); delay(700);", ["moving", "86 degrees"]],
  ];
  for (const [name, body, words, swing] of cases)
    test(`${name}: ${words.join(", ") || "nothing new"}`, () => {
      const list = told(body);
      for (const [i, word] of words.entries()) expect(list[i]?.seen).toBe(word);
      if (words.length === 0) expect(list).toEqual([]);
      if (words[0] !== "trembling") expect(list.map((o) => o.seen)).not.toContain("trembling");
      if (swing !== undefined) expect(list[0]?.figures).toMatchObject({ degrees: 90, swing });
    });
});

describe("motor", () => {
  const bridge = (first: string, second: string) =>
    seen(
      "M1: { part: dc-motor, winding-ohms: 200, running-milliamps: 5, stalled-milliamps: 25 }",
      "board.D9 M1.1\n board.D10 M1.2",
      `void setup() { pinMode(9, OUTPUT); pinMode(10, OUTPUT); digitalWrite(9, ${first}); digitalWrite(10, ${second}); } void loop() { delay(10); }`,
    ).findLast((o) => o.part === "M1")?.seen;
  const cases: [name: string, first: string, second: string, word: string][] = [
    ["current from leg 1 to leg 2", "HIGH", "LOW", "turning"],
    ["the other way round", "LOW", "HIGH", "turning back"],
    ["both high", "HIGH", "HIGH", "stopped"],
  ];
  for (const [name, first, second, word] of cases) test(`${name}: ${word}`, () => expect(bridge(first, second)).toBe(word));
});
