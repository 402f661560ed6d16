// Whether a class file makes sense: everything that its shape cannot say.
//
// Ids that must exist, days that must exist, pairs that contradict each other, more taken from the cupboard than was in it.
// Each finding says where, what stands there and what was probably meant. Two lessons that need each other in the wrong
// order are not judged here: they are a matter of readiness.
// Does not know: how the text is written (classFileShape.ts), what a lesson needs.
import { currencyDecimals, type Document, near, type Path, parseDay, parseMoney } from "../../base/index.ts";
import type { Kit } from "./classFile.ts";
import type { ClassFileShape } from "./classFileShape.ts";
import type { FileProblem, IdOwner } from "./fileProblem.ts";
import { nearItem, readItem } from "./itemText.ts";

/** What lies beside the class file. What is not given is not judged. */
export interface KnownFiles {
  /** Minutes of each lesson by id. */
  readonly lessonMinutes?: ReadonlyMap<string, number>;
  readonly kits?: ReadonlyMap<string, Kit>;
}

/** Teams smaller than two share nothing, in larger ones somebody only watches (common practice, no source). */
export const teamSizes = { least: 2, most: 6 } as const;
/** Above this a class is probably several (common practice, no source). */
const manyPupils = 60;
/** Items that serve as a supply. */
const supplyKinds = ["usb-port", "adapter", "power-bank", "battery-9v", "battery-4aa"];

type Group = ClassFileShape["classes"][number];

/** A file full of slips is told the first of them. */
const mostProblems = 100;

interface Judge {
  readonly document: Document;
  readonly known: KnownFiles;
  readonly report: (problem: FileProblem) => void;
  /** Whether enough was reported: looking for near names in a file full of slips would take minutes. */
  readonly isFull: () => boolean;
}

/** @returns everything that is wrong or doubtful, in no particular order. */
export function judgeClassFile(document: Document, shape: ClassFileShape, known: KnownFiles): FileProblem[] {
  const problems: FileProblem[] = [];
  const isFull = () => problems.length >= mostProblems;
  const report = (problem: FileProblem) => {
    if (!isFull()) problems.push(problem);
  };
  const judge: Judge = { document, known, report, isFull };
  judgeMoney(judge, shape);
  judgeDays(judge, shape);
  judgeIds(judge, shape);
  const { classes } = shape;
  if (classes.length === 0) judge.report({ code: "file.noClasses", place: document.place(["classes"]) });
  for (const [i, group] of classes.entries()) judgeClass(judge, group, ["classes", i]);
  judgeReferences(judge, shape);
  judgeItems(judge, shape);
  judgeEquipment(judge, shape);
  if (problems.length === 0) judgeMovements(judge, shape);
  return problems;
}

function judgeMoney({ document, report }: Judge, shape: ClassFileShape): void {
  const { currency } = shape;
  const currencies = Intl.supportedValuesOf("currency");
  const decimals = currencies.includes(currency) ? currencyDecimals(currency) : null;
  if (decimals === null) {
    const meant = currencies.includes(currency.toUpperCase()) ? currency.toUpperCase() : near(currency, currencies);
    report({ code: "file.unknownCurrency", place: document.place(["currency"]), found: currency.slice(0, 40), near: meant });
    return;
  }
  const check = (text: string | null, path: Path) => {
    if (text !== null && parseMoney(text, decimals) === null)
      report({ code: "file.tooFineSum", place: document.place(path), found: text, currency, decimals });
  };
  check(shape.budget, ["budget"]);
  for (const [s, supplier] of shape.suppliers.entries()) {
    check(supplier.shipping, ["suppliers", s, "shipping"]);
    check(supplier.freeFrom, ["suppliers", s, "freeFrom"]);
    for (const [o, offer] of supplier.offers.entries()) check(offer.price, ["suppliers", s, "offers", o, "price"]);
  }
}

function judgeDays({ document, report }: Judge, shape: ClassFileShape): void {
  const check = (list: readonly { readonly date: string }[], path: Path) => {
    for (const [i, { date }] of list.entries())
      if (parseDay(date) === null) report({ code: "file.noSuchDay", place: document.place([...path, i, "date"]), found: date });
  };
  for (const [i, group] of shape.classes.entries()) check(group.lessons, ["classes", i, "lessons"]);
  check(shape.movements, ["movements"]);
  check(shape.powerCuts, ["powerCuts"]);
  check(shape.decisions, ["decisions"]);
  check(shape.counts, ["counts"]);
  check(shape.log, ["log"]);
}

