// Bytes to text. Expected: Unicode (marks, UTF-16), and the WHATWG Encoding Standard's index of windows-1252.
import { expect, test } from "vitest";
import { decodeText } from "./decodeText.ts";

const bytes = (...values: number[]) => Uint8Array.from(values);

const cases: [name: string, content: Uint8Array, text: string, encoding: string][] = [
  ["UTF-8", bytes(0x4a, 0x6f, 0x73, 0xc3, 0xa9), "José", "utf-8"],
  ["UTF-8 with its mark", bytes(0xef, 0xbb, 0xbf, 0xc3, 0xa9), "é", "utf-8"],
  ["UTF-16, low byte first", bytes(0xff, 0xfe, 0xe9, 0x00, 0xac, 0x20), "é€", "utf-16le"],
  ["UTF-16, high byte first", bytes(0xfe, 0xff, 0x00, 0xe9, 0x20, 0xac), "é€", "utf-16be"],
  ["UTF-16 beyond its first plane", bytes(0xff, 0xfe, 0x3d, 0xd8, 0x00, 0xde), "😀", "utf-16le"],
  ["UTF-16 cut in the middle", bytes(0xff, 0xfe, 0xe9, 0x00, 0xac), "é", "utf-16le"],
  ["the code page", bytes(0x4a, 0x6f, 0x73, 0xe9), "José", "windows-1252"],
  ["the code page's own signs", bytes(0x80, 0x8a, 0x92, 0x96, 0x9f), "€Š’–Ÿ", "windows-1252"],
  ["half a mark of UTF-16", bytes(0xff, 0x41), "ÿA", "windows-1252"],
  ["half the other mark", bytes(0xfe, 0x41), "þA", "windows-1252"],
  ["nothing", bytes(), "", "utf-8"],
];
for (const [name, content, text, encoding] of cases)
  test(`reads ${name}`, () => expect(decodeText(content)).toEqual({ text, encoding }));

test("pasted text stays as it is, without a mark", () =>
  expect(decodeText("\ufeffJosé")).toEqual({ text: "José", encoding: null }));
