// Every lesson on its day: wear until then, rivals for one item, what teams get. Expected chances are binomial formulas.
import { expect, test } from "vitest";
import { sample } from "../../../test/sample.ts";
import { type Day, logChanceEnough, seededRandom } from "../../base/index.ts";
import type { ItemKey } from "../file/index.ts";
import { coverSittings } from "./coverSittings.ts";
import type { Cupboard } from "./cupboard.ts";
import type { Need, Sitting } from "./demand.ts";
import { type LossRates, rateOf } from "./lossRates.ts";

const day = (text: string) => text as Day;
const today = day("2027-03-01");

function store(counts: Record<ItemKey, number>, more: Partial<Cupboard> = {}): Cupboard {
  const items = new Map(Object.entries(counts).map(([item, count]) => [item, { count, boxes: [{ box: "", count }] }]));
  return { day: today, items, coming: [], deadPins: [], ...more };
}

function need(item: ItemKey, each = 1, substitutes: ItemKey[] = [], more: Partial<Need> = {}): Need {
  return { for: [item], item, each, substitutes, ...more };
}

function sitting(date: string, teams: number, needs: Need[], more: Partial<Sitting> = {}): Sitting {
  return { id: `7b/test/${date}`, class: "7b", lesson: "test", date: day(date), teams, needs, ...more };
}

/** The same loss a use for everything. */
function rates(loss: number, own: Record<string, number> = {}): LossRates {
  const rate = (item: string, mean: number) => ({ ...rateOf(new Map(), item), mean });
  return new Map(
    ["resistor", "led", "board", "computer", "usb-port", "wire"]
      .map((kind) => [kind, rate(kind, loss)] as const)
      .concat(Object.entries(own).map(([item, mean]) => [item, rate(item, mean)] as const)),
  );
}

test("one need: have, short, chance, and what each team gets", () => {
  const [seen] = coverSittings([sitting("2027-03-04", 3, [need("led red", 2)])], store({ "led red": 8 }), rates(0.1));
  const [coverage] = seen!.coverage;
  expect(coverage).toMatchObject({ wanted: 6, short: 0, have: [{ item: "led red", count: 8 }] });
  expect(coverage!.works).toBeCloseTo(0.9, 12);
  // P(Bin(8, 0.9) ≥ 6) = 28·0.9⁶·0.1² + 8·0.9⁷·0.1 + 0.9⁸
  expect(seen!.chance).toBeCloseTo(28 * 0.9 ** 6 * 0.01 + 8 * 0.9 ** 7 * 0.1 + 0.9 ** 8, 12);
  expect(seen!.units).toEqual([[["led red", "led red"]], [["led red", "led red"]], [["led red", "led red"]]]);
  expect(seen!.teams).toEqual([["led red"], ["led red"], ["led red"]]);
});

test("what is short is counted, the chance is nothing, the last teams go without", () => {
  const [seen] = coverSittings([sitting("2027-03-04", 3, [need("led red", 2)])], store({ "led red": 3 }), rates(0.01));
  expect(seen!.coverage[0]!.short).toBe(3);
  expect(seen!.chance).toBe(0);
  expect(seen!.units.map((team) => team[0])).toEqual([
    ["led red", "led red"],
    ["led red", null],
    [null, null],
  ]);
  expect(seen!.teams.map((team) => team[0])).toEqual(["led red", "led red", null]);
});

test("the joint chance is the product over all needs", () => {
  const [seen] = coverSittings(
    [sitting("2027-03-04", 2, [need("led red"), need("board"), need("computer")])],
    store({ "led red": 2, board: 3, computer: 2 }),
    rates(0, { "led red": 0.05, board: 0.02, computer: 0.01 }),
  );
  const board = 0.98 ** 3 + 3 * 0.98 ** 2 * 0.02;
  expect(seen!.chance).toBeCloseTo(0.95 ** 2 * board * 0.99 ** 2, 12);
});

