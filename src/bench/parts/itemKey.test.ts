// Keys of items: as the class's lists write them, and back.
import { expect, test } from "vitest";
import { catalogue } from "./catalogue.ts";
import { itemKey, parseItemKey, tellingParameters } from "./itemKey.ts";

const keys: [kind: string, values: Record<string, number | string>, key: string][] = [
  ["resistor", { ohms: 220 }, "resistor 220"],
  ["resistor", { ohms: 4700 }, "resistor 4k7"],
  ["resistor", { ohms: 2.2 }, "resistor 2R2"],
  ["led", {}, "led red"],
  ["led", { colour: "green" }, "led green"],
  ["led", { colour: "green", type: "emerald" }, "led green emerald"],
  ["potentiometer", {}, "potentiometer 10k"],
  ["photoresistor", {}, "photoresistor"],
  ["button", {}, "button"],
  ["servo", {}, "servo"],
  ["usb-port", {}, "usb-port 500mA"],
  ["usb-port", { milliamps: 0.9 }, "usb-port 900mA"],
  ["adapter", {}, "adapter 1000mA"],
  ["adapter", { milliamps: 2, volts: 9 }, "adapter 2000mA 9V"],
  ["power-bank", {}, "power-bank"],
  ["battery-9v", {}, "battery-9v"],
  ["battery-9v", { type: "6F22" }, "battery-9v 6F22"],
  ["battery-4aa", { type: "nimh" }, "battery-4aa nimh"],
  ["wire", {}, "wire"],
  ["board", {}, "board"],
  ["breadboard", {}, "breadboard"],
  ["usb-cable", {}, "usb-cable"],
];
for (const [kind, values, key] of keys)
  test(`${key}`, () => {
    expect(itemKey(kind, values)).toBe(key);
    const parsed = parseItemKey(key);
    expect(parsed?.kind).toBe(kind);
    expect(parsed?.values).toMatchObject(values);
    expect(itemKey(parsed!.kind, parsed!.values)).toBe(key);
  });

const spellings: [written: string, key: string][] = [
  ["resistor 4700", "resistor 4k7"],
  ["resistor 4.7k", "resistor 4k7"],
  ["resistor  220Ω", "resistor 220"],
  ["led", "led red"],
  ["adapter 1A", "adapter 1000mA"],
  ["adapter 9V", "adapter 1000mA 9V"],
  ["battery-4aa HR6", "battery-4aa nimh"],
];
for (const [written, key] of spellings)
  test(`"${written}" is ${key}`, () => {
    const parsed = parseItemKey(written);
    expect(itemKey(parsed!.kind, parsed!.values)).toBe(key);
  });

const none = [
  "",
  "resistor",
  "resistor red",
  "resistor 220 330",
  "led violet",
  "lamp",
  "button 5",
  "adapter 9",
  "resistor -5",
  "__proto__",
];
for (const text of none) test(`"${text}" is no item`, () => expect(parseItemKey(text)).toBe(null));

test("every key of the catalogue comes back as itself", () => {
  for (const kind of catalogue.values()) {
    // Every way to set the parameters that tell apart: words all, numbers usual or a value of E12.
    let ways: Record<string, number | string>[] = [{}];
    for (const [name, spec] of tellingParameters(kind)) {
      const numbers = [Number(spec.usual?.value ?? 0), 4.7, 0.47, 12];
      const options =
        spec.unit === "word" ? (spec.words ?? []) : numbers.filter((x) => x >= (spec.least ?? 0) && x <= (spec.most ?? 99));
      ways = ways.flatMap((way) => options.map((option) => ({ ...way, [name]: option })));
    }
    for (const way of ways) {
      const key = itemKey(kind.id, way);
      const parsed = parseItemKey(key);
      expect(parsed, key).not.toBe(null);
      expect(itemKey(parsed!.kind, parsed!.values)).toBe(key);
    }
  }
});
