// The joystick module: two potentiometers that rest in the middle, and a push that joins SW to GND.
// Does not know: that its full travel comes before the stop.
import { definePart, practice } from "../definePart.ts";
import { beside } from "../footprints.ts";

const legs = ["GND", "5V", "VRx", "VRy", "SW"];
const figures = {
  trackOhms: { value: 10_000, source: "from memory: 10 kΩ each" },
  endOhms: { value: 2, source: "from memory" },
  contactOhms: { value: 0.1, source: "as a push button" },
};

export const joystick = definePart({
  id: "joystick",
  legs,
  alsoCalled: { "+5V": "5V", VCC: "5V", VRX: "VRx", VRY: "VRy", plus: "5V", minus: "GND" },
  markedLeg: "5V",
  parameters: {
    "bounce-milliseconds": {
      unit: "s",
      bare: 0.001,
      usual: { value: 0.005, source: "from memory: 1–10 ms" },
      least: 0,
      most: 0.2,
    },
  },
  states: {
    x: { unit: "%", atFirst: 0.5, least: 0, most: 1 },
    y: { unit: "%", atFirst: 0.5, least: 0, most: 1 },
    pressed: { unit: "yes-no", atFirst: false },
  },
  footprint: beside(legs, "module with five legs in line, joined by wires"),
  figures,
  model: (name, node, _values, state) => {
    const half = (share: number) => share * figures.trackOhms.value + figures.endOhms.value;
    const axis = (letter: "x" | "y") => {
      const wiper = node(`VR${letter}`);
      const share = Number(state[letter]);
      return [
        { kind: "resistor", id: `${name}.${letter}up`, a: node("5V"), b: wiper, ohms: half(1 - share) },
        { kind: "resistor", id: `${name}.${letter}down`, a: wiper, b: node("GND"), ohms: half(share) },
      ] as const;
    };
    const push = { kind: "resistor", id: name, a: node("SW"), b: node("GND"), ohms: figures.contactOhms.value } as const;
    return [...axis("x"), ...axis("y"), ...(state.pressed ? [push] : [])];
  },
  standIns: [{ part: "potentiometer", when: "two of them", source: practice }],
  price: "d",
  loss: "L2",
  meterTest: "wiper-moves",
  source: "from memory",
});
