// Generated purchases of the hard kind: many parts, packets of many sizes, kits that hold half of the parts, shipping.
//
// Invented by chance from a seed, in the size of a school (30 parts, 4 kits, 3 suppliers, 80 offers) or of several schools. No
// part fails, so that any integer program solver can be given the same purchase as a plain textbook model: packets cover
// the need, and a supplier whose packets are bought sends a parcel.
// Does not know: any solver, the answer.
import { type Day, type IntegerModel, type IntegerVariable, type LinearRow, seededRandom } from "../../src/base/index.ts";
import type { Kit, Supplier } from "../../src/school/file/index.ts";
import type { OrderInput } from "../../src/school/order/index.ts";

export interface CoverSize {
  readonly parts: number;
  readonly kits: number;
  readonly suppliers: number;
  readonly offers: number;
}

/** A school, and several schools that order together. */
export const schoolSize: CoverSize = { parts: 30, kits: 4, suppliers: 3, offers: 80 };
export const fullSize: CoverSize = { parts: 60, kits: 12, suppliers: 8, offers: 300 };

const packetSizes = [1, 5, 10, 20, 25, 50, 100];
const today = "2027-03-01" as Day;

/** What is to be covered: needed units, and what each thing for sale holds and costs. */
interface Cover {
  readonly needed: readonly number[];
  readonly shipping: readonly number[];
  readonly things: readonly { readonly supplier: number; readonly price: number; readonly holds: ReadonlyMap<number, number> }[];
}

function draw(size: CoverSize, seed: number): Cover {
  const random = seededRandom(seed, "cover");
  const parts = Array.from({ length: size.parts }, () => ({ needed: random.int(10, 150), worth: random.int(2, 400) }));
  const shipping = Array.from({ length: size.suppliers }, () => random.int(300, 1500));
  const kits = Array.from({ length: size.kits }, () => {
    const inside = random.shuffled(parts.map((_, p) => p)).slice(0, Math.min(15, parts.length));
    const holds = new Map(inside.map((p) => [p, random.int(1, 10)]));
    const worth = [...holds].reduce((sum, [p, count]) => sum + count * parts[p]!.worth, 0);
    // A kit costs less than its parts one by one.
    return { supplier: random.int(0, size.suppliers - 1), price: Math.round(worth * (0.6 + 0.3 * random.next())), holds };
  });
  const packets = Array.from({ length: size.offers }, (_, o) => {
    // Each part is for sale somewhere; the rest falls as it falls.
    const p = o < parts.length ? o : random.int(0, parts.length - 1);
    const count = packetSizes[random.int(0, packetSizes.length - 1)]!;
    const price = Math.max(1, Math.round(parts[p]!.worth * count ** 0.85 * (0.8 + 0.6 * random.next())));
    return { supplier: random.int(0, size.suppliers - 1), price, holds: new Map([[p, count]]) };
  });
  return { needed: parts.map((p) => p.needed), shipping, things: [...kits, ...packets] };
}

/** The purchase as our order reads it: one lesson, one team, everything counted, nothing fails. */
export function coverOrder(size: CoverSize, seed: number): OrderInput {
  const { needed, shipping, things } = draw(size, seed);
  const item = (p: number) => `part ${p}`;
  const isKit = (i: number) => i < size.kits;
  const kits = things.slice(0, size.kits).map(
    ({ holds }, k): Kit => ({
      format: "benchday-kit/1",
      id: `kit ${k}`,
      name: `kit ${k}`,
      contents: new Map([...holds].map(([p, count]) => [item(p), count])),
      note: "",
    }),
  );
  const suppliers = shipping.map(
    (sum, s): Supplier => ({
      id: `supplier ${s}`,
      name: `supplier ${s}`,
      shipping: sum,
      freeFrom: null,
      days: 3,
      offers: things.flatMap(({ supplier, price, holds }, i) => {
        if (supplier !== s) return [];
        const [p, count] = [...holds][0]!;
        const contains = isKit(i) ? { kind: "kit" as const, kit: `kit ${i}` } : { kind: "item" as const, item: item(p), count };
        return [{ id: `thing ${i}`, contains, price, available: null }];
      }),
    }),
  );
  return {
    classFile: { suppliers, chance: 0, budget: null },
    kits: new Map(kits.map((kit) => [kit.id, kit])),
    sittings: [
      {
        id: "all",
        class: "all",
        lesson: "all",
        date: "2027-04-01" as Day,
        teams: 1,
        needs: needed.map((each, p) => ({ for: [item(p)], item: item(p), each, substitutes: [] })),
      },
    ],
    cupboard: { day: today, items: new Map(), coming: [], deadPins: [] },
    rates: new Map(),
    today,
  };
}

/** The same purchase as a textbook states it, for the solvers that ours is held against. */
export function plainModel(size: CoverSize, seed: number): IntegerModel {
  const { needed, shipping, things } = draw(size, seed);
  const most = (holds: ReadonlyMap<number, number>) => Math.max(...[...holds].map(([p, count]) => Math.ceil(needed[p]! / count)));
  const variables: IntegerVariable[] = [
    ...things.map(({ price, holds }, i) => ({ name: `x${i}`, cost: price, lower: 0, upper: most(holds), integer: true })),
    ...shipping.map((sum, s) => ({ name: `y${s}`, cost: sum, lower: 0, upper: 1, integer: true })),
  ];
  const rows: LinearRow[] = [
    ...needed.map((units, p) => ({
      name: `need${p}`,
      terms: new Map(things.flatMap(({ holds }, i) => (holds.has(p) ? [[`x${i}`, holds.get(p)!] as const] : []))),
      lower: units,
      upper: Number.POSITIVE_INFINITY,
    })),
    ...things.map(({ supplier, holds }, i) => ({
      name: `link${i}`,
      terms: new Map([
        [`x${i}`, 1],
        [`y${supplier}`, -most(holds)],
      ]),
      lower: Number.NEGATIVE_INFINITY,
      upper: 0,
    })),
  ];
  return { variables, rows, constant: 0 };
}
