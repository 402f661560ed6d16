// What lands in a tray: rows of units handed to a team, and what the tray must then hold or miss.
import { expect, test } from "vitest";
import type { Day } from "../../base/index.ts";
import type { Cupboard, Need, SittingStock } from "../stock/index.ts";
import { makeTrays } from "./trays.ts";

const need = (uses: string[], item: string, each = uses.length): Need => ({ for: uses, item, each, substitutes: [] });
const stockOf = (needs: readonly Need[], units: readonly (readonly (string | null)[])[]): SittingStock => ({
  sitting: "7b/x/2027-01-12",
  coverage: needs.map((n) => ({ need: n, wanted: n.each, have: [], short: 0, works: 1, chance: 1 })),
  chance: 1,
  teams: [],
  units: [units],
});
const store = (boxes: Record<string, { box: string; count: number }[]>): Cupboard => ({
  day: "2027-01-01" as Day,
  items: new Map(Object.entries(boxes).map(([item, list]) => [item, { count: 1, boxes: list }])),
  coming: [],
  deadPins: [],
});
const one = (needs: readonly Need[], units: readonly (readonly (string | null)[])[], boxes = {}) =>
  makeTrays(stockOf(needs, units), [7], store(boxes))[0]!;

test("a part as the lesson asks for it", () =>
  expect(one([need(["R1"], "resistor 220")], [["resistor 220"]])).toEqual({
    team: 7,
    items: [{ item: "resistor 220", count: 1, parts: ["R1"], insteadOf: null, box: "" }],
    missing: [],
  }));
test("two of a kind where one is another value: each says which part it is for", () =>
  expect(one([need(["R1", "R2"], "resistor 220")], [["resistor 220", "resistor 330"]]).items).toEqual([
    { item: "resistor 220", count: 1, parts: ["R1"], insteadOf: null, box: "" },
    { item: "resistor 330", count: 1, parts: ["R2"], insteadOf: "resistor 220", box: "" },
  ]));
test("what nobody has is missing, by the item that the lesson asks for", () => {
  const tray = one([need(["LDR1"], "photoresistor")], [[null]]);
  expect(tray.items).toEqual([]);
  expect(tray.missing).toEqual([{ item: "photoresistor", count: 1, parts: ["LDR1"] }]);
});
test("board and wires are for no part; computer and port stay on the desk", () => {
  const needs = [
    need(["board"], "board"),
    need(["wire"], "wire", 3),
    need(["computer"], "computer"),
    need(["supply"], "usb-port 500mA"),
  ];
  const tray = one(needs, [["board"], ["wire", "wire", "wire"], ["computer"], ["usb-port 500mA"]]);
  expect(tray.items.map((i) => [i.item, i.count, i.parts])).toEqual([
    ["board", 1, []],
    ["wire", 3, []],
  ]);
});
test("a supply of its own is in the tray, and is no substitute for a part", () =>
  expect(one([need(["supply"], "adapter 2000mA")], [["power-bank"]]).items).toEqual([
    { item: "power-bank", count: 1, parts: [], insteadOf: null, box: "" },
  ]));
test("the box is the one that holds most", () =>
  expect(
    one([need(["R1"], "resistor 220")], [["resistor 220"]], {
      "resistor 220": [
        { box: "", count: 50 },
        { box: "box 1", count: 3 },
        { box: "box 2", count: 8 },
      ],
    }).items[0]?.box,
  ).toBe("box 2"));
