// Skips the rounds of a loop that only waits.
//
// At the end of a round in which nothing happened outside, the next one is walked through (walk.ts). If all rounds up to some
// moment are alike, one is run and timed, and as many are skipped as end before that moment or the next event, less one, so that
// what the last round wrote is there as well. Nothing can tell a run with skipped rounds from one without: the moments of all
// that follows are the same to the cycle.
// Where a loop does work, the question is asked more and more seldom.
// Does not know: what the rounds do.
import type { CheckedProgram, Statement } from "../check/tree.ts";
import type { Watch } from "./coder.ts";
import type { Machine } from "./machine.ts";
import { walkRound } from "./walk.ts";

/** After this many rounds of work a loop is asked again at the latest. */
const longestPause = 1 << 14;

export function quietLoops(m: Machine, program: CheckedProgram): (loop: Statement) => Watch {
  return (loop) => {
    if (loop.do !== "while" && loop.do !== "for" && loop.do !== "doWhile") return neverSkips();
    return watchOver(m, program, loop);
  };
}

/** For tests: every round is run. */
export function neverSkips(): Watch {
  return { first: Number.POSITIVE_INFINITY, end: () => Number.POSITIVE_INFINITY };
}

function watchOver(m: Machine, program: CheckedProgram, loop: Statement & { do: "while" | "for" | "doWhile" }): Watch {
  const { clock } = m;
  const { time } = clock;
  let pause = 1;
  let effects = -1;
  /** Set while one round is timed: when it began, and up to when all rounds are alike. */
  let timing: { readonly start: number; readonly limit: number; readonly round: number } | null = null;

  const watch: Watch = {
    first: 1,
    end: (rounds) => {
      const seen = m.pins.effects + m.serial.effects;
      const isQuiet = seen === effects;
      effects = seen;
      const timed = timing;
      timing = null;
      if (!isQuiet) return rounds + 1;
      const now = time[0]!;
      if (timed !== null && timed.round === rounds - 1) {
        const length = now - timed.start;
        const count = Math.ceil((timed.limit - now) / length) - 2;
        if (now < timed.limit && length > 0 && count > 0) clock.jump(now + count * length);
        return rounds + 2;
      }
      const horizon = walkRound(m, program, loop);
      if (horizon === null) {
        pause = Math.min(longestPause, pause * 2);
        watch.first = pause;
        return rounds + pause;
      }
      pause = 1;
      watch.first = 1;
      const limit = Math.min(
        time[1]!,
        momentOf(horizon.millis, clock.whenMillis.bind(clock)),
        momentOf(horizon.micros, clock.whenMicros.bind(clock)),
      );
      timing = { start: now, limit, round: rounds };
      return rounds + 1;
    },
  };
  return watch;
}

function momentOf(ticks: number, when: (ticks: number) => number): number {
  return Number.isFinite(ticks) ? when(ticks) : ticks;
}
