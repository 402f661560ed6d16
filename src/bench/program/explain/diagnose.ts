// From the compiler's complaint to the slip behind it.
//
// A complaint says what the compiler stumbled over, which is often the line after the slip. So the tokens before and behind are
// looked at: a missing semicolon lies at the end of the token before; an extra brace further up has put the statements outside.
// Does not know: how the complaint was found, any words.
import { near } from "../../../base/index.ts";
import type { ProgramProblem } from "../problems.ts";
import type { Token } from "../read/token.ts";
import { namedTypes, reservedWords, typeKeywords } from "../read/words.ts";
import { openBraces, openBracketOf } from "./brackets.ts";
import type { Said } from "./compiler/said.ts";
import type { ExplainCode, Explained, Fix } from "./explained.ts";
import { otherWays } from "./otherWays.ts";
import { plainSigns } from "./plainSigns.ts";

export interface Evidence {
  readonly said: Said;
  /** As the compiler has them, with the promised functions. */
  readonly tokens: readonly Token[];
  /** As they are written. */
  readonly written: readonly Token[];
  readonly problems: readonly ProgramProblem[];
  /** The lines of the program. */
  readonly rows: readonly string[];
}

export type Parts = Partial<Omit<Explained, "code">>;

/** Words that begin a statement or stand in one, with their capitals as they must be. */
const words = [
  ..."if else for while do switch case default break continue return true false const static struct class enum".split(" "),
  ...typeKeywords,
  "String",
  "byte",
  "boolean",
];

/** @returns the likeliest slip, then others that would give the same complaint and can be tried. */
export function diagnose(e: Evidence): Explained[] {
  const make = maker(e.said);
  const main = ofExpected(e, make) ?? ofName(e, make) ?? ofText(e, make) ?? ofMeaning(e, make) ?? make("other");
  return [main, ...otherWays(e, make, main)];
}

function maker(said: Said): Make {
  return (code: ExplainCode, parts: Parts = {}): Explained => ({
    code,
    name: said.data.name ?? "",
    near: null,
    expected: null,
    found: null,
    firstLine: null,
    fix: null,
    ...parts,
    look: lines([...(parts.look ?? []), said.line]),
  });
}

/** Without zero and without repeats. */
function lines(list: readonly number[]): number[] {
  return [...new Set(list)].filter((line) => line > 0);
}

export type Make = (code: ExplainCode, parts?: Parts) => Explained;

