// The push button, 6 × 6 mm. The two legs that face each other across the ditch are one contact and always joined: 1 with 1b,
// 2 with 2b. Pressing joins the two rows.
// Does not know: bounce in time (the rehearsal makes it from `bounce-milliseconds`).
import { definePart, practice } from "../definePart.ts";

const figures = {
  contactOhms: { value: 0.1, source: "data sheets of 6 × 6 mm push buttons: at most 0.1 Ω when new" },
};

export const button = definePart({
  id: "button",
  legs: ["1", "1b", "2", "2b"],
  joined: [
    ["1", "1b"],
    ["2", "2b"],
  ],
  parameters: {
    "bounce-milliseconds": {
      unit: "s",
      bare: 0.001,
      usual: { value: 0.00156, source: "J. Ganssle, A Guide to Debouncing: mean of 16 kinds 1.56 ms, worst 6.2 ms" },
      least: 0,
      most: 0.2,
    },
  },
  states: { pressed: { unit: "yes-no", atFirst: false } },
  footprint: {
    style: "ditch",
    legs: [
      { leg: "1", row: 0, column: 0 },
      { leg: "1b", row: 0, column: 3 },
      { leg: "2", row: 2, column: 0 },
      { leg: "2b", row: 2, column: 3 },
    ],
    source: "6 × 6 mm push button, legs 6.5 × 4.5 mm: over the ditch, two rows apart: from memory",
  },
  figures,
  // Open it is more than 100 MΩ: no path at all, so that an input without a pull-up is found to float.
  model: (name, node, _values, state) =>
    state.pressed ? [{ kind: "resistor", id: name, a: node("1"), b: node("2"), ohms: figures.contactOhms.value }] : [],
  limits: () => [{ what: "amps", unsafe: { value: 0.05, source: "data sheets of 6 × 6 mm push buttons: 1–50 mA" } }],
  standIns: [
    { part: "slide-switch", when: "where it may stay on", source: practice },
    { part: "wire", when: "two bare ends touched together", source: practice },
  ],
  price: "b",
  loss: "L3",
  cautions: ["small-parts"],
  meterTest: "contact-when-pressed",
  source: "data sheets of 6 × 6 mm push buttons",
});
