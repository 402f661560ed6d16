// The value of a condition behind #if and #elif.
//
// Whole numbers, `defined`, the usual operators; a name that is no macro counts as 0, as the C++ standard has it
// (section 16.1 of C++11). The macros in it were expanded before.
// Does not know: the directives around it.
import type { Token } from "./token.ts";

const levels: readonly (readonly string[])[] = "|| && | ^ & ==,!= <,>,<=,>= <<,>> +,- *,/,%"
  .split(" ")
  .map((level) => level.split(","));

/** @returns the value, or null if the tokens make no condition. */
export function conditionValue(tokens: readonly Token[]): number | null {
  let at = 0;
  let good = true;
  let depth = 0;
  const isMark = (text: string) => tokens[at]?.kind === "mark" && tokens[at]?.text === text;

  const unary = (): number => {
    depth += 1;
    if (depth > 100) good = false;
    const value = good ? operand() : 0;
    depth -= 1;
    return value;
  };
  const operand = (): number => {
    const token = tokens[at];
    if (token === undefined) {
      good = false;
      return 0;
    }
    at += 1;
    if (token.kind === "number") {
      const value = Number(token.text.replace(/[uUlL]+$/, ""));
      if (Number.isNaN(value)) good = false;
      return value;
    }
    if (token.kind === "name") return token.text === "true" ? 1 : 0;
    if (token.kind === "character") return token.bytes.charCodeAt(0) || 0;
    if (token.text === "!") return unary() === 0 ? 1 : 0;
    if (token.text === "-") return -unary();
    if (token.text === "+") return unary();
    if (token.text === "~") return ~unary();
    if (token.text === "(") {
      const value = level(0);
      if (isMark(")")) at += 1;
      else good = false;
      return value;
    }
    good = false;
    return 0;
  };
  const level = (n: number): number => {
    const operators = levels[n];
    if (operators === undefined) return unary();
    let left = level(n + 1);
    for (;;) {
      const operator = operators.find(isMark);
      if (operator === undefined || !good) return left;
      at += 1;
      left = apply(operator, left, level(n + 1));
    }
  };
  const value = level(0);
  return good && at === tokens.length ? value : null;
}

function apply(operator: string, a: number, b: number): number {
  switch (operator) {
    case "||":
      return a !== 0 || b !== 0 ? 1 : 0;
    case "&&":
      return a !== 0 && b !== 0 ? 1 : 0;
    case "|":
      return a | b;
    case "^":
      return a ^ b;
    case "&":
      return a & b;
    case "==":
      return a === b ? 1 : 0;
    case "!=":
      return a !== b ? 1 : 0;
    case "<":
      return a < b ? 1 : 0;
    case ">":
      return a > b ? 1 : 0;
    case "<=":
      return a <= b ? 1 : 0;
    case ">=":
      return a >= b ? 1 : 0;
    case "<<":
      return a << b;
    case ">>":
      return a >> b;
    case "+":
      return a + b;
    case "-":
      return a - b;
    case "*":
      return a * b;
    default:
      // C++ leaves division by zero undefined here too; 0 makes the condition false.
      return b === 0 ? 0 : operator === "/" ? Math.trunc(a / b) : a % b;
  }
}
