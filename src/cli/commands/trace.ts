// benchday rehearse LESSON --trace PLACES: voltage and current over time, as the page draws them, for whoever has no page.
//
// In words a table of points, thinned to what a terminal shows, with the least and the most; in JSON every point.
// Does not know: how a waveform is worked out.
import type { Lesson } from "../../bench/lesson/index.ts";
import { type Probe, probeName, readProbe, type Trace, traceLesson } from "../../bench/rehearsal/index.ts";
import { formatAmount, sayUnchecked } from "../../language/index.ts";
import {
  bold,
  columns,
  type ExitStatus,
  print,
  printJson,
  printProblems,
  problemsAsJson,
  type SpokenProblem,
  type Talk,
} from "../output.ts";

export interface TraceOptions {
  /** "D9,LED1.anode:A". */
  readonly places: string;
  readonly fromSeconds: number;
  readonly toSeconds: number;
  readonly supply: string | null;
  readonly seed: number;
}

/** Points of one place in words; a terminal has some forty lines. */
const shownPoints = 40;

export function traceCommand(
  lesson: Lesson,
  lessonProblems: readonly SpokenProblem[],
  options: TraceOptions,
  talk: Talk,
): ExitStatus {
  const { fromSeconds, toSeconds, supply, seed } = options;
  const wanted = options.places
    .split(",")
    .map((text) => text.trim())
    .filter((text) => text !== "");
  const read = wanted.map((text) => ({ text, probe: readProbe(lesson, text) }));
  const missing = read.filter((r) => r.probe === null).map((r) => ({ code: "rehearsal.probeNotThere", probe: r.text }));
  const probes = read.flatMap(({ probe }): Probe[] => (probe ? [probe] : []));
  const request = { probes, fromMs: fromSeconds * 1000, toMs: toSeconds * 1000, seed };
  const trace = traceLesson(lesson, {
    ...request,
    ...(supply === null ? {} : { supply }),
    ...(talk.json ? {} : { mostPoints: shownPoints }),
  });
  const problems = [...lessonProblems, ...missing, ...(trace.problems as unknown as SpokenProblem[])];
  const status: ExitStatus = missing.length > 0 || trace.problems.length > 0 || probes.length === 0 ? 1 : 0;
  if (talk.json) {
    const told = trace.probes.map(({ at, unit, least, most, gaps, points }) => {
      return { at: `${at.part}.${at.leg}`, unit, least, most, gaps, points };
    });
    printJson({ lesson: lesson.id, fromMs: trace.fromMs, toMs: trace.toMs, probes: told, problems: problemsAsJson(problems) });
    return status;
  }
  printProblems(problems, talk);
  printTrace(trace, talk);
  return status;
}

function printTrace(trace: Trace, talk: Talk): void {
  const { language } = talk;
  for (const [i, probe] of trace.probes.entries()) {
    if (i > 0) print();
    const amount = (value: number) => formatAmount(language, Number(value.toPrecision(4)), probe.unit);
    print(bold(sayUnchecked(language, "tracing.heading", { place: probeName(probe) })));
    if (probe.points.length > 0)
      print(`  ${sayUnchecked(language, "tracing.range", { least: amount(probe.least), most: amount(probe.most) })}`);
    for (const [from, to] of probe.gaps)
      print(
        `  ${sayUnchecked(language, "tracing.gap", { from: `${(from * 1000).toFixed(3)} ms`, to: `${(to * 1000).toFixed(3)} ms` })}`,
      );
    const rows = probe.points.map(([seconds, value]) => [`  ${(seconds * 1000).toFixed(3)} ms`, amount(value)]);
    print(columns(rows, [0, 1]));
  }
}
