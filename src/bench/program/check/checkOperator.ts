// Operators: what types they take, what they give, and the conversions in between.
//
// Integer promotions and usual arithmetic conversions as in C++11, sections 4.5, 4.13 and 5; String takes + and comparisons.
// Does not know: calls, statements.
import type { Expression as ExpressionSyntax } from "../read/syntax.ts";
import type { At } from "../read/token.ts";
import { type ArithmeticOperator, type CompareOperator, commonInteger, numeric, promoted } from "./arithmetic.ts";
import { listValue } from "./checkCall.ts";
import { check, nameOf } from "./checkExpression.ts";
import { addressOf, asValue, broken, type Checked, rvalue, typeOf } from "./checked.ts";
import { type Checker, report, warn } from "./checker.ts";
import { condition, convert, isChars, rankOf, shownType, toText, truth, tryConvert } from "./convert.ts";
import { arithmetic, both, compare, complement, constantOf, convertNumber, negate, not, number, shift } from "./fold.ts";
import { resolveBase, withStars } from "./resolveType.ts";
import type { Arithmetic, Expression, Place } from "./tree.ts";
import {
  cellsOf,
  heldType,
  type IntegerType,
  integerFacts,
  isArithmetic,
  sameType,
  type Type,
  typeName,
  types,
} from "./types.ts";

type Syntax<K extends ExpressionSyntax["kind"]> = ExpressionSyntax & { kind: K };

/** The number type of an operand: that of a plain enum is the integer behind it; null for all that is no number. */
function numberType(type: Type): Arithmetic | null {
  if (type.kind === "enum" && type.of.isScoped) return null;
  const held = heldType(type);
  return isArithmetic(held) ? held : null;
}

function commonType(a: Arithmetic, b: Arithmetic): Arithmetic {
  if (a.kind === "integer" && b.kind === "integer") return commonInteger(a, b);
  return a.name === "double" || b.name === "double" ? types.double : types.float;
}

function overflowAt(c: Checker, at: At) {
  return (exact: number, got: number, type: IntegerType) =>
    warn(c, at, { code: "program.overflow", from: exact, to: got, type: typeName(type) });
}

export function checkUnary(c: Checker, e: Syntax<"unary">): Checked {
  if (e.operator === "&") return checkAddress(c, e);
  const operand = check(c, e.value);
  if (e.operator === "!") return asValue(not(condition(c, e.at, operand)));
  const value = rvalue(c, operand);
  if (value.type.kind === "unknown") return broken;
  if (e.operator === "*") {
    if (value.type.kind === "pointer" && value.type.to.kind === "function") return asValue(value);
    if (value.type.kind === "pointer" && value.type.to.kind !== "void") {
      const { to, toConst } = value.type;
      return {
        is: "place",
        place: { at: "pointer", type: to, isConst: toConst, pointer: value, line: e.at.line },
        name: nameOf(operand),
      };
    }
  } else {
    const type = numberType(value.type);
    if (type !== null) {
      const wide = type.kind === "integer" ? promoted(type) : type;
      const converted = convertNumber(value, wide);
      if (e.operator === "+") return asValue(converted);
      if (e.operator === "-") return asValue(negate(converted, wide));
      if (wide.kind === "integer") return asValue(complement(converted, wide));
    }
  }
  report(c, e.at, { code: "program.badOperand", operator: e.operator, found: shownType(c, operand) });
  return broken;
}

function checkAddress(c: Checker, e: Syntax<"unary">): Checked {
  const operand = check(c, e.value);
  if (operand.is === "functions") return asValue(rvalue(c, operand));
  if (operand.is === "place" && operand.place.at !== "letter") return asValue(addressOf(operand.place));
  if (typeOf(operand).kind !== "unknown" || operand.is === "library")
    report(c, e.at, { code: "program.badOperand", operator: "&", found: shownType(c, operand) });
  return broken;
}

