// What to buy: the cheapest purchase with which every lesson is held, or the most lessons for the money.
//
// The order is stated (stateOrder.ts), written as an integer program (orderModel.ts), solved by the world, and what comes back
// is judged again with the exact chances, trimmed and explained. When the budget is short three more programs are solved:
// the most lessons, the cheapest way to hold just these, and the least sum that holds one more.
// Does not know: which solver, how lessons are rehearsed, any words.
import type { IntegerOutcome, Money, World } from "../../base/index.ts";
import type { ItemKey } from "../file/index.ts";
import { shareOut } from "../stock/index.ts";
import { explainPurchase } from "./explainPurchase.ts";
import { type OrderQuestion, orderModel, variableNames, weightOf } from "./orderModel.ts";
import type { OrderOutcome, OrderPlan } from "./purchase.ts";
import {
  costOf,
  isHeld,
  type OrderInput,
  type Packets,
  type StatedOrder,
  type StatedSitting,
  stateOrder,
  totalOf,
  unitsWith,
} from "./stateOrder.ts";
import { everythingTrimmed, trimPurchase } from "./trimPurchase.ts";

/** Seconds for the solver unless the caller says otherwise. */
const usualSeconds = 20;
/** Prices are whole, so a purchase that might be cheaper by less than one smallest coin is the cheapest. */
const lessThanACoin = 0.9;

/** An answer of the solver in our terms. `bound` is rounded up to whole coins. */
interface Solved {
  readonly packets: number[];
  readonly proven: boolean;
  readonly bound: number;
}

/**
 * @param world only its solver is used.
 * @returns the plan. Status "infeasible": no purchase, however dear, holds a single lesson; "feasible": the time was over
 * before the proof, and `bound` and `gap` say how far the cost may be from the least.
 */
export async function planOrder(input: OrderInput, world: Pick<World, "solve">): Promise<OrderPlan> {
  const order = stateOrder(input);
  const seconds = input.seconds ?? usualSeconds;
  const { budget } = input.classFile;
  const solve = async (question: OrderQuestion): Promise<Solved | null> =>
    read(
      order,
      await world.solve(orderModel(order, question), {
        seconds: seconds / (budget === null ? 1 : 4),
        absoluteGap: lessThanACoin,
      }),
    );

  if (order.open.length === 0) return planOf(input, order, { packets: [], proven: true, bound: 0 }, { costOfAll: 0 });
  const all = (await solve({ ask: "all" })) ?? { packets: everythingTrimmed(order), proven: false, bound: 0 };
  const packets = trimPurchase(order, all.packets, order.open);
  const costOfAll = totalOf(order, packets);
  if (budget === null || costOfAll <= budget) return planOf(input, order, { ...all, packets }, { costOfAll });
  return planShort(input, order, budget, costOfAll, solve);
}

/** The plan when the budget does not hold every lesson. */
async function planShort(
  input: OrderInput,
  order: StatedOrder,
  budget: Money,
  costOfAll: Money,
  solve: (question: OrderQuestion) => Promise<Solved | null>,
): Promise<OrderPlan> {
  const nothing = order.offers.map(() => 0);
  const most = (await solve({ ask: "most", budget })) ?? { packets: nothing, proven: false, bound: Number.NEGATIVE_INFINITY };
  const heldBy = (packets: Packets) => order.open.filter((s) => isHeld(s, unitsWith(order, s, packets)));
  const weight = (held: readonly StatedSitting[]) =>
    held.reduce((sum, s) => sum + weightOf(order.open.indexOf(s), order.open.length), 0);
  const chosen = heldBy(most.packets);
  const cheapest = (await solve({ ask: "cheapest", least: weight(chosen), by: "weight", budget })) ?? {
    ...most,
    proven: false,
    bound: 0,
  };
  const held = heldBy(cheapest.packets);
  const packets = trimPurchase(order, cheapest.packets, held);
  const solved = { packets, proven: most.proven && cheapest.proven, bound: cheapest.bound };
  // The weights are such that their sum divided by the square of the number is the number of lessons, and a rest.
  const unit = order.open.length ** 2;
  const heldAtMost = most.proven ? held.length : Math.min(order.open.length, Math.floor(-most.bound / unit));
  const more =
    held.length + 1 < order.open.length
      ? await solve({ ask: "cheapest", least: held.length + 1, by: "count", budget: null })
      : null;
  const richer = more ? trimPurchase(order, more.packets, heldBy(more.packets)) : null;
  const next = richer
    ? { cost: totalOf(order, richer), sittings: idsOf(heldBy(richer).filter((s) => !held.includes(s))) }
    : { cost: costOfAll, sittings: idsOf(order.open.filter((s) => !held.includes(s))) };
  return planOf(input, order, solved, { costOfAll, heldAtMost, next });
}

