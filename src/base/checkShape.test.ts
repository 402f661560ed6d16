// Where a document differs from its schema. Lines and columns were counted by hand.
import * as v from "valibot";
import { expect, test } from "vitest";
import { checkShape } from "./checkShape.ts";
import { readYaml } from "./readYaml.ts";

const schema = v.strictObject({
  id: v.pipe(v.string(), v.regex(/^[a-z]+$/, "a-z")),
  minutes: v.pipe(v.number(), v.minValue(1)),
  level: v.optional(v.picklist(["easy", "hard"])),
  parts: v.optional(
    v.record(v.string(), v.strictObject({ kind: v.string(), ohms: v.optional(v.union([v.number(), v.string()])) })),
  ),
  nets: v.optional(v.array(v.array(v.string()))),
  expects: v.optional(v.union([v.string(), v.strictObject({ seen: v.string(), hertz: v.optional(v.number()) })])),
});

const good = "id: lamp\nminutes: 80\n";
const cases: [name: string, text: string, problem: object][] = [
  [
    "an unknown field, with the one meant",
    `${good}minuts: 5`,
    { code: "document.unknownField", field: "minuts", near: "minutes", line: 3, column: 1 },
  ],
  [
    "an unknown field inside",
    `${good}parts:\n  R1: { kind: r, ohm: 1 }`,
    { code: "document.unknownField", path: "parts.R1.ohm", near: "ohms", line: 4, column: 18 },
  ],
  [
    "an unknown field inside one of two shapes",
    `${good}expects: { seen: lit, hert: 2 }`,
    { code: "document.unknownField", near: "hertz", line: 3, column: 23 },
  ],
  ["an unknown field like no other", `${good}zebra: 5`, { code: "document.unknownField", near: null, line: 3, column: 1 }],
  ["a missing field", "id: lamp", { code: "document.missingField", field: "minutes", line: 1, column: 1 }],
  [
    "a missing field inside",
    `${good}parts:\n  R1: { ohms: 1 }`,
    { code: "document.missingField", path: "parts.R1.kind", line: 4, column: 7 },
  ],
  [
    "text for a number",
    "id: lamp\nminutes: soon",
    { code: "document.wrongType", expected: "number", found: "soon", line: 2, column: 10 },
  ],
  [
    "a list for a text",
    `id: [a]\nminutes: 1`,
    { code: "document.wrongType", expected: "text", found: "[…]", line: 1, column: 5 },
  ],
  [
    "a list for a mapping",
    `${good}parts: []`,
    { code: "document.wrongType", expected: "mapping", found: "[…]", line: 3, column: 8 },
  ],
  ["a list for the whole", "- 1", { code: "document.wrongType", expected: "mapping", found: "[…]", line: 1, column: 1 }],
  ["a text for the whole", "lamp", { code: "document.wrongType", expected: "mapping", found: "lamp", line: 1, column: 1 }],
  [
    "a mapping for a list",
    `${good}nets: {a: b}`,
    { code: "document.wrongType", expected: "list", found: "{…}", line: 3, column: 7 },
  ],
  [
    "a number in a list of texts",
    `${good}nets:\n  - [a, 1]`,
    { code: "document.wrongType", expected: "text", found: "1", line: 4, column: 9 },
  ],
  [
    "neither of two shapes",
    `${good}expects: 5`,
    { code: "document.wrongType", expected: "text, mapping", found: "5", line: 3, column: 10 },
  ],
  [
    "too small a number",
    "id: lamp\nminutes: 0",
    { code: "document.wrongValue", expected: ">=1", found: "0", line: 2, column: 10 },
  ],
  [
    "a word that is not on the list",
    `${good}level: hrad`,
    { code: "document.wrongValue", expected: "easy, hard", found: "hrad", near: "hard", line: 3, column: 8 },
  ],
  [
    "a rule's own text",
    "id: Lamp\nminutes: 1",
    { code: "document.wrongValue", expected: "a-z", found: "Lamp", line: 1, column: 5 },
  ],
];
for (const [name, text, { line, column, ...expected }] of cases as [string, string, { line: number; column: number }][])
  test(name, () => {
    const { value, problems } = checkShape(readYaml("f", text).value!, schema);
    expect(value).toBe(null);
    expect(problems.length).toBe(1);
    expect(problems[0]).toMatchObject({ ...expected, place: { file: "f", line, column } });
  });

test("several problems come in the order of the file", () => {
  const text = "minutes: 0\nx: 1\nlevel: no\nid: 5\n";
  expect(checkShape(readYaml("f", text).value!, schema).problems.map((p) => p.place.line)).toEqual([1, 2, 3, 4]);
});
test("a document that fits comes back typed", () => {
  const { value, problems } = checkShape(readYaml("f", `${good}level: easy`).value!, schema);
  expect(problems).toEqual([]);
  expect(value?.minutes).toBe(80);
});
