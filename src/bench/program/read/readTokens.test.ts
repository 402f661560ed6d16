// Tokens with their places; what is no token is named and passed over.
import { expect, test } from "vitest";
import { readTokens } from "./readTokens.ts";
import { fromBytes, toBytes } from "./utf8.ts";

const texts = (text: string) =>
  readTokens("a.cpp", text)
    .tokens.slice(0, -1)
    .map((t) => t.text);
const cases: [text: string, tokens: string[]][] = [
  ["a+++b", ["a", "++", "+", "b"]],
  ["x<<=2>>=y", ["x", "<<=", "2", ">>=", "y"]],
  ["p->q::r", ["p", "->", "q", "::", "r"]],
  ["1e-3-2", ["1e-3", "-", "2"]],
  ["0x1e-3", ["0x1e", "-", "3"]],
  [".5f+3.", [".5f", "+", "3."]],
  ["2counter", ["2counter"]],
  ["a/*b*/c//d\ne", ["a", "c", "e"]],
  ["a\\\nb", ["a", "b"]],
  ["#define X", ["#", "define", "X"]],
  ["\"a\\\"b\" '\\''", ['"a\\"b"', "'\\''"]],
];
for (const [text, tokens] of cases) test(JSON.stringify(text), () => expect(texts(text)).toEqual(tokens));

test("places count lines and columns from 1, whatever ends the lines", () => {
  for (const end of ["\n", "\r\n", "\r"]) {
    const [a, b] = readTokens("a.cpp", `x${end}${end}  yy`).tokens;
    expect(a).toMatchObject({ line: 1, column: 1, endColumn: 2, startsLine: true });
    expect(b).toMatchObject({ line: 3, column: 3, endLine: 3, endColumn: 5, startsLine: true });
  }
});

const meant: [text: string, bytes: number[]][] = [
  ['"a\\n\\t\\0"', [97, 10, 9, 0]],
  ['"\\x41\\101\\\\"', [0x41, 0x41, 92]],
  ['"°"', [0xc2, 0xb0]],
  ["'\\''", [39]],
];
for (const [text, bytes] of meant)
  test(`${text} means ${bytes.join(" ")}`, () =>
    expect([...readTokens("a.cpp", text).tokens[0]!.bytes].map((c) => c.charCodeAt(0))).toEqual(bytes));

const slips: [text: string, code: string, line: number, column: number][] = [
  ['x = "abc;\ny', "program.openText", 1, 5],
  ["x = 'a;\ny", "program.openText", 1, 5],
  ["a\n /* b", "program.openComment", 2, 2],
  ["int x = \u201cb\u201d;", "program.unknownCharacter", 1, 9],
  ["a\u00a0b", "program.unknownCharacter", 1, 2],
  ["x @ y", "program.unknownCharacter", 1, 3],
];
for (const [text, code, line, column] of slips) {
  test(`${code} in ${JSON.stringify(text)}`, () =>
    expect(readTokens("a.cpp", text).problems).toEqual([
      expect.objectContaining({ code, place: { file: "a.cpp", line, column } }),
    ]));
}
test("comments and texts may hold any character", () => expect(readTokens("a.cpp", '// “°”\n"“°”"').problems).toEqual([]));

test("text to bytes and back", () => {
  for (const text of ["", "abc", "°", "“ß”", "\u{1F6A2} ahoy"]) expect(fromBytes(toBytes(text))).toEqual({ text, rest: "" });
  const bytes = toBytes("a°");
  expect(fromBytes(bytes.slice(0, 2), true)).toEqual({ text: "a", rest: bytes.slice(1, 2) });
  expect(fromBytes("\xff\xc0\x80").text).toBe("\ufffd\ufffd\ufffd");
  // The shortest form only (RFC 3629).
  expect(fromBytes("\xe0\x80\x80").text).not.toContain("\0");
});
