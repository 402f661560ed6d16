// The order in which lessons can be taught: each after those that it builds on.
//
// Among lessons that could come next, the order in which they are given decides, so that the same lessons always stand the same way.
// Does not know: dates, classes.
import type { Lesson } from "../../../bench/lesson/index.ts";

/** @returns the ids of all lessons. A lesson that waits for one that is not there, or for itself, comes at the end. */
export function teachingOrder(lessons: ReadonlyMap<string, Pick<Lesson, "needs">>): string[] {
  const order: string[] = [];
  const open = new Set(lessons.keys());
  while (open.size > 0) {
    const next = [...open].find((id) => lessons.get(id)!.needs.every((need) => !open.has(need) || !lessons.has(need)));
    const taken = next ?? [...open][0]!;
    order.push(taken);
    open.delete(taken);
  }
  return order;
}