function ofExpected(e: Evidence, make: Make): Explained | null {
  const { said, tokens } = e;
  if (said.kind === "functionInFunction") {
    const open = openBraces(e.written, said.line).at(-1);
    const before = tokens[functionStart(tokens, said.index) - 1];
    return make("braceNotClosed", { name: functionBefore(tokens, said.index), look: [before?.endLine ?? 0, open?.line ?? 0] });
  }
  if (said.kind !== "expected") return null;
  const token = tokens[said.index]!;
  const before = tokens[said.index - 1] ?? token;
  const then = tokens[said.index + 1] ?? token;
  const what = said.data.what ?? "";
  const found = token.text;
  const isLater = token.line > before.endLine;
  const insert = (text: string, at = before): Fix => ({
    edit: "insert",
    line: at.endLine,
    column: at.endColumn,
    text,
    found: "",
  });
  const remove = (t: Token): Fix => ({ edit: "remove", line: t.line, column: t.column, text: "", found: t.text });
  const replace = (t: Token, text: string): Fix => ({ edit: "replace", line: t.line, column: t.column, text, found: t.text });
  const looked = [before.endLine];

  const misspelt = misspeltWord(tokens, said.index);
  if (misspelt)
    return make("wordMisspelt", {
      name: misspelt.token.text,
      near: misspelt.near,
      look: [misspelt.token.line],
      fix: replace(misspelt.token, misspelt.near),
    });
  if (found === ">" && before.text === "=" && !token.afterSpace) return swapped(">=");
  if (found === "<" && before.text === "=" && !token.afterSpace) return swapped("<=");
  if (found === "/" && what !== "';'") return make("commentSlash", { name: "/", fix: { ...insert("/", token), found: "" } });
  if (found === "==") return make("compareInDeclaration", { name: before.text, fix: replace(token, "=") });

  switch (what) {
    case "';'":
    case "',' or ';'":
    case "initializer": {
      if (found === ")") return make("bracketTooMany", { name: ")", fix: remove(token) });
      if (found === "]") return make("squareBracketMissing", { name: "[" });
      if (found === "}" && what !== "';'" && before.text === ")")
        return make("braceNotOpened", { look: looked, fix: insert(" {") });
      if (before.text === ")" && what === "initializer" && isHead(tokens, said.index)) {
        if (token.kind === "name" && !isLater && !reservedWords.has(found)) break;
        return make("braceNotOpened", { name: functionBefore(tokens, said.index), look: looked, fix: insert(" {") });
      }
      if (what === "initializer" && found === ")") return make("bracketNotOpened", { name: before.text, fix: insert("(") });
      if (isInFor(tokens, said.index) && !isLater) {
        if (found === ")" || found === ",") break;
        if (token.kind === "mark")
          return make("semicolonMissing", { name: before.text, look: looked, fix: forSemicolon(tokens, said.index) });
        return make("operatorMissing", { name: found, found: before.text });
      }
      if (found === "{" && before.kind === "name")
        return make("bracketNotOpened", { name: before.text, fix: replace(token, "(") });
      if (found === "}" || isLater || token.kind === "end") {
        const code =
          what === "initializer" && before.text !== ")" && before.text !== "]" && found === "{"
            ? "bracketNotOpened"
            : "semicolonMissing";
        return make(code, { name: before.text, look: looked, fix: insert(";") });
      }
      if (found === ":" || found === ",") return make("semicolonMissing", { name: before.text, fix: replace(token, ";") });
      if (before.kind === "name" && (token.kind === "name" || token.kind === "number") && !reservedWords.has(found))
        return make(tokens[said.index + 1]?.text === ")" || then.text === "," ? "bracketNotOpened" : "operatorMissing", {
          name: found,
          found: before.text,
        });
      return make("semicolonMissing", { name: before.text, look: looked, fix: insert(";") });
    }
    case "')'": {
      if (found === ";" || found === "{" || found === "}" || isLater || token.kind === "end")
        return make("bracketNotClosed", { name: bracketName(tokens, said.index), look: looked, fix: insert(")") });
      if (isCall(tokens, said.index)) return make("commaMissing", { name: found, found: before.text, fix: insert(",") });
      return make("operatorMissing", { name: found, found: before.text });
    }
    case "',' or '...'":
      return make("commaMissing", { name: found, found: before.text, fix: insert(",") });
    case "'('":
      return make("bracketNotOpened", { name: before.text, fix: insert(" (") });
    case "']'":
      return make("squareBracketMissing", { name: "]", fix: insert("]") });
    case "'{'":
      return make("braceNotOpened", { look: looked, fix: insert(" {") });
    case "'}'": {
      const open = openBraces(e.written, token.kind === "end" ? Number.POSITIVE_INFINITY : token.line);
      if (found === ";" || found === ")") return make("braceNotClosed", { name: "}", look: looked, fix: insert("}") });
      return make("braceNotClosed", { name: "}", look: open.map((t) => t.line).reverse() });
    }
    case "':'":
      return make("colonMissing", { name: before.text, look: looked, fix: found === ";" ? replace(token, ":") : insert(":") });
    case "'while'":
      return make("wordMisspelt", { name: found, near: "while" });
    case "declaration":
      return make("braceTooMany", { name: "}", look: [token.line, ...closedBefore(tokens, said.index)], fix: remove(token) });
    case "constructor, destructor, or type conversion":
      return make("statementOutside", {
        name: before.kind === "name" ? before.text : found,
        look: closedBefore(tokens, said.index),
      });
    case "identifier":
    case "unqualified-id": {
      if (found === "{" && before.text === ";")
        return make("headSemicolon", { name: functionBefore(tokens, said.index), look: looked, fix: remove(before) });
      if (token.kind === "number") return make("digitFirst", { name: `${found}${then.text}` });
      if (token.kind === "name" && reservedWords.has(found)) {
        const starts = ["if", "for", "while", "do", "switch", "return", "else", "break", "case"].includes(found);
        if (starts && token.startsLine) return make("statementOutside", { name: found, look: closedBefore(tokens, said.index) });
        return make("reservedName", { name: found });
      }
      if (found === "{") return make("statementOutside", { name: "{", look: closedBefore(tokens, said.index) });
      break;
    }
    case "primary-expression": {
      if (typeKeywords.has(found) || namedTypes.has(found)) return make("typeInCall", { name: found, fix: remove(token) });
      if (namedTypes.has(before.text) || typeKeywords.has(before.text))
        return make("typeInCall", { name: before.text, fix: remove(before) });
      if (found === ")" && before.text === ")") return make("bracketTooMany", { name: ")", fix: remove(token) });
      if (found === "]") return make("valueMissing", { name: "[ ]" });
      if (found === "else") return make("elseAlone", { look: looked });
      return make("valueMissing", { name: found, look: looked });
    }
  }
  return make("other", { name: found, look: looked });

  function swapped(right: string): Explained {
    return make("swappedOperator", {
      name: `=${found}`,
      near: right,
      fix: { edit: "replace", line: before.line, column: before.column, text: right, found: `=${found}` },
    });
  }
}

