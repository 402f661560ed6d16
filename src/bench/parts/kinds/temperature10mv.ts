// The temperature sensor that gives 10 mV for each degree Celsius. With its ends swapped it gets burning hot in seconds.
// Does not know: its sister with 500 mV offset, which reads 50 degrees too high in its place; temperatures below 0 °C.
import { definePart, practice } from "../definePart.ts";
import { inLine } from "../footprints.ts";

const sheet = "data sheet LM35, table 6";
const legs = ["V", "OUT", "GND"];
const figures = {
  voltsPerDegree: { value: 0.01, source: `${sheet}: 10 mV/°C, 0 V at 0 °C` },
  ownAmps: { value: 56e-6, source: `${sheet}: 56 µA, at most 80 µA` },
  dropoutVolts: { value: 1.5, source: "from memory: works from 4 V on" },
  outputOhms: { value: 0.1, source: `${sheet}: 0.1 Ω, from memory` },
  errorDegrees: { value: 1.5, source: `${sheet}: at most 1.5 °C at 25 °C` },
};

export const temperature10mv = definePart({
  id: "temperature-10mv",
  legs,
  alsoCalled: { VCC: "V", VS: "V", "+VS": "V", plus: "V", minus: "GND", signal: "OUT", VOUT: "OUT" },
  markedLeg: "V",
  states: { celsius: { unit: "°C", atFirst: 25, least: 0, most: 150 } },
  footprint: inLine(legs, 1, "TO-92, flat side in front: V, OUT, GND; three rows after spreading: from memory"),
  figures,
  model: (name, node, _values, state) => [
    {
      kind: "regulator",
      id: name,
      input: node("V"),
      output: node("OUT"),
      ground: node("GND"),
      volts: Number(state.celsius) * figures.voltsPerDegree.value,
      dropoutVolts: figures.dropoutVolts.value,
      outputOhms: figures.outputOhms.value,
      quiescentAmps: figures.ownAmps.value,
    },
  ],
  standIns: [{ part: "thermistor", when: "with another formula and a resistor", source: practice }],
  price: "c",
  loss: "L2",
  cautions: ["hot-when-reversed", "small-parts"],
  meterTest: "output-voltage",
  source: sheet,
});
