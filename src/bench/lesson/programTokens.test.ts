// Which programs differ in more than comments and texts. What a token is: ISO C++17, chapter 5 [lex].
import { expect, test } from "vitest";
import { firstDifference, programTokens } from "./programTokens.ts";

const cut: [text: string, tokens: string][] = [
  ["int a=5;", "int a = 5 ;"],
  ["a+=b<<2;", "a += b << 2 ;"],
  ["x>>=1; y->z::w", "x >>= 1 ; y -> z :: w"],
  ["1.5e-3f + 0x1F'FF + .5", "1.5e-3f + 0x1F'FF + .5"],
  ["a // one\nb /* two\n lines */ c", "a b c"],
  ['say("hello"); say(F("x"));', 'say ( "" ) ; say ( F ( "" ) ) ;'],
  ['"one" "two"', '""'],
  ['"a \\" b" c', '"" c'],
  ["'a' == '\\''", "'a' == '\\''"],
  ['"// no comment"', '""'],
  ['// "no text\nx', "x"],
  ["#include <Servo.h>", "# include < Servo . h >"],
  ['"open\nx', '"" x'],
  ["/* open", ""],
  ["größe_2 = 1;", "größe_2 = 1 ;"],
];
for (const [text, tokens] of cut)
  test(JSON.stringify(text), () =>
    expect(
      programTokens(text)
        .map((t) => t.text)
        .join(" "),
    ).toBe(tokens),
  );

test("tokens know their places", () => {
  const [, , c] = programTokens('a /* x\n */ "b"\n  c');
  expect(c).toEqual({ text: "c", line: 3, column: 3 });
});

const same: [name: string, original: string, translation: string][] = [
  ["other comments", "int a; // one", "/* eins\n zwei */ int a;"],
  ["other texts", 'say("yes");', 'say("oui, c\'est ça");'],
  ["a text in two pieces", 'say("a long text");', 'say("un long "\n    "texte");'],
  ["other blanks", "if(a){b();}", "if (a) {\n  b();\n}"],
];
for (const [name, original, translation] of same)
  test(`the same: ${name}`, () => expect(firstDifference(original, translation)).toBe(null));

const different: [name: string, original: string, translation: string, found: string][] = [
  ["another number", "delay(500);", "delay(50);", "50"],
  ["another name", "int lamp;", "int lampe;", "lampe"],
  ["another character", "if (c == 'y')", "if (c == 'o')", "'o'"],
  ["one sign more", "a = b;", "a == b;", "=="],
  ["a text where a name was", "say(a);", 'say("a");', '""'],
  ["a line that became a comment", "a();\nb();", "a();\n// b();", ""],
];
for (const [name, original, translation, found] of different)
  test(`different: ${name}`, () => expect(firstDifference(original, translation)?.translation?.text ?? "").toBe(found));
