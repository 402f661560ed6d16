// Expected values: IEC 60062:2016 and the worked examples of a public page on it (resistorcolorcodes.org).
import { expect, test } from "vitest";
import { type BandColour, colourBands, readBands } from "./colourCode.ts";
import { preferredValues } from "./preferredValues.ts";

const marked: [ohms: number, tolerance: number, bands: string][] = [
  [4700, 0.05, "yellow violet red gold"],
  [1000, 0.05, "brown black red gold"],
  [22_000, 0.05, "red red orange gold"],
  [10, 0.01, "brown black black gold brown"],
  [220, 0.05, "red red brown gold"],
  [220, 0.01, "red red black black brown"],
  [10_000, 0.01, "brown black black red brown"],
  [0.47, 0.05, "yellow violet silver gold"],
  [2.2, 0.1, "red red gold silver"],
  [1e6, 0.2, "brown black green"],
  [0.022, 0.05, "red red pink gold"],
];
for (const [ohms, tolerance, words] of marked) {
  const bands = words.split(" ") as BandColour[];
  test(`${ohms} Ω is ${words}`, () => expect(colourBands(ohms, tolerance)).toEqual(bands));
  test(`${words} is ${ohms} Ω`, () => expect(readBands(bands)).toEqual({ status: "read", ohms, tolerance }));
}

test("a sixth band changes nothing", () =>
  expect(readBands(["brown", "black", "black", "red", "brown", "red"])).toEqual({
    status: "read",
    ohms: 10_000,
    tolerance: 0.01,
  }));

const unreadable: [bands: BandColour[], outcome: object][] = [
  [["gold", "red", "red", "gold"], { status: "badBand", at: 0 }],
  [["red", "pink", "red", "gold"], { status: "badBand", at: 1 }],
  [["red", "red", "red", "black"], { status: "badBand", at: 3 }],
  [["red"], { status: "wrongCount", found: 1 }],
];
for (const [bands, outcome] of unreadable)
  test(`${bands.join(" ")} is no resistor`, () => expect(readBands(bands)).toEqual(outcome));

const unmarkable: [ohms: number, tolerance: number, why: string][] = [
  [123, 0.05, "three digits do not fit two bands"],
  [1234, 0.01, "four digits do not fit three"],
  [220, 0.03, "no band for ±3 %"],
  [0, 0.05, "nothing"],
  [1e12, 0.05, "too large"],
];
for (const [ohms, tolerance, why] of unmarkable)
  test(`${ohms} Ω has no bands: ${why}`, () => expect(colourBands(ohms, tolerance)).toEqual([]));

test("every value of E24 from 0.1 Ω to 10 MΩ survives marking and reading", () => {
  const values = preferredValues("E24", 0.1, 1e7);
  expect(values.length).toBe(8 * 24 + 1);
  for (const ohms of values)
    for (const tolerance of [0.01, 0.05, 0.1, 0.2])
      expect(readBands(colourBands(ohms, tolerance))).toEqual({ status: "read", ohms, tolerance });
});
