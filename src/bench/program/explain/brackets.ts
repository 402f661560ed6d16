// Which brackets and braces are open somewhere in a program.
//
// Does not know: grammar.
import type { Token } from "../read/token.ts";

/** The braces that are open before a line, the outermost first. One that is closed at another depth than it looks is not seen. */
export function openBraces(tokens: readonly Token[], beforeLine: number): Token[] {
  const open: Token[] = [];
  for (const token of tokens) {
    if (token.line >= beforeLine) break;
    if (token.kind !== "mark") continue;
    if (token.text === "{") open.push(token);
    if (token.text === "}") open.pop();
  }
  return open;
}

/** The round or square bracket that is open at `index`, within its statement; −1 if there is none. */
export function openBracketOf(tokens: readonly Token[], index: number): number {
  let depth = 0;
  let semicolons = 0;
  for (let k = index - 1; k >= 0; k -= 1) {
    const { kind, text } = tokens[k]!;
    if (kind !== "mark") continue;
    if (text === "{" || text === "}") return -1;
    if (text === ";" && depth === 0) semicolons += 1;
    if (text === ")" || text === "]") depth += 1;
    if (text === "(" || text === "[") {
      depth -= 1;
      // Semicolons stand only in the head of a loop.
      if (depth < 0) return semicolons === 0 || tokens[k - 1]?.text === "for" ? k : -1;
    }
  }
  return -1;
}
