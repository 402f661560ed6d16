// Words for a currency. Expected: ISO 4217, codes and their decimals.
import { expect, test } from "vitest";
import { readCurrency } from "./readCurrency.ts";

const cases: [typed: string, currency: string | null, decimals?: number][] = [
  ["EUR", "EUR", 2],
  [" eur ", "EUR", 2],
  ["Euro", "EUR", 2],
  ["euros", "EUR", 2],
  ["€", "EUR", 2],
  ["$", "USD", 2],
  ["US  dollars", "USD", 2],
  ["Pounds", "GBP", 2],
  ["yen", "JPY", 0],
  ["KES", "KES", 2],
  ["Ksh", "KES", 2],
  ["złoty", "PLN", 2],
  // Of several countries each.
  ["francs", null],
  ["shillings", null],
  ["rupees", null],
  ["", null],
  ["EU", null],
  ["constructor", null],
];
for (const [typed, currency, decimals] of cases)
  test(`“${typed}”: ${currency ?? "none"}`, () =>
    expect(readCurrency(typed)).toEqual(currency === null ? null : { currency, decimals }));
