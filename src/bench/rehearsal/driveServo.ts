// A servo on its way to an angle, and what it is doing meanwhile.
//
// A servo stands still until it hears pulses; nobody knows how it was left, so it begins at its middle. When it is told an angle
// further away than a twitch it starts, which for some tens of milliseconds is a stall, then it moves, then it rests.
// Does not know: volts, the circuit; it is told whether it has power and which pulse it hears.
import type { BuiltPart } from "./build.ts";

/** A stretch of time in which the angle changes evenly (or not at all). Seconds, degrees. */
export interface Move {
  readonly from: number;
  readonly to: number;
  readonly fromDegrees: number;
  readonly toDegrees: number;
  /** Told to move, and held fast. */
  readonly stalled?: true;
}

export interface ServoState {
  readonly moves: readonly Move[];
  /** idle, start, moving, stalled. */
  readonly doing: "idle" | "start" | "moving" | "stalled";
  /** When `doing` changes by itself; Infinity if it does not. */
  readonly until: number;
  /** The angle that it was told last; null if it hears nothing. */
  readonly target: number | null;
}

/** Degrees below which a change is a twitch that costs no start current. From memory. */
const twitch = 3;

export function restingServo(part: BuiltPart): ServoState {
  const middle = ((part.kind.figures.leastDegrees?.value ?? 0) + (part.kind.figures.mostDegrees?.value ?? 180)) / 2;
  const still = { from: 0, to: Number.POSITIVE_INFINITY, fromDegrees: middle, toDegrees: middle };
  return { moves: [still], doing: "idle", until: Number.POSITIVE_INFINITY, target: null };
}

/** @returns the angle at a moment. */
export function angleAt(moves: readonly Move[], at: number): number {
  const move = moves.findLast((m) => m.from <= at) ?? moves[0];
  if (!move) return 0;
  if (at >= move.to) return move.toDegrees;
  if (move.to === Number.POSITIVE_INFINITY) return move.fromDegrees;
  return move.fromDegrees + ((move.toDegrees - move.fromDegrees) * (at - move.from)) / (move.to - move.from);
}

/**
 * The servo goes on from `now`, with what it hears and has.
 *
 * @param heard the angle of the pulses that reach its signal leg, or null.
 * @param powered whether its voltage is enough to move.
 * @param held whether something holds its arm fast.
 */
export function driveServo(
  part: BuiltPart,
  servo: ServoState,
  now: number,
  heard: number | null,
  powered: boolean,
  held: boolean,
): ServoState {
  const { figures } = part.kind;
  const target =
    heard === null ? null : Math.min(figures.mostDegrees?.value ?? 180, Math.max(figures.leastDegrees?.value ?? 0, heard));
  const here = angleAt(servo.moves, now);
  const stop = (doing: "idle" | "stalled"): ServoState => ({
    moves: servo.doing === doing ? servo.moves : [...cut(servo.moves, now), still(now, here, doing === "stalled")],
    doing,
    until: Number.POSITIVE_INFINITY,
    target,
  });
  if (target === null || !powered || Math.abs(target - here) < 1e-9) return stop("idle");
  if (held) return stop("stalled");
  const goesOn = (servo.doing === "moving" || servo.doing === "start") && servo.target === target;
  const arrives = goesOn
    ? (servo.moves.at(-1)?.from ?? now)
    : now + Math.abs(target - here) * (figures.secondsPerDegree?.value ?? 0);
  if (goesOn && now < servo.until) return servo;
  const moves = goesOn
    ? servo.moves
    : [...cut(servo.moves, now), { from: now, to: arrives, fromDegrees: here, toDegrees: target }, still(arrives, target)];
  const starts = !goesOn && servo.doing !== "moving" && servo.doing !== "start" && Math.abs(target - here) > twitch;
  if (starts) return { moves, doing: "start", until: Math.min(arrives, now + (figures.startSeconds?.value ?? 0)), target };
  // Told another angle in the middle of its start, it is still starting.
  if (servo.doing === "start" && now < servo.until)
    return { moves, doing: "start", until: Math.min(arrives, servo.until), target };
  return { moves, doing: "moving", until: arrives, target };
}

const still = (from: number, degrees: number, stalled = false): Move => ({
  from,
  to: Number.POSITIVE_INFINITY,
  fromDegrees: degrees,
  toDegrees: degrees,
  ...(stalled ? { stalled: true as const } : {}),
});

/** The moves up to `now`; the last is cut short where it stands. */
function cut(moves: readonly Move[], now: number): Move[] {
  return moves.filter((m) => m.from < now).map((m) => (m.to <= now ? m : { ...m, to: now, toDegrees: angleAt(moves, now) }));
}
