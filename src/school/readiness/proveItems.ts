// Which other items may stand in for a part of a lesson: only those with which the lesson was rehearsed and passed.
//
// Tried are the items on hand of the same kind. A lamp's colour may change only where the lesson's lamps all have one
// colour, because otherwise the colour says something (red and green at a barrier). Whether several substitutes pass together
// is asked again for each combination that a team is handed: two small drifts can add up.
// Does not know: how many of each there are, how a rehearsal works.
import { contentHash, type LongWork, type Progress, type World } from "../../base/index.ts";
import type { Lesson, LessonPart } from "../../bench/lesson/index.ts";
import { itemKey, parseItemKey } from "../../bench/parts/index.ts";
import { type OneRehearsal, rehearseOnce } from "../../bench/rehearsal/index.ts";
import type { ClassFile, ItemKey } from "../file/index.ts";

export interface ProvenItems {
  /** The supply with which everything was tried. */
  readonly supply: ItemKey;
  /** The lesson as its author wrote it, on that supply. */
  readonly asWritten: OneRehearsal;
  /** For each part: items that passed in its place, the one nearest to the author's value first. */
  readonly substitutes: ReadonlyMap<string, readonly ItemKey[]>;
  /** Rehearses any combination of items, and remembers it. */
  readonly withItems: (items: ReadonlyMap<string, ItemKey>) => OneRehearsal;
}

/**
 * @param items every item on hand. @param supply what the teams use, or what they would need.
 * @param progress of the whole work, told between two rehearsals.
 */
export function* proveItems(
  lesson: Lesson,
  items: readonly ItemKey[],
  supply: ItemKey,
  classFile: ClassFile,
  world: Pick<World, "remember">,
  seed: number,
  progress: Progress,
): LongWork<ProvenItems> {
  const lessonHash = contentHash(lesson);
  const withItems = (chosen: ReadonlyMap<string, ItemKey>) =>
    world.remember(`once ${lessonHash} ${contentHash({ chosen, supply, seed })}`, () =>
      rehearseOnce(lesson, { items: chosen, supply, seed }),
    );
  const substitutes = new Map<string, readonly ItemKey[]>();
  for (const part of lesson.parts.values()) {
    const decided = classFile.decisions.flatMap((d) =>
      d.kind === "substitute" && d.lesson === lesson.id && d.part === part.name ? [d.item] : [],
    );
    const passed: ItemKey[] = [];
    for (const item of candidates(lesson, part, [...decided, ...items])) {
      yield progress;
      if (withItems(new Map([[part.name, item]])).verdict === "ready") passed.push(item);
    }
    // What the teacher settled comes first, as long as it passes.
    substitutes.set(part.name, [...new Set([...decided.filter((d) => passed.includes(d)), ...passed])]);
  }
  return { supply, asWritten: withItems(new Map()), substitutes, withItems };
}

/** Items of the same kind that differ from what the author asks for, nearest first. */
function candidates(lesson: Lesson, part: LessonPart, items: readonly ItemKey[]): ItemKey[] {
  const colours = new Set([...lesson.parts.values()].filter((p) => p.kind === part.kind).map((p) => p.values.colour));
  const own = itemKey(part.kind, part.values);
  const near = new Map<ItemKey, number>();
  for (const item of items) {
    const parsed = parseItemKey(item);
    if (parsed?.kind !== part.kind || item === own) continue;
    if (colours.size > 1 && parsed.values.colour !== part.values.colour) continue;
    near.set(item, distance(part, parsed.values));
  }
  return [...near].sort(([a, x], [b, y]) => x - y || (a < b ? -1 : 1)).map(([item]) => item);
}

/** How far values are apart: the sum of |ln(ratio)|; a different word counts as 1. What the author allows comes first. */
function distance(part: LessonPart, values: Readonly<Record<string, number | string>>): number {
  let sum = 0;
  for (const [name, value] of Object.entries(values)) {
    const own = part.values[name];
    if (own === value || own === undefined) continue;
    if (typeof own === "number" && typeof value === "number" && own > 0 && value > 0) {
      if (!part.mayBe.includes(value)) sum += 100;
      sum += Math.abs(Math.log(value / own));
    } else sum += 1;
  }
  return sum;
}
