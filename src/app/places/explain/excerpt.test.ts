// Which lines stand beside a message, and where its token is. Written by hand from the rows below.
import { expect, test } from "vitest";
import { explainProgram } from "../../../bench/program/index.ts";
import { excerptOf, mendedLine } from "./excerpt.ts";

const rows = (text: string) => text.split("\n");
const first = (text: string) => {
  const { first: said } = explainProgram("a.cpp", text);
  if (said === null) throw new Error("it compiles");
  return said;
};

const missing = "void setup() {\n  pinMode(9, OUTPUT)\n  delay(1);\n}\nvoid loop() {}\n";

test("the line of the message stands with its neighbours and its token", () => {
  const lines = excerptOf(rows(missing), first(missing));
  expect(lines.map((l) => l.line)).toEqual([1, 2, 3, 4, 5]);
  expect(lines[2]).toEqual({ line: 3, before: "  ", token: "delay", after: "(1);", gap: false });
  expect(lines.map((l) => l.token).filter((t) => t !== "")).toEqual(["delay"]);
});

test("the mended line shows what is put in, and only there", () => {
  const { fix } = first(missing);
  expect(mendedLine(rows(missing), fix!)).toEqual({ line: 2, before: "  pinMode(9, OUTPUT)", token: ";", after: "" });
});

test("a line far above that must be looked at too is shown behind a gap", () => {
  const twice = `int led = 9;\n${"\n".repeat(20)}int led = 8;\nvoid setup() {}\nvoid loop() {}\n`;
  const lines = excerptOf(rows(twice), first(twice));
  expect(lines.map((l) => [l.line, l.gap])).toEqual([
    [1, false],
    [20, true],
    [21, false],
    [22, false],
    [23, false],
    [24, false],
  ]);
});

test("of a line without an end only what stands round the token is shown", () => {
  const long = `void setup() { ${"delay(1); ".repeat(5000)} delai(1); ${"delay(1); ".repeat(5000)} }\nvoid loop() {}\n`;
  const [line] = excerptOf(rows(long), first(long)).filter((l) => l.token !== "");
  expect(line?.token).toBe("delai");
  expect(`${line?.before}${line?.after}`.length).toBeLessThan(400);
});
