// Quantities as the trade writes them. Expected values: the SI prefixes (BIPM brochure) and IEC 60062 letter codes.
import { expect, test } from "vitest";
import { formatQuantity, parseQuantity, shortValue, type Unit } from "./quantity.ts";

const reads: [text: string | number, unit: Unit, value: number][] = [
  ["4k7", "Ω", 4700],
  ["4K7", "Ω", 4700],
  ["220 Ω", "Ω", 220],
  ["220", "Ω", 220],
  [220, "Ω", 220],
  ["220R", "Ω", 220],
  ["2R2", "Ω", 2.2],
  ["R47", "Ω", 0.47],
  ["1M", "Ω", 1e6],
  ["10 kΩ", "Ω", 10_000],
  ["10k\u2126", "Ω", 10_000],
  ["10 kohm", "Ω", 10_000],
  ["100n", "F", 1e-7],
  ["4n7", "F", 4.7e-9],
  ["2,2 µF", "F", 2.2e-6],
  ["2.2 \u03bcF", "F", 2.2e-6],
  ["2u2", "F", 2.2e-6],
  ["300ms", "s", 0.3],
  ["0s", "s", 0],
  ["1.5 s", "s", 1.5],
  ["20 mA", "A", 0.02],
  ["490 Hz", "Hz", 490],
  ["50%", "%", 0.5],
  ["50 %", "%", 0.5],
  [0.5, "%", 0.5],
  ["-5", "°C", -5],
  ["\u22125 °C", "°C", -5],
  ["1e3", "Ω", 1000],
  ["400", "lx", 400],
  ["3 lux", "lx", 3],
  ["5\u00a0V", "V", 5],
];
for (const [text, unit, value] of reads) {
  test(`${text} as ${unit}`, () => expect(parseQuantity(text, unit)).toEqual({ status: "read", value }));
}

const refused: [text: string, unit: Unit, status: string][] = [
  ["220 V", "Ω", "wrongUnit"],
  ["10 kV", "Ω", "wrongUnit"],
  ["5 apples", "V", "wrongUnit"],
  ["1 MHz", "s", "wrongUnit"],
  ["", "Ω", "notANumber"],
  ["k", "Ω", "notANumber"],
  ["Ω", "Ω", "notANumber"],
  ["abc", "Ω", "notANumber"],
  ["1.2.3", "Ω", "wrongUnit"],
  ["4k7k", "Ω", "wrongUnit"],
  ["1e999", "Ω", "notANumber"],
];
for (const [text, unit, status] of refused) {
  test(`refuses "${text}" as ${unit}`, () => expect(parseQuantity(text, unit).status).toBe(status));
}

const written: [value: number, unit: Unit, text: string][] = [
  [4700, "Ω", "4.7 kΩ"],
  [220, "Ω", "220 Ω"],
  [0.47, "Ω", "0.47 Ω"],
  [0.0139, "A", "13.9 mA"],
  [1e-7, "F", "100 nF"],
  [0.5, "%", "50 %"],
  [999.9, "Ω", "1 kΩ"],
  [-0.002, "A", "\u22122 mA"],
  [0, "V", "0 V"],
];
for (const [value, unit, text] of written)
  test(`${value} ${unit} is written ${text}`, () => expect(formatQuantity(value, unit)).toBe(text));
test("a comma where the language has one", () => expect(formatQuantity(4700, "Ω", { decimalMark: "," })).toBe("4,7 kΩ"));

const short: [value: number, unit: Unit, text: string][] = [
  [220, "Ω", "220"],
  [4700, "Ω", "4k7"],
  [10_000, "Ω", "10k"],
  [1e6, "Ω", "1M"],
  [2.2, "Ω", "2R2"],
  [0.47, "Ω", "0R47"],
  [1e-7, "F", "100n"],
  [4.7e-9, "F", "4n7"],
];
for (const [value, unit, text] of short)
  test(`${value} ${unit} is ${text} for short`, () => expect(shortValue(value, unit)).toBe(text));
for (const ohms of [1, 2.2, 4.7, 10, 100, 220, 330, 1000, 4700, 10_000, 1e6]) {
  test(`${ohms} Ω survives writing and reading`, () =>
    expect(parseQuantity(shortValue(ohms, "Ω"), "Ω")).toEqual({ status: "read", value: ohms }));
}
