// The photoresistor: its resistance falls with light, R = R10·(E / 10 lx)^−gamma. `ohms` is its resistance at 10 lx.
// Does not know: 20–30 ms that it takes to follow the light.
import { definePart, practice } from "../definePart.ts";
import { freeLegs } from "../footprints.ts";

const figures = {
  darkOhms: { value: 1e6, source: "data tables of the 5528 class: at least 1 MΩ in the dark" },
};

export const photoresistor = definePart({
  id: "photoresistor",
  legs: ["1", "2"],
  parameters: {
    ohms: {
      unit: "Ω",
      usual: { value: 15_000, source: "data tables of the 5528 class, 5 mm: 10–20 kΩ at 10 lx, their middle" },
      least: 100,
      most: 1e6,
      tolerance: { value: 1 / 3, source: "data tables of the 5528 class, 5 mm: 10–20 kΩ at 10 lx" },
    },
    gamma: {
      unit: "1",
      usual: { value: 0.7, source: "5528 class: 0.6–0.7, from memory" },
      least: 0.1,
      most: 1.5,
    },
  },
  states: { lux: { unit: "lx", atFirst: 400, least: 0, most: 200_000 } },
  footprint: freeLegs(["1", "2"], 1, "legs 2.5–3.4 mm apart, bent to any two rows: from memory"),
  figures,
  model: (name, node, values, state) => {
    const ohms = Number(values.ohms) * (Number(state.lux) / 10) ** -Number(values.gamma);
    // Bright sun leaves some hundred ohms; the formula knows no end, so that a wrong value shows as too much current.
    return [{ kind: "resistor", id: name, a: node("1"), b: node("2"), ohms: Math.min(ohms, figures.darkOhms.value) }];
  },
  limits: () => [
    { what: "watts", unsafe: { value: 0.1, source: "5 mm photoresistors: about 100 mW, from memory" } },
    { what: "volts", unsafe: { value: 150, source: "5 mm photoresistors: 150 V, from memory" } },
  ],
  standIns: [{ part: "phototransistor", when: "with another resistor, and its sense noted", source: practice }],
  warming: () => ({
    kelvinPerWatt: { value: 450, source: "from memory: 100 mW at 25 °C, none at 70 °C" },
    surface: "plastic",
  }),
  price: "b",
  loss: "L2",
  cautions: ["cadmium", "small-parts"],
  meterTest: "falls-when-lit",
  source: "definition of gamma by makers of photoresistors; data tables of the 5528 class",
});
