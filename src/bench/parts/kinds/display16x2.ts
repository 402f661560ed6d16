// The character display, two lines of sixteen. If it stays blank, its contrast is the first thing to look at.
// Does not know: its commands, so that what it shows is not rehearsed.
import { definePart, practice } from "../definePart.ts";
import { inLine } from "../footprints.ts";

const legs = ["VSS", "VDD", "VO", "RS", "RW", "E", "D0", "D1", "D2", "D3", "D4", "D5", "D6", "D7", "A", "K"];
const figures = {
  ownOhms: { value: 5000, source: "a blog's measurement: about 1 mA" },
  contrastOhms: { value: 10_000, source: "a blog's measurement: about 10 kΩ from VDD to VO inside" },
  lightSeriesOhms: { value: 100, source: "from memory: 15–20 mA on blue ones; some have none and take 120 mA" },
};

export const display16x2 = definePart({
  id: "display-16x2",
  legs,
  alsoCalled: { GND: "VSS", VCC: "VDD", V0: "VO", VEE: "VO", EN: "E", "R/W": "RW", LED: "A" },
  markedLeg: "VSS",
  footprint: inLine(legs, 1, "16 legs in line, of one side; its body hides half the breadboard: from memory"),
  figures,
  model: (name, node) => [
    { kind: "resistor", id: name, a: node("VDD"), b: node("VSS"), ohms: figures.ownOhms.value },
    { kind: "resistor", id: `${name}.contrast`, a: node("VDD"), b: node("VO"), ohms: figures.contrastOhms.value },
    {
      kind: "diode",
      id: `${name}.light`,
      anode: node("A"),
      cathode: node("K"),
      saturationAmps: 8.434e-12,
      emission: 5.373,
      seriesOhms: figures.lightSeriesOhms.value,
    },
  ],
  notModelled: true,
  limits: () => [{ what: "reverseVolts", unsafe: { value: 0.3, source: "from memory: reversed it is dead within seconds" } }],
  standIns: [{ part: "computer", when: "text on its screen instead", source: practice }],
  price: "d",
  loss: "L1",
  cautions: ["hot-when-reversed"],
  meterTest: "output-voltage",
  source: "shop data of a 20 × 4 display; a blog's measurements",
});
