// What the compiler says of things that can be read and do not fit together: the checker's problems in its words.
//
// The checker knows the types; here its codes become the compiler's kinds, and its places the compiler's columns: behind a
// value for conversions, at the closing bracket for calls. Codes that only say that we cannot run something are no complaint.
// Does not know: grammar.

import type { ProgramProblem } from "../../problems.ts";
import type { Token } from "../../read/token.ts";
import { namedTypes, specifiers, typeKeywords } from "../../read/words.ts";
import { boardSignatures, classOf } from "./boardSignatures.ts";
import { where } from "./reader.ts";
import type { Said, SaidKind } from "./said.ts";

type At = "here" | "end" | "close" | "lastClose";
type Words = Said["data"];

export function firstOfMeaning(problems: readonly ProgramProblem[], tokens: readonly Token[]): Said | null {
  const said = problems.flatMap((p) => {
    const one = asSaid(p, tokens);
    return one === null ? [] : [one];
  });
  const order = (s: Said) => (s.line === 0 ? Number.POSITIVE_INFINITY : s.line * 10_000 + s.column);
  return said.sort((a, b) => order(a) - order(b))[0] ?? null;
}

function asSaid(p: ProgramProblem, tokens: readonly Token[]): Said | null {
  if (p.severity === "warning" || p.place === undefined) return null;
  const { line, column } = p.place;
  const index = tokens.findLastIndex((t) => t.line === line && t.column === column);
  const make = (kind: SaidKind, data: Words, at: At = "here"): Said => {
    const spot =
      at === "end"
        ? endOf(tokens, index)
        : at === "close"
          ? closeOf(tokens, index)
          : at === "lastClose"
            ? lastCloseOf(tokens, index)
            : index;
    const token = tokens[spot];
    const place = token && spot !== index ? { line: token.line, column: token.column } : { line, column };
    return { kind, severity: "error", data, ...place, macro: "", index: spot };
  };
  switch (p.code) {
    case "program.unknownMember": {
      if (p.of === "") return null;
      const owner = classOf(p.of) ?? recordWord(tokens, p.of);
      if (owner === null) return make("notMemberOf", { name: p.name, of: p.of });
      return make("noMember", { name: p.name, of: owner });
    }
    case "program.redefined":
      return make(isLocal(tokens, index) && !isFunctionName(tokens, index) ? "redeclaration" : "redefinition", {
        what: declaredText(tokens, index),
      });
    case "program.otherType":
      if (isFunctionName(tokens, index)) return make("ambiguatesOld", { what: declaredText(tokens, index) });
      return make("conflicting", { what: declaredText(tokens, index) });
    case "program.missingFunction":
      return { kind: "undefinedReference", severity: "error", data: { name: p.name }, line: 0, column: 0, macro: "", index: -1 };
    case "program.missingBody":
      return {
        kind: "undefinedReference",
        severity: "error",
        data: { name: `${p.name}()` },
        line: 0,
        column: 0,
        macro: "",
        index: -1,
      };
    case "program.argumentCount": {
      if (p.name === "") return null;
      const dot = p.name.lastIndexOf(".");
      const board = boardSignatures[p.name];
      if (dot >= 0 || board?.isOverloaded || isMethodCall(tokens, index, p.name) || namedTypes.has(p.name))
        return make("noMatch", { what: `${methodName(p.name)}(${argumentTypes(tokens, index)})` }, "close");
      const what = board?.text ?? signatureOf(tokens, p.name);
      const least = Number(/\d+/.exec(p.expected)?.[0] ?? 0);
      return make(p.found < least ? "tooFew" : "tooMany", { what }, "close");
    }
    case "program.noMatch":
      return make("noMatch", { what: `${methodName(p.name)}${p.found.replace(/[^(),]+/g, (t) => gccType(t))}` }, "close");
    case "program.ambiguous":
      return make("ambiguousCall", { what: `${methodName(p.name)}${p.found}` }, "close");
    case "program.cannotConvert":
      return conversion(p.from, p.to, tokens, index, make);
    case "program.badOperands": {
      const { operator, left, right } = p;
      if (operator === "?:") return make("badOperands", { left: gccType(left), right: gccType(right), operator }, "end");
      const isObject = [left, right].some((t) => recordWord(tokens, t) !== null || isEnum(tokens, t) || classOf(t) !== null);
      if (isObject) return make("noOperator", { operator });
      const isCompare = ["==", "!=", "<", ">", "<=", ">="].includes(operator);
      const isNumber = (t: string) => typeKeywords.has(t.split(" ").at(-1) ?? "");
      // A function without its brackets is an address: it may be counted on with, and not compared with a number.
      const isAddress = (operator === "-" || operator === "+") && [left, right].some((t) => boardSignatures[t] !== undefined);
      if (isAddress && isComparedLater(tokens, index)) return make("forbidsCompare", {}, "end");
      if (isCompare && (isNumber(left) || isNumber(right))) return make("forbidsCompare", {}, "end");
      return make("badOperands", {
        left: gccType(left),
        right: gccType(right),
        operator: operator.replace(/^(.+)=$/, isCompare ? "$1=" : "$1"),
      });
    }
    case "program.badOperand": {
      if (p.operator === "->") return make("baseOperand", { type: gccType(p.found) });
      if (p.operator === "*") return make("badStar", { type: gccType(p.found) }, "end");
      const word = ({ "-": "minus", "+": "plus", "~": "bit-complement", "!": "exclamation mark" } as const)[p.operator as "-"];
      if (word === undefined) return make("noOperator", { operator: p.operator });
      return make("badUnary", { operator: word }, "end");
    }
    case "program.assignToConst": {
      const operator = tokens[index]?.text ?? "";
      const isStep = operator === "++" || operator === "--";
      const before = tokens[index - 1];
      const isElement = before?.text === "]" || tokens[index - 2]?.text === ".";
      const word = operator === "++" ? "increment" : operator === "--" ? "decrement" : "assignment";
      if (isElement) return make("readOnlyLocation", { step: word, place: leftText(tokens, index) });
      const isParameter = !isStep && isParameterName(tokens, index, p.name);
      return isStep
        ? make("readOnlyStep", { step: word, name: p.name })
        : make(isParameter ? "readOnlyParameter" : "readOnly", { name: p.name });
    }
    case "program.notAssignable": {
      const operator = tokens[index]?.text ?? "";
      if (/\[/.test(p.found)) return make("incompatibleAssign", { from: "", to: gccType(p.found) }, "end");
      if (operator === "++") return make("lvalueStep", { step: "increment" });
      if (operator === "--") return make("lvalueStep", { step: "decrement" });
      return make("lvalueAssign", {});
    }
    case "program.notCallable":
      return p.name === "" ? make("expressionNotFunction", {}, "lastClose") : make("notFunction", { name: p.name }, "close");
    case "program.notArray":
      return make("badIndex", { types: `${gccType(p.found)}[int]` }, "end");
    case "program.notRecord":
      return make("noRecord", { name: p.name, of: tokens[index - 2]?.text ?? "", type: gccType(p.found) });
    case "program.privateMember":
      return make("privateMember", { what: `${p.of}::${p.name}` });
    case "program.notConstant":
      if (p.what === "case") return make("notConstant", { name: tokens[index]?.text ?? "" }, "end");
      if (p.what === "array size") {
        const close = endOf(tokens, index) + 1;
        return {
          ...make("arrayBound", { where: where(tokens[close] ?? tokens[index]!) }, "end"),
          column: tokens[close]?.column ?? column,
        };
      }
      return null;
    case "program.unknownSize": {
      const close = lastBracket(tokens, index);
      const many = tokens.slice(index, close).filter((t) => t.text === "[").length > 1;
      const then = tokens[close + 1]?.text;
      if (then === "=" && tokens[close + 2]?.text !== "{") return make("sizeFromText", { name: p.name }, "end");
      const said = make(many ? "boundsMissing" : then === ";" ? "sizeUnknown" : "sizeMissing", {
        name: p.name,
      });
      return { ...said, column: tokens[close]?.column ?? column };
    }
    case "program.tooManyValues": {
      const bare = tokens.findLastIndex(
        (t, k) => k < index && t.text === "]" && tokens[k - 1]?.text === "[" && tokens[k - 2]?.text === "]",
      );
      if (bare > 0 && tokens[bare]!.line === line) {
        const name = tokens.findLastIndex((t, k) => k < bare && t.kind === "name" && tokens[k + 1]?.text === "[");
        return { ...make("boundsMissing", { name: tokens[name]?.text ?? "" }), column: tokens[bare]!.column };
      }
      return make("tooManyInitialisers", { what: declaredType(tokens, index) });
    }
    case "program.badArraySize":
      return make("badArraySize", { name: tokens[index - 2]?.text ?? "" });
    case "program.noValue":
      return make("uninitialisedConst", { name: p.name });
    case "program.voidVariable":
      return make("declaredVoid", { name: p.name });
    case "program.duplicateCase":
      return make("duplicateCase", {});
    case "program.returnsNothing":
      return make("returnsNothing", {}, "end");
    case "program.returnsSomething":
      return make("returnsSomething", { type: gccType(p.expected) }, "end");
    case "program.incompleteType":
      return make("incompleteType", { name: p.name });
    default:
      return null;
  }
}

/** A conversion that the compiler refuses outright, or only without its option that lets old programs pass. */
function conversion(
  from: string,
  to: string,
  tokens: readonly Token[],
  index: number,
  make: (kind: SaidKind, data: Words, at?: At) => Said,
): Said | null {
  const isPointer = (t: string) => t.endsWith("*");
  const isInteger = (t: string) =>
    /^(?:(?:un)?signed |const )?(?:bool|char|short|int|long|unsigned)\b/.test(t) && !/[*[]/.test(t);
  // Serial can be asked whether it is ready, so it is a truth value too.
  if (from === "Serial") return null;
  if (to === "array") return make("needsBraces", {}, "end");
  const isAssignment = tokens[index]?.text === "=" && isPlainAssignment(tokens, index);
  const inCall = !isAssignment && isInCall(tokens, index);
  const at = inCall ? "close" : "end";
  const named = to === "unsigned char" && inCall ? "uint8_t {aka unsigned char}" : gccType(to);
  if (from === "void") return make("voidValue", {}, "end");
  if (to.endsWith("&")) {
    if (isPointer(from) || isInteger(from)) return make("badReference", { to: gccType(to), from: gccType(from) }, at);
  }
  if (
    (isPointer(from) && isInteger(to) && to !== "bool") ||
    (isInteger(from) && isPointer(to)) ||
    (isInteger(from) && isEnum(tokens, to) && from !== "bool")
  )
    return make("invalidConversion", { from: gccType(from), to: named }, at);
  if (isPointer(from) && isPointer(to)) {
    if (from.replace("const ", "") === to) return make("invalidConversion", { from, to }, at);
  }
  if (recordWord(tokens, to) !== null || classOf(to) !== null || to === "String") {
    if (tokens[index]?.text === "return" || tokens[index - 1]?.text === "return")
      return make("couldNotConvert", { value: tokens[index]?.text ?? "", from: gccType(from), to }, "end");
    return tokens[index]?.text === "="
      ? make("noOperator", { operator: "=" })
      : make("nonScalar", { from: gccType(from), to }, "end");
  }
  const how = inCall
    ? "for argument"
    : isAssignment
      ? "in assignment"
      : tokens[index - 1]?.text === "return"
        ? "in return"
        : "in initialization";
  if (how === "for argument")
    return make("cannotConvertArgument", { from: gccType(from), to: named, ...argumentOf(tokens, index) }, at);
  return make("cannotConvert", { from: gccType(from), to: named, how }, isAssignment ? "here" : at);
}

/** The words of a type in the compiler's order. */
function gccType(type: string): string {
  return type
    .replace(/\bunsigned long\b(?! int)/, "long unsigned int")
    .replace(/\bunsigned short\b(?! int)/, "short unsigned int")
    .replace(/(?<!unsigned |\bint )\blong\b(?! unsigned| int)/, "long int")
    .replace(/\bshort\b(?! unsigned| int)/, "short int")
    .trim();
}

/** The last token of the value that begins or has its operator at `index`. */
function endOf(tokens: readonly Token[], index: number): number {
  let depth = 0;
  for (let k = Math.max(0, index); k < tokens.length; k += 1) {
    const { kind, text } = tokens[k]!;
    if (kind === "end") return k - 1;
    if (kind !== "mark") continue;
    if (text === "(" || text === "[" || text === "{") depth += 1;
    else if (text === ")" || text === "]" || text === "}") {
      depth -= 1;
      if (depth < 0) return k - 1;
    } else if (depth === 0 && (text === ";" || text === "," || text === "?" || text === ":" || text === "&&" || text === "||"))
      return k - 1;
  }
  return index;
}

/** The closing bracket of the call that begins at `index` or encloses it. */
function closeOf(tokens: readonly Token[], index: number): number {
  let k = index;
  const isHead = (text: string) => text === "." || text === "->";
  while (k >= 0 && k < tokens.length && (tokens[k]!.kind === "name" || isHead(tokens[k]!.text))) k += 1;
  if (tokens[k]?.text === "(" && k > index) return matching(tokens, k);
  const open = openBefore(tokens, index);
  return open < 0 ? index : matching(tokens, open);
}

/** Of calls in a row, f(1)(2), the last closing bracket. */
function lastCloseOf(tokens: readonly Token[], index: number): number {
  let close = closeOf(tokens, index);
  while (tokens[close + 1]?.text === "(" && close > index) close = matching(tokens, close + 1);
  return close;
}

function matching(tokens: readonly Token[], open: number): number {
  let depth = 0;
  for (let k = open; k < tokens.length; k += 1) {
    const { kind, text } = tokens[k]!;
    if (kind !== "mark") continue;
    if (text === "(") depth += 1;
    if (text === ")") depth -= 1;
    if (depth === 0) return k;
  }
  return open;
}

/** The open bracket around `index` within its statement, or −1. */
function openBefore(tokens: readonly Token[], index: number): number {
  let depth = 0;
  for (let k = index - 1; k >= 0; k -= 1) {
    const { kind, text } = tokens[k]!;
    if (kind !== "mark") continue;
    if (text === ";" || text === "{" || text === "}") return -1;
    if (text === ")") depth += 1;
    if (text === "(") {
      depth -= 1;
      if (depth < 0) return k;
    }
  }
  return -1;
}

/** Whether the value is an argument: its call begins at `index` or stands around it. */
function isInCall(tokens: readonly Token[], index: number): boolean {
  if (tokens[index]?.kind === "name" && (tokens[index + 1]?.text === "(" || tokens[index + 1]?.text === ".")) return true;
  const open = openBefore(tokens, index);
  const before = tokens[open - 1];
  return open > 0 && before?.kind === "name" && !["if", "while", "for", "switch", "return"].includes(before.text);
}

/** Which value of which function it is. */
function argumentOf(tokens: readonly Token[], index: number): { readonly number: string; readonly what: string } {
  const open = openBefore(tokens, index);
  let commas = 0;
  let depth = 0;
  for (let k = open + 1; k < index; k += 1) {
    const { text } = tokens[k]!;
    if (text === "(" || text === "[") depth += 1;
    if (text === ")" || text === "]") depth -= 1;
    if (text === "," && depth === 0) commas += 1;
  }
  const name = tokens[open - 1]?.text ?? "";
  return { number: String(commas + 1), what: boardSignatures[name]?.text ?? signatureOf(tokens, name) };
}

function isPlainAssignment(tokens: readonly Token[], index: number): boolean {
  for (let k = index - 1; k >= 0; k -= 1) {
    const { kind, text } = tokens[k]!;
    if (kind === "mark" && [";", "{", "}", "("].includes(text)) return true;
    if (kind === "name" && (typeKeywords.has(text) || specifiers.has(text) || namedTypes.has(text))) return false;
  }
  return true;
}

function isMethodCall(tokens: readonly Token[], index: number, name: string): boolean {
  const close = tokens.findIndex((t, k) => k >= index && t.text === name);
  return close > 0 && [".", "->"].includes(tokens[close - 1]?.text ?? "");
}

function methodName(name: string): string {
  const dot = name.lastIndexOf(".");
  if (dot < 0) return name;
  const owner = classOf(name.slice(0, dot))?.replace("class ", "") ?? name.slice(0, dot);
  return `${owner}::${name.slice(dot + 1)}`;
}

/** Kinds of the values between the brackets, as far as they can be told from their look. */
function argumentTypes(tokens: readonly Token[], index: number): string {
  const close = closeOf(tokens, index);
  let depth = 0;
  const list: Token[][] = [[]];
  for (let k = close - 1; k >= 0; k -= 1) {
    const token = tokens[k]!;
    if (token.text === ")" || token.text === "]") depth += 1;
    if (token.text === "(" || token.text === "[") {
      depth -= 1;
      if (depth < 0) break;
    }
    if (depth === 0 && token.text === ",") list.unshift([]);
    else list[0]!.unshift(token);
  }
  if (list.length === 1 && list[0]!.length === 0) return "";
  return list
    .map(([first]) =>
      first?.kind === "text" ? `const char [${first.bytes.length + 1}]` : Number(first?.text) > 32767 ? "long int" : "int",
    )
    .join(", ");
}

/** "struct Lamp" or "class Lamp", if the program defines it. */
function recordWord(tokens: readonly Token[], name: string): string | null {
  const at = tokens.findIndex(
    (t, k) => t.text === name && ["struct", "class"].includes(tokens[k - 1]?.text ?? "") && tokens[k - 2]?.text !== "enum",
  );
  return at < 0 ? null : `${tokens[at - 1]!.text} ${name}`;
}

function isEnum(tokens: readonly Token[], name: string): boolean {
  return tokens.some((t, k) => t.text === name && (tokens[k - 1]?.text === "enum" || tokens[k - 2]?.text === "enum"));
}

function isLocal(tokens: readonly Token[], index: number): boolean {
  let depth = 0;
  for (let k = 0; k < index; k += 1) {
    if (tokens[k]!.kind !== "mark") continue;
    if (tokens[k]!.text === "{") depth += 1;
    if (tokens[k]!.text === "}") depth -= 1;
  }
  return depth > 0;
}

function isFunctionName(tokens: readonly Token[], index: number): boolean {
  return tokens[index + 1]?.text === "(";
}

function isParameterName(tokens: readonly Token[], index: number, name: string): boolean {
  const declared = tokens.findLastIndex((t, k) => k < index - 1 && t.text === name && tokens[k - 1]?.kind === "name");
  return declared > 0 && [")", ","].includes(tokens[declared + 1]?.text ?? "");
}

/** The left side of an assignment, as it is written. */
function leftText(tokens: readonly Token[], index: number): string {
  let k = index - 1;
  while (k > 0 && !["(", ";", "{", "}"].includes(tokens[k - 1]!.text)) k -= 1;
  return tokens
    .slice(k, index)
    .map((t) => t.text)
    .join("");
}

/** The words of the type in front of a declared name. */
function declaredType(tokens: readonly Token[], index: number): string {
  let k = index;
  // Behind a comma the type stands at the beginning of the declaration.
  while (k > 0 && ![";", "{", "}"].includes(tokens[k - 1]!.text) && !(tokens[k - 1]!.text === "(" && tokens[k]!.kind === "name"))
    k -= 1;
  const list: string[] = [];
  for (; k < index; k += 1) {
    const token = tokens[k]!;
    if (token.kind !== "name" && token.text !== "*") break;
    if (k + 1 < tokens.length && [",", "=", "[", ";", "("].includes(tokens[k + 1]!.text) && k !== index) break;
    if (token.text !== "static") list.push(token.text);
  }
  return gccType(list.join(" ").replace(" *", "*"));
}

function declaredText(tokens: readonly Token[], index: number): string {
  const name = tokens[index]?.text ?? "";
  const type = declaredType(tokens, index);
  if (isFunctionName(tokens, index)) return signatureOf(tokens, name);
  let sizes = "";
  for (let k = index + 1; tokens[k]?.text === "["; k += 3) sizes += `[${tokens[k + 1]?.text ?? ""}]`;
  return `${type} ${name}${sizes === "" ? "" : ` ${sizes}`}`;
}

function lastBracket(tokens: readonly Token[], index: number): number {
  let k = index + 1;
  while (tokens[k]?.text === "[") {
    while (k < tokens.length && tokens[k]!.text !== "]") k += 1;
    k += 1;
  }
  return k - 1;
}

/** "void blink(int)" of a function of the program. */
function signatureOf(tokens: readonly Token[], name: string): string {
  const at = tokens.findIndex(
    (t, k) => t.text === name && tokens[k + 1]?.text === "(" && (tokens[k - 1]?.kind === "name" || tokens[k - 1]?.text === "*"),
  );
  if (at < 0) return `${name}()`;
  const close = matching(tokens, at + 1);
  const parameters: string[][] = [[]];
  for (const token of tokens.slice(at + 2, close)) {
    if (token.text === ",") parameters.push([]);
    else parameters.at(-1)!.push(token.text);
  }
  const shown = parameters.filter((p) => p.length > 0 && p.join("") !== "void").map(parameterText);
  return `${declaredType(tokens, at)} ${name}(${shown.join(", ")})`;
}

function parameterText(words: readonly string[]): string {
  const isArray = words.includes("[");
  const cut = words.includes("=") ? words.slice(0, words.indexOf("=")) : words;
  const plain = cut.filter((w) => w !== "[" && w !== "]" && !/^\d/.test(w));
  const last = plain.at(-1) ?? "";
  const isName = plain.length > 1 && !typeKeywords.has(last) && last !== "*" && last !== "&";
  const type = (isName ? plain.slice(0, -1) : plain).join(" ").replace(/ ([*&])/g, "$1");
  return gccType(type) + (isArray ? "*" : "");
}

/** Whether a comparison follows in the same statement. */
function isComparedLater(tokens: readonly Token[], index: number): boolean {
  const end = tokens.findIndex((t, i) => i > index && [";", "{", "}"].includes(t.text));
  return tokens.slice(index, end < 0 ? undefined : end).some((t) => ["<", ">", "<=", ">=", "==", "!="].includes(t.text));
}
