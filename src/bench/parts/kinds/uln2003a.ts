// The ULN2003A: seven Darlington transistors with resistors at their inputs and diodes for coils. Low side only; about 0.9 V remain.
// Does not know: heat shared by seven channels.
import type { Element } from "../../circuit/index.ts";
import { definePart, practice } from "../definePart.ts";
import { overDitch } from "../footprints.ts";

const channels = ["1", "2", "3", "4", "5", "6", "7"];
const left = [...channels.map((c) => `IN${c}`), "GND"];
const right = [...channels.map((c) => `OUT${c}`), "COM"];
const sheet = "data sheets ULN2003A and ULN2003APG";

const figures = {
  inputOhms: { value: 2700, source: `${sheet}: 2.7 kΩ` },
  gain: { value: 60, source: `${sheet}: product of both at least 1000, here 3600` },
  // With these two the drop is that of the sheet: 0.9, 1.1 and 1.3 V, typical, at 100, 200 and 350 mA.
  saturationAmps: { value: 3e-13, source: "fitted to the sheet's typical drops" },
  emitterOhms: { value: 1.6, source: "fitted to the sheet's typical drops" },
  firstOhms: { value: 7200, source: `${sheet}: schematic of a channel` },
  secondOhms: { value: 3000, source: `${sheet}: schematic of a channel` },
};

function channel(name: string, input: string, output: string, common: string, ground: string): readonly Element[] {
  const [base, middle] = [`${name}.base`, `${name}.middle`];
  const transistor = {
    kind: "npn",
    saturationAmps: figures.saturationAmps.value,
    forwardGain: figures.gain.value,
    reverseGain: 1,
  } as const;
  return [
    { kind: "resistor", id: `${name}.input`, a: input, b: base, ohms: figures.inputOhms.value },
    { ...transistor, id: `${name}.first`, collector: output, base, emitter: middle },
    { ...transistor, id: name, collector: output, base: middle, emitter: ground, emitterOhms: figures.emitterOhms.value },
    { kind: "resistor", id: `${name}.firstLeak`, a: base, b: middle, ohms: figures.firstOhms.value },
    { kind: "resistor", id: `${name}.secondLeak`, a: middle, b: ground, ohms: figures.secondOhms.value },
    { kind: "diode", id: `${name}.clamp`, anode: output, cathode: common, saturationAmps: 1e-12, emission: 1.8, seriesOhms: 1 },
  ];
}

export const uln2003a = definePart({
  id: "ULN2003A",
  legs: [...left, ...right],
  alsoCalled: {
    E: "GND",
    ...Object.fromEntries(channels.flatMap((c) => [[`${c}B`, `IN${c}`] as const, [`${c}C`, `OUT${c}`] as const])),
  },
  markedLeg: "IN1",
  footprint: overDitch(left, right, 1, `DIP-16, notch at leg 1 (${sheet})`),
  figures,
  model: (name, node) =>
    channels.flatMap((c) => channel(`${name}.${c}`, node(`IN${c}`), node(`OUT${c}`), node("COM"), node("GND"))),
  limits: () => channels.map((c) => ({ what: "amps", element: c, unsafe: { value: 0.5, source: `${sheet}: 500 mA a channel` } })),
  standIns: [{ part: "npn", when: "one for each channel, with a resistor at the base", source: practice }],
  warming: () => ({ kelvinPerWatt: { value: 70, source: "DIP-16: 67–80 K/W to the air, from memory" }, surface: "plastic" }),
  price: "b",
  loss: "L1",
  cautions: ["hot-case", "small-parts"],
  meterTest: "output-voltage",
  source: sheet,
});
