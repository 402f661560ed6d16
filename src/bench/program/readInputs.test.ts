// Inputs of a run as a JSON file: what is read, and what is refused with its place.
import { expect, test } from "vitest";
import { readInputs } from "./index.ts";

test("levels, values and texts, sorted by time", () => {
  const read = readInputs(
    "inputs.json",
    '[{"ms": 500, "text": "on\\n"}, {"ms": 100, "pin": "D2", "level": "low"}, {"ms": 0, "pin": "A0", "value": 512}]',
  );
  expect(read.problems).toEqual([]);
  expect(read.value).toEqual([
    { ms: 0, pin: 14, value: 512 },
    { ms: 100, pin: 2, level: "low" },
    { ms: 500, text: "on\n" },
  ]);
});
test("no inputs are inputs too", () => expect(readInputs("inputs.json", "[]").value).toEqual([]));

const refused: [text: string, code: string, line: number, data?: Record<string, unknown>][] = [
  ["[\n {", "document.cutOff", 2],
  ["{}", "document.wrongType", 1],
  ['[\n{"ms": 1, "pin": "D99", "level": "low"}]', "program.unknownPin", 2, { pin: "D99", near: "D9" }],
  ['[\n{"ms": 1, "pin": "d2", "level": "low"}]', "program.unknownPin", 2, { near: "D2" }],
  ['[\n\n{"ms": 1, "pin": "D3", "value": 5}]', "program.inputNotAnalog", 3, { pin: "D3" }],
  ['[{"ms": 1, "pin": "D2", "level": "up"}]', "document.wrongValue", 1],
  ['[{"ms": -1, "pin": "D2", "level": "low"}]', "document.wrongValue", 1],
  ['[{"ms": 1, "pin": "A0", "value": 1024}]', "document.wrongValue", 1],
  ['[{"ms": 1, "pin": "A0", "value": 0.5}]', "document.wrongValue", 1],
  ['[{"ms": 1}]', "document.missingField", 1],
];
for (const [text, code, line, data = {}] of refused) {
  test(`refuses ${text.replaceAll("\n", " ")}`, () => {
    const { value, problems } = readInputs("inputs.json", text);
    expect(value).toBeNull();
    expect(problems.map((p) => p.code)).toContain(code);
    const found = problems.find((p) => p.code === code)!;
    expect(found.place).toMatchObject({ file: "inputs.json", line });
    expect(found).toMatchObject(data);
  });
}
