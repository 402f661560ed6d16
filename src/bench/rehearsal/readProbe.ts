// What a person calls a place to measure at: "D9", "LED1.anode", "LED1.anode A" for its current.
//
// Does not know: circuits, what is measured there.
import type { LegRef, Lesson } from "../lesson/index.ts";
import { catalogue } from "../parts/index.ts";

/** What is measured where: V of a leg's net against ground, or A into a part at one leg (of the board and its supply: out of it). */
export interface Probe {
  readonly at: LegRef;
  readonly unit: "V" | "A";
}

/** @param text a leg, "board." may be left out; with " A" or ":A" behind it its current. @returns null where the lesson has no such leg. */
export function readProbe(lesson: Lesson, text: string): Probe | null {
  const [, place = "", unit] = /^\s*(.*?)(?:[\s:]+([VA]))?\s*$/.exec(text) ?? [];
  const at = findLeg(lesson, place) ?? findLeg(lesson, `board.${place}`);
  return at ? { at, unit: unit === "A" ? "A" : "V" } : null;
}

/** A probe as a person would call it, and as `readProbe` reads it. */
export function probeName({ at, unit }: Probe): string {
  return `${at.part === "board" ? "" : `${at.part}.`}${at.leg}${unit === "A" ? " A" : ""}`;
}

/** Whether a lesson has the leg. */
export function isLeg(lesson: Lesson, { part, leg }: LegRef): boolean {
  const kind = catalogue.get(lesson.parts.get(part)?.kind ?? (part === "board" ? "board" : ""));
  return kind?.legs.includes(leg) === true;
}

function findLeg(lesson: Lesson, text: string): LegRef | null {
  const point = text.indexOf(".");
  if (point < 0) return null;
  const part = text.slice(0, point);
  const written = text.slice(point + 1);
  const kind = catalogue.get(lesson.parts.get(part)?.kind ?? (part === "board" ? "board" : ""));
  const leg = kind?.legs.includes(written) ? written : kind?.alsoCalled?.[written];
  return leg === undefined ? null : { part, leg };
}
