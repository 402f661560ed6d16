// benchday rehearse LESSON: what a person would see, which checks pass, what is stressed, which supplies carry it.
//
// With a class file the parts and supplies that the class owns are tried as well.
// Does not know: how a rehearsal works.
import type { Day, Unit } from "../../base/index.ts";
import type { RehearsalResult, VariantWhat } from "../../bench/rehearsal/index.ts";
import { formatAmount, formatChance, itemName, type Language, sayUnchecked } from "../../language/index.ts";
import { type RehearsingSchool, rehearseForSchool } from "../../school/readiness/index.ts";
import { loadLesson, loadSchool } from "../loadFiles.ts";
import {
  bold,
  clearProgress,
  columns,
  type ExitStatus,
  print,
  printJson,
  printProblems,
  problemsAsJson,
  type SpokenProblem,
  showProgress,
  type Talk,
} from "../output.ts";

export interface RehearseOptions {
  readonly classPath: string | null;
  readonly today: Day;
  readonly seed: number;
}

export function rehearseCommand(path: string, options: RehearseOptions, talk: Talk): ExitStatus {
  const fail = (problems: readonly SpokenProblem[]): ExitStatus => {
    if (talk.json)
      printJson({
        verdict: "not rehearsed yet",
        observations: [],
        checks: [],
        hazards: [],
        supplies: [],
        readings: [],
        variants: [],
        margins: [],
        problems: problemsAsJson(problems),
      });
    else printProblems(problems, talk);
    return 1;
  };
  const lesson = loadLesson(path);
  if (lesson.value === null) return fail(lesson.problems);
  let school: RehearsingSchool | null = null;
  if (options.classPath !== null) {
    const loaded = loadSchool(options.classPath);
    if (loaded.value === null) return fail(loaded.problems);
    school = { ...loaded.value, today: options.today };
  }
  const work = rehearseForSchool(lesson.value, school, options.seed);
  for (;;) {
    const step = work.next();
    if (step.done) {
      clearProgress();
      return tell(step.value, lesson.problems, talk);
    }
    showProgress(sayUnchecked(talk.language, "progress.rehearse", { done: step.value.done + 1, total: step.value.total }));
  }
}

/** `fits` as programs want it: true, false, or null where nobody can say; `outcome` keeps the word. */
function suppliesAsJson(result: RehearsalResult): object[] {
  const fits = { fits: true, "does not fit": false, undetermined: null } as const;
  return result.supplies.map((s) => ({ ...s, fits: fits[s.fits], outcome: s.fits }));
}

function tell(result: RehearsalResult, problems: readonly SpokenProblem[], talk: Talk): ExitStatus {
  const status = result.verdict === "ready" ? 0 : 1;
  if (talk.json) {
    printJson({ ...result, supplies: suppliesAsJson(result), problems: [...problemsAsJson(problems), ...result.problems] });
    return status;
  }
  printProblems(problems, talk);
  printProblems(result.problems as unknown as SpokenProblem[], talk);
  printRehearsal(result, talk.language);
  return status;
}

function printRehearsal(result: RehearsalResult, language: Language): void {
  const say = (key: string, data: Record<string, unknown> = {}) => sayUnchecked(language, `rehearsing.${key}`, data);
  const seconds = (ms: number) => formatAmount(language, ms / 1000, "s");
  const section = (key: string, rows: readonly (readonly string[])[]) => {
    if (rows.length === 0) return;
    print();
    print(bold(say(key)));
    print(columns(rows.map((r) => [`  ${r[0]}`, ...r.slice(1)])));
  };
  print(bold(`${result.lesson}: ${sayUnchecked(language, `verdict.${result.verdict}`)}`));
  section(
    "seen",
    result.observations.map((o) => [seconds(o.ms), o.part, o.part === "text" ? o.seen : seenWord(o.seen, language)]),
  );
  section(
    "checks",
    result.checks.map((c) => [
      seconds(c.ms),
      say("line", { line: c.line }),
      c.undetermined
        ? say("undetermined", { nets: c.hangsOn })
        : c.passed
          ? say("passed")
          : say("failed", { seen: seenWord(c.seen, language) }),
    ]),
  );
  section(
    "hazards",
    result.hazards.map((h) => [
      sayUnchecked(language, `severity.${h.severity}`),
      sayUnchecked(language, `hazard.${h.code}`, { part: h.part, value: h.value, limit: h.limit, unit: h.unit }),
      "",
    ]),
  );
  section(
    "supplies",
    result.supplies.map((s) => [
      itemName(language, s.supply),
      sayUnchecked(language, `fits.${s.fits}`),
      say("load", {
        average: formatAmount(language, s.amps, "A"),
        peak: formatAmount(language, s.peakAmps, "A"),
        volts: formatAmount(language, s.leastVolts, "V"),
      }),
      s.why.map((w) => sayUnchecked(language, `supplyWhy.${w}`)).join(", "),
      s.hours === null ? "" : say("hours", { hours: s.hours }),
    ]),
  );
  section(
    "readings",
    result.readings.map((r) => [seconds(r.ms), `${r.at.part}.${r.at.leg}`, formatAmount(language, r.volts, "V")]),
  );
  section(
    "variants",
    result.variants
      .filter((v) => v.what.kind !== "corner" || v.verdict !== "ready")
      .map((v) => [variantWords(v.what, language), sayUnchecked(language, `verdict.${v.verdict}`)]),
  );
  section(
    "margins",
    result.margins.map((m) => [
      `${m.part} ${m.parameter}`,
      m.down === null ? "–" : `× ${formatChance(language, m.down)}`,
      m.up === null ? "–" : `× ${m.up.toPrecision(3)}`,
    ]),
  );
}

const seenWord = (seen: string, language: Language) =>
  /^\S+ degrees$/.test(seen)
    ? formatAmount(language, Number.parseFloat(seen), "°C" as Unit).replace(" °C", "°")
    : sayUnchecked(language, `seen.${seen}`);

function variantWords(what: VariantWhat, language: Language): string {
  if (what.kind === "value") return `${what.part}: ${itemName(language, what.item)}`;
  if (what.kind === "supply") return itemName(language, what.supply);
  return what.kind === "corner" ? what.corner : sayUnchecked(language, "rehearsing.nominal");
}
