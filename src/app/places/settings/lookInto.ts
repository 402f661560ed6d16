// What a class file holds, in a few numbers, so that a person can look before taking it: a day before, a copy, a file.
//
// Does not know: sentences, where the file came from.
import type { Day } from "../../../base/index.ts";
import type { ClassFile } from "../../../school/file/index.ts";

/** Keys of the catalogue under `fileHolds`. */
export type Held =
  | "classes"
  | "pupils"
  | "lessonsToCome"
  | "lessonsOver"
  | "boxes"
  | "stockLines"
  | "devices"
  | "suppliers"
  | "powerCuts"
  | "decisions"
  | "countIns"
  | "logEntries";

/** @param today divides the lessons into those that are over and those to come. */
export function lookInto(classFile: ClassFile, today: Day): ReadonlyMap<Held, number> {
  const sum = (numbers: readonly number[]) => numbers.reduce((total, n) => total + n, 0);
  const dates = classFile.classes.flatMap((group) => group.lessons.map((lesson) => lesson.date));
  return new Map<Held, number>([
    ["classes", classFile.classes.length],
    ["pupils", sum(classFile.classes.map((group) => group.pupils.length))],
    ["lessonsToCome", dates.filter((date) => date >= today).length],
    ["lessonsOver", dates.filter((date) => date < today).length],
    ["boxes", sum(classFile.kits.map((kit) => kit.count))],
    ["stockLines", classFile.stock.length],
    ["devices", classFile.boards.length + classFile.cables.length + classFile.computers.length],
    ["suppliers", classFile.suppliers.length],
    ["powerCuts", classFile.powerCuts.length],
    ["decisions", classFile.decisions.length],
    ["countIns", classFile.counts.length],
    ["logEntries", classFile.log.length],
  ]);
}

export interface Difference {
  readonly what: Held;
  readonly there: number;
  readonly here: number;
}

/** What only one of two files holds of the things that may change while their number stays. */
export interface OnlyOne {
  readonly lessons: readonly { readonly class: string; readonly lesson: string; readonly date: Day; readonly start: number }[];
  readonly powerCuts: ClassFile["powerCuts"];
  readonly decisions: ClassFile["decisions"];
}

/** @returns lessons by date and time, power cuts and decisions that `one` holds and `other` does not, in the order of `one`. */
export function onlyIn(one: ClassFile, other: ClassFile): OnlyOne {
  const lessonsOf = (file: ClassFile) =>
    file.classes.flatMap(({ id, lessons }) => lessons.map(({ lesson, date, start }) => ({ class: id, lesson, date, start })));
  return {
    lessons: without(lessonsOf(one), lessonsOf(other)),
    powerCuts: without(one.powerCuts, other.powerCuts),
    decisions: without(one.decisions, other.decisions),
  };
}

/** Two are the same where all that they say is, in whatever order it was written. */
function without<Thing extends object>(things: readonly Thing[], others: readonly Thing[]): Thing[] {
  const key = (thing: Thing) => JSON.stringify(Object.entries(thing).sort(([a], [b]) => (a < b ? -1 : 1)));
  const known = new Set(others.map(key));
  return things.filter((thing) => !known.has(key(thing)));
}

/** @returns one row for everything of which either holds any, with what differs first. */
export function compareFiles(there: ClassFile, here: ClassFile, today: Day): Difference[] {
  const now = lookInto(here, today);
  return [...lookInto(there, today)]
    .map(([what, count]) => ({ what, there: count, here: now.get(what) ?? 0 }))
    .filter((row) => row.there > 0 || row.here > 0)
    .sort((a, b) => Number(b.there !== b.here) - Number(a.there !== a.here));
}
