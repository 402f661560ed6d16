// The slips that beginners make, at every place of a program where they can be made.
//
// A slip is one small edit: letters taken out, put in or exchanged. A new kind is one line in the table: its name and the places,
// each the range that is taken out and what stands there instead.
// Does not know: what any compiler says about them.
import { type Random, seededRandom } from "../../src/base/index.ts";
import { readTokens } from "../../src/bench/program/read/readTokens.ts";
import type { Token } from "../../src/bench/program/read/token.ts";
import { reservedWords, typeKeywords } from "../../src/bench/program/read/words.ts";

export interface Slip {
  readonly kind: string;
  readonly from: number;
  readonly to: number;
  readonly insert: string;
}

interface Word extends Token {
  /** Offsets in the text. */
  readonly from: number;
  readonly to: number;
}

type Places = (words: readonly Word[], text: string, random: Random) => (readonly [from: number, to: number, insert: string])[];

const without = (w: Word) => [w.from, w.to, ""] as const;
const before = (w: Word, insert: string) => [w.from, w.from, insert] as const;
const behind = (w: Word, insert: string) => [w.to, w.to, insert] as const;
const instead = (w: Word, insert: string) => [w.from, w.to, insert] as const;

const isMark = (w: Word | undefined, text: string) => w?.kind === "mark" && w.text === text;
const isOwn = (w: Word | undefined) => w?.kind === "name" && !reservedWords.has(w.text);
const isDirective = (words: readonly Word[], w: Word) =>
  isMark(
    words.find((k) => k.line === w.line),
    "#",
  );
const marks =
  (text: string): Places =>
  (words) =>
    words.filter((w) => isMark(w, text)).map(without);
/** Words in front of a name that is declared: `const int led`, `void loop`. */
const declared = (words: readonly Word[]) =>
  words.flatMap((w, i) => {
    if (!isOwn(w) || !["=", ";", "(", "[", ","].includes(words[i + 1]?.text ?? "")) return [];
    let k = i;
    while (k > 0 && (typeKeywords.has(words[k - 1]!.text) || ["const", "static", "byte"].includes(words[k - 1]!.text))) k -= 1;
    return k < i ? [{ name: w, first: words[k]!, type: words[i - 1]!, mark: words[i + 1]! }] : [];
  });
/** Calls: the name, its brackets, and where its arguments begin and end. */
const calls = (words: readonly Word[]) =>
  words.flatMap((w, i) => {
    if (!isOwn(w) || !isMark(words[i + 1], "(") || words[i - 1]?.kind === "name" || isMark(words[i - 1], "*")) return [];
    let depth = 0;
    const commas: Word[] = [];
    for (let k = i + 1; k < words.length; k += 1) {
      if (words[k]!.text === "(") depth += 1;
      if (words[k]!.text === ")") depth -= 1;
      if (depth === 1 && isMark(words[k], ",")) commas.push(words[k]!);
      if (depth === 0) return [{ name: w, open: words[i + 1]!, close: words[k]!, commas, empty: k === i + 2 }];
    }
    return [];
  });
const header = (words: readonly Word[]) =>
  words.flatMap((w, i) =>
    isMark(w, "{") && isMark(words[i - 1], ")") && declared(words).some((d) => d.name.line === w.line && isMark(d.mark, "("))
      ? [w]
      : [],
  );

const misspelt: Readonly<Record<string, readonly string[]>> = {
  if: ["fi", "iff"], else: ["esle", "els"], for: ["fro", "foor"], while: ["whlie", "wile"], return: ["retrun", "retun"],
  void: ["viod", "vod"], int: ["itn", "in"], const: ["cosnt", "cons"], bool: ["boo1", "boolen"], long: ["logn"], unsigned: ["unsinged"],
  switch: ["swich"], case: ["caes"], break: ["brake"], struct: ["strcut"], float: ["flaot"], char: ["chr"], byte: ["bite"], true: ["ture"],
}; // biome-ignore format: one row reads better

