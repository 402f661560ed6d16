// Numbers, days, times, sums, lists and plurals as a language writes them.
//
// Expected forms are those of CLDR, which Intl carries: plural categories of Arabic from CLDR's cardinal rules (0 1 2 3 10 11 99 100
// 102 103 111), days and sums as each language's readers know them. German and Arabic catalogues here are English ones with
// another tag and, for plurals, one text of their own.
import { describe, expect, test } from "vitest";
import type { Day } from "../base/index.ts";
import { english } from "./catalogue.ts";
import {
  formatAmount,
  formatChance,
  formatClock,
  formatDay,
  formatList,
  formatMoney,
  formatNumber,
  languageFor,
  makeLanguage,
} from "./language.ts";
import { say } from "./say.ts";

const en = languageFor("en");
const tagged = (tag: string, intl: string, text?: string) =>
  makeLanguage({
    ...english,
    language: { tag, intl, name: tag, direction: "ltr" },
    ...(text === undefined ? {} : { rehearsal: { ...english.rehearsal, severity: { caution: text, unsafe: "" } } }),
  });
const de = tagged("de", "de-u-nu-latn");

const day = "2027-02-11" as Day;
const forms: [what: string, shown: string, expected: string][] = [
  ["a day", formatDay(en, day), "11 February 2027"],
  ["a day of this year", formatDay(en, day, "short"), "11 February"],
  ["a day with its weekday", formatDay(en, day, "weekday"), "Thursday 11 February"],
  ["a day in German", formatDay(de, day), "11. Februar 2027"],
  ["a time", formatClock(en, 630), "10:30"],
  ["a time after midnight", formatClock(en, 5), "00:05"],
  ["a sum", formatMoney(en, 340, "EUR", 2), "€3.40"],
  ["a sum without decimals", formatMoney(en, 340, "JPY", 0), "JP¥340"],
  ["a sum in German", formatMoney(de, 340, "EUR", 2), "3,40\u00a0€"],
  ["a number is never grouped", formatNumber(en, 12345.5), "12345.5"],
  ["a number in German", formatNumber(de, 12345.5), "12345,5"],
  ["a current", formatAmount(en, 0.0139, "A"), "13.9 mA"],
  ["a resistance in German", formatAmount(de, 4700, "Ω"), "4,7 kΩ"],
  ["a list", formatList(en, ["a", "b", "c"]), "a, b and c"],
  ["a list in German", formatList(de, ["a", "b", "c"]), "a, b und c"],
  ["a choice", formatList(en, ["a", "b"], "or"), "a or b"],
  ["a chance", formatChance(en, 0.914), "91 %"],
  ["a chance that is nearly certain is not called certain", formatChance(en, 0.9997), "99.9 %"],
  ["a certain chance", formatChance(en, 1), "100 %"],
  ["no chance", formatChance(en, 0), "0 %"],
];
for (const [what, shown, expected] of forms) test(what, () => expect(shown).toBe(expected));

describe("plurals", () => {
  const arabic = tagged("ar", "ar-u-nu-latn", "{n, plural, zero {zero} one {one} two {two} few {few} many {many} other {other}}");
  const cases: [n: number, form: string][] = [
    [0, "zero"],
    [1, "one"],
    [2, "two"],
    [3, "few"],
    [10, "few"],
    [11, "many"],
    [99, "many"],
    [100, "other"],
    [102, "other"],
    [103, "few"],
    [111, "many"],
  ];
  for (const [n, form] of cases) test(`Arabic ${n}`, () => expect(say(arabic, "severity.caution", { n })).toBe(form));
});

describe("languages that are made", () => {
  test("an unknown tag gives English, a tag with a country its language", () => {
    expect(languageFor("tlh").tag).toBe("en");
    expect(languageFor("en-KE").tag).toBe("en");
    expect(languageFor("EN").tag).toBe("en");
  });
  test("xx shows keys and values", () => {
    expect(say(languageFor("xx"), "reason.part-short", { item: "servo", count: 1, wanted: 10 })).toBe(
      "[[reason.part-short(1; 10; [[item.servo(1)]])]]",
    );
  });
  test("xl is longer: short words about twice, sentences about 1.3 to 1.5 times", () => {
    const xl = languageFor("xl");
    expect(say(xl, "verdict.ready").length / say(en, "verdict.ready").length).toBeGreaterThan(1.5);
    for (const key of ["caution.cadmium", "caution.magnets", "meterTest.junctions"] as const) {
      const ratio = say(xl, key).length / say(en, key).length;
      expect(ratio).toBeGreaterThan(1.25);
      expect(ratio).toBeLessThan(1.55);
    }
  });
  test("xr runs from right to left", () => expect(languageFor("xr").direction).toBe("rtl"));
});
