// Other slips that lead to the same complaint, each with the edit that would mend it.
//
// The compiler's words alone do not tell `f((a, b);` from `f(a, b;`: which it was shows when the edit is tried.
// Does not know: whether an edit mends (explainProgram.ts tries it).
import { libraryForms, libraryMembers, libraryNames } from "../library/signatures.ts";
import type { Token } from "../read/token.ts";
import { openBracketOf } from "./brackets.ts";
import type { Evidence, Make } from "./diagnose.ts";
import type { ExplainCode, Explained, Fix } from "./explained.ts";

export function otherWays(e: Evidence, make: Make, main: Explained): Explained[] {
  const { said, tokens } = e;
  const token = tokens[said.index];
  if (token === undefined || said.index < 0) return [];
  const ways: Explained[] = [];
  const add = (code: ExplainCode, name: string, fix: Fix | null, near: string | null = null) => {
    if (fix !== null) ways.push(make(code, { name, near, fix, look: [fix.line] }));
  };
  if (said.kind === "expected") ofMarks(e, add);
  if (main.code === "commaMissing") ways.push(make("operatorMissing", { name: main.name, found: main.found }));
  if (said.kind === "undeclared" || said.kind === "noMember") runTogether(e, add);
  if (said.kind === "forbidsNoType" && main.fix)
    for (const type of ["int ", "long ", "float "]) ways.push({ ...main, fix: { ...main.fix, text: type } });
  return ways;
}

type Add = (code: ExplainCode, name: string, fix: Fix | null, near?: string | null) => void;

function ofMarks({ said, tokens }: Evidence, add: Add): void {
  const token = tokens[said.index]!;
  const before = tokens[said.index - 1];
  const found = token.text;
  // A comma at the end of a line, where a semicolon belongs.
  for (const back of [1, 2]) {
    const comma = tokens[said.index - back];
    const then = tokens[said.index - back + 1];
    if (comma?.text === "," && then && then.line > comma.line) add("semicolonMissing", ",", replaced(comma, ";"));
  }
  // In the head of a loop: for (int i = 0; i < 8, i++).
  const open = openBracketOf(tokens, said.index);
  if (open > 0 && tokens[open - 1]!.text === "for")
    for (const comma of tokens.slice(open, said.index + 1))
      if (comma.text === ",") add("semicolonMissing", ",", replaced(comma, ";"));
  if (found === ";") add("commaMissing", ";", replaced(token, ","));
  if (found === ",") add("semicolonMissing", ",", replaced(token, ";"));
  if (found === "}" && said.data.what === "')'") add("bracketNotClosed", ")", replaced(token, ")"));
  if (found === "}") add("braceTooMany", "}", removed(token));
  if (found === ")") add("bracketTooMany", ")", removed(token));
  if (found === ")" && said.data.what === "'}'") add("braceNotClosed", "}", replaced(token, "}"));
  if (found === "(") add("braceNotOpened", "{", replaced(token, "{"));
  if (found === "{" && before) add("bracketNotOpened", before.text, replaced(token, "("));
  // A name and a value with nothing between them: f"text");
  if (before?.kind === "name" && ["text", "number", "name", "character"].includes(token.kind))
    add("bracketNotOpened", before.text, { edit: "insert", line: before.line, column: before.endColumn, text: "(", found: "" });
  // ( ( where one would do, and { {.
  for (let k = said.index - 1; k > 0 && tokens[k]!.line >= token.line - 1; k -= 1) {
    if (tokens[k]!.text === "(" && tokens[k - 1]!.text === "(") add("bracketTooMany", "(", removed(tokens[k]!));
    if (tokens[k]!.text === "{" && tokens[k - 1]!.text === "{") add("braceTooMany", "{", removed(tokens[k]!));
  }
}

/** Two names, or a name and a number, that lost what stood between them: digitalRead2), lamps0], Serialprintln. */
function runTogether({ said, tokens }: Evidence, add: Add): void {
  const name = said.data.name ?? "";
  let index = said.index;
  while (index > 0 && tokens[index]!.text !== name) index -= 1;
  const token = tokens[index]!;
  if (token.text !== name) return;
  const then = tokens[index + 1]?.text;
  const own = new Set(tokens.filter((t) => t.kind === "name" && t !== token).map((t) => t.text));
  const known = said.kind === "noMember" ? libraryMembers("Serial").concat(libraryMembers("Servo")) : [...libraryNames(), ...own];
  const heads = known.filter((k) => name.startsWith(k) && k.length < name.length).sort((a, b) => b.length - a.length);
  for (const head of heads.slice(0, 2)) {
    const at = { line: token.line, column: token.column + head.length };
    const rest = name.slice(head.length);
    if (then === "]") add("squareBracketMissing", "[", { edit: "insert", ...at, text: "[", found: "" });
    else {
      add("bracketNotOpened", head, { edit: "insert", ...at, text: "(", found: "" });
      if (libraryForms(`${head}.${rest}`) !== null || then === "(")
        add("pointMissing", name, { edit: "insert", ...at, text: ".", found: "" }, `${head}.${rest}`);
    }
  }
  const comma = tokens[index - 1];
  const owner = tokens[index - 2];
  if (comma?.text === "," && owner?.kind === "name") add("pointMissing", name, replaced(comma, "."), `${owner.text}.${name}`);
}

function replaced(token: Token, text: string): Fix | null {
  return token.macro === "" ? { edit: "replace", line: token.line, column: token.column, text, found: token.text } : null;
}

function removed(token: Token): Fix | null {
  return token.macro === "" ? { edit: "remove", line: token.line, column: token.column, text: "", found: token.text } : null;
}
