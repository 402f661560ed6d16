// A sum as it stands in a field: in the language's decimal mark and without groups, so that it is read back as itself.
//
// Does not know: currencies.
import { type Money, writeMoney } from "../../../base/index.ts";
import type { Language } from "../../../language/index.ts";

export function writtenSum(language: Pick<Language, "decimalMark">, sum: Money, decimals: number): string {
  return writeMoney(sum, decimals).replace(".", language.decimalMark);
}
