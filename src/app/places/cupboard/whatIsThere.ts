// What lies in the cupboard, as its place shows it: box by box, what is in kits only, and all there is of each item.
//
// A box shows what lies in it now: what was counted, less what has gone since (school/stock). What came and was put nowhere
// lies in no box. So all boxes and kits together are all there is, and a new count changes that by what it differs.
// Does not know: words, lessons.
import type { Day } from "../../../base/index.ts";
import type { Change } from "../../../school/changes/index.ts";
import type { ClassFile, ItemKey, Kit, Movement, StockLine } from "../../../school/file/index.ts";
import { cupboard } from "../../../school/stock/index.ts";

export interface ThereLine {
  readonly item: ItemKey;
  /** Loose in this box now; 0 where it is only in kits. */
  readonly here: number;
  /** The count that the class file holds for this box; null where it has none. */
  readonly counted: number | null;
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

/** Counted one by one in lists of their own; what a list of stock says of them is shown all the same, so that it can be mended. */
const listed: ReadonlySet<ItemKey> = new Set(["board", "usb-cable", "computer"]);

/** How many are in the list of such devices, which then counts alone. */
const inList = (classFile: ClassFile, item: ItemKey): number =>
  ({ board: classFile.boards, "usb-cable": classFile.cables, computer: classFile.computers })[item]?.length ?? 0;

/** @param order compares texts the way the class's language sorts them. */
export function whatIsThere(
  classFile: ClassFile,
  kits: ReadonlyMap<string, Kit>,
  today: Day,
  order: (a: string, b: string) => number,
): WhatIsThere {
  const { items } = cupboard(classFile, kits, today);
  const supplies = new Set(classFile.supplies.map((line) => line.item));
  const hasOwnList = (item: ItemKey) => listed.has(item) || supplies.has(item) || item.startsWith("usb-port");
  const boxes = new Map<string, ThereLine[]>();
  const add = (box: string, line: ThereLine) => boxes.set(box, [...(boxes.get(box) ?? []), line]);
  const inKitsOnly: ThereLine[] = [];
  for (const item of new Set([...items.keys(), ...classFile.stock.map((line) => line.item)])) {
    const counts = new Map(classFile.stock.filter((line) => line.item === item).map((line) => [line.box, line.count]));
    if (hasOwnList(item) && counts.size === 0) continue;
    const there = items.get(item);
    const inAll = there?.count ?? 0;
    if (inList(classFile, item) > 0) {
      // Nothing is taken off lines that do not count.
      for (const [box, count] of counts) add(box, { item, here: count, counted: count, inAll });
      continue;
    }
    const now = new Map(there?.boxes.map(({ box, count }) => [box, count]));
    // What lies in no box and what lies in kits is one heap for school/stock.
    now.set("", Math.max(0, (now.get("") ?? 0) - inKits(classFile, kits, item)));
    for (const { box, count } of classFile.supplies.filter((line) => line.item === item))
      now.set(box, Math.max(0, (now.get(box) ?? 0) - count));
    const places = [...new Set([...counts.keys(), ...now.keys()])].filter((box) => counts.has(box) || (now.get(box) ?? 0) > 0);
    for (const box of places) add(box, { item, here: now.get(box) ?? 0, counted: counts.get(box) ?? null, inAll });
    if (places.length === 0 && inAll > 0) inKitsOnly.push({ item, here: 0, counted: null, inAll });
  }
  return {
    boxes: [...boxes]
      .map(([box, lines]) => ({ box, lines: lines.sort((a, b) => order(a.item, b.item)) }))
      .sort((a, b) => Number(a.box === "") - Number(b.box === "") || order(a.box, b.box)),
    inKitsOnly: inKitsOnly.sort((a, b) => order(a.item, b.item)),
  };
}

/** How many of an item all kits hold. */
const inKits = (classFile: Pick<ClassFile, "kits">, kits: ReadonlyMap<string, Kit>, item: ItemKey): number =>
  classFile.kits.reduce((sum, { kit, count }) => sum + (kits.get(kit)?.contents.get(item) ?? 0) * count, 0);

/** How many devices count besides their list: those in kits and boxes, which count only as long as there is no list. */
export function besidesList(
  classFile: ClassFile,
  kits: ReadonlyMap<string, Kit>,
  item: "board" | "usb-cable" | "computer",
): { readonly count: number; readonly instead: boolean } {
  const loose = classFile.stock.filter((line) => line.item === item).reduce((sum, line) => sum + line.count, 0);
  return { count: inKits(classFile, kits, item) + loose, instead: inList(classFile, item) === 0 };
}

/** How many of an item the kits add to a list of stock; none where a list of devices counts alone. */
export function kitsAddTo(classFile: ClassFile, kits: ReadonlyMap<string, Kit>, item: ItemKey): number {
  return inList(classFile, item) > 0 ? 0 : inKits(classFile, kits, item);
}

/**
 * The act of a person who counted a box and found so many.
 *
 * @returns a change that makes all there is differ by what the box differs, or null where nothing differs. In no box it is a
 * movement, because that heap holds what was bought and put nowhere too.
 */
export function recount(line: ThereLine, box: string, found: number, today: Day): Change | null {
  const change = found - line.here;
  if (change === 0) return null;
  if (box === "" && line.counted === null)
    return { kind: "move-stock", movement: { date: today, item: line.item, change, why: "corrected", note: "" } };
  const count = (line.counted ?? 0) + change;
  if (count < 0) return { kind: "move-stock", movement: { date: today, item: line.item, change, why: "corrected", note: "" } };
  return { kind: "set-stock", line: { item: line.item, count, box } };
}

/**
 * A list of what lies where now, as the lines that a class file holds: what went or came since the last count is added again,
 * because school/stock takes it off once more.
 */
export function asCounted(list: readonly StockLine[], there: WhatIsThere): StockLine[] {
  return list.map((line) => {
    const now = there.boxes.find((b) => b.box === line.box)?.lines.find((l) => l.item === line.item);
    return now ? { ...line, count: Math.max(0, line.count + (now.counted ?? 0) - now.here) } : line;
  });
}

/** What lies loose now, as a list that can be taken again. */
export function asList(there: WhatIsThere): StockLine[] {
  return there.boxes.flatMap(({ box, lines }) => lines.map(({ item, here }) => ({ item, count: here, box })));
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
