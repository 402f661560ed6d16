// A school with devices for tests; everything in it is invented.
import { type Day, parseDay } from "../../base/index.ts";
import type { ClassFile, Computer, Device } from "../file/index.ts";

export const day = (text: string): Day => parseDay(text)!;

/** "95 120 0 ?": one computer for each, minutes seen on the battery; ? where nobody tried. */
export function computers(minutes: string): Computer[] {
  return minutes
    .split(" ")
    .filter((m) => m !== "")
    .map((m, i) => ({
      id: `c${i + 1}`,
      works: true,
      batteryMinutes: m === "?" ? null : Number(m),
      usbMilliamps: 500,
      usbPorts: 2,
      note: "",
    }));
}

export function devices(count: number, more: Partial<Device> = {}): Device[] {
  return Array.from({ length: count }, (_, i) => ({ id: `d${i + 1}`, works: true, deadPins: [], note: "", ...more }));
}

/** A lesson was held in the week before 2027-03-04, so that day is not the first after a pause. */
export function school(more: Partial<ClassFile> = {}): ClassFile {
  return {
    format: "benchday-class/1",
    about: "invented",
    lessonFolder: null,
    kitFolder: null,
    language: "en",
    currency: "EUR",
    decimals: 2,
    chance: 0.9,
    budget: null,
    room: { name: "Room 12", sockets: 12, lux: null },
    classes: [
      {
        id: "7b",
        name: "7b",
        teamSize: 3,
        pupils: [],
        apart: [],
        together: [],
        balance: null,
        lessons: [{ lesson: "lighthouse", date: day("2027-02-25"), start: 480, absent: [] }],
      },
    ],
    kits: [],
    stock: [],
    movements: [],
    suppliers: [],
    computers: computers("120 120 120"),
    boards: devices(3),
    cables: devices(3),
    supplies: [],
    powerCuts: [],
    decisions: [],
    counts: [],
    log: [],
    ...more,
  } as ClassFile;
}
