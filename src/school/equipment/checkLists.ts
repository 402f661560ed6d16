// What to look at before a computer or a board is handed out: check lists as codes, in the order in which they are done.
//
// Does not know: words, which devices there are.
import type { EquipmentCheckCode } from "./equipmentCode.ts";

export interface Check {
  readonly code: EquipmentCheckCode;
  /** Limits and figures that the sentence needs; SI units. */
  readonly data: Readonly<Record<string, number>>;
  /** Minutes that it takes (common practice, no source). */
  readonly minutes: number;
}

/**
 * A computer, from the power button to a program on a board. A swollen battery ends the check: off, outside, never charged again
 * (usual caution for lithium-ion cells; local rules come first). Battery time is measured, because the per cent that an old
 * battery shows can fall to nothing from 10 to 30 % (common practice, no source).
 */
export const computerCheckList: readonly Check[] = [
  { code: "equipment.checkBatteryFlat", data: {}, minutes: 1 },
  { code: "equipment.checkStarts", data: {}, minutes: 3 },
  { code: "equipment.checkCharger", data: {}, minutes: 1 },
  { code: "equipment.checkUsbPorts", data: {}, minutes: 1 },
  { code: "equipment.checkPortAppears", data: {}, minutes: 2 },
  { code: "equipment.checkCompiles", data: {}, minutes: 2 },
  { code: "equipment.checkUploads", data: {}, minutes: 2 },
  { code: "equipment.checkFreeSpace", data: { bytes: 2e9 }, minutes: 1 },
  { code: "equipment.checkBatteryMinutes", data: {}, minutes: 5 },
];

/**
 * A board, from its socket to its pins. Volts: USB 2.0 allows 4.75 to 5.25 V at a port under load (from memory); 3.3 V within
 * 0.1 V; a sound pin that drives 20 mA gives at least 4.2 V at 5 V supply (ATmega328P data sheet, V_OH), here through 220 Ω and an LED.
 */
export const boardCheckList: readonly Check[] = [
  { code: "equipment.checkSocketFirm", data: {}, minutes: 0.5 },
  { code: "equipment.checkPowerLamp", data: {}, minutes: 0.5 },
  { code: "equipment.checkNothingHot", data: {}, minutes: 1 },
  { code: "equipment.checkFiveVolts", data: { low: 4.75, high: 5.25 }, minutes: 1 },
  { code: "equipment.checkThreeVolts", data: { low: 3.2, high: 3.4 }, minutes: 0.5 },
  { code: "equipment.checkUploads", data: {}, minutes: 2 },
  { code: "equipment.checkLampD13", data: { hertz: 0.5 }, minutes: 0.5 },
  { code: "equipment.checkPins", data: { ohms: 220, low: 4.2 }, minutes: 5 },
];
