// Cuts a C++ program into tokens, just far enough to tell whether two programs differ in more than comments and texts.
//
// A translated program (`program.fr.cpp`) may say other words to people and nothing else; what the board does must stay what was
// rehearsed. Texts are tokens without content; a character such as 'a' is a value that the program compares, so it counts.
// Does not know: C++ beyond the edges of its tokens (bench/program reads programs).

export interface ProgramToken {
  /** The token as written; every text is `""`. */
  readonly text: string;
  readonly line: number;
  readonly column: number;
}

// The longest first. Source of the list: ISO C++17, [lex.operators].
const marks = [
  "<<=",
  ">>=",
  "...",
  "->*",
  "::",
  "->",
  ".*",
  "++",
  "--",
  "<<",
  ">>",
  "<=",
  ">=",
  "==",
  "!=",
  "&&",
  "||",
  "##",
].concat(["+=", "-=", "*=", "/=", "%=", "&=", "|=", "^="]);

/** @returns the tokens. A comment or a text that does not end goes to the end of the text, or of its line. Linear. */
export function programTokens(text: string): ProgramToken[] {
  const tokens: ProgramToken[] = [];
  let at = 0;
  let line = 1;
  let lineStart = 0;
  const wordPattern = /[\p{L}_$][\p{L}\p{N}_$]*/uy;
  // Numbers with their digit separators, exponents and suffixes (C++'s "pp-number").
  const numberPattern = /\.?\d(?:[eEpP][+-]|'?[\p{L}\p{N}_]|\.)*/uy;
  const skipTo = (end: number) => {
    for (; at < end; at += 1)
      if (text[at] === "\n") {
        line += 1;
        lineStart = at + 1;
      }
  };
  while (at < text.length) {
    const c = text[at]!;
    const two = text.slice(at, at + 2);
    if (c === "\n" || c === " " || c === "\t" || c === "\r" || c === "\ufeff") skipTo(at + 1);
    else if (two === "//") skipTo(endOfLine(text, at));
    else if (two === "/*") {
      const end = text.indexOf("*/", at + 2);
      skipTo(end === -1 ? text.length : end + 2);
    } else {
      const start = { line, column: at - lineStart + 1 };
      let end = at + 1;
      let token = "";
      if (c === '"' || c === "'") {
        end = endOfQuote(text, at);
        token = c === '"' ? '""' : text.slice(at, end);
      } else {
        wordPattern.lastIndex = at;
        numberPattern.lastIndex = at;
        token = wordPattern.exec(text)?.[0] ?? numberPattern.exec(text)?.[0] ?? marks.find((m) => text.startsWith(m, at)) ?? c;
        end = at + token.length;
      }
      // Neighbouring texts are one text to the compiler, so that a translator may break a long one.
      if (token !== '""' || tokens.at(-1)?.text !== '""') tokens.push({ text: token, ...start });
      skipTo(end);
    }
  }
  return tokens;
}

function endOfLine(text: string, at: number): number {
  const end = text.indexOf("\n", at);
  return end === -1 ? text.length : end;
}

/** Where a text or character ends: behind its closing quote, or at the end of the line if there is none. */
function endOfQuote(text: string, at: number): number {
  const quote = text[at];
  for (let i = at + 1; i < text.length; i += 1) {
    if (text[i] === "\\") i += 1;
    else if (text[i] === quote) return i + 1;
    else if (text[i] === "\n") return i;
  }
  return text.length;
}

/** The first token in which two programs differ in more than comments and texts, or null. A program that ends early has no token there. */
export function firstDifference(
  original: string,
  translation: string,
): { readonly original: ProgramToken | null; readonly translation: ProgramToken | null } | null {
  const a = programTokens(original);
  const b = programTokens(translation);
  for (let i = 0; i < Math.max(a.length, b.length); i += 1)
    if (a[i]?.text !== b[i]?.text) return { original: a[i] ?? null, translation: b[i] ?? null };
  return null;
}
