// Which component shows which place, by the first word of the address.
//
// Does not know: what the places show.
import type { ComponentType } from "preact";
import { Course } from "./course/Course.tsx";
import { LessonPlace } from "./lesson/LessonPlace.tsx";
import { Nowhere } from "./Nowhere.tsx";
import { Today } from "./today/Today.tsx";
import { Wall } from "./today/Wall.tsx";

export interface PlaceEntry {
  readonly Place: ComponentType;
  /** It can be seen without a class. */
  readonly withoutClass?: boolean;
  /** It fills the whole window: no head, no title block. */
  readonly bare?: boolean;
}

const places: Readonly<Record<string, PlaceEntry>> = {
  today: { Place: Today },
  wall: { Place: Wall, bare: true },
  course: { Place: Course },
  lesson: { Place: LessonPlace, withoutClass: true },
};

/** @returns the place of an address; the place that says so where there is none. */
export function placeOf(name: string, hasClass: boolean): PlaceEntry | null {
  if (name === "") return null;
  const entry = Object.hasOwn(places, name) ? places[name] : undefined;
  if (entry === undefined) return { Place: Nowhere };
  if (!hasClass && entry.withoutClass !== true) return { Place: Nowhere };
  return entry;
}
