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
  /** Work that is done once, for a text or a way of writing, kept as long as the language is. */
  readonly kept: Map<unknown, unknown>;
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
  const { tag, intl, name, direction } = catalogue.language;
  let mark: string | undefined;
  return {
    tag: made.tag ?? tag,
    intl,
    name,
    direction: made.direction ?? (direction === "rtl" ? "rtl" : "ltr"),
    get decimalMark() {
      mark ??= new Intl.NumberFormat(intl).formatToParts(1.5).find((p) => p.type === "decimal")?.value ?? ".";
      return mark;
    },
    text: textFinder(catalogue),
    pseudo: made.pseudo ?? null,
    kept: new Map(),
  };
}

/** Looks into one family for a key, so that nothing is laid out beforehand: the page asks for a few of some thousand texts. */
function textFinder(catalogue: Catalogue): (key: string) => Text | null {
  const families = new Map<string, Readonly<Record<string, Text>>>();
  const byCode: Readonly<Record<string, Text>>[] = [];
  for (const [room, inside] of Object.entries(catalogue)) {
    if (room === "language") continue;
    for (const [family, texts] of Object.entries(inside as Record<string, Record<string, Text>>))
      if (standsByCode(family)) byCode.push(texts);
      else families.set(family, families.has(family) ? { ...families.get(family), ...texts } : texts);
  }
  return (key) => {
    const dot = key.indexOf(".");
    const code = key.slice(dot + 1);
    const texts = families.get(key.slice(0, dot));
    if (texts !== undefined && Object.hasOwn(texts, code)) return texts[code] ?? null;
    return byCode.find((all) => Object.hasOwn(all, key))?.[key] ?? null;
  };
}

/** Problems and what stands under "codes" carry their whole key as their code. */
const standsByCode = (family: string): boolean => family === "problems" || family === "codes";

/** Every text of a catalogue by its key: problems and what stands under "codes" by their code, all others as "family.code". */
export function flatTexts(catalogue: Catalogue): Map<string, Text> {
  const out = new Map<string, Text>();
  for (const [room, families] of Object.entries(catalogue)) {
    if (room === "language") continue;
    for (const [family, texts] of Object.entries(families as Record<string, Record<string, Text>>))
      for (const [code, text] of Object.entries(texts)) out.set(standsByCode(family) ? code : `${family}.${code}`, text);
  }
  return out;
}

/** A way of writing is dear to make, so each is made once for a language. */
function once<Way>(language: Language, name: string, make: () => Way): Way {
  const key = `Intl ${name}`;
  const made = (language.kept.get(key) as Way | undefined) ?? make();
  language.kept.set(key, made);
  return made;
}

/** A number without groups, as readings and counts are written: "1234.5" or "1234,5". At most three decimals. */
export function formatNumber(language: Language, value: number): string {
  const options = { useGrouping: false, maximumFractionDigits: 3 };
  return once(language, "number", () => new Intl.NumberFormat(language.intl, options)).format(value);
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
  const options = { style: "currency", currency, minimumFractionDigits: decimals, maximumFractionDigits: decimals } as const;
  const way = once(language, `${currency} ${decimals}`, () => new Intl.NumberFormat(language.intl, options));
  return way.format(money / 10 ** decimals);
}

/** A sum without its currency, for a column whose head names it: "3.40". */
export function formatSum(language: Language, money: Money, decimals: number): string {
  const options = { minimumFractionDigits: decimals, maximumFractionDigits: decimals };
  return once(language, `sum ${decimals}`, () => new Intl.NumberFormat(language.intl, options)).format(money / 10 ** decimals);
}

/** "11 February 2027"; with `style` "short" without the year, with "weekday" "Thursday 11 February". Month always in words. */
export function formatDay(language: Language, day: Day, style: "full" | "short" | "weekday" = "full"): string {
  const options: Intl.DateTimeFormatOptions = {
    timeZone: "UTC",
    day: "numeric",
    month: "long",
    ...(style === "full" ? { year: "numeric" } : {}),
    ...(style === "weekday" ? { weekday: "long" } : {}),
  };
  const way = once(language, `day ${style}`, () => new Intl.DateTimeFormat(language.intl, options));
  return way.format(dayNumber(day) * 86_400_000);
}

/** A moment of the day from minutes after midnight: "10:30". */
export function formatClock(language: Language, minutes: number): string {
  const options = { timeZone: "UTC", hour: "2-digit", minute: "2-digit" } as const;
  const time = once(language, "clock", () => new Intl.DateTimeFormat(language.intl, options));
  return time.format(Math.floor(minutes % 1440) * 60_000);
}

/** "a, b and c". */
export function formatList(language: Language, words: readonly string[], kind: "and" | "or" = "and"): string {
  const options = { type: kind === "and" ? "conjunction" : "disjunction" } as const;
  return once(language, `list ${kind}`, () => new Intl.ListFormat(language.intl, options)).format(words);
}

/** Compares names of people the way the language sorts them. */
export function compareNames(language: Language): (a: string, b: string) => number {
  const options = { sensitivity: "base", numeric: true } as const;
  return once(language, "order", () => new Intl.Collator(language.intl, options)).compare;
}
