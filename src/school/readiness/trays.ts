// The trays of a lesson: what each team is handed, where it lies, what stands in for what, what is missing.
//
// Comes from how the stock was shared out. The computer and its port are not in a tray; they stand on the desk.
// Does not know: how units were shared out, how many there are.
import type { ItemKey } from "../file/index.ts";
import type { Cupboard, SittingStock } from "../stock/index.ts";
import type { Tray, TrayItem } from "./plan.ts";

/** Uses that stand on the desk and not in a tray. */
const onTheDesk = new Set(["computer"]);

/** @param numbers the number of each team, in the order of the stock's teams. */
export function makeTrays(stock: SittingStock, numbers: readonly number[], store: Cupboard): Tray[] {
  return numbers.map((team, t) => {
    const items: TrayItem[] = [];
    const missing: Tray["missing"][number][] = [];
    stock.coverage.forEach(({ need }, n) => {
      if (need.for.some((use) => onTheDesk.has(use)) || need.item.startsWith("usb-port")) return;
      const isPart = !generalUses.has(need.for[0] ?? "");
      const units = stock.units[t]?.[n] ?? [];
      // Units stand in the order of the parts that they are for: R1 may get 220 Ω and R2 330 Ω.
      const byItem = new Map<ItemKey | null, string[]>();
      units.forEach((item, u) => {
        const list = byItem.get(item) ?? [];
        list.push(need.for[u] ?? need.for[0] ?? "");
        byItem.set(item, list);
      });
      for (const [item, uses] of byItem) {
        const parts = isPart ? uses : [];
        if (item === null) missing.push({ item: need.item, count: uses.length, parts });
        else
          items.push({
            item,
            count: uses.length,
            parts,
            insteadOf: isPart && item !== need.item ? need.item : null,
            box: boxOf(store, item),
          });
      }
    });
    return { team, items, missing };
  });
}

const generalUses = new Set(["board", "usb-cable", "breadboard", "wire", "computer", "supply"]);

/** The box that holds most of an item; "" where nobody said. */
function boxOf(store: Cupboard, item: ItemKey): string {
  const boxes = [...(store.items.get(item)?.boxes ?? [])].filter((b) => b.box !== "");
  return boxes.sort((a, b) => b.count - a.count)[0]?.box ?? "";
}
