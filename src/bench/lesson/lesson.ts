// A lesson as it is after reading: checked, in SI, with the place of each thing in its file.
//
// Does not know: YAML, the rehearsal, classes.
import type { Place } from "../../base/index.ts";
import type { PartValues } from "../parts/index.ts";

/** One part of the circuit, by the name it has there ("R1"). The board is in it as "board". */
export interface LessonPart {
  readonly name: string;
  /** Kind in the catalogue. */
  readonly kind: string;
  /** All parameters, the usual ones filled in. */
  readonly values: PartValues;
  /** Values of the distinguishing parameter that the author allows instead (`may-be`): SI, or words such as a colour. */
  readonly mayBe: readonly (number | string)[];
  /** Key of the item of stock that fits exactly: "resistor 220". */
  readonly item: string;
  readonly place: Place;
}

export interface LegRef {
  readonly part: string;
  readonly leg: string;
}

export interface Net {
  readonly legs: readonly LegRef[];
  readonly place: Place;
}

/** Something set from outside at a moment. */
export type Stimulus =
  | { readonly kind: "state"; readonly part: string; readonly state: string; readonly value: number | boolean }
  | { readonly kind: "text"; readonly text: string }
  | { readonly kind: "supply"; readonly on: boolean };

/** What an author expects a person to notice. Figures are SI; a tolerance is a share (0.1 for 10 %). */
export type Expectation =
  | {
      readonly kind: "part";
      readonly part: string;
      /** One light of several in a part: "a" for `SEG1.a: lit`. */
      readonly element?: string;
      /** dark, dim, lit, too bright, blinking, silent, sounding, stopped, turning, turning back, stalled, on, off; null if only figures count. */
      readonly seen: string | null;
      readonly hertz?: number;
      readonly duty?: number;
      readonly degrees?: number;
      readonly tolerance: number;
    }
  | { readonly kind: "text"; readonly is?: string; readonly contains?: string }
  | { readonly kind: "board"; readonly seen: "running" | "resets" }
  | { readonly kind: "volts"; readonly at: LegRef; readonly is: number; readonly tolerance: number };

/** When an expectation holds: at a moment, somewhere within a span, or all the way through it. Seconds. */
export type When =
  | { readonly kind: "at"; readonly at: number }
  | { readonly kind: "within"; readonly at: number; readonly within: number }
  | { readonly kind: "throughout"; readonly from: number; readonly to: number };

export interface StimulusStep {
  readonly at: number;
  readonly stimuli: readonly Stimulus[];
  readonly place: Place;
}
export interface Check {
  readonly when: When;
  readonly expectation: Expectation;
  readonly place: Place;
}

/** What is done in a lesson, in the order in which lessons usually do it. */
export const activities = ["hand-out", "talk", "build", "program", "try", "change", "present", "count-in"] as const;
export type Activity = (typeof activities)[number];

export interface PlanItem {
  readonly what: Activity;
  readonly minutes: number;
  readonly mayBeDropped: boolean;
  /** Section of the text that belongs to it, if any. */
  readonly note: SectionId | null;
}

export interface Media {
  readonly path: string;
  readonly language: string;
  readonly captions: string | null;
}

/** The headings of a lesson's text. They are ids and stay as they are in every language. */
export const sectionIds = ["teaches", "introduction", "questions", "mistakes", "follow-up", "cautions"] as const;
export type SectionId = (typeof sectionIds)[number];

/** The text in one language: headings of the Markdown file are fixed ids, bodies are Markdown. */
export interface LessonText {
  readonly language: string;
  readonly title: string;
  /** teaches, introduction, questions, mistakes, follow-up, cautions → Markdown. */
  readonly sections: ReadonlyMap<string, string>;
}

export interface ProgramFile {
  readonly file: string;
  readonly text: string;
}

export interface Lesson {
  readonly format: "benchday-lesson/1";
  readonly id: string;
  readonly minutes: number;
  readonly needs: readonly string[];
  readonly parts: ReadonlyMap<string, LessonPart>;
  readonly nets: readonly Net[];
  /** In the order of time. */
  readonly stimuli: readonly StimulusStep[];
  readonly checks: readonly Check[];
  /** What lies on the table beside the set, as the author calls it: multimeter. */
  readonly tools: readonly string[];
  readonly plan: readonly PlanItem[];
  readonly media: readonly Media[];
  readonly program: ProgramFile;
  /** The same program with comments and texts in another language, by language. */
  readonly translatedPrograms?: ReadonlyMap<string, ProgramFile>;
  readonly texts: ReadonlyMap<string, LessonText>;
}
