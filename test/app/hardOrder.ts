// A class file whose order keeps the solver busy for longer than any test waits: a year of lessons, five shops, a short budget.
//
// Made from the demo's lists; invented, like the demo.
// Does not know: the engine.
import { readFileSync } from "node:fs";
import { addDays, type Day } from "../../src/base/index.ts";

interface Lists {
  classes: { lessons: object[] }[];
  stock: object[];
  suppliers: { offers: { id: string; item?: string; available?: number }[] }[];
  [field: string]: unknown;
}

export function hardOrder(): string {
  const lists = JSON.parse(readFileSync(new URL("../../demo/harbour.json", import.meta.url), "utf8")) as Lists;
  const lessons = ["lighthouse", "signal-lamp", "quay-lamp-at-dusk", "barrier"];
  for (const [c, group] of lists.classes.entries())
    group.lessons = Array.from({ length: 20 }, (_, i) => ({
      lesson: lessons[i % lessons.length],
      date: addDays("2027-01-11" as Day, 7 * i + c),
      start: "09:00",
    }));
  const [shop] = lists.suppliers;
  const offers = (s: number) =>
    (shop?.offers ?? [])
      .filter((offer) => offer.item !== undefined)
      .flatMap(({ available: _, ...offer }, i) =>
        [7, 13, 31].map((count) => ({
          ...offer,
          id: `${offer.id}-${s}-${count}`,
          count,
          price: (Math.round((count * (10 + 3 * i) + ((count * s * 37 + i * 11) % 29)) * (0.9 + 0.03 * s)) / 10).toFixed(2),
        })),
      );
  return JSON.stringify({
    ...lists,
    kits: [],
    stock: lists.stock.slice(0, 4),
    movements: [],
    decisions: [],
    counts: [],
    log: [],
    budget: "400.00",
    chance: "99 %",
    suppliers: [1, 2, 3, 4, 5].map((s) => ({
      ...shop,
      id: `shop-${s}`,
      name: `Shop ${s}`,
      shipping: (3 + 1.3 * s).toFixed(2),
      freeFrom: `${40 + 20 * s}.00`,
      offers: offers(s),
    })),
  });
}
