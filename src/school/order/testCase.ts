// A small order in a few words, for the tests of this room: offers as "shop: 10 x led red @ 120", needs as "led red x2".
//
// Only tests import it.
// Does not know: expected answers.
import { addDays, type Day, type IntegerModel, type IntegerOptions, type IntegerOutcome } from "../../base/index.ts";
import type { ItemKey, Kit, Supplier } from "../file/index.ts";
import { type Cupboard, type LossRates, type Need, rateOf, type Sitting } from "../stock/index.ts";
import type { OrderInput } from "./stateOrder.ts";

export const today = "2027-03-01" as Day;

export interface CaseWords {
  /** Item to count. */
  readonly have?: Record<ItemKey, number>;
  /** Days from today, teams, needs such as "led red x2 or led green". Ids are a, b, c … in this order. */
  readonly lessons: readonly (readonly [inDays: number, teams: number, ...needs: string[]])[];
  /** "id shipping/freeFrom days" to offers such as "10 led red @ 120", "1 kit small @ 900 max 2". */
  readonly shops?: Record<string, readonly string[]>;
  readonly kits?: Record<string, Record<ItemKey, number>>;
  /** Loss a use of everything, or by item or kind. */
  readonly loss?: number | Record<string, number>;
  readonly chance?: number;
  readonly budget?: number | null;
}

export function orderCase(words: CaseWords): OrderInput {
  return {
    classFile: {
      suppliers: Object.entries(words.shops ?? {}).map(supplier),
      chance: words.chance ?? 0,
      budget: words.budget ?? null,
    },
    kits: new Map(Object.entries(words.kits ?? {}).map(([id, contents]) => [id, kit(id, contents)])),
    sittings: words.lessons.map(sitting),
    cupboard: cupboardOf(words.have ?? {}),
    rates: ratesOf(words.loss ?? 0),
    today,
    seconds: 20,
  };
}

function supplier([head, offers]: [string, readonly string[]]): Supplier {
  const [, id, shipping, freeFrom, days] = /^(\S+) (\d+)(?:\/(\d+))?(?: (\d+)d)?$/.exec(head) ?? [];
  if (id === undefined) throw new Error(`cannot read the shop "${head}"`);
  return {
    id,
    name: id,
    shipping: Number(shipping),
    freeFrom: freeFrom === undefined ? null : Number(freeFrom),
    days: Number(days ?? 0),
    offers: offers.map((text, i) => {
      const [, count, what, price, most] = /^(\d+) (.+) @ (\d+)(?: max (\d+))?$/.exec(text) ?? [];
      if (what === undefined) throw new Error(`cannot read the offer "${text}"`);
      const contains = what.startsWith("kit ")
        ? { kind: "kit" as const, kit: what.slice(4) }
        : { kind: "item" as const, item: what, count: Number(count) };
      return { id: `${id}-${i}`, contains, price: Number(price), available: most === undefined ? null : Number(most) };
    }),
  };
}

function kit(id: string, contents: Record<ItemKey, number>): Kit {
  return { format: "benchday-kit/1", id, name: id, contents: new Map(Object.entries(contents)), note: "" } as Kit;
}

function sitting([inDays, teams, ...needs]: CaseWords["lessons"][number], i: number): Sitting {
  const id = String.fromCharCode(97 + i);
  return { id, class: "7b", lesson: id, date: addDays(today, inDays), start: i, teams, needs: needs.map(need) };
}

function need(text: string): Need {
  const [first = "", ...substitutes] = text.split(" or ");
  const [, item = first, each = "1"] = /^(.+?)(?: x([\d.]+))?$/.exec(first) ?? [];
  return { for: [item], item, each: Number(each), substitutes };
}

export function cupboardOf(have: Record<ItemKey, number>): Cupboard {
  const items = new Map(Object.entries(have).map(([item, count]) => [item, { count, boxes: [{ box: "", count }] }]));
  return { day: today, items, coming: [], deadPins: [] };
}

export function ratesOf(loss: number | Record<string, number>): LossRates {
  const byItem = typeof loss === "number" ? Object.fromEntries(everyKind.map((kind) => [kind, loss])) : loss;
  return new Map(Object.entries(byItem).map(([item, mean]) => [item, { ...rateOf(new Map(), item), mean }]));
}

const everyKind = ["led", "resistor", "servo", "wire", "board", "computer", "usb-cable", "part", "power-bank"];

/** A solver that finds nothing in time. */
export async function noTime(_: IntegerModel, _options: IntegerOptions): Promise<IntegerOutcome> {
  return { status: "outOfTime", bound: 0 };
}
