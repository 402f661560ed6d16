// Ten bars of light in one case, each with its own anode and cathode.
// Does not know: which side a maker marks; the mark is the anodes' side on most.
import { definePart, practice } from "../definePart.ts";
import { overDitch } from "../footprints.ts";
import { ledColour, ledColourWords, ledDiode, ledLight, ledLimits, ledSpread } from "../ledColours.ts";

const bars = Array.from({ length: 10 }, (_, i) => String(i + 1));
const anodes = bars.map((bar) => `anode${bar}`);
const cathodes = bars.map((bar) => `cathode${bar}`);

export const barGraph = definePart({
  id: "bar-graph",
  legs: [...anodes, ...cathodes],
  markedLeg: "anode1",
  parameters: {
    colour: { unit: "word", words: ledColourWords, usual: { value: "red", source: practice }, tellsApart: "unlessUsual" },
  },
  footprint: overDitch(anodes, cathodes, 1, "20 legs over the ditch, ten rows: from memory"),
  model: (name, node, values) =>
    bars.map((bar, i) =>
      ledDiode(`${name}.${bar}`, node(anodes[i]!), node(cathodes[i]!), ledColour(String(values.colour)), values.volts),
    ),
  spreads: (values) => ({ volts: ledSpread(ledColour(String(values.colour))) }),
  limits: (values) => bars.flatMap((bar) => ledLimits(ledColour(String(values.colour)), bar)),
  noticed: (values) => bars.map((bar) => ledLight(ledColour(String(values.colour)), bar)),
  standIns: [{ part: "led", when: "ten single ones", source: practice }],
  price: "c",
  loss: "L1",
  cautions: ["small-parts"],
  meterTest: "diode-segments",
  source: practice,
});
