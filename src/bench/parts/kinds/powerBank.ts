// A power bank: feeds a set for a day, but switches itself off when too little is drawn.
// Does not know: how full it is.
import { definePart, practice } from "../definePart.ts";
import type { PartValues, SupplyFacts } from "../partKind.ts";
import { given, insideOhms, milliamps, supplyCommon, supplyModel } from "../supplyModel.ts";

const capacity = "10 000 mAh of cells at 3.7 V are 7400 mAh at 5 V; 80–90 % of them arrive: 5920–6660 mAh, their middle";

const facts = (values: PartValues): SupplyFacts => ({
  into: "USB",
  volts: { value: [4.75, 5, 5.25], source: "USB 2.0, table 7-7" },
  ohms: given(values.ohms, "from memory: its converter"),
  limitAmps: given(values.milliamps, "as printed on it"),
  ampHours: given(values["amp-hours"], capacity),
  offBelowAmps: given(values["off-below-milliamps"], "a few tens of mA: common practice, no standard"),
  offAfterSeconds: { value: 30, source: "5–120 s: common practice, no standard" },
});

export const powerBank = definePart({
  ...supplyCommon,
  id: "power-bank",
  parameters: {
    milliamps: milliamps(2, practice, { tellsApart: "unlessUsual" }),
    "off-below-milliamps": milliamps(0.06, "from memory: below 60 mA it may switch off within a minute", { least: 0 }),
    "amp-hours": { unit: "Ah", usual: { value: 6.29, source: capacity }, least: 0.1, most: 100 },
    ohms: insideOhms(0.1, "from memory"),
  },
  model: supplyModel(facts),
  supply: facts,
  price: "f",
  loss: "L1",
  cautions: ["power-bank-care"],
  meterTest: "supply-voltage",
  source: "explanations of capacity by sellers of power banks",
});
