// Which component shows which place, by the first word of the address.
//
// Does not know: what the places show.
import type { ComponentType } from "preact";
import { Course } from "./course/Course.tsx";
import { Cupboard } from "./cupboard/Cupboard.tsx";
import { First } from "./first/First.tsx";
import { LessonPlace } from "./lesson/LessonPlace.tsx";
import { Nowhere } from "./Nowhere.tsx";
import { Order } from "./order/Order.tsx";
import { Print } from "./print/Print.tsx";
import { Pupils } from "./pupils/Pupils.tsx";
import { Questions } from "./questions/Questions.tsx";
import { Settings } from "./settings/Settings.tsx";
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
  first: { Place: First, withoutClass: true },
  questions: { Place: Questions, withoutClass: true },
  today: { Place: Today },
  wall: { Place: Wall, bare: true },
  course: { Place: Course },
  lesson: { Place: LessonPlace, withoutClass: true },
  cupboard: { Place: Cupboard },
  order: { Place: Order },
  pupils: { Place: Pupils },
  print: { Place: Print },
  settings: { Place: Settings, withoutClass: true },
};

/** @returns the place of an address; the place that says so where there is none; null while the page is on its way elsewhere. */
export function placeOf(name: string, hasClass: boolean): PlaceEntry | null {
  if (name === "" || name === "demo") return null;
  const entry = Object.hasOwn(places, name) ? places[name] : undefined;
  if (entry === undefined || (!hasClass && entry.withoutClass !== true)) return { Place: Nowhere };
  return entry;
}
