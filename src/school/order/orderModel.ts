// The order as an integer program.
//
// Whole numbers are only the packets, and yes or no: is a supplier used, is it sent free, is a lesson held. Once the packets are
// whole, the rest may be continuous: the chance of a need is log-concave in its units, so its logarithm is a sum of ever
// smaller steps that fill in order by themselves; and sharing units among needs that compete is a flow, whose corners are
// whole. So for whole packets the linear rest gives exactly the joint chance of stock/shareOut.ts.
//
// Each need must have `least` units whatever the others do, which spares the solver the first steps of every chance. Rows for
// sets of suppliers ("unless one of these is used, the others bring it all") were tried and made no solver faster: they cut
// the same rows themselves.
// Does not know: a solver, the words for an outcome.
import { type IntegerModel, type IntegerVariable, type LinearRow, logChanceEnough, type Money } from "../../base/index.ts";
import type { ItemKey } from "../file/index.ts";
import type { StatedGroup, StatedOrder, StatedSitting } from "./stateOrder.ts";

/** What is asked of the model. */
export type OrderQuestion =
  /** The cheapest purchase with which every open lesson is held. */
  | { readonly ask: "all" }
  /** The most lessons for the money, earlier ones first; its cost is minus their weights. */
  | { readonly ask: "most"; readonly budget: Money }
  /** The cheapest purchase that holds at least this weight of lessons, or at least this many. */
  | { readonly ask: "cheapest"; readonly least: number; readonly by: "weight" | "count"; readonly budget: Money | null };

/** The model asks for this much more than the target, as a share of the wish, so that a solver's rounding never loses it. */
const margin = 1e-6;

/** Names of the variables; a test and the references read them too. */
export const variableNames = {
  packets: (offer: number) => `x${offer}`,
  used: (supplier: number) => `y${supplier}`,
  free: (supplier: number) => `f${supplier}`,
  held: (sitting: number) => `h${sitting}`,
};

/**
 * What holding a lesson is worth when not all can be held: one more lesson is worth more than any choice among them, and of
 * as many lessons those that come earlier (the smallest sum of places in the order of days).
 */
export function weightOf(sitting: number, sittings: number): number {
  return sittings * sittings + sittings - sitting;
}

/** @returns the program for one question about an order. Its integer variables are named by `variableNames`. */
export function orderModel(order: StatedOrder, question: OrderQuestion): IntegerModel {
  const build = builder();
  const { variable, row } = build;
  const isCost = question.ask !== "most";
  const money: Term[] = [];
  const pay = (name: string, price: Money, upper: number) => {
    variable(name, isCost ? price : 0, upper, true);
    money.push([name, price]);
    return name;
  };
  order.suppliers.forEach(({ shipping, freeFrom }, s) => {
    const mine = order.offers.map((offer, o) => ({ offer, o })).filter(({ offer }) => offer.supplier === s);
    if (mine.length === 0) return;
    const used = pay(variableNames.used(s), shipping, 1);
    const goods: Term[] = mine.map(({ offer, o }) => [pay(variableNames.packets(o), offer.price, offer.most), offer.price]);
    for (const { offer, o } of mine) row(`link${o}`, [[used, offer.most] as Term, [variableNames.packets(o), -1]], 0);
    if (freeFrom === null || shipping === 0) return;
    const free = pay(variableNames.free(s), -shipping, 1);
    row(`free${s}`, [...goods, [free, -freeFrom]], 0);
    row(`sent${s}`, [[used, 1] as Term, [free, -1]], 0);
  });

  const weight = (t: number) => weightOf(t, order.open.length);
  order.open.forEach((sitting, t) => {
    const held = variable(variableNames.held(t), isCost ? 0 : -weight(t), 1, true, question.ask === "all" ? 1 : 0);
    sittingRows(order, sitting, t, held, build);
  });

  if (question.ask !== "all" && question.budget !== null) row("budget", money, Number.NEGATIVE_INFINITY, question.budget);
  if (question.ask === "cheapest") {
    const worth = order.open.map((_, t): Term => [variableNames.held(t), question.by === "count" ? 1 : weight(t)]);
    row("lessons", worth, question.least);
  }
  return build.model;
}

type Term = readonly [variable: string, factor: number];