export function checkStep(c: Checker, e: Syntax<"step">): Checked {
  const operand = check(c, e.value);
  const operator = e.by === 1 ? "++" : "--";
  const place = changeable(c, e.at, operand, operator);
  if (place === null) return broken;
  const { type } = place;
  const isPointer = type.kind === "pointer" && type.to.kind !== "function";
  if (!isPointer && (numberType(type) === null || type.kind === "enum")) {
    report(c, e.at, { code: "program.badOperand", operator, found: typeName(type) });
    return broken;
  }
  const stride = type.kind === "pointer" ? cellsOf(type.to) : 1;
  const value: Expression = { op: "step", type, place, by: e.by, after: e.after, stride };
  return e.after ? asValue(value) : afterwards(value, place, nameOf(operand));
}

/** An assignment is a place again: (a = b) = c, ++x. As a value it is read from the node itself. */
function afterwards(effect: Expression, place: Place, name: string): Checked {
  return { is: "place", place: { at: "after", type: place.type, isConst: false, effect, place }, name };
}

/** The place that is to be changed, or a report why it cannot be. */
export function changeable(c: Checker, at: At, target: Checked, operator: string): Place | null {
  if (target.is === "place") {
    if (target.place.type.kind === "unknown") return null;
    if (target.place.isConst) {
      report(c, at, { code: "program.assignToConst", name: target.name });
      return null;
    }
    if (target.place.type.kind !== "array") return target.place;
  } else if (typeOf(target).kind === "unknown" && target.is === "value") return null;
  report(c, at, { code: "program.notAssignable", found: target.is === "place" ? typeName(target.place.type) : operator });
  return null;
}

export function checkAssign(c: Checker, e: Syntax<"assign">): Checked {
  const target = check(c, e.left);
  const given = check(c, e.right);
  const place = changeable(c, e.at, target, `${e.operator}=`);
  if (place === null) return broken;
  const { type } = place;
  if (e.operator === "") {
    const value = given.is === "list" && type.kind === "record" ? listValue(c, e.at, given, type) : convert(c, e.at, given, type);
    return afterwards({ op: "assign", type, place, value }, place, nameOf(target));
  }
  if (given.is === "list") return broken;
  const value = rvalue(c, given);
  if (value.type.kind === "unknown") return broken;
  const operator = e.operator as ArithmeticOperator | "<<" | ">>";
  if (type.kind === "text" && operator === "+") {
    const text = toText(value);
    if (text !== null) {
      const joined: Expression = { op: "changeText", type, place, name: "text.join", values: [text], line: e.at.line };
      return afterwards(joined, place, nameOf(target));
    }
  }
  const [left, right] = [numberType(type), numberType(value.type)];
  if (type.kind === "pointer" && right?.kind === "integer" && (operator === "+" || operator === "-")) {
    const sign = operator === "+" ? 1 : -1;
    return afterwards({ op: "advance", type, place, count: value, stride: cellsOf(type.to), sign }, place, nameOf(target));
  }
  const isShift = operator === "<<" || operator === ">>";
  if (
    left === null ||
    right === null ||
    type.kind === "enum" ||
    (!"+-*/".includes(operator) && (left.kind === "float" || right.kind === "float"))
  ) {
    report(c, e.at, { code: "program.badOperands", operator: `${operator}=`, left: typeName(type), right: shownType(c, given) });
    return broken;
  }
  if (isShift && left.kind === "integer") warnOfShift(c, e.at, operator as "<<" | ">>", value, promoted(left));
  const inType = isShift && left.kind === "integer" ? promoted(left) : commonType(left, right);
  const converted = isShift && right.kind === "integer" ? convertNumber(value, promoted(right)) : convertNumber(value, inType);
  return afterwards({ op: "compound", type, place, operator, value: converted, inType, line: e.at.line }, place, nameOf(target));
}

