// Broken kits, with the mark ¦ where the problem must point, and the two kits that come with Benchday.
import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { changed, mark, unmarked } from "../../../test/files/marked.ts";
import { readKit } from "./readKit.ts";

const right = `format: benchday-kit/1
id: starter
name: Starter kit
supplier: A shop
price: 39.00 EUR
contents:
  board: 1
  led red: 5
  resistor 4k7: 10   # yellow, violet, red
  button: 4
`;

test("a kit is read", () => {
  const { value, problems } = readKit("starter.yaml", right);
  expect(problems).toEqual([]);
  expect(value).toMatchObject({ id: "starter", supplier: "A shop", price: { sum: 3900, currency: "EUR" }, note: "" });
  expect([...(value?.contents ?? [])]).toEqual([
    ["board", 1],
    ["led red", 5],
    ["resistor 4k7", 10],
    ["button", 4],
  ]);
});

const cases: [name: string, from: string, to: string, code: string, data?: Record<string, unknown>][] = [
  ["an unknown item", "led red: 5", "¦leed red: 5", "file.unknownItem", { found: "leed red", near: "led red" }],
  ["an unknown colour", "led red: 5", "¦led rad: 5", "file.unknownItem", { near: "led red" }],
  ["an item in other words", "button: 4", "¦Buttons: 4", "file.unknownItem", { near: "button" }],
  ["one item under two names", "button: 4", "¦resistor 4.7k: 4", "file.sameItem", { item: "resistor 4k7", firstLine: 9 }],
  ["the same item twice", "button: 4", "¦led red: 4", "document.twice", { name: "led red", firstLine: 8 }],
  ["none of an item", "button: 4", "button: ¦0", "document.wrongValue", { expected: ">=1" }],
  ["minus one", "button: 4", "button: ¦-1", "document.wrongValue"],
  ["a count in words", "button: 4", "button: ¦four", "document.wrongType", { found: "four" }],
  ["a count with a fraction", "button: 4", "button: ¦4.5", "document.wrongValue"],
  ["a list instead of counts", right.slice(right.indexOf("contents")), "contents: ¦[board, button]\n", "document.wrongType"],
  ["no contents", right.slice(right.indexOf("contents")), "note: all gone\n", "document.missingField", { field: "contents" }],
  ["a misspelt field", "supplier: A shop", "¦suplier: A shop", "document.unknownField", { near: "supplier" }],
  ["a newer kit", "benchday-kit/1", "¦benchday-kit/3", "file.newerFormat", { expected: "benchday-kit/1" }],
  ["a lesson", "benchday-kit/1", "¦benchday-lesson/1", "file.otherFormat"],
  ["a price without currency", "39.00 EUR", "¦39.00", "document.wrongType"],
  ["a price in an unknown currency", "39.00 EUR", "¦39.00 EUX", "file.unknownCurrency", { found: "EUX", near: "EUR" }],
  ["a price with a tenth of a cent", "39.00 EUR", "¦39.001 EUR", "file.tooFineSum"],
  ["a reference", "id: starter", "id: ¦*other", "document.refused", { what: "reference" }],
  ["an anchor", "name: Starter kit", "name: &n ¦Starter kit", "document.refused", { what: "anchor" }],
  ["a tab", "  led red: 5", "¦\tled red: 5", "document.tab"],
  ["a prototype key", "button: 4", "¦__proto__: 4", "document.badName"],
  ["nothing at all", right, mark, "document.empty"],
  ["a list", right, "¦- board\n", "file.otherFormat"],
  ["an id with a slash", "id: starter", "id: ¦kits/starter", "document.wrongValue"],
];
for (const [name, from, to, code, data] of cases)
  test(`${name}: ${code}`, () => {
    const { text, line, column } = unmarked(changed(right, from, to));
    const { value, problems } = readKit("starter.yaml", text);
    expect(value).toBe(null);
    expect(problems[0]).toMatchObject({ code, ...data });
    if (to.includes(mark)) expect(problems[0]?.place).toEqual({ file: "starter.yaml", line, column });
  });

const folder = new URL("../../../kits/", import.meta.url);
for (const name of readdirSync(folder).filter((file) => file.endsWith(".yaml")))
  test(`kits/${name} is right, and is called as its file is`, () => {
    const { value, problems } = readKit(name, readFileSync(new URL(name, folder), "utf8"));
    expect(problems).toEqual([]);
    expect(`${value?.id}.yaml`).toBe(name);
  });