function ofName(e: Evidence, make: Make): Explained | null {
  const { said, tokens, written, problems } = e;
  const name = said.data.name ?? "";
  switch (said.kind) {
    case "undeclared":
    case "noTypeName":
    case "notDeclaredYet": {
      const index = tokenOf(tokens, said, name);
      const token = tokens[index];
      const then = tokens[index + 1];
      if (name === "include" || name === "define")
        return make("hashMissing", {
          near: `#${name}`,
          fix: token ? { edit: "insert", line: token.line, column: token.column, text: "#", found: "" } : null,
        });
      const fixTo = (text: string): Fix | null =>
        token ? { edit: "replace", line: token.line, column: token.column, text, found: name } : null;
      const known = knownNear(problems, name);
      const isType = said.kind !== "undeclared";
      const word = near(name, words);
      const begins = ["if", "for", "while", "switch", "return"].includes(word ?? "");
      const candidate = isType
        ? (word ?? known)
        : then?.kind === "name" || then?.text === "{" || (then?.text === "(" && begins)
          ? (word ?? known)
          : (known ?? word);
      const header = written.findIndex(
        (t, k) => t.text === name && written[k - 1]?.kind === "name" && written[k + 1]?.text === "(" && isHeadAt(written, k),
      );
      if (header >= 0 && said.kind === "undeclared" && then?.text === "(") {
        const brace = openBraces(written, written[header]!.line).at(-1);
        return make("functionHidden", { firstLine: written[header]!.line, look: [written[header]!.line, brace?.line ?? 0] });
      }
      const declared = declaredElsewhere(written, name);
      if (declared !== null && declared !== said.line) {
        const isOutside = said.kind === "noTypeName";
        if (isOutside) return make("statementOutside", { look: closedBefore(tokens, index) });
        return make("outOfReach", { firstLine: declared, look: [said.line, declared] });
      }
      if (candidate !== null && candidate.toLowerCase() === name.toLowerCase())
        return make("wrongCapitals", { near: candidate, fix: fixTo(candidate) });
      if (candidate !== null)
        return make(words.includes(candidate) ? "wordMisspelt" : "nameMisspelt", { near: candidate, fix: fixTo(candidate) });
      if (isType && (then?.text === "=" || then?.text === "[")) return make("typeMissing");
      if (isType && (then?.text === "." || then?.text === "->"))
        return make("statementOutside", { look: closedBefore(tokens, index) });
      if (isType) return make("typeUnknown");
      if (then?.text === "=") return make("typeMissing");
      return make(then?.text === "(" ? "functionUnknown" : "nameUnknown");
    }
    case "noMember":
    case "notMemberOf": {
      const known = knownNear(problems, name);
      const token = tokens[said.index];
      const fix: Fix | null =
        known && token ? { edit: "replace", line: token.line, column: token.column, text: known, found: name } : null;
      if (known && known.toLowerCase() === name.toLowerCase()) return make("wrongCapitals", { near: known, fix });
      return make("memberUnknown", {
        near: known,
        found: (said.data.of ?? "").replace(/^(?:class|struct) /, "").replace("TextPort", "Serial"),
        fix,
      });
    }
    case "privateMember":
      return make("memberPrivate", { name: said.data.what ?? "" });
    case "declaredVoid": {
      const inner = tokens[said.index];
      if (inner?.kind === "name" && inner.text !== name)
        return make("typeUnknown", { name: inner.text, near: near(inner.text, words) });
      return make("bracketTooMany", { name: inner?.text ?? "" });
    }
    case "forbidsNoType":
      return make("returnTypeMissing", {
        fix: { edit: "insert", line: said.line, column: columnOf(tokens, said, name), text: "void ", found: "" },
      });
    case "redefinition":
    case "redeclaration":
    case "conflicting":
    case "ambiguatesOld":
    case "macroAgain": {
      const p = problems.find(
        (k) =>
          k.place?.line === said.line &&
          (k.code === "program.redefined" || k.code === "program.otherType" || k.code === "program.macroAgain"),
      );
      const twice = p?.code === "program.otherType" ? "declaredOtherwise" : "declaredTwice";
      const firstLine = p && "firstLine" in p ? p.firstLine : null;
      const parts = { name: p && "name" in p ? p.name : (said.data.what ?? name), firstLine, look: [said.line, firstLine ?? 0] };
      return make(twice, p?.code === "program.otherType" ? { ...parts, expected: p.first, found: p.found } : parts);
    }
    case "undefinedReference": {
      const missing = name.replace("()", "");
      if (name.endsWith("()")) {
        const line = written.find((t) => t.text === missing)?.line ?? 0;
        return make("bodyMissing", { name: missing, look: [line] });
      }
      const p = problems.find((k) => k.code === "program.missingFunction" && k.name === missing);
      const other = p?.code === "program.missingFunction" ? p.near : null;
      const at = written.find((t) => t.text === other);
      if (other && at && other.toLowerCase() === missing.toLowerCase())
        return make("wrongCapitals", {
          name: other,
          near: missing,
          look: [at.line],
          fix: { edit: "replace", line: at.line, column: at.column, text: missing, found: other },
        });
      return make("functionMissing", { name: missing, near: other, look: [at?.line ?? 0] });
    }
    default:
      return null;
  }
}

