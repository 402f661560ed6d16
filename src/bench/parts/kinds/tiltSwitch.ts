// The tilt switch: a ball that closes the contact while the part stands upright, and rolls away when it is tilted.
// Does not know: the chatter while it is shaken.
import { definePart } from "../definePart.ts";
import { freeLegs } from "../footprints.ts";

const figures = {
  contactOhms: { value: 1, source: "data sheets of ball switches: at most 0.1 Ω the better, 30 Ω the glass types" },
};

export const tiltSwitch = definePart({
  id: "tilt-switch",
  legs: ["1", "2"],
  parameters: {
    "bounce-milliseconds": {
      unit: "s",
      bare: 0.001,
      usual: { value: 0.02, source: "from memory: 5–50 ms" },
      least: 0,
      most: 0.5,
    },
  },
  states: { tilted: { unit: "yes-no", atFirst: false } },
  footprint: freeLegs(["1", "2"], 1, "legs 2.54 mm apart: from memory"),
  figures,
  model: (name, node, _values, state) =>
    state.tilted ? [] : [{ kind: "resistor", id: name, a: node("1"), b: node("2"), ohms: figures.contactOhms.value }],
  limits: () => [
    {
      what: "amps",
      caution: { value: 0.02, source: "from memory: tiny tin-can types 5–20 mA" },
      unsafe: { value: 0.1, source: "data sheet of a ball switch: 100 mA at 12 V" },
    },
  ],
  standIns: [{ part: "button", when: "pressed instead of tilted", source: "common practice, no source" }],
  price: "b",
  loss: "L2",
  cautions: ["mercury", "small-parts"],
  meterTest: "contact-when-tilted",
  source: "data sheets of ball switches",
});
