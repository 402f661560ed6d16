// The ceramic or film capacitor: no direction. Marked 104 it has 10·10⁴ pF = 100 nF.
// Does not know: how far cheap ceramics fall with heat and voltage (Y5V −82 %).
import { definePart, practice } from "../definePart.ts";
import { freeLegs } from "../footprints.ts";

export const capacitor = definePart({
  id: "capacitor",
  legs: ["1", "2"],
  parameters: {
    farads: {
      unit: "F",
      usual: null,
      least: 1e-12,
      most: 1,
      tellsApart: true,
      tolerance: { value: 0.1, source: "IEC 60062: letter K, ±10 %" },
    },
    tolerance: { unit: "%", usual: { value: 0.1, source: "IEC 60062: letter K, ±10 %" }, least: 0, most: 0.9 },
    volts: { unit: "V", usual: { value: 50, source: "from memory" }, least: 1, most: 1000 },
  },
  footprint: freeLegs(["1", "2"], 2, "legs 2.54 or 5.08 mm apart: from memory"),
  model: (name, node, values) => [{ kind: "capacitor", id: name, a: node("1"), b: node("2"), farads: Number(values.farads) }],
  limits: (values) => [{ what: "volts", unsafe: { value: Number(values.volts), source: "as printed on it" } }],
  standIns: [{ part: "capacitor", when: "47 nF to 1 µF for one that only smooths a supply", source: practice }],
  price: "a",
  loss: "L3",
  cautions: ["small-parts"],
  meterTest: "capacitor-charges",
  source: "IEC 60062",
});
