// The kinds of thing that a person can choose, and their keys as the catalogue of parts writes them.
import { expect, test } from "vitest";
import { catalogue, itemKey, parseItemKey, tellingParameters } from "../../../bench/parts/index.ts";
import { itemKinds, itemText, supplyKinds, type Telling } from "./itemKinds.ts";

/** Counted one by one, or not a thing that can be bought. */
const elsewhere = ["board", "usb-cable", "computer", "usb-port"];

test("the list of kinds is the catalogue's", () => {
  const known = [...catalogue.values()].filter((kind) => !elsewhere.includes(kind.id));
  const fromCatalogue = known.map((kind) => [
    kind.id,
    tellingParameters(kind).map(([, spec]): Telling => {
      const needed = spec.tellsApart !== "unlessUsual";
      return spec.unit === "word"
        ? { ask: "word", words: spec.words ?? [], needed }
        : { ask: "value", unit: spec.unit as "Ω", needed };
    }),
  ]);
  const ours = [...itemKinds, ...supplyKinds];
  const byKind = (a: unknown[], b: unknown[]) => String(a[0]).localeCompare(String(b[0]));
  expect([...ours].sort(byKind)).toEqual(fromCatalogue.sort(byKind));
});

// The keys are those of the catalogue's own notation (bench/parts/itemKey.ts).
const cases: [kind: string, answers: string[], key: string][] = [
  ["resistor", ["220"], "resistor 220"],
  ["resistor", ["220 Ω"], "resistor 220"],
  ["resistor", ["4,7 k"], "resistor 4k7"],
  ["resistor", ["4k7"], "resistor 4k7"],
  ["resistor", ["10 kΩ"], "resistor 10k"],
  ["led", ["red", ""], "led red"],
  ["led", ["green", "emerald"], "led green emerald"],
  ["capacitor", ["100n"], "capacitor 100n"],
  ["capacitor", ["100 nF"], "capacitor 100n"],
  ["adapter", ["2000", ""], "adapter 2000mA"],
  ["adapter", ["2 A", ""], "adapter 2000mA"],
  ["adapter", ["1000", "9"], "adapter 1000mA 9V"],
  ["photoresistor", [], "photoresistor"],
  ["breadboard", ["half"], "breadboard"],
  ["zener", ["5,1"], "zener 5.1V"],
];
for (const [kind, answers, key] of cases)
  test(`${kind} ${answers.join(" ")} is ${key}`, () => {
    const parsed = parseItemKey(itemText(kind, answers));
    expect(parsed && itemKey(parsed.kind, parsed.values)).toBe(key);
  });
