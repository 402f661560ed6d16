// A problem report: what this page is, where it runs and what went wrong, as a text that a person can read before giving it away.
//
// No names, no lessons, no sums, nothing of the class but how much of each there is. Nothing is sent.
// Does not know: who reads it, how it is saved.
import { formatNumber, type Language, say } from "../../../language/index.ts";
import type { Held } from "./lookInto.ts";

export interface ReportFacts {
  readonly version: string;
  /** What the browser says of itself. */
  readonly browser: string;
  readonly window: { readonly width: number; readonly height: number };
  /** "file:" or "https:". */
  readonly openedFrom: string;
  readonly runs: "worker" | "page" | "not yet";
  /** Key under `keeping`, or null. */
  readonly storageTrouble: string | null;
  readonly persistent: boolean;
  readonly keptWord: string;
  /** Keys under `engine`. */
  readonly troubles: readonly string[];
  readonly lastKinds: readonly string[];
  /** Null where no class is open. */
  readonly holds: ReadonlyMap<Held, number> | null;
}

/** @returns lines of text, with a line end at the end. */
export function problemReport(language: Language, facts: ReportFacts): string {
  const lines = [
    say(language, "report.heading", { version: facts.version }),
    say(language, "report.noNames"),
    "",
    say(language, "report.browser", { browser: facts.browser }),
    say(language, "report.window", { width: facts.window.width, height: facts.window.height }),
    say(language, "report.openedFrom", { from: facts.openedFrom.replace(/:$/, "") }),
    say(language, "report.language", { tag: language.tag }),
    say(language, "report.runs", { runs: facts.runs }),
    say(language, "report.storage", { trouble: facts.storageTrouble ?? "none", persistent: facts.persistent ? "yes" : "no" }),
    say(language, "report.kept", { state: facts.keptWord }),
    say(language, "report.troubles", { list: facts.troubles.length > 0 ? facts.troubles : "—" }),
    say(language, "report.lastKinds", { list: facts.lastKinds.length > 0 ? facts.lastKinds : "—" }),
    "",
    ...(facts.holds === null
      ? [say(language, "report.noClass")]
      : [...facts.holds].map(([what, count]) => `${say(language, `fileHolds.${what}`)}: ${formatNumber(language, count)}`)),
    "",
    say(language, "report.write"),
    "",
  ];
  return `${lines.join("\n")}\n`;
}
