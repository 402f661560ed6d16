// The slide switch with three legs: the middle one is common; in position 1 it is joined to leg 1, in position 2 to leg 2.
// Does not know: bounce in time.
import { definePart, practice } from "../definePart.ts";
import { inLine } from "../footprints.ts";

const figures = { contactOhms: { value: 0.05, source: "from memory: 0.03–0.1 Ω" } };

export const slideSwitch = definePart({
  id: "slide-switch",
  legs: ["1", "common", "2"],
  alsoCalled: { "3": "2" },
  markedLeg: "common",
  parameters: {
    "bounce-milliseconds": {
      unit: "s",
      bare: 0.001,
      usual: { value: 0.003, source: "from memory: 1–5 ms" },
      least: 0,
      most: 0.2,
    },
  },
  states: { position: { unit: "position", atFirst: 1, least: 1, most: 2 } },
  footprint: inLine(["1", "common", "2"], 1, "three legs 2.54 mm apart: from memory"),
  figures,
  model: (name, node, _values, state) => [
    { kind: "resistor", id: name, a: node("common"), b: node(state.position === 2 ? "2" : "1"), ohms: figures.contactOhms.value },
  ],
  limits: () => [{ what: "amps", unsafe: { value: 0.1, source: "from memory: 0.1–0.3 A" } }],
  standIns: [{ part: "wire", when: "moved by hand", source: practice }],
  price: "b",
  loss: "L2",
  cautions: ["small-parts"],
  meterTest: "contact-by-position",
  source: "from memory",
});
