// How likely a thing is lost, broken or no longer trusted after one lesson in which it was used, and how sure that is.
//
// Before the class has counted, the catalogue's loss class speaks: a share a year, turned into a rate a use. The class's own
// counts then move it (a beta prior, binomial counts: the posterior is a beta again). The prior is as weak as one single
// loss, so a hundred uses that were counted soon outweigh it.
// Does not know: how many are needed, prices.
import { catalogue, type LossClass } from "../../bench/parts/index.ts";
import type { ClassFile, ItemKey } from "../file/index.ts";
import { betaQuantile } from "./betaDistribution.ts";

/**
 * Share lost in a school year with a count-in each lesson: the geometric middle of each class of the catalogue.
 * Common practice, no source: for small parts no published rate was found.
 */
export const lossPerYear: Readonly<Record<LossClass, number>> = { L0: 0.005, L1: 0.02, L2: 0.05, L3: 0.16, L4: 0.35 };

/**
 * Lessons a year in which one thing is used. Chosen so that a year's loss and a lesson's agree in practice: at 16 uses, L3
 * (wires, buttons, LEDs, resistors) loses 1.1 % a use, where teachers who count name 0.5–2 %. Common practice, no source.
 */
export const usesPerYear = 16;

/** Shape of the prior: as if one loss had been seen. Its 90 % interval then reaches from a twentieth to three times its mean. */
const priorLosses = 1;

/** What is known of one item or kind. */
export interface LossRate {
  /** Item key, or a kind of the catalogue. */
  readonly item: string;
  readonly lossClass: LossClass;
  /** Chance of loss a use before any count. */
  readonly prior: number;
  /** Uses that were counted, and how many of them did not come back whole. */
  readonly out: number;
  readonly lost: number;
  /** Chance of loss a use: the mean of Beta(1 + lost, 1/prior − 1 + out − lost). */
  readonly mean: number;
  /** The middle 90 % of the same distribution. */
  readonly low: number;
  readonly high: number;
}

/** By item key for what was counted, by kind for the rest; read it with `rateOf`. */
export type LossRates = ReadonlyMap<string, LossRate>;

/** The rate of a loss class for one use: 1 − (1 − y)^(1/uses). */
export function lossPerUse(lossClass: LossClass): number {
  return 1 - (1 - lossPerYear[lossClass]) ** (1 / usesPerYear);
}

/** Kind of an item: the first word of its key. */
function kindOf(item: ItemKey): string {
  return item.split(" ", 1)[0] ?? item;
}

/**
 * The rates of every kind of the catalogue, and of every item that the class has counted.
 *
 * @param classFile only its counts are used. A thing that came back broken counts as lost; one that was found again later
 * does not undo it, because it was missing in the lesson.
 */
export function lossRates(classFile: Pick<ClassFile, "counts">): LossRates {
  const counted = new Map<string, { out: number; lost: number }>();
  for (const { item, out, back } of classFile.counts) {
    const before = counted.get(item) ?? { out: 0, lost: 0 };
    counted.set(item, { out: before.out + out, lost: before.lost + Math.max(0, out - back) });
  }
  const rates = new Map<string, LossRate>();
  for (const kind of catalogue.keys()) rates.set(kind, rateFrom(kind, { out: 0, lost: 0 }));
  for (const [item, seen] of counted) rates.set(item, rateFrom(item, seen));
  return rates;
}

/** @returns the rate of an item: its own counts, else its kind; a kind that the catalogue does not know counts as L2. */
export function rateOf(rates: LossRates, item: ItemKey): LossRate {
  return rates.get(item) ?? rates.get(kindOf(item)) ?? rateFrom(item, { out: 0, lost: 0 });
}

function rateFrom(item: string, { out, lost }: { out: number; lost: number }): LossRate {
  const lossClass = catalogue.get(kindOf(item))?.loss ?? "L2";
  const prior = lossPerUse(lossClass);
  const a = priorLosses + lost;
  const b = priorLosses / prior - priorLosses + out - lost;
  return {
    item,
    lossClass,
    prior,
    out,
    lost,
    mean: a / (a + b),
    low: betaQuantile(0.05, a, b),
    high: betaQuantile(0.95, a, b),
  };
}
