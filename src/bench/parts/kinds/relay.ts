// A relay of 5 V with a changeover contact. Its legs do not fit the breadboard. Never mains in class.
//
// Whether its contact is pulled follows from the coil's voltage with a memory in between: the rehearsal keeps `pulled`.
// Does not know: the 10 ms it takes, bounce.

import type { Element } from "../../circuit/index.ts";
import { definePart, practice } from "../definePart.ts";
import { beside } from "../footprints.ts";
import type { PartState } from "../partKind.ts";

const page = "data pages of the SRD-05 class";
const figures = {
  contactOhms: { value: 0.1, source: "from memory: at most 0.1 Ω" },
  pullInShare: { value: 0.75, source: `${page}: pulls at 3.75 V of 5 V or less` },
  dropOutShare: { value: 0.1, source: `${page}: drops at 0.5 V of 5 V or more` },
};

const contact = (name: string, node: (leg: string) => string, state: PartState): Element => ({
  kind: "resistor",
  id: `${name}.contact`,
  a: node("common"),
  b: node(state.pulled ? "no" : "nc"),
  ohms: figures.contactOhms.value,
});

export const relay = definePart({
  id: "relay",
  legs: ["coil1", "coil2", "common", "no", "nc"],
  markedLeg: "common",
  parameters: {
    "coil-ohms": {
      unit: "Ω",
      usual: { value: 70, source: `${page}: 70 Ω ± 10 %` },
      least: 5,
      most: 10_000,
      tolerance: { value: 0.1, source: `${page}: 70 Ω ± 10 %` },
    },
    "coil-volts": { unit: "V", usual: { value: 5, source: page }, least: 1, most: 48, tellsApart: "unlessUsual" },
    "coil-henries": { unit: "H", usual: { value: 0.2, source: "from memory: 0.1–0.3 H" }, least: 0.0001, most: 10 },
  },
  states: { pulled: { unit: "yes-no", atFirst: false, inner: true } },
  footprint: beside(["coil1", "coil2", "common", "no", "nc"], "its legs stand on no grid of 2.54 mm: from memory"),
  figures,
  model: (name, node, values, state) => [
    { kind: "resistor", id: `${name}.coil`, a: node("coil1"), b: node("coil2"), ohms: Number(values["coil-ohms"]) },
    contact(name, node, state),
  ],
  inTime: (name, node, values, state) => [
    { kind: "resistor", id: `${name}.coil`, a: node("coil1"), b: `${name}.inside`, ohms: Number(values["coil-ohms"]) },
    { kind: "inductor", id: `${name}.winding`, a: `${name}.inside`, b: node("coil2"), henries: Number(values["coil-henries"]) },
    contact(name, node, state),
  ],
  limits: (values) => [
    {
      what: "amps",
      element: "contact",
      caution: { value: 1, source: `${practice}: in class at most 1 A and 12 V` },
      unsafe: { value: 10, source: `${page}: 10 A at 30 V` },
    },
    {
      what: "volts",
      element: "coil",
      caution: { value: Number(values["coil-volts"]) * 1.1, source: "from memory: 10 % above its coil's voltage" },
    },
  ],
  noticed: (values) => [
    {
      sense: "contact",
      element: "coil",
      pullInVolts: Number(values["coil-volts"]) * figures.pullInShare.value,
      dropOutVolts: Number(values["coil-volts"]) * figures.dropOutShare.value,
      source: page,
    },
  ],
  coilHenries: (values) => ({ value: Number(values["coil-henries"]), source: "from memory: 0.1–0.3 H" }),
  standIns: [{ part: "led", when: "and the word click", source: practice }],
  warming: () => ({
    kelvinPerWatt: { value: 100, source: "SRD-05 class: coil of 0.36 W rises 35–40 K, from memory" },
    surface: "plastic",
  }),
  price: "d",
  loss: "L1",
  cautions: ["no-mains"],
  meterTest: "coil-resistance",
  source: page,
});
