// What applying a change gives: the new class file with what it dragged along, or why it cannot be done.
//
// Does not know: any change.

import { near } from "../../base/index.ts";
import type { ClassFile, ClassGroup, KnownFiles, LessonDate } from "../file/index.ts";
import type { SittingRef } from "./change.ts";
import type { ChangeEffect, ChangesProblem } from "./changesProblem.ts";

export interface Applied<Value = ClassFile> {
  readonly value: Value;
  readonly effects: readonly ChangeEffect[];
}
export interface Refused {
  readonly problem: ChangesProblem;
}
export type Outcome<Value = ClassFile> = Applied<Value> | Refused;

/** What is known besides the class file. What is not given is not judged. */
export interface ChangeContext extends KnownFiles {
  /** Ids that were in use once and are not to be given again, as "scope/id": `retiredIds`. */
  readonly retired?: ReadonlySet<string>;
}

export function refuse(problem: ChangesProblem): Refused {
  return { problem };
}

export function done(value: ClassFile, effects: readonly ChangeEffect[] = []): Applied {
  return { value, effects };
}

/** The class with its place in the list, or why there is none. */
export function findClass(classFile: ClassFile, id: string): { readonly group: ClassGroup; readonly at: number } | Refused {
  const at = classFile.classes.findIndex((group) => group.id === id);
  const group = classFile.classes[at];
  if (group) return { group, at };
  return refuse({
    code: "changes.unknownClass",
    found: id,
    near: near(
      id,
      classFile.classes.map((g) => g.id),
    ),
  });
}

/** A meeting with its class and its places in the lists, or why there is none. */
export function findSitting(
  classFile: ClassFile,
  ref: SittingRef,
): { readonly group: ClassGroup; readonly at: number; readonly meeting: LessonDate; readonly index: number } | Refused {
  const found = findClass(classFile, ref.class);
  if ("problem" in found) return found;
  const index = found.group.lessons.findIndex(({ lesson, date }) => lesson === ref.lesson && date === ref.date);
  const meeting = found.group.lessons[index];
  if (meeting) return { ...found, meeting, index };
  return refuse({ code: "changes.unknownSitting", sitting: sittingId(ref) });
}

export function sittingId(ref: SittingRef): string {
  return `${ref.class}/${ref.lesson}/${ref.date}`;
}

/** The class file with one class in place of another; every other list keeps its identity. */
export function withClass(classFile: ClassFile, at: number, group: ClassGroup): ClassFile {
  return { ...classFile, classes: replaced(classFile.classes, at, group) };
}

/** The list with one entry in place of another. */
export function replaced<Entry>(list: readonly Entry[], at: number, entry: Entry): readonly Entry[] {
  return list.map((old, i) => (i === at ? entry : old));
}

/** The list without some entries; the same list where none of them is in it. */
export function without<Entry>(list: readonly Entry[], isOut: (entry: Entry) => boolean): readonly Entry[] {
  const left = list.filter((entry) => !isOut(entry));
  return left.length === list.length ? list : left;
}

/** The list with an entry in place of that with the same key, or at its end. */
export function put<Entry>(list: readonly Entry[], entry: Entry, key: (entry: Entry) => string): readonly Entry[] {
  const at = list.findIndex((old) => key(old) === key(entry));
  if (at === -1) return [...list, entry];
  return replaced(list, at, entry);
}

/** Whether two pieces of plain data say the same, whatever the order of their fields. */
export function isSame(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return false;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const left = Object.entries(a).filter(([, value]) => value !== undefined);
  const right = new Map(Object.entries(b).filter(([, value]) => value !== undefined));
  return left.length === right.size && left.every(([name, value]) => right.has(name) && isSame(value, right.get(name)));
}

/** The class file with another list of ticks; without the field where nothing is ticked. */
export function withTicks(classFile: ClassFile, prepared: NonNullable<ClassFile["prepared"]>): ClassFile {
  if (prepared.length > 0) return { ...classFile, prepared };
  const { prepared: _gone, ...rest } = classFile;
  return rest;
}
