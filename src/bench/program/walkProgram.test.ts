// Walking through a program: lines, values, pins and the way back, read off the programs by hand.
import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import {
  type BoardPort,
  inputsPort,
  parseProgram,
  readInputs,
  runProgram,
  type Walk,
  type WalkStep,
  walkProgram,
} from "./index.ts";

function walk(text: string, options: { inputs?: string; until?: number; mostSteps?: number; mostWork?: number } = {}): Walk {
  const read = parseProgram("program.cpp", text);
  expect(read.problems.filter((p) => p.severity !== "warning")).toEqual([]);
  const { inputs = "[]", ...rest } = options;
  const list = readInputs("inputs", inputs).value!;
  return walkProgram(read.value!, () => inputsPort(list), rest);
}

/** "i=1 total=3": globals, then locals. */
const values = (s: WalkStep) => [...s.globals, ...s.locals].map((v) => `${v.name}=${v.text}`).join(" ");
const changed = (s: WalkStep) => [...s.globals, ...s.locals].filter((v) => v.changed).map((v) => v.name);
const pins = (s: WalkStep) =>
  s.pins.map((p) => `${p.pin} ${p.level ?? (p.hz !== null ? `${p.hz} Hz` : (p.duty ?? p.degrees ?? p.mode))}`).join(", ");

const blink = `int rounds = 0;
void setup() {
  pinMode(13, OUTPUT);
}
void loop() {
  digitalWrite(13, HIGH);
  delay(500);
  digitalWrite(13, LOW);
  delay(500);
  rounds++;
}`;

test("one step after the other, as a class follows a light that blinks", () => {
  const w = walk(blink);
  const seen = [];
  for (let i = 0; i < 8; i += 1) {
    seen.push(`${w.now.line} after ${w.now.ran}: ${(w.now.micros / 1000).toFixed(0)} ms, ${pins(w.now)}, ${values(w.now)}`);
    w.step();
  }
  expect(seen).toEqual([
    "3 after null: 0 ms, , rounds=0",
    "6 after 3: 0 ms, D13 low, rounds=0",
    "7 after 6: 0 ms, D13 high, rounds=0",
    "8 after 7: 500 ms, D13 high, rounds=0",
    "9 after 8: 500 ms, D13 low, rounds=0",
    "10 after 9: 1000 ms, D13 low, rounds=0",
    "6 after 10: 1000 ms, D13 low, rounds=1",
    "7 after 6: 1000 ms, D13 high, rounds=1",
  ]);
  expect(w.toStep(6).globals[0]!.changed).toBe(true);
  expect(w.step().pins[0]!.changed).toBe(true);
  expect(w.step().pins[0]!.changed).toBe(false);
});

test("to a line, to the next pin change, to a moment, and all the ways back", () => {
  const w = walk(blink);
  const at = (s: WalkStep) => `${s.number}: ${s.line}`;
  expect(at(w.toLine(10))).toBe("5: 10");
  expect(at(w.toLine(10))).toBe("10: 10");
  expect(at(w.toPinChange())).toBe("12: 7");
  expect(at(w.toPinChange())).toBe("14: 9");
  expect(at(w.back())).toBe("13: 8");
  expect(at(w.backToPinChange())).toBe("12: 7");
  expect(at(w.backToPinChange())).toBe("9: 9");
  expect(at(w.backToLine(6))).toBe("6: 6");
  expect(at(w.backToLine(6))).toBe("1: 6");
  expect(at(w.backToLine(6))).toBe("1: 6");
  expect(at(w.back())).toBe("0: 3");
  expect(at(w.back())).toBe("0: 3");
  expect(at(w.toMoment(60e6))).toBe("300: 10");
  expect(w.now.globals[0]!.text).toBe("59");
  expect(w.now.ended).toBeNull();
});

test("the same step is the same, from wherever the walk comes", () => {
  const forward = walk(blink);
  const seen: WalkStep[] = [];
  for (let i = 0; i < 700; i += 1) {
    seen.push(forward.now);
    forward.step();
  }
  const back = walk(blink);
  for (const i of [699, 400, 3, 650, 128, 129, 127, 0]) expect(back.toStep(i)).toEqual(seen[i]);
});

