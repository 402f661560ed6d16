// What to charge before a lesson, how long, on which socket and by when.
//
// Charged is what the lesson will run on: computers that must last through a power cut, computers that find no socket in the
// room, power banks that feed the boards. Each gets only as much as the lesson takes, and starts from empty, because nobody
// knows how full it is. The stretches with mains are filled from the lesson backwards, longest first, one thing on one
// socket; so the plan stays near the lesson and falls back on earlier days when the sockets do not suffice.
// Batteries are charged while somebody is there, so only school hours count; a swollen battery is never charged.
// Does not know: whose turn it is, words.
import { addDays, type Day, weekday } from "../../base/index.ts";
import type { ClassFile, Computer, ItemKey } from "../file/index.ts";
import { minutesToCharge, powerBankMinutes } from "./chargingTime.ts";
import type { ChargingCode } from "./equipmentCode.ts";
import { countedMinutes, cutsWithin, type LessonTime, type Stretch } from "./powerCuts.ts";

/** A lesson as charging sees it. */
export interface ChargedLesson extends LessonTime {
  readonly teams: number;
  /** What feeds the boards, if it is not the computer: "power-bank". */
  readonly supply?: ItemKey | null;
}

/** One thing on one socket for one stretch of time. */
export interface Charge {
  readonly kind: "computer" | "power-bank";
  /** Id of the computer, or "power-bank 1". */
  readonly id: string;
  readonly date: Day;
  /** Minutes after midnight. */
  readonly from: number;
  readonly to: number;
  /** From 1. */
  readonly socket: number;
  /** Share of the full charge that it must reach at least, 0 to 1. */
  readonly share: number;
}

export interface ChargingPlan {
  readonly why: "nothing runs on a battery" | "power cut" | "few sockets" | "power banks";
  /** In the order of time, then of sockets. */
  readonly charges: readonly Charge[];
  /** What cannot be made ready. */
  readonly left: readonly { readonly id: string; readonly code: ChargingCode; readonly minutes: number }[];
  /** Things to charge, and the minutes from the first plug to the last as long as mains and school hours let it run. */
  readonly count: number;
  readonly minutes: number;
  /** Computers that must run on their batteries, and how many of them will be ready. */
  readonly wanted: number;
  readonly ready: number;
  /** Whether everything that the teams need is ready in time. */
  readonly fits: boolean;
}

export interface ChargingOptions {
  /** School hours, minutes after midnight. */
  readonly hours: Stretch;
  /** How many days before the lesson may be used. */
  readonly daysBefore: number;
  /** Minutes before the lesson by which everything is unplugged and handed out. */
  readonly ready: number;
}

/** 7:30 to 16:00, the three days before, ten minutes to hand out: common practice, no source. */
export const usualHours: ChargingOptions = { hours: { from: 450, to: 960 }, daysBefore: 3, ready: 10 };

interface Job {
  readonly kind: Charge["kind"];
  readonly id: string;
  readonly minutes: number;
  readonly share: number;
}

/** Plugging happens on the clock's five minutes. */
const step = 5;

export function chargingPlan(classFile: ClassFile, lesson: ChargedLesson, options: ChargingOptions = usualHours): ChargingPlan {
  const { jobs, tooSmall, why, wantedComputers } = whatToCharge(classFile, lesson);
  const sockets = Math.max(0, Math.floor(classFile.room.sockets));
  const stretches = stretchesBefore(classFile, lesson, options);
  const charges: Charge[] = [];
  const left: { id: string; code: ChargingCode; minutes: number }[] = [...tooSmall];
  const plugs = stretches.map((stretch) => Array.from({ length: sockets }, (_, s) => ({ ...stretch, socket: s + 1 })));
  for (const job of [...jobs].sort((a, b) => b.minutes - a.minutes)) {
    // The latest stretch with room, and in it the socket that is free the longest.
    const open = plugs.map((sides) => sides.filter((p) => p.to - p.from >= job.minutes)).find((sides) => sides.length > 0);
    const plug = open?.reduce((best, p) => (p.to > best.to ? p : best));
    if (!plug) {
      left.push({ id: job.id, code: sockets === 0 ? "equipment.noSocket" : "equipment.noTimeToCharge", minutes: job.minutes });
      continue;
    }
    const { date, to, socket } = plug;
    charges.push({ kind: job.kind, id: job.id, date, from: to - job.minutes, to, socket, share: job.share });
    plug.to -= job.minutes;
  }
  charges.sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : a.from - b.from || a.socket - b.socket));
  const readyComputers = charges.filter((c) => c.kind === "computer").length;
  const unready = left.filter((l) => l.id.startsWith("power-bank")).length;
  return {
    why,
    charges,
    left,
    count: charges.length,
    minutes: stretches.reduce((sum, stretch) => sum + busyMinutes(stretch, charges), 0),
    wanted: wantedComputers,
    ready: readyComputers,
    fits: readyComputers >= wantedComputers && unready === 0,
  };
}

