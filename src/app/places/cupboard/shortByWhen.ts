// What the cupboard is short of, by when: each thing once, with the first lesson that needs it and the last day to order it.
//
// A thing that is used in February is there again in March, so that the largest gap counts and not the sum of all gaps. The
// first lesson sets the day.
// Does not know: words, prices, how the plan was made.
import type { Day } from "../../../base/index.ts";
import type { ItemKey } from "../../../school/file/index.ts";
import type { Plan, PlannedLesson, Remedy } from "../../../school/readiness/index.ts";

export interface ShortThing {
  readonly item: ItemKey;
  /** The largest gap of any lesson; null where the plan only says "some to spare". */
  readonly count: number | null;
  /** The first lesson that needs it. */
  readonly sitting: Pick<PlannedLesson, "id" | "class" | "lesson" | "date" | "chance">;
  /** How many more lessons need it. */
  readonly others: number;
  /** Last day on which ordering still helps the first lesson; null where nobody sells it in time. */
  readonly by: Day | null;
}

/** Remedies that name a thing to get, and the name of the thing in their figures. */
const getting: Partial<Record<Remedy["code"], string>> = {
  order: "item",
  "get-supply": "supply",
  "mend-or-borrow": "device",
  "order-spares": "item",
};

interface Found {
  readonly item: ItemKey;
  readonly count: number | null;
  readonly lesson: PlannedLesson;
  readonly by: Day | null;
}

/** @returns the things that are missing, the earliest day first, then those of which some to spare would be wise. */
export function shortByWhen(plan: Pick<Plan, "lessons">, today: Day): ShortThing[] {
  const found = plan.lessons.filter((lesson) => lesson.date >= today).flatMap(ofLesson);
  const byItem = new Map<string, Found[]>();
  for (const thing of found) byItem.set(thing.item, [...(byItem.get(thing.item) ?? []), thing]);
  return [...byItem.values()]
    .map((all): ShortThing => {
      const missing = all.filter((thing) => thing.count !== null);
      // Spares of a thing that is missing anyway are counted by the order; here they would say the same twice.
      const told = missing.length > 0 ? missing : all;
      const [first] = [...told].sort((a, b) => compare(a.lesson.date, b.lesson.date) || a.lesson.start - b.lesson.start);
      const { id, class: group, lesson, date, chance } = first!.lesson;
      return {
        item: first!.item,
        count: missing.length === 0 ? null : Math.max(...missing.map((thing) => thing.count!)),
        sitting: { id, class: group, lesson, date, chance },
        others: new Set(told.map((thing) => thing.lesson.id)).size - 1,
        by: first!.by,
      };
    })
    .sort(
      (a, b) =>
        Number(a.count === null) - Number(b.count === null) ||
        compare(a.by ?? a.sitting.date, b.by ?? b.sitting.date) ||
        compare(a.item, b.item),
    );
}

/** What a lesson lacks by its own list, and what its remedies name besides. */
function ofLesson(lesson: PlannedLesson): Found[] {
  const byRemedy = new Map<string, Remedy>();
  for (const remedy of lesson.remedies) {
    const item = remedy.data[getting[remedy.code] ?? ""];
    if (typeof item === "string" && !byRemedy.has(item)) byRemedy.set(item, remedy);
  }
  const counts = new Map<ItemKey, number | null>();
  for (const [item, { code, data }] of byRemedy)
    counts.set(item, code === "order-spares" || typeof data.count !== "number" ? null : data.count);
  for (const { part, count } of lesson.short) if (count > 0) counts.set(part, Math.max(count, counts.get(part) ?? 0));
  return [...counts].map(([item, count]) => ({ item, count, lesson, by: byRemedy.get(item)?.by ?? null }));
}

/** The most that one lesson needs of each item, from today on: what the cupboard should never go below. */
export function mostNeeded(plan: Pick<Plan, "lessons">, today: Day): Map<ItemKey, number> {
  const most = new Map<ItemKey, number>();
  for (const { date, stock } of plan.lessons) {
    if (date < today) continue;
    const here = new Map<ItemKey, number>();
    for (const { need, wanted } of stock.coverage) here.set(need.item, (here.get(need.item) ?? 0) + wanted);
    for (const [item, wanted] of here) most.set(item, Math.max(most.get(item) ?? 0, Math.ceil(wanted)));
  }
  return most;
}

const compare = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);
