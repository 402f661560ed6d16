// How a value is written in a sentence, told by its name.
//
// The core's data name their unit ("limitAmps", "seconds"), so one table here replaces a hundred formats in the texts, and no
// sentence can show 0.04 where it means 40 mA. Days are recognised by their form, items by their name.
// Does not know: texts.
import { parseDay, type Unit } from "../base/index.ts";
import { itemName } from "./itemName.ts";
import { formatAmount, formatChance, formatClock, formatDay, formatList, formatNumber, type Language } from "./language.ts";
import { sayUnchecked } from "./say.ts";

/** Last word of a value's name, its unit, and what brings the number to that unit. */
const units: readonly (readonly [ending: RegExp, unit: Unit, factor: number])[] = [
  [/(^|[a-z])(amps|Amps)$/, "A", 1],
  [/(^|[a-z])(volts|Volts)$/, "V", 1],
  [/(^|[a-z])(ohms|Ohms)$/, "Ω", 1],
  [/(^|[a-z])(farads|Farads)$/, "F", 1],
  [/(^|[a-z])(henries|Henries)$/, "H", 1],
  [/(^|[a-z])(watts|Watts)$/, "W", 1],
  [/(^|[a-z])(hertz|Hertz|hz|Hz)$/, "Hz", 1],
  [/(^|[a-z])(seconds|Seconds)$/, "s", 1],
  [/^ms$|[a-z]Ms$/, "s", 1e-3],
  [/(^|[a-z])(micros|Micros)$/, "s", 1e-6],
  [/(^|[a-z])(lux|Lux)$/, "lx", 1],
  [/(^|[a-z])(celsius|Celsius)$/, "°C", 1],
  [/(^|[a-z])(centimetres|Centimetres)$/, "cm", 1],
  [/(^|[a-z])(share|Share|duty|Duty|turn|percent)$/, "%", 1],
  [/^[xy]$/, "%", 1],
];

/** Values that are items of stock. */
const items = /^(item|items|insteadOf|substitute|supply|supplies)$/;
/** Letters of Hebrew, Arabic and their neighbours: such a value is isolated, so that it does not turn the sentence round (UAX 9). */
const rightToLeft = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufeff]/;
/** What somebody wrote, or was meant to write: it stands in quotes, so that it is not read as our words. */
const quoted = /^(found|near|understood|field)$/;
/** Minutes after midnight. */
const clocks = /^(start|end|clock|fromClock|toClock)$/;

/** @returns the value as people read it; a dash where there is none. `data` may hold a `unit` for `value`, `limit` and their like. */
export function shownValue(language: Language, name: string, value: unknown, data: Readonly<Record<string, unknown>>): string {
  if (value === null || value === undefined || value === "") return "—";
  if (Array.isArray(value) && value.length > 0 && value.every((v) => Number.isInteger(v)))
    return formatList(language, runs(language, value as number[]));
  if (Array.isArray(value))
    return formatList(
      language,
      value.map((v) => shownValue(language, name, v, data)),
    );
  if (typeof value === "number") return shownNumber(language, name, value, data);
  if (typeof value === "string") {
    const day = parseDay(value);
    if (day !== null) return formatDay(language, day);
    if (name === "sitting") return sittingName(language, value);
    if (items.test(name) && isItem(language, value)) return itemName(language, value);
    const word = shownWord(language, name, value, data);
    if (word !== null) return word;
    if (quoted.test(name)) return sayUnchecked(language, "quote.text", { text: value });
    return language.direction === "rtl" || rightToLeft.test(value) ? `\u2068${value}\u2069` : value;
  }
  return String(value);
}

/** "7 to 10" for 7, 8, 9, 10; two neighbours stay apart. */
function runs(language: Language, numbers: readonly number[]): string[] {
  const out: [first: number, last: number][] = [];
  for (const n of numbers) {
    const open = out.at(-1);
    if (open && open[1] === n - 1) open[1] = n;
    else out.push([n, n]);
  }
  return out.flatMap(([first, last]) => {
    if (last - first > 1) return [sayUnchecked(language, "run.of", { first, last })];
    return first === last ? [formatNumber(language, first)] : [formatNumber(language, first), formatNumber(language, last)];
  });
}

/** "7b, barrier, 4 March" for the id 7b/barrier/2027-03-04; anything else is a name already. */
function sittingName(language: Language, id: string): string {
  const parts = /^([^/]+)\/(.+)\/(\d{4}-\d\d-\d\d)$/.exec(id);
  const day = parseDay(parts?.[3] ?? "");
  if (!parts || day === null) return id;
  return sayUnchecked(language, "sitting.of", { class: parts[1], lesson: parts[2], day: formatDay(language, day, "short") });
}

/** A key and not yet its name, which may be put in as well. */
function isItem(language: Language, value: string): boolean {
  return language.text(`item.${value.split(" ")[0]}`) !== null;
}

/** Codes that stand as a value in another text: what was seen, a verdict, the shape that a file should have. */
function shownWord(language: Language, name: string, value: string, data: Readonly<Record<string, unknown>>): string | null {
  if (name === "verdict" && language.text(`verdict.${value}`) !== null) return sayUnchecked(language, `verdict.${value}`);
  if (name === "hazard") return sayUnchecked(language, `hazard.${value}`, { ...data, hazard: null });
  if (name === "why") {
    const reasons = value.split(", ");
    if (reasons.some((reason) => language.text(`supplyWhy.${reason}`) === null)) return null;
    return formatList(
      language,
      reasons.map((reason) => sayUnchecked(language, `supplyWhy.${reason}`)),
    );
  }
  if (name !== "expected" && name !== "seen") return null;
  const degrees = /^(-?[\d.]+) degrees$/.exec(value);
  if (degrees) return sayUnchecked(language, "seen.degrees", { degrees: Number(degrees[1]) });
  if (language.text(`seen.${value}`) !== null) return sayUnchecked(language, `seen.${value}`);
  if (name === "seen") return null;
  const bound = /^([<>])=(-?[\d.]+)$/.exec(value);
  if (bound) return sayUnchecked(language, bound[1] === ">" ? "shape.atLeast" : "shape.atMost", { bound: Number(bound[2]) });
  return language.text(`shape.${value}`) === null ? null : sayUnchecked(language, `shape.${value}`);
}

function shownNumber(language: Language, name: string, value: number, data: Readonly<Record<string, unknown>>): string {
  if (name === "chance" || (name === "wanted" && "chance" in data)) return formatChance(language, value);
  if (clocks.test(name) || (/^(from|to)$/.test(name) && "minutes" in data)) return formatClock(language, value);
  // Nobody plans by the minute how long a battery lasts.
  if (name === "hours") return formatNumber(language, Number(value.toPrecision(2)));
  const own = data.unit;
  if (typeof own === "string" && /^(value|limit|least|most|is)$/.test(name) && ownUnits.has(own))
    return formatAmount(language, value, own as Unit);
  const known = units.find(([ending]) => ending.test(name));
  if (known) return formatAmount(language, value * known[2], known[1]);
  return formatNumber(language, value);
}

const ownUnits: ReadonlySet<string> = new Set<Unit>([
  "Ω",
  "F",
  "H",
  "V",
  "A",
  "W",
  "s",
  "Hz",
  "lx",
  "°C",
  "cm",
  "Ah",
  "g",
  "%",
  "1",
]);
