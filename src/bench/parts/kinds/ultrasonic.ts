// The ultrasonic distance module: a pulse of 10 µs on TRIG is answered by one on ECHO, as long as sound took there and back.
// Does not know: soft cloth, walls that stand askew, two teams that face each other.
import { definePart, practice } from "../definePart.ts";
import { inLine } from "../footprints.ts";
import { logicLevel } from "../logicLevel.ts";
import type { PartLogic } from "../partKind.ts";

const sheet = "data sheet HC-SR04";
const legs = ["VCC", "TRIG", "ECHO", "GND"];
const figures = {
  idleOhms: { value: 2500, source: "pages on the HC-SR04: below 2 mA idle" },
  metresPerSecond: { value: 343.42, source: "c = 331.3 + 0.606·θ at 20 °C" },
  leastVolts: { value: 4.5, source: "from memory: 5 V ± 10 %" },
  leastMetres: { value: 0.02, source: `${sheet}: 2 cm` },
  mostMetres: { value: 4, source: `${sheet}: 400 cm` },
  noEchoSeconds: { value: 0.038, source: "pages on the HC-SR04: about 38 ms" },
  triggerSeconds: { value: 10e-6, source: `${sheet}: at least 10 µs` },
  answerAfterSeconds: { value: 450e-6, source: "pages on the HC-SR04: eight cycles of 40 kHz go first, about 0.45 ms in all" },
  echoOhms: { value: 200, source: "from memory: a pin of a small controller" },
  triggerOhms: { value: 100_000, source: "from memory: the input hardly loads a pin" },
  pauseSeconds: { value: 0.06, source: `${sheet}: 60 ms between shots` },
};

/** One shot at a time: a trigger that comes while sound is under way is not heard. */
function logic(): PartLogic {
  let isHigh = false;
  let highSince = 0;
  let [from, to] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  return {
    look({ volts, now, state }) {
      const supply = volts("VCC");
      const was = isHigh;
      isHigh = logicLevel(volts("TRIG"), supply, was);
      if (now >= to || supply < figures.leastVolts.value) [from, to] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
      if (isHigh && !was) highSince = now;
      const isTrigger = was && !isHigh && now - highSince >= figures.triggerSeconds.value - 1e-7;
      if (isTrigger && from === Number.POSITIVE_INFINITY && supply >= figures.leastVolts.value) {
        from = now + figures.answerAfterSeconds.value;
        to = from + echoSeconds(Number(state.centimetres) / 100);
      }
      return { state: { echoes: now >= from && now < to }, wakeAt: now < from ? from : to };
    },
  };
}

/** There and back; where nothing is in reach it gives up. */
function echoSeconds(metres: number): number {
  if (metres > figures.mostMetres.value) return figures.noEchoSeconds.value;
  return (2 * Math.max(metres, figures.leastMetres.value)) / figures.metresPerSecond.value;
}

export const ultrasonic = definePart({
  id: "ultrasonic",
  legs,
  alsoCalled: { Trig: "TRIG", Echo: "ECHO", Vcc: "VCC", Gnd: "GND", trig: "TRIG", echo: "ECHO", plus: "VCC", minus: "GND" },
  markedLeg: "VCC",
  states: {
    centimetres: { unit: "cm", atFirst: 100, least: 0, most: 1000 },
    echoes: { unit: "yes-no", atFirst: false, inner: true },
  },
  footprint: inLine(legs, 1, `${sheet}: four in line`),
  figures,
  logic,
  model: (name, node, _, state) => [
    { kind: "resistor", id: name, a: node("VCC"), b: node("GND"), ohms: figures.idleOhms.value },
    { kind: "resistor", id: `${name}.trigger`, a: node("TRIG"), b: node("GND"), ohms: figures.triggerOhms.value },
    {
      kind: "resistor",
      id: `${name}.echo`,
      a: node(state.echoes ? "VCC" : "GND"),
      b: node("ECHO"),
      ohms: figures.echoOhms.value,
    },
  ],
  limits: () => [{ what: "volts", unsafe: { value: 5.5, source: "from memory: 5 V ± 10 %" } }],
  standIns: [{ part: "phototransistor", when: "with a LED, for near and far only", source: practice }],
  price: "d",
  loss: "L2",
  meterTest: "supply-voltage",
  source: sheet,
});
