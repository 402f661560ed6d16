// A run in which waiting rounds are skipped is the same, to the cycle, as one in which every round is run.
//
// Loops are put together at random from what waiting loops are made of; the two runs must give equal answers, times included.
// The horizons of moving numbers are held against counting on tick by tick.
import { expect, test } from "vitest";
import { sample } from "../../../../test/sample.ts";
import { type Random, seededRandom } from "../../../base/index.ts";
import { type CompareOperator, compareIntegers, hold, integerOperation } from "../check/arithmetic.ts";
import type { IntegerName, IntegerType } from "../check/types.ts";
import { type Inputs, parseProgram, runWithInputs } from "../index.ts";
import { compareTimed, operateTimed, type Source, still, type Timed } from "./timed.ts";

const clocks = [
  "millis()",
  "micros()",
  "now",
  "(int)millis()",
  "(byte)millis()",
  "(unsigned int)micros()",
  "millis() / 7",
  "millis() % 300",
  "micros() >> 4",
];
const limits = ["40", "250", "1000U", "3000UL", "before", "before + 100", "-1", "x"];
const pins = [
  "digitalRead(2)",
  "digitalRead(3) == LOW",
  "analogRead(A0) > 500",
  "Serial.available()",
  "Serial.read() == 'a'",
  "digitalRead(5)",
];
const effects = [
  "digitalWrite(9, !digitalRead(9));",
  "before = millis();",
  "before += 100;",
  "x++;",
  "x = digitalRead(2);",
  "state = (state + 1) % 4;",
  "Serial.println(x);",
  "delay(3);",
  "noTone(8);",
  "tone(8, 440);",
  "analogWrite(6, x & 127);",
  "last = now;",
  "list[state] = millis();",
  "f = millis() * 0.5;",
  "return;",
  "note(x);",
];

function testOf(random: Random): string {
  const pick = (list: readonly string[]) => list[random.int(0, list.length - 1)]!;
  const compare = pick(["<", ">", "<=", ">=", "==", "!="]);
  const timed = () => `${pick(clocks)} - ${pick(["before", "last", "0", "x", "list[state]"])} ${compare} ${pick(limits)}`;
  const kind = random.int(0, 5);
  if (kind <= 2) return timed();
  if (kind === 3) return pick(pins);
  if (kind === 4) return `${timed()} && ${pick(pins)}`;
  return `${pick(pins)} || state == ${random.int(0, 3)}`;
}

function body(random: Random, depth: number): string {
  const lines: string[] = [];
  for (let i = 0; i < random.int(1, 3); i += 1) {
    const kind = random.int(0, depth > 0 ? 4 : 2);
    const effect = effects[random.int(0, effects.length - 1)]!;
    if (kind <= 1) lines.push(`if (${testOf(random)}) { ${effect} }`);
    else if (kind === 2) lines.push(random.int(0, 3) === 0 ? effect : "now = millis();");
    else if (kind === 3) lines.push(`if (${testOf(random)}) { ${body(random, depth - 1)} } else { ${effect} }`);
    else lines.push(`for (int i = 0; i < ${random.int(1, 4)}; i++) { ${body(random, depth - 1)} }`);
  }
  return lines.join("\n  ");
}

function program(random: Random): string {
  const wait =
    random.int(0, 2) === 0
      ? `while (${testOf(random)}) { ${random.int(0, 1) === 0 ? "" : "now = millis();"} if (millis() > 700) break; }`
      : "";
  return `unsigned long before = 0, last = 0, now = 0; int x = 0; byte state = 0; unsigned long list[4]; float f = 0;
void note(int n) { if (n > 3) x = 0; }
void setup() { Serial.begin(9600); pinMode(2, INPUT_PULLUP); pinMode(9, OUTPUT); }
void loop() {
  ${body(random, 2)}
  ${wait}
}`;
}

function inputs(random: Random): Inputs {
  return Array.from({ length: random.int(0, 12) }, () => {
    const ms = random.int(0, 10000) / 10;
    const kind = random.int(0, 3);
    if (kind === 0) return { ms, text: "a1" };
    if (kind === 1) return { ms, pin: 14, value: random.int(0, 1023) };
    return { ms, pin: random.int(2, 3), level: random.int(0, 1) === 0 ? ("low" as const) : ("high" as const) };
  }).sort((a, b) => a.ms - b.ms);
}

test("a run with skipped rounds is the run without, to the microsecond", () => {
  let skipped = 0;
  for (let seed = 1; seed <= sample(80, 4000); seed += 1) {
    const random = seededRandom(seed, "quiet loops");
    const text = program(random);
    const read = parseProgram("random.cpp", text);
    expect(read.value, text + JSON.stringify(read.problems)).not.toBeNull();
    const given = inputs(random);
    const run = (skips: boolean, mostWork: number) => runWithInputs(read.value!, given, 1000, { seed, skips, mostWork });
    const quick = run(true, 1e9);
    expect(JSON.stringify(quick), `seed ${seed}\n${text}`).toBe(JSON.stringify(run(false, 1e9)));
    // With a quarter of a second of work allowed, only a run that skips comes to its end.
    const isLate = (skips: boolean) => run(skips, 4e6).problems.length > 0;
    if (!isLate(true) && isLate(false)) skipped += 1;
  }
  // The test says nothing if nothing is ever skipped.
  expect(skipped).toBeGreaterThan(25);
});

const names: readonly IntegerName[] = ["int", "unsigned int", "long", "unsigned long"];

test("a comparison keeps its answer up to its horizon, a quotient and a remainder too", () => {
  const random = seededRandom(3, "horizons");
  for (let n = 0; n < sample(3000, 200_000); n += 1) {
    const type: IntegerType = { kind: "integer", name: names[random.int(0, 3)]! };
    // Near the edges of the type and near each other is where answers turn.
    const near = [0, 1, -1, 32767, -32768, 65535, 2147483647, -2147483648, random.int(-200, 200)];
    const a = hold(near[random.int(0, 8)]! + random.int(-60, 60), type);
    const b = hold(random.int(0, 1) === 0 ? a + random.int(-90, 90) : near[random.int(0, 8)]!, type);
    const slope = random.int(0, 1) === 0 ? 1 : -1;
    const moving: Timed = { value: a, slope, source: "millis" };
    let horizon = Number.POSITIVE_INFINITY;
    const limit = (source: Source, ticks: number) => {
      if (source !== null) horizon = Math.min(horizon, ticks);
    };
    const operator = (["<", ">", "<=", ">=", "==", "!="] as CompareOperator[])[random.int(0, 5)]!;
    const movesLeft = random.int(0, 1) === 0;
    const answer = movesLeft
      ? compareTimed(operator, moving, still(b), type, limit)
      : compareTimed(operator, still(b), moving, type, limit);
    for (let k = 0; k < Math.min(horizon, 300); k += 1) {
      const later = hold(a + slope * k, type);
      const now = movesLeft ? compareIntegers(operator, later, b, type) : compareIntegers(operator, b, later, type);
      expect(now, `${type.name}: ${a} ${slope > 0 ? "rising" : "falling"} ${operator} ${b} after ${k}`).toBe(answer);
    }
    const divisor = random.int(1, 40);
    for (const part of ["/", "%"] as const) {
      horizon = Number.POSITIVE_INFINITY;
      const result = operateTimed(part, moving, still(divisor), type, limit)!;
      for (let k = 0; k < Math.min(horizon, 60); k += 1)
        expect(integerOperation(part, hold(a + slope * k, type), divisor, type)).toBe(
          hold(result.value + result.slope * k, type),
        );
    }
  }
});
