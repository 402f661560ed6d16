// What the school owns on a day: kits, loose stock, boards, cables, computers, supplies, and what is still to come.
//
// Boards, cables and computers may be listed one by one, because single ones go bad. Such a list is the count: what the kits
// say they contained is then in the list already and is not counted twice.
// Does not know: lessons, losses, prices.
import type { Day } from "../../base/index.ts";
import type { ClassFile, ItemKey, Kit } from "../file/index.ts";

/** All units of one item. */
export interface CupboardItem {
  readonly count: number;
  /** Where they lie; "" where nobody said. The counts sum to `count`. */
  readonly boxes: readonly { readonly box: string; readonly count: number }[];
}

/** A change that is known beforehand: what was ordered, lent, promised. */
export interface Coming {
  /** The day from whose morning on it counts. */
  readonly date: Day;
  readonly item: ItemKey;
  readonly change: number;
}

export interface Cupboard {
  readonly day: Day;
  readonly items: ReadonlyMap<ItemKey, CupboardItem>;
  /** Movements after the day. */
  readonly coming: readonly Coming[];
  /** For each working board with dead pins: those pins. */
  readonly deadPins: readonly (readonly string[])[];
}

/**
 * The cupboard on a day: kits × contents, stock lines, movements up to and including the day, supplies, and the boards,
 * cables and computers that work. Each port of a working computer is a supply of its own ("usb-port 500mA").
 *
 * @param kits contents by kit id; a kit that is not among them counts as empty.
 */
export function cupboard(classFile: ClassFile, kits: ReadonlyMap<string, Kit>, day: Day): Cupboard {
  const boxes = new Map<ItemKey, Map<string, number>>();
  const add = (item: ItemKey, box: string, count: number) => {
    const here = boxes.get(item) ?? new Map<string, number>();
    boxes.set(item, here.set(box, (here.get(box) ?? 0) + count));
  };

  const working = {
    board: classFile.boards.filter((d) => d.works),
    "usb-cable": classFile.cables.filter((d) => d.works),
    computer: classFile.computers.filter((c) => c.works),
  };
  const listed = new Set<ItemKey>(
    [
      classFile.boards.length > 0 ? "board" : "",
      classFile.cables.length > 0 ? "usb-cable" : "",
      classFile.computers.length > 0 ? "computer" : "",
    ].filter((item) => item !== ""),
  );
  for (const [item, devices] of Object.entries(working)) if (devices.length > 0) add(item, "", devices.length);
  for (const { usbMilliamps, usbPorts } of working.computer) if (usbPorts > 0) add(`usb-port ${usbMilliamps}mA`, "", usbPorts);

  for (const { kit, count } of classFile.kits)
    for (const [item, each] of kits.get(kit)?.contents ?? []) if (!listed.has(item)) add(item, "", each * count);
  for (const { item, count, box } of [...classFile.stock, ...classFile.supplies]) if (!listed.has(item)) add(item, box, count);

  const coming: Coming[] = [];
  for (const { date, item, change } of classFile.movements) {
    if (date > day) coming.push({ date, item, change });
    else if (listed.has(item)) continue;
    else if (change >= 0) add(item, "", change);
    else take(boxes.get(item) ?? new Map(), -change);
  }

  const items = new Map<ItemKey, CupboardItem>();
  for (const [item, here] of boxes) {
    const list = [...here].filter(([, count]) => count > 0).map(([box, count]) => ({ box, count }));
    const count = list.reduce((sum, b) => sum + b.count, 0);
    if (count > 0) items.set(item, { count, boxes: list });
  }
  return {
    day,
    items,
    coming: coming.sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0)),
    deadPins: working.board.filter((b) => b.deadPins.length > 0).map((b) => b.deadPins),
  };
}

/** Nobody writes down which box a lost part came from: first those without a box go, then the fullest box. */
function take(here: Map<string, number>, count: number): void {
  for (let left = count; left > 0; ) {
    const fullest = [...here].filter(([, n]) => n > 0).sort(([a, m], [b, n]) => Number(a !== "") - Number(b !== "") || n - m)[0];
    // More was lost than had ever been counted: what is not there cannot go.
    if (!fullest) return;
    const taken = Math.min(left, fullest[1]);
    here.set(fullest[0], fullest[1] - taken);
    left -= taken;
  }
}

/** How many of an item there are in the morning of a day: today's count and what comes until then. At least 0. */
export function countOn(store: Cupboard, item: ItemKey, day: Day): number {
  const known = store.items.get(item)?.count ?? 0;
  const change = store.coming.reduce((sum, c) => sum + (c.item === item && c.date <= day ? c.change : 0), 0);
  return Math.max(0, known + change);
}

/** The same cupboard with more to come. */
export function withComing(store: Cupboard, coming: readonly Coming[]): Cupboard {
  return { ...store, coming: [...store.coming, ...coming] };
}
