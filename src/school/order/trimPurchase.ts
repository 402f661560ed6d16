// Takes out of a purchase what no lesson needs.
//
// The solver's optimum has nothing to trim unless packets are free of charge; a plan that it had to stop at, and the plan of
// last resort (everything that could serve), have. Packets are tried from the dearest on; fewer packets never help a
// lesson, so the fewest that do are found by halving.
// Does not know: how the purchase came about.
import { leastThat } from "./leastThat.ts";
import { isHeld, type Packets, type StatedOrder, type StatedSitting, totalOf, unitsWith } from "./stateOrder.ts";

/** @returns packets no dearer than before with which all of `held` are still held. */
export function trimPurchase(order: StatedOrder, packets: Packets, held: readonly StatedSitting[]): number[] {
  const trimmed = [...packets];
  const holds = (o: number, count: number) => {
    const tried = trimmed.map((n, i) => (i === o ? count : n));
    return held.every((sitting) => isHeld(sitting, unitsWith(order, sitting, tried)));
  };
  const dearest = order.offers.map((_, o) => o).sort((a, b) => order.offers[b]!.price - order.offers[a]!.price || a - b);
  for (const o of dearest) {
    const fewest = leastThat(0, trimmed[o]!, (count) => holds(o, count));
    // Below a supplier's threshold the shipping comes back, so fewer packets can be dearer.
    let best = trimmed[o]!;
    for (let count = fewest; count < trimmed[o]!; count += 1) {
      const cost = (n: number) =>
        totalOf(
          order,
          trimmed.map((m, i) => (i === o ? n : m)),
        );
      if (cost(count) < cost(best) || (cost(count) === cost(best) && count < best)) best = count;
    }
    trimmed[o] = best;
  }
  return trimmed;
}

/** The plan of last resort: everything that could serve, trimmed. It holds every open lesson. */
export function everythingTrimmed(order: StatedOrder): number[] {
  return trimPurchase(
    order,
    order.offers.map((offer) => offer.most),
    order.open,
  );
}
