// The order as an integer program.
//
// Whole numbers are only the packets, and yes or no: is a supplier used, is it sent free, is a lesson held. Once the packets are
// whole, the rest may be continuous: the chance of a need is log-concave in its units, so its logarithm is a sum of ever
// smaller steps that fill in order by themselves; and sharing units among needs that compete is a flow, whose corners are
// whole. So for whole packets the linear rest gives exactly the joint chance of stock/shareOut.ts.
//
// Two things make the linear bound tighter. Each need must have `least` units whatever the others do, with packets counted
// for no more than what is missing; and for each set of suppliers that is not used, the others must bring it all (the
// textbook's disaggregated link). Links x ≤ most·y alone let a hundredth of a supplier send a packet.
// Does not know: a solver, the words for an outcome.
import type { IntegerModel, IntegerVariable, LinearRow, Money } from "../../base/index.ts";
import type { ItemKey } from "../file/index.ts";
import { logChanceEnough } from "../stock/index.ts";
import type { StatedGroup, StatedOrder, StatedSitting } from "./stateOrder.ts";

/** What is asked of the model. */
export type OrderQuestion =
  /** The cheapest purchase with which every open lesson is held. */
  | { readonly ask: "all" }
  /** The most lessons for the money, earlier ones first; its cost is minus their weights. */
  | { readonly ask: "most"; readonly budget: Money }
  /** The cheapest purchase that holds at least this weight of lessons, or at least this many. */
  | { readonly ask: "cheapest"; readonly least: number; readonly by: "weight" | "count"; readonly budget: Money | null };

/** Up to so many suppliers every set of them gets its row; above that only single ones and all together. */
const fewSuppliers = 4;
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

export function orderModel(order: StatedOrder, question: OrderQuestion): IntegerModel {
  const variables: IntegerVariable[] = [];
  const rows: LinearRow[] = [];
  const counted = question.ask !== "most";
  const variable = (name: string, cost: number, upper: number, integer: boolean, lower = 0) => {
    variables.push({ name, cost, lower, upper, integer });
    return name;
  };
  const row = (name: string, terms: Iterable<readonly [string, number]>, lower: number, upper = Number.POSITIVE_INFINITY) => {
    const sum = new Map<string, number>();
    for (const [key, factor] of terms) if (factor !== 0) sum.set(key, (sum.get(key) ?? 0) + factor);
    rows.push({ name, terms: sum, lower, upper });
  };

  const money: [string, number][] = [];
  const pay = (name: string, sum: Money) => money.push([name, sum]);
  order.suppliers.forEach(({ shipping, freeFrom }, s) => {
    const mine = order.offers.map((offer, o) => ({ offer, o })).filter(({ offer }) => offer.supplier === s);
    if (mine.length === 0) return;
    const used = variable(variableNames.used(s), counted ? shipping : 0, 1, true);
    pay(used, shipping);
    for (const { offer, o } of mine) {
      const packets = variable(variableNames.packets(o), counted ? offer.price : 0, offer.most, true);
      pay(packets, offer.price);
      row(`link${o}`, [[used, offer.most], [packets, -1]], 0); // biome-ignore format: one row, one line
    }
    if (freeFrom === null || shipping === 0) return;
    const free = variable(variableNames.free(s), counted ? -shipping : 0, 1, true);
    pay(free, -shipping);
    row(`free${s}`, [...mine.map(({ offer, o }) => [variableNames.packets(o), offer.price] as const), [free, -freeFrom]], 0);
    row(`sent${s}`, [[used, 1], [free, -1]], 0); // biome-ignore format: one row, one line
  });

  order.open.forEach((sitting, t) => {
    const weight = question.ask === "most" ? -weightOf(t, order.open.length) : 0;
    const held = variable(variableNames.held(t), weight, 1, true, question.ask === "all" ? 1 : 0);
    sittingRows(order, sitting, t, held, variable, row);
  });

  if (question.ask !== "all" && question.budget !== null) row("budget", money, Number.NEGATIVE_INFINITY, question.budget);
  if (question.ask === "cheapest")
    row(
      "lessons",
      order.open.map((_, t) => [variableNames.held(t), question.by === "count" ? 1 : weightOf(t, order.open.length)] as const),
      question.least,
    );
  return { variables, rows, constant: 0 };
}

type AddVariable = (name: string, cost: number, upper: number, integer: boolean) => string;
type AddRow = (name: string, terms: Iterable<readonly [string, number]>, lower: number) => void;

