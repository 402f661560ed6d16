// Changes of classes and pupils: lists, names, who sits with whom.
//
// Wishes and absences speak of pupils by id, so whoever leaves is taken out of them too, and whoever stays keeps them.
// Does not know: lessons and their days, how teams are made.
import { near } from "../../base/index.ts";
import type { ClassFile, ClassGroup, Pupil } from "../file/index.ts";
import type { Change } from "./change.ts";
import type { ChangeEffect } from "./changesProblem.ts";
import { freshIds, retiredKey } from "./freshId.ts";
import {
  type ChangeContext,
  done,
  findClass,
  type Outcome,
  type Refused,
  refuse,
  replaced,
  withClass,
  without,
  withTicks,
} from "./outcome.ts";

type Of<Kind extends Change["kind"]> = Extract<Change, { readonly kind: Kind }>;

export function addClass(classFile: ClassFile, { id, name, teamSize }: Of<"add-class">): Outcome {
  if (classFile.classes.some((group) => group.id === id)) return refuse({ code: "changes.alreadyThere", found: id });
  const group = { id, name, teamSize, pupils: [], apart: [], together: [], balance: null, lessons: [] };
  return done({ ...classFile, classes: [...classFile.classes, group] });
}

export function renameClass(classFile: ClassFile, change: Of<"rename-class">): Outcome {
  return inClass(classFile, change.class, (group) => ({ ...group, name: change.name }));
}

/** Counts and log stay: what was lost stays lost, whoever lost it. */
export function removeClass(classFile: ClassFile, change: Of<"remove-class">): Outcome {
  const found = findClass(classFile, change.class);
  if ("problem" in found) return found;
  if (classFile.classes.length === 1) return refuse({ code: "changes.lastClass", class: found.group.name });
  const decisions = without(classFile.decisions, (d) => d.kind === "skip" && d.class === change.class);
  const ticks = classFile.prepared ?? [];
  const left = without(ticks, ({ sitting }) => sitting.startsWith(`${change.class}/`));
  const next = { ...classFile, classes: without(classFile.classes, (g) => g === found.group), decisions };
  return done(left === ticks ? next : withTicks(next, left), [
    ...counted("decisionsDropped", classFile.decisions.length - decisions.length),
    ...counted("ticksDropped", ticks.length - left.length),
  ]);
}

export function setTeamSize(classFile: ClassFile, { class: id, teamSize }: Of<"set-team-size">): Outcome {
  return inClass(classFile, id, (group) => {
    const next = { ...group, teamSize };
    return wishesClash(next) ?? next;
  });
}

export function setBalance(classFile: ClassFile, { class: id, balance }: Of<"set-balance">): Outcome {
  return inClass(classFile, id, (group) => {
    const marks = new Set(group.pupils.flatMap((pupil) => Object.keys(pupil.marks)));
    if (balance === null || marks.has(balance)) return { ...group, balance };
    return refuse({ code: "changes.unknownMark", found: balance.slice(0, 60), near: near(balance, marks), class: group.name });
  });
}

export function takeRoster(classFile: ClassFile, change: Of<"take-roster">, { retired }: ChangeContext): Outcome {
  const found = findClass(classFile, change.class);
  if ("problem" in found) return found;
  const { group, at } = found;
  const kept = keptPupils(group.pupils, change.pupils);
  const scope = `pupils ${group.id}` as const;
  const taken = new Set(group.pupils.map((pupil) => pupil.id));
  const next = freshIds(scope, [...taken, ...change.pupils.map((pupil) => pupil.id)], "p01", retired);
  const pupils = change.pupils.map((listed, i): Pupil => {
    const before = kept[i];
    if (before) return { id: before.id, name: listed.name, marks: { ...before.marks, ...listed.marks } };
    const isFree = !taken.has(listed.id) && !retired?.has(retiredKey(scope, listed.id));
    const id = isFree ? listed.id : next();
    taken.add(id);
    return { ...listed, id };
  });
  const stayed = kept.filter((pupil) => pupil !== undefined).length;
  const result = withPupils(group, pupils);
  return done(withClass(classFile, at, result.group), [
    { code: "rosterTaken", kept: stayed, added: pupils.length - stayed, left: group.pupils.length - stayed },
    ...result.effects,
  ]);
}

