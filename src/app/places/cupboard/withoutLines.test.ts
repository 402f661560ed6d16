// A list from which doubtful lines are left out.
import { expect, test } from "vitest";
import { withoutLines } from "./withoutLines.ts";

const lines: [name: string, text: string, out: number[], left: string][] = [
  ["one line", "a\nb\nc", [2], "a\nc"],
  ["the last", "a\nb\nc", [3], "a\nb\n"],
  ["with carriage returns", "a\r\nb\r\nc\r\n", [1, 3], "b\r\n"],
  ["carriage returns alone", "a\rb\rc", [2], "a\rc"],
  ["a line that is not there", "a\nb", [9], "a\nb"],
];
for (const [name, whole, out, left] of lines) test(`without ${name}`, () => expect(withoutLines(whole, out)).toBe(left));