interface Builder {
  readonly model: IntegerModel;
  readonly variable: (name: string, cost: number, upper: number, integer: boolean, lower?: number) => string;
  /** Factors of one variable are added up; a variable whose factor is 0 is left out. */
  readonly row: (name: string, terms: readonly Term[], lower: number, upper?: number) => void;
}

function builder(): Builder {
  const variables: IntegerVariable[] = [];
  const rows: LinearRow[] = [];
  return {
    model: { variables, rows, constant: 0 },
    variable: (name, cost, upper, integer, lower = 0) => {
      variables.push({ name, cost, lower, upper, integer });
      return name;
    },
    row: (name, terms, lower, upper = Number.POSITIVE_INFINITY) => {
      const sum = new Map<string, number>();
      for (const [key, factor] of terms) if (factor !== 0) sum.set(key, (sum.get(key) ?? 0) + factor);
      rows.push({ name, terms: sum, lower, upper });
    },
  };
}

/** What one lesson asks: units for each need, and the joint chance. */
function sittingRows(order: StatedOrder, sitting: StatedSitting, t: number, held: string, build: Builder): void {
  const { weighed, counts, groups, target } = sitting;
  // Packets in time that bring an item, with how many.
  const packetsOf = (item: ItemKey): Term[] =>
    order.offers.flatMap(({ contents, usableFrom }, o) => {
      const each = contents.get(item);
      return each === undefined || usableFrom > weighed.sitting.date ? [] : [[variableNames.packets(o), each] as const];
    });
  const gains: Term[] = [];
  let fixed = 0;
  let needs = 0;
  for (const group of groups) {
    if (!group.buyable) {
      fixed += group.logChance;
      continue;
    }
    const supply = unitsOfGroup(group, counts, packetsOf, `${t}_${needs}`, build);
    for (const [n, need] of group.needs.entries()) {
      const name = `${t}_${needs + n}`;
      const { terms, there } = supply[n]!;
      // Units that are there in any case need no step of their own.
      const base = Math.min(need.most, Math.max(need.least, there));
      const steps: Term[] = [];
      if (target > Number.NEGATIVE_INFINITY) {
        let log = logChanceEnough(need.wanted, base, need.works);
        fixed += log;
        for (let units = base + 1; units <= need.most; units += 1) {
          const more = logChanceEnough(need.wanted, units, need.works);
          steps.push([build.variable(`z${name}_${units}`, 0, 1, false), more - log]);
          log = more;
        }
        gains.push(...steps);
      }
      build.row(`units${name}`, [...terms, [held, there - base], ...steps.map(([step]): Term => [step, -1])], 0);
    }
    needs += group.needs.length;
  }
  if (target > Number.NEGATIVE_INFINITY) {
    // Divided by the wish, so that the solver's tolerance is a share of what may fail.
    const scale = -1 / order.goal;
    const wanted = (target - fixed) * scale + margin;
    build.row(`chance${t}`, [...gains.map(([step, gain]): Term => [step, gain * scale]), [held, -wanted]], 0);
  }
}

/** For each need of a group: the terms that sum to its units, and how many are there in any case. */
function unitsOfGroup(
  { needs }: StatedGroup,
  counts: ReadonlyMap<ItemKey, number>,
  packetsOf: (item: ItemKey) => Term[],
  name: string,
  build: Builder,
): { terms: Term[]; there: number }[] {
  const units = needs.map(() => ({ terms: [] as Term[], there: 0 }));
  const items = [...new Set(needs.flatMap((need) => need.accepts))];
  items.forEach((item, i) => {
    const takers = needs.map((_, n) => n).filter((n) => needs[n]!.accepts.includes(item));
    const there = counts.get(item) ?? 0;
    const packets = packetsOf(item);
    if (takers.length === 1) {
      units[takers[0]!]!.terms.push(...packets);
      units[takers[0]!]!.there += there;
    } else if (there > 0 || packets.length > 0) {
      const given = takers.map((n): Term => [build.variable(`a${name}_${i}_${n}`, 0, needs[n]!.most, false), -1]);
      for (const [k, n] of takers.entries()) units[n]!.terms.push([given[k]![0], 1]);
      build.row(`item${name}_${i}`, [...packets, ...given], -there);
    }
  });
  return units;
}
