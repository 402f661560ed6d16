// A save as bytes: what goes in comes out, and no changed bit goes unseen.
import { utf8ToBytes } from "@noble/hashes/utils.js";
import { expect, test } from "vitest";
import { makeGeneration, rawBody, readBody, readHead, writeHead } from "./generation.ts";

const about = { counter: 7, at: "2026-11-25T10:00:00Z", note: "Awa is away", title: "7b", parent: "a".repeat(64) };
const texts: [what: string, text: string][] = [
  ["nothing", ""],
  ["a class file", '{"format":"class"}\n'],
  ["other scripts", "Ökçe فاطمة 北 🙂"],
  ["half a surrogate pair", "a\ud800b"],
  ["NUL and controls", "\u0000\u0001\u2028\r\n"],
];
for (const [what, text] of texts)
  test(`${what} comes back as it was`, () => {
    const made = makeGeneration("c", { text, beside: "b" }, about);
    const head = readHead("c", made.name, made.head);
    expect(head).toMatchObject({ status: "whole", hash: made.hash, head: about });
    expect(head.status === "whole" && readBody(head.head, made.body)).toEqual({ text, beside: "b" });
  });

const made = makeGeneration("c", { text: "some text", beside: "" }, about);
test("every bit of a head that flips is seen", () => {
  for (let bit = 0; bit < made.head.length * 8; bit++) {
    const bytes = made.head.slice();
    bytes[bit >> 3]! ^= 1 << (bit & 7);
    expect(readHead("c", made.name, bytes).status, `bit ${bit}`).toBe("damaged");
  }
});
test("every bit of a body that flips is seen, and every cut", () => {
  const head = readHead("c", made.name, made.head);
  if (head.status !== "whole") throw new Error("not whole");
  for (let bit = 0; bit < made.body.length * 8; bit++) {
    const bytes = made.body.slice();
    bytes[bit >> 3]! ^= 1 << (bit & 7);
    expect(readBody(head.head, bytes), `bit ${bit}`).toBe(null);
  }
  for (let length = 0; length < made.body.length; length++) expect(readBody(head.head, made.body.slice(0, length))).toBe(null);
  for (let length = 0; length < made.head.length; length++)
    expect(readHead("c", made.name, made.head.slice(0, length)).status).toBe("damaged");
  expect(readBody(head.head, null)).toBe(null);
});
test("a head under another name or of another class is damaged", () => {
  expect(readHead("c", made.name.replace("7", "8"), made.head).status).toBe("damaged");
  expect(readHead("d", made.name, made.head).status).toBe("damaged");
});
test("a newer version is told from a damaged one by its checksum", () => {
  const newer = writeHead(2, utf8ToBytes('{"all":"new"}'));
  expect(readHead("c", "any", newer).status).toBe("newer");
  newer[newer.length - 3]! ^= 1;
  expect(readHead("c", "any", newer).status).toBe("damaged");
});
test("a body that is not ours is handed out as it stands", () =>
  expect(rawBody(utf8ToBytes("what is this"))).toEqual({ text: "what is this", beside: "" }));
