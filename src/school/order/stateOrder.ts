// What an order has to decide, stated: which offers matter, which lessons are open, what each of them must reach.
//
// A lesson is held when nothing is short and the joint chance that every team works reaches the class's wish. Where things
// that nobody sells keep it from being reached, money can still do its part: then the chance over all that can be bought
// must reach the wish. Lessons that hold as things are leave the model, because more stock never makes one worse; lessons
// that no money can hold leave it too, with their reason.
// Does not know: how the cheapest purchase is found.
import { addDays, type Day, logChanceEnough, type Money } from "../../base/index.ts";
import type { ClassFile, ItemKey, Kit, Supplier } from "../file/index.ts";
import {
  type Cupboard,
  type LossRates,
  type Sitting,
  shareOut,
  unitsFor,
  type WeighedNeed,
  type WeighedSitting,
  weighSittings,
} from "../stock/index.ts";

export interface OrderInput {
  readonly classFile: Pick<ClassFile, "suppliers" | "chance" | "budget">;
  readonly kits: ReadonlyMap<string, Kit>;
  /** Lessons of all classes that share the cupboard, with their needs. Those before today are left out. */
  readonly sittings: readonly Sitting[];
  /** Of today, with what is still to come. */
  readonly cupboard: Cupboard;
  readonly rates: LossRates;
  /** The day on which the order is placed. */
  readonly today: Day;
  /** For the solver, in all; 20 unless said. */
  readonly seconds?: number;
}

/** One packet of one supplier that some lesson could use. */
export interface StatedOffer {
  readonly supplier: number;
  readonly id: string;
  readonly price: Money;
  /** Only items that some lesson accepts. */
  readonly contents: ReadonlyMap<ItemKey, number>;
  /** Lessons from this day on can count on it: the day after it arrives, because it must be unpacked and put into trays. */
  readonly usableFrom: Day;
  /** More packets than this serve nothing. */
  readonly most: number;
}

export interface StatedNeed extends WeighedNeed {
  /** No purchase holds the lesson with fewer units, because of this need alone. */
  readonly least: number;
  /** More units than this change the chance by nothing that counts. */
  readonly most: number;
}

/** Needs of one lesson that compete for items, directly or through others; most are alone. */
export interface StatedGroup {
  readonly needs: readonly StatedNeed[];
  /** Whether any offer in time brings something for it. */
  readonly buyable: boolean;
  /** ln of the chance with what is there, for a group that cannot be bought for. */
  readonly logChance: number;
}

export interface StatedSitting {
  /** Place in the order in which all lessons are held. */
  readonly place: number;
  readonly weighed: WeighedSitting;
  /** Units before any purchase. */
  readonly counts: ReadonlyMap<ItemKey, number>;
  readonly groups: readonly StatedGroup[];
  /** ln of the joint chance that must be reached; −Infinity where only the units count. */
  readonly target: number;
}

export interface Blocked {
  readonly sitting: WeighedSitting;
  readonly reason: "no offer" | "too late";
  readonly items: readonly ItemKey[];
}

export interface StatedOrder {
  readonly suppliers: readonly Supplier[];
  readonly offers: readonly StatedOffer[];
  /** ln of the class's wish. */
  readonly goal: number;
  /** Lessons that hold as things are. */
  readonly settled: readonly StatedSitting[];
  /** Lessons that a purchase could make hold, in the order in which they are held. */
  readonly open: readonly StatedSitting[];
  readonly blocked: readonly Blocked[];
}

/** Packets of each offer. */
export type Packets = readonly number[];

/** A wish of exactly 1 cannot be reached by anything that can fail; this is as near as figures go. */
const surest = 1 - 1e-9;
/** Share of the allowed logarithm below which a gain in chance does not count. */
const negligible = 1e-7;

