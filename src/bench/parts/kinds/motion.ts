// The motion sensor, passive infrared. For a minute after power it may report what is not there, and it holds its answer.
// Does not know: time, so that its answer is not rehearsed.
import { definePart, practice } from "../definePart.ts";
import { beside } from "../footprints.ts";

const page = "pages on the HC-SR501";
const legs = ["VCC", "OUT", "GND"];
const figures = {
  idleOhms: { value: 80_000, source: `${page}: 50–65 µA` },
  outputVolts: { value: 3.3, source: `${page}: OUT 3.3 V` },
  outputOhms: { value: 1000, source: "from memory" },
  warmUpSeconds: { value: 60, source: `${page}: about a minute` },
};

export const motion = definePart({
  id: "motion",
  legs,
  alsoCalled: { plus: "VCC", minus: "GND", signal: "OUT" },
  markedLeg: "VCC",
  states: { moving: { unit: "yes-no", atFirst: false } },
  footprint: beside(legs, "three legs below its board; their order differs, it is printed on it"),
  figures,
  model: (name, node, _values, state) => [
    { kind: "resistor", id: name, a: node("VCC"), b: node("GND"), ohms: figures.idleOhms.value },
    state.moving
      ? {
          kind: "regulator",
          id: `${name}.out`,
          input: node("VCC"),
          output: node("OUT"),
          ground: node("GND"),
          volts: figures.outputVolts.value,
          dropoutVolts: 0.5,
          outputOhms: figures.outputOhms.value,
          quiescentAmps: 0,
        }
      : { kind: "resistor", id: `${name}.out`, a: node("OUT"), b: node("GND"), ohms: figures.outputOhms.value },
  ],
  notModelled: true,
  limits: () => [{ what: "volts", unsafe: { value: 20, source: `${page}: 4.5–20 V` } }],
  standIns: [{ part: "button", when: "pressed instead", source: practice }],
  price: "d",
  loss: "L1",
  meterTest: "output-voltage",
  source: page,
});
