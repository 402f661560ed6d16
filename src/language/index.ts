// The door of this room: other rooms enter only here.
export type { Catalogue, ProblemCode, ProblemText, Text, TextKey } from "./catalogue.ts";
export { bandWords, countedItem, itemName } from "./itemName.ts";
export {
  compareNames,
  formatAmount,
  formatChance,
  formatClock,
  formatDay,
  formatList,
  formatMoney,
  formatNumber,
  formatSum,
  type Language,
  languageFor,
  languageTags,
  makeLanguage,
} from "./language.ts";
export { type Data, say, sayProblem, sayUnchecked } from "./say.ts";