const cases: [name: string, text: string, line: number, times: number, expected: string][] = [
  [
    "a loop's variable is there in its lines only",
    "int total = 0;\nvoid setup() {\n  for (int i = 1; i < 4; i++) {\n    total += i;\n  }\n  total = 9;\n}\nvoid loop() {}",
    4,
    3,
    "total=3 i=3",
  ],
  [
    "behind the loop it is gone",
    "int total = 0;\nvoid setup() {\n  for (int i = 1; i < 4; i++) {\n    total += i;\n  }\n  total = 9;\n}\nvoid loop() {}",
    6,
    1,
    "total=6",
  ],
  [
    "in a loop of one line it is there",
    "void setup() {\n  for (byte i = 7; i < 9; i++) delay(i);\n}\nvoid loop() {}",
    2,
    3,
    "i=8",
  ],
  [
    "a variable appears when it has its value",
    "void setup() {\n  int a = 5;\n  long b = a;\n  b++;\n}\nvoid loop() {}",
    4,
    1,
    "a=5 b=5",
  ],
  [
    "of two with one name the inner one is shown",
    "int x = 1;\nvoid setup() {\n  int y = 2;\n  {\n    int y = 3;\n    x = y;\n  }\n}\nvoid loop() {}",
    6,
    1,
    "x=1 y=3",
  ],
  [
    "parameters by value and by reference",
    "int led = 4;\nvoid change(int &pin, float f) {\n  pin = 7;\n  f = 0;\n}\nvoid setup() {\n  change(led, 0.1);\n}\nvoid loop() {}",
    4,
    1,
    "led=7 pin=7 f=0.1",
  ],
  [
    "every call of a recursive function has its own",
    "int sum(int n) {\n  if (n == 0) return 0;\n  int rest = sum(n - 1);\n  return rest + n;\n}\nvoid setup() {\n  sum(3);\n}\nvoid loop() {}",
    4,
    3,
    "n=3 rest=3",
  ],
  [
    "arrays, texts, letters, truth, records, enums",
    'enum Light { RED, GREEN };\nstruct Point { int x; byte y; };\nint a[3] = {1, -2, 3};\nchar t[8] = "hi";\nchar c = \'q\';\nbool on = true;\nPoint p = {4, 5};\nLight l = GREEN;\nString s = "abc";\nint grid[2][2] = {{1, 2}, {3, 4}};\nconst char* name = "tide";\nint* which = &a[1];\nvoid setup() {\n  on = !on;\n}\nvoid loop() {}',
    14,
    0,
    'a={1, -2, 3} t="hi" c=\'q\' on=true p={x: 4, y: 5} l=GREEN s="abc" grid={{1, 2}, {3, 4}} name="tide" which=&a[1]',
  ],
  [
    "the object of a method, and statics of a function",
    "class Counter {\n public:\n  int n;\n  void count() {\n    static int all = 0;\n    n++;\n    all++;\n  }\n};\nCounter c;\nvoid setup() {\n  c.count();\n}\nvoid loop() {\n  c.count();\n}",
    7,
    2,
    "c={n: 2} this={n: 2} all=1",
  ],
  [
    "a servo",
    "#include <Servo.h>\nServo arm;\nvoid setup() {\n  arm.attach(9);\n  arm.write(120);\n  delay(1);\n}\nvoid loop() {}",
    6,
    1,
    "arm=D9 120°",
  ],
];
for (const [name, text, line, times, expected] of cases)
  test(name, () => {
    const w = walk(text);
    for (let i = 0; i < times; i += 1) w.toLine(line);
    expect(w.now.ended).toBeNull();
    expect(w.now.line).toBe(line);
    expect(values(w.now)).toBe(expected);
  });

test("a header's own functions are gone through at once", () => {
  const w = walk(
    "#include <Stepper.h>\nStepper crane(32, 8, 9, 10, 11);\nvoid setup() {\n  crane.setSpeed(60);\n  crane.step(4);\n  delay(1);\n}\nvoid loop() {}",
  );
  expect([w.now.line, w.step().line, w.step().line]).toEqual([4, 5, 6]);
  expect(w.now.micros / 1000).toBeCloseTo(4 * (60_000 / 32 / 60), 0);
  // Of four wires the first and the last are on after four steps (phase 4 % 4 = 0 is wires 1 and 3).
  expect(pins(w.now)).toBe("D8 high, D9 low, D10 high, D11 low");
});

test("over a call stays in the function", () => {
  const w = walk("int twice(int n) {\n  n *= 2;\n  return n;\n}\nvoid setup() {\n  int a = twice(3);\n  a++;\n}\nvoid loop() {}");
  expect(w.now.line).toBe(6);
  expect(w.step().line).toBe(2);
  expect(w.now.inside).toBe("twice");
  w.back();
  expect(w.over().line).toBe(7);
  expect(values(w.now)).toBe("a=6");
});

