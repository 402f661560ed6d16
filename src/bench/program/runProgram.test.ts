// The contract between a program and the world: who is told what, when, and how a run ends.
import { expect, test } from "vitest";
import { type BoardPort, type Level, parseProgram, type RunOptions, type RunOutcome, runProgram, type Verdict } from "./index.ts";

/** A world that writes everything down; events at moments in µs. */
function world(
  events: readonly (readonly [micros: number, verdict: Verdict])[] = [],
  levels: (pin: number, now: number) => Level = () => 0,
) {
  const told: string[] = [];
  const list = [...events];
  let typed = "";
  const ms = (now: number) => (now / 1000).toFixed(0);
  const port: BoardPort = {
    nextEvent: () => list[0]?.[0] ?? Number.POSITIVE_INFINITY,
    reach: (now) => {
      told.push(`reach ${ms(now)}`);
      return list.shift()![1];
    },
    digitalRead: (pin, now) => levels(pin, now),
    analogRead: () => 100,
    setMode: (pin, mode, now) => told.push(`mode ${pin} ${mode} ${ms(now)}`),
    digitalWrite: (pin, level, now) => told.push(`write ${pin} ${level} ${ms(now)}`),
    analogWrite: (pin, value, hertz, now) => told.push(`pulse ${pin} ${value} ${hertz.toFixed(1)} ${ms(now)}`),
    tone: (pin, hertz, until, now) => told.push(`tone ${pin} ${hertz} ${ms(until)} ${ms(now)}`),
    noTone: (pin, now) => told.push(`noTone ${pin} ${ms(now)}`),
    servo: (pin, pulse, now) => told.push(`servo ${pin} ${pulse?.micros ?? "off"} ${ms(now)}`),
    text: (characters, now) => told.push(`text ${JSON.stringify(characters)} ${ms(now)}`),
    takeText: () => {
      const text = typed;
      typed = "";
      return text;
    },
  };
  return { port, told, type: (text: string) => (typed += text) };
}

function run(text: string, port: BoardPort, options: Partial<RunOptions> = {}): RunOutcome {
  const read = parseProgram("program.cpp", text);
  expect(read.problems.filter((p) => p.severity !== "warning")).toEqual([]);
  return runProgram(read.value!, port, { until: 1e6, seed: 0, ...options });
}

test("the port hears of changes only, each at its moment", () => {
  const { port, told } = world();
  const outcome = run(
    `void setup() { pinMode(9, OUTPUT); pinMode(9, OUTPUT); }
     void loop() { digitalWrite(9, HIGH); digitalWrite(9, HIGH); delay(300); digitalWrite(9, LOW); delay(300); }`,
    port,
  );
  expect(outcome).toEqual({ status: "stopped", micros: 1e6 });
  expect(told).toEqual(["mode 9 output 0", "write 9 1 0", "write 9 0 300", "write 9 1 600", "write 9 0 900"]);
});

// Frequencies: 16 MHz / 64 / 256 on pins 5 and 6, 16 MHz / 64 / 510 on the others (ATmega328P data sheet, timer formulas).
test("pulses come with the frequency of their timer; 0 and 255 are levels", () => {
  const { port, told } = world();
  run(
    "void setup() { analogWrite(6, 100); analogWrite(9, 100); analogWrite(9, 255); analogWrite(9, 0); analogWrite(3, 1); } void loop() {}",
    port,
  );
  expect(told.map((t) => t.replace(/ [\d.]+$/, ""))).toEqual([
    "mode 6 output",
    "pulse 6 100 976.6",
    "mode 9 output",
    "pulse 9 100 490.2",
    "write 9 1",
    "write 9 0",
    "mode 3 output",
    "pulse 3 1 490.2",
  ]);
});

test("a moment of the world is reached before anything is read or written after it", () => {
  let pressed = false;
  const { port, told } = world([[1000, "go on"]], () => (pressed ? 1 : 0));
  const reach = port.reach.bind(port);
  port.reach = (now) => {
    pressed = true;
    return reach(now);
  };
  run("void setup() { pinMode(9, OUTPUT); while (digitalRead(2) == LOW) {} digitalWrite(9, HIGH); } void loop() {}", port);
  expect(told).toEqual(["mode 9 output 0", "reach 1", "write 9 1 1"]);
});

