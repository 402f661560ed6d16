// What the trays of a lesson held together, and what a count of them says.
//
// Does not know: how a count is kept.
import type { Day } from "../../../base/index.ts";
import type { CountIn, ItemKey } from "../../../school/file/index.ts";
import type { PlannedLesson } from "../../../school/readiness/index.ts";

export interface HandedOut {
  readonly item: ItemKey;
  readonly count: number;
}

/** One line an item, in the order of the tray list. */
export function handedOut(planned: PlannedLesson): readonly HandedOut[] {
  const sums = new Map<ItemKey, number>();
  for (const tray of planned.trays) for (const { item, count } of tray.items) sums.set(item, (sums.get(item) ?? 0) + count);
  return [...sums].map(([item, count]) => ({ item, count }));
}

export interface Missed {
  readonly missing: number;
  readonly broken: number;
}

/** The counts of a whole lesson: what is not named came back whole. */
export function countsOf(
  sitting: { readonly class: string; readonly lesson: string; readonly date: Day },
  out: readonly HandedOut[],
  missed: ReadonlyMap<ItemKey, Missed>,
): readonly CountIn[] {
  return out.map(({ item, count }) => {
    const { missing, broken } = missed.get(item) ?? { missing: 0, broken: 0 };
    const { class: group, lesson, date } = sitting;
    return { class: group, lesson, date, item, out: count, back: Math.max(0, count - missing - broken), broken };
  });
}
