// Every version that was ever released is read for ever. The samples are never edited: their bytes are held here, and what they
// say is written out by hand.
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { readClassFile, readKit, writeClassFile } from "../../src/school/file/index.ts";

const sampleOf = (path: string) => readFileSync(new URL(path, import.meta.url), "utf8");

const unedited: [path: string, sha256: string][] = [
  ["v1/class.json", "f80239cdca50bd9b280912a9e3551bfeaf728975b83a58e5a481ddf071a326dc"],
  ["v1/kit.yaml", "fba652a147927af9affa037403c7cdf701d20501bd7c21c3ed43ea9b45f18db2"],
];
for (const [path, sha256] of unedited)
  test(`${path} is as it was released`, () => expect(createHash("sha256").update(sampleOf(path)).digest("hex")).toBe(sha256));

test("a class file of version 1 says what it said", () => {
  const { value, problems } = readClassFile("class.json", sampleOf("v1/class.json"));
  expect(problems).toEqual([]);
  expect(value).toMatchObject({
    language: "en",
    currency: "EUR",
    decimals: 2,
    chance: 0.975,
    budget: 12_000,
    lessonFolder: null,
    kitFolder: "kits",
    room: { name: "Room 12", sockets: 6, lux: 400 },
    kits: [{ kit: "starter", count: 2 }],
    stock: [
      { item: "resistor 4k7", count: 12, box: "box 3, a7" },
      { item: "led green emerald", count: 0, box: "" },
    ],
    movements: [{ date: "2026-10-01", item: "led red", change: -4, why: "lost", note: "open day" }],
    boards: [{ id: "board-1", works: true, deadPins: ["D5"], note: "" }],
    cables: [{ id: "cable-1", works: false, note: "charges only" }],
    supplies: [{ item: "power-bank", count: 2, box: "box 4" }],
    powerCuts: [{ date: "2027-02-18", from: 660, to: 750 }],
    computers: [{ id: "laptop-1", works: true, batteryMinutes: 95, usbMilliamps: 900, usbPorts: 3, note: "slow" }],
  });
  expect(value?.classes).toEqual([
    {
      id: "7b",
      name: "Class 7b",
      teamSize: 3,
      balance: "reads",
      pupils: [
        { id: "p1", name: "Ana Núñez", marks: { reads: 2, runs: 1.5 } },
        { id: "p2", name: "Bo", marks: {} },
        { id: "p3", name: "ليلى", marks: { reads: 3 } },
        { id: "p4", name: "Dan", marks: { reads: 1 } },
      ],
      apart: [["p1", "p2"]],
      together: [["p3", "p4"]],
      lessons: [
        { lesson: "lighthouse", date: "2027-01-12", start: 545, absent: ["p4"] },
        { lesson: "barrier", date: "2027-03-09", start: 870, absent: [] },
      ],
    },
  ]);
  expect(value?.suppliers).toEqual([
    {
      id: "pier",
      name: "Pier",
      shipping: 490,
      freeFrom: 6000,
      days: 5,
      offers: [
        { id: "led-20", contains: { kind: "item", item: "led red", count: 20 }, price: 240, available: 7 },
        { id: "box", contains: { kind: "kit", kit: "starter" }, price: 3400, available: null },
      ],
    },
  ]);
  expect(value?.decisions.map((decision) => decision.kind)).toEqual(["substitute", "supply", "skip"]);
  expect(value?.counts).toMatchObject([{ out: 10, back: 8, broken: 1 }]);
  expect(value?.log).toMatchObject([{ team: 3, what: "led-turned", note: "trial hour" }]);
  const written = writeClassFile(value!);
  expect(readClassFile("class.json", written).value).toEqual(value);
});

test("a kit of version 1 says what it said", () => {
  const { value, problems } = readKit("kit.yaml", sampleOf("v1/kit.yaml"));
  expect(problems).toEqual([]);
  expect(value).toEqual({
    format: "benchday-kit/1",
    id: "starter",
    name: "Starter kit",
    supplier: "A shop",
    price: { sum: 3900, currency: "EUR" },
    note: "count it once",
    contents: new Map([
      ["board", 1],
      ["led red", 5],
      ["resistor 4k7", 10],
    ]),
  });
});
