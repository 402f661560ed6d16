// The ultrasonic distance module: a pulse of 10 µs on TRIG is answered by one on ECHO, as long as sound took there and back.
// Does not know: time, so that its answer is not rehearsed; soft cloth, two teams that face each other.
import { definePart, practice } from "../definePart.ts";
import { inLine } from "../footprints.ts";

const sheet = "data sheet HC-SR04";
const legs = ["VCC", "TRIG", "ECHO", "GND"];
const figures = {
  idleOhms: { value: 2500, source: "pages on the HC-SR04: below 2 mA idle" },
  metresPerSecond: { value: 343.42, source: "c = 331.3 + 0.606·θ at 20 °C" },
  leastMetres: { value: 0.02, source: `${sheet}: 2 cm` },
  mostMetres: { value: 4, source: `${sheet}: 400 cm` },
  noEchoSeconds: { value: 0.038, source: "pages on the HC-SR04: about 38 ms" },
  pauseSeconds: { value: 0.06, source: `${sheet}: 60 ms between shots` },
};

export const ultrasonic = definePart({
  id: "ultrasonic",
  legs,
  alsoCalled: { Trig: "TRIG", Echo: "ECHO", Vcc: "VCC", Gnd: "GND", trig: "TRIG", echo: "ECHO", plus: "VCC", minus: "GND" },
  markedLeg: "VCC",
  states: { centimetres: { unit: "cm", atFirst: 100, least: 0, most: 1000 } },
  footprint: inLine(legs, 1, `${sheet}: four in line`),
  figures,
  model: (name, node) => [{ kind: "resistor", id: name, a: node("VCC"), b: node("GND"), ohms: figures.idleOhms.value }],
  notModelled: true,
  limits: () => [{ what: "volts", unsafe: { value: 5.5, source: "from memory: 5 V ± 10 %" } }],
  standIns: [{ part: "phototransistor", when: "with a LED, for near and far only", source: practice }],
  price: "d",
  loss: "L2",
  meterTest: "supply-voltage",
  source: sheet,
});
