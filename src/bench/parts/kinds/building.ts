// What circuits are built with and looked at: breadboard, wire, cable, computer, meter. None of them stands in a circuit's nets.
// Does not know: holes and strips (bench/breadboard), which computer is charged (school/equipment).
import { beside } from "../footprints.ts";
import type { PartKind } from "../partKind.ts";

const plain = { legs: [], markedLeg: null, states: {}, model: () => [], limits: () => [], noticed: () => [] } as const;
const noFootprint = beside([], "no legs");

export const breadboard: PartKind = {
  ...plain,
  id: "breadboard",
  role: "building",
  parameters: {
    type: {
      unit: "word",
      words: ["half", "full"],
      usual: { value: "half", source: "common practice, no source: 400 holes" },
      tellsApart: "unlessUsual",
    },
  },
  footprint: noFootprint,
  figures: {
    contactOhms: { value: 0.01, source: "a new board measured by an engineer: about 9 mΩ a contact, 11 mΩ an inch of strip" },
    wornContactOhms: { value: 0.1, source: "50–200 mΩ, from memory" },
    mostAmps: { value: 1, source: "handbooks: not for loops above about 1 A" },
  },
  standIns: [{ part: "breadboard full", when: "always", source: "common practice, no source" }],
  price: "d",
  loss: "L1",
  cautions: [],
  meterTest: "rails-and-rows",
  source: "handbooks on breadboards; one measurement",
};

export const wire: PartKind = {
  ...plain,
  id: "wire",
  role: "building",
  parameters: {
    type: {
      unit: "word",
      words: ["male-male", "male-female"],
      usual: { value: "male-male", source: "common practice, no source" },
      tellsApart: "unlessUsual",
    },
  },
  footprint: noFootprint,
  figures: {
    ohms: { value: 0.0426 + 2 * 0.015, source: "ASTM B258: 20 cm of AWG 28 is 42.6 mΩ; two crimps of 10–20 mΩ, from memory" },
  },
  standIns: [],
  price: "a",
  loss: "L3",
  cautions: [],
  meterTest: "bends-and-holds",
  source: "ASTM B258; crimps from memory",
};

export const usbCable: PartKind = {
  ...plain,
  id: "usb-cable",
  role: "building",
  parameters: {},
  footprint: noFootprint,
  figures: {
    ohms: { value: 0.546, source: "1 m, power wires AWG 28 there and back 0.426 Ω (ASTM B258), 4 contacts of 30 mΩ" },
  },
  standIns: [],
  price: "d",
  loss: "L2",
  cautions: [],
  meterTest: "bends-and-holds",
  source: "ASTM B258; USB 2.0 allows AWG 20–28 for power",
};

export const computer: PartKind = {
  ...plain,
  id: "computer",
  role: "tool",
  parameters: {},
  footprint: noFootprint,
  figures: {},
  standIns: [],
  price: "f",
  loss: "L1",
  cautions: ["power-bank-care"],
  meterTest: null,
  source: "common practice, no source",
};

export const multimeter: PartKind = {
  ...plain,
  id: "multimeter",
  role: "tool",
  parameters: {},
  footprint: noFootprint,
  figures: {
    inputOhms: { value: 10e6, source: "from memory: 10 MΩ on volts, on some class meters 1 MΩ" },
    diodeTestVolts: { value: 1.5, source: "meter manuals: 1.5–3.2 V open" },
    continuityOhms: { value: 50, source: "meter manuals: sounds below 50 or 100 Ω" },
  },
  standIns: [],
  price: "f",
  loss: "L1",
  cautions: ["meter-fuse"],
  meterTest: null,
  source: "manuals of class meters",
};