test("a reset begins anew: globals, pins, tones, servos, millis; time goes on", () => {
  const { port, told } = world([[500_000, "reset"]]);
  const outcome = run(
    `#include <Servo.h>
     Servo arm; int n = 5; static long m;
     void setup() { pinMode(4, OUTPUT); arm.attach(3); arm.write(n * 10); tone(8, 440); n++; m = millis(); if (m > 100) digitalWrite(4, HIGH); }
     void loop() { n++; delay(100); }`,
    port,
    { until: 600_000 },
  );
  expect(outcome.status).toBe("stopped");
  const from = told.indexOf("reach 500");
  const kinds = (list: string[]) => list.map((t) => t.replace(/ [\d.]+$/, ""));
  expect(kinds(told.slice(from + 1, -5)).sort()).toEqual(
    ["mode 3 input", "mode 4 input", "mode 8 input", "noTone 8", "servo 3 off"].sort(),
  );
  expect(kinds(told.slice(-5))).toEqual(kinds(told.slice(0, 5)));
  expect(told.some((t) => t.startsWith("write 4"))).toBe(false);
});

test("a port that stops ends the run there", () => {
  const { port } = world([[123_000, "stop"]]);
  expect(run("void setup() {} void loop() {}", port)).toEqual({ status: "stopped", micros: 123_000 });
});

test("a board that resets again and again does not keep the caller", () => {
  const { port } = world();
  port.nextEvent = () => 100;
  port.reach = () => "reset";
  expect(run("void setup() {} void loop() {}", port).status).toBe("resets");
});

test("a port whose moment never passes does not keep the caller", () => {
  const { port } = world();
  port.nextEvent = () => 100;
  port.reach = () => "go on";
  expect(run("void setup() {} void loop() {}", port)).toEqual({ status: "stopped", micros: 1e6 });
});

const ends: [what: string, text: string, outcome: Partial<RunOutcome>][] = [
  [
    "work without end",
    "volatile long n;\nvoid setup() {}\nvoid loop() {\n  for (;;) n = (n + 1) % 7;\n}",
    { status: "hangs", line: 4 },
  ],
  [
    "loop() that works without end",
    "volatile long n;\nvoid setup() {}\nvoid loop() { n = (n + 1) % 7; }",
    { status: "hangs", line: 3 },
  ],
  [
    "calls without end",
    "int f(int n) {\n  return n < 2 ? n : f(n - 1) + f(n - 2);\n}\nvoid setup() { f(100); }\nvoid loop() {}",
    { status: "hangs", line: 2 },
  ],
  ["an endless wait", "void setup() { while (true) {} }\nvoid loop() {}", { status: "stopped", micros: 1e9 }],
  ["a long delay", "void setup() { delay(4000000000UL); }\nvoid loop() {}", { status: "stopped", micros: 1e9 }],
];
for (const [what, text, outcome] of ends)
  test(`${what}: ${outcome.status}`, () =>
    expect(run(text, world().port, { until: 1e9, mostWork: 16e6 })).toMatchObject(outcome));

test("what was printed before a program broke is handed over", () => {
  const { port, told } = world();
  const outcome = run(
    'int a[2];\nvoid setup() { Serial.begin(9600); Serial.println("last words");\n a[a[0] + 2] = 1; }\nvoid loop() {}',
    port,
  );
  expect(outcome).toMatchObject({ status: "broken", line: 3, code: "program.indexOutside", values: [2, 2] });
  expect(told.at(-1)).toContain("last words");
});

test("a line of text comes in one piece, when its last character has left: 1.04 ms each", () => {
  const { port, told } = world();
  run('void setup() { Serial.begin(9600); Serial.println("abcdefgh"); Serial.print("x"); } void loop() {}', port);
  // Divider 207 at 16 MHz, double speed (ATmega328P data sheet, table 19-12): 16640 cycles a character.
  expect(told[0]).toBe('text "abcdefgh\\r\\n" 10');
  expect(told[1]).toBe('text "x" 12');
});

test("text from the computer is read", () => {
  const w = world([[10_000, "go on"]]);
  const reach = w.port.reach.bind(w.port);
  w.port.reach = (now) => {
    w.type("7");
    return reach(now);
  };
  run(
    "void setup() { Serial.begin(9600); pinMode(9, OUTPUT); } void loop() { if (Serial.read() == '7') digitalWrite(9, HIGH); }",
    w.port,
  );
  expect(w.told.at(-1)).toBe("write 9 1 10");
});

test("the same input gives the same answer; another seed shows a variable that nobody set", () => {
  const text = "void setup() { Serial.begin(9600); int sum; Serial.println(sum); Serial.println(random(1000)); } void loop() {}";
  const answer = (seed: number) => {
    const { port, told } = world();
    run(text, port, { seed });
    return told.map((t) => t.replace(/ \d+$/, ""));
  };
  expect(answer(5)).toEqual(answer(5));
  expect(answer(5)[0]).not.toEqual(answer(6)[0]);
  expect(answer(5)[1]).toEqual(answer(6)[1]);
});
