// What is left of a budget, and the days on which an order is to be placed: the figures that the Order place shows beside the
// plan's own.
//
// Does not know: words, how a sum is written.
import type { Money } from "../../../base/index.ts";
import type { OrderPlan } from "../../../school/order/index.ts";

/** @returns what is left, negative where the order goes over; null where nobody set a budget. */
export function leftOf(budget: Money | null, cost: Money): Money | null {
  return budget === null ? null : budget - cost;
}

/** The goods alone, without shipping. */
export function goodsOf(lines: readonly Pick<OrderPlan["lines"][number], "cost">[]): Money {
  return lines.reduce((sum, line) => sum + line.cost, 0);
}
