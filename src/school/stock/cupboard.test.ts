// What the school owns on a day.
import { expect, test } from "vitest";
import type { Day } from "../../base/index.ts";
import type { ClassFile, Computer, Device, Kit, Movement } from "../file/index.ts";
import { countOn, cupboard, withComing } from "./cupboard.ts";

const day = (text: string) => text as Day;
const today = day("2027-03-01");

function classFile(parts: Partial<ClassFile>): ClassFile {
  return {
    format: "benchday-class/1",
    about: "",
    lessonFolder: null,
    kitFolder: null,
    language: "en",
    currency: "EUR",
    decimals: 2,
    chance: 0.95,
    budget: null,
    room: { name: "", sockets: 4, lux: null },
    classes: [],
    kits: [],
    stock: [],
    movements: [],
    suppliers: [],
    computers: [],
    boards: [],
    cables: [],
    supplies: [],
    powerCuts: [],
    decisions: [],
    counts: [],
    log: [],
    ...parts,
  };
}

const kit: Kit = {
  format: "benchday-kit/1",
  id: "small",
  name: "Small",
  contents: new Map([
    ["board", 1],
    ["usb-cable", 1],
    ["led red", 5],
    ["wire", 30],
  ]),
  note: "",
};
const kits = new Map([["small", kit]]);
const device = (id: string, works = true, deadPins: string[] = []): Device => ({ id, works, deadPins, note: "" });
const computer = (id: string, works = true, usbMilliamps = 500): Computer => ({
  id,
  works,
  batteryMinutes: null,
  usbMilliamps,
  usbPorts: 3,
  note: "",
});
const moved = (date: string, item: string, change: number, why: Movement["why"] = "lost"): Movement => ({
  date: day(date),
  item,
  change,
  why,
  note: "",
});

test("kits, loose stock and supplies add up; boxes are kept", () => {
  const store = cupboard(
    classFile({
      kits: [{ kit: "small", count: 4 }],
      stock: [
        { item: "led red", count: 12, box: "box 3, a7" },
        { item: "resistor 220", count: 40, box: "" },
      ],
      supplies: [{ item: "power-bank", count: 2, box: "drawer" }],
    }),
    kits,
    today,
  );
  expect(countOn(store, "led red", today)).toBe(32);
  expect(store.items.get("led red")?.boxes).toEqual([
    { box: "", count: 20 },
    { box: "box 3, a7", count: 12 },
  ]);
  expect(countOn(store, "power-bank", today)).toBe(2);
  expect(countOn(store, "board", today)).toBe(4);
  expect(countOn(store, "servo", today)).toBe(0);
});

test("a kit that nobody described holds nothing", () =>
  expect(cupboard(classFile({ kits: [{ kit: "other", count: 9 }] }), kits, today).items.size).toBe(0));

test("movements count up to and including the day; later ones are still to come", () => {
  const store = cupboard(
    classFile({
      stock: [{ item: "servo", count: 10, box: "" }],
      movements: [
        moved("2027-02-01", "servo", -2),
        moved("2027-03-01", "servo", 1, "found"),
        moved("2027-03-09", "servo", 5, "bought"),
      ],
    }),
    kits,
    today,
  );
  expect(countOn(store, "servo", today)).toBe(9);
  expect(countOn(store, "servo", day("2027-03-08"))).toBe(9);
  expect(countOn(store, "servo", day("2027-03-09"))).toBe(14);
});

test("what is lost goes from the units without a box first, then from the fullest box, never below nothing", () => {
  const lost = (count: number) =>
    cupboard(
      classFile({
        kits: [{ kit: "small", count: 1 }],
        stock: [
          { item: "led red", count: 3, box: "a1" },
          { item: "led red", count: 6, box: "a2" },
        ],
        movements: [moved("2027-02-01", "led red", -count)],
      }),
      kits,
      today,
    ).items.get("led red");
  expect(lost(4)?.boxes).toEqual([
    { box: "", count: 1 },
    { box: "a1", count: 3 },
    { box: "a2", count: 6 },
  ]);
  expect(lost(7)?.boxes).toEqual([
    { box: "a1", count: 3 },
    { box: "a2", count: 4 },
  ]);
  expect(lost(99)).toBeUndefined();
});

test("boards, cables and computers that are listed one by one are the count; only working ones serve", () => {
  const store = cupboard(
    classFile({
      kits: [{ kit: "small", count: 10 }],
      boards: [device("B1"), device("B2", false), device("B3", true, ["D5"])],
      computers: [computer("C1"), computer("C2", false), computer("C3", true, 900)],
    }),
    kits,
    today,
  );
  expect(countOn(store, "board", today)).toBe(2);
  expect(store.deadPins).toEqual([["D5"]]);
  // No list of cables: the kits say.
  expect(countOn(store, "usb-cable", today)).toBe(10);
  expect(countOn(store, "computer", today)).toBe(2);
  expect(countOn(store, "usb-port 500mA", today)).toBe(3);
  expect(countOn(store, "usb-port 900mA", today)).toBe(3);
});

test("when every listed board is broken there are none", () =>
  expect(
    countOn(
      cupboard(classFile({ kits: [{ kit: "small", count: 10 }], boards: [device("B1", false)] }), kits, today),
      "board",
      today,
    ),
  ).toBe(0));

test("a purchase can be added to what is to come", () => {
  const store = withComing(cupboard(classFile({}), kits, today), [{ date: day("2027-03-05"), item: "servo", change: 3 }]);
  expect(countOn(store, "servo", day("2027-03-04"))).toBe(0);
  expect(countOn(store, "servo", day("2027-03-05"))).toBe(3);
});
