// Which generations stay: a table of histories, and laws over random ones.
import { expect, test } from "vitest";
import { type Kept, keepLimits, thinGenerations } from "./thinGenerations.ts";

const day = (n: number) => new Date(Date.UTC(2026, 0, 1 + n, 10)).toISOString();
const names = (generations: readonly Kept[]) => generations.map((g) => g.counter);
/** A history: the clock of each save, oldest first. */
const history = (ats: readonly string[], bytes = 1000, damaged: readonly number[] = []): Kept[] =>
  ats.map((at, i) => ({ name: `g${i + 1}`, counter: i + 1, at, bytes, damaged: damaged.includes(i + 1) }));
const stays = (all: readonly Kept[]) => {
  const victims = new Set(thinGenerations(all));
  return names(all.filter((g) => !victims.has(g.name)));
};
const span = (from: number, to: number) => Array.from({ length: to - from + 1 }, (_, i) => from + i);
const times = (n: number, at: (i: number) => string) => Array.from({ length: n }, (_, i) => at(i));

const cases: [what: string, all: Kept[], stay: number[]][] = [
  ["nothing", [], []],
  ["one save", history([day(0)]), [1]],
  ["twenty saves of one day all stay", history(times(20, () => day(0))), span(1, 20)],
  ["the 21st of one day takes the first", history(times(21, () => day(0))), span(2, 21)],
  ["the last of yesterday stays beside twenty of today", history([day(0), day(0), ...times(20, () => day(1))]), span(2, 22)],
  ["one a day for 30 days, the older ones one a month", history(times(100, day)), [31, 59, ...span(71, 100)]],
  [
    "two a day: the later of each day",
    history(times(60, (i) => day(Math.floor(i / 2)))),
    [...span(1, 40).filter((n) => n % 2 === 0), ...span(41, 60)],
  ],
  [
    "a clock that went back ten years mixes labels and not the order",
    history([...times(30, () => day(0)), ...times(20, () => "2016-05-05T10:00:00Z")]),
    [30, ...span(31, 50)],
  ],
  [
    "5 MB: the crowd of today goes before yesterday",
    history([day(0), day(1), ...times(10, () => day(2))], 700_000),
    [1, 2, 8, 9, 10, 11, 12],
  ],
  [
    "two stay though they are too large",
    history(
      times(4, () => day(0)),
      9_000_000,
    ),
    [3, 4],
  ],
  [
    "a damaged one is kept aside and counts for nothing",
    history(
      times(22, () => day(0)),
      1000,
      [22],
    ),
    span(2, 22),
  ],
  [
    "of many damaged ones the newest five",
    history(
      times(9, () => day(0)),
      1000,
      [1, 2, 3, 4, 5, 6, 7],
    ),
    span(3, 9),
  ],
];
for (const [what, all, stay] of cases) test(what, () => expect(stays(all)).toEqual(stay));

test("laws: the newest two stay, the last 20 stay where there is room, never more than the room, and doing it again takes nothing", () => {
  for (let seed = 1; seed <= 300; seed++) {
    let x = seed;
    const luck = () => {
      x = (Math.imul(x, 1103515245) + 12345) & 0x7fffffff;
      return x / 0x7fffffff;
    };
    const all: Kept[] = times(5 + Math.floor(luck() * 120), () => day(Math.floor(luck() * 400))).map((at, i) => ({
      name: `g${i}`,
      counter: i,
      at,
      bytes: Math.floor(luck() * (seed % 2 ? 400_000 : 20_000)),
      damaged: false,
    }));
    const left = stays(all);
    expect(left).toEqual(expect.arrayContaining(names(all.slice(-2))));
    const total = all.filter((g) => left.includes(g.counter)).reduce((sum, g) => sum + g.bytes, 0);
    if (left.length > 2) expect(total).toBeLessThanOrEqual(keepLimits.bytes);
    if (seed % 2 === 0) expect(left).toEqual(expect.arrayContaining(names(all.slice(-20))));
    expect(stays(all.filter((g) => left.includes(g.counter)))).toEqual(left);
  }
});
