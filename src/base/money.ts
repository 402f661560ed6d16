// Money as whole numbers of the currency's smallest unit, so that sums are exact.
//
// How many decimals a currency has comes from ISO 4217 through Intl, which every page and Node carry.
// Does not know: which currency a class uses, how a price is shown.

/** A sum in the smallest unit of its currency: 340 is 3.40 euro, 340 is 340 yen. */
export type Money = number;

/** @returns how many decimals the currency has, or null if Intl does not know its code. */
export function currencyDecimals(currency: string): number | null {
  if (!/^[A-Z]{3}$/.test(currency)) return null;
  try {
    return new Intl.NumberFormat("en", { style: "currency", currency }).resolvedOptions().maximumFractionDigits ?? 2;
  } catch {
    return null;
  }
}

/** @returns the sum written in `text` ("3.40", "3,4", "12"), or null if it is no sum, is negative, or is finer than the currency. */
export function parseMoney(text: string, decimals: number): Money | null {
  const match = /^(\d{1,12})(?:[.,](\d{1,4}))?$/.exec(text.trim());
  if (!match) return null;
  const fraction = (match[2] ?? "").replace(/0+$/, "");
  if (fraction.length > decimals) return null;
  return Number(match[1]) * 10 ** decimals + Number(fraction.padEnd(decimals, "0") || "0");
}

/** @returns the sum as the files write it: a point and all decimals, "3.40". */
export function writeMoney(money: Money, decimals: number): string {
  const digits = String(Math.abs(money)).padStart(decimals + 1, "0");
  const sign = money < 0 ? "-" : "";
  return decimals === 0 ? sign + digits : `${sign}${digits.slice(0, -decimals)}.${digits.slice(-decimals)}`;
}
