// What a class has settled for a lesson: other parts in place of the written ones, and the supply.
//
// Does not know: whether they will do.
import type { ClassFile } from "../../../school/file/index.ts";

export interface Settled {
  /** Part to the item in its place. */
  readonly items: readonly (readonly [part: string, item: string])[];
  /** Null where it is the lesson's own. */
  readonly supply: string | null;
}

/** @returns what counts now: of several decisions about one thing the last. */
export function settledFor(classFile: ClassFile | null, lesson: string): Settled {
  const items = new Map<string, string>();
  let supply: string | null = null;
  for (const decision of classFile?.decisions ?? []) {
    if (decision.lesson !== lesson) continue;
    if (decision.kind === "substitute") items.set(decision.part, decision.item);
    if (decision.kind === "supply") supply = decision.item;
  }
  return { items: [...items], supply };
}
