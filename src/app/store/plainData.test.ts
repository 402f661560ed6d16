// Plain data goes to bytes and back exactly; what is not plain is refused.
import fc from "fast-check";
import { expect, test } from "vitest";
import { readPlain, writePlain } from "./plainData.ts";

const back = (data: unknown) => readPlain(writePlain(data)!);
const cases: [what: string, data: unknown][] = [
  ["nothing", undefined],
  ["numbers that JSON has no word for", [Number.NaN, Infinity, -Infinity, -0, 0]],
  ["a map of sets", new Map([["a", new Set([1, { b: undefined }])]])],
  ["a map with keys that are objects", new Map([[{ a: 1 }, new Map()]])],
  ["typed arrays", [new Float64Array([1.5, Number.NaN, -0]), new Uint8Array([0, 255]), new Int32Array([-1])]],
  ["a large whole number", 123456789012345678901234567890n],
  ["a member with our mark's name", { $: "map", of: [[1, 2]] }],
  ["a member called __proto__", JSON.parse('{"__proto__":{"x":1},"constructor":2}')],
  ["a text with half a surrogate pair", "\ud800"],
];
for (const [what, data] of cases) test(`${what} comes back`, () => expect(back(data)).toStrictEqual(data));
test("no prototype is touched", () => {
  back(JSON.parse('{"__proto__":{"polluted":1}}'));
  expect(({} as { polluted?: number }).polluted).toBe(undefined);
});
test("random data come back", () =>
  fc.assert(
    fc.property(fc.anything({ withMap: true, withSet: true, withBigInt: true, maxDepth: 4 }), (data) => {
      expect(back(data)).toEqual(data);
    }),
    { seed: 20261125, numRuns: 500 },
  ));

const circle: unknown[] = [];
circle.push(circle);
const refused: [what: string, data: unknown][] = [
  ["a function", () => 1],
  ["a function inside", { a: [() => 1] }],
  ["an instance of a class", new (class {})()],
  ["a date", new Date(0)],
  ["a circle", circle],
  ["a symbol", Symbol("x")],
];
for (const [what, data] of refused) test(`${what} is refused`, () => expect(writePlain(data)).toBe(null));
for (const text of ["", "{", '{"$":"nobody","of":[]}', '{"$":"map"}'])
  test(`bytes that are not ours are nothing: ${text}`, () => expect(readPlain(new TextEncoder().encode(text))).toBe(undefined));
