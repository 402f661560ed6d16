// Two copies of a class file that were changed apart, put together again.
//
// A colleague takes a copy home; both go on. Entry by entry, by ids and by what tells an entry from others, the changes of both
// are taken. Where both changed one thing otherwise, or where their changes do not go together (one keeps apart whom the other
// puts together), the old state of that thing stays and a clash is told. The result is always a class file that can be read.
// Does not know: screens, who "mine" and "theirs" are: exchanging them gives the same.
import {
  byTime,
  type ClassFile,
  type ClassGroup,
  findOverdrawn,
  type KnownFiles,
  type LessonDate,
  readClassFile,
  type Supplier,
  writeClassFile,
} from "../file/index.ts";
import { wishesClash } from "./changePupils.ts";
import { type Clash, clash, type Merging, mergeFields, mergeList, mergeValue, type Three } from "./mergeLists.ts";
import { isSame, withTicks } from "./outcome.ts";

export interface Merged {
  readonly value: ClassFile;
  /** In these the old state stands; each tells what the two copies say. */
  readonly clashes: readonly Clash[];
}

/**
 * @param known lessons and kits, where known: then what both took from the cupboard together is found too.
 * @returns the merged file, and what is to be chosen. Never throws.
 */
export function mergeFiles(base: ClassFile, mine: ClassFile, theirs: ClassFile, known: KnownFiles = {}): Merged {
  const merging: Merging = { clashes: [] };
  const three: Three<ClassFile> = { base, mine, theirs };
  const of = <Name extends keyof ClassFile>(name: Name): Three<ClassFile[Name]> => ({
    base: base[name],
    mine: mine[name],
    theirs: theirs[name],
  });
  const merged: ClassFile = {
    ...base,
    ...mergeFields(merging, [], three, ["about", "lessonFolder", "kitFolder", "language", "chance"]),
    room: mergeFields(merging, ["room"], of("room"), ["name", "sockets", "lux"]),
    ...mergeMoney(merging, three),
    classes: mergeClasses(merging, of("classes")),
    ...mergeCupboard(merging, three, known),
    powerCuts: mergeList(merging, ["powerCuts"], of("powerCuts"), whole),
    decisions: mergeList(merging, ["decisions"], of("decisions"), (d) =>
      [d.kind, d.lesson, d.kind === "substitute" ? d.part : d.kind === "skip" ? d.class : ""].join("/"),
    ),
    counts: mergeList(merging, ["counts"], of("counts"), (c) => [c.class, c.lesson, c.date, c.item].join("/")),
    log: mergeList(merging, ["log"], of("log"), whole),
  };
  const ticks = { base: base.prepared ?? [], mine: mine.prepared ?? [], theirs: theirs.prepared ?? [] };
  const value = withTicks(merged, mergeList(merging, ["prepared"], ticks, whole));
  if (readClassFile("", writeClassFile(value), known).value === null) {
    // Bounds of lists and of the whole, which the two keep each and break together.
    clash(merging, [], three);
    return { value: base, clashes: merging.clashes };
  }
  return { value, clashes: merging.clashes.sort((a, b) => (JSON.stringify(a.path) < JSON.stringify(b.path) ? -1 : 1)) };
}

/** The entry itself is what tells it. */
function whole(entry: object): string {
  return JSON.stringify(Object.entries(entry).sort(([a], [b]) => (a < b ? -1 : 1)));
}

/** Sums are counted in the smallest unit, so where the two have other decimals, money is taken from one of them whole. */
function mergeMoney(
  merging: Merging,
  three: Three<ClassFile>,
): Pick<ClassFile, "currency" | "decimals" | "budget" | "suppliers"> {
  const fields = ["currency", "budget", "suppliers"] as const;
  const pick = ({ currency, decimals, budget, suppliers }: ClassFile) => ({ currency, decimals, budget, suppliers });
  const money = { base: pick(three.base), mine: pick(three.mine), theirs: pick(three.theirs) };
  const isOneUnit = money.mine.decimals === money.theirs.decimals && money.mine.decimals === money.base.decimals;
  if (!isOneUnit && !isSame(money.mine, money.theirs)) {
    if (isSame(money.theirs, money.base)) return money.mine;
    if (isSame(money.mine, money.base)) return money.theirs;
    for (const name of fields)
      clashWhereChanged(merging, [name], { base: money.base[name], mine: money.mine[name], theirs: money.theirs[name] });
    return money.base;
  }
  const suppliers = { base: money.base.suppliers, mine: money.mine.suppliers, theirs: money.theirs.suppliers };
  return {
    ...mergeFields(merging, [], money, ["currency", "budget"]),
    // Equal in all three, or mine and theirs are the same.
    decimals: money.mine.decimals,
    suppliers: mergeList(
      merging,
      ["suppliers"],
      suppliers,
      (s) => s.id,
      (path, entries) => ({
        ...entries.base,
        ...mergeFields(merging, path, entries, ["name", "shipping", "freeFrom", "days"]),
        offers: mergeList(merging, [...path, "offers"], offersOf(entries), (offer) => offer.id),
      }),
    ),
  };
}

