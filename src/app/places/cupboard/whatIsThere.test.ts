// What a cupboard holds, by kit and by box, from files made by hand.
import { expect, test } from "vitest";
import type { Day } from "../../../base/index.ts";
import type { ClassFile, Kit, Movement, StockLine } from "../../../school/file/index.ts";
import { asCounted, asList, besidesList, happened, isFound, kitsAddTo, recount, whatIsThere } from "./whatIsThere.ts";

const today = "2027-01-04" as Day;
const compare = new Intl.Collator("en", { numeric: true }).compare;
const kits = new Map<string, Kit>([
  [
    "basic",
    {
      format: "benchday-kit/1",
      id: "basic",
      name: "Basic",
      note: "",
      contents: new Map([
        ["led red", 5],
        ["servo", 1],
        ["board", 1],
      ]),
    },
  ],
]);

function fileOf(stock: StockLine[], movements: Movement[] = [], more: Partial<ClassFile> = {}): ClassFile {
  const empty = { classes: [], suppliers: [], computers: [], boards: [], cables: [], supplies: [], powerCuts: [], decisions: [] };
  return {
    ...empty,
    format: "benchday-class/1",
    about: "",
    lessonFolder: null,
    kitFolder: null,
    language: "en",
    currency: "EUR",
    decimals: 2,
    chance: 0.95,
    budget: null,
    room: { name: "", sockets: 0, lux: null },
    kits: [{ kit: "basic", count: 6 }],
    stock,
    movements,
    counts: [],
    log: [],
    ...more,
  };
}
const line = (text: string): StockLine => {
  const [, count = "", item = "", box = ""] = /^(\d+) ([^@]+?)(?: @ (.+))?$/.exec(text) ?? [];
  return { item, count: Number(count), box };
};
/** "box: item here/inAll, …" */
const shown = (stock: string[], movements: Movement[] = [], more: Partial<ClassFile> = {}) => {
  const there = whatIsThere(fileOf(stock.map(line), movements, more), kits, today, compare);
  const lines = (of: (typeof there)["inKitsOnly"]) => of.map((l) => `${l.item} ${l.here}/${l.inAll}`).join(", ");
  return [...there.boxes.map((box) => `${box.box}: ${lines(box.lines)}`), `kits: ${lines(there.inKitsOnly)}`];
};

const cases: [name: string, stock: string[], rows: string[]][] = [
  // 6 kits × 5 LEDs, 6 × 1 servo; the board has a list of its own.
  ["an empty cupboard has what the kits hold", [], ["kits: led red 0/30, servo 0/6"]],
  ["loose ones come on top of the kits", ["12 led red @ box 1"], ["box 1: led red 12/42", "kits: servo 0/6"]],
  [
    "one item in two boxes stands in both, with all there is",
    ["12 led red @ box 2", "3 led red @ box 10"],
    ["box 2: led red 12/45", "box 10: led red 3/45", "kits: servo 0/6"],
  ],
  ["what lies nowhere stands last", ["2 wire", "1 servo @ z"], ["z: servo 1/7", ": wire 2/2", "kits: led red 0/30"]],
  [
    "devices and supplies that a list of stock names stand where it says, besides those in kits",
    ["6 board @ box B", "2 usb-cable", "3 computer @ b", "4 battery-9v @ b"],
    ["b: battery-9v 4/4, computer 3/3", "box B: board 6/12", ": usb-cable 2/2", "kits: led red 0/30, servo 0/6"],
  ],
];
for (const [name, stock, rows] of cases) test(name, () => expect(shown(stock)).toEqual(rows));

const moved = (date: string, change: number, why: Movement["why"] = "lost"): Movement => ({
  date: date as Day,
  item: "led red",
  change,
  why,
  note: "",
});

test("what is lost is lost from the kits first, then from the boxes; what is to come is nowhere yet", () => {
  const lost = [moved("2026-12-01", -2), moved("2027-02-01", 20, "bought")];
  expect(shown(["12 led red @ box 1"], lost)[0]).toBe("box 1: led red 12/40");
  expect(shown(["12 led red @ box 1"], lost, { kits: [] })[0]).toBe("box 1: led red 10/10");
});

test("what was bought and put nowhere lies in no box", () => {
  const rows = shown(["12 led red @ box 1"], [moved("2026-12-01", 40, "bought")]);
  expect(rows.slice(0, 2)).toEqual(["box 1: led red 12/82", ": led red 40/82"]);
});

test("boxes and kits together are all there is", () => {
  const movements = [moved("2026-12-01", 40, "bought"), moved("2026-12-02", -7), moved("2026-12-03", 2, "found")];
  const there = whatIsThere(fileOf(["12 led red @ 1", "3 led red @ 2"].map(line), movements), kits, today, compare);
  const lines = there.boxes.flatMap((box) => box.lines);
  // 30 in six kits.
  expect(lines.reduce((sum, l) => sum + l.here, 30)).toBe(lines[0]!.inAll);
});

