// Charging: times and plans worked by hand, and laws for seeded schools; the check lists.
import { expect, test } from "vitest";
import { sample } from "../../../test/sample.ts";
import { addDays, seededRandom, weekday } from "../../base/index.ts";
import type { ClassFile } from "../file/index.ts";
import { type ChargedLesson, chargingPlan, usualHours } from "./chargingPlan.ts";
import { minutesToCharge, powerBankMinutes } from "./chargingTime.ts";
import { boardCheckList, computerCheckList } from "./checkLists.ts";
import { computers, day, school } from "./sampleSchool.fixture.ts";

// 80 % in 90 minutes, the rest in 60: by hand.
const times: [from: number, to: number, minutes: number][] = [
  [0, 1, 150],
  [0, 0.8, 90],
  [0, 0.4, 45],
  [0.8, 1, 60],
  [0.9, 1, 30],
  [0.4, 0.9, 45 + 30],
  [0.5, 0.5, 0],
  [0.7, 0.2, 0],
];
for (const [from, to, minutes] of times)
  test(`${from} to ${to} takes ${minutes} minutes`, () => expect(minutesToCharge(from, to)).toBeCloseTo(minutes, 9));
test("a laptop is full in the 2 to 4 hours that guides name, a power bank in 4 to 5 hours", () => {
  expect(minutesToCharge(0, 1)).toBeGreaterThanOrEqual(120);
  expect(minutesToCharge(0, 1)).toBeLessThanOrEqual(240);
  expect(powerBankMinutes).toBe(261);
});

// 2027-03-04 is a Thursday. The lesson begins at 10:00, so mains end at 9:50.
const lesson: ChargedLesson = { date: day("2027-03-04"), start: 600, minutes: 90, teams: 2 };
const cut = { date: lesson.date, from: 600, to: 640 };
const room = (sockets: number) => ({ name: "Room 12", sockets, lux: null });

test("nothing to charge where everything runs on mains", () => {
  expect(chargingPlan(school(), lesson)).toMatchObject({
    why: "nothing runs on a battery",
    charges: [],
    fits: true,
    count: 0,
    minutes: 0,
  });
});

test("a cut of 40 minutes: the two that need least, side by side, up to the lesson", () => {
  // Counted minutes 0.8 × (100, 200, 50) = 80, 160, 40: shares ½, ¼, 1; from empty 60 (56¼), 30 (28⅛), 150 minutes.
  const plan = chargingPlan(school({ computers: computers("100 200 50"), powerCuts: [cut] }), lesson);
  expect(plan.charges.map((c) => [c.id, c.from, c.to, c.socket, c.share])).toEqual([
    ["c1", 530, 590, 1, 0.5],
    ["c2", 560, 590, 2, 0.25],
  ]);
  expect(plan).toMatchObject({ why: "power cut", count: 2, minutes: 60, fits: true, left: [] });
});

test("one socket: one after the other", () => {
  const plan = chargingPlan(school({ computers: computers("100 200"), powerCuts: [cut], room: room(1) }), lesson);
  expect(plan.charges.map((c) => [c.id, c.from, c.to])).toEqual([
    ["c2", 500, 530],
    ["c1", 530, 590],
  ]);
});

test("what does not fit in the morning is charged the day before, and a weekend is passed over", () => {
  const monday = { ...lesson, date: day("2027-03-08"), start: 490 };
  const plan = chargingPlan(
    school({ computers: computers("50 50"), powerCuts: [{ date: monday.date, from: 490, to: 530 }], room: room(1) }),
    monday,
  );
  expect(plan.charges.map((c) => [c.date, c.from, c.to])).toEqual([
    ["2027-03-05", 660, 810],
    ["2027-03-05", 810, 960],
  ]);
});

const failing: [what: string, classFile: Partial<ClassFile>, left: object[]][] = [
  [
    "no socket in the room",
    { computers: computers("100"), room: room(0) },
    [{ id: "c1", code: "equipment.noSocket", minutes: 60 }],
  ],
  [
    "a battery that would not last",
    { computers: computers("100 40") },
    [{ id: "c2", code: "equipment.batteryTooSmall", minutes: 40 }],
  ],
  ["nobody tried", { computers: computers("100 ?") }, []],
];
for (const [what, classFile, left] of failing) {
  test(`says what is not ready: ${what}`, () => {
    const plan = chargingPlan(school({ powerCuts: [cut], ...classFile }), lesson);
    expect(plan.left).toEqual(left);
    expect(plan.fits).toBe(false);
  });
}