const idsOf = (sittings: readonly StatedSitting[]) => sittings.map((s) => s.weighed.sitting.id);

/** Reads the packets; null where the solver found nothing in time. What is asked here can always be done. */
function read(order: StatedOrder, outcome: IntegerOutcome): Solved | null {
  if (outcome.status === "infeasible")
    throw new Error("the order's program has no answer although it was stated that it has one");
  if (outcome.status === "outOfTime") return null;
  return {
    packets: order.offers.map((_, o) => Math.round(outcome.values.get(variableNames.packets(o)) ?? 0)),
    proven: outcome.status === "optimal",
    // A bound of 1234.2 coins is one of 1235; noise of the solver is not.
    bound: Math.ceil(outcome.bound - 1e-4),
  };
}

interface Extra {
  readonly costOfAll: Money;
  /** Open sittings only. */
  readonly heldAtMost?: number;
  readonly next?: OrderPlan["next"];
}

function planOf(input: OrderInput, order: StatedOrder, { packets, proven, bound }: Solved, extra: Extra): OrderPlan {
  const isOpenHeld = (s: StatedSitting) => isHeld(s, unitsWith(order, s, packets));
  const heldOpen = order.open.filter(isOpenHeld);
  const held = [...order.settled, ...heldOpen].sort((a, b) => a.place - b.place);
  const cost = totalOf(order, packets);
  const least = proven ? cost : Math.min(cost, Math.max(0, bound));
  const notHeld: OrderPlan["notHeld"] = [
    ...order.blocked.map(({ sitting, reason, items }) => ({ sitting: sitting.sitting.id, reason, items })),
    ...order.open
      .filter((s) => !isOpenHeld(s))
      .map((s) => ({
        sitting: s.weighed.sitting.id,
        reason: "budget" as const,
        items: lacking(order, s, packets),
      })),
  ];
  const isImpossible = held.length === 0 && order.open.length === 0 && order.blocked.length > 0;
  const chances = held.map((s) => ({ sitting: s, ...judge(order, s, packets) }));
  return {
    status: isImpossible ? "infeasible" : proven ? "optimal" : "feasible",
    outcome: outcomeOf(order, notHeld, packets),
    cost,
    bound: least,
    gap: cost > 0 ? (cost - least) / cost : 0,
    lines: explainPurchase(order, packets, heldOpen, input.today),
    shipping: costOf(order, packets).flatMap(({ shipping }, s) =>
      shipping > 0 ? [{ supplier: order.suppliers[s]!.id, cost: shipping }] : [],
    ),
    held: idsOf(held),
    notHeld,
    chances: chances.map(({ sitting, chance }) => ({ sitting: sitting.weighed.sitting.id, chance })),
    costOfAll: order.blocked.length > 0 ? null : extra.costOfAll,
    below: chances
      .filter(({ chance }) => chance < input.classFile.chance)
      .map(({ sitting, chance, items }) => ({ sitting: sitting.weighed.sitting.id, chance, items })),
    heldAtMost: order.settled.length + (extra.heldAtMost ?? heldOpen.length),
    next: extra.next ?? null,
  };
}

/** The chance of a lesson, and what holds it down, worst first: enough of it that the rest alone would reach the wish. */
function judge(order: StatedOrder, sitting: StatedSitting, packets: Packets): { chance: number; items: ItemKey[] } {
  const { needs } = sitting.weighed;
  const { logChances } = shareOut(needs, unitsWith(order, sitting, packets));
  let joint = logChances.reduce((sum, log) => sum + log, 0);
  const chance = Math.exp(joint);
  const items: ItemKey[] = [];
  const worst = needs.map((need, n) => ({ item: need.need.item, log: logChances[n]! })).sort((a, b) => a.log - b.log);
  for (const { item, log } of worst) {
    if (joint >= order.goal) break;
    items.push(item);
    joint -= log;
  }
  return { chance, items };
}

/** Why a lesson is not held: what it is short of, or what its chance is too low for. */
function lacking(order: StatedOrder, sitting: StatedSitting, packets: Packets): ItemKey[] {
  const { needs } = sitting.weighed;
  const { totals } = shareOut(needs, unitsWith(order, sitting, packets));
  const short = needs.filter((need, n) => totals[n]! < need.wanted).map((need) => need.need.item);
  return short.length > 0 ? [...new Set(short)] : judge(order, sitting, packets).items;
}

function outcomeOf(order: StatedOrder, notHeld: OrderPlan["notHeld"], packets: Packets): OrderOutcome {
  const reasons = new Set(notHeld.map((n) => n.reason));
  if (reasons.has("budget")) return "budget short";
  if (reasons.size > 0 && order.suppliers.length === 0) return "no suppliers";
  if (reasons.has("no offer")) return "not for sale";
  if (reasons.has("too late")) return "too late";
  return packets.some((n) => n > 0) ? "all held" : "nothing needed";
}
