// The passive magnetic buzzer: a coil that needs a tone. Straight on a pin it takes about 70 mA, far above the pin's limit.
// Does not know: that its pitch wanders with the voltage.
import { definePart, practice } from "../definePart.ts";
import { inLine } from "../footprints.ts";

const sheet = "data sheet CD-1206";

export const magneticBuzzer = definePart({
  id: "magnetic-buzzer",
  legs: ["plus", "minus"],
  alsoCalled: { "1": "plus", "2": "minus" },
  markedLeg: "plus",
  parameters: {
    ohms: {
      unit: "Ω",
      usual: { value: 47, source: `${sheet}: 47 ± 7 Ω` },
      least: 4,
      most: 1000,
      tolerance: { value: 0.15, source: `${sheet}: 47 ± 7 Ω` },
    },
  },
  footprint: inLine(["plus", "minus"], 3, "7.6 mm apart, 6.5 mm on some: from memory"),
  model: (name, node, values) => [{ kind: "resistor", id: name, a: node("plus"), b: node("minus"), ohms: Number(values.ohms) }],
  limits: () => [
    {
      what: "amps",
      caution: { value: 0.04, source: `${sheet}: mean at most 40 mA` },
      unsafe: { value: 0.11, source: "5 V steadily across 47 Ω: the coil gets hot, from memory" },
    },
  ],
  noticed: () => [
    { sense: "sound", own: false, leastVolts: 0.5, resonance: [2000, 2700], source: `from memory; ${sheet}: 2–2.7 kHz` },
  ],
  coilHenries: () => ({ value: 0.001, source: "from memory: about 1 mH" }),
  standIns: [{ part: "piezo", when: "always, less loud", source: practice }],
  price: "b",
  loss: "L1",
  cautions: ["loud"],
  meterTest: "coil-resistance",
  source: sheet,
});