export function checkBinary(c: Checker, e: Syntax<"binary">): Checked {
  const left = check(c, e.left);
  const right = check(c, e.right);
  const { operator } = e;
  if (operator === "&&" || operator === "||")
    return asValue(both(operator === "&&" ? "and" : "or", condition(c, e.at, left), condition(c, e.at, right)));
  const [a, b] = [rvalue(c, left), rvalue(c, right)];
  if ((a.type.kind === "unknown" && left.is !== "library") || (b.type.kind === "unknown" && right.is !== "library"))
    return broken;
  const [x, y] = [numberType(a.type), numberType(b.type)];
  const result =
    x !== null && y !== null
      ? withNumbers(c, e, a, b, x, y)
      : a.type.kind === "text" || b.type.kind === "text"
        ? withTexts(operator, a, b, e.at.line)
        : withOthers(operator, a, b);
  if (result !== null) return asValue(result);
  report(c, e.at, { code: "program.badOperands", operator, left: shownType(c, left), right: shownType(c, right) });
  return broken;
}

const comparisons = new Set(["==", "!=", "<", ">", "<=", ">="]);

function withNumbers(
  c: Checker,
  e: Syntax<"binary">,
  a: Expression,
  b: Expression,
  x: Arithmetic,
  y: Arithmetic,
): Expression | null {
  const { operator } = e;
  if (operator === "<<" || operator === ">>") {
    if (x.kind !== "integer" || y.kind !== "integer") return null;
    const type = promoted(x);
    warnOfShift(c, e.right.at, operator, b, type);
    return shift(operator, convertNumber(a, type), convertNumber(b, promoted(y)), type);
  }
  const type = commonType(x, y);
  const [l, r] = [convertNumber(a, type), convertNumber(b, type)];
  if (comparisons.has(operator)) return compare(operator as CompareOperator, l, r, type);
  if (type.kind === "float" && !["+", "-", "*", "/"].includes(operator)) return null;
  return arithmetic(operator as ArithmeticOperator, l, r, type, e.at.line, overflowAt(c, e.at));
}

/** A constant count beyond the number's bits: undefined in C++, and the compiler says so unasked. */
function warnOfShift(c: Checker, at: At, operator: "<<" | ">>", count: Expression, type: IntegerType): void {
  const held = heldType(count.type);
  const value = constantOf(count);
  if (value === null || held.kind !== "integer") return;
  const by = numeric(value, held);
  const { bits } = integerFacts[type.name];
  if (by < 0 || by >= bits) warn(c, at, { code: "program.shiftTooFar", count: by, bits, operator });
}

/** String + anything, and comparisons of a String with a String or a char text to its right. */
function withTexts(operator: string, a: Expression, b: Expression, line: number): Expression | null {
  if (operator === "+") {
    const [l, r] = [toText(a), toText(b)];
    return l && r ? { op: "library", type: types.text, name: "text.join", values: [l, r], line } : null;
  }
  if (!comparisons.has(operator) || a.type.kind !== "text") return null;
  if (b.type.kind !== "text" && !isChars(b.type)) return null;
  const r = toText(b);
  if (r === null) return null;
  const order: Expression = { op: "library", type: types.int, name: "String.compareTo", values: [a, r], line };
  return {
    op: "compare",
    type: types.bool,
    operator: operator as CompareOperator,
    left: order,
    right: number(0, types.int),
    inType: types.int,
  };
}

/** Pointers, and the values of an enum class. */
function withOthers(operator: string, a: Expression, b: Expression): Expression | null {
  const isPointer = (e: Expression) => e.type.kind === "pointer";
  const isNull = (e: Expression) => e.op === "null" || (constantOf(e) === 0 && e.type.kind === "integer");
  if (comparisons.has(operator)) {
    const scoped = a.type.kind === "enum" && sameType(a.type, b.type);
    if (scoped)
      return compare(
        operator as CompareOperator,
        convertNumber(a, heldType(a.type)),
        convertNumber(b, heldType(b.type)),
        heldType(a.type) as IntegerType,
      );
    if (!(isPointer(a) || isNull(a)) || !(isPointer(b) || isNull(b))) return null;
    const asPointer = (e: Expression): Expression => (isPointer(e) ? e : { op: "null", type: types.null });
    return {
      op: "comparePointers",
      type: types.bool,
      operator: operator as CompareOperator,
      left: asPointer(a),
      right: asPointer(b),
    };
  }
  const count = (e: Expression) => numberType(e.type)?.kind === "integer";
  if (a.type.kind === "pointer" && a.type.to.kind !== "function") {
    const stride = cellsOf(a.type.to);
    if ((operator === "+" || operator === "-") && count(b))
      return { op: "movePointer", type: a.type, pointer: a, count: b, stride, sign: operator === "+" ? 1 : -1 };
    if (operator === "-" && b.type.kind === "pointer" && sameType(a.type.to, b.type.to))
      return { op: "pointerDifference", type: types.int, left: a, right: b, stride };
  }
  if (operator === "+" && count(a) && b.type.kind === "pointer" && b.type.to.kind !== "function")
    return { op: "movePointer", type: b.type, pointer: b, count: a, stride: cellsOf(b.type.to), sign: 1 };
  return null;
}

