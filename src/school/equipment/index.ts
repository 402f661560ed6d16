// The door of this room: other rooms enter only here.
export {
  type Charge,
  type ChargedLesson,
  type ChargingOptions,
  type ChargingPlan,
  chargingPlan,
  usualHours,
} from "./chargingPlan.ts";
export { minutesToCharge, powerBankMinutes } from "./chargingTime.ts";
export { boardCheckList, type Check, computerCheckList } from "./checkLists.ts";
export { chanceEnough, type DeviceKind, type DeviceRate, deviceRates } from "./deviceRates.ts";
export type { ChargingCode, EquipmentCheckCode, EquipmentCode, EquipmentFindingCode } from "./equipmentCode.ts";
export { type BatteryReport, type DeviceCover, type EquipmentReport, equipmentFor } from "./equipmentFor.ts";
export { batteryMargin, countedMinutes, type LessonTime } from "./powerCuts.ts";