const recounts: [name: string, stock: string[], movements: Movement[], kits: number, box: string, found: number][] = [
  ["more in a box", ["12 led red @ a"], [], 6, "a", 20],
  ["fewer in a box", ["12 led red @ a"], [], 6, "a", 3],
  ["none in a box", ["12 led red @ a"], [], 6, "a", 0],
  ["after a loss from the box", ["12 led red @ a"], [moved("2026-12-01", -5)], 0, "a", 9],
  ["after all was lost", ["12 led red @ a"], [moved("2026-12-01", -12)], 0, "a", 4],
  ["bought and put nowhere: fewer", ["12 led red @ a"], [moved("2026-12-01", 40, "bought")], 6, "", 0],
  ["in no box, counted", ["12 led red"], [], 0, "", 5],
  ["in no box, counted, after a loss", ["12 led red"], [moved("2026-12-01", -5)], 0, "", 5],
];
for (const [name, stock, movements, count, box, found] of recounts)
  test(`a new count is what the box shows afterwards: ${name}`, () => {
    const before = fileOf(stock.map(line), movements, { kits: [{ kit: "basic", count }] });
    const of = (file: ClassFile) =>
      whatIsThere(file, kits, today, compare)
        .boxes.find((b) => b.box === box)
        ?.lines.find((l) => l.item === "led red");
    const then = of(before)!;
    const change = recount(then, box, found, today)!;
    const after =
      change.kind === "move-stock"
        ? { ...before, movements: [...before.movements, change.movement] }
        : { ...before, stock: before.stock.map((l) => (change.kind === "set-stock" && l.box === box ? change.line : l)) };
    const now = of(after);
    expect(now?.here ?? 0).toBe(found);
    if (now) expect(now.inAll).toBe(then.inAll + found - then.here);
  });

test("a list that was saved and is taken again changes nothing that is there", () => {
  const movements = [moved("2026-12-01", 40, "bought"), moved("2026-12-02", -97)];
  const before = fileOf(["12 led red @ 1", "30 led red @ 2", "4 wire"].map(line), movements);
  const there = whatIsThere(before, kits, today, compare);
  const after = whatIsThere({ ...before, stock: asCounted(asList(there), there) }, kits, today, compare);
  const counts = (of: typeof there) => asList(of).filter((l) => l.count > 0);
  expect(counts(after)).toEqual(counts(there));
});

test("the same count is no act", () => {
  expect(recount({ item: "led red", here: 7, counted: 12, inAll: 7 }, "a", 7, today)).toBeNull();
});

test("supplies have a list of their own", () => {
  expect(shown([], [], { supplies: [{ item: "power-bank", count: 2, box: "" }] })).toEqual(["kits: led red 0/30, servo 0/6"]);
});

test("a supply in both lists: each shows its own", () => {
  const rows = shown(["4 battery-9v @ b"], [], { supplies: [{ item: "battery-9v", count: 2, box: "b" }] });
  expect(rows[0]).toBe("b: battery-9v 4/6");
});

const listOf = (count: number) => Array.from({ length: count }, (_, i) => ({ id: `b${i}`, works: true, deadPins: [], note: "" }));

test("boards of a list of stock can be mended where a list of boards counts alone", () => {
  const there = whatIsThere(fileOf([line("6 board @ box B")], [], { boards: listOf(8) }), kits, today, compare);
  expect(there.boxes).toEqual([{ box: "box B", lines: [{ item: "board", here: 6, counted: 6, inAll: 8 }] }]);
  expect(recount(there.boxes[0]!.lines[0]!, "box B", 0, today)).toEqual({
    kind: "set-stock",
    line: { item: "board", count: 0, box: "box B" },
  });
});

// Six kits with one board each.
const besides: [stock: string[], boards: number, count: number, instead: boolean, onTop: number][] = [
  [[], 0, 6, true, 6],
  [["3 board @ a", "1 board"], 0, 10, true, 6],
  [["3 board @ a"], 8, 9, false, 0],
];
for (const [stock, boards, count, instead, onTop] of besides)
  test(`boards besides a list of ${boards}: ${stock.join(", ")}`, () => {
    const file = fileOf(stock.map(line), [], { boards: listOf(boards) });
    expect(besidesList(file, kits, "board")).toEqual({ count, instead });
    expect(kitsAddTo(file, kits, "board")).toBe(onTop);
  });

test("what happened to an item: the newest first, of one day the last written first", () => {
  const movements = [moved("2026-12-01", -2), moved("2026-12-03", -1), moved("2026-12-03", 1, "found")];
  expect(happened({ movements }, "led red").map((m) => m.change)).toEqual([1, -1, -2]);
  expect(happened({ movements }, "servo")).toEqual([]);
});

const searches: [typed: string, text: string, found: boolean][] = [
  ["", "LED, red", true],
  ["led", "LED, red", true],
  ["red led", "LED, red box 1", true],
  ["green led", "LED, red box 1", false],
  ["box 1 led", "LED, red box 1", true],
  ["resistencia", "Résistencia 220 Ω", true],
  ["  ", "anything", true],
];
for (const [typed, text, found] of searches)
  test(`search for “${typed}” in “${text}”`, () => expect(isFound(typed, text)).toBe(found));
