// What the compiler says, as a kind with its words, and how both generations of it write that.
//
// The class's laptops have GCC 5.4 for the chip; newer ones word some messages anew and put the column elsewhere. The kinds
// that are the same sentence with other words in quotes are one kind.
// Source of the wordings: avr-g++ 5.4.0 as recorded in reference/messages; g++ 12.2 on the same slips for the newer ones.
// Does not know: programs.

export type Wording = "old" | "new";

const old = {
  expected: "expected {what} {where}",
  undeclared: "'{name}' was not declared in this scope",
  notDeclaredYet: "'{name}' has not been declared",
  noTypeName: "'{name}' does not name a type",
  noMember: "'{of}' has no member named '{name}'",
  notMemberOf: "'{name}' is not a member of '{of}'",
  functionInFunction: "a function-definition is not allowed here {where}",
  elseWithoutIf: "'else' without a previous 'if'",
  caseOutside: "case label '{value}' not within a switch statement",
  defaultOutside: "case label not within a switch statement",
  breakOutside: "break statement not within loop or switch",
  continueOutside: "continue statement not within a loop",
  duplicateCase: "duplicate case value",
  forbidsNoType: "ISO C++ forbids declaration of '{name}' with no type [-fpermissive]",
  forbidsCompare: "ISO C++ forbids comparison between pointer and integer [-fpermissive]",
  declaredVoid: "variable or field '{name}' declared void",
  functionInitialised: "function '{name}' is initialized like a variable",
  initialiserForFunction: "initializer provided for function",
  declaresNothing: "declaration does not declare anything [-fpermissive]",
  typeAgain: "two or more data types in declaration of '{name}'",
  colonForScope: "found ':' in nested-name-specifier, expected '::'",
  semicolonAfterRecord: "expected ';' after {word} definition",
  semicolonAfterMember: "expected ';' at end of member declaration",
  redefinition: "redefinition of '{what}'",
  redeclaration: "redeclaration of '{what}'",
  conflicting: "conflicting declaration '{what}'",
  ambiguatesOld: "ambiguating new declaration of '{what}'",
  tooFew: "too few arguments to function '{what}'",
  tooMany: "too many arguments to function '{what}'",
  noMatch: "no matching function for call to '{what}'",
  ambiguousCall: "call of overloaded '{what}' is ambiguous",
  invalidConversion: "invalid conversion from '{from}' to '{to}' [-fpermissive]",
  cannotConvert: "cannot convert '{from}' to '{to}' {how}",
  badOperands: "invalid operands of types '{left}' and '{right}' to binary 'operator{operator}'",
  noOperator: "no match for 'operator{operator}'{types}",
  badStar: "invalid type argument of unary '*' (have '{type}')",
  baseOperand: "base operand of '->' has non-pointer type '{type}'",
  badReference: "invalid initialization of reference of type '{to}' from expression of type '{from}'",
  couldNotConvert: "could not convert '{value}' from '{from}' to '{to}'",
  nonScalar: "conversion from '{from}' to non-scalar type '{to}' requested",
  cannotConvertArgument: "cannot convert '{from}' to '{to}' for argument '{number}' to '{what}'",
  readOnlyLocation: "{step} of read-only location '{place}'",
  readOnlyParameter: "assignment of read-only parameter '{name}'",
  arrayBound: "array bound is not an integer constant {where}",
  rangeInitialiser: "initializer in range-based 'for' loop",
  badUnary: "wrong type argument to unary {operator}",
  readOnly: "assignment of read-only variable '{name}'",
  readOnlyStep: "{step} of read-only variable '{name}'",
  lvalueAssign: "lvalue required as left operand of assignment",
  lvalueStep: "lvalue required as {step} operand",
  lvalueAddress: "lvalue required as unary '&' operand",
  badArrayAssignment: "invalid array assignment",
  incompatibleAssign: "incompatible types in assignment of '{from}' to '{to}'",
  arrayFromList: "assigning to an array from an initializer list",
  notFunction: "'{name}' cannot be used as a function",
  expressionNotFunction: "expression cannot be used as a function",
  badIndex: "invalid types '{types}' for array subscript",
  noRecord: "request for member '{name}' in '{of}', which is of non-class type '{type}'",
  privateMember: "'{what}' is private",
  sizeUnknown: "storage size of '{name}' isn't known",
  sizeMissing: "array size missing in '{name}'",
  sizeFromText: "initializer fails to determine size of '{name}'",
  needsBraces: "array must be initialized with a brace-enclosed initializer",
  boundsMissing: "declaration of '{name}' as multidimensional array must have bounds for all dimensions except the first",
  tooManyInitialisers: "too many initializers for '{what}'",
  badArraySize: "size of array '{name}' is negative",
  notConstant: "'{name}' is not usable in a constant expression",
  uninitialisedConst: "uninitialized const '{name}'",
  returnsSomething: "return-statement with no value, in function returning '{type}' [-fpermissive]",
  returnsNothing: "return-statement with a value, in function returning 'void' [-fpermissive]",
  voidValue: "void value not ignored as it ought to be",
  incompleteType: "'{name}' has an incomplete type",
  undefinedReference: "undefined reference to `{name}'",
  stray: "stray '{what}' in program",
  unclosedText: "missing terminating {quote} character",
  emptyCharacter: "empty character constant",
  unclosedComment: "unterminated comment",
  badOctal: 'invalid digit "{digit}" in octal constant',
  badSuffix: "unable to find numeric literal operator 'operator\"\"{suffix}'",
  badTextSuffix: "unable to find string literal operator 'operator\"\"{suffix}'",
  badExponent: "exponent has no digits",
  tooManyPoints: "too many decimal points in number",
  noSuchFile: "{name}: No such file or directory",
  expectsFileName: '#include expects "FILENAME" or <FILENAME>',
  unknownDirective: "invalid preprocessing directive #{name}",
  unclosedCondition: "unterminated #{name}",
  conditionWithout: "#{name} without #if",
  ownError: "#error {text}",
  macroNameMissing: "no macro name given in #define directive",
  macroName: "macro names must be identifiers",
  macroTooMany: 'macro "{name}" passed {found} arguments, but takes just {expected}',
  macroTooFew: 'macro "{name}" requires {expected} arguments, but only {found} given',
  unclosedMacro: 'unterminated argument list invoking macro "{name}"',
  overflow: "integer overflow in expression [-Woverflow]",
  largeInteger: "large integer implicitly truncated to unsigned type [-Woverflow]",
  overflowInConversion: "overflow in implicit constant conversion [-Woverflow]",
  shiftTooFar: "{side} shift count >= width of type [-Wshift-count-overflow]",
  shiftNegative: "{side} shift count is negative [-Wshift-count-negative]",
  manyCharacters: "multi-character character constant [-Wmultichar]",
  longCharacter: "character constant too long for its type",
  macroAgain: '"{name}" redefined',
  divisionByZero: "division by zero [-Wdiv-by-zero]",
  pastedText: "deprecated conversion from string constant to 'char*' [-Wwrite-strings]",
} as const;

