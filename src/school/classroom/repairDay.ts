// The teams of a day when pupils are away: nobody sits alone, and as few as possible change their place.
//
// Who stays keeps the team, its number and, where it still fits, the role. A team of two is left as it is; a team of one is
// not. The search tries no move, then one, two, … moves, and branches only over moves that mend something that is wrong, of
// which one must be part of any solution; so the first number of moves that works is the fewest there is. Of all solutions with
// so few moves it takes the one with the fewest pairs that met before, then the one whose team sizes are nearest to what is wanted.
// Does not know: why somebody is away, the rota of later lessons.
import { countMeetings, pairKey } from "./meetings.ts";
import type { DayTeams, Role, Team } from "./rota.ts";
import { rolesFor } from "./shareRoles.ts";

export interface DayTask {
  /** The teams as the rota has them. */
  readonly teams: readonly Team[];
  readonly absent: readonly string[];
  /** Pupils wanted in a team. A team may grow to one more than that, or to the rota's largest. */
  readonly size: number;
  /** Lessons held before, for counting who met whom. */
  readonly history: readonly (readonly Team[])[];
  readonly apart: readonly (readonly [string, string])[];
  readonly together: readonly (readonly string[])[];
}

/** Positions that the search looks at before it settles for a good repair instead of a proven one. */
const mostPositions = 200_000;

/** @returns the teams of the day without the absent; teams that vanished leave their number unused. */
export function repairDay(task: DayTask): DayTeams {
  const away = new Set(task.absent);
  const room: Room = {
    teamOf: new Map(),
    members: task.teams.map((team) => team.pupils.filter((p) => !away.has(p))),
    moved: new Set(),
  };
  room.members.forEach((pupils, t) => {
    for (const p of pupils) room.teamOf.set(p, t);
  });
  const rules = rulesOf(task, room);
  for (let cap = rules.cap; cap <= Math.max(rules.cap, room.teamOf.size); cap += 1) {
    const repaired = fewestMoves(room, { ...rules, cap }, task.size);
    if (repaired !== null) return finished(task, repaired);
  }
  return finished(task, room);
}

/** Who sits where while the search tries moves. */
interface Room {
  readonly teamOf: Map<string, number>;
  readonly members: string[][];
  readonly moved: Set<string>;
}

interface Rules {
  /** Most pupils in a team. */
  readonly cap: number;
  /** Those that must not be joined with the key. */
  readonly apart: ReadonlyMap<string, ReadonlySet<string>>;
  /** Those that sat in one team with the key by wish, and must still do. */
  readonly together: ReadonlyMap<string, readonly string[]>;
  readonly met: (a: string, b: string) => number;
}

function rulesOf(task: DayTask, room: Room): Rules {
  const apart = new Map<string, Set<string>>();
  for (const [a, b] of task.apart) {
    apart.set(a, (apart.get(a) ?? new Set()).add(b));
    apart.set(b, (apart.get(b) ?? new Set()).add(a));
  }
  const together = new Map<string, string[]>();
  for (const group of task.together) {
    for (const p of group) {
      const team = room.teamOf.get(p);
      if (team === undefined) continue;
      const others = group.filter((q) => q !== p && room.teamOf.get(q) === team);
      together.set(p, [...(together.get(p) ?? []), ...others]);
    }
  }
  const meetings = countMeetings(task.history);
  return {
    cap: Math.max(task.size + 1, ...task.teams.map((team) => team.pupils.length)),
    apart,
    together,
    met: (a, b) => meetings.get(pairKey(a, b)) ?? 0,
  };
}

/** @returns the best of all repairs with the fewest moves, or null where none keeps the rules. */
function fewestMoves(start: Room, rules: Rules, size: number): Room | null {
  const pupils = start.teamOf.size;
  if (pupils < 2) return start;
  let best: { room: Room; score: readonly number[] } | null = null;
  let positions = 0;
  for (let moves = 0; moves <= pupils && best === null && positions < mostPositions; moves += 1) search(start, moves);
  return best === null ? greedyRepair(start, rules) : (best as { room: Room }).room;

  function search(room: Room, left: number): void {
    positions += 1;
    if (positions > mostPositions) return;
    const options = mendingMoves(room, rules);
    if (options === null) {
      const score = [repeats(room, rules), unevenness(room, size)];
      if (best === null || score[0]! < best.score[0]! || (score[0] === best.score[0] && score[1]! < best.score[1]!))
        best = { room: copy(room), score };
      return;
    }
    // One move mends two lonely pupils at most.
    const lonely = room.members.filter((team) => team.length === 1).length;
    if (left === 0 || Math.ceil(lonely / 2) > left) return;
    for (const [pupil, team] of options) {
      const from = room.teamOf.get(pupil)!;
      move(room, pupil, team);
      room.moved.add(pupil);
      search(room, left - 1);
      room.moved.delete(pupil);
      move(room, pupil, from);
    }
  }
}