function judgeIds({ document, report }: Judge, shape: ClassFileShape): void {
  const check = (ids: readonly string[], path: (i: number) => Path, what: IdOwner) => {
    const first = new Map<string, number>();
    for (const [i, id] of ids.entries()) {
      const before = first.get(id);
      if (before === undefined) first.set(id, i);
      else
        report({
          code: "file.sameId",
          place: document.place(path(i)),
          what,
          found: id,
          firstLine: document.place(path(before)).line,
        });
    }
  };
  const idsOf = (list: readonly { readonly id: string }[], path: Path, what: IdOwner) =>
    check(
      list.map((entry) => entry.id),
      (i) => [...path, i, "id"],
      what,
    );
  idsOf(shape.classes, ["classes"], "class");
  for (const [i, group] of shape.classes.entries()) idsOf(group.pupils, ["classes", i, "pupils"], "pupil");
  check(
    shape.kits.map((k) => k.kit),
    (i) => ["kits", i, "kit"],
    "kit",
  );
  idsOf(shape.suppliers, ["suppliers"], "supplier");
  for (const [i, supplier] of shape.suppliers.entries()) idsOf(supplier.offers, ["suppliers", i, "offers"], "offer");
  idsOf(shape.computers, ["computers"], "computer");
  idsOf(shape.boards, ["boards"], "board");
  idsOf(shape.cables, ["cables"], "cable");
}

function judgeClass(judge: Judge, group: Group, path: Path): void {
  const { document, report } = judge;
  const { pupils, teamSize, balance } = group;
  const place = (...more: Path) => document.place([...path, ...more]);
  if (pupils.length === 0) report({ code: "file.noPupils", place: place("pupils"), class: group.id });
  if (pupils.length > manyPupils)
    report({
      code: "file.manyPupils",
      severity: "warning",
      place: place("pupils"),
      class: group.id,
      found: pupils.length,
      most: manyPupils,
    });
  if (teamSize < teamSizes.least || teamSize > teamSizes.most)
    report({ code: "file.teamSize", place: place("teamSize"), class: group.id, found: teamSize, ...teamSizes });
  const names = new Map<string, number>();
  for (const [i, pupil] of pupils.entries()) {
    const plain = pupil.name.trim().replace(/\s+/g, " ").toLowerCase();
    const before = names.get(plain);
    if (before === undefined) names.set(plain, i);
    else
      report({
        code: "file.sameName",
        severity: "warning",
        place: place("pupils", i, "name"),
        class: group.id,
        found: pupil.name.slice(0, 60),
        firstLine: place("pupils", before, "name").line,
      });
  }
  const marks = new Set(pupils.flatMap((pupil) => Object.keys(pupil.marks)));
  if (balance !== null && !marks.has(balance) && pupils.length > 0)
    report({
      code: "file.unknownMark",
      place: place("balance"),
      class: group.id,
      found: balance.slice(0, 60),
      near: near(balance, marks),
    });
  judgeWishes(judge, group, path);
  judgeLessons(judge, group, path);
}

function judgeWishes({ document, report, isFull }: Judge, group: Group, path: Path): void {
  const { pupils, apart, together, lessons, teamSize } = group;
  const ids = new Set(pupils.map((pupil) => pupil.id));
  const place = (...more: Path) => document.place([...path, ...more]);
  const checkPupils = (list: readonly string[], where: "apart" | "together" | "absent", at: Path) => {
    const seen = new Set<string>();
    for (const [i, id] of list.entries()) {
      if (isFull()) return;
      if (ids.has(id) || ids.size === 0) {
        if (where !== "absent" && seen.has(id))
          report({ code: "file.pairWithItself", place: place(...at, i), class: group.id, found: id });
        seen.add(id);
        continue;
      }
      // A teacher may well write the name where the id belongs.
      const byName = pupils.find((pupil) => pupil.name.toLowerCase() === id.toLowerCase())?.id;
      report({
        code: "file.unknownPupil",
        place: place(...at, i),
        class: group.id,
        where,
        found: id.slice(0, 60),
        near: byName ?? near(id, ids),
      });
    }
  };
  for (const [i, pair] of apart.entries()) checkPupils(pair, "apart", ["apart", i]);
  for (const [i, some] of together.entries()) checkPupils(some, "together", ["together", i]);
  for (const [i, date] of lessons.entries()) checkPupils(date.absent, "absent", ["lessons", i, "absent"]);

  // Who must sit together through any chain of groups: A with B and B with C means A with C.
  const leader = new Map<string, string>();
  const leaderOf = (id: string): string => {
    let at = id;
    for (let next = leader.get(at); next !== undefined; next = leader.get(at)) at = next;
    return at;
  };
  const size = new Map<string, number>();
  for (const [i, some] of together.entries()) {
    const [first = "", ...others] = some;
    for (const other of others) {
      const a = leaderOf(first);
      const b = leaderOf(other);
      if (a === b) continue;
      leader.set(b, a);
      size.set(a, (size.get(a) ?? 1) + (size.get(b) ?? 1));
    }
    const found = size.get(leaderOf(first)) ?? 1;
    if (found > Math.max(teamSize, teamSizes.least))
      report({ code: "file.togetherTooMany", place: place("together", i), class: group.id, found, most: teamSize });
  }
  for (const [i, [a = "", b = ""]] of apart.entries()) {
    if (a === b || leaderOf(a) !== leaderOf(b)) continue;
    const other = together.findIndex((some) => some.includes(a) || some.includes(b));
    report({
      code: "file.apartAndTogether",
      place: place("apart", i),
      class: group.id,
      pupils: [a, b],
      otherLine: place("together", Math.max(0, other)).line,
    });
  }
}

