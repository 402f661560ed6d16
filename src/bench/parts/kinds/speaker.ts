// A small loudspeaker, 8 Ω. Straight on a pin it would take 152 mA; it needs 220 Ω in series or a transistor.
// Does not know: how loud.
import { definePart, practice } from "../definePart.ts";
import { beside } from "../footprints.ts";

export const speaker = definePart({
  id: "speaker",
  legs: ["1", "2"],
  alsoCalled: { plus: "1", minus: "2" },
  parameters: {
    ohms: { unit: "Ω", usual: { value: 8, source: practice }, least: 3, most: 100 },
    watts: { unit: "W", usual: { value: 0.25, source: `${practice}: 0.25–0.5 W` }, least: 0.05, most: 20 },
  },
  footprint: beside(["1", "2"], "two wires"),
  model: (name, node, values) => [{ kind: "resistor", id: name, a: node("1"), b: node("2"), ohms: Number(values.ohms) }],
  limits: (values) => [{ what: "watts", unsafe: { value: Number(values.watts), source: "as printed on it" } }],
  noticed: () => [{ sense: "sound", own: false, leastVolts: 0.05, source: "from memory" }],
  coilHenries: () => ({ value: 0.0001, source: "from memory: 0.1 mH" }),
  standIns: [{ part: "piezo", when: "less loud", source: practice }],
  warming: () => ({ kelvinPerWatt: { value: 80, source: "a can of 30 mm: from memory" }, surface: "metal" }),
  price: "d",
  loss: "L1",
  cautions: ["loud"],
  meterTest: "crackles",
  source: practice,
});
