// Two copies changed apart: small cases by hand, and laws over pairs of copies that chance changed.
//
// The laws: exchanging the copies changes nothing but the names; what nobody else touched comes through; every change is in the
// result or told as a clash; the result can be read. The last two are judged by a list of facts that knows nothing of merging.
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { sample } from "../../../test/sample.ts";
import { type Day, type Random, seededRandom } from "../../base/index.ts";
import { type ClassFile, type LessonDate, readClassFile, writeClassFile } from "../file/index.ts";
import { applyChange } from "./applyChange.ts";
import type { Change } from "./change.ts";
import { mergeFiles } from "./mergeFiles.ts";
import type { Clash } from "./mergeLists.ts";
import { isSame } from "./outcome.ts";
import { randomChange } from "./randomChange.fixture.ts";

const demo = readClassFile("harbour.json", readFileSync(new URL("../../../demo/harbour.json", import.meta.url), "utf8")).value!;

function changed(file: ClassFile, ...changes: readonly Change[]): ClassFile {
  return changes.reduce((before, change) => {
    const outcome = applyChange(before, change);
    if ("problem" in outcome) throw new Error(JSON.stringify(outcome.problem));
    return outcome.value;
  }, file);
}

const barrier = { class: "7b", lesson: "barrier", date: "2027-03-09" as Day };
const kay = { id: "shop", name: "Kay", shipping: 100, freeFrom: null, days: 2, offers: [] };
const away = (pupil: string): Change => ({ kind: "mark-absent", sitting: barrier, pupils: [pupil] });
const renamed = (name: string): Change => ({ kind: "rename-pupil", class: "7b", pupil: "p01", name });
const move = (date: string): Change => ({ kind: "move-lesson", sitting: barrier, date: date as Day, start: 540 });
const stock = (count: number, box = "box 1, a1"): Change => ({ kind: "set-stock", line: { item: "led red", count, box } });

/** What one did, what the other did, where they clash. */
const cases: [name: string, mine: readonly Change[], theirs: readonly Change[], clashes: readonly (readonly string[])[]][] = [
  ["two pupils away", [away("p01")], [away("p02")], []],
  ["the same pupil away", [away("p01")], [away("p01")], []],
  ["a lesson moved, and somebody away in it", [move("2027-03-16")], [away("p02")], []],
  ["a lesson moved to two days", [move("2027-03-16")], [move("2027-03-23")], [["classes", "7b", "lessons", "barrier", "when"]]],
  ["one name, another's name", [renamed("Awa")], [{ kind: "rename-pupil", class: "7b", pupil: "p02", name: "Bo" }], []],
  ["two names for one", [renamed("Awa")], [renamed("Ada")], [["classes", "7b", "pupils", "p01", "name"]]],
  [
    "a pupil left, and has another name",
    [{ kind: "remove-pupil", class: "7b", pupil: "p01" }],
    [renamed("Awa")],
    [["classes", "7b", "pupils", "p01"]],
  ],
  [
    "a pupil left, and is away",
    [{ kind: "remove-pupil", class: "7b", pupil: "p01" }],
    [away("p01")],
    [["classes", "7b", "pupils", "p01"]],
  ],
  [
    "two new pupils with one id",
    [{ kind: "add-pupil", class: "7b", name: "Awa" }],
    [{ kind: "add-pupil", class: "7b", name: "Bo" }],
    [["classes", "7b", "pupils", "p31"]],
  ],
  [
    "new pupils of two classes",
    [{ kind: "add-pupil", class: "7b", name: "Awa" }],
    [{ kind: "add-pupil", class: "7c", name: "Bo" }],
    [],
  ],
  [
    "apart here, together there",
    [{ kind: "keep-apart", class: "7b", pupils: ["p01", "p02"] }],
    [{ kind: "keep-together", class: "7b", pupils: ["p01", "p02"] }],
    [
      ["classes", "7b", "apart"],
      ["classes", "7b", "together"],
    ],
  ],
  [
    "two lessons at one time",
    [{ kind: "add-lesson", sitting: { ...barrier, lesson: "x", date: "2027-03-16" as Day }, start: 540 }],
    [{ kind: "add-lesson", sitting: { ...barrier, lesson: "y", date: "2027-03-16" as Day }, start: 540 }],
    [["classes", "7b", "lessons"]],
  ],
  [
    "a class left, and has a new name",
    [{ kind: "remove-class", class: "7c" }],
    [{ kind: "rename-class", class: "7c", name: "Red" }],
    [["classes", "7c"]],
  ],
  [
    "each takes out another class",
    [{ kind: "remove-class", class: "7b" }],
    [{ kind: "remove-class", class: "7c" }],
    [["classes"]],
  ],
  ["two counts of one box", [stock(9)], [stock(11)], [["stock", "led red, box 1, a1"]]],
  ["counts of two boxes", [stock(9)], [stock(3, "box 7")], []],
  ["two shops", [{ kind: "set-supplier", supplier: kay }], [{ kind: "set-supplier", supplier: { ...kay, id: "b" } }], []],
  [
    "one shop, two days",
    [{ kind: "set-supplier", supplier: kay }],
    [{ kind: "set-supplier", supplier: { ...kay, days: 9 } }],
    [["suppliers", "shop"]],
  ],
  [
    "another currency, and another budget",
    [{ kind: "set-currency", currency: "JPY", decimals: 0 }],
    [{ kind: "set-budget", budget: 9900 }],
    [["budget"], ["currency"], ["suppliers"]],
  ],
  [
    "ticks of one meeting",
    [{ kind: "tick", sitting: "7b/barrier/2027-03-09", what: "a" }],
    [{ kind: "tick", sitting: "7b/barrier/2027-03-09", what: "b" }],
    [],
  ],
  ["notes of both", [{ kind: "set-about", about: "a" }], [{ kind: "set-about", about: "b" }], [["about"]]],
];