function offersOf({ base, mine, theirs }: Three<Supplier>): Three<Supplier["offers"]> {
  return { base: base.offers, mine: mine.offers, theirs: theirs.offers };
}

type Cupboard = Pick<ClassFile, "kits" | "stock" | "movements" | "computers" | "boards" | "cables" | "supplies">;

function mergeCupboard(merging: Merging, { base, mine, theirs }: Three<ClassFile>, { kits }: KnownFiles): Cupboard {
  const place = (line: { readonly item: string; readonly box: string }) => `${line.item}, ${line.box}`;
  const byId = (entry: { readonly id: string }) => entry.id;
  const list = <Name extends keyof Cupboard>(name: Name, keyOf: (entry: Cupboard[Name][number]) => string) =>
    mergeList<Cupboard[Name][number]>(merging, [name], { base: base[name], mine: mine[name], theirs: theirs[name] }, keyOf);
  const merged = {
    kits: list("kits", (line) => line.kit),
    stock: list("stock", place),
    movements: list("movements", whole),
    computers: list("computers", byId),
    boards: list("boards", byId),
    cables: list("cables", byId),
    supplies: list("supplies", place),
  } as Cupboard;
  // Each took what was there; together they took too much.
  if (findOverdrawn(merged, kits).length <= findOverdrawn(base, kits).length) return merged;
  const { movements, computers, boards, cables, supplies, stock } = base;
  for (const name of Object.keys(merged) as (keyof Cupboard)[])
    clashWhereChanged(merging, [name], { base: base[name], mine: mine[name], theirs: theirs[name] });
  return { kits: base.kits, stock, movements, computers, boards, cables, supplies };
}

function mergeClasses(merging: Merging, three: Three<ClassFile["classes"]>): ClassFile["classes"] {
  const classes = mergeList(
    merging,
    ["classes"],
    three,
    (group) => group.id,
    (path, groups) => mergeGroup(merging, path, groups),
  );
  if (classes.length > 0) return classes;
  clash(merging, ["classes"], three);
  return three.base;
}

function mergeGroup(merging: Merging, path: readonly string[], three: Three<ClassGroup>): ClassGroup {
  const { base, mine, theirs } = three;
  if (isSame(mine, theirs) || isSame(theirs, base)) return mine;
  if (isSame(mine, base)) return theirs;
  const of = <Name extends keyof ClassGroup>(name: Name): Three<ClassGroup[Name]> => ({
    base: base[name],
    mine: mine[name],
    theirs: theirs[name],
  });
  const sorted = (ids: readonly string[]) => [...ids].sort().join("/");
  let group: ClassGroup = {
    ...base,
    ...mergeFields(merging, path, three, ["name", "teamSize", "balance"]),
    pupils: mergeList(
      merging,
      [...path, "pupils"],
      of("pupils"),
      (pupil) => pupil.id,
      (at, pupils) => ({
        ...pupils.base,
        ...mergeFields(merging, at, pupils, ["name", "marks"]),
      }),
    ),
    apart: mergeList(merging, [...path, "apart"], of("apart"), sorted),
    together: mergeList(merging, [...path, "together"], of("together"), sorted),
    lessons: mergeMeetings(merging, [...path, "lessons"], of("lessons")),
  };
  if (meetingsCollide(group.lessons)) {
    clashWhereChanged(merging, [...path, "lessons"], of("lessons"));
    group = { ...group, lessons: base.lessons };
  }
  if (wishesClash(group)) {
    for (const name of ["teamSize", "apart", "together"] as const) clashWhereChanged(merging, [...path, name], of(name));
    group = { ...group, teamSize: base.teamSize, apart: base.apart, together: base.together };
  }
  group = withPupilsSpokenOf(merging, path, three, group);
  if (!hasMark(group)) {
    clashWhereChanged(merging, [...path, "balance"], of("balance"));
    group = { ...group, balance: base.balance };
  }
  if (hasMark(group) && !wishesClash(group) && !speaksOfStrangers(group)) return group;
  clash(merging, path, three);
  return base;
}