test("no time: a cut all morning and no day before", () => {
  const powerCuts = [{ date: lesson.date, from: 460, to: 700 }];
  const plan = chargingPlan(school({ computers: computers("200 200"), powerCuts }), lesson, { ...usualHours, daysBefore: 0 });
  expect(plan).toMatchObject({ fits: false, charges: [] });
  expect(plan.left.map((l) => l.code)).toEqual(["equipment.noTimeToCharge", "equipment.noTimeToCharge"]);
});

test("without a cut, those who find no socket run on their batteries all lesson", () => {
  const plan = chargingPlan(school({ computers: computers("120 300 60"), room: room(1) }), { ...lesson, teams: 2 });
  // 90 of 240 counted minutes: 37.5 %, 42.2 minutes, up to the clock's next five.
  expect(plan.charges.map((c) => [c.id, c.to - c.from])).toEqual([["c2", 45]]);
  expect(plan).toMatchObject({ why: "few sockets", fits: true, wanted: 1, ready: 1 });
  // Nobody's battery lasts a lesson: three computers at two sockets, and no battery is to blame for it.
  const weak = chargingPlan(school({ computers: computers("60 60 60"), room: room(2) }), { ...lesson, teams: 3 });
  expect(weak).toMatchObject({ why: "few sockets", fits: false, wanted: 1, ready: 0, left: [] });
});

test("power banks are charged when the boards run on them", () => {
  const supplies = [{ item: "power-bank", count: 3, box: "" }];
  const plan = chargingPlan(school({ supplies }), { ...lesson, supply: "power-bank" });
  expect(plan.charges.map((c) => c.id).sort()).toEqual(["power-bank 1", "power-bank 2"]);
  expect(chargingPlan(school({ supplies }), { ...lesson, supply: "usb-port 500mA" }).charges).toEqual([]);
});

test("laws: one thing a socket at a time, in school hours, with mains, done before the lesson, nothing forgotten", () => {
  for (let seed = 1; seed <= sample(200, 5000); seed += 1) {
    const random = seededRandom(seed, "charging");
    const minutes = Array.from({ length: random.int(0, 14) }, () =>
      random.int(0, 9) === 0 ? "?" : String(random.int(0, 180)),
    ).join(" ");
    const date = addDays(day("2027-03-01"), random.int(0, 20));
    const start = random.int(480, 900);
    const powerCuts = Array.from({ length: random.int(0, 4) }, () => {
      const from = random.int(430, 930);
      return { date: addDays(date, -random.int(0, 3)), from, to: from + random.int(10, 200) };
    });
    const classFile = school({
      computers: computers(minutes),
      powerCuts,
      room: room(random.int(0, 8)),
      supplies: [{ item: "power-bank", count: random.int(0, 6), box: "" }],
    });
    const task = { date, start, minutes: 90, teams: random.int(1, 12), supply: random.int(0, 1) ? "power-bank" : null };
    const plan = chargingPlan(classFile, task);
    for (const c of plan.charges) {
      expect(c.from).toBeGreaterThanOrEqual(usualHours.hours.from);
      expect(c.to).toBeLessThanOrEqual(c.date === date ? start - usualHours.ready : usualHours.hours.to);
      expect(c.date <= date && (c.date === date || weekday(c.date) < 6)).toBe(true);
      expect(c.socket).toBeLessThanOrEqual(classFile.room.sockets);
      expect(powerCuts.some((p) => p.date === c.date && p.from < c.to && p.to > c.from)).toBe(false);
      expect(plan.charges.filter((d) => d.date === c.date && d.socket === c.socket && d.from < c.to && d.to > c.from)).toEqual([
        c,
      ]);
      expect(c.to - c.from).toBeGreaterThanOrEqual(c.kind === "computer" ? minutesToCharge(0, c.share) : powerBankMinutes);
    }
    const named = [...plan.charges, ...plan.left].map((c) => c.id);
    expect(new Set(named).size).toBe(named.length);
    if (plan.fits) expect(plan.left.filter((l) => l.id.startsWith("power-bank"))).toEqual([]);
  }
});

test("check lists begin with what could hurt, and give limits where a meter is read", () => {
  expect(computerCheckList[0]!.code).toBe("equipment.checkBatteryFlat");
  const order = boardCheckList.map((c) => c.code);
  expect(order.indexOf("equipment.checkNothingHot")).toBeLessThan(order.indexOf("equipment.checkFiveVolts"));
  for (const c of boardCheckList.filter((c) => /Volts/.test(c.code))) expect(c.data.low!).toBeLessThan(c.data.high!);
});
