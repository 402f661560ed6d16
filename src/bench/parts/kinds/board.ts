// The board: an ATmega328P at 5 V and 16 MHz.
//
// Its model is empty here: what a pin is depends on the running program, so the rehearsal makes the board's elements from boardFacts.
// Does not know: programs.

import { boardFacts, boardLegs } from "../boardFacts.ts";
import { definePart } from "../definePart.ts";
import { beside } from "../footprints.ts";

export const board = definePart({
  id: "board",
  role: "board",
  legs: boardLegs,
  alsoCalled: Object.fromEntries([
    ...Array.from({ length: 6 }, (_, i) => [`D${14 + i}`, `A${i}`]),
    ["3.3V", "3V3"],
    ["Vin", "VIN"],
  ]),
  footprint: beside(boardLegs, "the board lies beside the breadboard"),
  figures: { ownAmps: boardFacts.ownAmps },
  price: "e",
  loss: "L1",
  cautions: ["hot-case"],
  meterTest: "known-pin",
  source: "ATmega328P data sheet; boardFacts.ts",
});