test("an element that changed is told, and the array it is in", () => {
  const w = walk("int a[3];\nvoid setup() {\n  a[1] = 7;\n}\nvoid loop() {\n}");
  w.step();
  expect(changed(w.now)).toEqual(["a"]);
  expect(w.now.globals[0]!.parts.map((p) => [p.name, p.text, p.changed])).toEqual([
    ["[0]", "0", false],
    ["[1]", "7", true],
    ["[2]", "0", false],
  ]);
});

test("text that was printed is first on its way, then there", () => {
  const w = walk(
    'void setup() {\n  Serial.begin(9600);\n  Serial.println("tide 12");\n  delay(20);\n  delay(1);\n}\nvoid loop() {}',
  );
  w.toLine(4);
  expect([w.now.text, w.now.onItsWay]).toEqual(["", "tide 12\r\n"]);
  w.toLine(5);
  expect([w.now.text, w.now.onItsWay]).toEqual(["tide 12\r\n", ""]);
});

test("pulses, a tone that ends by itself, an input that was read", () => {
  const w = walk(
    "void setup() {\n  pinMode(2, INPUT_PULLUP);\n  analogWrite(9, 100);\n  tone(8, 440, 100);\n  while (digitalRead(2) == HIGH);\n  delay(200);\n  delay(1);\n}\nvoid loop() {}",
    { inputs: '[{"ms":50,"pin":"D2","level":"low"}]' },
  );
  w.toLine(5);
  expect(pins(w.now)).toBe("D2 pull-up, D8 440 Hz, D9 100");
  w.toLine(6);
  expect(w.now.pins[0]!.read).toBe(0);
  expect(w.now.micros / 1000).toBeCloseTo(50, 0);
  w.toLine(7);
  expect(pins(w.now)).toBe("D2 pull-up, D8 low, D9 100");
});

const ends: [name: string, text: string, options: object, why: string, line: number][] = [
  ["the time is over", blink, { until: 1.2e6 }, "until", 7],
  ["an index outside", "int a[3];\nvoid setup() {\n  int i = 3;\n  a[i] = 1;\n}\nvoid loop() {}", {}, "broken", 4],
  [
    "a loop that never ends its work",
    "volatile int x;\nvoid setup() {\n  while (true) {\n    x++;\n  }\n}\nvoid loop() {}",
    { mostWork: 1e6 },
    "hangs",
    3,
  ],
  ["more steps than allowed", blink, { mostSteps: 50 }, "long", 9],
];
for (const [name, text, options, why, line] of ends)
  test(`the walk ends: ${name}`, () => {
    const w = walk(text, options);
    const last = w.toLine(1000);
    expect(last.ended?.why).toBe(why);
    expect(last.line).toBe(line);
    expect(last.ended!.problem === null).toBe(why === "until" || why === "long");
    expect(w.step()).toEqual(last);
    expect(w.back().ended).toBeNull();
    expect(w.step()).toEqual(last);
    expect(w.toStep(1e9)).toEqual(last);
  });

/** Everything that a run does to the world. */
function toldBy(port: BoardPort): { port: BoardPort; told: string[] } {
  const told: string[] = [];
  const watched = new Proxy(port, {
    get(target, key) {
      const member = Reflect.get(target, key);
      if (typeof member !== "function") return member;
      return (...values: unknown[]) => {
        if (!["nextEvent", "reach", "takeText"].includes(String(key))) told.push(`${String(key)} ${values.join(" ")}`);
        return member.apply(target, values);
      };
    },
  });
  return { port: watched, told };
}

const folder = new URL("../../../test/programs", import.meta.url).pathname;
test("a walked run is the run: the world hears the same at the same moments, for every program there is", () => {
  let compared = 0;
  for (const name of readdirSync(folder).filter((n) => n.endsWith(".cpp"))) {
    const program = parseProgram(name, readFileSync(`${folder}/${name}`, "utf8")).value;
    if (program === null) continue;
    const inputs = readInputs("inputs", '[{"ms":100,"pin":"D2","level":"low"},{"ms":200,"text":"a 12\\n"}]').value!;
    const until = 500_000;
    const plain = toldBy(inputsPort(inputs));
    runProgram(program, plain.port, { until, seed: 5, mostWork: 3e6 });
    let walked: ReturnType<typeof toldBy> | null = null;
    const w = walkProgram(
      program,
      () => {
        walked = toldBy(inputsPort(inputs));
        return walked.port;
      },
      { until, seed: 5, mostWork: 3e6 },
    );
    w.toStep(Number.POSITIVE_INFINITY);
    expect(walked!.told, name).toEqual(plain.told);
    compared += 1;
  }
  expect(compared).toBeGreaterThan(100);
});
