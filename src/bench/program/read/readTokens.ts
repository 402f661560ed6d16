// From text to tokens: the lexer.
//
// It goes once from left to right and never goes back, so its time grows with the length only. What it does not know it
// reports and skips, so that the reader behind it sees the rest. Characters outside ASCII are allowed in comments and texts
// only, as in the class's compiler; a pasted typographic quote or a no-break space is named with its code.
// Does not know: macros, what names mean.
import type { SyntaxProblem } from "../problems.ts";
import type { Token, TokenKind } from "./token.ts";
import { toBytes } from "./utf8.ts";

/** Longest first within each first character. */
const marks = "<<= >>= ... ->* << >> <= >= == != && || ++ -- += -= *= /= %= &= |= ^= -> :: ##".split(" ");

const simpleEscapes: Readonly<Record<string, number>> = {
  n: 10, t: 9, r: 13, a: 7, b: 8, f: 12, v: 11, e: 27, "\\": 92, "'": 39, '"': 34, "?": 63,
}; // biome-ignore format: one row reads better

const isNameStart = (c: string) => /[A-Za-z_$]/.test(c);
const isNamePart = (c: string) => /[A-Za-z0-9_$]/.test(c);
const isDigit = (c: string) => c >= "0" && c <= "9";

/** @returns all tokens, the last of kind "end", and what could not be read, in order. */
export function readTokens(file: string, text: string): { tokens: Token[]; problems: SyntaxProblem[] } {
  const tokens: Token[] = [];
  const problems: SyntaxProblem[] = [];
  let at = 0;
  let line = 1;
  let lineStart = 0;
  let startsLine = true;
  let afterSpace = false;
  if (text.startsWith("\ufeff")) {
    at = 1;
    lineStart = 1;
  }
  const column = (position: number) => position - lineStart + 1;

  const add = (kind: TokenKind, end: number, bytes = "") => {
    tokens.push({
      kind,
      text: text.slice(at, end),
      bytes,
      line,
      column: column(at),
      endLine: line,
      endColumn: column(end),
      startsLine,
      afterSpace,
      macro: "",
    });
    at = end;
    startsLine = false;
    afterSpace = false;
  };
  /** Past a line end at `position`, whichever of \n, \r\n, \r it is. */
  const newLine = (position: number) => {
    at = text[position] === "\r" && text[position + 1] === "\n" ? position + 2 : position + 1;
    line += 1;
    lineStart = at;
  };
  const isLineEnd = (c: string | undefined) => c === "\n" || c === "\r";

  while (at < text.length) {
    const c = text[at]!;
    const next = text[at + 1] ?? "";
    if (isLineEnd(c)) {
      newLine(at);
      startsLine = true;
      afterSpace = true;
    } else if (c === " " || c === "\t" || c === "\v" || c === "\f") {
      at += 1;
      afterSpace = true;
    } else if (c === "\\" && isLineEnd(next)) {
      newLine(at + 1);
      afterSpace = true;
    } else if (c === "/" && next === "/") {
      while (at < text.length && !isLineEnd(text[at])) {
        if (text[at] === "\\" && isLineEnd(text[at + 1])) newLine(at + 1);
        else at += 1;
      }
      afterSpace = true;
    } else if (c === "/" && next === "*") {
      const place = { file, line, column: column(at) };
      at += 2;
      while (at < text.length && !(text[at] === "*" && text[at + 1] === "/")) {
        if (isLineEnd(text[at])) newLine(at);
        else at += 1;
      }
      if (at >= text.length) problems.push({ code: "program.openComment", place });
      at = Math.min(text.length, at + 2);
      afterSpace = true;
    } else if (isNameStart(c)) {
      let end = at + 1;
      while (end < text.length && isNamePart(text[end]!)) end += 1;
      add("name", end);
    } else if (isDigit(c) || (c === "." && isDigit(next))) {
      let end = at + 1;
      while (end < text.length && (isNamePart(text[end]!) || text[end] === "." || isExponentSign(text, end))) end += 1;
      add("number", end);
    } else if (c === '"' || c === "'") {
      readQuoted(c);
    } else {
      const mark = marks.find((m) => text.startsWith(m, at));
      if (mark !== undefined) add("mark", at + mark.length);
      else if (/[-+*/%=<>!&|^~?:;,.(){}[\]#]/.test(c)) add("mark", at + 1);
      else {
        const codePoint = text.codePointAt(at)!;
        const found = String.fromCodePoint(codePoint);
        // One a line: a pasted pair of quotes is one slip.
        if (problems.at(-1)?.place?.line !== line)
          problems.push({ code: "program.unknownCharacter", place: { file, line, column: column(at) }, found, codePoint });
        at += found.length;
        afterSpace = true;
      }
    }
  }
  add("end", at);
  return { tokens, problems };

  function readQuoted(quote: string): void {
    const start = at;
    let end = at + 1;
    let bytes = "";
    while (end < text.length && text[end] !== quote && !isLineEnd(text[end])) {
      if (text[end] !== "\\") {
        const character = String.fromCodePoint(text.codePointAt(end)!);
        bytes += toBytes(character);
        end += character.length;
      } else if (isLineEnd(text[end + 1]) || end + 1 >= text.length) {
        end += 1;
        break;
      } else {
        const read = readEscape(text, end + 1);
        bytes += read.bytes;
        end = read.end;
      }
    }
    if (text[end] === quote) end += 1;
    else problems.push({ code: "program.openText", place: { file, line, column: column(start) }, found: quote });
    add(quote === '"' ? "text" : "character", end, bytes);
  }
}

/** A sign behind the e of an exponent belongs to the number: 1e-3. A hexadecimal 0x1e-3 is a subtraction. */
function isExponentSign(text: string, position: number): boolean {
  if (text[position] !== "+" && text[position] !== "-") return false;
  if (text[position - 1] !== "e" && text[position - 1] !== "E") return false;
  let start = position - 1;
  while (start > 0 && /[A-Za-z0-9_.]/.test(text[start - 1]!)) start -= 1;
  return !/^0[xX]/.test(text.slice(start, position));
}

/** The escape that stands behind a backslash at `position - 1`. An unknown one stands for its letter, as in GCC. */
function readEscape(text: string, position: number): { bytes: string; end: number } {
  const c = text[position]!;
  const octal = /^[0-7]{1,3}/.exec(text.slice(position, position + 3));
  if (octal) return { bytes: String.fromCharCode(Number.parseInt(octal[0], 8) & 255), end: position + octal[0].length };
  if (c === "x") {
    let end = position + 1;
    let value = 0;
    while (end < text.length && /[0-9A-Fa-f]/.test(text[end]!)) {
      value = ((value << 4) | Number.parseInt(text[end]!, 16)) & 255;
      end += 1;
    }
    if (end > position + 1) return { bytes: String.fromCharCode(value), end };
  }
  const known = simpleEscapes[c];
  if (known !== undefined) return { bytes: String.fromCharCode(known), end: position + 1 };
  const character = String.fromCodePoint(text.codePointAt(position)!);
  return { bytes: toBytes(character), end: position + character.length };
}