function judgeLessons({ document, known, report, isFull }: Judge, group: Group, path: Path): void {
  const at = (i: number, field: string) => document.place([...path, "lessons", i, field]);
  const list = group.lessons.map((date, i) => ({ ...date, i, from: minutes(date.start) }));
  for (const { lesson, i } of list)
    if (known.lessonMinutes && !known.lessonMinutes.has(lesson) && !isFull())
      report({
        code: "file.unknownLesson",
        place: at(i, "lesson"),
        found: lesson,
        near: near(lesson, known.lessonMinutes.keys()),
      });
  const byDay = new Map<string, typeof list>();
  for (const date of list) byDay.set(date.date, [...(byDay.get(date.date) ?? []), date]);
  for (const day of byDay.values()) {
    for (const [n, later] of day.entries()) {
      const same = day.slice(0, n).find((earlier) => earlier.lesson === later.lesson);
      if (same) {
        const { lesson, date } = later;
        const firstLine = at(same.i, "lesson").line;
        report({ code: "file.sameSitting", place: at(later.i, "lesson"), class: group.id, lesson, date, firstLine });
        continue;
      }
      // A lesson of unknown length lasts at least a minute, so that two that start together are found.
      const end = (date: typeof later) => date.from + (known.lessonMinutes?.get(date.lesson) ?? 1);
      const other = day.slice(0, n).find((earlier) => earlier.from < end(later) && later.from < end(earlier));
      if (other)
        report({
          code: "file.lessonsOverlap",
          place: at(later.i, "start"),
          class: group.id,
          date: later.date,
          lesson: later.lesson,
          start: later.start,
          other: other.lesson,
          otherStart: other.start,
          otherLine: at(other.i, "start").line,
        });
    }
  }
}

function judgeReferences({ document, known, report, isFull }: Judge, shape: ClassFileShape): void {
  const classes = new Set(shape.classes.map((group) => group.id));
  const checkClass = (id: string, path: Path) => {
    // A log or a count may be of a class that left the school: doubtful, but not wrong.
    if (classes.size > 0 && !classes.has(id) && !isFull())
      report({
        code: "file.unknownClass",
        severity: "warning",
        place: document.place(path),
        found: id,
        near: near(id, classes),
      });
  };
  for (const [i, entry] of shape.counts.entries()) checkClass(entry.class, ["counts", i, "class"]);
  for (const [i, entry] of shape.log.entries()) checkClass(entry.class, ["log", i, "class"]);
  for (const [i, entry] of shape.decisions.entries())
    if (entry.kind === "skip") checkClass(entry.class, ["decisions", i, "class"]);
  const { kits } = known;
  if (!kits) return;
  const checkKit = (id: string, path: Path) => {
    if (!kits.has(id)) report({ code: "file.unknownKit", place: document.place(path), found: id, near: near(id, kits.keys()) });
  };
  for (const [i, { kit }] of shape.kits.entries()) checkKit(kit, ["kits", i, "kit"]);
  for (const [s, supplier] of shape.suppliers.entries())
    for (const [o, { kit }] of supplier.offers.entries())
      if (kit !== undefined) checkKit(kit, ["suppliers", s, "offers", o, "kit"]);
}

