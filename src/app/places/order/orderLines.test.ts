// The lines of an order as a person reads them.
import { expect, test } from "vitest";
import type { Day } from "../../../base/index.ts";
import type { ClassFile, Device, Kit, Offer, Supplier } from "../../../school/file/index.ts";
import { bySupplier, whatCame, whyByLesson } from "./orderLines.ts";

const today = "2027-01-04" as Day;
const device = (id: string): Device => ({ id, works: true, deadPins: [], note: "" });
const offer = (id: string, item: string, count: number): Offer => ({
  id,
  contains: { kind: "item", item, count },
  price: 100,
  available: null,
});
const kitOffer: Offer = { id: "kit", contains: { kind: "kit", kit: "basic" }, price: 3000, available: null };
const shop = (id: string, offers: Offer[]): Supplier => ({ id, name: id, shipping: 490, freeFrom: null, days: 5, offers });
const suppliers = [
  shop("pier", [offer("led-20", "led red", 20), offer("cable-1", "usb-cable", 1), offer("board-1", "board", 1), kitOffer]),
  shop("lantern", [offer("servo-5", "servo", 5)]),
];
const kits = new Map<string, Kit>([
  [
    "basic",
    {
      format: "benchday-kit/1",
      id: "basic",
      name: "",
      note: "",
      contents: new Map([
        ["board", 1],
        ["usb-cable", 1],
        ["led red", 5],
      ]),
    },
  ],
]);
type Lists = Pick<ClassFile, "kits" | "boards" | "cables" | "computers">;
const none: Lists = { kits: [], boards: [], cables: [], computers: [] };

const cases: [name: string, lines: string[], lists: Lists, acts: unknown[]][] = [
  ["nothing came", [], none, []],
  ["packets times what is in them", ["pier led-20 2"], none, ["led red +40"]],
  ["one act for all things", ["pier led-20 1", "lantern servo-5 1"], none, ["led red +20, servo +5"]],
  ["a cable is a movement where cables are not listed", ["pier cable-1 3"], none, ["usb-cable +3"]],
  ["and stands in the list where they are", ["pier cable-1 3"], { ...none, cables: [device("c1"), device("c2")] }, ["cables 5"]],
  ["a kit counts as a kit", ["pier kit 2"], { ...none, kits: [{ kit: "basic", count: 6 }] }, ["basic 8"]],
  [
    "its board and cable go to the lists",
    ["pier kit 2", "pier board-1 1"],
    { ...none, boards: [device("b1")] },
    ["boards 4", "basic 2"],
  ],
  ["an offer that is gone changes nothing", ["pier gone 2", "gone led-20 1"], none, []],
];
for (const [name, lines, lists, acts] of cases)
  test(name, () => {
    const ordered = lines.map((line) => {
      const [supplier = "", id = "", packets = ""] = line.split(" ");
      return { supplier, offer: id, packets: Number(packets) };
    });
    const shown = whatCame(ordered, { suppliers, ...lists }, kits, today).map((change) => {
      if (change.kind === "order-came") return change.movements.map((m) => `${m.item} +${m.change}`).join(", ");
      if (change.kind === "count-devices") return `${change.what} ${change.count}`;
      return change.kind === "set-kit" ? `${change.kit} ${change.count}` : change.kind;
    });
    expect(shown).toEqual(acts);
  });

const line = (supplier: string, offerId: string, orderBy: string) => ({
  supplier,
  offer: offerId,
  packets: 1,
  cost: 100,
  why: [],
  orderBy: orderBy as Day,
  fillsUp: false,
});

test("the supplier to order from first stands first, and so do its lines; who sells nothing is left out", () => {
  const lines = [
    line("pier", "led-20", "2027-03-01"),
    line("pier", "cable-1", "2027-02-01"),
    line("lantern", "servo-5", "2027-01-20"),
  ];
  const parts = bySupplier({ lines, shipping: [{ supplier: "pier", cost: 490 }] }, [...suppliers, shop("idle", [])]);
  expect(parts.map((p) => [p.supplier.id, p.by, p.shipping, ...p.lines.map((l) => l.line.offer)])).toEqual([
    ["lantern", "2027-01-20", 0, "servo-5"],
    ["pier", "2027-02-01", 490, "cable-1", "led-20"],
  ]);
});

test("why, lesson by lesson in the order of days", () => {
  const why = (sitting: string, item: string) => ({ sitting, item, count: 1, reason: "spare" as const });
  const groups = whyByLesson({ why: [why("7b/x/2027-03-01", "a"), why("7c/a/2027-02-01", "a"), why("7b/x/2027-03-01", "b")] });
  expect(groups.map((g) => [g.sitting, ...g.things.map((t) => t.item)])).toEqual([
    ["7c/a/2027-02-01", "a"],
    ["7b/x/2027-03-01", "a", "b"],
  ]);
});
