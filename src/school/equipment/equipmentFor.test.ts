// Devices of a lesson: what serves, who shares, what a power cut takes away.
import { expect, test } from "vitest";
import { chanceEnough, deviceRates } from "./deviceRates.ts";
import { equipmentFor } from "./equipmentFor.ts";
import { computers, day, devices, school } from "./sampleSchool.fixture.ts";

const lesson = { date: day("2027-03-04"), start: 480, minutes: 90 };
const codes = (report: ReturnType<typeof equipmentFor>) => report.findings.map((f) => f.code);

test("enough of everything: spares, nothing to say", () => {
  const report = equipmentFor(
    school({ boards: devices(12), cables: devices(11), computers: computers("60 ".repeat(10)) }),
    lesson,
    10,
  );
  expect(report.boards).toMatchObject({ have: 12, wanted: 10, spare: 2, short: 0 });
  expect(report.cables).toMatchObject({ have: 11, spare: 1, short: 0 });
  expect(report.computers).toMatchObject({ have: 10, spare: 0, short: 0 });
  expect(report.boards.chance).toBe(chanceEnough(12, 10, 1 - deviceRates.board.usual));
  expect(report).toMatchObject({ sharing: { teams: 0, unserved: 0 }, battery: null, usbMilliamps: 500, findings: [] });
});

test("what does not work or has no port does not serve", () => {
  const [first, second, third] = computers("60 60 60");
  const report = equipmentFor(
    school({
      boards: [...devices(2), { id: "x", works: false, deadPins: [], note: "burnt" }],
      computers: [
        { ...first!, works: false },
        { ...second!, usbPorts: 0 },
        { ...third!, usbMilliamps: 100 },
      ],
    }),
    lesson,
    1,
  );
  expect(report.boards).toMatchObject({ serving: ["d1", "d2"], out: ["x"] });
  expect(report.computers).toMatchObject({ serving: ["c3"], out: ["c1", "c2"] });
  expect(report.usbMilliamps).toBe(100);
  expect(codes(report)).toEqual(["equipment.computerWithoutPort", "equipment.weakPort"]);
});

test("dead pins are listed, the board still serves", () => {
  const report = equipmentFor(school({ boards: [{ id: "b1", works: true, deadPins: ["D5", "A0"], note: "" }] }), lesson, 1);
  expect(report.boards.short).toBe(0);
  expect(report.deadPins).toEqual([{ board: "b1", pins: ["D5", "A0"] }]);
  expect(report.findings).toContainEqual({ code: "equipment.deadPins", data: { board: "b1", pins: "D5, A0" } });
});

// Three computers with two ports: each takes a second team, a third one nowhere.
const shared: [teams: number, sharing: number, unserved: number][] = [
  [3, 0, 0],
  [4, 2, 0],
  [6, 6, 0],
  [7, 6, 1],
];
for (const [teams, sharing, unserved] of shared)
  test(`${teams} teams at three computers`, () =>
    expect(equipmentFor(school(), lesson, teams).sharing).toEqual({ teams: sharing, unserved }));

test("a computer with one port takes one team", () => {
  const one = computers("60 60").map((c) => ({ ...c, usbPorts: 1 }));
  expect(equipmentFor(school({ computers: one }), lesson, 3).sharing).toEqual({ teams: 0, unserved: 1 });
});

// A cut of 40 minutes is met by 50 measured minutes and more: 0.8 × 50 = 40.
const cuts: [what: string, from: number, to: number, battery: object | null][] = [
  ["before the lesson", 400, 480, null],
  ["after the lesson", 570, 600, null],
  [
    "inside it",
    500,
    540,
    {
      from: 500,
      to: 540,
      minutes: 40,
      wanted: 4,
      computers: 5,
      lasting: 2,
      short: 2,
      lastingIds: ["c1", "c2"],
      untried: ["c4"],
      unserved: 0,
    },
  ],
  ["over its beginning", 400, 490, { from: 480, to: 490, minutes: 10, lasting: 3, short: 1 }],
  ["longer than the lesson", 300, 900, { from: 480, to: 570, minutes: 90, lasting: 1, short: 3, unserved: 2 }],
];
for (const [what, from, to, battery] of cuts) {
  test(`a power cut ${what}`, () => {
    const report = equipmentFor(
      school({ computers: computers("120 50 49 ? 0"), powerCuts: [{ date: lesson.date, from, to }] }),
      lesson,
      4,
    );
    if (battery === null) expect(report.battery).toBeNull();
    else expect(report.battery).toMatchObject(battery);
  });
}

test("eight computers that nobody has tried: none is counted on, and all are named as untried", () => {
  const powerCuts = [{ date: lesson.date, from: 500, to: 540 }];
  const report = equipmentFor(school({ computers: computers("? ".repeat(8)), powerCuts }), lesson, 10);
  expect(report.battery).toMatchObject({ wanted: 10, computers: 8, lasting: 0, unserved: 10 });
  expect(report.battery?.untried).toHaveLength(8);
  expect(report.findings).toContainEqual({ code: "equipment.batteriesShort", data: { count: 0, computers: 8, untried: 8 } });
});

test("cuts of another day do not matter, cuts that overlap count once", () => {
  const powerCuts = [
    { date: day("2027-03-05"), from: 480, to: 570 },
    { date: lesson.date, from: 490, to: 510 },
    { date: lesson.date, from: 500, to: 520 },
    { date: lesson.date, from: 540, to: 550 },
  ];
  expect(equipmentFor(school({ powerCuts }), lesson, 3).battery).toMatchObject({ from: 490, to: 550, minutes: 40 });
});

test("few sockets are said when nothing else takes the mains away", () => {
  const room = { name: "Room 12", sockets: 2, lux: null };
  expect(equipmentFor(school({ room }), lesson, 3).findings).toEqual([
    { code: "equipment.fewSockets", data: { sockets: 2, computers: 3 } },
  ]);
});

test("the first lesson after a pause counts on less", () => {
  const later = { ...lesson, date: day("2027-04-20") };
  const report = equipmentFor(school(), later, 3);
  expect(codes(report)).toEqual(["equipment.firstAfterPause"]);
  expect(report.computers.chance).toBeCloseTo((1 - deviceRates.computer.afterPause) ** 3, 12);
});

test("a school with nothing", () => {
  const report = equipmentFor(school({ boards: [], cables: [], computers: [] }), lesson, 3);
  expect(report).toMatchObject({ usbMilliamps: null, sharing: { teams: 0, unserved: 3 } });
  expect(report.boards.chance).toBe(0);
  expect(codes(report)).toEqual([
    "equipment.boardsShort",
    "equipment.cablesShort",
    "equipment.computersShort",
    "equipment.teamsWithoutComputer",
  ]);
});