export type SaidKind = keyof typeof old;

/** Those that a newer compiler words anew. */
const renewed: Readonly<Partial<Record<SaidKind, string>>> = {
  stray: "extended character {character} is not valid in an identifier",
  noTypeName: "'{name}' does not name a type{meant}",
  undeclared: "'{name}' was not declared in this scope{meant}",
  noMember: "'{of}' has no member named '{name}'{meant}",
  overflow: "integer overflow in expression of type '{type}' results in '{value}' [-Woverflow]",
  largeInteger: "unsigned conversion from 'int' to '{type}' changes value from '{from}' to '{to}' [-Woverflow]",
  overflowInConversion: "overflow in conversion from '{given}' to '{type}' changes value from '{from}' to '{to}' [-Woverflow]",
  privateMember: "'{what}' is private within this context",
  pastedText: "ISO C++ forbids converting a string constant to 'char*' [-Wwrite-strings]",
};

export interface Said {
  readonly kind: SaidKind;
  readonly severity: "error" | "warning";
  readonly data: Readonly<Record<string, string>>;
  /** 0 where the linker says it, which knows no lines. */
  readonly line: number;
  readonly column: number;
  /** The message stands in the board's header, because a name from there was replaced by what it stands for. */
  readonly macro: string;
  /** Where the token stands that it complains of, counted in the compiler's tokens, or −1. */
  readonly index: number;
}

/** @returns the message as the compiler writes it, without place and severity. */
export function wordsOf(said: Pick<Said, "kind" | "data">, wording: Wording = "old"): string {
  const text: string = (wording === "new" ? renewed[said.kind] : undefined) ?? old[said.kind];
  return text.replace(/\{(\w+)\}/g, (_, name: string) => said.data[name] ?? "");
}

const shape = (text: string) => new RegExp(`^${text.replace(/[.*+?^$()|[\]\\]/g, "\\$&").replace(/\{(\w+)\}/g, "(?<$1>.*?)")}$`);
const shapes = (Object.keys(old) as SaidKind[]).map(
  (kind) => [kind, shape(old[kind]), renewed[kind] ? shape(renewed[kind]) : null] as const,
);

/** @returns the kind of a message of either generation, or null if it is none that we know. */
export function kindOfMessage(message: string): SaidKind | null {
  // A UTF-8 locale writes ‘ and ’.
  const plain = message.replace(/[‘’]/g, "'");
  return shapes.find(([, first, second]) => first.test(plain) || second?.test(plain))?.[0] ?? null;
}