describe("by hand", () => {
  for (const [name, mine, theirs, clashes] of cases)
    test(name, () => {
      const [a, b] = [changed(demo, ...mine), changed(demo, ...theirs)];
      const merged = mergeFiles(demo, a, b);
      expect(merged.clashes.map(({ path }) => path)).toEqual(clashes);
      if (clashes.length > 0) return;
      // Without a clash it is as if one had done both.
      expect(factsOf(merged.value, demo, a, b)).toEqual(factsOf(changed(a, ...theirs.map((c) => moved(c, a))), demo, a, b));
    });
  /** The other's change on the file where the lesson has moved already. */
  function moved(change: Change, file: ClassFile): Change {
    if (change.kind !== "mark-absent") return change;
    const date = file.classes[0]!.lessons.find(({ lesson }) => lesson === "barrier")!.date;
    return { ...change, sitting: { ...change.sitting, date } };
  }
  test("more taken by both together than there is", () => {
    const none = { ...demo, kits: [], movements: [] };
    const take: Change = {
      kind: "move-stock",
      movement: { date: barrier.date, item: "led red", change: -8, why: "lost", note: "" },
    };
    const other = { ...take, movement: { ...take.movement, note: "theirs" } } as Change;
    const { value, clashes } = mergeFiles(none, changed(none, take), changed(none, other));
    expect(clashes.map(({ path }) => path)).toEqual([["movements"]]);
    expect(value.movements).toEqual([]);
  });
  test("a room named by one, its light measured by the other", () => {
    const mine = changed(demo, { kind: "set-room", room: { ...demo.room, name: "9" } });
    const theirs = changed(demo, { kind: "set-room", room: { ...demo.room, lux: 300 } });
    expect(mergeFiles(demo, mine, theirs)).toMatchObject({ value: { room: { ...demo.room, name: "9", lux: 300 } }, clashes: [] });
  });
  test("a clash tells the three values", () => {
    const [a, b] = [changed(demo, { kind: "remove-pupil", class: "7b", pupil: "p01" }), changed(demo, renamed("Awa"))];
    expect(mergeFiles(demo, a, b).clashes).toEqual([
      {
        path: ["classes", "7b", "pupils", "p01"],
        base: demo.classes[0]!.pupils[0],
        mine: null,
        theirs: { ...demo.classes[0]!.pupils[0], name: "Awa" },
      },
    ]);
  });
});

