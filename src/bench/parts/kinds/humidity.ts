// The sensor for temperature and humidity on one wire. It may be asked once a second; asked too often it does not answer.
// Does not know: its protocol, so that its answer is not rehearsed.
import { definePart, practice } from "../definePart.ts";
import { inLine } from "../footprints.ts";

const sheet = "data sheet DHT11";
const legs = ["VCC", "DATA", "NC", "GND"];
const figures = { ownOhms: { value: 5000, source: `${sheet}: 0.5–2.5 mA measuring, 0.1–0.15 mA at rest` } };

export const humidity = definePart({
  id: "humidity",
  legs,
  alsoCalled: { plus: "VCC", minus: "GND", signal: "DATA", OUT: "DATA", S: "DATA" },
  markedLeg: "VCC",
  states: {
    celsius: { unit: "°C", atFirst: 20, least: 0, most: 50 },
    percent: { unit: "%", atFirst: 0.5, least: 0.2, most: 0.9 },
  },
  footprint: inLine(legs, 1, "four in line, the third unused; modules have three in an order of their own"),
  figures,
  model: (name, node) => [{ kind: "resistor", id: name, a: node("VCC"), b: node("GND"), ohms: figures.ownOhms.value }],
  notModelled: true,
  limits: () => [{ what: "volts", unsafe: { value: 5.5, source: `${sheet}: 3–5.5 V` } }],
  standIns: [{ part: "thermistor", when: "for the temperature only", source: practice }],
  price: "d",
  loss: "L1",
  cautions: ["hot-when-reversed"],
  meterTest: "supply-voltage",
  source: sheet,
});
