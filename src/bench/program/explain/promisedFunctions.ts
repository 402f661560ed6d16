// The functions that the class's tools promise above a program, so that they may be used before they stand.
//
// The tools look for headers, `type name(…) {` outside all braces, before anything else reads the program; so this works on
// a broken program too. setup and loop are promised by the board's own header. A function with values for parameters that
// may be left out is not promised, because such a value may be written once only.
// Does not know: what the types mean.
import type { Token } from "../read/token.ts";
import { reservedWords, specifiers, typeKeywords } from "../read/words.ts";

/** A header in the tokens: from its first word up to, not including, its brace. */
export interface PromisedHeader {
  readonly name: string;
  readonly from: number;
  readonly to: number;
}

export interface Promised {
  readonly list: readonly PromisedHeader[];
  /** Number of the token that the promises stand before: the first word of the first function. */
  readonly before: number;
}

/** @param tokens as they are written, before any macro. */
export function promisedFunctions(tokens: readonly Token[]): Promised {
  const list: PromisedHeader[] = [];
  const known = new Set(["setup", "loop"]);
  let before = -1;
  let depth = 0;
  let start = 0;
  for (let i = 0; i < tokens.length; i += 1) {
    const token = tokens[i]!;
    if (token.kind !== "mark") continue;
    if (token.text === "#" && token.startsLine) {
      while (i + 1 < tokens.length && !tokens[i + 1]!.startsLine && tokens[i + 1]!.kind !== "end") i += 1;
      if (depth === 0) start = i + 1;
    } else if (token.text === "{") {
      if (depth === 0) {
        const name = headerName(tokens, start, i);
        if (name !== null) {
          if (before < 0) before = start;
          const header = tokens.slice(start, i);
          if (!known.has(name) && !header.some((t) => t.text === "=")) list.push({ name, from: start, to: i });
        }
      }
      depth += 1;
    } else if (token.text === "}") {
      depth = Math.max(0, depth - 1);
      if (depth === 0) start = i + 1;
    } else if (token.text === ";" && depth === 0) {
      // A promise that the program makes itself: `void blink(int n);`.
      const name = headerName(tokens, start, i);
      if (name !== null) known.add(name);
      start = i + 1;
    }
  }
  const wanted = list.filter((p) => !known.has(p.name));
  return { list: wanted, before: before < 0 ? tokens.length - 1 : before };
}

/** The name in `type name(…)`, or null if the tokens are no header. */
function headerName(tokens: readonly Token[], from: number, to: number): string | null {
  if (tokens[to - 1]?.text !== ")") return null;
  let depth = 0;
  let open = to - 1;
  for (; open >= from; open -= 1) {
    const { kind, text } = tokens[open]!;
    if (kind !== "mark") continue;
    if (text === ")") depth += 1;
    if (text === "(") depth -= 1;
    if (depth === 0) break;
  }
  const name = tokens[open - 1];
  if (open - 2 < from || name?.kind !== "name" || reservedWords.has(name.text)) return null;
  for (const token of tokens.slice(from, open - 1)) {
    if (token.kind === "mark" && (token.text === "*" || token.text === "&")) continue;
    if (token.kind !== "name") return null;
    if (reservedWords.has(token.text) && !typeKeywords.has(token.text) && !specifiers.has(token.text)) return null;
  }
  return name.text;
}
