// A jumper wire, 10–30 cm. One that is broken inside its sleeve is the commonest dead part of a class.
// Does not know: colours, which hole it goes to.
import { definePart, practice } from "../definePart.ts";
import { beside } from "../footprints.ts";

export const wire = definePart({
  id: "wire",
  role: "building",
  legs: [],
  parameters: {
    type: {
      unit: "word",
      words: ["male-male", "male-female"],
      usual: { value: "male-male", source: practice },
      tellsApart: "unlessUsual",
    },
  },
  footprint: beside([], "no legs"),
  figures: {
    ohms: { value: 0.0426 + 2 * 0.015, source: "ASTM B258: 20 cm of AWG 28 is 42.6 mΩ; two crimps of 10–20 mΩ, from memory" },
  },
  price: "a",
  loss: "L3",
  meterTest: "bends-and-holds",
  source: "ASTM B258; crimps from memory",
});