/** States the order; see the head of this file. */
export function stateOrder(input: OrderInput): StatedOrder {
  const { classFile, kits, cupboard, rates, today } = input;
  const { suppliers } = classFile;
  const goal = Math.log(Math.min(classFile.chance, surest));
  const all = suppliers.flatMap((supplier, s) =>
    supplier.offers.map((offer) => ({
      supplier: s,
      id: offer.id,
      price: offer.price,
      contents:
        offer.contains.kind === "item"
          ? new Map([[offer.contains.item, offer.contains.count]])
          : (kits.get(offer.contains.kit)?.contents ?? new Map<ItemKey, number>()),
      usableFrom: addDays(today, supplier.days + 1),
      most: offer.available ?? Number.POSITIVE_INFINITY,
    })),
  );
  const items = [...cupboard.items.keys(), ...cupboard.coming.map((c) => c.item), ...all.flatMap((o) => [...o.contents.keys()])];
  // All lessons are weighed, so that those of the past have their place; only those from today on are planned.
  const weighed = weighSittings(input.sittings, today, rates, items).filter(({ sitting }) => sitting.date >= today);
  const accepted = new Set(weighed.flatMap((w) => w.needs.flatMap((n) => n.accepts)));
  const useful = all
    .map((offer) => ({ ...offer, contents: new Map([...offer.contents].filter(([item, n]) => n > 0 && accepted.has(item))) }))
    .filter((offer) => offer.contents.size > 0 && offer.most > 0);

  const blocked: Blocked[] = [];
  const settled: StatedSitting[] = [];
  const open: StatedSitting[] = [];
  weighed.forEach((one, place) => {
    const stated = stateSitting(one, place, unitsFor(one, cupboard), useful, goal);
    if ("reason" in stated) blocked.push(stated);
    else if (isHeld(stated, stated.counts)) settled.push(stated);
    else open.push(stated);
  });
  const offers = useful
    .map((offer) => ({ ...offer, most: mostPackets(offer, suppliers[offer.supplier]!, open) }))
    .filter((offer) => offer.most > 0);
  return { suppliers, offers, goal, settled, open, blocked };
}

function stateSitting(
  weighed: WeighedSitting,
  place: number,
  counts: ReadonlyMap<ItemKey, number>,
  offers: readonly StatedOffer[],
  goal: number,
): StatedSitting | Blocked {
  const capped = weighed.needs.map((need) => ({ ...need, most: mostUseful(need, goal) }));
  const enough = capped.reduce((sum, need) => sum + need.most, 0);
  const everything = (some: readonly StatedOffer[]) => {
    const total = new Map(counts);
    for (const { contents, most } of some)
      for (const [item, each] of contents) total.set(item, (total.get(item) ?? 0) + Math.min(enough, each * most));
    return total;
  };
  const inTime = offers.filter((offer) => offer.usableFrom <= weighed.sitting.date);
  const richest = everything(inTime);
  const best = shareOut(capped, richest);
  const lacking = missing(capped, best.totals);
  if (lacking.length > 0) {
    const late = missing(capped, shareOut(capped, everything(offers)).totals).length === 0;
    return { sitting: weighed, reason: late ? "too late" : "no offer", items: lacking };
  }

  const sold = new Set(inTime.flatMap((offer) => [...offer.contents.keys()]));
  const kinds = competing(capped, richest).map((members) => ({
    members,
    buyable: members.some((n) => capped[n]!.accepts.some((item) => sold.has(item))),
    logChance: members.reduce((sum, n) => sum + best.logChances[n]!, 0),
  }));
  const target = targetOf(kinds, goal);
  const fixed = kinds.reduce((sum, k) => sum + (k.buyable ? 0 : k.logChance), 0);
  const groups = kinds.map(({ members, buyable, logChance }) => ({
    buyable,
    logChance,
    needs: members.map((n) => ({ ...capped[n]!, least: leastUnits(capped[n]!, target - fixed) })),
  }));
  return { place, weighed, counts, groups, target };
}

/** The joint chance to reach, as a logarithm: the wish, or as much of it as money can do. */
function targetOf(groups: readonly { buyable: boolean; logChance: number }[], goal: number): number {
  const sum = (buyable: boolean) => groups.reduce((total, g) => total + (g.buyable === buyable ? g.logChance : 0), 0);
  if (sum(true) + sum(false) >= goal * (1 - 100 * negligible)) return goal;
  // The slack keeps a purchase of everything that there is from failing by a rounding.
  return sum(false) + Math.min(goal, sum(true) + goal * 100 * negligible);
}