/** One side let a pupil go of whom the other has something new to say: the pupil stays until somebody chooses. */
function withPupilsSpokenOf(
  merging: Merging,
  path: readonly string[],
  { base, mine, theirs }: Three<ClassGroup>,
  group: ClassGroup,
): ClassGroup {
  const spokenOf = new Set([...group.apart.flat(), ...group.together.flat(), ...group.lessons.flatMap((m) => m.absent)]);
  const isThere = new Set(group.pupils.map((pupil) => pupil.id));
  const missing = base.pupils.filter(({ id }) => spokenOf.has(id) && !isThere.has(id));
  if (missing.length === 0) return group;
  for (const pupil of missing) {
    const find = (g: ClassGroup) => g.pupils.find(({ id }) => id === pupil.id);
    clash(merging, [...path, "pupils", pupil.id], { base: pupil, mine: find(mine), theirs: find(theirs) });
  }
  return { ...group, pupils: [...group.pupils, ...missing] };
}

function hasMark({ balance, pupils }: ClassGroup): boolean {
  return balance === null || pupils.length === 0 || pupils.some(({ marks }) => Object.hasOwn(marks, balance));
}

function speaksOfStrangers({ pupils, apart, together, lessons }: ClassGroup): boolean {
  const ids = new Set(pupils.map((pupil) => pupil.id));
  return [...apart.flat(), ...together.flat(), ...lessons.flatMap((m) => m.absent)].some((id) => !ids.has(id));
}

/** A lesson that is held once keeps its identity when it moves; one that is held again is told by its day. */
function mergeMeetings(merging: Merging, path: readonly string[], three: Three<readonly LessonDate[]>): readonly LessonDate[] {
  const again = repeatedLessons(three);
  const merged = mergeList(
    merging,
    path,
    three,
    ({ lesson, date }) => (again.has(lesson) ? `${lesson}/${date}` : lesson),
    (at, meetings) => {
      const { base, mine, theirs } = meetings;
      const when = ({ date, start }: LessonDate) => ({ date, start });
      const absent = { base: base.absent, mine: mine.absent, theirs: theirs.absent };
      return {
        ...base,
        ...mergeValue(merging, [...at, "when"], { base: when(base), mine: when(mine), theirs: when(theirs) }),
        absent: mergeList(merging, [...at, "absent"], absent, (id) => id),
      };
    },
  );
  const isInOrder = (list: readonly LessonDate[]) => list.every((m, i) => i === 0 || byTime(list[i - 1] as LessonDate, m) <= 0);
  return [three.base, three.mine, three.theirs].every(isInOrder) ? [...merged].sort(byTime) : merged;
}

/** Lessons that a class holds more than once in one of the files. */
export function repeatedLessons(three: Three<readonly LessonDate[]>): ReadonlySet<string> {
  const repeated = [three.base, three.mine, three.theirs].flatMap((list) => {
    const lessons = list.map(({ lesson }) => lesson);
    return lessons.filter((lesson, i) => lessons.indexOf(lesson) !== i);
  });
  return new Set(repeated);
}

/** The same lesson twice a day, or two that begin at once. */
function meetingsCollide(meetings: readonly LessonDate[]): boolean {
  const lessons = meetings.map(({ lesson, date }) => `${lesson}/${date}`);
  const times = meetings.map(({ start, date }) => `${start}/${date}`);
  return [lessons, times].some((keys) => new Set(keys).size < keys.length);
}

function clashWhereChanged(merging: Merging, path: readonly string[], three: Three<unknown>): void {
  if (!isSame(three.base, three.mine) || !isSame(three.base, three.theirs)) clash(merging, path, three);
}
