// An adapter for the mains: 5 V with a USB socket, or more volts with a plug for VIN.
// Does not know: sockets of the room, leads on the floor.
import { definePart, practice } from "../definePart.ts";
import type { PartValues, SupplyFacts } from "../partKind.ts";
import { given, insideOhms, milliamps, supplyCommon, supplyModel } from "../supplyModel.ts";

const facts = (values: PartValues): SupplyFacts => {
  const volts = Number(values.volts);
  return {
    // Above the chip's 6.0 V only the regulator can take it.
    into: volts > 6 ? "VIN" : "USB",
    volts: { value: [volts * 0.95, volts, volts * 1.05], source: `as printed on it, ±5 %: ${practice}` },
    ohms: given(values.ohms, "from memory: its lead"),
    limitAmps: given(values.milliamps, "as printed on it"),
    ampHours: null,
    offBelowAmps: null,
    offAfterSeconds: null,
  };
};

export const adapter = definePart({
  ...supplyCommon,
  id: "adapter",
  parameters: {
    milliamps: milliamps(1, practice, { tellsApart: true }),
    volts: {
      unit: "V",
      usual: { value: 5, source: `${practice}: an adapter with a USB socket` },
      least: 3,
      most: 24,
      tellsApart: "unlessUsual",
    },
    ohms: insideOhms(0.1, "from memory"),
  },
  model: supplyModel(facts),
  supply: facts,
  price: "e",
  loss: "L1",
  cautions: ["mains-adapter"],
  meterTest: "supply-voltage",
  source: practice,
});
