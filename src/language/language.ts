// A language: its texts, and how its people write numbers, days, times, sums and lists.
//
// Intl does the writing, so that a new language brings texts and no rules. Digits are Latin everywhere: readings, pin names
// and hole names must look the same on the meter, on the board and on paper. Three languages are made, not translated:
// "xx" shows every text as [[key(values)]], so that a forgotten text is seen, "xl" makes every text longer, so that a tight
// layout is seen, and "xr" is English set from right to left.
// Does not know: which texts there are (catalogue.ts), papers, screens.
import { type Day, dayNumber, formatQuantity, type Money, type Unit } from "../base/index.ts";
import { type Catalogue, english, type Text } from "./catalogue.ts";

export interface Language {
  /** "en"; "xx", "xl" and "xr" for the three that are made. */
  readonly tag: string;
  /** BCP 47 tag for Intl, with the digits named. */
  readonly intl: string;
  readonly name: string;
  readonly direction: "ltr" | "rtl";
  readonly decimalMark: string;
  /** The text of a key such as "verdict.ready" or "lesson.unknownLeg", or null. */
  readonly text: (key: string) => Text | null;
  /** "keys" shows keys in place of texts, "stretched" makes every text longer. */
  readonly pseudo: "keys" | "stretched" | null;
  /** Work that is done once for each text, kept as long as the language is. */
  readonly kept: Map<string, unknown>;
}

const catalogues: Readonly<Record<string, Catalogue>> = { en: english };

/** Tags that `languageFor` knows. */
export const languageTags: readonly string[] = [...Object.keys(catalogues), "xx", "xl", "xr"];

/** @returns the language of a tag such as "en" or "en-KE"; English where the tag is unknown. */
export function languageFor(tag: string): Language {
  const lower = tag.toLowerCase();
  if (lower === "xx") return makeLanguage(english, { tag: "xx", pseudo: "keys" });
  if (lower === "xl") return makeLanguage(english, { tag: "xl", pseudo: "stretched" });
  if (lower === "xr") return makeLanguage(english, { tag: "xr", direction: "rtl" });
  const known = [lower, lower.split("-")[0] ?? ""].find((name) => Object.hasOwn(catalogues, name));
  return makeLanguage((known === undefined ? undefined : catalogues[known]) ?? english);
}

/** Makes a language from its catalogue. */
export function makeLanguage(
  catalogue: Catalogue,
  made: { readonly tag?: string; readonly pseudo?: "keys" | "stretched"; readonly direction?: "ltr" | "rtl" } = {},
): Language {
  const texts = flatTexts(catalogue);
  const { tag, intl, name, direction } = catalogue.language;
  const parts = new Intl.NumberFormat(intl).formatToParts(1.5);
  return {
    tag: made.tag ?? tag,
    intl,
    name,
    direction: made.direction ?? (direction === "rtl" ? "rtl" : "ltr"),
    decimalMark: parts.find((p) => p.type === "decimal")?.value ?? ".",
    text: (key) => texts.get(key) ?? null,
    pseudo: made.pseudo ?? null,
    kept: new Map(),
  };
}

/** Every text of a catalogue by its key: problems and what stands under "codes" by their code, all others as "family.code". */
export function flatTexts(catalogue: Catalogue): Map<string, Text> {
  const out = new Map<string, Text>();
  for (const [room, families] of Object.entries(catalogue)) {
    if (room === "language") continue;
    for (const [family, texts] of Object.entries(families as Record<string, Record<string, Text>>))
      for (const [code, text] of Object.entries(texts))
        out.set(family === "problems" || family === "codes" ? code : `${family}.${code}`, text);
  }
  return out;
}

/** A number without groups, as readings and counts are written: "1234.5" or "1234,5". At most three decimals. */
export function formatNumber(language: Language, value: number): string {
  return new Intl.NumberFormat(language.intl, { useGrouping: false, maximumFractionDigits: 3 }).format(value);
}

/** "13.9 mA", "4,7 kΩ", "50 %": three significant digits. */
export function formatAmount(language: Language, value: number, unit: Unit): string {
  return formatQuantity(value, unit, { decimalMark: language.decimalMark });
}

/** A chance between 0 and 1 as a percentage that never claims certainty: 0.9996 is "over 99.9 %" and not "100 %". */
export function formatChance(language: Language, chance: number): string {
  const percent = chance * 100;
  const digits = percent > 99 && percent < 100 ? 1 : 0;
  const shown = Math.floor(percent * 10 ** digits + 1e-9) / 10 ** digits;
  return `${formatNumber(language, shown)} %`;
}

/** A sum with its currency, as the language writes it: "€3.40". */
export function formatMoney(language: Language, money: Money, currency: string, decimals: number): string {
  return new Intl.NumberFormat(language.intl, {
    style: "currency",
    currency,
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
  }).format(money / 10 ** decimals);
}

/** A sum without its currency, for a column whose head names it: "3.40". */
export function formatSum(language: Language, money: Money, decimals: number): string {
  return new Intl.NumberFormat(language.intl, {
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
  }).format(money / 10 ** decimals);
}

/** "11 February 2027"; with `style` "short" without the year, with "weekday" "Thursday 11 February". Month always in words. */
export function formatDay(language: Language, day: Day, style: "full" | "short" | "weekday" = "full"): string {
  return new Intl.DateTimeFormat(language.intl, {
    timeZone: "UTC",
    day: "numeric",
    month: "long",
    ...(style === "full" ? { year: "numeric" } : {}),
    ...(style === "weekday" ? { weekday: "long" } : {}),
  }).format(dayNumber(day) * 86_400_000);
}

/** A moment of the day from minutes after midnight: "10:30". */
export function formatClock(language: Language, minutes: number): string {
  const time = new Intl.DateTimeFormat(language.intl, { timeZone: "UTC", hour: "2-digit", minute: "2-digit" });
  return time.format(Math.floor(minutes % 1440) * 60_000);
}

/** "a, b and c". */
export function formatList(language: Language, words: readonly string[], kind: "and" | "or" = "and"): string {
  return new Intl.ListFormat(language.intl, { type: kind === "and" ? "conjunction" : "disjunction" }).format(words);
}

/** Compares names of people the way the language sorts them. */
export function compareNames(language: Language): (a: string, b: string) => number {
  return new Intl.Collator(language.intl, { sensitivity: "base", numeric: true }).compare;
}
