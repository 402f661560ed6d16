// The devices of one lesson: boards, data cables and computers that can serve, what they cover, and what a power cut takes away.
//
// Does not know: parts on the trays, what the lesson draws, money, words.
import { daysBetween } from "../../base/index.ts";
import type { ClassFile, Computer, Device } from "../file/index.ts";
import { chanceEnough, type DeviceKind, deviceRates, pauseDays } from "./deviceRates.ts";
import type { EquipmentFindingCode } from "./equipmentCode.ts";
import { countedMinutes, cutsWithin, type LessonTime } from "./powerCuts.ts";

/** How far one kind of device goes round. */
export interface DeviceCover {
  readonly kind: DeviceKind;
  /** Ids of those that can serve, and of those that cannot. */
  readonly serving: readonly string[];
  readonly out: readonly string[];
  readonly have: number;
  /** One a team. */
  readonly wanted: number;
  readonly spare: number;
  readonly short: number;
  /** Chance that one of them works at this lesson (deviceRates.ts). */
  readonly works: number;
  /** Chance that enough of them work. */
  readonly chance: number;
}

/** What a known cut means for the computers. Minutes after midnight. */
export interface BatteryReport {
  readonly from: number;
  readonly to: number;
  /** Minutes of the lesson without mains. */
  readonly minutes: number;
  /** Computers wanted, one a team. */
  readonly wanted: number;
  /** Computers that serve. */
  readonly computers: number;
  /** How many serve and last, counted with a margin for age. */
  readonly lasting: number;
  readonly short: number;
  readonly lastingIds: readonly string[];
  /** They serve, but nobody has tried how long they last, so they are not counted. */
  readonly untried: readonly string[];
  /** Teams without a place even if two of them share each computer that lasts and has two ports. */
  readonly unserved: number;
}

export interface EquipmentReport {
  readonly boards: DeviceCover;
  readonly cables: DeviceCover;
  readonly computers: DeviceCover;
  /** Dead pins of boards that work: they can serve a lesson that leaves those pins alone. */
  readonly deadPins: readonly { readonly board: string; readonly pins: readonly string[] }[];
  /** Teams that work with another one at the same computer, and teams that find no place at all. */
  readonly sharing: { readonly teams: number; readonly unserved: number };
  /** Least current that a port of a serving computer gives, mA; null without a computer. */
  readonly usbMilliamps: number | null;
  /** Null where no cut is known in the time of the lesson. */
  readonly battery: BatteryReport | null;
  readonly findings: readonly {
    readonly code: EquipmentFindingCode;
    readonly data: Readonly<Record<string, string | number>>;
  }[];
}

/** Teams at one computer at most: more than two cannot see the screen (common practice, no source). */
const teamsAtOne = 2;
/** mA that a lesson counts on from a port (USB 2.0, high-power port). */
const fullPort = 500;

/**
 * @param teams how many teams there are on the day; each wants a board, a data cable and a computer.
 */
export function equipmentFor(classFile: ClassFile, lesson: LessonTime, teams: number): EquipmentReport {
  const afterPause = isFirstAfterPause(classFile, lesson);
  const works = (kind: DeviceKind) => 1 - (afterPause ? deviceRates[kind].afterPause : deviceRates[kind].usual);
  const serves = (computer: Computer) => computer.works && computer.usbPorts > 0;
  const serving = classFile.computers.filter(serves);
  const cover = (kind: DeviceKind, all: readonly { readonly id: string }[], good: readonly { readonly id: string }[]) =>
    coverOf(kind, all, good, teams, works(kind));
  const working = (devices: readonly Device[]) => devices.filter((d) => d.works);
  const report = {
    boards: cover("board", classFile.boards, working(classFile.boards)),
    cables: cover("usb-cable", classFile.cables, working(classFile.cables)),
    computers: cover("computer", classFile.computers, serving),
    deadPins: working(classFile.boards)
      .filter((board) => board.deadPins.length > 0)
      .map((board) => ({ board: board.id, pins: board.deadPins })),
    sharing: shareComputers(serving, teams),
    usbMilliamps: serving.length === 0 ? null : Math.min(...serving.map((c) => c.usbMilliamps)),
    battery: batteryReport(classFile, serving, lesson, teams),
  };
  return { ...report, findings: findingsOf(classFile, report, serving, teams, afterPause) };
}