/** Who of a list was there before, by name. Of two with one name, whoever has the id of the list is meant; else the first is the first. */
function keptPupils(before: readonly Pupil[], list: readonly Pupil[]): readonly (Pupil | undefined)[] {
  const waiting = new Map<string, Pupil[]>();
  for (const pupil of before) waiting.set(plain(pupil.name), [...(waiting.get(plain(pupil.name)) ?? []), pupil]);
  const take = (name: string, isMeant: (pupil: Pupil) => boolean): Pupil | undefined => {
    const same = waiting.get(plain(name)) ?? [];
    const at = same.findIndex(isMeant);
    return at === -1 ? undefined : same.splice(at, 1)[0];
  };
  const byId = list.map(({ id, name }) => take(name, (pupil) => pupil.id === id));
  return list.map(({ name }, i) => byId[i] ?? take(name, () => true));
}

export function addPupil(classFile: ClassFile, { class: id, name }: Of<"add-pupil">, { retired }: ChangeContext): Outcome {
  const found = findClass(classFile, id);
  if ("problem" in found) return found;
  const { group, at } = found;
  const ids = group.pupils.map((pupil) => pupil.id);
  const pupil = { id: freshIds(`pupils ${group.id}`, ids, "p01", retired)(), name, marks: {} };
  const result = withPupils(group, [...group.pupils, pupil]);
  return done(withClass(classFile, at, result.group), [{ code: "idGiven", id: pupil.id, name }, ...result.effects]);
}

export function renamePupil(classFile: ClassFile, change: Of<"rename-pupil">): Outcome {
  return inClass(classFile, change.class, (group) => {
    const unknown = unknownPupil(group, [change.pupil]);
    if (unknown) return unknown;
    const at = group.pupils.findIndex((pupil) => pupil.id === change.pupil);
    return { ...group, pupils: replaced(group.pupils, at, { ...(group.pupils[at] as Pupil), name: change.name }) };
  });
}

export function removePupil(classFile: ClassFile, change: Of<"remove-pupil">): Outcome {
  const found = findClass(classFile, change.class);
  if ("problem" in found) return found;
  const { group, at } = found;
  const unknown = unknownPupil(group, [change.pupil]);
  if (unknown) return unknown;
  const result = withPupils(
    group,
    group.pupils.filter((pupil) => pupil.id !== change.pupil),
  );
  return done(withClass(classFile, at, result.group), result.effects);
}

export function keepApart(classFile: ClassFile, { class: id, pupils }: Of<"keep-apart">): Outcome {
  return inClass(classFile, id, (group) => {
    const wrong = unknownPupil(group, pupils) ?? twice(group, pupils);
    if (wrong) return wrong;
    if (group.apart.some((pair) => isSameGroup(pair, pupils))) return alreadyWished(group, pupils);
    const next = { ...group, apart: [...group.apart, pupils] };
    return wishesClash(next) ?? next;
  });
}

export function keepTogether(classFile: ClassFile, { class: id, pupils }: Of<"keep-together">): Outcome {
  return inClass(classFile, id, (group) => {
    const wrong = unknownPupil(group, pupils) ?? twice(group, pupils);
    if (wrong) return wrong;
    if (group.together.some((some) => isSameGroup(some, pupils))) return alreadyWished(group, pupils);
    const next = { ...group, together: [...group.together, pupils] };
    return wishesClash(next) ?? next;
  });
}

export function dropWish(classFile: ClassFile, { class: id, pupils }: Of<"drop-wish">): Outcome {
  return inClass(classFile, id, (group) => {
    const apart = without(group.apart, (pair) => isSameGroup(pair, pupils));
    const together = without(group.together, (some) => isSameGroup(some, pupils));
    if (apart === group.apart && together === group.together)
      return refuse({ code: "changes.notThere", found: namesOf(group, pupils).join(", ").slice(0, 200) });
    return { ...group, apart, together };
  });
}

