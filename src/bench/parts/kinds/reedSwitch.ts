// The reed switch: two springs in glass that close when a magnet is near and lies along them.
// Does not know: how near; a small school magnet works from 5–20 mm.
import { definePart } from "../definePart.ts";
import { freeLegs } from "../footprints.ts";

const sheet = "data sheet MDSR-10";
const figures = { contactOhms: { value: 0.12, source: `${sheet}: at most 0.12 Ω` } };

export const reedSwitch = definePart({
  id: "reed-switch",
  legs: ["1", "2"],
  parameters: {
    "bounce-milliseconds": {
      unit: "s",
      bare: 0.001,
      usual: { value: 0.00035, source: "from memory: 0.2–0.5 ms" },
      least: 0,
      most: 0.2,
    },
  },
  states: { magnet: { unit: "yes-no", atFirst: false } },
  footprint: freeLegs(["1", "2"], 5, "five rows or more; bent at least 3 mm from the glass (data sheet of a glass switch)"),
  figures,
  model: (name, node, _values, state) =>
    state.magnet ? [{ kind: "resistor", id: name, a: node("1"), b: node("2"), ohms: figures.contactOhms.value }] : [],
  limits: () => [{ what: "amps", unsafe: { value: 0.5, source: `${sheet}: 0.5 A switched` } }],
  standIns: [{ part: "button", when: "pressed instead of brought near", source: "common practice, no source" }],
  price: "b",
  loss: "L3",
  cautions: ["glass", "magnets", "small-parts"],
  meterTest: "contact-with-magnet",
  source: sheet,
});