/** Needs that share an item which exists, in groups of indices. */
function competing(needs: readonly WeighedNeed[], counts: ReadonlyMap<ItemKey, number>): number[][] {
  const groups: number[][] = [];
  const real = needs.map((need) => need.accepts.filter((item) => (counts.get(item) ?? 0) > 0));
  needs.forEach((_, n) => {
    const touching = groups.filter((group) => group.some((m) => real[m]!.some((item) => real[n]!.includes(item))));
    for (const group of touching) groups.splice(groups.indexOf(group), 1);
    groups.push([...touching.flat(), n]);
  });
  return groups;
}

/** The fewest units with which this need alone does not spoil the target. */
function leastUnits(need: StatedNeedLimits, target: number): number {
  let units = need.wanted;
  while (units < need.most && logChanceEnough(need.wanted, units, need.works) < target) units += 1;
  return units;
}
type StatedNeedLimits = WeighedNeed & { readonly most: number };

function mostUseful({ wanted, works }: WeighedNeed, goal: number): number {
  if (goal === Number.NEGATIVE_INFINITY || works <= 0) return wanted;
  let units = wanted;
  while (logChanceEnough(wanted, units, works) < goal * negligible) units += 1;
  return units;
}

function mostPackets(offer: StatedOffer, supplier: Supplier, open: readonly StatedSitting[]): number {
  let most = 0;
  for (const { weighed, groups, counts } of open) {
    if (offer.usableFrom > weighed.sitting.date) continue;
    for (const [item, each] of offer.contents) {
      const takers = groups.flatMap((g) => g.needs).filter((need) => need.accepts.includes(item));
      const units = takers.reduce((sum, need) => sum + need.most, 0) - (counts.get(item) ?? 0);
      most = Math.max(most, Math.ceil(units / each));
    }
  }
  // Filling up to free shipping is worth at most the shipping.
  if (most > 0 && supplier.freeFrom !== null && offer.price > 0) most += Math.ceil(supplier.shipping / offer.price);
  return Math.min(most, offer.most);
}

/** Items of the needs that are short. */
function missing(needs: readonly WeighedNeed[], totals: readonly number[]): ItemKey[] {
  return [...new Set(needs.filter((need, n) => totals[n]! < need.wanted).map((n) => n.need.item))];
}

/** The units of a lesson once a purchase has come. */
export function unitsWith(order: StatedOrder, { weighed, counts }: StatedSitting, packets: Packets): Map<ItemKey, number> {
  const total = new Map(counts);
  order.offers.forEach(({ contents, usableFrom }, o) => {
    if (!packets[o] || usableFrom > weighed.sitting.date) return;
    for (const [item, each] of contents) total.set(item, (total.get(item) ?? 0) + each * packets[o]!);
  });
  return total;
}

/** Whether nothing is short with these units, however likely they are to work. */
export function isCovered({ weighed }: StatedSitting, counts: ReadonlyMap<ItemKey, number>): boolean {
  const { totals } = shareOut(weighed.needs, counts);
  return weighed.needs.every((need, n) => totals[n]! >= need.wanted);
}

/** Whether a lesson is held with these units: nothing short, and the joint chance at its target. */
export function isHeld({ weighed, target }: StatedSitting, counts: ReadonlyMap<ItemKey, number>): boolean {
  const { totals, logChances } = shareOut(weighed.needs, counts);
  if (weighed.needs.some((need, n) => totals[n]! < need.wanted)) return false;
  return logChances.reduce((sum, log) => sum + log, 0) >= target;
}

/** What a purchase costs: goods and shipping of each supplier, free from its threshold on. */
export function costOf({ suppliers, offers }: StatedOrder, packets: Packets): { goods: Money; shipping: Money }[] {
  return suppliers.map(({ shipping, freeFrom }, s) => {
    const mine = offers.map((offer, o) => (offer.supplier === s ? packets[o]! : 0));
    const goods = mine.reduce((sum, count, o) => sum + count * offers[o]!.price, 0);
    const isSent = mine.some((count) => count > 0);
    return { goods, shipping: isSent && !(freeFrom !== null && goods >= freeFrom) ? shipping : 0 };
  });
}

/** The sum of it. */
export function totalOf(order: StatedOrder, packets: Packets): Money {
  return costOf(order, packets).reduce((sum, { goods, shipping }) => sum + goods + shipping, 0);
}
