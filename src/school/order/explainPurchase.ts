// Why each line stands in a purchase: the lessons that would fall without it, and what they would be short of.
//
// Does not know: how the purchase was found.
import { addDays, type Day, daysBetween } from "../../base/index.ts";
import { leastThat } from "./leastThat.ts";
import type { OrderLine, PurchaseLine } from "./purchase.ts";
import {
  isCovered,
  isHeld,
  type Packets,
  type StatedNeed,
  type StatedOrder,
  type StatedSitting,
  unitsWith,
} from "./stateOrder.ts";

type Why = PurchaseLine["why"][number];

/** @param today the day of the order. @returns the lines in the order of suppliers and their offers. */
export function explainPurchase(order: StatedOrder, packets: Packets, held: readonly StatedSitting[], today: Day): OrderLine[] {
  return order.offers.flatMap((offer, o) => {
    const count = packets[o]!;
    if (count === 0) return [];
    const without = packets.map((n, i) => (i === o ? 0 : n));
    const fallen = held.filter((sitting) => !isHeld(sitting, unitsWith(order, sitting, without)));
    const why = fallen.flatMap((sitting) => whyOf(order, sitting, packets, without, o));
    const first = fallen[0]?.weighed.sitting.date ?? held[0]?.weighed.sitting.date ?? offer.usableFrom;
    return [
      {
        supplier: order.suppliers[offer.supplier]!.id,
        offer: offer.id,
        packets: count,
        cost: count * offer.price,
        why,
        orderBy: addDays(today, daysBetween(offer.usableFrom, first)),
        fillsUp: fallen.length === 0,
      },
    ];
  });
}

/**
 * What one lesson would lack without one line: for each item of the packet the fewest units of the line with which the lesson
 * is still held, all else as bought. Those that something would be short without are missing, the others are spares.
 */
function whyOf(order: StatedOrder, sitting: StatedSitting, packets: Packets, without: Packets, o: number): Why[] {
  const counts = unitsWith(order, sitting, packets);
  const there = unitsWith(order, sitting, without);
  return [...order.offers[o]!.contents.keys()].flatMap((item): Why[] => {
    const needs = sitting.weighed.needs.filter((need) => need.accepts.includes(item));
    const need = needs.find((n) => n.need.item === item) ?? needs[0];
    if (need === undefined) return [];
    const low = there.get(item) ?? 0;
    const high = counts.get(item)!;
    const covers = leastThat(low, high, (units) => isCovered(sitting, new Map(counts).set(item, units)));
    const holds = leastThat(low, high, (units) => isHeld(sitting, new Map(counts).set(item, units)));
    // The next item is judged with no more of this one than needed, so that of two that serve alike one is named.
    counts.set(item, holds);
    const entry = (count: number, reason: Why["reason"]): Why[] =>
      count > 0 ? [{ sitting: sitting.weighed.sitting.id, item, count, reason }] : [];
    return [...entry(covers - low, reasonOf(need, item)), ...entry(holds - covers, "spare")];
  });
}

function reasonOf({ need }: Pick<StatedNeed, "need">, item: string): Why["reason"] {
  if (need.for.includes("supply")) return "supply";
  return item === need.item ? "missing" : "substitute";
}