export const kinds: Readonly<Record<string, Places>> = {
  "semicolon missing": marks(";"),
  "opening brace missing": marks("{"),
  "closing brace missing": marks("}"),
  "opening bracket missing": marks("("),
  "closing bracket missing": marks(")"),
  "square bracket missing": (words) => words.filter((w) => isMark(w, "[") || isMark(w, "]")).map(without),
  "comma missing": marks(","),
  "closing brace too many": (words) => words.filter((w) => isMark(w, "}")).map((w) => behind(w, " }")),
  "opening brace too many": (words) => words.filter((w) => isMark(w, "{")).map((w) => behind(w, " {")),
  "closing bracket too many": (words) => words.filter((w) => isMark(w, ")")).map((w) => behind(w, ")")),
  "opening bracket too many": (words) => words.filter((w) => isMark(w, "(")).map((w) => behind(w, "(")),
  "quote missing": (words) => words.filter((w) => w.kind === "text").flatMap((w) => [[w.from, w.from + 1, ""] as const, [w.to - 1, w.to, ""] as const]),
  "single quotes round a word": (words) =>
    words.filter((w) => w.kind === "text" && w.text.length > 3 && !isDirective(words, w)).map((w) => instead(w, `'${w.text.slice(1, -1)}'`)),
  "typographic quotes": (words) => words.filter((w) => w.kind === "text").map((w) => instead(w, `“${w.text.slice(1, -1)}”`)),
  "en dash for minus": (words) => words.filter((w) => isMark(w, "-")).map((w) => instead(w, "–")),
  "full-width semicolon": (words) => words.filter((w) => isMark(w, ";")).map((w) => instead(w, "；")),
  "no-break space": (words) => words.filter((w) => w.startsLine && w.column > 2).map((w) => [w.from - 1, w.from, "\u00a0"] as const),
  "wrong capitals in a name": (words, _, random) =>
    words.filter((w) => isOwn(w) && !isDirective(words, w)).map((w) => {
      const spots = [...w.text].flatMap((c, i) => (/[a-z]/i.test(c) && (i === 0 || /[A-Z]/.test(c)) ? [i] : []));
      const at = spots[random.int(0, spots.length - 1)] ?? 0;
      const c = w.text[at]!;
      return instead(w, w.text.slice(0, at) + (c === c.toLowerCase() ? c.toUpperCase() : c.toLowerCase()) + w.text.slice(at + 1));
    }),
  "name misspelt": (words, _, random) =>
    words.filter((w) => isOwn(w) && w.text.length > 3 && !isDirective(words, w)).map((w) => {
      const at = random.int(1, w.text.length - 2);
      const swapped = w.text.slice(0, at) + w.text[at + 1] + w.text[at] + w.text.slice(at + 2);
      return instead(w, random.int(0, 1) === 0 || swapped === w.text ? w.text.slice(0, at) + w.text.slice(at + 1) : swapped);
    }),
  "keyword misspelt": (words, _, random) =>
    words.filter((w) => w.kind === "name" && misspelt[w.text]).map((w) => instead(w, misspelt[w.text]![random.int(0, misspelt[w.text]!.length - 1)]!)),
  "wrong capitals in a keyword": (words) =>
    words.filter((w) => w.kind === "name" && reservedWords.has(w.text) && !isDirective(words, w)).map((w) => instead(w, w.text[0]!.toUpperCase() + w.text.slice(1))),
  "capital in setup or loop": (words) => words.filter((w) => ["setup", "loop"].includes(w.text)).map((w) => instead(w, w.text[0]!.toUpperCase() + w.text.slice(1))),
  "type missing": (words) => declared(words).filter((d) => !isMark(d.mark, "(")).map((d) => [d.first.from, d.name.from, ""] as const),
  "return type missing": (words) => declared(words).filter((d) => isMark(d.mark, "(")).map((d) => [d.first.from, d.name.from, ""] as const),
  "one = too many": (words) => words.filter((w) => isMark(w, "=")).map((w) => instead(w, "==")),
  "one = too few": (words) => words.filter((w) => isMark(w, "==")).map((w) => instead(w, "=")),
  "=> for >=": (words) => words.filter((w) => isMark(w, ">=") || isMark(w, "<=")).map((w) => instead(w, w.text === ">=" ? "=>" : "=<")),
  "too few arguments": (words) =>
    calls(words).filter((c) => !c.empty).map((c) => [c.commas.at(-1)?.from ?? c.open.to, c.close.from, ""] as const),
  "too many arguments": (words) => calls(words).map((c) => before(c.close, c.empty ? "1" : ", 1")),
  "text for a number": (words) => calls(words).filter((c) => !c.empty).map((c) => [c.open.to, (c.commas[0] ?? c.close).from, '"13"'] as const),
  "text as first value": (words) => words.flatMap((w, i) => (isMark(w, "=") && words[i + 1]!.kind === "number" ? [instead(words[i + 1]!, `"${words[i + 1]!.text}"`)] : [])),
  "compared with a text": (words) => words.flatMap((w, i) => (isMark(w, "==") && words[i + 1] ? [instead(words[i + 1]!, '"on"')] : [])),
  "assigned to a constant": (words) => {
    const constants = declared(words).filter((d) => d.first.text === "const" && isMark(d.mark, "=")).map((d) => d.name.text);
    return words.filter((w, i) => isMark(words[i - 1], "{") && w.startsLine && !isDirective(words, w)).flatMap((w) => constants.map((c) => before(w, `${c} = 3;\n  `)));
  },
  "assigned to a macro": (words) => words.filter((w, i) => isMark(words[i - 1], "{") && w.startsLine).map((w) => before(w, "HIGH = 1;\n  ")),
  "defined twice": (words, text) =>
    declared(words).filter((d) => isMark(d.mark, "=") && d.first.column === 1).map((d) => {
      const row = text.split("\n")[d.name.line - 1]!;
      return before(d.first, `${row}\n`);
    }),
  "defined twice with another type": (words) => declared(words).filter((d) => d.first.column === 1 && isMark(d.mark, "=")).map((d) => before(d.first, `long ${d.name.text} = 1;\n`)),
  "function twice": (words) => [behind(words.at(-2)!, "\nvoid loop() {\n}\n")],
  "semicolon behind a function's head": (words) => header(words).map((w) => [w.from, w.from, "; "] as const),
  "semicolon behind if": (words) => words.flatMap((w, i) => (isMark(w, "{") && isMark(words[i - 1], ")") && !header(words).includes(w) ? [before(w, "; ")] : [])),
  "# missing": (words) => words.filter((w) => isMark(w, "#")).map(without),
  "header misspelt": (words) => words.filter((w, i) => words[i - 1]?.text === "<" && isDirective(words, w)).map((w) => instead(w, w.text.slice(1))),
  "include missing": (words, text) => words.filter((w, i) => isMark(w, "#") && words[i + 1]?.text === "include").map((w) => [w.from, text.indexOf("\n", w.from), ""] as const),
  "comment not closed": (words) => words.filter((w) => w.startsLine && w.column === 1).map((w) => before(w, "/* part\n")),
  "one slash for a comment": (_, text) => [...text.matchAll(/\/\//g)].map((m) => [m.index, m.index + 1, ""] as const),
  "octal 09": (words) => words.flatMap((w, i) => (w.kind === "number" && /^\d+$/.test(w.text) && !isMark(words[i - 1], "[") ? [instead(w, "09")] : [])),
  "name begins with a digit": (words) => declared(words).filter((d) => !isMark(d.mark, "(")).map((d) => before(d.name, "2")),
  "number runs into a name": (words) => words.flatMap((w, i) => (isMark(w, "*") && words[i - 1]?.kind === "number" && isOwn(words[i + 1]) ? [without(w)] : [])),
  "operator missing": (words) => words.filter((w) => w.kind === "mark" && ["+", "*", "/", "<", ">", "==", "&&", "||", "%"].includes(w.text) && !isDirective(words, w)).map((w) => instead(w, " ")),
  "word of the language as a name": (words) => declared(words).filter((d) => !isMark(d.mark, "(")).map((d) => instead(d.name, "switch")),
  "array without size": (words) => words.flatMap((w, i) => (isMark(w, "[") && words[i + 1]?.kind === "number" && isMark(words[i + 2], "]") ? [without(words[i + 1]!)] : [])),
  "comma for semicolon": (words) => words.filter((w) => isMark(w, ";")).map((w) => instead(w, ",")),
  "colon for semicolon": (words) => words.filter((w) => isMark(w, ";")).map((w) => instead(w, ":")),
  "semicolon for comma": (words) => words.filter((w) => isMark(w, ",")).map((w) => instead(w, ";")),
  "point missing": (words) => words.filter((w) => isMark(w, ".")).map(without),
  "comma for point": (words) => words.filter((w) => isMark(w, ".")).map((w) => instead(w, ",")),
  "wrong bracket": (words) => words.filter((w) => ["(", ")", "{", "}"].includes(w.text) && w.kind === "mark").map((w) => instead(w, { "(": "{", ")": "}", "{": "(", "}": ")" }[w.text]!)),
  "line lost": (_, text) => {
    const out: [number, number, string][] = [];
    let at = 0;
    for (const row of text.split("\n")) {
      if (row.trim() !== "" && !row.trim().startsWith("//")) out.push([at, at + row.length, ""]);
      at += row.length + 1;
    }
    return out;
  },
  "result from a void function": (words) => words.filter((w, i) => isMark(w, "}") && isMark(words[i - 1], ";") && w.column === 1).map((w) => before(w, "return 1;\n")),
}; // biome-ignore format: a table

/** Every slip that can be made in the program. */
export function slipsOf(text: string, seed: number): Slip[] {
  const starts = [0];
  for (const row of text.split("\n")) starts.push(starts.at(-1)! + row.length + 1);
  const words = readTokens("", text).tokens.map((t) => ({
    ...t,
    from: starts[t.line - 1]! + t.column - 1,
    to: starts[t.endLine - 1]! + t.endColumn - 1,
  }));
  const random = seededRandom(seed, "slips");
  return Object.entries(kinds).flatMap(([kind, places]) =>
    places(words.slice(0, -1).length > 0 ? words : [], text, random).map(([from, to, insert]) => ({ kind, from, to, insert })),
  );
}

export function withSlip(text: string, slip: Slip): string {
  return text.slice(0, slip.from) + slip.insert + text.slice(slip.to);
}

/**
 * Draws slips: from each kind about equally many, from all programs.
 *
 * @param programs text by name.
 */
export function drawSlips(
  programs: ReadonlyMap<string, string>,
  seed: number,
  count: number,
): { readonly program: string; readonly slip: Slip }[] {
  const random = seededRandom(seed, "draw");
  const all = [...programs].flatMap(([program, text]) => slipsOf(text, seed).map((slip) => ({ program, slip })));
  const byKind = Object.keys(kinds).map((kind) => random.shuffled(all.filter((s) => s.slip.kind === kind)));
  const drawn: (typeof all)[number][] = [];
  for (let row = 0; drawn.length < count && byKind.some((list) => row < list.length); row += 1)
    for (const list of byKind) if (row < list.length && drawn.length < count) drawn.push(list[row]!);
  return drawn;
}
