// Words for what a rehearsal saw and what was set, with their figures.
//
// Does not know: rows, drawings.
import type { LegRef, Stimulus } from "../../../bench/lesson/index.ts";
import type { Observation } from "../../../bench/rehearsal/index.ts";
import { formatAmount, type Language, say, sayUnchecked } from "../../../language/index.ts";

/** "lit, 12 mA"; the figure that a person could measure or hear. */
export function seenWords(language: Language, { part, seen, figures }: Observation): string {
  if (part === "text") return seen;
  const word = seenWord(language, seen);
  const figure =
    typeof figures.hertz === "number"
      ? formatAmount(language, figures.hertz, "Hz")
      : typeof figures.amps === "number" && figures.amps > 5e-4
        ? formatAmount(language, figures.amps, "A")
        : null;
  const withFigure = figure === null ? word : say(language, "lessonPage.seenWith", { seen: word, figure });
  if (typeof figures.loudness !== "string") return withFigure;
  return say(language, "lessonPage.seenWith", {
    seen: withFigure,
    figure: sayUnchecked(language, `loudness.${figures.loudness}`),
  });
}

/** A word of the catalogue, or "90 degrees". */
export function seenWord(language: Language, seen: string): string {
  const degrees = /^(-?[\d.]+) degrees$/.exec(seen);
  if (degrees) return sayUnchecked(language, "seen.degrees", { degrees: Number(degrees[1]) });
  return language.text(`seen.${seen}`) === null ? seen : sayUnchecked(language, `seen.${seen}`);
}

/** "LDR1 at 8 lx", "supply off". */
export function setWords(language: Language, stimulus: Stimulus): string {
  if (stimulus.kind === "text") return say(language, "lessonPage.textSent", { text: stimulus.text });
  if (stimulus.kind === "supply") return say(language, stimulus.on ? "lessonPage.supplyOn" : "lessonPage.supplyOff");
  const { part, state, value } = stimulus;
  return sayUnchecked(language, `state.${state}`, { part, on: String(value), [state]: value });
}

/** "D9" for a pin of the board, "LED1 anode", "R1 leg 2". */
export function legWords(language: Language, { part, leg }: LegRef): string {
  if (part === "board") return say(language, "lessonPage.pin", { leg });
  return say(language, /^\d/.test(leg) ? "lessonPage.numberedLeg" : "lessonPage.namedLeg", { part, leg });
}
