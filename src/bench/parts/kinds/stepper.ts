// The geared stepper of 5 V with five wires: four coils with one wire in common.
//
// Two gearings share its name: 64 to 1, and 25792/405, with which a turn takes 2037.8864 full steps (32·22·26·31 / 9·11·9·10 teeth).
// Does not know: its rotor, so that turning is not rehearsed.
import { definePart, practice } from "../definePart.ts";
import { beside } from "../footprints.ts";

const coils = ["a", "b", "c", "d"];

export const stepper = definePart({
  id: "stepper",
  legs: [...coils, "common"],
  alsoCalled: { red: "common", plus: "common" },
  markedLeg: "common",
  parameters: {
    "winding-ohms": {
      unit: "Ω",
      usual: { value: 50, source: "data page of the 28BYJ class: 50 Ω ± 7 %" },
      least: 1,
      most: 1000,
      tolerance: { value: 0.14, source: "measured by a forum member: 43.3–43.6 Ω; data page: ±7 %" },
    },
    steps: {
      unit: "1",
      usual: { value: 2038, source: "gear 25792/405 by counted teeth: 2037.8864 full steps a turn" },
      least: 4,
      most: 20_000,
    },
  },
  footprint: beside([...coils, "common"], "a plug with five wires"),
  figures: {
    mostStepsPerSecond: { value: 500, source: "from memory: runs up to 900–1000 half steps a second without load" },
  },
  model: (name, node, values) =>
    coils.map((coil) => ({
      kind: "resistor",
      id: `${name}.${coil}`,
      a: node(coil),
      b: node("common"),
      ohms: Number(values["winding-ohms"]),
    })),
  notModelled: true,
  limits: () =>
    coils.map((coil) => ({ what: "volts", element: coil, caution: { value: 5.5, source: "from memory: 10 % above 5 V" } })),
  coilHenries: () => ({ value: 0.02, source: "from memory: some 10 mH" }),
  standIns: [{ part: "servo", when: "for less than 180°", source: practice }],
  warming: () => ({
    kelvinPerWatt: { value: 25, source: "data pages of the 28BYJ class: at most 40 K at 5 V; 25 K/W from memory" },
    surface: "metal",
  }),
  price: "d",
  loss: "L1",
  cautions: ["hot-when-stalled", "moving-parts"],
  meterTest: "coil-resistance",
  source: "data pages and measurements of the 28BYJ class",
});
