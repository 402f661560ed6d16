// Names of items of stock for people: "resistor 220" is a "resistor, 220 Ω", "led red" a "LED, red".
//
// An item key is the kind and what tells it apart, parted by blanks. Kinds, colours and types have their words in the
// catalogue; values are written with the unit of their kind. What nobody wrote a word for is shown as it stands in the key.
// Does not know: the catalogue of parts, where an item lies.
import { colourBands, parseQuantity, type Unit } from "../base/index.ts";
import { formatAmount, type Language } from "./language.ts";
import { sayUnchecked } from "./say.ts";

/** The unit of a bare value in the key of a kind. */
const unitOfKind: Readonly<Record<string, Unit>> = {
  resistor: "Ω",
  potentiometer: "Ω",
  photoresistor: "Ω",
  thermistor: "Ω",
  capacitor: "F",
  electrolytic: "F",
  inductor: "H",
  zener: "V",
};

/**
 * @param key such as "resistor 4k7", "led green emerald", "usb-port 500mA".
 * @param count chooses between "wire" and "wires"; the number itself is not shown.
 */
export function itemName(language: Language, key: string, count = 1): string {
  const [kind = "", ...details] = key.split(" ").filter((word) => word !== "");
  const name = language.text(`item.${kind}`) === null ? kind : sayUnchecked(language, `item.${kind}`, { n: count });
  const words = details.map((word) => detailWord(language, kind, word));
  return words.length === 0 ? name : sayUnchecked(language, "itemShape.withDetails", { name, details: words.join(", ") });
}

/** @returns the item with its number: "7 wires", "1 resistor, 220 Ω". */
export function countedItem(language: Language, key: string, count: number): string {
  return sayUnchecked(language, "itemShape.counted", { count, name: itemName(language, key, count) });
}

function detailWord(language: Language, kind: string, word: string): string {
  if (language.text(`colour.${word}`) !== null) return sayUnchecked(language, `colour.${word}`);
  if (language.text(`itemDetail.${word}`) !== null) return sayUnchecked(language, `itemDetail.${word}`);
  const unit = unitOfKind[kind];
  const value = unit === undefined ? null : parseQuantity(word, unit);
  if (unit !== undefined && value?.status === "read") return formatAmount(language, value.value, unit);
  for (const own of ["A", "V", "W", "Ah"] as const) {
    const read = word.endsWith(own) ? parseQuantity(word, own) : null;
    if (read?.status === "read") return formatAmount(language, read.value, own);
  }
  return word;
}

/** The colour bands of a resistor in words, "red red brown, gold"; empty for any other item. */
export function bandWords(language: Language, key: string): string {
  const [kind, value = ""] = key.split(" ");
  const ohms = kind === "resistor" ? parseQuantity(value, "Ω") : null;
  if (ohms?.status !== "read") return "";
  const words = colourBands(ohms.value, usualTolerance).map((band) => sayUnchecked(language, `colour.${band}`));
  if (words.length < 2) return "";
  return sayUnchecked(language, "itemShape.bands", { value: words.slice(0, -1).join(" "), tolerance: words.at(-1) ?? "" });
}

/** Kits hold the gold kind, 5 % (common practice, no source). */
const usualTolerance = 0.05;
