// What feeds the board: the computer's port, an adapter, a power bank, batteries. Each has legs, so that a lesson may also feed
// something else from it; named in no circuit, a supply is plugged in where it belongs.
// Does not know: the board's fuse and regulator (boardFacts.ts), how long a lesson is.
import type { Element } from "../../circuit/index.ts";
import { beside } from "../footprints.ts";
import type { ElectricalModel, PartKind, PartValues, Sourced, SupplyFacts } from "../partKind.ts";

/** A voltage behind its resistance, and a limit where there is one. */
function modelOf(facts: (values: PartValues) => SupplyFacts): ElectricalModel {
  return (name, node, values): readonly Element[] => {
    const { volts, ohms, limitAmps } = facts(values);
    const [, usual] = volts.value;
    if (limitAmps)
      return [
        {
          kind: "limitedSource",
          id: name,
          plus: node("plus"),
          minus: node("minus"),
          volts: usual,
          ohms: ohms.value,
          limitAmps: limitAmps.value,
        },
      ];
    return [
      { kind: "voltageSource", id: name, plus: `${name}.inside`, minus: node("minus"), volts: usual },
      { kind: "resistor", id: `${name}.inside`, a: `${name}.inside`, b: node("plus"), ohms: ohms.value },
    ];
  };
}

const common = {
  role: "supply",
  legs: ["plus", "minus"],
  markedLeg: "plus",
  states: {},
  footprint: beside(["plus", "minus"], "stands beside the breadboard"),
  figures: {},
  limits: () => [],
  noticed: () => [],
  standIns: [],
} as const;

const milliamps = (usual: number, source: string, more: object = {}) => ({
  unit: "A" as const,
  bare: 0.001,
  usual: { value: usual, source },
  least: 0.01,
  most: 20,
  ...more,
});
const ohms = (usual: number, source: string) => ({
  unit: "Ω" as const,
  usual: { value: usual, source },
  least: 0.001,
  most: 1000,
});
const given = (value: number | string | undefined, source: string): Sourced<number> => ({ value: Number(value), source });

const usbFacts = (values: PartValues): SupplyFacts => ({
  into: "USB",
  volts: { value: [4.75, 5, 5.25], source: "USB 2.0, table 7-7: 4.75–5.25 V at a high-power port" },
  ohms: given(values.ohms, "from memory: switch and tracks of a port"),
  limitAmps: given(values.milliamps, "USB 2.0, section 7.2.1: 500 mA after configuration; USB 3: 900 mA"),
  ampHours: null,
  offBelowAmps: null,
  offAfterSeconds: null,
});

export const usbPort: PartKind = {
  ...common,
  id: "usb-port",
  parameters: {
    milliamps: milliamps(0.5, "USB 2.0, section 7.2.1", { tellsApart: true }),
    ohms: ohms(0.1, "from memory"),
  },
  model: modelOf(usbFacts),
  supply: usbFacts,
  price: "f",
  loss: "L1",
  cautions: [],
  meterTest: "supply-voltage",
  source: "USB 2.0 specification",
};

const adapterFacts = (values: PartValues): SupplyFacts => ({
  // Above 6.0 V only the regulator can take it.
  into: Number(values.volts) > 6 ? "VIN" : "USB",
  volts: {
    value: [Number(values.volts) * 0.95, Number(values.volts), Number(values.volts) * 1.05],
    source: "as printed on it, ±5 %: common practice, no source",
  },
  ohms: given(values.ohms, "from memory: its cord"),
  limitAmps: given(values.milliamps, "as printed on it"),
  ampHours: null,
  offBelowAmps: null,
  offAfterSeconds: null,
});

export const adapter: PartKind = {
  ...common,
  id: "adapter",
  parameters: {
    milliamps: milliamps(1, "common practice, no source", { tellsApart: true }),
    volts: {
      unit: "V",
      usual: { value: 5, source: "common practice, no source: an adapter with a USB socket" },
      least: 3,
      most: 24,
      tellsApart: "unlessUsual",
    },
    ohms: ohms(0.1, "from memory"),
  },
  model: modelOf(adapterFacts),
  supply: adapterFacts,
  price: "e",
  loss: "L1",
  cautions: ["mains-adapter"],
  meterTest: "supply-voltage",
  source: "common practice, no source",
};

const powerBankFacts = (values: PartValues): SupplyFacts => ({
  into: "USB",
  volts: { value: [4.75, 5, 5.25], source: "USB 2.0, table 7-7" },
  ohms: given(values.ohms, "from memory: its converter"),
  limitAmps: given(values.milliamps, "as printed on it"),
  ampHours: given(
    values["amp-hours"],
    "10 000 mAh at 3.7 V are 7400 mAh at 5 V; 80–90 % of them arrive: 5920–6660 mAh, their middle",
  ),
  offBelowAmps: given(values["off-below-milliamps"], "a few tens of mA: common practice, no standard"),
  offAfterSeconds: { value: 30, source: "5–120 s: common practice, no standard" },
});

