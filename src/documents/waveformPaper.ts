// The waveform paper: what an oscilloscope would show of one lesson, large enough to be held up or copied on the board.
//
// Only lessons that have something a meter does not show have one: a pin that switches by itself, a capacitor, a contact that bounces.
// Does not know: how the waveform was worked out.
import { type Trace, tellingTrace } from "../bench/rehearsal/index.ts";
import { formatAmount, type Language, say } from "../language/index.ts";
import { html, user } from "./html.ts";
import { classAndDate, lessonInCourse, type PaperContent } from "./makePage.ts";
import type { RunSheetInput } from "./runSheetPaper.ts";
import { sheetWidth } from "./styleSheet.ts";
import { waveformFigure } from "./waveformFigure.ts";
import { groupOf, lessonTitle } from "./who.ts";

export interface WaveformInput extends RunSheetInput {
  readonly trace: Trace;
}

/** mm: letters that are read from the second row when the sheet is held up. */
const size = { width: sheetWidth, height: 110, letter: 4.5 };

/** @returns what the paper is made from, or null for a lesson of which a meter shows all there is. */
export function waveformInput(input: RunSheetInput): WaveformInput | null {
  const { supply } = input.planned;
  const trace = tellingTrace(input.lesson, supply === null ? {} : { supply });
  return trace === null ? null : { ...input, trace };
}

export function waveformPaper({ classFile, lesson, planned, trace }: WaveformInput, language: Language): PaperContent {
  const group = groupOf(classFile, planned.class);
  const title = lessonTitle(lesson, language);
  const [probe] = trace.probes;
  const from = formatAmount(language, Number((trace.fromMs / 1000).toPrecision(6)), "s");
  const figure = probe ? html`<div>${waveformFigure(trace, probe, language, size)}</div>` : null;
  return {
    title: say(language, "wave.titleOf", { title }),
    name: say(language, "wave.name"),
    lesson: lessonInCourse(language, group, planned.date, title),
    classAndDate: group ? classAndDate(language, group, planned.date) : null,
    classFile,
    sheets: [
      {
        for: html`${say(language, "paper.teacher")}`,
        body: html`<header class="top"><div><small>${say(language, "wave.name")}</small><h1>${user(title)}</h1></div></header>${figure}<p>${say(language, "wave.begins", { from })}</p><p>${say(language, "wave.read")}</p>`,
      },
    ],
  };
}
