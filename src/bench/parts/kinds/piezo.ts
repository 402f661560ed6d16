// The passive piezo: a small capacitor that sounds when its voltage changes. It needs a tone; a steady level gives one click.
// Does not know: that discs differ by 1 kHz in their resonance.
import { definePart, practice } from "../definePart.ts";
import { inLine } from "../footprints.ts";

export const piezo = definePart({
  id: "piezo",
  legs: ["1", "2"],
  alsoCalled: { plus: "1", minus: "2" },
  parameters: {
    farads: {
      unit: "F",
      usual: { value: 20e-9, source: "forum of engineers and a data sheet: 15–70 nF" },
      least: 1e-10,
      most: 1e-6,
    },
  },
  footprint: inLine(["1", "2"], 3, "7.6 mm apart, 5–10 mm on others: from memory"),
  model: (name, node, values) => [{ kind: "capacitor", id: name, a: node("1"), b: node("2"), farads: Number(values.farads) }],
  limits: () => [{ what: "volts", unsafe: { value: 30, source: "forum of engineers: 30 V from peak to peak is usual" } }],
  noticed: () => [
    {
      sense: "sound",
      own: false,
      leastVolts: 1,
      resonance: [2000, 4500],
      source: "from memory; data sheets of piezo discs: 2–4 kHz",
    },
  ],
  standIns: [{ part: "magnetic-buzzer", when: "with 100 Ω in series", source: practice }],
  price: "b",
  loss: "L1",
  cautions: ["loud"],
  meterTest: null,
  source: "data sheet of a piezo transducer",
});