export const powerBank: PartKind = {
  ...common,
  id: "power-bank",
  parameters: {
    milliamps: milliamps(2, "common practice, no source", { tellsApart: "unlessUsual" }),
    "off-below-milliamps": { ...milliamps(0.06, "from memory: below 60 mA it may switch off within a minute"), least: 0 },
    "amp-hours": {
      unit: "Ah",
      usual: { value: 6.29, source: "10 000 mAh of cells: 5920–6660 mAh at 5 V" },
      least: 0.1,
      most: 100,
    },
    ohms: ohms(0.1, "from memory"),
  },
  model: modelOf(powerBankFacts),
  supply: powerBankFacts,
  price: "f",
  loss: "L1",
  cautions: ["power-bank-care"],
  meterTest: "supply-voltage",
  source: "sellers' explanations of capacity; common practice",
};

/** Fresh 9 V blocks by their name in IEC 60086. */
const blocks: Readonly<Record<string, { ohms: Sourced<number>; ampHours: Sourced<number> }>> = {
  "6LR61": {
    ohms: { value: 1.7, source: "data sheet MN1604: 1.7 Ω at 1 kHz when fresh" },
    ampHours: { value: 0.55, source: "battery tables: 500–600 mAh to 6.0 V at low drain" },
  },
  "6F22": {
    ohms: { value: 25, source: "10–35 Ω when fresh, from memory" },
    ampHours: { value: 0.35, source: "battery tables: 300–400 mAh at low drain" },
  },
};

const blockFacts = (values: PartValues): SupplyFacts => {
  const block = blocks[String(values.type)] ?? blocks["6LR61"]!;
  return {
    into: "VIN",
    volts: { value: [7, 9, 9.6], source: "six cells of 1.5 V (IEC 60086); 9.6 V new and 7 V near its end from memory" },
    ohms: values.ohms === 0 || values.ohms === undefined ? block.ohms : given(values.ohms, "the lesson"),
    limitAmps: null,
    ampHours: block.ampHours,
    offBelowAmps: null,
    offAfterSeconds: null,
  };
};

export const battery9v: PartKind = {
  ...common,
  id: "battery-9v",
  parameters: {
    type: {
      unit: "word",
      words: ["6LR61", "6F22"],
      synonyms: { alkaline: "6LR61", "zinc-carbon": "6F22" },
      usual: { value: "6LR61", source: "IEC 60086: alkaline, six round cells" },
      tellsApart: "unlessUsual",
    },
    ohms: { ...ohms(0, "0: as its type has"), least: 0 },
  },
  model: modelOf(blockFacts),
  supply: blockFacts,
  price: "d",
  loss: "L3",
  cautions: ["shorted-battery"],
  meterTest: "loaded-voltage",
  source: "data sheet MN1604; IEC 60086",
};

/** Four AA cells in a holder. */
const fours: Readonly<Record<string, Pick<SupplyFacts, "into" | "volts" | "ohms" | "ampHours">>> = {
  // 6.4 V is above the chip's 6.0 V, so they go through the regulator, which then has too little: the rehearsal says so.
  alkaline: {
    into: "VIN",
    volts: { value: [4.0, 6, 6.4], source: "4 × 1.0–1.60 V (LR6 product specification: 1.60 V open when fresh)" },
    ohms: { value: 4 * 0.25, source: "LR6: at most 0.40 Ω by its specification, 0.15–0.3 Ω from memory; four in series" },
    ampHours: { value: 2.2, source: "LR6 product specification: 2200 mAh at 43 Ω, 4 h a day, to 0.9 V" },
  },
  nimh: {
    into: "5V",
    volts: { value: [4.4, 5, 5.6], source: "4 × 1.1–1.4 V: from memory" },
    ohms: { value: 4 * 0.05, source: "from memory; four in series" },
    ampHours: { value: 1.9, source: "from memory" },
  },
};

const fourFacts = (values: PartValues): SupplyFacts => {
  const four = fours[String(values.type)] ?? fours.alkaline!;
  return {
    ...four,
    ohms: values.ohms === 0 || values.ohms === undefined ? four.ohms : given(values.ohms, "the lesson"),
    limitAmps: null,
    offBelowAmps: null,
    offAfterSeconds: null,
  };
};

export const battery4aa: PartKind = {
  ...common,
  id: "battery-4aa",
  parameters: {
    type: {
      unit: "word",
      words: ["alkaline", "nimh"],
      synonyms: { LR6: "alkaline", HR6: "nimh" },
      usual: { value: "alkaline", source: "IEC 60086: LR6" },
      tellsApart: "unlessUsual",
    },
    ohms: { ...ohms(0, "0: as its type has"), least: 0 },
  },
  model: modelOf(fourFacts),
  supply: fourFacts,
  price: "d",
  loss: "L3",
  cautions: ["shorted-battery"],
  meterTest: "loaded-voltage",
  source: "LR6 product specification; IEC 60086",
};
