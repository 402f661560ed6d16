// Statements and blocks, in the order in which the compiler reads them.
//
// Does not know: types of values.
import { isBlockDeclaration, readSimpleDeclaration } from "./declarations.ts";
import { readAssignment, readExpression } from "./expressions.ts";
import {
  deeper,
  expect,
  giveUp,
  inNames,
  is,
  isName,
  next,
  peek,
  type Reader,
  stop,
  stopAt,
  stopExpected,
  take,
  withColons,
} from "./reader.ts";

export function readCompound(r: Reader): void {
  expect(r, "{");
  inNames(r, () => readList(r));
  expect(r, "}");
}

/** A function's body: what stood around it does not count inside. */
export function readBody(r: Reader): void {
  const { inSwitch, inLoop, inIf, inFunction } = r;
  Object.assign(r, { inSwitch: 0, inLoop: 0, inIf: false, inFunction: true });
  deeper(r, () => readCompound(r));
  Object.assign(r, { inSwitch, inLoop, inIf, inFunction });
}

function readList(r: Reader): void {
  while (!is(r, "}") && peek(r).kind !== "end") {
    if (is(r, "else")) {
      if (r.inIf) return;
      stop(r, "elseWithoutIf");
    }
    readStatement(r);
  }
}

export function readStatement(r: Reader): void {
  deeper(r, () => statement(r));
}

function statement(r: Reader): void {
  const token = peek(r);
  if (is(r, "{")) {
    readCompound(r);
    return;
  }
  if (take(r, ";")) return;
  if (token.kind === "name") {
    switch (token.text) {
      case "if":
        readIf(r);
        return;
      case "while":
        next(r);
        expect(r, "(");
        inNames(r, () => {
          readCondition(r);
          expect(r, ")");
          inLoop(r);
        });
        return;
      case "do":
        next(r);
        inLoop(r);
        expect(r, "while");
        expect(r, "(");
        readExpression(r);
        expect(r, ")");
        expect(r, ";");
        return;
      case "for":
        readFor(r);
        return;
      case "switch": {
        next(r);
        expect(r, "(");
        inNames(r, () => {
          readCondition(r);
          expect(r, ")");
          r.inSwitch += 1;
          readStatement(r);
          r.inSwitch -= 1;
        });
        return;
      }
      case "case":
        readCase(r);
        return;
      case "default":
        next(r);
        expect(r, ":");
        if (r.inSwitch === 0) stopAt(token, r.at - 2, "defaultOutside");
        readStatement(r);
        return;
      case "break":
        next(r);
        if (r.inSwitch === 0 && r.inLoop === 0) stopAt(token, r.at - 1, "breakOutside");
        expect(r, ";");
        return;
      case "continue":
        next(r);
        if (r.inLoop === 0) stopAt(token, r.at - 1, "continueOutside");
        expect(r, ";");
        return;
      case "return":
        next(r);
        if (!is(r, ";")) {
          if (is(r, "{")) giveUp();
          readExpression(r);
        }
        expect(r, ";");
        return;
      case "goto":
      case "try":
      case "asm":
      case "template":
      case "namespace":
      case "using": {
        giveUp();
        return;
      }
    }
    if (isName(r) && is(r, ":", 1)) {
      next(r);
      next(r);
      readStatement(r);
      return;
    }
    if (isBlockDeclaration(r)) {
      readSimpleDeclaration(r, "block");
      return;
    }
  }
  readExpression(r);
  expect(r, ";");
}

function inLoop(r: Reader): void {
  const { inIf } = r;
  r.inLoop += 1;
  r.inIf = false;
  inNames(r, () => readStatement(r));
  r.inLoop -= 1;
  r.inIf = inIf;
}

function readIf(r: Reader): void {
  next(r);
  expect(r, "(");
  inNames(r, () => {
    readCondition(r);
    expect(r, ")");
    const { inIf } = r;
    r.inIf = true;
    inNames(r, () => readStatement(r));
    r.inIf = inIf;
    if (take(r, "else")) inNames(r, () => readStatement(r));
  });
}

function readCondition(r: Reader): void {
  if (isBlockDeclaration(r) && !is(r, "(", 1)) readSimpleDeclaration(r, "condition");
  else readExpression(r);
}

function readFor(r: Reader): void {
  next(r);
  expect(r, "(");
  inNames(r, () => {
    const start = r.at;
    if (!take(r, ";")) {
      if (isBlockDeclaration(r)) withColons(r, () => readSimpleDeclaration(r, "for"));
      else readExpression(r);
      if (is(r, ":")) {
        const equals = r.tokens.findIndex((t, k) => k >= start && k < r.at && t.text === "=");
        if (equals > 0) stopAt(r.tokens[equals]!, equals, "rangeInitialiser");
        next(r);
        if (is(r, "{")) giveUp();
        readExpression(r);
        expect(r, ")");
        inLoop(r);
        return;
      }
      expect(r, ";");
    }
    if (!is(r, ";")) readCondition(r);
    expect(r, ";");
    if (!is(r, ")")) readExpression(r);
    expect(r, ")");
    inLoop(r);
  });
}

function readCase(r: Reader): void {
  const start = r.at;
  const token = next(r);
  withColons(r, () => readAssignment(r));
  const value = r.tokens
    .slice(start + 1, r.at)
    .map((t) => t.text)
    .join("");
  if (take(r, "...")) withColons(r, () => readAssignment(r));
  if (!is(r, ":")) stopExpected(r, "':'");
  next(r);
  if (r.inSwitch === 0) stopAt(token, start, "caseOutside", { value });
  readStatement(r);
}
