// One cell of a table as text, as a number, as a count.
//
// Does not know: rows, columns, what the cell is for.
import { plainText } from "../../base/index.ts";

/** A cell as text: in one spelling, without control characters and outer blanks, on one line. */
export function cellText(cell: string): string {
  return plainText(cell)
    .replace(/[\r\n\t]+/g, " ")
    .replace(/[\u0000-\u001f\u007f-\u009f]/g, "")
    .trim();
}

/** A cell as a problem shows it. */
export function shownCell(cell: string): string {
  const text = cellText(cell);
  return text.length > 60 ? `${text.slice(0, 59)}…` : text;
}

export type NumberCell =
  | { readonly status: "read"; readonly value: number }
  | { readonly status: "notANumber" }
  | { readonly status: "unclear" };

/**
 * A number with a decimal point or comma. Blanks between groups of three digits are left out; "1.000" and "1,000" are unclear:
 * one, or a thousand.
 */
export function readNumberCell(cell: string): NumberCell {
  const text = cellText(cell).replace(/^\u2212/, "-");
  if (/^[+-]?[1-9]\d{0,2}[.,]\d{3}$/.test(text)) return { status: "unclear" };
  const digits = /^[+-]?\d{1,3}(?:[ \u00a0\u202f]\d{3})+$/.test(text) ? text.replace(/[ \u00a0\u202f]/g, "") : text;
  if (digits.length > 60 || !/^[+-]?\d+(?:[.,]\d+)?(?:e[+-]?\d+)?$/i.test(digits)) return { status: "notANumber" };
  // Adding nought turns minus nought into nought.
  const value = Number(digits.replace(",", ".")) + 0;
  return Number.isFinite(value) ? { status: "read", value } : { status: "notANumber" };
}

/** Largest count that a file may hold. */
const mostOfAKind = 1_000_000;

/** A whole number from nought on. */
export function readCountCell(cell: string): NumberCell {
  const read = readNumberCell(cell);
  if (read.status !== "read") return read;
  const isCount = Number.isInteger(read.value) && read.value >= 0 && read.value <= mostOfAKind;
  return isCount ? read : { status: "notANumber" };
}
