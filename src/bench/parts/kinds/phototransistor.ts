// The phototransistor for visible light: a current that grows with the light. Short leg and flat are the collector, unlike a LED.
// Does not know: infrared kinds ("flame" sensors).
import { definePart } from "../definePart.ts";
import { freeLegs } from "../footprints.ts";

const sheet = "data sheet PNA1401LF";
const figures = {
  ampsPerLux: { value: 2e-6, source: `${sheet}: 0.1–0.3 mA at 100 lx` },
  darkAmps: { value: 5e-9, source: `${sheet}: 5 nA` },
  gain: { value: 200, source: "from memory; only its product with the light's current at the base shows" },
  saturationAmps: { value: 1e-14, source: "from memory" },
};

export const phototransistor = definePart({
  id: "phototransistor",
  legs: ["collector", "emitter"],
  alsoCalled: { plus: "collector", minus: "emitter" },
  markedLeg: "collector",
  states: { lux: { unit: "lx", atFirst: 400, least: 0, most: 200_000 } },
  footprint: freeLegs(["collector", "emitter"], 1, "legs 2.54 mm apart: from memory"),
  figures,
  model: (name, node, _values, state) => {
    const collector = node("collector");
    const base = `${name}.inside`;
    const amps = (figures.darkAmps.value + figures.ampsPerLux.value * Number(state.lux)) / figures.gain.value;
    return [
      {
        kind: "npn",
        id: name,
        collector,
        base,
        emitter: node("emitter"),
        saturationAmps: figures.saturationAmps.value,
        forwardGain: figures.gain.value,
        reverseGain: 1,
      },
      { kind: "currentSource", id: `${name}.light`, from: collector, to: base, amps },
    ];
  },
  limits: () => [{ what: "volts", unsafe: { value: 20, source: `${sheet}: at most 20–30 V` } }],
  standIns: [{ part: "photoresistor", when: "slower, with another resistor", source: "common practice, no source" }],
  price: "b",
  loss: "L2",
  cautions: ["small-parts", "no-flames"],
  meterTest: null,
  source: sheet,
});
