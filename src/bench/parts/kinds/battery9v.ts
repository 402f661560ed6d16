// The 9 V block. It has little to give: 1.7 Ω inside and half an ampere-hour, and the regulator turns a half of it into heat.
// Does not know: how old it is.
import { definePart } from "../definePart.ts";
import type { PartValues, Sourced, SupplyFacts } from "../partKind.ts";
import { batteryOhms, batteryType, given, supplyCommon, supplyModel } from "../supplyModel.ts";

/** Fresh blocks by their name in IEC 60086. */
const blocks: Readonly<Record<string, { ohms: Sourced<number>; ampHours: Sourced<number> }>> = {
  "6LR61": {
    ohms: { value: 1.7, source: "data sheet MN1604: 1.7 Ω at 1 kHz when fresh" },
    ampHours: { value: 0.55, source: "battery tables: 500–600 mAh to 6.0 V at low drain" },
  },
  "6F22": {
    ohms: { value: 25, source: "10–35 Ω when fresh, from memory" },
    ampHours: { value: 0.35, source: "battery tables: 300–400 mAh at low drain" },
  },
};

const facts = (values: PartValues): SupplyFacts => {
  const block = blocks[String(values.type)] ?? blocks["6LR61"]!;
  return {
    into: "VIN",
    volts: { value: [7, 9, 9.6], source: "six cells of 1.5 V (IEC 60086); 9.6 V new and 7 V near its end from memory" },
    ohms: Number(values.ohms) > 0 ? given(values.ohms, "the lesson") : block.ohms,
    limitAmps: null,
    ampHours: block.ampHours,
    offBelowAmps: null,
    offAfterSeconds: null,
  };
};

export const battery9v = definePart({
  ...supplyCommon,
  id: "battery-9v",
  parameters: {
    type: batteryType(["6LR61", "6F22"], "6LR61", { alkaline: "6LR61", "zinc-carbon": "6F22" }),
    ohms: batteryOhms,
  },
  model: supplyModel(facts),
  supply: facts,
  price: "d",
  loss: "L3",
  cautions: ["shorted-battery"],
  meterTest: "loaded-voltage",
  source: "data sheet MN1604; IEC 60086",
});
