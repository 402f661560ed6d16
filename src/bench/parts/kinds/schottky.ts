// The Schottky diode: half the drop of a silicon one, and quick. The band marks the cathode.
// Does not know: how much it leaks when hot.
import { definePart, practice } from "../definePart.ts";
import { freeLegs } from "../footprints.ts";

const sheet = "data sheets of the 1N5817 to 1N5819";
const figures = {
  saturationAmps: { value: 3.2e-5, source: "parameters of a SPICE model, from memory" },
  emission: { value: 1.37, source: "parameters of a SPICE model, from memory" },
  seriesOhms: { value: 0.05, source: "parameters of a SPICE model, from memory" },
};

export const schottky = definePart({
  id: "schottky",
  types: { "1N5817": { type: "1N5817", volts: 20 }, "1N5819": { type: "1N5819", volts: 40 } },
  legs: ["anode", "cathode"],
  markedLeg: "cathode",
  parameters: {
    type: { unit: "word", words: ["1N5817", "1N5819"], usual: { value: "1N5819", source: practice }, tellsApart: true },
    volts: { unit: "V", usual: { value: 40, source: `${sheet}: 40 V` }, least: 1, most: 200 },
  },
  footprint: freeLegs(["anode", "cathode"], 4, "axial, bent to four rows or more: from memory"),
  figures,
  model: (name, node) => [
    {
      kind: "diode",
      id: name,
      anode: node("anode"),
      cathode: node("cathode"),
      saturationAmps: figures.saturationAmps.value,
      emission: figures.emission.value,
      seriesOhms: figures.seriesOhms.value,
    },
  ],
  limits: (values) => [
    { what: "amps", unsafe: { value: 1, source: `${sheet}: 1 A` } },
    { what: "reverseVolts", unsafe: { value: Number(values.volts), source: `${sheet}: 20 V, 40 V` } },
  ],
  standIns: [{ part: "1N4007", when: "in slow circuits with voltage to spare", source: practice }],
  warming: () => ({ kelvinPerWatt: { value: 80, source: "1N5817: 50–80 K/W, from memory" }, surface: "plastic" }),
  price: "b",
  loss: "L2",
  cautions: ["hot-when-reversed", "small-parts"],
  meterTest: "diode-drop",
  source: sheet,
});