/** A class with another list of pupils: wishes, absences and the balance speak of nobody who is not in it. */
export function withPupils(
  group: ClassGroup,
  pupils: readonly Pupil[],
): { readonly group: ClassGroup; readonly effects: readonly ChangeEffect[] } {
  const ids = new Set(pupils.map((pupil) => pupil.id));
  const isIn = (id: string) => ids.has(id);
  const apart = without(group.apart, (pair) => !pair.every(isIn));
  const shrunk = group.together.map((some) => without(some, (id) => !isIn(id)));
  const isShrunk = shrunk.some((some, i) => some !== group.together[i]);
  const together = isShrunk ? shrunk.filter((some) => some.length > 1) : group.together;
  let absences = 0;
  const lessons = group.lessons.map((meeting) => {
    const absent = without(meeting.absent, (id) => !isIn(id));
    absences += meeting.absent.length - absent.length;
    return absent === meeting.absent ? meeting : { ...meeting, absent };
  });
  const hasMark = group.balance === null || pupils.some(({ marks }) => Object.hasOwn(marks, group.balance ?? ""));
  const wishes = group.apart.length - apart.length + shrunk.filter((some, i) => some !== group.together[i]).length;
  return {
    group: {
      ...group,
      pupils,
      apart,
      together,
      balance: hasMark ? group.balance : null,
      lessons: absences > 0 ? lessons : group.lessons,
    },
    effects: [
      ...counted("wishesDropped", wishes),
      ...counted("absencesDropped", absences),
      ...(hasMark ? [] : [{ code: "balanceDropped", class: group.name } as const]),
    ],
  };
}

/** @returns why the wishes of a class cannot all be, or null. Groups that overlap are one, as in the class file. */
export function wishesClash(group: ClassGroup): Refused | null {
  const joined: Set<string>[] = [];
  for (const some of group.together) {
    const overlapping = joined.filter((other) => some.some((id) => other.has(id)));
    for (const other of overlapping) joined.splice(joined.indexOf(other), 1);
    joined.push(new Set([...some, ...overlapping.flatMap((other) => [...other])]));
  }
  for (const some of joined) {
    const pair = group.apart.find(([a, b]) => a !== b && some.has(a) && some.has(b));
    if (pair) return refuse({ code: "changes.apartAndTogether", pupils: namesOf(group, pair) });
    if (some.size > group.teamSize)
      return refuse({ code: "changes.togetherTooMany", pupils: namesOf(group, [...some]), most: group.teamSize });
  }
  return null;
}

export function unknownPupil(group: ClassGroup, ids: readonly string[]): Refused | null {
  const known = new Set(group.pupils.map((pupil) => pupil.id));
  const found = ids.find((id) => !known.has(id));
  return found === undefined
    ? null
    : refuse({ code: "changes.unknownPupil", found, near: near(found, known), class: group.name });
}

/** Names in place of ids, for sentences. */
export function namesOf(group: ClassGroup | undefined, ids: readonly string[]): readonly string[] {
  return ids.map((id) => group?.pupils.find((pupil) => pupil.id === id)?.name ?? id);
}

export function counted<Code extends (ChangeEffect & { readonly count: number })["code"]>(
  code: Code,
  count: number,
): readonly { readonly code: Code; readonly count: number }[] {
  return count > 0 ? [{ code, count }] : [];
}

function inClass(classFile: ClassFile, id: string, change: (group: ClassGroup) => ClassGroup | Refused): Outcome {
  const found = findClass(classFile, id);
  if ("problem" in found) return found;
  const next = change(found.group);
  return "problem" in next ? next : done(withClass(classFile, found.at, next));
}

function twice(group: ClassGroup, ids: readonly string[]): Refused | null {
  const again = ids.find((id, i) => ids.indexOf(id) !== i);
  return again === undefined ? null : refuse({ code: "changes.pupilTwice", pupil: namesOf(group, [again])[0] ?? again });
}

function alreadyWished(group: ClassGroup, ids: readonly string[]): Refused {
  return refuse({ code: "changes.alreadyThere", found: namesOf(group, ids).join(", ").slice(0, 200) });
}

function isSameGroup(a: readonly string[], b: readonly string[]): boolean {
  const left = new Set(a);
  return left.size === new Set(b).size && b.every((id) => left.has(id));
}

function plain(name: string): string {
  return name.trim().replace(/\s+/g, " ").toLowerCase();
}