/** Characters, quotes, comments, numbers, directives. */
function ofText(e: Evidence, make: Make): Explained | null {
  const { said, problems } = e;
  const { data } = said;
  switch (said.kind) {
    case "stray": {
      const p = problems.find((k) => k.code === "program.unknownCharacter" && k.place?.line === said.line);
      const sign = data.character ?? "";
      const plain = plainSigns.get(sign);
      const fix = p?.place && plain ? plainLine(e.rows[said.line - 1] ?? "", said.line) : null;
      return make(plain?.code ?? "strayCharacter", {
        name: sign.trim() === "" ? "" : sign,
        near: plain?.text ?? null,
        found: data.what ?? null,
        fix,
      });
    }
    case "unclosedText":
      return make("quoteMissing", { name: data.quote ?? "" });
    case "emptyCharacter":
    case "manyCharacters":
    case "longCharacter":
      return make("quotesForText", { name: "'" });
    case "unclosedComment":
      return make("commentNotClosed", { name: "/*" });
    case "badOctal":
      return make("leadingZero", { name: "0", found: data.digit ?? null });
    case "badSuffix":
    case "badTextSuffix":
      return make("operatorMissing", { name: data.suffix ?? "" });
    case "tooManyPoints":
    case "badExponent":
      return make("badNumber");
    case "noSuchFile": {
      const p = problems.find((k) => k.code === "program.unknownHeader");
      return make("headerUnknown", { near: p?.code === "program.unknownHeader" ? p.near : null });
    }
    case "expectsFileName":
    case "macroName":
    case "macroNameMissing":
      return make("headerMarks", { name: said.kind === "expectsFileName" ? "#include" : "#define" });
    case "unknownDirective": {
      const p = problems.find((k) => k.code === "program.unknownDirective");
      return make("directiveUnknown", {
        name: `#${data.name}`,
        near: p?.code === "program.unknownDirective" && p.near ? `#${p.near}` : null,
      });
    }
    case "unclosedCondition":
    case "conditionWithout":
      return make("conditionOpen", { name: `#${data.name}` });
    case "ownError":
      return make("ownError", { name: data.text ?? "" });
    case "unclosedMacro": {
      const at = e.written.findLast((t, k) => t.text === data.name && e.written[k + 1]?.text === "(");
      return make("bracketNotClosed", { name: data.name ?? "", look: [at?.line ?? 0] });
    }
    default:
      return null;
  }
}

