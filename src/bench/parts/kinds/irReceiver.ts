// The infrared receiver for remote controls, 38 kHz. Its output rests high and goes low during a burst.
// Does not know: bursts and codes, so that reception is not rehearsed.
import { definePart } from "../definePart.ts";
import { inLine } from "../footprints.ts";

const sheet = "data sheet 81733, page 140";
const legs = ["OUT", "GND", "VCC"];
const figures = {
  pullUpOhms: { value: 30_000, source: `${sheet}: 30 kΩ inside` },
  ownOhms: { value: 14_000, source: "from memory: about 0.35 mA" },
};

export const irReceiver = definePart({
  id: "ir-receiver",
  legs,
  alsoCalled: { VS: "VCC", Vs: "VCC", plus: "VCC", minus: "GND", signal: "OUT" },
  markedLeg: "OUT",
  footprint: inLine(legs, 1, `${sheet}: OUT, GND, V on one family; OUT, V, GND on its sister`),
  figures,
  model: (name, node) => [
    { kind: "resistor", id: name, a: node("VCC"), b: node("GND"), ohms: figures.ownOhms.value },
    { kind: "resistor", id: `${name}.out`, a: node("VCC"), b: node("OUT"), ohms: figures.pullUpOhms.value },
  ],
  notModelled: true,
  limits: () => [{ what: "volts", unsafe: { value: 6, source: `${sheet}: 2.5–5.5 V; 6 V from memory` } }],
  price: "c",
  loss: "L2",
  cautions: ["small-parts", "button-cell"],
  meterTest: "output-voltage",
  source: sheet,
});
