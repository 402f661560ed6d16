// Slips and what is made of them, slip by slip; then mistakes that no compiler tells. A new case is one line.
//
// The first table is the project's reference list: one slip each in a program of 19 lines, judged by avr-g++ 5.4.0. Thousands more
// are judged in reference/messages.
import { describe, expect, test } from "vitest";
import { explainProgram } from "./explainProgram.ts";

const base = `const int ledPin = 13;
int counter = 0;
int spare = 0;

void setup() {
  pinMode(ledPin, OUTPUT);
}

void loop() {
  digitalWrite(ledPin, HIGH);
  delay(500);
  if (counter == 10) {
    counter = 0;
  } else {
    counter = counter + 1;
  }
  digitalWrite(ledPin, LOW);
  delay(500);
}
`;

/** Line n, counted from 1, becomes other text. */
function withLine(line: number, text: string): string {
  return base
    .split("\n")
    .map((row, i) => (i + 1 === line ? text : row))
    .join("\n");
}

const slips: [line: number, text: string, said: string, code: string][] = [
  [11, "  delay(500)", "12:3 expected ';' before 'if'", "semicolonMissing"],
  [3, "int spare = 0", "5:1 expected ',' or ';' before 'void'", "semicolonMissing"],
  [19, "", "18:13 expected '}' at end of input", "braceNotClosed"],
  [7, "", "9:13 a function-definition is not allowed here before '{' token", "braceNotClosed"],
  [19, "}\n}", "20:1 expected declaration before '}' token", "braceTooMany"],
  [10, "  digitalWrite(ledPin, HIGH;", "10:28 expected ')' before ';' token", "bracketNotClosed"],
  [12, "  if counter == 10) {", "12:6 expected '(' before 'counter'", "bracketNotOpened"],
  [12, "  if (counter == 10 {", "12:21 expected ')' before '{' token", "bracketNotClosed"],
  [10, "  digitalWrite(lamp, HIGH);", "10:16 'lamp' was not declared in this scope", "nameUnknown"],
  [10, "  digitalWrite(ledpin, HIGH);", "10:16 'ledpin' was not declared in this scope", "wrongCapitals"],
  [10, "  digitalwrite(ledPin, HIGH);", "10:28 'digitalwrite' was not declared in this scope", "wrongCapitals"],
  [3, "Int spare = 0;", "3:1 'Int' does not name a type", "wrongCapitals"],
  [9, "Void loop() {", "9:1 'Void' does not name a type", "wrongCapitals"],
  [10, "  digitalWrite(ledPin, High);", "10:24 'High' was not declared in this scope", "wrongCapitals"],
  [3, 'const char *text = "hello;', "3:1 missing terminating \" character", "quoteMissing"],
  [3, "const char *text = “hi”;", "3:1 stray '\\342' in program", "typographicQuotes"],
  [15, "    counter = counter – 1;", "15:5 stray '\\342' in program", "longDash"],
  [10, "  digitalWrite(ledPin);", "10:22 too few arguments to function 'void digitalWrite(uint8_t, uint8_t)'", "tooFewValues"],
  [11, "  delay(500, 1);", "11:15 too many arguments to function 'void delay(long unsigned int)'", "tooManyValues"],
  [3, "long counter = 0;", "3:6 conflicting declaration 'long int counter'", "declaredOtherwise"],
  [12, "  if (counter == 10); {", "14:5 'else' without a previous 'if'", "semicolonBehindIf"],
  [13, "    ledPin = 0;", "13:12 assignment of read-only variable 'ledPin'", "constAssigned"],
  [9, "void loop(); {", "9:14 expected unqualified-id before '{' token", "headSemicolon"],
  [13, "    for (int i = 0, i < 4, i++) {}", "13:23 expected ';' before '<' token", "semicolonMissing"],
  [3, "int 2pin = 2;", "3:5 expected unqualified-id before numeric constant", "digitFirst"],
  [3, "int switch = 2;", "3:5 expected unqualified-id before 'switch'", "reservedName"],
  [3, 'int spare = "12";', "3:13 invalid conversion from 'const char*' to 'int' [-fpermissive]", "wrongKind"],
  [14, "  } esle {", "14:5 'esle' was not declared in this scope", "wordMisspelt"],
  [12, "  if (counter => 10) {", "12:16 expected primary-expression before '>' token", "swappedOperator"],
  [9, "void Loop() {", "null:null undefined reference to `loop'", "wrongCapitals"],
  [3, "#include <Srvo.h>", "3:18 Srvo.h: No such file or directory", "headerUnknown"],
  [3, "include <Servo.h>", "3:1 'include' does not name a type", "hashMissing"],
  [11, "  delay(09);", "11:9 invalid digit \"9\" in octal constant", "leadingZero"],
]; // biome-ignore format: a table

