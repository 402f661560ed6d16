// The micro servo, 9 g: a motor with gears and a circuit of its own that turns to the angle that the pulse on its signal leg asks.
//
// Its current is not that of a resistor, so it is given by what the servo is doing (`draws`); the rehearsal takes it from plus to minus.
// Does not know: load on its arm, unless a stimulus holds it.
import { definePart, practice } from "../definePart.ts";
import { beside } from "../footprints.ts";

const sheet = "data pages of 9 g micro servos";

const figures = {
  signalOhms: { value: 100_000, source: "from memory: the input hardly loads a pin" },
  secondsPerDegree: { value: 0.11 / 60, source: `${sheet}: 0.10–0.12 s for 60° at 4.8 V` },
  startSeconds: { value: 0.035, source: "from memory: 20–50 ms" },
  leastVolts: { value: 4.8, source: `${sheet}: 4.8–6 V` },
  mostVolts: { value: 6, source: `${sheet}: 4.8–6 V` },
  leastDegrees: { value: 0, source: sheet },
  mostDegrees: { value: 180, source: sheet },
};

export const servo = definePart({
  id: "servo",
  legs: ["plus", "minus", "signal"],
  markedLeg: "plus",
  parameters: {
    "start-milliamps": {
      unit: "A",
      bare: 0.001,
      usual: { value: 0.7, source: `${sheet}: stalled 650–800 mA; a start is a short stall, from memory` },
      least: 0.01,
      most: 5,
    },
  },
  states: { held: { unit: "yes-no", atFirst: false } },
  footprint: beside(["plus", "minus", "signal"], "a plug with three holes: brown GND, red +5 V, orange signal"),
  figures,
  model: (name, node) => [
    { kind: "resistor", id: `${name}.signal`, a: node("signal"), b: node("minus"), ohms: figures.signalOhms.value },
  ],
  noticed: () => [{ sense: "angle", source: "pulse of 1.0–2.0 ms every 20 ms, parts differ: about 0.5–2.4 ms for 180°" }],
  standIns: [{ part: "led red", when: "with the angle written to the screen", source: practice }],
  draws: (values) => ({
    idle: { value: 0.008, source: "from memory: 5–10 mA" },
    moving: { value: 0.17, source: `${sheet}: 170 mA free at 4.8 V` },
    start: {
      value: Number(values["start-milliamps"]),
      source: `${sheet}: stalled 650–800 mA; a start is a short stall, from memory`,
    },
    stalled: { value: Math.max(0.7, Number(values["start-milliamps"])), source: `${sheet}: 650–800 mA` },
  }),
  warming: () => ({
    kelvinPerWatt: { value: 30, source: "a case of 23 × 12 × 22 mm in still air: 25–35 K/W, from memory" },
    surface: "plastic",
  }),
  price: "d",
  loss: "L2",
  cautions: ["moving-parts", "hot-when-stalled", "hot-when-reversed"],
  meterTest: "idle-current",
  source: sheet,
});
