// The teams of a class, lesson by lesson, as the Pupils place shows them: names, roles, who is away, who was moved.
//
// Does not know: how the rota was made, words.
import type { Day } from "../../../base/index.ts";
import type { Role, Rota } from "../../../school/classroom/index.ts";
import { byTime, type ClassGroup, type Pupil } from "../../../school/file/index.ts";
import type { Plan } from "../../../school/readiness/index.ts";

export interface TeamMember {
  readonly pupil: Pupil;
  /** A pupil of a small team has several. */
  readonly roles: readonly Role[];
  readonly presents: boolean;
  /** Sits in another team than the rota said. */
  readonly moved: boolean;
}

export interface LessonTeams {
  /** The sitting's id. */
  readonly id: string;
  readonly lesson: string;
  readonly date: Day;
  readonly teams: readonly { readonly number: number; readonly members: readonly TeamMember[] }[];
  readonly away: readonly Pupil[];
  readonly moved: readonly Pupil[];
}

/** @returns the lessons of the class in the order of their days. Ids that name no pupil of the class are left out. */
export function teamsByLesson(plan: Pick<Plan, "lessons">, group: ClassGroup): LessonTeams[] {
  const known = new Map(group.pupils.map((pupil) => [pupil.id, pupil]));
  const named = (ids: readonly string[]) => ids.flatMap((id) => known.get(id) ?? []);
  return plan.lessons
    .filter((lesson) => lesson.class === group.id)
    .sort(byTime)
    .map((lesson) => {
      const dated = group.lessons.find((l) => l.lesson === lesson.lesson && l.date === lesson.date);
      return {
        id: lesson.id,
        lesson: lesson.lesson,
        date: lesson.date,
        teams: lesson.teams.map(({ number, pupils, roles, presenter }) => ({
          number,
          members: named(pupils).map((pupil) => ({
            pupil,
            roles: roles.filter((r) => r.pupil === pupil.id).map((r) => r.role),
            presents: presenter === pupil.id,
            moved: lesson.moved.includes(pupil.id),
          })),
        })),
        away: named(dated?.absent ?? []),
        moved: named(lesson.moved),
      };
    });
}

export interface Wish {
  readonly kind: "apart" | "together";
  readonly ids: readonly string[];
  readonly pupils: readonly Pupil[];
}

/** What was wished for the teams, apart first. */
export function wishesOf(group: ClassGroup): Wish[] {
  const named = (ids: readonly string[]) => ids.flatMap((id) => group.pupils.find((pupil) => pupil.id === id) ?? []);
  return [
    ...group.apart.map((ids): Wish => ({ kind: "apart", ids, pupils: named(ids) })),
    ...group.together.map((ids): Wish => ({ kind: "together", ids, pupils: named(ids) })),
  ];
}

/** Every two of several, so that three who are to be kept apart are three pairs. */
export function pairsOf(ids: readonly string[]): [string, string][] {
  return ids.flatMap((a, i) => ids.slice(i + 1).map((b): [string, string] => [a, b]));
}

/** Columns of the list that teams can be balanced on, in the order in which they first stand there. */
export function markColumns(pupils: readonly Pupil[]): string[] {
  return [...new Set(pupils.flatMap((pupil) => Object.keys(pupil.marks)))];
}

/** The rota of a class, or null before it is planned. */
export function rotaOf(plan: Pick<Plan, "rotas">, group: string): Rota | null {
  return plan.rotas.find((r) => r.class === group)?.rota ?? null;
}
