// Reads the nets of a lesson: which legs are joined.
//
// Does not know: what the legs do.
import { type Document, near, type Place } from "../../base/index.ts";
import { catalogue } from "../parts/index.ts";
import type { LegRef, LessonPart, Net } from "./lesson.ts";
import type { Report } from "./lessonProblem.ts";
import type { LessonShape } from "./lessonSchema.ts";

/** @returns part and leg of "R1.2", or null if it is not written so. The board's 3.3V keeps its own point. */
export function splitLeg(written: string): LegRef | null {
  const point = written.indexOf(".");
  if (point < 1 || point === written.length - 1 || /\s/.test(written)) return null;
  return { part: written.slice(0, point), leg: written.slice(point + 1) };
}

/** @returns the legs that the nets name, by part, without judging them. */
export function legsUsed(nets: LessonShape["nets"]): ReadonlyMap<string, ReadonlySet<string>> {
  const used = new Map<string, Set<string>>();
  for (const written of nets.flat()) {
    const leg = splitLeg(written);
    if (leg) used.set(leg.part, (used.get(leg.part) ?? new Set()).add(leg.leg));
  }
  return used;
}

/**
 * @param declared names of all parts in the file, also of those that could not be read: their legs cannot be judged.
 * @returns the nets with the legs that could be read, by their proper names.
 */
export function readNets(
  document: Document,
  shapes: LessonShape["nets"],
  parts: ReadonlyMap<string, LessonPart>,
  declared: ReadonlySet<string>,
  report: Report,
): readonly Net[] {
  const first = new Map<string, { readonly net: number; readonly place: Place }>();
  const nets = shapes.map((shape, net): Net => {
    const legs: LegRef[] = [];
    for (const [i, written] of shape.entries()) {
      const place = document.place(["nets", net, i]);
      const leg = readLeg(written, parts, declared, place, report);
      if (!leg) continue;
      const key = `${leg.part}.${leg.leg}`;
      const before = first.get(key);
      if (before) report({ code: "lesson.legTwice", place, leg: key, firstLine: before.place.line });
      else {
        first.set(key, { net, place });
        legs.push(leg);
      }
    }
    const place = document.place(["nets", net]);
    if (shape.length === 0) report({ code: "lesson.emptyNet", place });
    else if (shape.length === 1) report({ code: "lesson.lonelyLeg", place: document.place(["nets", net, 0]), leg: shape[0]! });
    return { legs, place };
  });
  for (const part of parts.values()) checkPart(part, first, report);
  return nets;
}

/** @returns a leg by its proper name, or null after reporting what is wrong. Parts that could not be read are passed over. */
export function readLeg(
  written: string,
  parts: ReadonlyMap<string, LessonPart>,
  declared: ReadonlySet<string>,
  place: Place,
  report: Report,
): LegRef | null {
  const split = splitLeg(written);
  if (!split) {
    report({ code: "lesson.badLeg", place, found: written.slice(0, 40) });
    return null;
  }
  const part = parts.get(split.part);
  if (!part) {
    if (!declared.has(split.part))
      report({ code: "lesson.noSuchPart", place, found: split.part.slice(0, 40), near: near(split.part, parts.keys()) });
    return null;
  }
  const kind = catalogue.get(part.kind)!;
  const proper = Object.hasOwn(kind.alsoCalled ?? {}, split.leg) ? kind.alsoCalled![split.leg]! : split.leg;
  if (kind.legs.includes(proper)) return { part: part.name, leg: proper };
  report({
    code: "lesson.unknownLeg",
    place,
    part: part.name,
    found: split.leg.slice(0, 40),
    near: near(split.leg, [...kind.legs, ...Object.keys(kind.alsoCalled ?? {})]),
    expected: kind.legs.join(", "),
  });
  return null;
}

/** What the nets make of one part as a whole. */
function checkPart(
  part: LessonPart,
  legs: ReadonlyMap<string, { readonly net: number; readonly place: Place }>,
  report: Report,
): void {
  const kind = catalogue.get(part.kind)!;
  const connected = kind.legs.flatMap((leg) => {
    const at = legs.get(`${part.name}.${leg}`);
    return at ? [{ leg, ...at }] : [];
  });
  if (kind.role === "board") return;
  if (connected.length === 0) {
    if (kind.legs.length > 0) report({ code: "lesson.partUnconnected", severity: "warning", place: part.place, part: part.name });
    return;
  }
  for (const group of kind.joined ?? []) {
    const [one, ...others] = connected.filter(({ leg }) => group.includes(leg));
    for (const other of others)
      if (one && other.net !== one.net)
        report({
          code: "lesson.joinedLegsApart",
          place: other.place,
          leg: `${part.name}.${other.leg}`,
          other: `${part.name}.${one.leg}`,
          firstLine: one.place.line,
        });
  }
  if (kind.legs.length > 1 && connected.length === kind.legs.length && new Set(connected.map(({ net }) => net)).size === 1)
    report({ code: "lesson.partBridged", severity: "warning", place: connected[1]!.place, part: part.name });
}
