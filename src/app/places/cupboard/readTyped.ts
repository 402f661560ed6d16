// Counts, clock times and days as people type them into a field.
//
// Digits of any script count as digits; what could be two things is not guessed at. Sums of money are in order/readSum.ts.
// Does not know: fields, sentences.
import { type Day, parseDay } from "../../../base/index.ts";

/** Most of a kind that a class file may hold (school/file). */
const mostOfAKind = 1_000_000;

/** @returns the text with its digits written as 0 to 9, whatever script they came in. */
export function latinDigits(text: string): string {
  return text.replace(/\p{Nd}/gu, (digit) => {
    const plain = digit.normalize("NFKC");
    if (/^\d$/.test(plain)) return plain;
    // Every script's ten digits stand in a row, nought first (Unicode standard, property Nd).
    const code = digit.codePointAt(0) ?? 0;
    let nought = code;
    while (code - nought < 9 && /^\p{Nd}$/u.test(String.fromCodePoint(nought - 1))) nought -= 1;
    return String(code - nought);
  });
}

/** @returns a whole number from nought on, or null. */
export function readCount(text: string, most = mostOfAKind): number | null {
  const digits = latinDigits(text).trim();
  if (!/^\d{1,7}$/.test(digits)) return null;
  const count = Number(digits);
  return count <= most ? count : null;
}

/** @returns minutes after midnight of "9", "9:05", "09.05", "9h05", "0905", or null. */
export function readClock(text: string): number | null {
  const match = /^(\d{1,2})(?:\s*[:.hH]\s*(\d{2})?|(\d{2}))?$/.exec(latinDigits(text).trim());
  if (!match) return null;
  const hours = Number(match[1]);
  const minutes = Number(match[2] ?? match[3] ?? 0);
  return hours < 24 && minutes < 60 ? hours * 60 + minutes : null;
}

/** @param month 1 to 12. @returns the day, or null where there is no such day. */
export function readDay(day: string, month: number, year: string): Day | null {
  const [d, y] = [readCount(day), readCount(year)];
  if (d === null || y === null || y < 1900) return null;
  return parseDay(`${String(y).padStart(4, "0")}-${String(month).padStart(2, "0")}-${String(d).padStart(2, "0")}`);
}
