// Reads one value under a name: a quantity with its unit, or a word.
//
// "Quantities carry their unit or the unit is in the name": `ohms: 220`, `ohms: 4k7` and `milliamps: 500` are plain, while a time
// or a share must carry its own, because nobody could say whether `5` is seconds, milliseconds or percent.
// Does not know: parts, where the value stands.
import { near, type Place, parseQuantity, type Unit } from "../../base/index.ts";
import type { Report } from "./lessonProblem.ts";

export interface QuantityRule {
  readonly unit: Unit;
  /** What a bare number counts; null where a unit must stand there. Zero needs none. */
  readonly bare: number | null;
  readonly least: number;
  readonly most: number;
}

/** Tells of a value as it stands in the file. */
const written = (value: unknown) => String(value).slice(0, 40);

/** @returns the quantity in SI, or null after reporting what is wrong. */
export function readQuantity(value: unknown, name: string, rule: QuantityRule, place: Place, report: Report): number | null {
  const { unit, bare, least, most } = rule;
  const found = written(value);
  const expected = unit === "1" ? "number" : unit;
  if (typeof value === "boolean" || (typeof value !== "string" && typeof value !== "number")) {
    report({ code: "lesson.notAQuantity", place, name, expected, found });
    return null;
  }
  const outcome = parseQuantity(value, unit);
  if (outcome.status !== "read") {
    report(
      outcome.status === "wrongUnit"
        ? { code: "lesson.wrongUnit", place, name, expected, found: outcome.found }
        : { code: "lesson.notAQuantity", place, name, expected, found },
    );
    return null;
  }
  const isBare = typeof value === "number" || /^[\s+\u2212-]*[\d.,]+(?:[eE][+-]?\d+)?\s*$/.test(value);
  if (isBare && bare === null && outcome.value !== 0) {
    report({ code: "lesson.unitMissing", place, name, expected: unit, found });
    return null;
  }
  // Multiplied by way of text, so that 500 thousandths are exactly 0.5.
  const si = isBare && bare !== null && bare !== 1 ? Number((outcome.value * bare).toPrecision(15)) : outcome.value;
  if (si < least || si > most) {
    report({ code: "lesson.outOfRange", place, name, found, least, most, unit: expected });
    return null;
  }
  return si;
}

/** @returns the word that was meant by its own spelling or a synonym, or null after reporting what is wrong. */
export function readWord(
  value: unknown,
  name: string,
  words: readonly string[],
  synonyms: Readonly<Record<string, string>>,
  place: Place,
  report: Report,
): string | null {
  const found = written(value);
  const meant = Object.hasOwn(synonyms, found) ? synonyms[found]! : found;
  if (words.includes(meant)) return meant;
  report({
    code: "lesson.unknownWord",
    place,
    name,
    expected: words.join(", "),
    found,
    near: near(found, [...words, ...Object.keys(synonyms)]),
  });
  return null;
}
