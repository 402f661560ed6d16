// Reads JSON (RFC 8259) into a tree with places.
//
// The language's own reader says where it stopped in words that differ from browser to browser, and keeps the last of two
// equal names in silence; a class file that was cut in half by a power cut deserves better. Strict: no comments, no trailing
// commas, nothing after the end. One pass, each character looked at once.
// Does not know: places as lines and columns, what the data mean.
import type { Complaint, DocumentLimits, Tree, TreeOutcome } from "./document.ts";
import { shown } from "./document.ts";

/** Thrown and caught in this file only: the first complaint ends the reading. */
class Stop {
  readonly complaint: Complaint;
  constructor(complaint: Complaint) {
    this.complaint = complaint;
  }
}

/** Reads the whole text; the first thing wrong ends it. */
export function readJsonTree(text: string, limits: DocumentLimits): TreeOutcome {
  let at = 0;
  let nodes = 0;

  const skipBlanks = () => {
    for (;;) {
      const c = text.charCodeAt(at);
      if (c === 0x20 || c === 0x0a || c === 0x0d || c === 0x09) at += 1;
      else return;
    }
  };
  const refuse = (expected: string): never => {
    if (at >= text.length) throw new Stop({ code: "document.cutOff", at: text.length, expected });
    throw new Stop({ code: "document.unexpected", at, expected, found: shown(wordAt(text, at)) });
  };

  const readValue = (depth: number): Tree => {
    skipBlanks();
    nodes += 1;
    if (nodes > limits.nodes) throw new Stop({ code: "document.tooMany", at, most: limits.nodes });
    if (depth > limits.depth) throw new Stop({ code: "document.tooDeep", at, most: limits.depth });
    const start = at;
    const c = text[at];
    if (c === "{") return readMapping(depth, start);
    if (c === "[") return readList(depth, start);
    if (c === '"') return { at: start, kind: "value", value: readText() };
    if (c === "-" || (c !== undefined && c >= "0" && c <= "9")) return { at: start, kind: "value", value: readNumber() };
    for (const [word, value] of [
      ["true", true],
      ["false", false],
      ["null", null],
    ] as const) {
      if (wordAt(text, at) !== word) continue;
      at += word.length;
      return { at: start, kind: "value", value };
    }
    // A word that the end of the text has cut, such as `tr`, is a cut text and not a wrong word.
    if (/^[a-z]+$/.test(text.slice(at)) && ["true", "false", "null"].some((word) => word.startsWith(text.slice(at))))
      at = text.length;
    return refuse("value");
  };

  const readMapping = (depth: number, start: number): Tree => {
    const entries: { at: number; name: string; tree: Tree }[] = [];
    at += 1;
    skipBlanks();
    if (text[at] === "}") {
      at += 1;
      return { at: start, kind: "mapping", entries };
    }
    for (;;) {
      skipBlanks();
      if (text[at] !== '"') refuse('"');
      const nameAt = at;
      const name = readText();
      skipBlanks();
      if (text[at] !== ":") refuse(":");
      at += 1;
      entries.push({ at: nameAt, name, tree: readValue(depth + 1) });
      skipBlanks();
      if (text[at] === "}") break;
      if (text[at] !== ",") refuse(", }");
      at += 1;
    }
    at += 1;
    return { at: start, kind: "mapping", entries };
  };

  const readList = (depth: number, start: number): Tree => {
    const items: Tree[] = [];
    at += 1;
    skipBlanks();
    if (text[at] === "]") {
      at += 1;
      return { at: start, kind: "list", items };
    }
    for (;;) {
      items.push(readValue(depth + 1));
      skipBlanks();
      if (text[at] === "]") break;
      if (text[at] !== ",") refuse(", ]");
      at += 1;
    }
    at += 1;
    return { at: start, kind: "list", items };
  };

  const readText = (): string => {
    at += 1;
    let out = "";
    let from = at;
    for (;;) {
      const c = text.charCodeAt(at);
      if (Number.isNaN(c)) throw new Stop({ code: "document.cutOff", at, expected: '"' });
      if (c === 0x22) break;
      if (c < 0x20) refuse('"');
      if (c !== 0x5c) {
        at += 1;
        continue;
      }
      out += text.slice(from, at);
      out += readEscape();
      from = at;
    }
    out += text.slice(from, at);
    at += 1;
    return out;
  };

  const readEscape = (): string => {
    if (at + 1 >= text.length) throw new Stop({ code: "document.cutOff", at: text.length, expected: '"' });
    const letter = text[at + 1]!;
    const simple = escapes[letter];
    if (simple !== undefined) {
      at += 2;
      return simple;
    }
    const hex = text.slice(at + 2, at + 6);
    if (letter !== "u" || !/^[0-9a-fA-F]{4}$/.test(hex))
      throw new Stop({ code: "document.badEscape", at, found: shown(text.slice(at, at + 6)) });
    at += 6;
    return String.fromCharCode(Number.parseInt(hex, 16));
  };

  const readNumber = (): number => {
    const start = at;
    while (at < text.length && "+-.eE0123456789".includes(text[at]!)) at += 1;
    const written = text.slice(start, at);
    const value = Number(written);
    if (!/^-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?$/.test(written) || !Number.isFinite(value))
      throw new Stop({ code: "document.badNumber", at: start, found: shown(written) });
    return value;
  };

  try {
    skipBlanks();
    if (at >= text.length) throw new Stop({ code: "document.empty", at: 0 });
    const tree = readValue(0);
    skipBlanks();
    if (at < text.length) throw new Stop({ code: "document.trailing", at, found: shown(wordAt(text, at)) });
    return { tree, complaints: [] };
  } catch (stop) {
    if (stop instanceof Stop) return { tree: null, complaints: [stop.complaint] };
    throw stop;
  }
}

const escapes: Readonly<Record<string, string | undefined>> = Object.assign(Object.create(null), {
  '"': '"',
  "\\": "\\",
  "/": "/",
  b: "\b",
  f: "\f",
  n: "\n",
  r: "\r",
  t: "\t",
});

/** The word or sign at an offset. */
function wordAt(text: string, at: number): string {
  return /^(?:[\p{L}\p{N}_-]{1,60}|.)/su.exec(text.slice(at, at + 60))?.[0] ?? "";
}
