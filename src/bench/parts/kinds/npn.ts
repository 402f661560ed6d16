// The NPN transistor. The order of the legs differs: BC547 is C B E, PN2222A is E B C, seen with the flat side in front.
// Does not know: the Early effect, speed.
import { definePart, practice } from "../definePart.ts";
import { inLine } from "../footprints.ts";
import type { PartValues, Sourced } from "../partKind.ts";

interface Type {
  readonly saturationAmps: number;
  readonly collectorOhms: number;
  /** The least that makers' sheets allow, because they differ. */
  readonly mostAmps: Sourced<number>;
  readonly mostWatts: Sourced<number>;
  readonly mostVolts: Sourced<number>;
}

const pn2222a: Type = {
  saturationAmps: 1.4e-14,
  collectorOhms: 0.3,
  mostAmps: { value: 0.6, source: "data sheets of the PN2222A: 600 mA, in one 1 A" },
  mostWatts: { value: 0.625, source: "data sheet PN2222A: 625 mW" },
  mostVolts: { value: 40, source: "data sheet PN2222A: 40 V" },
};
// IS, RB, RC: SPICE models, from memory.
const types: Readonly<Record<string, Type>> = {
  BC547: {
    saturationAmps: 2e-14,
    collectorOhms: 0.6,
    mostAmps: { value: 0.1, source: "data sheets of the BC547: 100 mA, in an older one 500 mA" },
    mostWatts: { value: 0.5, source: "data sheets of the BC547: 500–625 mW" },
    mostVolts: { value: 45, source: "data sheets of the BC547: 45 V" },
  },
  PN2222A: pn2222a,
  "2N2222": { ...pn2222a, mostVolts: { value: 30, source: "comparison of the 2N2222 and 2N2222A: 30 V without the A" } },
};
const typeOf = (values: PartValues) => types[String(values.type)] ?? types.BC547!;

const cbe = inLine(
  ["collector", "base", "emitter"],
  1,
  "TO-92, flat side in front: C B E (BC547 data pages); three rows after spreading",
);
const ebc = inLine(
  ["emitter", "base", "collector"],
  1,
  "TO-92, flat side in front: E B C (PN2222A data pages); three rows after spreading",
);

const figures = {
  reverseGain: { value: 4, source: "SPICE models, from memory" },
  baseOhms: { value: 10, source: "SPICE models, from memory" },
};

export const npn = definePart({
  id: "npn",
  types: {
    BC547: { type: "BC547", gain: 290 },
    PN2222A: { type: "PN2222A", gain: 200 },
    "2N2222": { type: "2N2222", gain: 200 },
  },
  legs: ["collector", "base", "emitter"],
  markedLeg: "collector",
  parameters: {
    type: { unit: "word", words: Object.keys(types), usual: { value: "BC547", source: practice }, tellsApart: true },
    gain: {
      unit: "1",
      usual: { value: 290, source: "data sheets of the BC547: group B 200–450, typical 290" },
      least: 5,
      most: 1000,
      tolerance: { value: 0.5, source: "data sheets: group A from 110, PN2222A 100–300 at 150 mA" },
    },
  },
  footprint: cbe,
  footprintsByType: { BC547: cbe, PN2222A: ebc, "2N2222": ebc },
  figures,
  model: (name, node, values) => [
    {
      kind: "npn",
      id: name,
      collector: node("collector"),
      base: node("base"),
      emitter: node("emitter"),
      saturationAmps: typeOf(values).saturationAmps,
      forwardGain: Number(values.gain),
      reverseGain: figures.reverseGain.value,
      baseOhms: figures.baseOhms.value,
      collectorOhms: typeOf(values).collectorOhms,
    },
  ],
  limits: (values) => {
    const { mostAmps, mostWatts, mostVolts } = typeOf(values);
    return [
      {
        what: "amps",
        caution: { value: mostAmps.value * 0.8, source: "from memory: use 80 % of the least limit" },
        unsafe: mostAmps,
      },
      { what: "watts", unsafe: mostWatts },
      { what: "volts", unsafe: mostVolts },
    ];
  },
  standIns: [
    { part: "PN2222A", when: "for the BC547, turned round", source: practice },
    { part: "BC547", when: "for the PN2222A below 80 mA, turned round", source: practice },
    { part: "nmos", when: "with the resistor at the gate kept low", source: practice },
  ],
  warming: () => ({
    // Junction to air less junction to case: what a finger touches is the case.
    kelvinPerWatt: {
      value: 200 - 83.3,
      source: "data sheets BC547 and PN2222A: 200 K/W to the air; 83.3 K/W to the case, from memory",
    },
    surface: "plastic",
  }),
  price: "b",
  loss: "L2",
  cautions: ["hot-case", "small-parts"],
  meterTest: "junctions",
  source: "data sheets of the BC547 and PN2222A",
});
