// benchday rehearse LESSON: what a person would see, which checks pass, what is stressed, which supplies carry it.
//
// With a class file the parts and supplies that the class owns are tried as well.
// Does not know: how a rehearsal works.
import type { Day, Unit } from "../../base/index.ts";
import type { Hazard, Margin, RehearsalResult, SupplyResult, VariantWhat } from "../../bench/rehearsal/index.ts";
import { formatAmount, itemName, type Language, sayUnchecked } from "../../language/index.ts";
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
  wrap,
} from "../output.ts";
import { type TraceOptions, traceCommand } from "./trace.ts";

export interface RehearseOptions {
  readonly classPath: string | null;
  readonly today: Day;
  readonly seed: number;
  /** Voltage and current over time in place of the whole rehearsal. */
  readonly trace: TraceOptions | null;
}

export function rehearseCommand(path: string, options: RehearseOptions, talk: Talk): ExitStatus {
  const fail = (problems: readonly SpokenProblem[]): ExitStatus => {
    if (talk.json)
      printJson({
        verdict: "not rehearsed yet",
        observations: [],
        checks: [],
        hazards: [],
        doubts: [],
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
  if (options.trace !== null) return traceCommand(lesson.value, lesson.problems, options.trace, talk);
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
  /** Paragraphs: the first line of each tells what it is, the rest stands below it. */
  const blocks = (key: string, rows: readonly (readonly string[])[]) => {
    if (rows.length === 0) return;
    print();
    print(bold(say(key)));
    for (const [first = "", ...rest] of rows) print([wrap(first, "  "), ...rest.map((line) => wrap(line, "    "))].join("\n"));
  };
  print(bold(`${result.lesson}: ${sayUnchecked(language, `verdict.${result.verdict}`)}`));
  section(
    "seen",
    result.observations.map((o) => [seconds(o.ms), o.part, o.part === "text" ? o.seen : seenWithFigures(o, language)]),
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
  blocks(
    "hazards",
    result.hazards.map((h) => hazardWords(h, language)),
  );
  blocks(
    "doubts",
    result.doubts.map((d) => [
      sayUnchecked(language, `doubt.${d.code}`, { ...d, supply: d.place, steps: Math.ceil(d.steps ?? 0) }),
      sayUnchecked(language, `doubtTry.${d.code}`),
    ]),
  );
  blocks(
    "supplies",
    result.supplies.map((s) => supplyWords(s, language)),
  );
  section(
    "readings",
    result.readings.map((r) => [seconds(r.ms), `${r.at.part}.${r.at.leg}`, formatAmount(language, r.volts, "V")]),
  );
  section(
    "variants",
    unlike(
      result.variants
        .filter((v) => v.what.kind !== "corner" || v.verdict !== "ready")
        .map((v) => [variantWords(v.what, language), sayUnchecked(language, `verdict.${v.verdict}`)]),
    ),
  );
  section(
    "margins",
    result.margins.map((m) => [marginWords(m, language)]),
  );
}

/** "sounding, 440 Hz, clear", "blinking, 2 Hz". */
function seenWithFigures({ seen, figures }: RehearsalResult["observations"][number], language: Language): string {
  const words = [seenWord(seen, language)];
  if (typeof figures.hertz === "number") words.push(formatAmount(language, Number(figures.hertz.toPrecision(3)), "Hz"));
  if (typeof figures.loudness === "string") words.push(sayUnchecked(language, `loudness.${figures.loudness}`));
  return words.join(", ");
}

const seenWord = (seen: string, language: Language) =>
  /^\S+ degrees$/.test(seen)
    ? formatAmount(language, Number.parseFloat(seen), "°C" as Unit).replace(" °C", "°")
    : sayUnchecked(language, `seen.${seen}`);

/** What is stressed, and what to do now. */
function hazardWords(h: Hazard, language: Language): readonly string[] {
  const data = { part: h.part, value: h.value, limit: h.limit, unit: h.unit, source: h.source };
  return [
    `${sayUnchecked(language, `severity.${h.severity}`)}: ${sayUnchecked(language, `hazard.${h.code}`, data)}`,
    sayUnchecked(language, `hazardTry.${h.code}`, data),
    sayUnchecked(language, "rehearsing.limitFrom", data),
  ];
}

/** Whether a supply does, why not, how far it sags, what gets warm, how long it lasts. */
function supplyWords(s: SupplyResult, language: Language): readonly string[] {
  const say = (key: string, data: Record<string, unknown>) => sayUnchecked(language, `rehearsing.${key}`, data);
  const why = s.why.map((w) => sayUnchecked(language, `supplyWhy.${w}`)).join(", ");
  return [
    `${itemName(language, s.supply)}: ${sayUnchecked(language, `fits.${s.fits}`)}${why === "" ? "" : ` (${why})`}`,
    say("load", { meanAmps: s.amps, peakAmps: s.peakAmps, leastVolts: s.leastVolts, atMs: s.leastVoltsMs }),
    ...(s.cableMetres === null ? [] : [say(cableKey(s.cableMetres), { cableMetres: Math.floor(s.cableMetres * 10) / 10 })]),
    ...(s.hottest ? [say("hottest", { ...s.hottest, touch: sayUnchecked(language, `touch.${s.hottest.touch}`) })] : []),
    ...(s.hours === null || s.fits === "does not fit" ? [] : [say("lasts", { hours: s.hours, lessons: s.lessons })]),
  ];
}

const cableKey = (metres: number) => (metres >= 5 ? "cableAny" : metres < 0.3 ? "cableNone" : "cable");

/** From which value to which the lesson works; a tenth and ten times are as far as it was tried. */
function marginWords(m: Margin, language: Language): string {
  const key = m.down === null ? (m.up === null ? "anyValue" : "upTo") : m.up === null ? "downTo" : "between";
  const data = { part: m.part, is: m.is, least: m.is * (m.down ?? 0.1), most: m.is * (m.up ?? 10), unit: m.unit };
  return sayUnchecked(language, `rehearsing.${key}`, data);
}

function variantWords(what: VariantWhat, language: Language): string {
  if (what.kind === "value") return `${what.part}: ${itemName(language, what.item)}`;
  if (what.kind === "supply") return itemName(language, what.supply);
  return what.kind === "corner" ? cornerWords(what.corner, language) : sayUnchecked(language, "rehearsing.nominal");
}

/** Each row once: corners of several states of the circuit read the same. */
function unlike(rows: readonly (readonly string[])[]): readonly (readonly string[])[] {
  return [...new Map(rows.map((row) => [row.join("  "), row])).values()];
}

/** "least LED1.amps 5" in words; the number tells states of the circuit apart and helps nobody who builds it. */
function cornerWords(corner: string, language: Language): string {
  const [way = "", figure = ""] = corner.split(" ");
  if (way !== "least" && way !== "most") return sayUnchecked(language, "rehearsing.sample");
  return sayUnchecked(language, `rehearsing.${way}`, { figure: figure.replace(/\.(amps|volts)$/, "") });
}
