// The diode: small signals (1N4148) or an ampere (1N4007). The band marks the cathode.
// Does not know: how fast it is; the 1N4007 is too slow for fast switching of motors.
import { definePart, practice } from "../definePart.ts";
import { freeLegs } from "../footprints.ts";
import type { PartValues } from "../partKind.ts";

// Curves: parameters of SPICE models, from memory; checked against the data sheets' voltages in junctions.test.ts.
const types = {
  "1N4007": {
    curve: { saturationAmps: 7e-9, emission: 1.81, seriesOhms: 0.034 },
    amps: { value: 1, source: "data page of the 1N4007: 1 A" },
    volts: 1000,
  },
  "1N4148": {
    curve: { saturationAmps: 2.52e-9, emission: 1.752, seriesOhms: 0.568 },
    amps: { value: 0.15, source: "data sheets of the 1N4148: 150–200 mA" },
    volts: 75,
  },
};
const typeOf = (values: PartValues) => types[values.type as keyof typeof types] ?? types["1N4007"];

export const diode = definePart({
  id: "diode",
  types: { "1N4007": { type: "1N4007", volts: 1000 }, "1N4148": { type: "1N4148", volts: 75 } },
  legs: ["anode", "cathode"],
  markedLeg: "cathode",
  parameters: {
    type: { unit: "word", words: Object.keys(types), usual: { value: "1N4007", source: practice }, tellsApart: true },
    volts: { unit: "V", usual: { value: 1000, source: "data page of the 1N4007" }, least: 1, most: 2000 },
  },
  footprint: freeLegs(
    ["anode", "cathode"],
    4,
    "axial, bent to four rows or more; the 1N4007's leads of 0.8 mm stretch contacts: from memory",
  ),
  model: (name, node, values) => [
    { kind: "diode", id: name, anode: node("anode"), cathode: node("cathode"), ...typeOf(values).curve },
  ],
  limits: (values) => [
    { what: "amps", unsafe: typeOf(values).amps },
    { what: "reverseVolts", unsafe: { value: Number(values.volts), source: "data sheets: 75 V (1N4148), 1000 V (1N4007)" } },
  ],
  standIns: [
    { part: "1N4007", when: "for the 1N4148 in slow circuits", source: practice },
    { part: "1N4148", when: "for the 1N4007 below 150 mA; never for a motor", source: practice },
  ],
  warming: (values) => ({
    kelvinPerWatt:
      values.type === "1N4148"
        ? { value: 350, source: "1N4148: 300–500 K/W, from memory" }
        : { value: 65, source: "1N4007: 50–80 K/W, from memory" },
    surface: "plastic",
  }),
  price: "a",
  loss: "L2",
  cautions: ["hot-when-reversed", "small-parts"],
  meterTest: "diode-drop",
  source: "data sheets of the 1N4148; data page of the 1N4007",
});