test("ten parts at 95 % each leave 60 %", () => {
  const needs = Array.from({ length: 10 }, (_, i) => need(`resistor ${i + 1}k`));
  const counts = Object.fromEntries(needs.map((n) => [n.item, 1]));
  const [seen] = coverSittings([sitting("2027-03-04", 1, needs)], store(counts), rates(0.05));
  expect(seen!.chance).toBeCloseTo(0.95 ** 10, 12);
});

test("parts wear with every lesson that uses their item, of both classes, and with no other", () => {
  const seen = coverSittings(
    [
      sitting("2027-03-18", 1, [need("led red")]),
      sitting("2027-03-04", 1, [need("led red")]),
      sitting("2027-03-11", 1, [need("led green")]),
      sitting("2027-03-12", 1, [need("led red"), need("led red", 1, ["led green"])], { class: "7c", id: "7c" }),
      sitting("2027-02-01", 1, [need("led red")]),
    ],
    store({ "led red": 5, "led green": 5 }),
    rates(0.1),
  );
  expect(seen.map((s) => s.sitting)).toEqual([
    "7b/test/2027-03-18",
    "7b/test/2027-03-04",
    "7b/test/2027-03-11",
    "7c",
    "7b/test/2027-02-01",
  ]);
  const works = seen.map((s) => s.coverage[0]!.works);
  // The lesson of February is over: what it cost has been counted.
  expect(works.map((w) => Math.log(w) / Math.log(0.9)).map(Math.round)).toEqual([3, 1, 1, 2, 1]);
});

test("two lessons of one day follow each other", () => {
  const seen = coverSittings(
    [
      sitting("2027-03-04", 1, [need("led red")], { id: "late", start: 780 }),
      sitting("2027-03-04", 1, [need("led red")], { id: "early", start: 480 }),
    ],
    store({ "led red": 1 }),
    rates(0.1),
  );
  expect(seen.map((s) => s.coverage[0]!.works)).toEqual([0.9 * 0.9, 0.9]);
});

test("exact items first, then the best substitute; teams are kept alike", () => {
  const [seen] = coverSittings(
    [sitting("2027-03-04", 4, [need("resistor 220", 1, ["resistor 270", "resistor 330"])])],
    store({ "resistor 330": 9, "resistor 270": 1, "resistor 220": 2 }),
    rates(0.01),
  );
  expect(seen!.teams.map((t) => t[0])).toEqual(["resistor 220", "resistor 220", "resistor 270", "resistor 330"]);
  expect(seen!.coverage[0]!.short).toBe(0);
});

test("needs of one lesson compete: the one without a choice gets its only item", () => {
  const [seen] = coverSittings(
    [sitting("2027-03-04", 2, [need("resistor 220", 1, ["resistor 330"]), need("resistor 330")])],
    store({ "resistor 220": 1, "resistor 330": 3 }),
    rates(0.01),
  );
  expect(seen!.teams).toEqual([
    ["resistor 220", "resistor 330"],
    ["resistor 330", "resistor 330"],
  ]);
  expect(seen!.coverage.map((c) => c.short)).toEqual([0, 0]);
  expect(seen!.chance).toBeCloseTo(0.99 ** 4, 12);
});

test("the worst that competing can do is told: one is short although each alone would be covered", () => {
  const [seen] = coverSittings(
    [sitting("2027-03-04", 2, [need("resistor 220", 1, ["resistor 330"]), need("resistor 330")])],
    store({ "resistor 330": 3 }),
    rates(0.01),
  );
  expect(seen!.coverage.reduce((sum, c) => sum + c.short, 0)).toBe(1);
});

test("a stronger port serves a circuit that takes less, a weaker one does not", () => {
  const cover = (item: string) =>
    coverSittings([sitting("2027-03-04", 1, [need("usb-port 500mA")])], store({ [item]: 2 }), rates(0))[0]!.teams[0]![0];
  expect(cover("usb-port 900mA")).toBe("usb-port 900mA");
  expect(cover("usb-port 100mA")).toBeNull();
});

