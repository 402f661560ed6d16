// Changes of the lessons of a class: days, order, who is away, what was settled, what is prepared.
//
// What hangs on a meeting (absences, a lesson left out, ticks) goes where the meeting goes.
// Does not know: whether a lesson can be held, what it needs.
import { type Day, near } from "../../base/index.ts";
import { type ClassFile, type ClassGroup, type Decision, type LessonDate, meetingsOf } from "../file/index.ts";
import type { Change } from "./change.ts";
import { counted, unknownPupil } from "./changePupils.ts";
import {
  type ChangeContext,
  done,
  findClass,
  findSitting,
  isSame,
  type Outcome,
  type Refused,
  refuse,
  replaced,
  sittingId,
  withClass,
  without,
  withTicks,
} from "./outcome.ts";

type Of<Kind extends Change["kind"]> = Extract<Change, { readonly kind: Kind }>;

export function addLesson(classFile: ClassFile, { sitting, start }: Of<"add-lesson">, context: ChangeContext): Outcome {
  const found = findClass(classFile, sitting.class);
  if ("problem" in found) return found;
  const unknown = unknownLesson(sitting.lesson, context);
  if (unknown) return unknown;
  const meeting = { lesson: sitting.lesson, date: sitting.date, start, absent: [] };
  const clash = meetingsClash(found.group, meeting, context);
  if (clash) return clash;
  return done(withClass(classFile, found.at, { ...found.group, lessons: inOrder(found.group.lessons, meeting) }));
}

export function moveLesson(classFile: ClassFile, change: Of<"move-lesson">, context: ChangeContext): Outcome {
  const { sitting, date, start } = change;
  const found = findSitting(classFile, sitting);
  if ("problem" in found) return found;
  const { group, at, meeting } = found;
  if (meeting.date === date && meeting.start === start) return done(classFile);
  const others = without(group.lessons, (other) => other === meeting);
  const moved = { ...meeting, date, start };
  const clash = meetingsClash({ ...group, lessons: others }, moved, context);
  if (clash) return clash;
  const lessons = meeting.date === date ? replaced(group.lessons, found.index, moved) : inOrder(others, moved);
  return followMeetings(withClass(classFile, at, { ...group, lessons }), group.id, [
    { lesson: meeting.lesson, from: meeting.date, to: date },
  ]);
}

export function removeLesson(classFile: ClassFile, { sitting }: Of<"remove-lesson">): Outcome {
  const found = findSitting(classFile, sitting);
  if ("problem" in found) return found;
  const { group, at, meeting } = found;
  const next = withClass(classFile, at, { ...group, lessons: without(group.lessons, (other) => other === meeting) });
  return followMeetings(next, group.id, [{ lesson: meeting.lesson, from: meeting.date, to: null }]);
}

/** The days stay with their times and absences; the first day takes the first lesson of the new order, and so on. */
export function orderLessons(classFile: ClassFile, change: Of<"order-lessons">, context: ChangeContext): Outcome {
  const found = findClass(classFile, change.class);
  if ("problem" in found) return found;
  const { group, at } = found;
  const inTime = meetingsOf(group);
  const before = inTime.map((meeting) => meeting.lesson);
  if (!isSame([...before].sort(), [...change.lessons].sort()))
    return refuse({ code: "changes.notAllLessons", class: group.name });
  const now = new Map(inTime.map((meeting, i) => [meeting, { ...meeting, lesson: change.lessons[i] ?? meeting.lesson }]));
  const lessons = group.lessons.map((meeting) => {
    const next = now.get(meeting) ?? meeting;
    return next.lesson === meeting.lesson ? meeting : next;
  });
  if (lessons.every((meeting, i) => meeting === group.lessons[i])) return done(classFile);
  for (const [i, meeting] of lessons.entries()) {
    const clash = meetingsClash({ ...group, lessons: lessons.slice(0, i) }, meeting, context);
    if (clash) return clash;
  }
  // Of a lesson that is held twice, the first stays the first.
  const days = (list: readonly (readonly [string, Day])[], lesson: string) =>
    list.filter(([l]) => l === lesson).map(([, d]) => d);
  const old = inTime.map((m) => [m.lesson, m.date] as const);
  const fresh = inTime.map((m, i) => [change.lessons[i] ?? m.lesson, m.date] as const);
  const moves = [...new Set(before)].flatMap((lesson) => {
    const to = days(fresh, lesson);
    return days(old, lesson).map((from, i) => ({ lesson, from, to: to[i] ?? null }));
  });
  return followMeetings(withClass(classFile, at, { ...group, lessons }), group.id, moves);
}

export function markAbsent(classFile: ClassFile, { sitting, pupils }: Of<"mark-absent">): Outcome {
  return withAbsent(classFile, sitting, pupils, (absent) => {
    const more = [...new Set(pupils)].filter((id) => !absent.includes(id));
    return more.length > 0 ? [...absent, ...more] : absent;
  });
}

export function markPresent(classFile: ClassFile, { sitting, pupils }: Of<"mark-present">): Outcome {
  return withAbsent(classFile, sitting, pupils, (absent) => without(absent, (id) => pupils.includes(id)));
}

/** One answer to one question: what was settled before about the same gives way. */
export function decide(classFile: ClassFile, { decision }: Of<"decide">, context: ChangeContext): Outcome {
  const { decisions } = classFile;
  if (decisions.some((other) => isSame(other, decision))) return done(classFile);
  const unknown = unknownLesson(decision.lesson, context);
  if (unknown) return unknown;
  if (decision.kind === "skip") {
    const found = findClass(classFile, decision.class);
    if ("problem" in found) return found;
  }
  const question = questionOf(decision);
  return done({ ...classFile, decisions: [...decisions.filter((other) => questionOf(other) !== question), decision] });
}