/** What can be read and does not fit together. */
function ofMeaning(e: Evidence, make: Make): Explained | null {
  const { said, tokens, problems } = e;
  const { data, kind } = said;
  const called = () => {
    const p = problems.find(
      (k) => k.place?.line === said.line && (k.code === "program.argumentCount" || k.code === "program.noMatch"),
    );
    return p?.code === "program.argumentCount"
      ? { name: p.name, expected: p.expected, found: String(p.found) }
      : p?.code === "program.noMatch"
        ? { name: p.name, expected: null, found: p.found }
        : { name: nameIn(data.what ?? data.name ?? ""), expected: data.expected ?? null, found: data.found ?? null };
  };
  switch (kind) {
    case "tooFew":
    case "macroTooFew":
      return make("tooFewValues", called());
    case "tooMany":
    case "macroTooMany":
      return make("tooManyValues", called());
    case "noMatch":
    case "ambiguousCall": {
      const c = called();
      if (c.expected === null) return make("wrongValues", c);
      const [least = 0] = c.expected
        .split(/[^\d]+/)
        .filter((w) => w !== "")
        .map(Number);
      return make(Number(c.found) < least ? "tooFewValues" : "tooManyValues", c);
    }
    case "invalidConversion":
    case "cannotConvert":
    case "cannotConvertArgument":
    case "couldNotConvert":
    case "nonScalar":
    case "badReference":
    case "needsBraces":
      return make("wrongKind", {
        name: tokens[said.index]?.text ?? "",
        found: plainType(data.from ?? ""),
        expected: plainType(data.to ?? ""),
      });
    case "forbidsCompare":
      return make("textCompared");
    case "badOperands":
    case "noOperator":
    case "badUnary":
    case "badStar":
    case "baseOperand":
      return make("notTogether", {
        name: data.operator ?? "",
        found: plainType(data.left ?? data.type ?? ""),
        expected: plainType(data.right ?? ""),
      });
    case "readOnly":
    case "readOnlyStep":
    case "readOnlyParameter":
    case "readOnlyLocation": {
      const name = data.name ?? data.place ?? "";
      const declared = e.written.find((t, k) => t.text === (/^\w+/.exec(name)?.[0] ?? "") && e.written[k - 1]?.kind === "name");
      return make("constAssigned", { name, firstLine: declared?.line ?? null, look: [said.line, declared?.line ?? 0] });
    }
    case "lvalueAssign": {
      const token = tokens[said.index];
      const before = tokens[said.index - 1];
      if (before?.kind === "number" && before.macro === "" && tokens[said.index - 2]?.text === "[")
        return make("squareBracketMissing", {
          name: "]",
          fix: { edit: "insert", line: before.line, column: before.endColumn, text: "]", found: "" },
        });
      const inTest = isInTest(tokens, said.index);
      const fix: Fix | null =
        token && inTest ? { edit: "replace", line: token.line, column: token.column, text: "==", found: "=" } : null;
      return make(inTest ? "assignInTest" : "notAssignable", {
        name: inTest ? "=" : ((tokens[said.index - 1]?.macro || tokens[said.index - 1]?.text) ?? ""),
        fix,
      });
    }
    case "lvalueStep":
    case "lvalueAddress":
    case "badArrayAssignment":
    case "incompatibleAssign":
    case "arrayFromList":
      return make("notAssignable", { name: tokens[said.index]?.text ?? "" });
    case "notFunction":
      return make("notAFunction", { name: data.name ?? "" });
    case "expressionNotFunction": {
      // A line that begins with a bracket goes on with the line above.
      return make("semicolonMissing", { name: ")", look: [said.line - 1] });
    }
    case "badIndex":
      return make("notAnArray", { name: tokens[openBracketOf(tokens, said.index) - 1]?.text ?? "" });
    case "noRecord":
      return make("notAThing", { name: data.of ?? "", found: plainType(data.type ?? "") });
    case "sizeUnknown":
    case "sizeMissing":
    case "boundsMissing":
    case "sizeFromText":
      return make("sizeMissing");
    case "arrayBound":
    case "notConstant":
    case "badArraySize":
    case "tooManyInitialisers":
      return make("sizeNotKnown");
    case "uninitialisedConst":
      return make("firstValueMissing");
    case "breakOutside":
    case "continueOutside":
      return make("outsideLoop", { name: kind === "breakOutside" ? "break" : "continue" });
    case "caseOutside":
    case "defaultOutside":
      return make("outsideSwitch", { name: kind === "caseOutside" ? "case" : "default" });
    case "duplicateCase":
      return make("caseTwice");
    case "returnsNothing":
      return make("resultNotWanted");
    case "returnsSomething":
      return make("resultMissing");
    case "voidValue":
      return make("noResult");
    case "elseWithoutIf": {
      const slip = problems.findLast((p) => p.code === "program.emptyBody" && (p.place?.line ?? 0) <= said.line);
      const at = slip?.place;
      if (at)
        return make("semicolonBehindIf", {
          name: ";",
          look: [at.line],
          fix: { edit: "remove", line: at.line, column: at.column, text: "", found: ";" },
        });
      return make("elseAlone", { name: "else", look: [tokens[said.index - 1]?.line ?? said.line] });
    }
    case "semicolonAfterRecord":
    case "semicolonAfterMember": {
      const t = tokens[said.index];
      return make("semicolonMissing", {
        name: t?.text ?? "",
        fix: t ? { edit: "insert", line: t.endLine, column: t.endColumn, text: ";", found: "" } : null,
      });
    }
    case "functionInitialised":
    case "initialiserForFunction":
    case "declaresNothing":
      return make("notAssignable", { name: data.name ?? tokens[said.index]?.text ?? "" });
    case "rangeInitialiser":
    case "colonForScope": {
      const colon = tokens[said.index];
      return make("semicolonMissing", {
        name: ":",
        fix: colon?.text === ":" ? { edit: "replace", line: colon.line, column: colon.column, text: ";", found: ":" } : null,
      });
    }
    case "shiftTooFar":
    case "shiftNegative": {
      const p = problems.find((k) => k.code === "program.shiftTooFar" && k.place?.line === said.line);
      return make("shiftTooFar", p?.code === "program.shiftTooFar" ? { found: String(p.count), expected: String(p.bits) } : {});
    }
    case "overflow":
    case "largeInteger":
    case "overflowInConversion": {
      const p = problems.find(
        (k) => k.place?.line === said.line && (k.code === "program.overflow" || k.code === "program.numberChanges"),
      );
      const figures =
        p?.code === "program.overflow" || p?.code === "program.numberChanges"
          ? { found: String(p.from), expected: p.type, name: String(p.to) }
          : {};
      return make("numberTooLarge", figures);
    }
    default:
      return null;
  }
}

