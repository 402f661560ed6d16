// A small DC motor. Turning freely it takes `running-milliamps`; held, or in the moment of its start, only its winding limits it.
//
// Motors of equal looks differ by a factor of eight (a 3 V one takes 3.5 A on 5 V when held): which kind it is must be said.
// Does not know: load between free and held, speed.
import { definePart, practice } from "../definePart.ts";
import { beside } from "../footprints.ts";
import type { PartValues } from "../partKind.ts";
import { milliamps } from "../supplyModel.ts";

const page = "data page of a 130-size motor, 6 V kind";
const figures = {
  startVolts: { value: 2, source: `${page}: starts at 2 V` },
  startSeconds: { value: 0.05, source: "from memory: 20–100 ms" },
  noLoadRadians: { value: 1050, source: "from memory: 130-size motors turn at about 10,000 a minute at their voltage" },
  henries: { value: 0.001, source: "from memory: 0.2–2 mH" },
};
/** Ω that a freely turning motor looks like. */
const runningOhms = (values: PartValues) => Number(values.volts) / Number(values["running-milliamps"]);

/**
 * The constants of the two equations of a motor, from what is printed on it. At its voltage and running free it takes its running
 * current, all of it for friction, and turns at `noLoadRadians`; so k = (V − I·R)/ω. Its inertia is such that it runs up with the
 * time constant `startSeconds` = J·R/k² (any textbook of electrical machines).
 */
function constants(values: PartValues) {
  const [ohms, volts, running] = [Number(values["winding-ohms"]), Number(values.volts), Number(values["running-milliamps"])];
  // A motor that takes more running free than its winding would let through cannot turn; a tenth of its voltage is left to it.
  const k = Math.max(0.1 * volts, volts - running * ohms) / figures.noLoadRadians.value;
  const inertia = (figures.startSeconds.value * k * k) / ohms;
  return { ohms, henries: figures.henries.value, k, inertia, drag: 0, friction: k * running };
}

export const dcMotor = definePart({
  id: "dc-motor",
  legs: ["1", "2"],
  alsoCalled: { plus: "1", minus: "2" },
  parameters: {
    "winding-ohms": {
      unit: "Ω",
      usual: { value: 12, source: `${page}: 500 mA stalled at 6 V` },
      least: 0.2,
      most: 1000,
      tolerance: { value: 0.3, source: `${page}: its own figures disagree by 30 %` },
    },
    volts: { unit: "V", usual: { value: 6, source: page }, least: 0.5, most: 24, tellsApart: "unlessUsual" },
    "running-milliamps": milliamps(0.07, `${page}: 70 mA free`, { least: 0.001 }),
    "stalled-milliamps": milliamps(0.5, `${page}: 500 mA stalled`),
  },
  states: { held: { unit: "yes-no", atFirst: false } },
  footprint: beside(["1", "2"], "two tags, wires soldered or clipped on"),
  figures,
  model: (name, node, values, state) => [
    {
      kind: "resistor",
      id: name,
      a: node("1"),
      b: node("2"),
      ohms: state.held ? Number(values["winding-ohms"]) : Math.max(runningOhms(values), Number(values["winding-ohms"])),
    },
  ],
  inTime: (name, node, values, state) => [
    { kind: "motor", id: name, a: node("1"), b: node("2"), ...constants(values), stalled: state.held ? 1 : 0 },
  ],
  limits: (values) => [
    { what: "volts", caution: { value: Number(values.volts), source: page } },
    { what: "amps", caution: { value: Number(values["stalled-milliamps"]), source: `${page}: its current when stalled` } },
  ],
  noticed: (values) => [
    { sense: "turning", startAmps: figures.startVolts.value / runningOhms(values), source: `${page}: starts at 2 V` },
  ],
  // Drawn for `startSeconds` instead of the running current, at the motor's own voltage.
  draws: (values) => ({
    running: { value: Number(values["running-milliamps"]), source: `${page}: 70 mA free` },
    start: { value: Number(values["stalled-milliamps"]), source: "a start is a short stall, from memory" },
    stalled: { value: Number(values["stalled-milliamps"]), source: `${page}: 500 mA stalled` },
  }),
  coilHenries: () => figures.henries,
  standIns: [{ part: "led", when: "two in opposite directions, to show which way", source: practice }],
  warming: () => ({
    kelvinPerWatt: { value: 25, source: "a can of 20 × 25 mm in still air: 20–30 K/W, from memory" },
    surface: "metal",
  }),
  price: "c",
  loss: "L2",
  cautions: ["moving-parts", "hot-when-stalled"],
  meterTest: "motor-resistance",
  source: page,
});