/** Everything that a class file says, each as a path and a value; paths as clashes have them. */
function factsOf(file: ClassFile, ...all: readonly ClassFile[]): Map<string, unknown> {
  const facts = new Map<string, unknown>();
  const say = (path: readonly string[], value: unknown) => {
    let key = JSON.stringify(path);
    for (let n = 2; facts.has(key); n += 1) key = JSON.stringify([...path.slice(0, -1), `${path.at(-1)} #${n}`]);
    facts.set(key, value);
  };
  const entry = (value: object) => JSON.stringify(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)));
  for (const name of ["about", "language", "currency", "chance", "budget", "lessonFolder", "kitFolder"] as const)
    say([name], file[name]);
  for (const [name, value] of Object.entries(file.room)) say(["room", name], value);
  for (const group of file.classes) {
    const at = ["classes", group.id];
    for (const name of ["name", "teamSize", "balance"] as const) say([...at, name], group[name]);
    for (const { id, name, marks } of group.pupils) {
      say([...at, "pupils", id, "name"], name);
      say([...at, "pupils", id, "marks"], marks);
    }
    for (const name of ["apart", "together"] as const)
      for (const some of group[name]) say([...at, name, [...some].sort().join("/")], true);
    const isRepeated = ({ lesson }: LessonDate) =>
      all.some((f) => f.classes.some((g) => g.id === group.id && g.lessons.filter((m) => m.lesson === lesson).length > 1));
    for (const meeting of group.lessons) {
      const key = isRepeated(meeting) ? `${meeting.lesson}/${meeting.date}` : meeting.lesson;
      say([...at, "lessons", key, "when"], [meeting.date, meeting.start]);
      for (const id of meeting.absent) say([...at, "lessons", key, "absent", id], true);
    }
  }
  for (const { id, offers, ...rest } of file.suppliers) {
    for (const [name, value] of Object.entries(rest)) say(["suppliers", id, name], value);
    for (const offer of offers) say(["suppliers", id, "offers", offer.id], offer);
  }
  for (const line of file.kits) say(["kits", line.kit], line.count);
  for (const name of ["stock", "supplies"] as const)
    for (const line of file[name]) say([name, `${line.item}, ${line.box}`], line.count);
  for (const name of ["computers", "boards", "cables"] as const) for (const device of file[name]) say([name, device.id], device);
  for (const name of ["movements", "powerCuts", "log"] as const) for (const one of file[name]) say([name, entry(one)], true);
  for (const one of file.prepared ?? []) say(["prepared", entry(one)], true);
  for (const count of file.counts) say(["counts", [count.class, count.lesson, count.date, count.item].join("/")], count);
  for (const d of file.decisions)
    say(["decisions", [d.kind, d.lesson, d.kind === "substitute" ? d.part : d.kind === "skip" ? d.class : ""].join("/")], d);
  return facts;
}

/** Changes of one side that are neither in the merged file nor covered by a clash. */
function lost(base: ClassFile, side: ClassFile, other: ClassFile, merged: ClassFile, clashes: readonly Clash[]): string[] {
  const of = (file: ClassFile) => factsOf(file, base, side, other);
  const [before, after, result] = [of(base), of(side), of(merged)];
  const isCovered = (key: string) => {
    const path = JSON.parse(key) as string[];
    return clashes.some((clash) => clash.path.every((step, i) => path[i] === step));
  };
  return [...new Set([...before.keys(), ...after.keys()])].filter(
    (key) => !isSame(before.get(key), after.get(key)) && !isSame(result.get(key), after.get(key)) && !isCovered(key),
  );
}

function copyOf(base: ClassFile, random: Random, changes: number): ClassFile {
  let file = base;
  for (let n = 0; n < changes; n += 1) {
    const outcome = applyChange(file, randomChange(file, random));
    if ("value" in outcome) file = outcome.value;
  }
  return file;
}

test("laws of pairs that were changed apart", { timeout: 600_000 }, () => {
  let clashing = 0;
  for (let seed = 1; seed <= sample(200, 2_000); seed += 1) {
    const random = seededRandom(seed, "apart");
    const base = seed % 3 === 0 ? copyOf(demo, random, 30) : seed % 3 === 1 ? demo : { ...demo, kits: [], movements: [] };
    const changes = random.int(1, 25);
    const mine = copyOf(base, random, changes);
    const theirs = copyOf(base, random, changes);
    const one = mergeFiles(base, mine, theirs);
    const other = mergeFiles(base, theirs, mine);
    const text = writeClassFile(one.value);
    expect(text, `seed ${seed}: exchanged`).toBe(writeClassFile(other.value));
    expect(one.clashes, `seed ${seed}: exchanged`).toEqual(other.clashes.map((c) => ({ ...c, mine: c.theirs, theirs: c.mine })));
    expect(lost(base, mine, theirs, one.value, one.clashes), `seed ${seed}: lost of mine`).toEqual([]);
    expect(lost(base, theirs, mine, one.value, one.clashes), `seed ${seed}: lost of theirs`).toEqual([]);
    const read = readClassFile("merged.json", text);
    expect(
      read.problems.filter((p) => p.severity !== "warning"),
      `seed ${seed}`,
    ).toEqual([]);
    if (one.clashes.length > 0) clashing += 1;
    if (seed % 10 !== 0) continue;
    expect(writeClassFile(mergeFiles(base, mine, base).value)).toBe(writeClassFile(mine));
    expect(mergeFiles(base, mine, mine)).toEqual({ value: mine, clashes: [] });
    expect(mergeFiles(base, base, base)).toEqual({ value: base, clashes: [] });
  }
  // Pairs of both kinds are among them.
  expect(clashing).toBeGreaterThan(sample(200, 2_000) / 20);
  expect(clashing).toBeLessThan(sample(200, 2_000));
});

test("the judge of lost changes sees a lost change", () => {
  const mine = changed(demo, away("p01"), renamed("Awa"));
  expect(lost(demo, mine, demo, demo, [])).toEqual([
    JSON.stringify(["classes", "7b", "pupils", "p01", "name"]),
    JSON.stringify(["classes", "7b", "lessons", "barrier", "absent", "p01"]),
  ]);
});
