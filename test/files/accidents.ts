// Accidents that happen to files: a bit turns over, the power goes, somebody edits a copy, another program saves it.
//
// Each takes a text and gives another; which one and where comes from a seed, so that a failure can be run again.
import type { Random } from "../../src/base/index.ts";
import { decodeText } from "../../src/school/file/decodeText.ts";

const accidents: readonly ((text: string, random: Random) => string)[] = [
  // A bit of a character turned over.
  (text, random) => {
    const at = random.int(0, text.length - 1);
    return text.slice(0, at) + String.fromCharCode(text.charCodeAt(at) ^ (1 << random.int(0, 7))) + text.slice(at + 1);
  },
  // Cut by a power cut.
  (text, random) => text.slice(0, random.int(0, text.length)),
  // A piece missing from the middle.
  (text, random) => {
    const at = random.int(0, text.length);
    return text.slice(0, at) + text.slice(at + random.int(1, 40));
  },
  // A line doubled, a line lost, two lines swapped.
  (text, random) =>
    onLines(text, (lines) => lines.splice(random.int(0, lines.length - 1), 0, lines[random.int(0, lines.length - 1)]!)),
  (text, random) => onLines(text, (lines) => lines.splice(random.int(0, lines.length - 1), 1)),
  (text, random) =>
    onLines(text, (lines) => {
      const a = random.int(0, lines.length - 1);
      const b = random.int(0, lines.length - 1);
      [lines[a], lines[b]] = [lines[b]!, lines[a]!];
    }),
  // A value of another kind, a huge one, somebody else's.
  (text, random) =>
    onValue(text, random, () =>
      pick(random, [
        "null",
        "true",
        "[]",
        "{}",
        '""',
        "-1",
        "1e308",
        "1e999",
        "0.1",
        "99999999999999999999",
        '"__proto__"',
        '"2027-02-30"',
        '"\\u202e"',
        '"\\ud800"',
        '"\\u0000"',
      ]),
    ),
  (text, random) => onValue(text, random, () => pick(random, text.match(value) ?? ["0"])),
  // Read in the wrong encoding.
  (text) => decodeText(Uint8Array.from([0xe9, ...new TextEncoder().encode(text)])).text.slice(1),
];

const value = /(?<=[:[,] ?)(?:"(?:[^"\\]|\\.)*"|-?\d+(?:\.\d+)?|true|false|null)(?=[,}\] \n])/g;

function onLines(text: string, change: (lines: string[]) => void): string {
  const lines = text.split("\n");
  change(lines);
  return lines.join("\n");
}

function onValue(text: string, random: Random, other: () => string): string {
  const found = [...text.matchAll(value)];
  const one = found[random.int(0, found.length - 1)];
  return one ? text.slice(0, one.index) + other() + text.slice(one.index + one[0].length) : text;
}

/** One accident, or in a third of all cases two. */
export function afterAccident(text: string, random: Random): string {
  const once = pick(random, accidents)(text, random);
  return random.int(0, 2) === 0 ? pick(random, accidents)(once, random) : once;
}

function pick<T>(random: Random, from: readonly T[]): T {
  return from[random.int(0, from.length - 1)]!;
}
