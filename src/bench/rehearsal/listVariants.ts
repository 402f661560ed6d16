// Which other ways to build a lesson are worth a rehearsal: the values that its author allows and those that the class has.
//
// Does not know: tolerances (corners.ts), whether a variant works.
import type { Lesson } from "../lesson/index.ts";
import { catalogue, itemKey, parseItemKey, tellingParameters } from "../parts/index.ts";
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
    const keys = [...new Set([...allowed, ...items])].filter((key) => key !== part.item);
    return keys.flatMap((item): ValueVariant[] => {
      const parsed = parseItemKey(item);
      if (parsed?.kind !== part.kind) return [];
      const differs = tellingParameters(kind).find(([name]) => parsed.values[name] !== part.values[name]);
      const value = differs ? parsed.values[differs[0]] : undefined;
      if (!differs || value === undefined) return [];
      return [{ kind: "value", part: part.name, parameter: differs[0], value, item }];
    });
  });
}
