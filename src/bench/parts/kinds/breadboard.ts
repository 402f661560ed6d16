// The solderless breadboard, half size: 30 rows of twice five holes, and four rails.
// Does not know: holes and strips (bench/breadboard).
import { definePart, practice } from "../definePart.ts";
import { beside } from "../footprints.ts";

export const breadboard = definePart({
  id: "breadboard",
  role: "building",
  legs: [],
  parameters: {
    type: {
      unit: "word",
      words: ["half", "full"],
      usual: { value: "half", source: `${practice}: 400 holes` },
      tellsApart: "unlessUsual",
    },
  },
  footprint: beside([], "no legs"),
  figures: {
    contactOhms: { value: 0.01, source: "a new board measured by an engineer: about 9 mΩ a contact, 11 mΩ an inch of strip" },
    wornContactOhms: { value: 0.1, source: "50–200 mΩ, from memory" },
    mostAmps: { value: 1, source: "handbooks on breadboards: not for loops above about 1 A" },
  },
  standIns: [{ part: "breadboard full", when: "always", source: practice }],
  price: "d",
  loss: "L1",
  meterTest: "rails-and-rows",
  source: "handbooks on breadboards; one measurement",
});
