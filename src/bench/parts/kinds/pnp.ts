// The PNP transistor: the mirror of the NPN. BC557 is C B E with the flat side in front.
// Does not know: the Early effect, speed.
import { definePart, practice } from "../definePart.ts";
import { inLine } from "../footprints.ts";

const figures = {
  saturationAmps: { value: 2e-14, source: "as the BC547: SPICE models, from memory" },
  reverseGain: { value: 4, source: "SPICE models, from memory" },
  baseOhms: { value: 10, source: "SPICE models, from memory" },
  collectorOhms: { value: 0.6, source: "SPICE models, from memory" },
};

export const pnp = definePart({
  id: "pnp",
  types: { BC557: { type: "BC557", gain: 290 } },
  legs: ["collector", "base", "emitter"],
  markedLeg: "collector",
  parameters: {
    type: { unit: "word", words: ["BC557"], usual: { value: "BC557", source: practice }, tellsApart: true },
    gain: {
      unit: "1",
      usual: { value: 290, source: "from memory: group B 220–475" },
      least: 5,
      most: 1000,
      tolerance: { value: 0.5, source: "from memory: group A from 125" },
    },
  },
  footprint: inLine(
    ["collector", "base", "emitter"],
    1,
    "TO-92, flat side in front: C B E; three rows after spreading: from memory",
  ),
  figures,
  model: (name, node, values) => [
    {
      kind: "pnp",
      id: name,
      collector: node("collector"),
      base: node("base"),
      emitter: node("emitter"),
      saturationAmps: figures.saturationAmps.value,
      forwardGain: Number(values.gain),
      reverseGain: figures.reverseGain.value,
      baseOhms: figures.baseOhms.value,
      collectorOhms: figures.collectorOhms.value,
    },
  ],
  limits: () => [
    {
      what: "amps",
      caution: { value: 0.08, source: "from memory: use 80 % of the limit" },
      unsafe: { value: 0.1, source: "from memory: −100 mA" },
    },
    { what: "watts", unsafe: { value: 0.5, source: "from memory: 500 mW" } },
    { what: "volts", unsafe: { value: 45, source: "from memory: −45 V" } },
  ],
  warming: () => ({
    // Junction to air less junction to case: what a finger touches is the case.
    kelvinPerWatt: { value: 200 - 83.3, source: "as the BC547: 200 K/W to the air, 83.3 K/W to the case, from memory" },
    surface: "plastic",
  }),
  price: "b",
  loss: "L2",
  cautions: ["hot-case", "small-parts"],
  meterTest: "junctions",
  source: "from memory: BC557",
});