/** All signs of the line that have a plain one, in one edit. */
function plainLine(row: string, line: number): Fix | null {
  const spots = [...row].map((sign) => plainSigns.has(sign));
  const [from, to] = [spots.indexOf(true), spots.lastIndexOf(true)];
  if (from < 0) return null;
  const found = [...row].slice(from, to + 1).join("");
  return {
    edit: "replace",
    line,
    column: [...row].slice(0, from).join("").length + 1,
    text: [...found].map((sign) => plainSigns.get(sign)?.text ?? sign).join(""),
    found,
  };
}

/** A type in a beginner's words where C++ has a long one. */
function plainType(type: string): string {
  const short = type.replace(/ \{aka .*\}$/, "");
  if (/^const char ?(?:\*|\[\d+\])$/.test(short)) return "text";
  return short.replace(/\blong (unsigned )?int\b/, (_, u: string | undefined) => `${u ?? ""}long`);
}

function nameIn(what: string): string {
  return /([\w:]+)\(/.exec(what)?.[1] ?? what;
}

function knownNear(problems: readonly ProgramProblem[], name: string): string | null {
  const p = problems.find(
    (k) =>
      (k.code === "program.unknownName" || k.code === "program.unknownMember" || k.code === "program.unknownType") &&
      k.name === name,
  );
  return p && "near" in p ? p.near : null;
}

/** A name like a word of the language that begins the statement around `index`, such as `fro (`. */
function misspeltWord(tokens: readonly Token[], index: number): { readonly token: Token; readonly near: string } | null {
  for (const k of [index - 2, index - 1, index]) {
    const token = tokens[k];
    if (token?.kind !== "name" || reservedWords.has(token.text)) continue;
    const word = near(token.text, ["for", "while", "switch", "return", "else"]);
    const then = tokens[k + 1];
    const opens = word === "return" || word === "else" ? then?.kind !== "mark" || then.text === "{" : then?.text === "(";
    const starts = token.startsLine || [";", "{", "}", ")"].includes(tokens[k - 1]?.text ?? "");
    if (word !== null && opens && starts && !tokens.some((t, n) => t.text === token.text && n !== k))
      return { token, near: word };
  }
  return null;
}

/** The token that the complaint names: where it stands, or the one on the line that is called so. */
function tokenOf(tokens: readonly Token[], said: Said, name: string): number {
  if (tokens[said.index]?.text === name) return said.index;
  for (let k = said.index; k >= 0; k -= 1) if (tokens[k]?.text === name) return k;
  return tokens.findIndex((t) => t.text === name && t.line === said.line);
}

function columnOf(tokens: readonly Token[], said: Said, name: string): number {
  return tokens.find((t) => t.text === name && t.line === said.line)?.column ?? said.column;
}

/** The line where the name is declared somewhere it cannot be seen from, or null. */
function declaredElsewhere(written: readonly Token[], name: string): number | null {
  const at = written.findIndex((t, k) => {
    const before = written[k - 1];
    const then = written[k + 1];
    const typed =
      before?.kind === "name" && (typeKeywords.has(before.text) || namedTypes.has(before.text)) && before.line === t.line;
    return t.text === name && typed && ["=", ";", ",", "[", ")"].includes(then?.text ?? "");
  });
  return at < 0 ? null : written[at]!.line;
}

/** Lines of the closing braces before `index`, the nearest first: one of them may be too many. */
function closedBefore(tokens: readonly Token[], index: number): number[] {
  const list: number[] = [];
  for (let k = index - 1; k >= 0 && list.length < 2; k -= 1)
    if (tokens[k]!.text === "}" && tokens[k]!.kind === "mark") list.push(tokens[k]!.line);
  return list;
}

function isInFor(tokens: readonly Token[], index: number): boolean {
  const open = openBracketOf(tokens, index);
  return open > 0 && tokens[open - 1]!.text === "for";
}

function isInTest(tokens: readonly Token[], index: number): boolean {
  for (let open = openBracketOf(tokens, index); open > 0; open = openBracketOf(tokens, open))
    if (["if", "while"].includes(tokens[open - 1]!.text)) return true;
  return false;
}

/** Whether the brackets around `index` are those of a call. */
function isCall(tokens: readonly Token[], index: number): boolean {
  const open = openBracketOf(tokens, index);
  const name = tokens[open - 1];
  return open > 0 && name?.kind === "name" && !reservedWords.has(name.text);
}

function bracketName(tokens: readonly Token[], index: number): string {
  const open = openBracketOf(tokens, index);
  return tokens[open - 1]?.text ?? "(";
}

/** In the head of a loop a comma stands where a semicolon belongs, or nothing at all. */
function forSemicolon(tokens: readonly Token[], index: number): Fix | null {
  const comma = tokens[index - 2];
  return comma?.text === "," ? { edit: "replace", line: comma.line, column: comma.column, text: ";", found: "," } : null;
}

/** Whether the ) before `index` ends the head of a function: `void blink(int n)`. */
function isHead(tokens: readonly Token[], index: number): boolean {
  const open = openBracketOf(tokens, index - 1);
  return tokens[open - 1]?.kind === "name" && tokens[open - 2]?.kind === "name";
}

function isHeadAt(tokens: readonly Token[], name: number): boolean {
  let depth = 0;
  for (let k = name + 1; k < tokens.length; k += 1) {
    if (tokens[k]!.text === "(") depth += 1;
    if (tokens[k]!.text === ")") depth -= 1;
    if (depth === 0) return ["{", ";"].includes(tokens[k + 1]?.text ?? "") || tokens[k + 1]?.startsLine === true;
  }
  return false;
}

/** The name of the function whose head ends before `index`, or "". */
function functionBefore(tokens: readonly Token[], index: number): string {
  for (let k = index - 1; k > 0; k -= 1) {
    if (tokens[k]!.text === "(" && tokens[k - 1]!.kind === "name") return tokens[k - 1]!.text;
    if (["{", "}"].includes(tokens[k]!.text)) return "";
  }
  return "";
}

function functionStart(tokens: readonly Token[], index: number): number {
  let k = index;
  while (k > 0 && !["{", "}", ";"].includes(tokens[k - 1]!.text)) k -= 1;
  return k;
}
