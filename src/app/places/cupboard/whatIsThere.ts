// What lies in the cupboard, as its place shows it: loose stock by box, what is in kits only, and all there is of each item.
//
// Loose stock keeps the lines of the class file, because they are what a person counts and changes. All there is comes from
// school/stock: kits, loose stock and what happened since.
// Does not know: words, lessons.
import type { Day } from "../../../base/index.ts";
import type { ClassFile, ItemKey, Kit, Movement } from "../../../school/file/index.ts";
import { cupboard } from "../../../school/stock/index.ts";

export interface ThereLine {
  readonly item: ItemKey;
  /** Loose in this box, as last counted; 0 where it is only in kits. */
  readonly loose: number;
  /** All there is of it in the cupboard, kits and movements counted. */
  readonly inAll: number;
}

export interface ThereBox {
  /** "" where nobody said. */
  readonly box: string;
  readonly lines: readonly ThereLine[];
}

export interface WhatIsThere {
  /** Boxes by name, numbers in their order ("box 2" before "box 10"); the one without a name last. */
  readonly boxes: readonly ThereBox[];
  /** What no box holds. */
  readonly inKitsOnly: readonly ThereLine[];
}

/** Counted one by one in lists of their own. */
const listed: ReadonlySet<ItemKey> = new Set(["board", "usb-cable", "computer"]);

/** @param order compares texts the way the class's language sorts them. */
export function whatIsThere(
  classFile: ClassFile,
  kits: ReadonlyMap<string, Kit>,
  today: Day,
  order: (a: string, b: string) => number,
): WhatIsThere {
  const { items } = cupboard(classFile, kits, today);
  const inAll = (item: ItemKey) => items.get(item)?.count ?? 0;
  const boxes = new Map<string, ThereLine[]>();
  for (const { item, count, box } of classFile.stock)
    boxes.set(box, [...(boxes.get(box) ?? []), { item, loose: count, inAll: inAll(item) }]);
  const elsewhere = new Set([...classFile.stock, ...classFile.supplies].map((line) => line.item));
  return {
    boxes: [...boxes]
      .map(([box, lines]) => ({ box, lines: lines.sort((a, b) => order(a.item, b.item)) }))
      .sort((a, b) => Number(a.box === "") - Number(b.box === "") || order(a.box, b.box)),
    inKitsOnly: [...items.keys()]
      .filter((item) => !elsewhere.has(item) && !listed.has(item) && !item.startsWith("usb-port"))
      .map((item) => ({ item, loose: 0, inAll: inAll(item) }))
      .sort((a, b) => order(a.item, b.item)),
  };
}

/** What happened to an item, the newest first. */
export function happened(classFile: Pick<ClassFile, "movements">, item: ItemKey): Movement[] {
  return classFile.movements
    .map((movement, i) => ({ movement, i }))
    .filter(({ movement }) => movement.item === item)
    .sort((a, b) => (a.movement.date < b.movement.date ? 1 : a.movement.date > b.movement.date ? -1 : b.i - a.i))
    .map(({ movement }) => movement);
}

/** What can happen to things, and whether they become more or fewer. */
export const happenings = [
  ["lost", -1],
  ["broken", -1],
  ["found", 1],
  ["lent", -1],
  ["returned", 1],
  ["bought", 1],
] as const satisfies readonly (readonly [Movement["why"], 1 | -1])[];

/** Whether a line shows under what somebody typed to search: every word stands somewhere in it, accents and case aside. */
export function isFound(search: string, ...texts: readonly string[]): boolean {
  const there = folded(texts.join(" "));
  return folded(search)
    .split(/\s+/)
    .every((word) => there.includes(word));
}

const folded = (text: string) => text.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase().trim();
