// Three lights in one case. The longest leg is common: cathode to GND, or anode to 5 V, which turns the program's sense round.
// Does not know: the colour that a person sees when they mix.
import { definePart, practice } from "../definePart.ts";
import { inLine } from "../footprints.ts";
import { ledColour, ledDiode, ledLight, ledLimits, ledSpread } from "../ledColours.ts";

const lights = [
  { leg: "red", colour: ledColour("red") },
  { leg: "green", colour: ledColour("green", "emerald") },
  { leg: "blue", colour: ledColour("blue") },
];

export const rgbLed = definePart({
  id: "rgb-led",
  legs: ["red", "common", "green", "blue"],
  markedLeg: "common",
  parameters: {
    common: {
      unit: "word",
      words: ["cathode", "anode"],
      usual: { value: "cathode", source: `${practice}: the kind in beginners' sets` },
      tellsApart: "unlessUsual",
    },
  },
  footprint: inLine(
    ["red", "common", "green", "blue"],
    1,
    "sellers' pages: red, common, green, blue; a few parts have blue third",
  ),
  model: (name, node, values) =>
    lights.map(({ leg, colour }) =>
      values.common === "anode"
        ? ledDiode(`${name}.${leg}`, node("common"), node(leg), colour, values[`${leg}-volts`])
        : ledDiode(`${name}.${leg}`, node(leg), node("common"), colour, values[`${leg}-volts`]),
    ),
  spreads: () => Object.fromEntries(lights.map(({ leg, colour }) => [`${leg}-volts`, ledSpread(colour)])),
  // 20 mA for each, also for the red one.
  limits: () =>
    lights.flatMap(({ leg, colour }) =>
      ledLimits({ ...colour, mostAmps: { value: 0.02, source: "sellers' pages: 20 mA each" } }, leg),
    ),
  noticed: () => lights.map(({ leg, colour }) => ledLight(colour, leg)),
  standIns: [{ part: "led", when: "three single ones", source: practice }],
  price: "b",
  loss: "L2",
  cautions: ["eyes-bright", "small-parts"],
  meterTest: "diode-segments",
  source: "sellers' pages of RGB LEDs",
});
