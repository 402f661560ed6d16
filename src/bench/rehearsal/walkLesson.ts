// A lesson's program, or another one, walked through against the lesson's circuit: where it stands, and what a person sees then.
//
// The circuit is fed by a supply that carries everything, so that the walk is about the program and never ends at a weak port.
// What nobody can foresee reads low. Stimuli are the lesson's own, or others in their place: somebody's hand at the table.
// Does not know: checks, screens.
import type { Lesson, Stimulus, StimulusStep } from "../lesson/index.ts";
import { type BoardPort, type Program, parseProgram, runProgram, type Walk, walkProgram } from "../program/index.ts";
import { makeBuild } from "./build.ts";
import { circuitShelf } from "./circuitShelf.ts";
import { followCircuit } from "./followCircuit.ts";
import { rounded } from "./observe.ts";
import { perceive } from "./perceive.ts";
import { endOf, type Player, playRuns } from "./playRuns.ts";
import { playWorld } from "./playWorld.ts";
import { strongSupply } from "./rehearseOnce.ts";
import type { ItemKey, Observation, RehearsalProblem } from "./result.ts";
import { setTable } from "./table.ts";

/** Something that a hand does at the table: s since the board left reset. */
export interface HandAct {
  readonly at: number;
  readonly stimulus: Stimulus;
}

export interface WalkLessonOptions {
  /** In place of the lesson's program; it compiles. */
  readonly program?: Program;
  /** In place of the lesson's stimuli. */
  readonly acts?: readonly HandAct[];
  /** When the walk ends, s. Without, the end of the lesson's rehearsal; with `acts`, ten minutes. */
  readonly seconds?: number;
  readonly items?: ReadonlyMap<string, ItemKey>;
  readonly seed?: number;
}

export interface LessonWalk {
  readonly walk: Walk;
  /** When the walk ends, s. */
  readonly seconds: number;
  /** What each part shows where the walk stands now, as if the program stood still there. */
  seen(): readonly Observation[];
}

const tenMinutes = 600;
/** Steps of a walk. A key that is polled for ten minutes takes half of them; of a pin that is switched all the time, a second. */
const mostSteps = 200_000;
/** s that the program stands still, so that the eye can settle (seeLight.ts: 20 ms) and a short light counts. */
const look = 0.1;

/** @returns the walk at its beginning, or null with the reason why there is none. Never throws for any lesson. */
export function walkLesson(
  lesson: Lesson,
  options: WalkLessonOptions = {},
): { readonly value: LessonWalk | null; readonly problems: readonly RehearsalProblem[] } {
  const { acts, seed = 1 } = options;
  const program = options.program ?? parseProgram(lesson.program.file, lesson.program.text).value;
  if (program === null) return { value: null, problems: [{ code: "rehearsal.programHasErrors", line: 0 }] };
  const { build, problems } = makeBuild(lesson, { supply: strongSupply, ...(options.items ? { items: options.items } : {}) });
  if (build === null) return { value: null, problems };
  const table = setTable(build, circuitShelf());
  const stimuli = acts === undefined ? lesson.stimuli : acts.map(stepOf);
  const seconds = options.seconds ?? (acts === undefined ? endOf(lesson) : tenMinutes);
  const player: Player = (to, until, chance) => runProgram(program, to, { until, seed: chance });
  const runs = playRuns({ ...lesson, stimuli: stimuli.filter(({ at }) => at <= endOf(lesson)) }, table, player, seed);
  // Only a circuit in which it makes a difference is followed: that costs more, and a walk is played again and again.
  const isFollowed = runs.some((run) => run.segments.some((s) => s.scene.followed !== undefined));
  const world = (steps: readonly StimulusStep[], end: number) => {
    const circuit = isFollowed ? followCircuit(table) : null;
    return playWorld({ ...lesson, stimuli: steps }, table, { inputs: "low", supply: "holds" }, end, seed, circuit);
  };
  const port = (): BoardPort => {
    const plain = world(stimuli, seconds).port(0);
    return acts === undefined ? plain : ticking(plain);
  };
  const walk = walkProgram(program, port, { seed, until: seconds * 1e6, mostSteps });
  return {
    value: {
      walk,
      seconds,
      seen() {
        const now = walk.now.micros / 1e6;
        // What is set later has not happened.
        const played = world(
          stimuli.filter(({ at }) => at <= now),
          now + look,
        );
        // What the last statement did lands at this very moment; the next one takes at least a cycle.
        const outcome = runProgram(program, played.port(0), { until: walk.now.micros + cycleMicros / 4, seed });
        const history = played.history();
        // A figure is that of now, not the mean since the lamp was lit.
        // What is followed in time keeps its beginning, from which it is reckoned.
        const segments = history.segments
          .filter((s) => s.to > now)
          .map((s) => (s.scene.followed === undefined ? { ...s, from: Math.max(s.from, now) } : s));
        const spans = perceive(build, { ...history, segments, outcome });
        return [...spans].flatMap(([part, list]): Observation[] => {
          const span = list.find(({ to }) => to > now + justNow);
          return span ? [{ ms: now * 1000, part, seen: span.seen, figures: rounded(span.figures) }] : [];
        });
      },
    },
    problems: [],
  };
}

/** s within which a change that the program has just made is there. */
const justNow = 1e-4;

/** One cycle of the chip at 16 MHz, µs. */
const cycleMicros = 1 / 16;
/** µs. A loop that waits for a hand is not skipped over more than this, because the hand decides when it is enough. */
const tickMicros = 100_000;

/** The same world, in which at least every tick something may happen: where a walk stands does not hang on what a hand does later. */
function ticking(port: BoardPort): BoardPort {
  let next = tickMicros;
  return {
    ...port,
    nextEvent: () => Math.min(next, port.nextEvent()),
    reach(now) {
      if (now >= next) next = (Math.floor(now / tickMicros) + 1) * tickMicros;
      return port.reach(now);
    },
  };
}

const stepOf = ({ at, stimulus }: HandAct): StimulusStep => ({
  at,
  stimuli: [stimulus],
  place: { file: "", line: 0, column: 0 },
});
