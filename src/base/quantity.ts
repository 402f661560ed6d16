// Quantities as the trade writes them: 4k7, 220 Ω, 100n, 2,2 µF, 300ms, 50%.
//
// Inside, every number is plain SI; prefixes exist only here. The letter may stand in place of the decimal mark (IEC 60062:
// 4k7, 2R2, R47), a comma is a decimal mark too, and a space before the unit is allowed (SI brochure).
// Does not know: which parameter is read, what range makes sense.

/** A unit that our files use. `1` is a bare number, `%` gives 0.5 for "50%". */
export type Unit = "Ω" | "F" | "H" | "V" | "A" | "W" | "s" | "Hz" | "lx" | "°C" | "cm" | "Ah" | "g" | "%" | "1";

/** Other spellings that people and keyboards produce. */
const spellings: Readonly<Record<Unit, readonly string[]>> = {
  Ω: ["Ω", "\u2126", "ohm", "ohms", "Ohm", "Ohms", "R"],
  F: ["F"],
  H: ["H"],
  V: ["V"],
  A: ["A"],
  W: ["W"],
  s: ["s"],
  Hz: ["Hz", "hz"],
  lx: ["lx", "lux"],
  "°C": ["°C", "C", "\u2103"],
  cm: ["cm"],
  Ah: ["Ah"],
  g: ["g"],
  "%": ["%"],
  "1": [""],
};

/** Prefixes by letter; both micro signs (U+00B5, U+03BC) and the typewriter's u. */
const prefixes: Readonly<Record<string, number>> = {
  p: -12,
  n: -9,
  µ: -6,
  "\u03bc": -6,
  u: -6,
  m: -3,
  k: 3,
  K: 3,
  M: 6,
  G: 9,
};

export type QuantityOutcome =
  | { readonly status: "read"; readonly value: number }
  | { readonly status: "notANumber" }
  | { readonly status: "wrongUnit"; readonly found: string };

/**
 * Reads a quantity.
 *
 * @param text as written, such as "4k7", "220 Ω", "2,2 µF", "1e3", "-5"; a number is taken as plain SI.
 * @param unit what is expected. Without a unit in the text the prefix alone is enough: "4k7" is 4700 Ω.
 * @returns plain SI (percent as a share of 1), or how the text is wrong; `found` is the unit that stands there.
 */
export function parseQuantity(text: string | number, unit: Unit): QuantityOutcome {
  if (typeof text === "number") return Number.isFinite(text) ? { status: "read", value: text } : { status: "notANumber" };
  if (text.length > 60) return { status: "notANumber" };
  const trimmed = text.trim().replace(/[\u00a0\u202f\u2009]/g, " ");
  const match = /^([+\u2212-]?)(\d*)(?:[.,](\d+))?(?:[eE]([+-]?\d{1,3}))?\s?(.*)$/su.exec(trimmed);
  if (!match) return { status: "notANumber" };
  const [, sign = "", whole = "", fraction = "", exponent = "0", rest = ""] = match;
  const negative = sign !== "" && sign !== "+";
  const tail = readTail(rest, unit, whole !== "" && fraction === "");
  if (tail === null)
    return whole === "" && fraction === "" ? { status: "notANumber" } : { status: "wrongUnit", found: rest.trim() };
  if (whole === "" && fraction === "" && tail.digits === "") return { status: "notANumber" };
  // The decimal point is moved in the text, so that 4k7 is exactly 4700 and 100n is the double nearest to 1e-7.
  const digits = `${whole || "0"}.${fraction}${tail.digits}`;
  const value = Number(`${negative ? "-" : ""}${digits}e${Number(exponent) + tail.power}`);
  return Number.isFinite(value) ? { status: "read", value } : { status: "notANumber" };
}

/** What stands behind the digits: a prefix, digits after it (4k7), a unit. */
function readTail(rest: string, unit: Unit, mayHoldDigits: boolean): { power: number; digits: string } | null {
  const match = /^(\p{L}|µ|\u2126)?(\d+)?\s?(.*)$/su.exec(rest);
  const [, letter = "", after = "", name = ""] = match ?? [];
  const isUnit = (s: string) => s === "" || spellings[unit].includes(s);
  if (unit === "%") return rest.trim() === "%" ? { power: -2, digits: "" } : rest.trim() === "" ? { power: 0, digits: "" } : null;
  if (after !== "") {
    // R as the decimal mark: 2R2, R47.
    if (letter === "R" && unit === "Ω") return name === "" || isUnit(name) ? { power: 0, digits: after } : null;
    if (mayHoldDigits && letter in prefixes && unit !== "1" && isUnit(name))
      return { power: prefixes[letter] ?? 0, digits: after };
    return null;
  }
  if (isUnit(rest.trim())) return { power: 0, digits: "" };
  const first = rest.slice(0, 1);
  if (first in prefixes && unit !== "1" && isUnit(rest.slice(1).trim())) return { power: prefixes[first] ?? 0, digits: "" };
  return null;
}

/** Prefixes that a paper for beginners shows; Ω never takes a small one. */
const shown: readonly (readonly [number, string])[] = [
  [9, "G"],
  [6, "M"],
  [3, "k"],
  [0, ""],
  [-3, "m"],
  [-6, "µ"],
  [-9, "n"],
  [-12, "p"],
];

/**
 * Writes a quantity for a person: "4.7 kΩ", "13.9 mA", "100 nF", "50 %". Three significant digits unless told otherwise.
 *
 * @param decimalMark "." or ","; the language decides.
 */
export function formatQuantity(value: number, unit: Unit, options: { digits?: number; decimalMark?: string } = {}): string {
  const { digits = 3, decimalMark = "." } = options;
  const write = (n: number) => Number(n.toPrecision(digits)).toString().replace(".", decimalMark).replace("-", "\u2212");
  if (unit === "%") return `${write(value * 100)} %`;
  if (unit === "1") return write(value);
  if (unit === "°C" || unit === "cm" || unit === "lx" || unit === "g") return `${write(value)} ${unit}`;
  if (value === 0) return `0 ${unit}`;
  const rounded = Math.abs(Number(value.toPrecision(digits)));
  const [power, letter] =
    shown.find(([p]) => rounded >= 10 ** p && (unit !== "Ω" || p >= 0)) ?? (unit === "Ω" ? [0, ""] : [-12, "p"]);
  return `${write(value / 10 ** power)} ${letter}${unit}`;
}

/** Writes a value in the short hand of parts lists: 220, 4k7, 1M, 2R2 (IEC 60062). Used in item keys and labels. */
export function shortValue(value: number, unit: Unit): string {
  const [power, letter] = shown.find(([p]) => value >= 0.9999999 * 10 ** p && (unit !== "Ω" || p >= 0)) ?? [0, ""];
  const scaled = Number((value / 10 ** power).toPrecision(4)).toString();
  const mark = letter || (unit === "Ω" ? "R" : "");
  if (scaled.includes(".")) return mark ? scaled.replace(".", mark) : scaled;
  return `${scaled}${letter}`;
}
