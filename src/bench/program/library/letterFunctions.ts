// What kind of letter a character is, and its other case: ctype.h and the board's own names for the same.
//
// ASCII only, as on the chip (C standard, section 7.4, "C" locale).
// Does not know: texts.
import { define, type LibraryFunction } from "./define.ts";

const kinds: readonly (readonly [names: readonly string[], pattern: RegExp])[] = [
  [["isDigit", "isdigit"], /^[0-9]$/],
  [["isAlpha", "isalpha"], /^[A-Za-z]$/],
  [["isAlphaNumeric", "isalnum"], /^[A-Za-z0-9]$/],
  [["isSpace", "isspace"], /^[ \t\n\v\f\r]$/],
  [["isWhitespace", "isblank"], /^[ \t]$/],
  [["isUpperCase", "isupper"], /^[A-Z]$/],
  [["isLowerCase", "islower"], /^[a-z]$/],
  [["isPunct", "ispunct"], /^[!-/:-@[-`{-~]$/],
  [["isHexadecimalDigit", "isxdigit"], /^[0-9A-Fa-f]$/],
  [["isPrintable", "isprint"], /^[ -~]$/],
  [["isControl", "iscntrl"], /^[\0-\x1f\x7f]$/],
  [["isGraph", "isgraph"], /^[!-~]$/],
  [["isAscii", "isascii"], /^[\0-\x7f]$/],
];
const letter = (c: number) => String.fromCharCode(c & 0xffff);

export const letterFunctions: readonly LibraryFunction[] = [
  ...kinds.flatMap(([names, pattern]) =>
    names.map((name) =>
      define(name, /^is[A-Z]/.test(name) ? "bool" : "int", "int", { pure: true, cycles: 16 }, (_m, c: number) =>
        pattern.test(letter(c)) ? 1 : 0,
      ),
    ),
  ),
  ...["toupper", "toUpperCase"].map((name) =>
    define(name, "int", "int", { pure: true, cycles: 14 }, (_m, c: number) => (c >= 97 && c <= 122 ? c - 32 : c)),
  ),
  ...["tolower", "toLowerCase"].map((name) =>
    define(name, "int", "int", { pure: true, cycles: 14 }, (_m, c: number) => (c >= 65 && c <= 90 ? c + 32 : c)),
  ),
];
