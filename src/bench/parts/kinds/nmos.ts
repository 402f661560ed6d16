// The small N-channel MOSFET that 5 V at its gate switch on. 2N7000 is S G D with the flat side in front.
// Does not know: the charge of its gate. An open gate is found to float, which is what it does.
import { definePart, practice } from "../definePart.ts";
import { inLine } from "../footprints.ts";

const sheet = "data sheet 2N7000";
const figures = {
  gateVolts: { value: 5, source: "the board's level, at which on-ohms is meant" },
  bodySaturationAmps: { value: 1e-12, source: "from memory: the diode from source to drain" },
};

export const nmos = definePart({
  id: "nmos",
  types: { "2N7000": { type: "2N7000", "threshold-volts": 2.1, "on-ohms": 2 } },
  legs: ["gate", "drain", "source"],
  markedLeg: "gate",
  parameters: {
    type: { unit: "word", words: ["2N7000"], usual: { value: "2N7000", source: practice }, tellsApart: true },
    "threshold-volts": {
      unit: "V",
      usual: { value: 2.1, source: "data page of the 2N7000: 0.8–3 V, typical 2.1 V" },
      least: 0.3,
      most: 4.5,
      tolerance: { value: 0.4, source: "data page of the 2N7000: 0.8–3 V" },
    },
    "on-ohms": {
      unit: "Ω",
      usual: { value: 2, source: "data page of the 2N7000: 1.2 Ω typical at 10 V; at 5 V 1.5–2 times more, from memory" },
      least: 0.001,
      most: 100,
    },
  },
  footprint: inLine(["source", "gate", "drain"], 1, "TO-92, flat side in front: S G D; three rows after spreading: from memory"),
  figures,
  model: (name, node, values) => {
    const threshold = Number(values["threshold-volts"]);
    const [gate, drain, source] = [node("gate"), node("drain"), node("source")];
    return [
      {
        kind: "nmos",
        id: name,
        drain,
        gate,
        source,
        thresholdVolts: threshold,
        // In the linear region R = 1 / (K·(V_GS − V_th)): Shichman and Hodges, 1968.
        transconductance: 1 / (Number(values["on-ohms"]) * (figures.gateVolts.value - threshold)),
      },
      {
        kind: "diode",
        id: `${name}.body`,
        anode: source,
        cathode: drain,
        saturationAmps: figures.bodySaturationAmps.value,
        emission: 1,
        seriesOhms: 0.1,
      },
    ];
  },
  limits: () => [
    {
      what: "amps",
      caution: { value: 0.16, source: "from memory: use 80 % of the limit" },
      unsafe: { value: 0.2, source: `${sheet}: 200 mA` },
    },
    { what: "watts", unsafe: { value: 0.4, source: `${sheet}: 400 mW` } },
    { what: "volts", unsafe: { value: 60, source: `${sheet}: 60 V` } },
  ],
  standIns: [{ part: "npn", when: "with a resistor at the base", source: practice }],
  warming: () => ({
    kelvinPerWatt: { value: 312, source: `${sheet}: 312 K/W from junction to air; the case is no hotter` },
    surface: "plastic",
  }),
  price: "b",
  loss: "L2",
  cautions: ["hot-case", "small-parts"],
  meterTest: "body-diode",
  source: sheet,
});
