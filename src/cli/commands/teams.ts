// benchday teams: who works with whom, without a class file. Pupils are numbered from 1.
//
// Does not know: how teams are found.
import { finish, near } from "../../base/index.ts";
import { sayUnchecked } from "../../language/index.ts";
import { makeRota } from "../../school/classroom/index.ts";
import { columns, type ExitStatus, print, printJson, type Talk } from "../output.ts";

export interface TeamsOptions {
  readonly pupils: number;
  readonly size: number;
  readonly lessons: number;
  readonly apart: readonly (readonly string[])[];
  readonly together: readonly (readonly string[])[];
  readonly seed: number;
}

export function teamsCommand(options: TeamsOptions, talk: Talk): ExitStatus {
  const pupils = Array.from({ length: options.pupils }, (_, i) => String(i + 1));
  const say = (key: string, data: Record<string, unknown>) => sayUnchecked(talk.language, key, data);
  const wrong = misuse(options, pupils);
  if (wrong !== null) {
    process.stderr.write(`${say(wrong.key, wrong.data)}\n`);
    return 2;
  }
  const rota = finish(
    makeRota({
      pupils,
      size: options.size,
      lessons: options.lessons,
      apart: options.apart.flatMap((group) => pairs(group)),
      together: options.together,
      seed: options.seed,
    }),
  );
  if (talk.json) {
    printJson({
      lessons: rota.lessons.map((teams) => teams.map((team) => team.pupils)),
      bound: rota.bound,
      fresh: rota.fresh,
      repeated: rota.repeated,
      broken: rota.broken,
      roles: rota.lessons.map((teams) => teams.map((team) => team.roles)),
    });
    return rota.broken.length > 0 ? 1 : 0;
  }
  print(
    columns(
      rota.lessons.map((teams, l) => [
        `${say("command.lessonNumber", { n: l + 1 })}:`,
        ...teams.map((team) => team.pupils.join(" ")),
      ]),
    ),
  );
  print();
  print(
    say("command.teamsFresh", { fresh: rota.fresh, lessons: rota.lessons.length, bound: rota.bound, repeated: rota.repeated }),
  );
  for (const wish of rota.broken)
    process.stderr.write(`${say("command.wishBroken", { code: wish.code, pupils: wish.pupils, lesson: wish.lesson + 1 })}\n`);
  return rota.broken.length > 0 ? 1 : 0;
}

function misuse(options: TeamsOptions, pupils: readonly string[]): { key: string; data: Record<string, unknown> } | null {
  if (options.pupils < 1) return { key: "command.noPupils", data: {} };
  if (options.pupils > 1000) return { key: "command.tooManyPupils", data: { found: options.pupils, most: 1000 } };
  if (options.size < 2 || options.size > 6) return { key: "command.teamSize", data: { found: options.size, least: 2, most: 6 } };
  if (options.lessons < 1 || options.lessons > 200)
    return { key: "command.lessonCount", data: { found: options.lessons, most: 200 } };
  for (const group of [...options.apart, ...options.together]) {
    const unknown = group.find((id) => !pupils.includes(id));
    if (unknown !== undefined)
      return { key: "command.unknownPupil", data: { found: unknown, near: near(unknown, pupils), last: pupils.length } };
    if (new Set(group).size < 2) return { key: "command.pairWanted", data: { found: group.join(",") } };
  }
  return null;
}

function pairs(group: readonly string[]): [string, string][] {
  return group.flatMap((a, i) => group.slice(i + 1).map((b): [string, string] => [a, b]));
}
