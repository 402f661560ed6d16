// An independent look at a finished rota, for tests: it shares no code with the search.
//
// Does not know: how a rota is made.
import type { Rota } from "./rota.ts";

/**
 * @param forced tells whether two pupils must stay together; such pairs do not count.
 * @returns lessons from the first on without a pair twice, meetings beyond the first, and everything that is wrong.
 */
export function checkRota(
  pupils: readonly string[],
  rota: Rota,
  forced: (a: string, b: string) => boolean = () => false,
): { fresh: number; repeated: number; wrong: string[] } {
  const wrong: string[] = [];
  const times = new Map<string, number>();
  let fresh = rota.lessons.length;
  rota.lessons.forEach((teams, l) => {
    const present = teams.flatMap((team) => team.pupils).sort();
    if (present.join("|") !== [...pupils].sort().join("|")) wrong.push(`lesson ${l}: not everybody exactly once`);
    if (pupils.length > 1 && teams.some((team) => team.pupils.length < 2)) wrong.push(`lesson ${l}: a team of one`);
    for (const team of teams) {
      const roles = team.roles.map((r) => r.pupil).sort();
      if (roles.join("|") !== [...team.pupils].sort().join("|")) wrong.push(`lesson ${l}: roles do not fit the team`);
      for (const a of team.pupils) {
        for (const b of team.pupils) {
          if (a >= b || forced(a, b)) continue;
          const key = JSON.stringify([a, b]);
          times.set(key, (times.get(key) ?? 0) + 1);
          if (times.get(key) === 2) fresh = Math.min(fresh, l);
        }
      }
    }
  });
  let repeated = 0;
  for (const n of times.values()) repeated += n - 1;
  return { fresh, repeated, wrong };
}
