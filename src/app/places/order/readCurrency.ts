// A currency as people type it: its three letters, its sign or its usual word.
//
// Only words and signs that most readers take for one currency are read ("$" for USD is such a reading, and is shown back as
// USD); francs, shillings and rupees are of several countries and are asked for by their letters.
// Does not know: fields, sentences.
import { currencyDecimals } from "../../../base/index.ts";

/** Codes: ISO 4217. Words and signs: Unicode CLDR, English and national names (from memory). */
const words: ReadonlyMap<string, string> = new Map([
  ...["€", "euro", "euros"].map((word) => [word, "EUR"] as const),
  ...["$", "us$", "dollar", "dollars", "us dollar", "us dollars"].map((word) => [word, "USD"] as const),
  ...["£", "pound", "pounds", "sterling", "pound sterling", "pounds sterling"].map((word) => [word, "GBP"] as const),
  ...["yen"].map((word) => [word, "JPY"] as const),
  ...["₹"].map((word) => [word, "INR"] as const),
  ...["₦", "naira"].map((word) => [word, "NGN"] as const),
  ...["₵", "cedi", "cedis"].map((word) => [word, "GHS"] as const),
  ...["birr"].map((word) => [word, "ETB"] as const),
  ...["rand"].map((word) => [word, "ZAR"] as const),
  ...["ksh", "kenyan shilling", "kenyan shillings"].map((word) => [word, "KES"] as const),
  ...["₱"].map((word) => [word, "PHP"] as const),
  ...["৳", "taka"].map((word) => [word, "BDT"] as const),
  ...["r$", "reais"].map((word) => [word, "BRL"] as const),
  ...["zł", "zloty", "złoty"].map((word) => [word, "PLN"] as const),
]);

/** @returns the three letters and how many decimals the currency has, or null where it is none that is known. */
export function readCurrency(text: string): { readonly currency: string; readonly decimals: number } | null {
  const typed = text.normalize("NFKC").trim().replace(/\s+/g, " ");
  const currency = words.get(typed.toLowerCase()) ?? typed.toUpperCase();
  const decimals = currencyDecimals(currency);
  return decimals === null ? null : { currency, decimals };
}