function coverOf(
  kind: DeviceKind,
  all: readonly { readonly id: string }[],
  good: readonly { readonly id: string }[],
  wanted: number,
  works: number,
): DeviceCover {
  const serving = good.map((d) => d.id);
  return {
    kind,
    serving,
    out: all.map((d) => d.id).filter((id) => !serving.includes(id)),
    have: serving.length,
    wanted,
    spare: Math.max(0, serving.length - wanted),
    short: Math.max(0, wanted - serving.length),
    works,
    chance: chanceEnough(serving.length, wanted, works),
  };
}

/** One team a computer first; then a second team at each that has a port for it. */
function shareComputers(computers: readonly Computer[], teams: number): { teams: number; unserved: number } {
  const over = Math.max(0, teams - computers.length);
  const places = computers.reduce((sum, c) => sum + Math.min(teamsAtOne, c.usbPorts) - 1, 0);
  const second = Math.min(over, places);
  return { teams: second * teamsAtOne, unserved: over - second };
}

function batteryReport(
  classFile: ClassFile,
  serving: readonly Computer[],
  { date, start, minutes }: LessonTime,
  teams: number,
): BatteryReport | null {
  const cuts = cutsWithin(classFile.powerCuts, date, start, start + minutes);
  if (cuts.length === 0) return null;
  // Mains between two cuts would charge a little; that is left out, to be safe.
  const dark = cuts.reduce((sum, cut) => sum + cut.to - cut.from, 0);
  // One that nobody tried is not counted on: it may last, and it may not.
  const lasting = serving.filter((c) => {
    const minutes = countedMinutes(c);
    return minutes !== null && minutes >= dark;
  });
  return {
    from: cuts[0]!.from,
    to: cuts.at(-1)!.to,
    minutes: dark,
    wanted: teams,
    computers: serving.length,
    lasting: lasting.length,
    short: Math.max(0, teams - lasting.length),
    lastingIds: lasting.map((c) => c.id),
    untried: serving.filter((c) => c.batteryMinutes === null).map((c) => c.id),
    unserved: shareComputers(lasting, teams).unserved,
  };
}

/** No class of the file had a lesson in the weeks before: drivers, updates and empty batteries show on such a day. */
function isFirstAfterPause(classFile: ClassFile, { date }: LessonTime): boolean {
  return !classFile.classes.some((group) => group.lessons.some((l) => l.date < date && daysBetween(l.date, date) <= pauseDays));
}

function findingsOf(
  classFile: ClassFile,
  report: Omit<EquipmentReport, "findings">,
  serving: readonly Computer[],
  teams: number,
  afterPause: boolean,
): EquipmentReport["findings"] {
  const { boards, cables, computers, battery, sharing } = report;
  const found: { code: EquipmentFindingCode; data: Record<string, string | number> }[] = [];
  const say = (code: EquipmentFindingCode, data: Record<string, string | number>) => found.push({ code, data });
  if (boards.short > 0) say("equipment.boardsShort", { count: boards.have, wanted: teams });
  if (cables.short > 0) say("equipment.cablesShort", { count: cables.have, wanted: teams });
  if (computers.short > 0) say("equipment.computersShort", { count: computers.have, wanted: teams });
  if (sharing.teams > 0) say("equipment.teamsShare", { computers: computers.have, teams: sharing.teams });
  if (sharing.unserved > 0) say("equipment.teamsWithoutComputer", { teams: sharing.unserved });
  for (const { board, pins } of report.deadPins) say("equipment.deadPins", { board, pins: pins.join(", ") });
  for (const c of classFile.computers) if (c.works && c.usbPorts === 0) say("equipment.computerWithoutPort", { computer: c.id });
  for (const c of serving)
    if (c.usbMilliamps < fullPort) say("equipment.weakPort", { computer: c.id, milliamps: c.usbMilliamps });
  const used = Math.min(teams, serving.length);
  if (battery === null && used > classFile.room.sockets)
    say("equipment.fewSockets", { sockets: classFile.room.sockets, computers: used });
  if (battery !== null) {
    say("equipment.powerCut", { from: battery.from, to: battery.to, minutes: battery.minutes });
    if (battery.short > 0)
      say("equipment.batteriesShort", { count: battery.lasting, computers: battery.computers, untried: battery.untried.length });
    for (const computer of battery.untried) say("equipment.batteryUntried", { computer });
  }
  if (afterPause) say("equipment.firstAfterPause", { computers: computers.have });
  return found;
}
