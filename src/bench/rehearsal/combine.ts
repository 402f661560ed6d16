// Several runs of one build, in which the doubts were settled differently, become one answer.
//
// A check that comes out the same whatever an undetermined input reads is decided; one that does not is undetermined, names what
// it hangs on, and does not pass.
// Does not know: how runs are made.
import type { Check } from "../lesson/index.ts";
import type { Build } from "./build.ts";
import { judgeCheck, stretch } from "./judgeCheck.ts";
import { readLines } from "./lastLine.ts";
import { observe, toMs } from "./observe.ts";
import { type Perceived, perceive } from "./perceive.ts";
import type { CheckResult, Observation } from "./result.ts";
import type { Run } from "./run.ts";

/** What the doubts of several runs hang on: nets, and the supply's item. */
function doubtsOf(build: Build, runs: readonly Run[]): readonly string[] {
  const nets = [...new Set(runs.flatMap((r) => r.doubtfulNets))];
  return runs.some((r) => r.doubtfulSupply) ? [...nets, build.supply.item] : nets;
}

export function combineChecks(build: Build, runs: readonly Run[], checks: readonly Check[]): readonly CheckResult[] {
  const evidence = runs.map((run) => ({ build, run, perceived: perceive(build, run), lines: readLines(run) }));
  const hangsOn = doubtsOf(build, runs);
  return checks.map((check): CheckResult => {
    const judged = evidence.map((e) => judgeCheck(check, e));
    const undetermined = judged.some((j) => j.passed !== judged[0]?.passed);
    // Of an undetermined check the way it fails is told.
    const told = judged.find((j) => !j.passed) ?? judged[0];
    return {
      ms: toMs(stretch(check.when)[0]),
      passed: !undetermined && judged.length > 0 && judged.every((j) => j.passed),
      undetermined,
      hangsOn: undetermined ? hangsOn : [],
      when: check.when,
      expected: check.expectation,
      seen: undetermined ? "undetermined" : (told?.seen ?? "undetermined"),
      figures: told?.figures ?? {},
      line: check.place.line,
    };
  });
}

/** The observations of the first run; a part that others show differently is undetermined from its first difference on. */
export function combineObservations(build: Build, runs: readonly Run[]): readonly Observation[] {
  const first = runs[0];
  if (!first) return [];
  const all = runs.map((run) => ({ run, perceived: perceive(build, run) }));
  const told = observe(all[0]?.perceived ?? new Map(), first);
  const differsFrom = new Map<string, number>();
  for (const part of [...(all[0]?.perceived.keys() ?? []), "text"]) {
    const at = Math.min(...all.slice(1).map(({ run, perceived }) => firstDifference(part, all[0]!, { run, perceived })));
    if (at < Number.POSITIVE_INFINITY) differsFrom.set(part, at);
  }
  const known = told.filter((o) => o.ms < toMs(differsFrom.get(o.part) ?? Number.POSITIVE_INFINITY));
  const doubts = [...differsFrom].map(([part, at]): Observation => ({ ms: toMs(at), part, seen: "undetermined", figures: {} }));
  return [...known, ...doubts].sort((a, b) => a.ms - b.ms);
}

interface Seen {
  readonly run: Run;
  readonly perceived: Perceived;
}

/**
 * s. Sooner or later by less is the same to a person who sees it once: a tenth of a second is what is felt as at once (common
 * practice). A capacitor at a key lets the chip's own threshold move the moment by some hundredths.
 */
const sameMoment = 0.1;

function firstDifference(part: string, a: Seen, b: Seen): number {
  const list = (s: Seen) =>
    part === "text"
      ? readLines(s.run).map((l) => ({ from: l.at, seen: l.text }))
      : (s.perceived.get(part) ?? []).map((span) => ({ from: span.from, seen: span.seen as string }));
  const [left, right] = [list(a), list(b)];
  for (let i = 0; i < Math.max(left.length, right.length); i += 1) {
    const [l, r] = [left[i], right[i]];
    if (l && r && l.seen === r.seen && Math.abs(l.from - r.from) < sameMoment) continue;
    return Math.min(l?.from ?? Number.POSITIVE_INFINITY, r?.from ?? Number.POSITIVE_INFINITY);
  }
  return Number.POSITIVE_INFINITY;
}