export function undecide(classFile: ClassFile, { decision }: Of<"undecide">): Outcome {
  const decisions = without(classFile.decisions, (other) => isSame(other, decision));
  if (decisions === classFile.decisions) return refuse({ code: "changes.notThere", found: decision.lesson });
  return done({ ...classFile, decisions });
}

export function tick(classFile: ClassFile, { sitting, what }: Of<"tick">): Outcome {
  const unknown = unknownMeeting(classFile, sitting);
  if (unknown) return unknown;
  const ticks = classFile.prepared ?? [];
  if (ticks.some((t) => t.sitting === sitting && t.what === what)) return done(classFile);
  return done(withTicks(classFile, [...ticks, { sitting, what }]));
}

export function untick(classFile: ClassFile, { sitting, what }: Of<"untick">): Outcome {
  const ticks = classFile.prepared ?? [];
  const left = without(ticks, (t) => t.sitting === sitting && t.what === what);
  if (left !== ticks) return done(withTicks(classFile, left));
  return unknownMeeting(classFile, sitting) ?? done(classFile);
}

function questionOf(decision: Decision): string {
  const { kind, lesson } = decision;
  return [kind, lesson, kind === "substitute" ? decision.part : kind === "skip" ? decision.class : ""].join("/");
}

function unknownMeeting(classFile: ClassFile, sitting: string): Refused | null {
  const isKnown = classFile.classes.some((group) =>
    group.lessons.some(({ lesson, date }) => sitting === sittingId({ class: group.id, lesson, date })),
  );
  return isKnown ? null : refuse({ code: "changes.unknownSitting", sitting: sitting.slice(0, 200) });
}

function unknownLesson(lesson: string, { lessonMinutes }: ChangeContext): Refused | null {
  if (!lessonMinutes || lessonMinutes.has(lesson)) return null;
  return refuse({ code: "changes.unknownLesson", found: lesson, near: near(lesson, lessonMinutes.keys()) });
}

/** Why a meeting cannot be beside those of a class: the same lesson on the same day, or another at the same time. */
function meetingsClash(group: ClassGroup, meeting: LessonDate, { lessonMinutes }: ChangeContext): Refused | null {
  const sameDay = group.lessons.filter(({ date }) => date === meeting.date);
  if (sameDay.some(({ lesson }) => lesson === meeting.lesson))
    return refuse({ code: "changes.alreadyThere", found: `${meeting.lesson}, ${meeting.date}` });
  // A lesson of unknown length lasts at least a minute.
  const end = ({ lesson, start }: LessonDate) => start + Math.max(1, lessonMinutes?.get(lesson) ?? 0);
  const other = sameDay.find((m) => m.start < end(meeting) && meeting.start < end(m));
  if (!other) return null;
  const { lesson, date } = meeting;
  return refuse({ code: "changes.lessonsOverlap", class: group.name, date, lesson, other: other.lesson });
}

/** Before the first meeting that is later, so that a list in order stays in order. */
function inOrder(meetings: readonly LessonDate[], meeting: LessonDate): readonly LessonDate[] {
  const isLater = (m: LessonDate) => m.date > meeting.date || (m.date === meeting.date && m.start > meeting.start);
  const at = meetings.findIndex(isLater);
  return at === -1 ? [...meetings, meeting] : [...meetings.slice(0, at), meeting, ...meetings.slice(at)];
}

function withAbsent(
  classFile: ClassFile,
  sitting: Of<"mark-absent">["sitting"],
  pupils: readonly string[],
  change: (absent: readonly string[]) => readonly string[],
): Outcome {
  const found = findSitting(classFile, sitting);
  if ("problem" in found) return found;
  const { group, at, meeting, index } = found;
  const unknown = unknownPupil(group, pupils);
  if (unknown) return unknown;
  const absent = change(meeting.absent);
  if (absent === meeting.absent) return done(classFile);
  return done(withClass(classFile, at, { ...group, lessons: replaced(group.lessons, index, { ...meeting, absent }) }));
}

interface Move {
  readonly lesson: string;
  readonly from: Day;
  /** Null where the meeting is no more. */
  readonly to: Day | null;
}

/** Takes the ticks of meetings, and decisions to leave one out, to where the meetings are now. */
function followMeetings(classFile: ClassFile, group: string, moves: readonly Move[]): Outcome {
  const moveOf = new Map(moves.map((move) => [sittingId({ class: group, lesson: move.lesson, date: move.from }), move]));
  let moved = 0;
  const decisions = classFile.decisions.flatMap((decision): readonly Decision[] => {
    if (decision.kind !== "skip" || decision.class !== group) return [decision];
    const move = moveOf.get(sittingId(decision));
    if (!move || move.to === move.from) return [decision];
    moved += 1;
    return move.to === null ? [] : [{ ...decision, date: move.to }];
  });
  const ticks = classFile.prepared ?? [];
  let ticked = 0;
  const prepared = ticks.flatMap((t) => {
    const move = moveOf.get(t.sitting);
    if (!move || move.to === move.from) return [t];
    ticked += 1;
    return move.to === null ? [] : [{ ...t, sitting: sittingId({ class: group, lesson: move.lesson, date: move.to }) }];
  });
  const isGone = moves.some((move) => move.to === null);
  const next = moved > 0 ? { ...classFile, decisions } : classFile;
  return done(ticked > 0 ? withTicks(next, prepared) : next, [
    ...counted(isGone ? "decisionsDropped" : "decisionsMoved", moved),
    ...counted(isGone ? "ticksDropped" : "ticksMoved", ticked),
  ]);
}
