// Programs that were mangled at random never throw and never hang, neither the reader nor the run.
//
// The mangling is what happens in class: a letter lost or doubled, a line gone, two words swapped, a number grown, brackets
// piled up, a piece of another program pasted in.
import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { type Random, seededRandom } from "../../src/base/index.ts";
import { parseProgram, readTokens, runWithInputs } from "../../src/bench/program/index.ts";
import { sample } from "../sample.ts";

const folder = new URL(".", import.meta.url).pathname;
const texts = readdirSync(folder)
  .filter((name) => name.endsWith(".cpp"))
  .map((name) => readFileSync(folder + name, "utf8"));

const pieces = [
  "(", ")", "{", "}", ";", "[", "]", "<", ">", "=", "==", "+", "-", "*", "/", "%", "&", "&&", "?", ":", "::", ".", "->", ",", "#",
  '"', "'", "\\", "/*", "//", "int", "const", "struct X {", "class", "enum", "void f(", "return", "if (", "else", "for (;;)",
  "while (1)", "switch (x) {", "case 1:", "#define A A A", "#include <", "operator", "template <", "goto", "this", "static",
  "String", "Servo s;", "0x", "08", "1e99", "99999999999", "'ab'", "\u201c", "\u00a0", "\0", "\u{1F6A2}", "unsigned long", "F(", "&x", "*p", "~",
]; // biome-ignore format: one block reads better

function mangle(text: string, random: Random): string {
  let out = text;
  for (let n = random.int(1, 6); n > 0; n -= 1) {
    const at = random.int(0, out.length);
    const other = texts[random.int(0, texts.length - 1)]!;
    const tokens = readTokens("mangled", out).tokens;
    const lines = out.split("\n");
    switch (random.int(0, 8)) {
      case 0:
        out = out.slice(0, at) + out.slice(at + random.int(1, 3));
        break;
      case 1:
        out = out.slice(0, at) + pieces[random.int(0, pieces.length - 1)]! + out.slice(at);
        break;
      case 2:
        lines.splice(random.int(0, lines.length - 1), random.int(1, 2));
        out = lines.join("\n");
        break;
      case 3: {
        const [i, k] = [random.int(0, lines.length - 1), random.int(0, lines.length - 1)];
        [lines[i], lines[k]] = [lines[k]!, lines[i]!];
        out = lines.join("\n");
        break;
      }
      case 4: {
        const [a, b] = [tokens[random.int(0, tokens.length - 1)]!, tokens[random.int(0, tokens.length - 1)]!];
        if (a.text !== "" && b.text !== "") out = out.replace(a.text, () => b.text);
        break;
      }
      case 5:
        out = out.replace(/\d+/, () => String(random.int(-70000, 70000)));
        break;
      case 6: {
        const from = random.int(0, other.length);
        out = out.slice(0, at) + other.slice(from, from + random.int(1, 200)) + out.slice(at);
        break;
      }
      case 7:
        out = out.slice(0, at) + "({[".charAt(random.int(0, 2)).repeat(random.int(1, 400)) + out.slice(at);
        break;
      default:
        out = out.slice(0, at);
    }
  }
  return out;
}

test("mangled programs are refused or run, and never hang", () => {
  let ran = 0;
  for (let seed = 1; seed <= sample(300, 10_000); seed += 1) {
    const random = seededRandom(seed, "mangled");
    const text = mangle(texts[random.int(0, texts.length - 1)]!, random);
    const started = performance.now();
    try {
      const read = parseProgram("mangled.cpp", text);
      for (const p of read.problems) {
        expect(p.code).toMatch(/^program\./);
        expect(p.place?.line ?? 0, p.code).toBeGreaterThan(0);
        expect(p.place!.line).toBeLessThanOrEqual(text.split(/\r\n|\n|\r/).length);
      }
      expect(read.value === null).toBe(read.problems.some((p) => p.severity !== "warning"));
      if (read.value !== null) {
        ran += 1;
        const run = runWithInputs(
          read.value,
          [
            { ms: 3, text: "12 a\n" },
            { ms: 5, pin: 2, level: "low" },
          ],
          100,
          { seed, mostWork: 2e6 },
        );
        expect(run.ms).toBeLessThanOrEqual(100);
      }
    } catch (thrown) {
      throw new Error(`seed ${seed}: ${String(thrown)}\n${text}`, { cause: thrown });
    }
    expect(performance.now() - started, `seed ${seed}\n${text}`).toBeLessThan(5000);
  }
  expect(ran).toBeGreaterThan(10);
});

const large: [what: string, text: string][] = [
  ["brackets inside brackets", `void setup() { int x = ${"(".repeat(20000)}1${")".repeat(20000)}; } void loop() {}`],
  ["blocks inside blocks", `void setup() ${"{".repeat(20000)}${"}".repeat(20000)} void loop() {}`],
  ["a sum without end", `void setup() { int x = 1${"+1".repeat(50000)}; } void loop() {}`],
  ["minus signs without end", `void setup() { int x = ${"- ".repeat(50000)}1; } void loop() {}`],
  ["stars without end", `void setup() { int ${"*".repeat(50000)}p; } void loop() {}`],
  ["else if without end", `void setup() { int x = 0; ${"if (x == 1) x = 2; else ".repeat(5000)} x = 3; } void loop() {}`],
  [
    "macros that double",
    `${Array.from({ length: 40 }, (_, i) => `#define M${i + 1} M${i} M${i}`).join("\n")}\nint x = M40;\nvoid setup() {} void loop() {}`,
  ],
  [
    "macros with doubling values",
    `#define D(x) x x\n int y = ${"D(".repeat(40)}1${")".repeat(40)};\nvoid setup() {} void loop() {}`,
  ],
  ["a hundred thousand lines", "int x;\n".repeat(100_000)],
  ["a hundred thousand quotes", '"'.repeat(100_000)],
  ["strange characters", "\u201c".repeat(100_000)],
  ["a long array", `int a[] = {${"1,".repeat(60_000)}}; void setup() {} void loop() {}`],
  ["members of members", `struct A { int a; }; A x; void setup() { x${".a".repeat(50000)}; } void loop() {}`],
  ["indices of indices", `int x; void setup() { x${"[0]".repeat(50000)}; } void loop() {}`],
  ["choices without end", `void setup() { int x = ${"1 ? 2 : ".repeat(20000)}3; } void loop() {}`],
];
for (const [what, text] of large)
  test(`${what}: an answer within a second or two`, () => {
    const started = performance.now();
    const read = parseProgram("large.cpp", text);
    if (read.value !== null) runWithInputs(read.value, [], 10, { mostWork: 1e6 });
    expect(performance.now() - started).toBeLessThan(5000);
  });
