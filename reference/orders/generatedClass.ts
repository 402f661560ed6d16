// Generated orders as a class has them: a course of lessons, things that get lost, spares for a joint chance.
//
// Invented by chance from a seed: circuits of four to seven kinds of parts beside board, cable, breadboard and wires, a
// cupboard that almost suffices, kits, several suppliers with thresholds and days of delivery.
// Does not know: any solver, the answer.
import { addDays, type Day, seededRandom } from "../../src/base/index.ts";
import type { Kit, Supplier } from "../../src/school/file/index.ts";
import type { OrderInput } from "../../src/school/order/index.ts";
import { type LossRates, rateOf, type Sitting } from "../../src/school/stock/index.ts";

export interface ClassSize {
  readonly classes: number;
  readonly lessons: number;
  readonly teams: number;
  readonly suppliers: number;
  readonly offers: number;
  /** Share of the units that are needed at most in one lesson which are there already. */
  readonly there: number;
  readonly chance: number;
}

const today = "2027-01-11" as Day;

/** Chance of loss a use, near those of the catalogue but fixed here, so that the recorded models stay as they are. */
const losses: Readonly<Record<string, number>> = { board: 0.0013, breadboard: 0.0013, "usb-cable": 0.0032, servo: 0.0032, potentiometer: 0.0013, photoresistor: 0.0032 }; // biome-ignore format: a table
const usualLoss = 0.011;

/** Kinds of parts with a price in cents, from the catalogue's kinds; invented prices. */
const parts: readonly (readonly [item: string, cents: number])[] = [
  ["resistor 220", 4],
  ["resistor 330", 4],
  ["resistor 1k", 4],
  ["resistor 4k7", 4],
  ["resistor 10k", 4],
  ["led red", 10],
  ["led green", 10],
  ["led yellow", 10],
  ["led blue", 15],
  ["button", 20],
  ["potentiometer 10k", 80],
  ["photoresistor", 50],
  ["servo", 390],
];
const always: readonly (readonly [item: string, each: number, cents: number])[] = [
  ["board", 1, 1150],
  ["usb-cable", 1, 280],
  ["breadboard", 1, 260],
  ["wire", 8, 8],
];
const substitutes: Readonly<Record<string, readonly string[]>> = {
  "resistor 220": ["resistor 330"],
  "resistor 330": ["resistor 220"],
  "led red": ["led green", "led yellow"],
};

export function classOrder(size: ClassSize, seed: number): OrderInput {
  const random = seededRandom(seed, "class");
  const circuits = Array.from({ length: size.lessons }, () =>
    random
      .shuffled(parts)
      .slice(0, random.int(4, 7))
      .map(([item]) => ({
        for: [item],
        item,
        each: random.next() < 0.3 ? 2 : 1,
        substitutes: random.next() < 0.5 ? (substitutes[item] ?? []) : [],
      })),
  );
  const sittings = Array.from({ length: size.classes }, (_, c) =>
    circuits.map((needs, l): Sitting => {
      const date = addDays(today, 8 + 14 * l + 2 * c);
      const basics = always.map(([item, each]) => ({ for: [item], item, each, substitutes: [] }));
      return { id: `${c}/${l}`, class: `${c}`, lesson: `${l}`, date, teams: size.teams - c, needs: [...needs, ...basics] };
    }),
  ).flat();

  const prices = new Map([...parts, ...always.map(([item, , cents]) => [item, cents] as const)]);
  const needed = new Map<string, number>();
  for (const { needs, teams } of sittings)
    for (const { item, each } of needs) needed.set(item, Math.max(needed.get(item) ?? 0, each * teams));
  const stock = [...needed].map(([item, count]) => [item, Math.round(count * size.there * (0.7 + 0.6 * random.next()))] as const);

  const kits = [0, 1].map((k): Kit => {
    const inside = random
      .shuffled(parts)
      .slice(0, 8)
      .map(([item]) => [item, random.int(1, 5)] as const);
    const contents = new Map([...always.map(([item, each]) => [item, item === "wire" ? 30 : each] as const), ...inside]);
    return { format: "benchday-kit/1", id: `kit ${k}`, name: `kit ${k}`, contents, note: "" };
  });
  const worth = (kit: Kit) => [...kit.contents].reduce((sum, [item, count]) => sum + count * prices.get(item)!, 0);
  const items = [...prices.keys()];
  const suppliers = Array.from({ length: size.suppliers }, (_, s): Supplier => {
    const own = Array.from({ length: Math.floor(size.offers / size.suppliers) }, (_, o) => {
      // Between them the suppliers sell everything.
      const item = items[(o * size.suppliers + s) % items.length]!;
      const count = [1, 5, 10, 20, 50][random.int(0, prices.get(item)! > 100 ? 1 : 4)]!;
      const price = Math.max(1, Math.round(prices.get(item)! * count ** 0.85 * (0.8 + 0.6 * random.next())));
      return {
        id: `${s}-${o}`,
        contains: { kind: "item" as const, item, count },
        price,
        available: random.next() < 0.1 ? 3 : null,
      };
    });
    const kit = kits[s % kits.length]!;
    const price = Math.round(worth(kit) * (0.6 + 0.3 * random.next()));
    return {
      id: `supplier ${s}`,
      name: `supplier ${s}`,
      shipping: random.int(300, 900),
      freeFrom: random.next() < 0.6 ? random.int(30, 120) * 100 : null,
      days: random.int(2, 21),
      offers: [...own, { id: `${s}-kit`, contains: { kind: "kit", kit: kit.id }, price, available: null }],
    };
  });
  return {
    classFile: { suppliers, chance: size.chance, budget: null },
    kits: new Map(kits.map((kit) => [kit.id, kit])),
    sittings,
    cupboard: {
      day: today,
      items: new Map(stock.map(([item, count]) => [item, { count, boxes: [{ box: "", count }] }])),
      coming: [],
      deadPins: [],
    },
    rates: ratesOf(items),
    today,
  };
}

function ratesOf(items: readonly string[]): LossRates {
  return new Map(
    items.map((item) => [item, { ...rateOf(new Map(), item), mean: losses[item.split(" ", 1)[0]!] ?? usualLoss }] as const),
  );
}
