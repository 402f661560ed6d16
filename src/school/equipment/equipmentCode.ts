// Everything that this room can say, as codes: `language` must have a sentence for each.
//
// Does not know: words.

/** What a look at the devices of one lesson finds. Data beside each. */
export type EquipmentFindingCode =
  /** count, wanted */
  | "equipment.boardsShort"
  | "equipment.cablesShort"
  | "equipment.computersShort"
  /** board, pins */
  | "equipment.deadPins"
  /** computers, teams: some teams work at one computer two by two */
  | "equipment.teamsShare"
  /** teams: no place at a computer even when they share */
  | "equipment.teamsWithoutComputer"
  /** computer */
  | "equipment.computerWithoutPort"
  /** computer, milliamps: a port that gives less than the 500 mA a lesson counts on */
  | "equipment.weakPort"
  /** sockets, computers: the others run on their batteries even without a cut */
  | "equipment.fewSockets"
  /** from, to, minutes */
  | "equipment.powerCut"
  /** count: of computers that serve, those that last; untried: nobody knows */
  | "equipment.batteriesShort"
  /** computer: nobody has tried how long it lasts */
  | "equipment.batteryUntried"
  /** first lesson after a pause: more fails than usual */
  | "equipment.firstAfterPause";

/** What is done to a computer or a board when it is looked through. */
export type EquipmentCheckCode =
  | "equipment.checkStarts"
  | "equipment.checkBatteryFlat"
  | "equipment.checkBatteryMinutes"
  | "equipment.checkCharger"
  | "equipment.checkUsbPorts"
  | "equipment.checkPortAppears"
  | "equipment.checkCompiles"
  | "equipment.checkUploads"
  | "equipment.checkFreeSpace"
  | "equipment.checkSocketFirm"
  | "equipment.checkPowerLamp"
  | "equipment.checkNothingHot"
  | "equipment.checkFiveVolts"
  | "equipment.checkThreeVolts"
  | "equipment.checkLampD13"
  | "equipment.checkPins";

/** Why something cannot be charged in time. */
export type ChargingCode =
  /** No stretch with mains is long enough, or all sockets are taken. */
  | "equipment.noTimeToCharge"
  /** The room has no socket. */
  | "equipment.noSocket"
  /** Its battery would not last even when full. */
  | "equipment.batteryTooSmall";

export type EquipmentCode = EquipmentFindingCode | EquipmentCheckCode | ChargingCode;
