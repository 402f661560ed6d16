// What the compiler warns of unasked, in a program that it takes.
//
// The class's tools may hide even these; whatever else is seldom meant it lets pass in silence (silent/).
// Does not know: errors.
import type { ProgramProblem } from "../../problems.ts";
import type { Said, SaidKind } from "./said.ts";

/** Most and least of the types that are cut with a warning: what fits with or without a sign passes in silence. */
const signed: Readonly<Record<string, readonly [least: number, most: number]>> = {
  char: [-128, 255],
  "signed char": [-128, 255],
  short: [-32768, 65535],
  int: [-32768, 65535],
  long: [-2147483648, 4294967295],
};
const unsigned: Readonly<Record<string, number>> = {
  "unsigned char": 255,
  "unsigned short": 65535,
  "unsigned int": 65535,
  "unsigned long": 4294967295,
};

export function firstWarning(problems: readonly ProgramProblem[]): Said | null {
  for (const p of problems) {
    if (p.severity !== "warning" || p.place === undefined) continue;
    const make = (kind: SaidKind, data: Said["data"] = {}): Said => ({
      kind,
      severity: "warning",
      data,
      line: p.place!.line,
      column: p.place!.column,
      macro: "",
      index: -1,
    });
    if (p.code === "program.overflow") return make("overflow", { type: p.type, value: String(p.to) });
    if (p.code === "program.shiftTooFar")
      return make(p.count < 0 ? "shiftNegative" : "shiftTooFar", { side: p.operator === "<<" ? "left" : "right" });
    if (p.code === "program.manyCharacters") return p.found.length > 4 ? make("longCharacter") : make("manyCharacters");
    if (p.code === "program.macroAgain") return make("macroAgain", { name: p.name });
    if (p.code === "program.numberChanges") {
      const range = signed[p.type];
      const most = unsigned[p.type];
      const data = { type: p.type, from: String(p.from), to: String(p.to), given: "int" };
      if (range && (p.from < range[0] || p.from > range[1])) return make("overflowInConversion", data);
      if (most !== undefined && p.from > most) return make("largeInteger", data);
    }
  }
  return null;
}
