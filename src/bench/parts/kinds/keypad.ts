// The keypad of 4 × 4 keys: each key joins a row to a column. Keys are numbered row by row from 1 to 16; 0 is none.
// Does not know: two keys at once, what is printed on them; the order of its wires differs by seller.
import { definePart, practice } from "../definePart.ts";
import { beside } from "../footprints.ts";

const rows = ["R1", "R2", "R3", "R4"];
const columns = ["C1", "C2", "C3", "C4"];
const figures = { contactOhms: { value: 100, source: "makers of membrane keypads: 10–500 Ω closed" } };

export const keypad = definePart({
  id: "keypad",
  legs: [...rows, ...columns],
  markedLeg: "R1",
  parameters: {
    "bounce-milliseconds": {
      unit: "s",
      bare: 0.001,
      usual: { value: 0.005, source: "data sheet of a 4 × 4 keypad: at most 5 ms" },
      least: 0,
      most: 0.2,
    },
  },
  states: { key: { unit: "position", atFirst: 0, least: 0, most: 16 } },
  footprint: beside([...rows, ...columns], "flat cable with eight holes"),
  figures,
  model: (name, node, _values, state) => {
    const key = Number(state.key) - 1;
    if (key < 0) return [];
    return [
      {
        kind: "resistor",
        id: name,
        a: node(rows[Math.floor(key / 4)]!),
        b: node(columns[key % 4]!),
        ohms: figures.contactOhms.value,
      },
    ];
  },
  limits: () => [{ what: "amps", unsafe: { value: 0.03, source: "data sheet of a 4 × 4 keypad: 30 mA" } }],
  standIns: [{ part: "button", when: "four of them", source: practice }],
  price: "d",
  loss: "L1",
  meterTest: "key-resistance",
  source: "data sheet of a 4 × 4 keypad; makers of membrane keypads",
});
