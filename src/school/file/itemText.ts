// An item as people write it, brought to the one key that all files and rooms use.
//
// "resistor 4.7k" and "resistor 4k7" are the same thing in the cupboard; if they were two items, one of them would be short.
// Does not know: how many there are, where they lie.
import { near } from "../../base/index.ts";
import { catalogue, itemKey, parseItemKey, partNames, tellingParameters } from "../../bench/parts/index.ts";
import type { ItemKey } from "./classFile.ts";

/** @returns the key of the item that the text names, or null. */
export function readItem(text: string): ItemKey | null {
  const parsed = parseItemKey(text);
  return parsed ? itemKey(parsed.kind, parsed.values) : null;
}

/**
 * @returns the item of a text as a shop or a spreadsheet writes it: "220 Ω resistor", "LED, red", "Buttons". Words may stand
 * in any order and case, kinds in the plural, units apart from their number. Null if that does not make an item.
 */
export function looseItem(text: string): ItemKey | null {
  const words = inKeyWords(text.slice(0, 200))
    .replace(/(\d)\s+(?=(?:[kKMµunmp]?(?:Ω|\u2126|ohms?|F|V|A))(?:\s|,|$))/g, "$1")
    .split(/[\s,]+/)
    .filter((word) => word !== "");
  for (const [i, word] of words.entries()) {
    const kind = kindOf(word);
    if (kind === null) continue;
    const rest = words.filter((_, j) => j !== i);
    const item = readItem([kind, ...rest].join(" ")) ?? readItem([kind, ...rest.map((w) => w.toLowerCase())].join(" "));
    if (item !== null) return item;
  }
  const joined = kindOf(words.join("-"));
  return joined === null ? null : readItem(joined);
}

/**
 * What people and pages call a kind or a type, where that is not the word of its key. In English, as a pattern; the longer first
 * (common practice, no source).
 */
const usualWords: readonly (readonly [pattern: string, keyWord: string])[] = [
  ["(?:mains|wall|power) adapters?", "adapter"],
  ["mains plugs?", "adapter"],
  ["batter(?:y|ies),? 9 ?v(?: block)?", "battery-9v"],
  ["9 ?v (?:block )?batter(?:y|ies)", "battery-9v"],
  ["battery holders?,? 4 cells aa", "battery-4aa"],
  ["4 ?(?:x|×)? ?aa batter(?:y|ies)", "battery-4aa"],
  ["(?:usb|data) (?:data )?cables?", "usb-cable"],
  ["usb ports?", "usb-port"],
  ["power ?banks?", "power-bank"],
  ["(?:laptop|notebook)s?", "computer"],
  ["(slide|tilt|reed) switch(?:es)?", "$1-switch"],
  ["push ?buttons?", "button"],
  ["(?:jumper|jump) wires?", "wire"],
  ["bread ?boards?", "breadboard"],
  ["rgb leds?", "rgb-led"],
  ["bars? of ten leds", "bar-graph"],
  ["zener diodes?", "zener"],
  ["schottky diodes?", "schottky"],
  ["(npn|pnp) transistors?", "$1"],
  ["n-channel mosfets?", "nmos"],
  ["piezo sounders?", "piezo"],
  ["(active|magnetic) buzzers?", "$1-buzzer"],
  ["loudspeakers?", "speaker"],
  ["dc motors?", "dc-motor"],
  ["geared steppers?", "stepper"],
  ["seven-segment digits?", "seven-segment"],
  ["ultrasonic distance sensors?", "ultrasonic"],
  ["motion sensors?", "motion"],
  ["infrared receivers?", "ir-receiver"],
  ["temperature sensors?, 10 mv a degree", "temperature-10mv"],
  ["humidity sensors?", "humidity"],
  ["displays?, 2 lines of 16", "display-16x2"],
  ["electrolytic capacitors?", "electrolytic"],
  ["(?:shift registers?|drivers?|motor drivers?) (74hc595|uln2003a|l293d)", "$1"],
  ["blue-green kind", "emerald"],
  ["usual kind", "standard"],
  ["common (anode|cathode)", "$1"],
  ["(full|half) size", "$1"],
  ["pin to socket", "male-female"],
  ["pin to pin", "male-male"],
  ["rechargeable", "nimh"],
];

/** Made once: a table may have twenty thousand rows. */
const usualPatterns = usualWords.map(
  ([pattern, word]) => [new RegExp(`(?<![\\p{L}\\d-])(?:${pattern})(?![\\p{L}\\d-])`, "giu"), word] as const,
);

/** The text with its usual words made those of keys. */
function inKeyWords(text: string): string {
  return usualPatterns.reduce((said, [pattern, word]) => said.replace(pattern, word), text.replace(/\s+/g, " "));
}

/** @returns the item that was probably meant by a text that names none, or its kind alone, or null. */
export function nearItem(text: string): string | null {
  const loose = looseItem(text);
  if (loose !== null) return loose;
  const [first = "", ...rest] = text.trim().split(/\s+/, 8);
  const kind = kindOf(first) ?? near(first, partNames) ?? near(text.trim().replace(/\s+/g, "-"), partNames);
  if (kind === null) return null;
  const found = catalogue.get(kind);
  const words = found ? tellingParameters(found).flatMap(([, spec]) => spec.words ?? []) : [];
  return looseItem([kind, ...rest].join(" ")) ?? readItem([kind, ...rest.map((w) => near(w, words) ?? w)].join(" ")) ?? kind;
}

/** A kind's name in any case, or in the plural of English. */
function kindOf(word: string): string | null {
  const lower = word.toLowerCase();
  const names = new Set([lower, lower.replace(/s$/, ""), lower.replace(/es$/, ""), lower.replace(/ies$/, "y")]);
  return partNames.find((name) => names.has(name.toLowerCase())) ?? null;
}