/** What one lesson asks: units for each need, and the joint chance. */
function sittingRows(
  order: StatedOrder,
  sitting: StatedSitting,
  t: number,
  held: string,
  variable: AddVariable,
  row: AddRow,
): void {
  const { weighed, counts, groups, target } = sitting;
  // Packets in time that bring an item, with how many.
  const packetsOf = (item: ItemKey) =>
    order.offers.flatMap(({ contents, usableFrom }, o) => {
      const each = contents.get(item);
      return each === undefined || usableFrom > weighed.sitting.date
        ? []
        : [[variableNames.packets(o), each] as [string, number]];
    });
  const gains: [string, number][] = [];
  let fixed = 0;
  let needs = 0;
  for (const group of groups) {
    if (!group.buyable) {
      fixed += group.logChance;
      continue;
    }
    const supply = unitsOfGroup(group, counts, packetsOf, `${t}_${needs}`, variable, row);
    for (const [n, need] of group.needs.entries()) {
      const name = `${t}_${needs + n}`;
      const { terms, there } = supply[n]!;
      // Units that are there in any case need no step of their own.
      const base = Math.min(need.most, Math.max(need.least, there));
      const steps: [string, number][] = [];
      let log = logChanceEnough(need.wanted, base, need.works);
      if (target > Number.NEGATIVE_INFINITY) {
        fixed += log;
        for (let units = base + 1; units <= need.most; units += 1) {
          const more = logChanceEnough(need.wanted, units, need.works);
          steps.push([variable(`z${name}_${units}`, 0, 1, false), more - log]);
          log = more;
        }
        gains.push(...steps);
      }
      row(`units${name}`, [...terms, [held, there - base], ...steps.map(([step]) => [step, -1] as const)], 0);
      if (need.least > there) setRows(order, terms, need.least - there, held, name, row);
    }
    needs += group.needs.length;
  }
  if (target === Number.NEGATIVE_INFINITY) return;
  // Divided by the wish, so that the solver's tolerance is a share of what may fail.
  const scale = -1 / order.goal;
  const wanted = (target - fixed) * scale + margin;
  row(`chance${t}`, [...gains.map(([step, gain]) => [step, gain * scale] as const), [held, -wanted]], 0);
}

/** For each need of a group: the terms that sum to its units, and how many are there in any case. */
function unitsOfGroup(
  { needs }: StatedGroup,
  counts: ReadonlyMap<ItemKey, number>,
  packetsOf: (item: ItemKey) => [string, number][],
  name: string,
  variable: AddVariable,
  row: AddRow,
): { terms: [string, number][]; there: number }[] {
  const units = needs.map(() => ({ terms: [] as [string, number][], there: 0 }));
  const items = [...new Set(needs.flatMap((need) => need.accepts))];
  items.forEach((item, i) => {
    const takers = needs.map((_, n) => n).filter((n) => needs[n]!.accepts.includes(item));
    const there = counts.get(item) ?? 0;
    const packets = packetsOf(item);
    if (takers.length === 1) {
      units[takers[0]!]!.terms.push(...packets);
      units[takers[0]!]!.there += there;
    } else if (there > 0 || packets.length > 0) {
      const given = takers.map((n) => [variable(`a${name}_${i}_${n}`, 0, needs[n]!.most, false), -1] as [string, number]);
      takers.forEach((n, k) => {
        units[n]!.terms.push([given[k]![0], 1]);
      });
      row(`item${name}_${i}`, [...packets, ...given], -there);
    }
  });
  return units;
}

/** For each set of suppliers: unless one of the set is used, the others bring all that is missing. */
function setRows(
  order: StatedOrder,
  terms: readonly (readonly [string, number])[],
  missing: number,
  held: string,
  name: string,
  row: AddRow,
): void {
  const supplierOf = new Map(order.offers.map(({ supplier }, o) => [variableNames.packets(o), supplier]));
  // Shares of competing needs carry no supplier: their packets stand in other rows.
  if (terms.some(([term]) => !supplierOf.has(term))) return;
  const suppliers = [...new Set(terms.map(([term]) => supplierOf.get(term)!))];
  const sets =
    suppliers.length <= fewSuppliers
      ? Array.from({ length: 2 ** suppliers.length }, (_, bits) => suppliers.filter((_, i) => (bits >> i) & 1))
      : [[], ...suppliers.map((s) => [s]), suppliers];
  sets.forEach((set, i) => {
    const others = terms.filter(([term]) => !set.includes(supplierOf.get(term)!));
    row(
      `set${name}_${i}`,
      [
        ...others.map(([term, each]) => [term, Math.min(each, missing)] as const),
        ...set.map((s) => [variableNames.used(s), missing] as const),
        [held, -missing],
      ],
      0,
    );
  });
}
