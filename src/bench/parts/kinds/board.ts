// The board: an ATmega328P at 5 V and 16 MHz.
//
// Its model is empty here: what a pin is depends on the running program, so the rehearsal makes the board's elements from boardFacts.
// Does not know: programs.
import { boardFacts, boardLegs } from "../boardFacts.ts";
import { beside } from "../footprints.ts";
import type { PartKind } from "../partKind.ts";

export const board: PartKind = {
  id: "board",
  role: "board",
  legs: boardLegs,
  alsoCalled: Object.fromEntries([
    ...Array.from({ length: 6 }, (_, i) => [`D${14 + i}`, `A${i}`]),
    ["3.3V", "3V3"],
    ["Vin", "VIN"],
  ]),
  markedLeg: null,
  parameters: {},
  states: {},
  footprint: beside(boardLegs, "the board lies beside the breadboard"),
  figures: { ownAmps: boardFacts.ownAmps },
  model: () => [],
  limits: () => [],
  noticed: () => [],
  standIns: [],
  price: "e",
  loss: "L1",
  cautions: ["hot-case"],
  meterTest: "known-pin",
  source: "ATmega328P data sheet; boardFacts.ts",
};