interface Wanted {
  readonly why: ChargingPlan["why"];
  readonly jobs: readonly Job[];
  readonly tooSmall: readonly { readonly id: string; readonly code: ChargingCode; readonly minutes: number }[];
  /** Computers that must be ready. */
  readonly wantedComputers: number;
}

function whatToCharge(classFile: ClassFile, lesson: ChargedLesson): Wanted {
  const serving = classFile.computers.filter((c) => c.works && c.usbPorts > 0);
  const cuts = cutsWithin(classFile.powerCuts, lesson.date, lesson.start, lesson.start + lesson.minutes);
  const dark = cuts.reduce((sum, cut) => sum + cut.to - cut.from, 0);
  // In a cut every team's computer runs on its battery for as long as the cut; without one, those that find no socket all along.
  const wantedComputers = dark > 0 ? lesson.teams : Math.max(0, Math.min(lesson.teams, serving.length) - classFile.room.sockets);
  const needed = dark > 0 ? dark : lesson.minutes;
  const lasting = serving
    .filter((c) => (countedMinutes(c) ?? 0) >= needed)
    .map((c) => jobFor(c, needed))
    .sort((a, b) => a.minutes - b.minutes)
    .slice(0, wantedComputers);
  const tooSmall = serving
    // Without a cut those with a weak battery sit at the sockets, so nothing is wrong with them.
    .filter((c) => dark > 0 && lasting.length < wantedComputers && c.batteryMinutes !== null && countedMinutes(c)! < needed)
    .map((c) => ({ id: c.id, code: "equipment.batteryTooSmall" as const, minutes: needed }));
  const banks = lesson.supply?.split(" ")[0] === "power-bank" ? Math.min(lesson.teams, bankCount(classFile)) : 0;
  const bankJobs = Array.from({ length: banks }, (_, b): Job => {
    return { kind: "power-bank", id: `power-bank ${b + 1}`, minutes: upToStep(powerBankMinutes), share: 1 };
  });
  const why =
    dark > 0 ? "power cut" : wantedComputers > 0 ? "few sockets" : banks > 0 ? "power banks" : "nothing runs on a battery";
  return { why, jobs: [...lasting, ...bankJobs], tooSmall, wantedComputers };
}

/** The share of a full battery that the minutes need, and how long it takes to get there from empty. */
function jobFor(computer: Computer, needed: number): Job {
  const share = Math.min(1, needed / countedMinutes(computer)!);
  return { kind: "computer", id: computer.id, minutes: upToStep(minutesToCharge(0, share)), share };
}

function bankCount(classFile: ClassFile): number {
  return classFile.supplies.filter((s) => s.item.split(" ")[0] === "power-bank").reduce((sum, s) => sum + s.count, 0);
}

function upToStep(minutes: number): number {
  return Math.ceil(minutes / step - 1e-9) * step;
}

/** Stretches of school hours with mains before the lesson, the latest first; Saturdays and Sundays left out. */
function stretchesBefore(
  classFile: ClassFile,
  lesson: ChargedLesson,
  options: ChargingOptions,
): { date: Day; from: number; to: number }[] {
  const found: { date: Day; from: number; to: number }[] = [];
  for (let back = 0; back <= options.daysBefore; back += 1) {
    const date = addDays(lesson.date, -back);
    if (back > 0 && weekday(date) > 5) continue;
    const end = back === 0 ? Math.min(options.hours.to, lesson.start - options.ready) : options.hours.to;
    if (end <= options.hours.from) continue;
    let from = options.hours.from;
    const ofDay: { date: Day; from: number; to: number }[] = [];
    for (const cut of cutsWithin(classFile.powerCuts, date, options.hours.from, end)) {
      if (cut.from > from) ofDay.push({ date, from, to: cut.from });
      from = cut.to;
    }
    if (end > from) ofDay.push({ date, from, to: end });
    found.push(...ofDay.reverse());
  }
  return found;
}

/** Minutes of a stretch in which something hangs on a socket. */
function busyMinutes(stretch: { date: Day; from: number; to: number }, charges: readonly Charge[]): number {
  const inside = charges.filter((c) => c.date === stretch.date && c.from >= stretch.from && c.to <= stretch.to);
  return inside.length === 0 ? 0 : Math.max(...inside.map((c) => c.to)) - Math.min(...inside.map((c) => c.from));
}
