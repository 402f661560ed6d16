// Whether one class makes sense: its size, its teams' wishes, its lessons.
//
// Does not know: the cupboard, other classes.
import { near, type Path } from "../../base/index.ts";
import type { ClassFileShape } from "./classFileShape.ts";
import { type Judge, minutes } from "./judge.ts";

/** Teams smaller than two share nothing, in larger ones somebody only watches (common practice, no source). */
export const teamSizes = { least: 2, most: 6 } as const;
/** Above this a class is probably several (common practice, no source). */
const manyPupils = 60;

type Group = ClassFileShape["classes"][number];

/** @param path where the class stands in the file. */
export function judgeClass(judge: Judge, group: Group, path: Path): void {
  const { document, report } = judge;
  const { pupils, teamSize, balance } = group;
  const place = (...more: Path) => document.place([...path, ...more]);
  // A class may be begun before its list is there.
  if (pupils.length === 0) report({ code: "file.noPupils", severity: "warning", place: place("pupils"), class: group.id });
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
      const end = (date: typeof later) => date.from + Math.max(1, known.lessonMinutes?.get(date.lesson) ?? 0);
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