function judgeItems({ document, report, isFull }: Judge, shape: ClassFileShape): void {
  const check = (list: readonly { readonly item?: string | undefined }[], path: Path) => {
    for (const [i, { item }] of list.entries())
      if (item !== undefined && !isFull() && readItem(item) === null)
        report({
          code: "file.unknownItem",
          place: document.place([...path, i, "item"]),
          found: item.slice(0, 60),
          near: nearItem(item),
        });
  };
  check(shape.stock, ["stock"]);
  check(shape.movements, ["movements"]);
  check(shape.supplies, ["supplies"]);
  check(shape.counts, ["counts"]);
  check(
    shape.decisions.map((d) => (d.kind === "skip" ? {} : { item: d.item })),
    ["decisions"],
  );
  for (const [s, supplier] of shape.suppliers.entries()) {
    check(supplier.offers, ["suppliers", s, "offers"]);
    for (const [o, offer] of supplier.offers.entries()) {
      const place = document.place(["suppliers", s, "offers", o]);
      const { id, item, kit, count } = offer;
      if (item === undefined && kit === undefined) report({ code: "file.offerHolds", place, offer: id, found: "nothing" });
      else if (item !== undefined && kit !== undefined) report({ code: "file.offerHolds", place, offer: id, found: "both" });
      else if (item !== undefined && count === undefined) report({ code: "file.offerWithoutCount", place, offer: id, item });
      else if (kit !== undefined && count !== undefined) report({ code: "file.kitWithCount", place, offer: id, kit });
    }
  }
}

function judgeEquipment({ document, report }: Judge, shape: ClassFileShape): void {
  for (const [i, computer] of shape.computers.entries())
    if (computer.works && computer.usbPorts === 0)
      report({ code: "file.noPorts", place: document.place(["computers", i, "usbPorts"]), computer: computer.id });
  for (const [i, { item }] of shape.supplies.entries()) {
    const kind = item.split(" ")[0] ?? "";
    if (readItem(item) !== null && !supplyKinds.includes(kind))
      report({
        code: "file.notASupply",
        place: document.place(["supplies", i, "item"]),
        found: item,
        near: near(kind, supplyKinds),
      });
  }
  for (const [i, { from, to }] of shape.powerCuts.entries())
    if (minutes(to) <= minutes(from))
      report({ code: "file.timesBackwards", place: document.place(["powerCuts", i, "to"]), from, to });
  for (const [i, { item, out, back, broken }] of shape.counts.entries())
    if (back + broken > out)
      report({ code: "file.moreBackThanOut", place: document.place(["counts", i, "back"]), item, out, back, broken });
}

/** Runs once everything else is right: then items and days can be compared as text. */
function judgeMovements({ document, known, report }: Judge, shape: ClassFileShape): void {
  const there = new Map<string, number>();
  const add = (item: string, count: number) => {
    const key = readItem(item) ?? item;
    there.set(key, (there.get(key) ?? 0) + count);
  };
  for (const { item, count } of [...shape.stock, ...shape.supplies]) add(item, count);
  for (const { kit, count } of shape.kits)
    for (const [item, each] of known.kits?.get(kit)?.contents ?? []) add(item, each * count);
  // What is listed one by one is not counted as stock, and a movement of it says nothing about the list.
  const singly = new Set([
    ...shape.boards.map(() => "board"),
    ...shape.cables.map(() => "usb-cable"),
    ...shape.computers.map(() => "computer"),
  ]);
  // Without the contents of its kits nobody can say what a cupboard holds.
  const isComplete = shape.kits.every(({ kit }) => known.kits?.has(kit));
  const list = shape.movements.map((movement, i) => ({ ...movement, i, item: readItem(movement.item) ?? movement.item }));
  for (const { change, why, item, i } of list) {
    const place = document.place(["movements", i, "change"]);
    const expected = ["lost", "broken", "lent"].includes(why) ? "-" : why === "corrected" ? null : "+";
    if (change === 0) report({ code: "file.noChange", place, item });
    else if (expected !== null && expected !== (change > 0 ? "+" : "-"))
      report({ code: "file.wrongSign", place, item, why, found: change, expected });
  }
  const reported = new Set<string>();
  // On one day what came is counted before what went: the file need not say in which order.
  const inOrder = [...list].sort((a, b) => a.date.localeCompare(b.date) || Number(a.change < 0) - Number(b.change < 0));
  for (const { item, change, date, i } of isComplete ? inOrder : []) {
    const before = there.get(item) ?? 0;
    there.set(item, before + change);
    if (before + change >= 0 || reported.has(item) || singly.has(item)) continue;
    reported.add(item);
    const others = [...there].filter(([other, count]) => other !== item && count > 0).map(([other]) => other);
    report({
      code: "file.takesTooMany",
      place: document.place(["movements", i, "change"]),
      item,
      date,
      found: -change,
      there: Math.max(0, before),
      near: before <= 0 ? near(item, others) : null,
    });
  }
}

/** Minutes after midnight of a time such as "09:05". */
export function minutes(time: string): number {
  return Number(time.slice(0, 2)) * 60 + Number(time.slice(3));
}
