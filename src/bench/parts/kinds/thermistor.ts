// The thermistor (NTC): its resistance falls when it warms, R = R25·exp(B·(1/T − 1/298.15 K)). `ohms` is R at 25 °C, `beta` is B.
// Does not know: its own warming by the current (7 mW/K in air), the 15 s it takes to follow.
import { definePart } from "../definePart.ts";
import { freeLegs } from "../footprints.ts";

export const thermistor = definePart({
  id: "thermistor",
  legs: ["1", "2"],
  parameters: {
    ohms: {
      unit: "Ω",
      usual: { value: 10_000, source: "common practice, no source: the value in beginners' sets" },
      least: 10,
      most: 1e7,
      tellsApart: "unlessUsual",
      tolerance: { value: 0.1, source: "from memory: cheap ones ±5–10 %; data sheet NTCLE100E3: ±0.5–3 %" },
    },
    beta: {
      unit: "1",
      usual: { value: 3950, source: "from memory: cheap 10 kΩ beads; data sheet NTCLE100E3: 3977" },
      least: 1000,
      most: 10_000,
    },
  },
  states: { celsius: { unit: "°C", atFirst: 25, least: -55, most: 300 } },
  footprint: freeLegs(["1", "2"], 1, "legs 2.54 mm apart: from memory"),
  figures: {
    wattsPerKelvin: { value: 0.007, source: "data sheet NTCLE100E3: dissipation factor 7 mW/K" },
    seconds: { value: 15, source: "data sheet NTCLE100E3: time constant 15 s in air" },
  },
  model: (name, node, values, state) => {
    const kelvin = Number(state.celsius) + 273.15;
    const ohms = Number(values.ohms) * Math.exp(Number(values.beta) * (1 / kelvin - 1 / 298.15));
    return [{ kind: "resistor", id: name, a: node("1"), b: node("2"), ohms }];
  },
  limits: () => [{ what: "watts", unsafe: { value: 0.5, source: "data sheet NTCLE100E3: 500 mW up to 55 °C" } }],
  standIns: [{ part: "temperature-10mv", when: "with another formula", source: "common practice, no source" }],
  warming: () => ({
    kelvinPerWatt: { value: 1 / 0.007, source: "data sheet NTCLE100E3: dissipation factor 7 mW/K" },
    surface: "plastic",
  }),
  price: "b",
  loss: "L2",
  cautions: ["small-parts"],
  meterTest: "falls-when-warm",
  source: "data sheet NTCLE100E3",
});
