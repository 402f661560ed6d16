// Who has been in a team with whom, and how often.
//
// Does not know: lessons to come, wishes.
import type { Team } from "./rota.ts";

/** Times that two pupils were in one team, by `pairKey`; a pair that is missing never was. */
export type Meetings = ReadonlyMap<string, number>;

/** The key of two pupils, whichever comes first. */
export function pairKey(a: string, b: string): string {
  return a < b ? `${a}\n${b}` : `${b}\n${a}`;
}

/** Counts meetings over lessons that were held. */
export function countMeetings(lessons: readonly (readonly Pick<Team, "pupils">[])[]): Meetings {
  const met = new Map<string, number>();
  for (const teams of lessons) {
    for (const { pupils } of teams) {
      for (let i = 0; i < pupils.length; i += 1) {
        for (let j = 0; j < i; j += 1) {
          const key = pairKey(pupils[i]!, pupils[j]!);
          met.set(key, (met.get(key) ?? 0) + 1);
        }
      }
    }
  }
  return met;
}
