// A sum of money as people type it: with a point or a comma, with or without the currency's sign and groups of three.
//
// Nothing is guessed: "1.234" in a currency of two decimals may be one thousand or one and a bit, and is refused.
// Does not know: fields, sentences, how a sum is shown.
import { type Money, parseMoney } from "../../../base/index.ts";
import { latinDigits } from "../cupboard/readTyped.ts";

/** @returns the sum in the currency's smallest unit, or null if it is no sum, is unclear, or is finer than the currency. */
export function readSum(text: string, decimals: number): Money | null {
  // Signs and letters of a currency stand before or behind ("€ 3,40", "3.40 KES"); between figures nothing but marks may.
  const bare = latinDigits(text)
    .trim()
    .replace(/^(?:\p{Sc}|\p{L}{1,4}\.?)\s*/u, "")
    .replace(/\s*(?:\p{Sc}|\p{L}{1,4}\.?)$/u, "")
    .replace(/(\d)[\s'’](?=\d{3}(?!\d))/g, "$1");
  if (!/^\d[\d.,]*$/.test(bare)) return null;
  const marks = bare.replace(/\d/g, "");
  const last = marks.at(-1);
  const isMixed = new Set(marks).size > 1;
  // One mark that stands several times parts groups; of two kinds the last is the decimal mark.
  if (!isMixed && marks.length > 1) return groupedWhole(bare, decimals);
  if (isMixed && last !== undefined) {
    const [whole = "", fraction = ""] = cutAtLast(bare, last);
    if (whole.includes(last) || !/^\d{1,3}(?:[.,]\d{2,3})*[.,]\d{3}$/.test(whole)) return null;
    return parseMoney(`${whole.replace(/[.,]/g, "")}.${fraction}`, decimals);
  }
  if (decimals === 0 && /^[1-9]\d{0,2}[.,]\d{3}$/.test(bare)) return groupedWhole(bare, decimals);
  // With three decimals this is exact; with two parseMoney would take "1.230" for 1.23, which may have meant a thousand.
  if (decimals < 3 && /^[1-9]\d{0,2}[.,]\d{3}$/.test(bare)) return null;
  return parseMoney(bare, decimals);
}

/** "1,234,567", also "12,34,567" as it is written in India. */
function groupedWhole(text: string, decimals: number): Money | null {
  return /^\d{1,3}(?:[.,]\d{2,3})*[.,]\d{3}$/.test(text) ? parseMoney(text.replace(/[.,]/g, ""), decimals) : null;
}

function cutAtLast(text: string, mark: string): [string, string] {
  const at = text.lastIndexOf(mark);
  return [text.slice(0, at), text.slice(at + 1)];
}
