// The class's multimeter.
// Does not know: how it is used (the words are in language).
import { definePart } from "../definePart.ts";
import { beside } from "../footprints.ts";

export const multimeter = definePart({
  id: "multimeter",
  role: "tool",
  legs: [],
  footprint: beside([], "no legs"),
  figures: {
    inputOhms: { value: 10e6, source: "from memory: 10 MΩ on volts, on some class meters 1 MΩ" },
    diodeTestVolts: { value: 1.5, source: "manuals of class meters: 1.5–3.2 V open" },
    continuityOhms: { value: 50, source: "manuals of class meters: sounds below 50 or 100 Ω" },
  },
  price: "f",
  loss: "L1",
  cautions: ["meter-fuse"],
  source: "manuals of class meters",
});