export function checkChoose(c: Checker, e: Syntax<"choose">): Checked {
  const test = condition(c, e.test.at, check(c, e.test));
  const [yes, no] = [rvalue(c, check(c, e.yes)), rvalue(c, check(c, e.no))];
  if (yes.type.kind === "unknown" || no.type.kind === "unknown") return broken;
  const type = chooseType(yes, no);
  const [l, r] = type === null ? [null, null] : [tryConvert(yes, type), tryConvert(no, type)];
  if (type === null || l === null || r === null) {
    report(c, e.at, { code: "program.badOperands", operator: "?:", left: typeName(yes.type), right: typeName(no.type) });
    return broken;
  }
  const constant = constantOf(test);
  if (constant !== null) return asValue(constant !== 0 ? l : r);
  return asValue({ op: "choose", type, test, yes: l, no: r });
}

function chooseType(yes: Expression, no: Expression): Type | null {
  if (sameType(yes.type, no.type)) return yes.type;
  const [a, b] = [numberType(yes.type), numberType(no.type)];
  if (a !== null && b !== null) return commonType(a, b);
  if (yes.type.kind === "text" || no.type.kind === "text") return types.text;
  if (yes.type.kind === "pointer" && rankOf(no.type, yes.type, no) !== null) return yes.type;
  if (no.type.kind === "pointer" && rankOf(yes.type, no.type, yes) !== null) return no.type;
  return yes.type.kind === "void" && no.type.kind === "void" ? types.void : null;
}

export function checkCast(c: Checker, e: Syntax<"cast">): Checked {
  const type = withStars(resolveBase(c, e.type), e.type.isConst, e.pointers);
  return cast(c, e.at, check(c, e.value), type);
}

/** An explicit conversion: more is allowed than without, and a number that is cut is meant so. */
export function cast(c: Checker, at: At, given: Checked, type: Type): Checked {
  const value = rvalue(c, given);
  if (value.type.kind === "unknown" || type.kind === "unknown") return broken;
  if (type.kind === "void") return asValue({ op: "comma", type: types.void, first: value, second: number(0, types.void) });
  const from = heldType(value.type);
  if (isArithmetic(from) && isArithmetic(heldType(type))) return asValue(convertNumber(value, type));
  // A text in flash by its address.
  if (type.kind === "flash" && isChars(value.type))
    return asValue({ op: "library", type, name: "text.ofChars", values: [value], line: at.line });
  if (type.kind === "text") {
    const text = toText(value);
    if (text !== null) return asValue(text);
  }
  // char and const char, and all pointers of the same size to numbers of one byte, read the same cells.
  if (type.kind === "pointer" && value.type.kind === "pointer" && sameKindOfCell(type.to, value.type.to))
    return asValue({ ...value, type } as Expression);
  const converted = tryConvert(value, type);
  if (converted !== null) return asValue(type.kind === "integer" && type.name === "bool" ? truth(value) : converted);
  if (type.kind === "pointer" || value.type.kind === "pointer")
    report(c, at, { code: "program.notSupported", feature: "pointer cast" });
  else report(c, at, { code: "program.cannotConvert", from: shownType(c, given), to: typeName(type) });
  return broken;
}

function sameKindOfCell(a: Type, b: Type): boolean {
  if (sameType(a, b)) return true;
  return a.kind === "integer" && b.kind === "integer" && a.name === b.name;
}
