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
    ["countIns", classFile.counts.length],
    ["logEntries", classFile.log.length],
  ]);
}

export interface Difference {
  readonly what: Held;
  readonly there: number;
  readonly here: number;
}

/** @returns one row for everything of which either holds any, with what differs first. */
export function compareFiles(there: ClassFile, here: ClassFile, today: Day): Difference[] {
  const now = lookInto(here, today);
  return [...lookInto(there, today)]
    .map(([what, count]) => ({ what, there: count, here: now.get(what) ?? 0 }))
    .filter((row) => row.there > 0 || row.here > 0)
    .sort((a, b) => Number(b.there !== b.here) - Number(a.there !== a.here));
}
