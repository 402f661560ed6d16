// What the supplies share: two legs, and a voltage behind a resistance with a limit where there is one.
//
// Does not know: any supply, the board's fuse and regulator (boardFacts.ts).
import { practice } from "./definePart.ts";
import { beside } from "./footprints.ts";
import type { ElectricalModel, ParameterSpec, PartKind, PartValues, Sourced, SupplyFacts } from "./partKind.ts";

/** What every supply has. */
export const supplyCommon = {
  role: "supply",
  legs: ["plus", "minus"],
  alsoCalled: { "+": "plus", "-": "minus", red: "plus", black: "minus" },
  markedLeg: "plus",
  footprint: beside(["plus", "minus"], "stands beside the breadboard"),
} as const satisfies Partial<PartKind>;

/** The element of a supply is its own name, so that its current is told by part; its resistance is `name.inside`. */
export function supplyModel(facts: (values: PartValues) => SupplyFacts): ElectricalModel {
  return (name, node, values) => {
    const { volts, ohms, limitAmps } = facts(values);
    const [, usual] = volts.value;
    const legs = { plus: node("plus"), minus: node("minus") };
    if (limitAmps)
      return [{ kind: "limitedSource", id: name, ...legs, volts: usual, ohms: ohms.value, limitAmps: limitAmps.value }];
    const inside = `${name}.inside`;
    return [
      { kind: "voltageSource", id: name, plus: inside, minus: legs.minus, volts: usual },
      { kind: "resistor", id: inside, a: inside, b: legs.plus, ohms: ohms.value },
    ];
  };
}

/** A parameter in mA. */
export function milliamps(usual: number, source: string, more: Partial<ParameterSpec> = {}): ParameterSpec {
  return { unit: "A", bare: 0.001, usual: { value: usual, source }, least: 0.01, most: 20, ...more };
}

/** The resistance of a supply that a lesson may name. */
export function insideOhms(usual: number, source: string): ParameterSpec {
  return { unit: "Ω", usual: { value: usual, source }, least: 0.001, most: 1000 };
}

/** The resistance of a battery: 0 stands for that of its type. */
export const batteryOhms: ParameterSpec = { unit: "Ω", usual: { value: 0, source: "0: that of its type" }, least: 0, most: 1000 };

/** A figure that the part's own values give. */
export function given(value: number | string | undefined, source: string): Sourced<number> {
  return { value: Number(value), source };
}

/** Types by their name in IEC 60086. */
export function batteryType(words: readonly string[], usual: string, synonyms: Readonly<Record<string, string>>): ParameterSpec {
  return {
    unit: "word",
    words,
    synonyms,
    usual: { value: usual, source: `IEC 60086; the usual one: ${practice}` },
    tellsApart: "unlessUsual",
  };
}
