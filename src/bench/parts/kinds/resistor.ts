// The resistor: two legs, no direction.
// Does not know: colour bands (base/colourCode.ts), which value a lesson needs.
import { definePart, practice } from "../definePart.ts";
import { freeLegs } from "../footprints.ts";

export const resistor = definePart({
  id: "resistor",
  legs: ["1", "2"],
  parameters: {
    ohms: {
      unit: "Ω",
      usual: null,
      least: 0.1,
      most: 100e6,
      tellsApart: true,
      tolerance: { value: 0.05, source: "IEC 60062: gold band of a carbon film resistor" },
    },
    tolerance: { unit: "%", usual: { value: 0.05, source: "IEC 60062: gold band" }, least: 0, most: 0.5 },
    watts: { unit: "W", usual: { value: 0.25, source: "film resistor data sheets: 1/4 W up to 70 °C" }, least: 0.01, most: 100 },
  },
  footprint: freeLegs(["1", "2"], 4, "body 6.3 mm long, bent to four rows or more: from memory"),
  model: (name, node, values) => [{ kind: "resistor", id: name, a: node("1"), b: node("2"), ohms: Number(values.ohms) }],
  limits: (values) => [
    { what: "watts", unsafe: { value: Number(values.watts), source: "film resistor data sheets: rating up to 70 °C" } },
    { what: "volts", unsafe: { value: 250, source: "1/4 W carbon film data sheets: 250 V for a small body" } },
  ],
  standIns: [{ part: "resistor", when: "a neighbouring preferred value, if the rehearsal passes", source: practice }],
  warming: (values) => ({
    kelvinPerWatt: {
      value: (155 - 70) / Number(values.watts),
      source: "carbon film data sheets: full power up to 70 °C, none at 155 °C",
    },
    surface: "plastic",
  }),
  price: "a",
  loss: "L3",
  cautions: ["small-parts"],
  meterTest: "resistance",
  source: "IEC 60062, IEC 60063, film resistor data sheets",
});
