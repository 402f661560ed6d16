// The light-emitting diode. Its longer leg is the anode, the flat on its rim marks the cathode.
// Does not know: the resistor that it needs; a circuit without one is found by its current.
import { definePart, practice } from "../definePart.ts";
import { freeLegs } from "../footprints.ts";
import { ledColour, ledColourWords, ledDiode, ledLight, ledLimits, ledSpread } from "../ledColours.ts";
import type { PartValues } from "../partKind.ts";

const colourOf = (values: PartValues) => ledColour(String(values.colour), String(values.type));

export const led = definePart({
  id: "led",
  legs: ["anode", "cathode"],
  alsoCalled: { plus: "anode", minus: "cathode" },
  markedLeg: "anode",
  parameters: {
    colour: {
      unit: "word",
      words: ledColourWords,
      usual: { value: "red", source: practice },
      tellsApart: true,
    },
    type: {
      unit: "word",
      words: ["standard", "emerald"],
      usual: { value: "standard", source: "common practice, no source: yellowish green in beginners' sets" },
      tellsApart: "unlessUsual",
    },
  },
  footprint: freeLegs(["anode", "cathode"], 1, "legs 2.54 mm apart, bent to any two rows: from memory"),
  model: (name, node, values) => [ledDiode(name, node("anode"), node("cathode"), colourOf(values), values.volts)],
  spreads: (values) => ({ volts: ledSpread(colourOf(values)) }),
  limits: (values) => ledLimits(colourOf(values)),
  noticed: (values) => (values.colour === "infrared" ? [] : [ledLight(colourOf(values))]),
  standIns: [
    { part: "led red", when: "for yellow and yellowish green: about 10 % less current", source: practice },
    { part: "led yellow", when: "for red and yellowish green", source: practice },
    { part: "led green", when: "for red and yellow", source: practice },
    { part: "led blue", when: "only where the supply has 5 V", source: practice },
    { part: "led white", when: "only where the supply has 5 V", source: practice },
  ],
  warming: () => ({ kelvinPerWatt: { value: 300, source: "5 mm LEDs: 250–350 K/W, from memory" }, surface: "plastic" }),
  price: "b",
  loss: "L3",
  cautions: ["small-parts", "eyes-bright", "eyes-splinters"],
  meterTest: "diode-lights",
  source: "data sheets named in ledColours.ts",
});