describe("a slip, the compiler's words, what it is", () => {
  for (const [line, text, said, code] of slips)
    test(`${line}: ${text.trim()}`, () => {
      const { first } = explainProgram("p.cpp", withLine(line, text));
      expect(`${first?.line}:${first?.column} ${first?.message}`).toBe(said);
      expect(first?.code).toBe(code);
    });
});

describe("the newer compiler's words", () => {
  const words: [line: number, text: string, said: string][] = [
    [10, "  digitalWrite(ledpin, HIGH);", "'ledpin' was not declared in this scope; did you mean 'ledPin'?"],
    [3, "Int spare = 0;", "'Int' does not name a type; did you mean 'int'?"],
    [3, "const char *text = “hi”;", "extended character “ is not valid in an identifier"],
  ];
  for (const [line, text, said] of words)
    test(text.trim(), () => expect(explainProgram("p.cpp", withLine(line, text), { wording: "new" }).first?.message).toBe(said));
});

const silent: [body: string, codes: string[]][] = [
  ["if (x = 3) x = 4;", ["program.assignmentAsTest"]],
  ["if (x == 3); x = 4;", ["program.emptyBody"]],
  ["switch (x) { case 1: x = 2; case 2: x = 3; break; }", ["program.fallsThrough"]],
  ["switch (x) { case 1: case 2: x = 3; break; }", []],
  ["switch (x) { case 1: x = 2; // falls on\n case 2: x = 3; break; }", []],
  ["digitalWrite(9, HIGH);", ["program.pinModeMissing"]],
  ["pinMode(9, OUTPUT); digitalWrite(9, HIGH);", []],
  ["pinMode(x, OUTPUT); digitalWrite(9, HIGH);", []],
  ["byte b = 3; if (b >= 0) x = 1;", ["program.alwaysSame"]],
  ["byte b = 3; while (b < 300) b++;", ["program.alwaysSame"]],
  ["byte b = 3; if (b < 255) x = 1;", []],
  ["if (analogRead(A0) > 1023) x = 1;", ["program.alwaysSame"]],
  ["if (1 < x < 5) x = 1;", ["program.chainedCompare"]],
  ["if (x == 1 || 2) x = 1;", ["program.constantOperand"]],
  ["Serial.println(x);", ["program.serialNotBegun"]],
  ["Serial.begin(9600); Serial.println(x);", []],
  ["int x = 5; x++;", ["program.hidden"]],
  ["int t = millis(); x = t;", ["program.timeInInt"]],
  ["unsigned long t = millis(); x = t > 5;", []],
  ['char a[] = "on"; if (a == "on") x = 1;', ["program.textCompared"]],
  ["float f = 1 / 2; x = f;", ["program.wholeDivision"]],
  ["float f = 1.0 / 2; x = f;", []],
  ["x == 5;", ["program.noEffect"]],
  ["x = 40000;", ["program.numberChanges"]],
  ["long ms = x * 1000; x = ms > 5;", ["program.productInInt"]],
  ["long ms = x * 1000L; x = ms > 5;", []],
  ["int ms = x * 1000; x = ms;", []],
  ["x = x << 16;", ["program.shiftTooFar"]],
  ["long y = 1L << 16; x = y > 5;", []],
  ["if (x == 'a' || 'b') x = 1;", ["program.constantOperand"]],
  ["for (long i = 0; i < 100000; i++) {}", ["program.countsInVain"]],
  ["for (volatile long i = 0; i < 100000; i++) {}", []],
  ["for (long i = 0; i < 100000; i++) { delay(1); }", []],
  ["int sum; for (int i = 0; i < 3; i++) sum += i;", ["program.usedUnset"]],
  ["int sum = 0; for (int i = 0; i < 3; i++) sum += i;", []],
  ["int sum; if (x > 3) sum = 1; else sum = 2; x = sum;", []],
  ["int y; x = y + 1;", ["program.usedUnset"]],
  ["int y; y = 3; x = y;", []],
  ["static int y; y++;", []],
  ["int i; for (i = 0; i < 3; i++) x = i;", []],
];

describe("mistakes that no compiler tells", () => {
  for (const [body, codes] of silent)
    test(body.split("\n")[0]!, () => {
      const found = explainProgram("p.cpp", `int x = 0;\nvoid setup() {\n${body}\n}\nvoid loop() {}\n`);
      expect(found.first?.severity).not.toBe("error");
      expect(found.silent.map((p) => p.code)).toEqual(codes);
    });
});
