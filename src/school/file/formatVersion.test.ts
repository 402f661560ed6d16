// The way from an old version to the newest, tried with an invented format: version 1 said `boxes`, version 2 says `stock`, and
// version 3 counts money in text.
import { expect, test } from "vitest";
import { readJson } from "../../base/index.ts";
import { bringToNewest, type Format, type Migration } from "./formatVersion.ts";

const toSecond: Migration = ({ boxes, ...rest }) => ({ ...rest, stock: boxes });
const toThird: Migration = ({ budget, ...rest }) => ({ ...rest, budget: `${budget}.00` });
const format: Format = {
  name: "try",
  newest: 3,
  migrations: new Map([
    [1, toSecond],
    [2, toThird],
  ]),
};

const read = (text: string, how = format) => bringToNewest(readJson("try.json", text).value!, how);

test("the first version comes to the newest, step by step", () => {
  const { value, problems } = read('{"format": "try/1", "boxes": [1, 2], "budget": 20}');
  expect(problems).toEqual([]);
  expect(value?.data).toEqual({ format: "try/3", stock: [1, 2], budget: "20.00" });
});

test("a version in the middle takes the steps that are left", () =>
  expect(read('{"format": "try/2", "stock": [], "budget": 1}').value?.data).toEqual({
    format: "try/3",
    stock: [],
    budget: "1.00",
  }));

test("the newest version stays as it is", () =>
  expect(read('{"format": "try/3", "budget": "1.00"}').value?.data).toEqual({ format: "try/3", budget: "1.00" }));

test("what was migrated keeps the place of what stands in the file", () => {
  const { value } = read('{"format": "try/1",\n "budget": 20,\n "boxes": [1]}');
  expect(value?.place(["budget"])).toEqual({ file: "try.json", line: 2, column: 12 });
  expect(value?.place(["stock", 0])).toEqual({ file: "try.json", line: 1, column: 1 });
});

test("the data that came in are not changed", () => {
  const document = readJson("try.json", '{"format": "try/1", "boxes": [1], "budget": 2}').value!;
  bringToNewest(document, format);
  expect(document.data).toEqual({ format: "try/1", boxes: [1], budget: 2 });
});

test("a newer version is refused whole", () =>
  expect(read('{"format": "try/4", "stock": "who knows"}')).toEqual({
    value: null,
    problems: [{ code: "file.newerFormat", found: "try/4", expected: "try/3", place: { file: "try.json", line: 1, column: 12 } }],
  }));

const others: [text: string, code: string][] = [
  ['{"format": "try/0"}', "file.otherFormat"],
  ['{"format": "try/01"}', "file.otherFormat"],
  ['{"format": "try"}', "file.otherFormat"],
  ['{"format": "other/1"}', "file.otherFormat"],
  ['{"format": 3}', "file.otherFormat"],
  ["[]", "file.otherFormat"],
  ["null", "file.otherFormat"],
  ["{}", "document.missingField"],
];
for (const [text, code] of others) test(`${text}: ${code}`, () => expect(read(text).problems).toMatchObject([{ code }]));
