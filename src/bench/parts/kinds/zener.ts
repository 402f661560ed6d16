// The Zener diode: conducts backwards from its voltage on. The band marks the cathode, which goes to plus.
// Does not know: values other than by their printed voltage.
import { definePart, practice } from "../definePart.ts";
import { freeLegs } from "../footprints.ts";

const sheet = "data sheet BZX55C5V1";
const figures = {
  testAmps: { value: 0.005, source: `${sheet}: voltage at 5 mA` },
  slopeOhms: { value: 35, source: `${sheet}: below 35 Ω at 5 mA, taken as the worst` },
  saturationAmps: { value: 2.52e-9, source: "forwards as the 1N4148, from memory" },
  emission: { value: 1.752, source: "forwards as the 1N4148, from memory" },
};

export const zener = definePart({
  id: "zener",
  legs: ["anode", "cathode"],
  markedLeg: "cathode",
  parameters: {
    volts: {
      unit: "V",
      usual: { value: 5.1, source: practice },
      least: 2.4,
      most: 75,
      tellsApart: true,
      tolerance: { value: 0.06, source: `${sheet}: 4.8–5.4 V` },
    },
    watts: { unit: "W", usual: { value: 0.5, source: `${sheet}: 0.5 W` }, least: 0.1, most: 5 },
  },
  footprint: freeLegs(["anode", "cathode"], 4, "axial glass, bent to four rows or more: from memory"),
  figures,
  model: (name, node, values) => [
    {
      kind: "diode",
      id: name,
      anode: node("anode"),
      cathode: node("cathode"),
      saturationAmps: figures.saturationAmps.value,
      emission: figures.emission.value,
      seriesOhms: figures.slopeOhms.value,
      // At the test current the series resistance has its share of the printed voltage.
      breakdownVolts: Number(values.volts) - figures.testAmps.value * figures.slopeOhms.value,
      breakdownAmps: figures.testAmps.value,
    },
  ],
  limits: (values) => [
    { what: "watts", unsafe: { value: Number(values.watts), source: `${sheet}: 0.5 W` } },
    {
      what: "amps",
      unsafe: { value: Number(values.watts) / Number(values.volts), source: `${sheet}: 80 mA; power over voltage for others` },
    },
  ],
  standIns: [{ part: "led red", when: "two in series for about 4 V", source: practice }],
  warming: (values) => ({
    kelvinPerWatt: { value: (175 - 25) / Number(values.watts), source: "BZX55: 500 mW at 25 °C, none at 175 °C, from memory" },
    surface: "plastic",
  }),
  price: "b",
  loss: "L1",
  cautions: ["small-parts"],
  meterTest: "diode-drop",
  source: sheet,
});
