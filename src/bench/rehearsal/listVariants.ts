// Which other ways to build a lesson are worth a rehearsal: the values that its author allows, what the catalogue says may stand in,
// and what the class has.
//
// A stand-in of another kind is tried where its legs have the same names, for only then is it put in without another wiring.
// Does not know: tolerances (corners.ts), whether a variant works.
import type { Lesson, LessonPart } from "../lesson/index.ts";
import { allValues, catalogue, findKind, itemKey, type PartKind, parseItemKey, tellingParameters } from "../parts/index.ts";
import type { ItemKey, VariantWhat } from "./result.ts";

export type ValueVariant = Extract<VariantWhat, { kind: "value" }>;

/** @param items what the class's kits and stock hold. @returns each item once for each part in whose place it could be put. */
export function listVariants(lesson: Lesson, items: readonly ItemKey[]): readonly ValueVariant[] {
  return [...lesson.parts.values()].flatMap((part) => {
    const kind = catalogue.get(part.kind);
    if (!kind || kind.role === "board" || kind.role === "supply") return [];
    const allowed = part.mayBe.map((value) => {
      const name = tellingParameters(kind)[0]?.[0];
      return name === undefined ? part.item : itemKey(kind.id, { ...part.values, [name]: value });
    });
    const keys = [...new Set([...allowed, ...standIns(lesson, part, kind), ...items].map(properKey))].filter(
      (key) => key !== part.item,
    );
    return keys.flatMap((item): ValueVariant[] => {
      const parsed = parseItemKey(item);
      if (!parsed) return [];
      if (parsed.kind !== part.kind)
        return isStandIn(kind, parsed.kind) && legsFit(lesson, part.name, parsed.kind)
          ? [{ kind: "value", part: part.name, parameter: "part", value: parsed.kind, item }]
          : [];
      const differs = tellingParameters(kind).find(([name]) => parsed.values[name] !== part.values[name]);
      const value = differs ? parsed.values[differs[0]] : undefined;
      if (!differs || value === undefined) return [];
      return [{ kind: "value", part: part.name, parameter: differs[0], value, item }];
    });
  });
}

/** "BC547" and "npn BC547" are one item. */
function properKey(item: ItemKey): ItemKey {
  const parsed = parseItemKey(item);
  return parsed ? itemKey(parsed.kind, parsed.values) : item;
}

/** Items that the catalogue names as stand-ins, as far as they are one part that needs no value of its own. */
function standIns(lesson: Lesson, part: LessonPart, kind: PartKind): readonly ItemKey[] {
  return kind.standIns.flatMap(({ part: name }): ItemKey[] => {
    const direct = parseItemKey(name);
    if (direct?.kind === kind.id) return isWhole(kind, direct.values) ? [itemKey(kind.id, direct.values)] : [];
    const found = findKind(name);
    if (!found) return [];
    if (found.kind.id === kind.id)
      return found.type === null ? [] : [itemKey(kind.id, allValues(kind, { ...kind.types?.[found.type], type: found.type }))];
    const values = allValues(found.kind, found.type === null ? {} : { type: found.type });
    return isWhole(found.kind, values) && legsFit(lesson, part.name, found.kind.id) ? [itemKey(found.kind.id, values)] : [];
  });
}

/** Whether all that tells such parts apart is given: "resistor" alone is no item. */
function isWhole(kind: PartKind, values: Readonly<Record<string, unknown>>): boolean {
  return tellingParameters(kind).every(([name]) => values[name] !== undefined);
}

function isStandIn(kind: PartKind, other: string): boolean {
  return kind.standIns.some(({ part }) => findKind(part)?.kind.id === other || parseItemKey(part)?.kind === other);
}

function legsFit(lesson: Lesson, name: string, other: string): boolean {
  const legs = catalogue.get(other)?.legs ?? [];
  return lesson.nets.every((net) => net.legs.every((leg) => leg.part !== name || legs.includes(leg.leg)));
}
