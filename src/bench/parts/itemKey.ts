// The key of an item of stock: kind, then what tells it apart, by blanks: "resistor 4k7", "led green emerald", "usb-port 500mA".
//
// Two parts with one key may be taken for each other without a thought. Keys are what kits, stock, orders and rehearsals share.
// Does not know: how many there are, what they cost.
import { parseQuantity, shortValue } from "../../base/index.ts";
import { allValues, catalogue, findKind } from "./catalogue.ts";
import type { ParameterSpec, PartKind, PartValues } from "./partKind.ts";

/** The parameters that tell a kind's items apart, in the order of the key. */
export function tellingParameters(kind: PartKind): readonly (readonly [name: string, spec: ParameterSpec])[] {
  return Object.entries(kind.parameters).filter(([, spec]) => spec.tellsApart !== undefined);
}

/** @returns the key; values that are not given are the usual ones. An unknown kind is its own key. */
export function itemKey(kindId: string, values: PartValues): string {
  const kind = catalogue.get(kindId);
  if (!kind) return kindId;
  const all = allValues(kind, values);
  const words = tellingParameters(kind).flatMap(([name, spec]) => {
    const value = all[name];
    if (value === undefined || (spec.tellsApart === "unlessUsual" && value === spec.usual?.value)) return [];
    return [keyWord(value, spec)];
  });
  return [kind.id, ...words].join(" ");
}

/**
 * Reads a key, also one written a little differently ("resistor 4700", "BC547", "adapter 1A").
 *
 * @returns the kind's id and all its values, or null if it is no item. `itemKey` of the result is the proper key.
 */
export function parseItemKey(text: string): { readonly kind: string; readonly values: PartValues } | null {
  const [first = "", ...words] = text.trim().split(/\s+/, 8);
  const found = findKind(first);
  if (!found) return null;
  const { kind } = found;
  const given: Record<string, number | string> = found.type === null ? {} : { type: found.type };
  const left = tellingParameters(kind).filter(([name]) => !(name in given));
  for (const word of words) {
    const at = left.findIndex(([, spec]) => readKeyWord(word, spec) !== null);
    if (at === -1) return null;
    const [name, spec] = left[at]!;
    given[name] = readKeyWord(word, spec)!;
    // The words of a key keep the order of the parameters; those passed over have their usual value.
    left.splice(0, at + 1);
  }
  if (tellingParameters(kind).some(([name, spec]) => spec.usual === null && !(name in given))) return null;
  return { kind: kind.id, values: allValues(kind, given) };
}

function keyWord(value: number | string, spec: ParameterSpec): string {
  if (typeof value === "string" || spec.unit === "word") return String(value);
  if (spec.unit === "A") return `${Number((value * 1000).toPrecision(6))}mA`;
  if (spec.unit === "V") return `${Number(value.toPrecision(6))}V`;
  return shortValue(value, spec.unit);
}

function readKeyWord(word: string, spec: ParameterSpec): number | string | null {
  if (spec.unit === "word") {
    const meant = spec.synonyms?.[word] ?? word;
    return spec.words?.includes(meant) ? meant : null;
  }
  // A unit must stand there where a key has several numbers.
  if ((spec.unit === "A" || spec.unit === "V") && !word.endsWith(spec.unit)) return null;
  const outcome = parseQuantity(word, spec.unit);
  if (outcome.status !== "read" || outcome.value < (spec.least ?? -Infinity) || outcome.value > (spec.most ?? Infinity))
    return null;
  return outcome.value;
}
