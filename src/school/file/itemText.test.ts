// Items as pages and people write them: what the app shows must be taken back, and the words of a market stall too.
import { expect, test } from "vitest";
import catalogue from "../../../locales/en.json" with { type: "json" };
import { looseItem, readItem } from "./itemText.ts";

const written: [text: string, item: string][] = [
  ["mains adapter, 1 A", "adapter 1000mA"],
  ["mains adapter 1 A", "adapter 1000mA"],
  ["mains adapters, 2 A", "adapter 2000mA"],
  ["LED, red", "led red"],
  ["LEDs, red", "led red"],
  ["resistors, 4.7 kΩ", "resistor 4k7"],
  ["resistors, 4.7\u00a0kΩ", "resistor 4k7"],
  ["resistor, 220\u202fΩ", "resistor 220"],
  ["9 V battery", "battery-9v"],
  ["9V batteries", "battery-9v"],
  ["battery, 9 V block", "battery-9v"],
  ["battery holders, 4 cells AA", "battery-4aa"],
  ["USB cables", "usb-cable"],
  ["data cable", "usb-cable"],
  ["power banks", "power-bank"],
  ["laptops", "computer"],
  ["push buttons", "button"],
  ["LED, green, blue-green kind", "led green emerald"],
  ["capacitors, 100 nF", "capacitor 100n"],
  ["potentiometer, 10 kΩ", "potentiometer 10k"],
  ["jumper wires", "wire"],
];
for (const [text, item] of written) test(`“${text}” is ${item}`, () => expect(readItem(text) ?? looseItem(text)).toBe(item));

const nothing = ["teapot", "cable car", "9 V", "mains", "", "adapter, green"];
for (const text of nothing) test(`“${text}” is no item`, () => expect(looseItem(text)).toBeNull());

// Every name of a kind that the page shows names no other kind: "{n, plural, one {LED} other {LEDs}}".
for (const [kind, shown] of Object.entries(catalogue.parts.item))
  for (const name of [/one \{([^}]*)\}/.exec(shown)?.[1], /other \{([^}]*)\}/.exec(shown)?.[1]]) {
    const key = readItem(kind);
    if (name === undefined || key === null) continue;
    test(`the shown name “${name}” is read back`, () => expect(looseItem(name)).toBe(key));
  }
