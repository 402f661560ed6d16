// The door of this room: other rooms enter only here.
export { coverSitting, coverSittings } from "./coverSittings.ts";
export { type Coming, type Cupboard, type CupboardItem, countOn, cupboard, withComing } from "./cupboard.ts";
export type { Coverage, Need, Sitting, SittingStock } from "./demand.ts";
export { type LessonNeedsOptions, lessonNeeds, usualSupply } from "./lessonNeeds.ts";
export { type LossRate, type LossRates, lossPerUse, lossPerYear, lossRates, rateOf, usesPerYear } from "./lossRates.ts";
export { type Share, type ShareNeed, shareOut } from "./shareOut.ts";
export { marginalSpares, type SpareNeed, sparesFor } from "./spares.ts";
export { unitsFor, type WeighedNeed, type WeighedSitting, weighSittings } from "./weighSittings.ts";
