// The electrolytic capacitor. The stripe marks minus, the longer leg plus. Reversed it warms up, swells and may burst.
// Does not know: its loss at high frequencies.
import { definePart, practice } from "../definePart.ts";
import { freeLegs } from "../footprints.ts";

const figures = {
  leakPerFaradVolt: { value: 0.01, source: "data sheets of the SU and MA series: leakage at most 0.01·C·V after two minutes" },
};

export const electrolytic = definePart({
  id: "electrolytic",
  typeOf: { kind: "capacitor", type: "electrolytic" },
  legs: ["plus", "minus"],
  alsoCalled: { "1": "plus", "2": "minus" },
  markedLeg: "plus",
  parameters: {
    farads: {
      unit: "F",
      usual: null,
      least: 1e-8,
      most: 1,
      tellsApart: true,
      tolerance: { value: 0.2, source: "data sheets of the SU and MA series: ±20 %" },
    },
    tolerance: { unit: "%", usual: { value: 0.2, source: "data sheets of the SU and MA series" }, least: 0, most: 0.9 },
    volts: { unit: "V", usual: { value: 16, source: `${practice}: 6.3–50 V` }, least: 1, most: 500 },
  },
  footprint: freeLegs(["plus", "minus"], 1, "data sheets of the SU and MA series: legs 2.0–5.0 mm apart"),
  figures,
  model: (name, node, values) => {
    const farads = Number(values.farads);
    const [a, b] = [node("plus"), node("minus")];
    return [
      { kind: "capacitor", id: name, a, b, farads },
      // I = 0.01·C·V is a resistor: 1 MΩ for 100 µF.
      { kind: "resistor", id: `${name}.leak`, a, b, ohms: 1 / (figures.leakPerFaradVolt.value * farads) },
    ];
  },
  limits: (values) => [
    { what: "volts", unsafe: { value: Number(values.volts), source: "as printed on it" } },
    { what: "reverseVolts", unsafe: { value: 1, source: "from memory: at most about 1 V, then heat, gas, burst" } },
  ],
  standIns: [{ part: "electrolytic", when: "more volts; within ±50 % where it only smooths", source: practice }],
  price: "b",
  loss: "L2",
  cautions: ["bursts-when-reversed", "small-parts"],
  meterTest: "capacitor-charges",
  source: "data sheets of the SU and MA series",
});
