// The computer on which programs are written. It is counted like a part, because a lesson cannot be held without it.
// Does not know: its battery (school/equipment).
import { definePart, practice } from "../definePart.ts";
import { beside } from "../footprints.ts";

export const computer = definePart({
  id: "computer",
  role: "tool",
  legs: [],
  footprint: beside([], "no legs"),
  price: "f",
  loss: "L1",
  cautions: ["power-bank-care"],
  source: practice,
});