/**
 * Moves one of which any repair from here must contain, or null if nothing is wrong. A pupil moves once at most.
 */
function mendingMoves(room: Room, rules: Rules): [pupil: string, team: number][] | null {
  const teams = room.members.map((_, t) => t).filter((t) => room.members[t]!.length > 0);
  const leave = (pupils: readonly string[]): [string, number][] =>
    pupils
      .filter((p) => !room.moved.has(p))
      .flatMap((p) => teams.filter((t) => t !== room.teamOf.get(p)).map((t): [string, number] => [p, t]));
  for (const p of room.moved) {
    const here = room.teamOf.get(p)!;
    const enemy = room.members[here]!.find((q) => rules.apart.get(p)?.has(q));
    if (enemy !== undefined) return leave([p, enemy]);
    const friend = rules.together.get(p)?.find((q) => room.teamOf.get(q) !== here);
    if (friend !== undefined) return room.moved.has(friend) ? [] : [[friend, here]];
  }
  for (const t of teams) if (room.members[t]!.length > rules.cap) return leave(room.members[t]!);
  for (const t of teams) {
    if (room.members[t]!.length !== 1) continue;
    const come = [...room.teamOf.keys()]
      .filter((p) => room.teamOf.get(p) !== t && !room.moved.has(p))
      .map((p): [string, number] => [p, t]);
    return [...leave(room.members[t]!), ...come];
  }
  return null;
}

/** Pairs with somebody who moved that met before. */
function repeats(room: Room, rules: Rules): number {
  let sum = 0;
  for (const p of room.moved) {
    for (const q of room.members[room.teamOf.get(p)!]!) {
      if (p === q || (room.moved.has(q) && q < p)) continue;
      sum += rules.met(p, q);
    }
  }
  return sum;
}

function unevenness(room: Room, size: number): number {
  return room.members.reduce((sum, team) => sum + (team.length === 0 ? 0 : (team.length - size) ** 2), 0);
}

function move(room: Room, pupil: string, team: number): void {
  const from = room.members[room.teamOf.get(pupil)!]!;
  from.splice(from.indexOf(pupil), 1);
  room.members[team]!.push(pupil);
  room.teamOf.set(pupil, team);
}

function copy(room: Room): Room {
  return {
    teamOf: new Map(room.teamOf),
    members: room.members.map((team) => [...team]),
    moved: new Set(room.moved),
  };
}

/** For a day with very many away: each lonely pupil joins the smallest team that may have them; null where none may. */
function greedyRepair(start: Room, rules: Rules): Room | null {
  const room = copy(start);
  for (;;) {
    const lonely = room.members.find((team) => team.length === 1)?.[0];
    if (lonely === undefined) return room;
    const here = room.teamOf.get(lonely)!;
    const open = room.members
      .map((team, t) => ({ team, t }))
      .filter(({ team, t }) => t !== here && team.length > 0 && team.length < rules.cap)
      .filter(({ team }) => !team.some((q) => rules.apart.get(lonely)?.has(q)));
    const cost = (team: readonly string[]) => team.length * 1000 + team.reduce((sum, q) => sum + rules.met(lonely, q), 0);
    const target = open.sort((a, b) => cost(a.team) - cost(b.team))[0];
    if (target === undefined) return null;
    move(room, lonely, target.t);
    room.moved.add(lonely);
  }
}

function finished(task: DayTask, room: Room): DayTeams {
  const teams = task.teams.flatMap((team, t): Team[] => {
    const order = new Map(team.pupils.map((p, i) => [p, i]));
    const pupils = [...room.members[t]!].sort((a, b) => (order.get(a) ?? 1000) - (order.get(b) ?? 1000));
    if (pupils.length === 0) return [];
    const presenter = team.presenter !== undefined && pupils.includes(team.presenter) ? team.presenter : pupils[0]!;
    return [{ number: team.number, pupils, roles: fillRoles(pupils, team), presenter }];
  });
  return { teams, moved: [...room.moved] };
}

/** Who has a role that the team still needs keeps it; the others take what is left, those who came last. */
function fillRoles(pupils: readonly string[], team: Team): Team["roles"] {
  const open = rolesFor(pupils.length);
  const kept = new Map<string, Role>();
  for (const { pupil, role } of team.roles) {
    const at = open.indexOf(role);
    if (!pupils.includes(pupil) || at < 0) continue;
    open.splice(at, 1);
    kept.set(pupil, role);
  }
  return pupils.map((pupil) => ({ pupil, role: kept.get(pupil) ?? open.shift()! }));
}
