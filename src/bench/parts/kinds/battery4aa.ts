// Four AA cells in a holder.
//
// Fresh alkaline ones have 6.4 V, above the chip's 6.0 V, so they may only go through the regulator, which then has too little:
// the rehearsal says so. Four NiMH cells suit the 5 V pin.
// Does not know: how full they are.
import { definePart } from "../definePart.ts";
import type { PartValues, SupplyFacts } from "../partKind.ts";
import { batteryOhms, batteryType, given, supplyCommon, supplyModel } from "../supplyModel.ts";

const fours: Readonly<Record<string, Pick<SupplyFacts, "into" | "volts" | "ohms" | "ampHours">>> = {
  alkaline: {
    into: "VIN",
    volts: { value: [4.0, 6, 6.4], source: "4 × 1.0–1.60 V (LR6 product specification: 1.60 V open when fresh)" },
    ohms: { value: 4 * 0.25, source: "LR6: at most 0.40 Ω by its specification, 0.15–0.3 Ω from memory; four in series" },
    ampHours: { value: 2.2, source: "LR6 product specification: 2200 mAh at 43 Ω, 4 h a day, to 0.9 V" },
  },
  nimh: {
    into: "5V",
    volts: { value: [4.4, 5, 5.6], source: "4 × 1.1–1.4 V: from memory" },
    ohms: { value: 4 * 0.05, source: "from memory; four in series" },
    ampHours: { value: 1.9, source: "from memory" },
  },
};

const facts = (values: PartValues): SupplyFacts => {
  const four = fours[String(values.type)] ?? fours.alkaline!;
  return {
    ...four,
    ohms: Number(values.ohms) > 0 ? given(values.ohms, "the lesson") : four.ohms,
    limitAmps: null,
    offBelowAmps: null,
    offAfterSeconds: null,
  };
};

export const battery4aa = definePart({
  ...supplyCommon,
  id: "battery-4aa",
  parameters: {
    type: batteryType(["alkaline", "nimh"], "alkaline", { LR6: "alkaline", HR6: "nimh" }),
    ohms: batteryOhms,
  },
  model: supplyModel(facts),
  supply: facts,
  price: "d",
  loss: "L3",
  cautions: ["shorted-battery"],
  meterTest: "loaded-voltage",
  source: "LR6 product specification; IEC 60086",
});
