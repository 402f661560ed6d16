// Whether movements take more out of the cupboard than was in it on their day.
//
// Asked when a file is read and again before a change is taken, so that no change leaves a file that reading would refuse.
// Does not know: lines of a file, what a lesson needs.
import type { ItemKey, Kit, Movement } from "./classFile.ts";
import { readItem } from "./itemText.ts";

/** As much of a class file as the cupboard needs; items in any spelling. */
export interface CupboardLists {
  readonly stock: readonly { readonly item: ItemKey; readonly count: number }[];
  readonly supplies: readonly { readonly item: ItemKey; readonly count: number }[];
  readonly kits: readonly { readonly kit: string; readonly count: number }[];
  readonly movements: readonly (Pick<Movement, "item" | "change"> & { readonly date: string })[];
  readonly boards: readonly unknown[];
  readonly cables: readonly unknown[];
  readonly computers: readonly unknown[];
}

export interface Overdrawn {
  readonly item: ItemKey;
  /** Place in the list of the movement that takes too much. */
  readonly movement: number;
  readonly there: number;
  /** Other items that are there at that moment. */
  readonly others: readonly ItemKey[];
}

/** @returns for each item the first movement that leaves less than nothing. Nothing is said while contents of a kit are unknown. */
export function findOverdrawn(lists: CupboardLists, kits: ReadonlyMap<string, Kit> | undefined): readonly Overdrawn[] {
  // Without the contents of its kits nobody can say what a cupboard holds.
  if (lists.movements.length === 0 || !lists.kits.every(({ kit }) => kits?.has(kit))) return [];
  const there = new Map<string, number>();
  const add = (item: string, count: number) => {
    const key = readItem(item) ?? item;
    there.set(key, (there.get(key) ?? 0) + count);
  };
  for (const { item, count } of [...lists.stock, ...lists.supplies]) add(item, count);
  for (const { kit, count } of lists.kits) for (const [item, each] of kits?.get(kit)?.contents ?? []) add(item, each * count);
  // What is listed one by one is not counted as stock, and a movement of it says nothing about the list.
  const singly = new Set([
    ...lists.boards.map(() => "board"),
    ...lists.cables.map(() => "usb-cable"),
    ...lists.computers.map(() => "computer"),
  ]);
  const found = new Map<string, Overdrawn>();
  const list = lists.movements.map(({ date, item, change }, movement) => ({
    date,
    item: readItem(item) ?? item,
    change,
    movement,
  }));
  // On one day what came is counted before what went: the file need not say in which order.
  const inOrder = list.sort((a, b) => a.date.localeCompare(b.date) || Number(a.change < 0) - Number(b.change < 0));
  for (const { item, change, movement } of inOrder) {
    const before = there.get(item) ?? 0;
    there.set(item, before + change);
    if (before + change >= 0 || found.has(item) || singly.has(item)) continue;
    const others = [...there].filter(([other, count]) => other !== item && count > 0).map(([other]) => other);
    found.set(item, { item, movement, there: Math.max(0, before), others });
  }
  return [...found.values()];
}
