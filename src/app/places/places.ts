// Which component shows which place, by the first word of the address.
//
// Today is there from the start, because it is what a teacher opens the page for; the others come a moment later.
// Does not know: what the places show.
import type { ComponentType } from "preact";
import { later } from "../laterCode.ts";
import { Coming } from "./Coming.tsx";
import type { LaterPlace } from "./laterPlaces.ts";
import { Nowhere } from "./Nowhere.tsx";
import { Today } from "./today/Today.tsx";

export interface PlaceEntry {
  readonly Place: ComponentType;
  /** It can be seen without a class. */
  readonly withoutClass?: boolean;
  /** It fills the whole window: no head, no title block. */
  readonly bare?: boolean;
}

/** The component is told apart from the rest, because it may not be there yet. */
const places: Readonly<Record<"today" | LaterPlace, Omit<PlaceEntry, "Place">>> = {
  first: { withoutClass: true },
  questions: { withoutClass: true },
  today: {},
  wall: { bare: true },
  course: {},
  lesson: { withoutClass: true },
  explain: { withoutClass: true },
  lines: { withoutClass: true, bare: true },
  cupboard: {},
  order: {},
  pupils: {},
  print: {},
  settings: { withoutClass: true },
};

const isPlace = (name: string): name is keyof typeof places => Object.hasOwn(places, name);

/** @returns the place of an address; the place that says so where there is none; null while the page is on its way elsewhere. */
export function placeOf(name: string, hasClass: boolean): PlaceEntry | null {
  if (name === "" || name === "demo") return null;
  const entry = isPlace(name) ? places[name] : undefined;
  if (!isPlace(name) || entry === undefined) return { Place: Nowhere };
  // A place that speaks of a class begins with the first page where there is none, such as from a bookmark.
  if (!hasClass && entry.withoutClass !== true) return placeOf("first", hasClass);
  return { ...entry, Place: name === "today" ? Today : (later.value?.laterPlaces[name] ?? Coming) };
}
