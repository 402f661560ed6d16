// The USB port of a computer: what feeds a lesson that names no other supply.
// Does not know: the cable (usbCable.ts), the board's own fuse (boardFacts.ts).
import { definePart } from "../definePart.ts";
import type { PartValues, SupplyFacts } from "../partKind.ts";
import { given, insideOhms, milliamps, supplyCommon, supplyModel } from "../supplyModel.ts";

const facts = (values: PartValues): SupplyFacts => ({
  into: "USB",
  volts: { value: [4.75, 5, 5.25], source: "USB 2.0, table 7-7: 4.75–5.25 V at a high-power port" },
  ohms: given(values.ohms, "from memory: switch and tracks of a port"),
  limitAmps: given(values.milliamps, "USB 2.0, section 7.2.1: 500 mA after configuration; USB 3: 900 mA"),
  ampHours: null,
  offBelowAmps: null,
  offAfterSeconds: null,
});

export const usbPort = definePart({
  ...supplyCommon,
  id: "usb-port",
  parameters: {
    milliamps: milliamps(0.5, "USB 2.0, section 7.2.1", { tellsApart: true }),
    ohms: insideOhms(0.1, "from memory"),
  },
  model: supplyModel(facts),
  supply: facts,
  price: "f",
  loss: "L1",
  meterTest: "supply-voltage",
  source: "USB 2.0 specification",
});
