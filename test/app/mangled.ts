// Class files as accidents leave them: bits turned, pieces cut, lines doubled, values swapped, numbers grown, types changed.
//
// One accident or a few a file, drawn from a seed. What happened is told, so that a failing file can be made again.
// Does not know: what a class file means.
import type { Random } from "../../src/base/index.ts";

type Accident = readonly [name: string, happen: (text: string, random: Random) => string];

const accidents: readonly Accident[] = [
  ["cut at the end", (text, random) => text.slice(0, at(text, random))],
  [
    "a piece taken out",
    (text, random) => {
      const from = at(text, random);
      return text.slice(0, from) + text.slice(from + 1 + below(80, random));
    },
  ],
  [
    "a bit turned",
    (text, random) => {
      const place = at(text, random);
      const turned = String.fromCharCode((text.charCodeAt(place) ^ (1 << below(7, random))) & 0x7f);
      return text.slice(0, place) + turned + text.slice(place + 1);
    },
  ],
  [
    "a line twice",
    (text, random) => {
      const lines = text.split("\n");
      const n = below(lines.length, random);
      return [...lines.slice(0, n + 1), ...lines.slice(n)].join("\n");
    },
  ],
  [
    "two lines exchanged",
    (text, random) => {
      const lines = text.split("\n");
      const [a, b] = [below(lines.length, random), below(lines.length, random)];
      [lines[a], lines[b]] = [lines[b] ?? "", lines[a] ?? ""];
      return lines.join("\n");
    },
  ],
  ["a number grown", (text, random) => replaceNth(text, /: \d+/g, random, () => `: ${"9".repeat(1 + below(30, random))}`)],
  ["a number made negative", (text, random) => replaceNth(text, /: \d+/g, random, (found) => found.replace(": ", ": -"))],
  [
    "a value of another type",
    (text, random) =>
      replaceNth(text, /: ("[^"\n]*"|\d+)/g, random, () => `: ${pick(["null", "true", "[]", "{}", '"x"', "1e999"], random)}`),
  ],
  [
    "a name changed",
    (text, random) =>
      replaceNth(text, /"[a-zA-Z]+":/g, random, () => pick(['"__proto__":', '"constructor":', '"nam":', '"":'], random)),
  ],
  [
    "a day that does not exist",
    (text, random) =>
      replaceNth(text, /\d{4}-\d\d-\d\d/g, random, () => pick(["2027-02-30", "0000-00-00", "2027-13-01"], random)),
  ],
  ["signs that turn a line round", (text, random) => insert(text, random, "\u202e")],
  ["a nought sign", (text, random) => insert(text, random, "\0")],
  ["half of a pair", (text, random) => insert(text, random, "\ud800")],
  ["markup", (text, random) => replaceNth(text, /"name": "[^"]*"/g, random, () => '"name": "<img src=x onerror=alert(1)>"')],
];

export function mangled(text: string, random: Random): { readonly text: string; readonly how: string } {
  const how: string[] = [];
  let out = text;
  for (let n = below(3, random); n >= 0; n -= 1) {
    const [name, happen] = pick(accidents, random);
    how.push(name);
    out = happen(out, random);
  }
  return { text: out, how: how.join(", ") };
}

function below(count: number, random: Random): number {
  return random.int(0, count - 1);
}

function at(text: string, random: Random): number {
  return below(Math.max(1, text.length), random);
}

function pick<Value>(list: readonly Value[], random: Random): Value {
  return list[below(list.length, random)]!;
}

function insert(text: string, random: Random, piece: string): string {
  const place = at(text, random);
  return text.slice(0, place) + piece + text.slice(place);
}

function replaceNth(text: string, pattern: RegExp, random: Random, by: (found: string) => string): string {
  const all = [...text.matchAll(pattern)];
  const one = all.length === 0 ? undefined : pick(all, random);
  return one === undefined ? text : text.slice(0, one.index) + by(one[0]) + text.slice(one.index + one[0].length);
}
