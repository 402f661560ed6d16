// The inductor: a coil with the resistance of its wire.
// Does not know: saturation.
import { definePart } from "../definePart.ts";
import { freeLegs } from "../footprints.ts";

export const inductor = definePart({
  id: "inductor",
  legs: ["1", "2"],
  parameters: {
    henries: {
      unit: "H",
      usual: null,
      least: 1e-9,
      most: 100,
      tellsApart: true,
      tolerance: { value: 0.1, source: "IEC 60062: silver band" },
    },
    tolerance: { unit: "%", usual: { value: 0.1, source: "IEC 60062: silver band" }, least: 0, most: 0.9 },
    ohms: { unit: "Ω", usual: { value: 1, source: "from memory: small axial coils 0.1–10 Ω" }, least: 0.001, most: 10_000 },
  },
  footprint: freeLegs(["1", "2"], 4, "as a resistor: from memory"),
  model: (name, node, values) => [
    { kind: "resistor", id: name, a: node("1"), b: `${name}.inside`, ohms: Number(values.ohms) },
    { kind: "inductor", id: `${name}.coil`, a: `${name}.inside`, b: node("2"), henries: Number(values.henries) },
  ],
  coilHenries: (values) => ({ value: Number(values.henries), source: "as printed on it" }),
  price: "b",
  loss: "L2",
  cautions: ["small-parts"],
  meterTest: "coil-resistance",
  source: "IEC 60062",
});