test("a board whose pin is dead does not serve a lesson that uses the pin", () => {
  const cover = (pins: string[]) =>
    coverSittings(
      [sitting("2027-03-04", 2, [need("board", 1, [], { pins })])],
      store({ board: 2 }, { deadPins: [["D5", "D6"]] }),
      rates(0),
    )[0]!.coverage[0]!.short;
  expect(cover(["D5", "GND"])).toBe(1);
  expect(cover(["D9", "GND"])).toBe(0);
});

test("two teams share a computer; an odd team has one alone", () => {
  const [seen] = coverSittings([sitting("2027-03-04", 5, [need("computer", 0.5)])], store({ computer: 3 }), rates(0));
  expect(seen!.coverage[0]).toMatchObject({ wanted: 3, short: 0 });
  expect(seen!.teams.map((t) => t[0])).toEqual(["computer", "computer", "computer", "computer", "computer"]);
  const [poor] = coverSittings([sitting("2027-03-04", 5, [need("computer", 0.5)])], store({ computer: 2 }), rates(0));
  expect(poor!.teams.map((t) => t[0])).toEqual(["computer", "computer", "computer", "computer", null]);
});

test("what comes later serves only later lessons", () => {
  const coming = [{ date: day("2027-03-10"), item: "led red", change: 1 }];
  const seen = coverSittings(
    [sitting("2027-03-09", 1, [need("led red")]), sitting("2027-03-10", 1, [need("led red")])],
    store({}, { coming }),
    rates(0),
  );
  expect(seen.map((s) => s.coverage[0]!.short)).toEqual([1, 0]);
});

test("no teams, no needs: nothing is short and nothing can fail", () => {
  const [none] = coverSittings([sitting("2027-03-04", 0, [need("led red")])], store({}), rates(0.1));
  expect(none).toMatchObject({ chance: 1, teams: [] });
  const [empty] = coverSittings([sitting("2027-03-04", 2, [])], store({}), rates(0.1));
  expect(empty).toMatchObject({ chance: 1, teams: [[], []] });
});

for (let seed = 1; seed <= sample(20, 300); seed += 1)
  test(`laws of covering, seed ${seed}`, () => {
    const random = seededRandom(seed, "cover");
    const items = ["resistor 220", "resistor 270", "resistor 330", "led red", "led green"];
    const needs = Array.from({ length: random.int(1, 4) }, () => {
      const [item, ...rest] = random.shuffled(items);
      return need(item!, random.int(1, 2), rest.slice(0, random.int(0, 2)));
    });
    const counts = Object.fromEntries(items.map((item) => [item, random.int(0, 14)]));
    const teams = random.int(1, 4);
    const [seen] = coverSittings([sitting("2027-03-04", teams, needs)], store(counts), rates(0.05));
    // Nothing is handed out twice, and every team that is not short has what it needs.
    const handed = new Map<string, number>();
    for (const team of seen!.units)
      team.forEach((list, n) => {
        expect(list.length).toBe(needs[n]!.each);
        for (const item of list) {
          if (item === null) continue;
          expect([needs[n]!.item, ...needs[n]!.substitutes]).toContain(item);
          handed.set(item, (handed.get(item) ?? 0) + 1);
        }
      });
    for (const [item, count] of handed) expect(count).toBeLessThanOrEqual(counts[item]!);
    seen!.coverage.forEach((coverage, n) => {
      const got = seen!.units.reduce((sum, team) => sum + team[n]!.filter((item) => item !== null).length, 0);
      expect(got).toBe(coverage.wanted - coverage.short);
      const have = coverage.have.reduce((sum, h) => sum + h.count, 0);
      expect(Math.log(coverage.chance)).toBeCloseTo(logChanceEnough(coverage.wanted, have, coverage.works), 10);
    });
    // One unit more of anything never makes it worse.
    for (const item of items) {
      const [more] = coverSittings(
        [sitting("2027-03-04", teams, needs)],
        store({ ...counts, [item]: counts[item]! + 1 }),
        rates(0.05),
      );
      expect(more!.chance).toBeGreaterThanOrEqual(seen!.chance - 1e-12);
    }
  });
