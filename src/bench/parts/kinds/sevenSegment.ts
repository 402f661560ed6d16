// A seven-segment display of one digit: eight lights with one leg in common, which comes out twice.
// Does not know: figures; each segment is a light of its own.
import { definePart, practice } from "../definePart.ts";
import { ledColour, ledColourWords, ledDiode, ledLight, ledLimits, ledSpread } from "../ledColours.ts";
import type { LegName } from "../partKind.ts";

const segments = ["a", "b", "c", "d", "e", "f", "g", "dp"];
/** Legs 1 to 5 below and 10 to 6 above the digit. */
const below: readonly LegName[] = ["e", "d", "common", "c", "dp"];
const above: readonly LegName[] = ["g", "f", "common2", "a", "b"];

export const sevenSegment = definePart({
  id: "seven-segment",
  legs: [...segments, "common", "common2"],
  joined: [["common", "common2"]],
  markedLeg: "common",
  parameters: {
    common: {
      unit: "word",
      words: ["cathode", "anode"],
      usual: { value: "cathode", source: practice },
      tellsApart: "unlessUsual",
    },
    colour: { unit: "word", words: ledColourWords, usual: { value: "red", source: practice }, tellsApart: "unlessUsual" },
  },
  footprint: {
    style: "ditch",
    // Rows of legs 15.24 mm apart: six pitches, columns c and g or d and h.
    legs: [...below.map((leg, row) => ({ leg, row, column: 0 })), ...above.map((leg, row) => ({ leg, row, column: 6 }))],
    source: "pin list of the 5161 class; legs 3 and 8 common (shop page); distances from memory",
  },
  model: (name, node, values) =>
    segments.map((leg) => {
      const id = `${name}.${leg}`;
      const colour = ledColour(String(values.colour));
      return values.common === "anode"
        ? ledDiode(id, node("common"), node(leg), colour, values.volts)
        : ledDiode(id, node(leg), node("common"), colour, values.volts);
    }),
  spreads: (values) => ({ volts: ledSpread(ledColour(String(values.colour))) }),
  limits: (values) => segments.flatMap((leg) => ledLimits(ledColour(String(values.colour)), leg)),
  noticed: (values) => segments.map((leg) => ledLight(ledColour(String(values.colour)), leg)),
  standIns: [{ part: "led", when: "seven single ones", source: practice }],
  price: "c",
  loss: "L1",
  cautions: ["small-parts"],
  meterTest: "diode-segments",
  source: "shop page of a 14 mm digit: red, 1.8 V, 10–20 mA a segment",
});
