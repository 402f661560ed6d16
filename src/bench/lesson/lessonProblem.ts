// What can be wrong with a lesson, as data. Each has the place where it stands, and where something else was meant, `near`.
//
// Does not know: sentences (language), how it was found.
import type { DocumentProblem, Place, ProblemBase } from "../../base/index.ts";

type P<Code extends string, Data extends object = object> = ProblemBase<Code, { readonly place: Place } & Data>;

/** A word that is not one of those that may stand there. */
interface Slip {
  readonly found: string;
  readonly near: string | null;
}
/** A value under its name: a parameter, a state, a figure of an expectation. */
interface ValueSlip {
  readonly name: string;
  readonly expected: string;
  readonly found: string;
}

export type LessonProblem =
  | DocumentProblem
  // The folder and its files
  | P<"lesson.fileMissing", { readonly file: string }>
  | P<"lesson.newerFormat", { readonly found: string; readonly expected: string }>
  | P<"lesson.unknownFormat", { readonly found: string; readonly expected: string }>
  | P<"lesson.idIsNotFolder", { readonly id: string; readonly folder: string }>
  | P<"lesson.needsItself", { readonly id: string }>
  | P<"lesson.badPath", { readonly found: string }>
  | P<"lesson.mediaMissing", { readonly file: string }>
  // Parts
  | P<"lesson.badPartName", { readonly found: string }>
  | P<"lesson.reservedName", { readonly found: string }>
  | P<"lesson.unknownPart", Slip>
  | P<"lesson.unknownParameter", Slip & { readonly part: string }>
  | P<"lesson.missingParameter", { readonly part: string; readonly name: string }>
  | P<"lesson.notAQuantity", ValueSlip>
  | P<"lesson.wrongUnit", ValueSlip>
  | P<"lesson.unitMissing", ValueSlip>
  | P<
      "lesson.outOfRange",
      { readonly name: string; readonly found: string; readonly least: number; readonly most: number; readonly unit: string }
    >
  | P<"lesson.unknownWord", ValueSlip & { readonly near: string | null }>
  | P<"lesson.nothingMayBe", { readonly part: string }>
  // Nets
  | P<"lesson.badLeg", { readonly found: string }>
  | P<"lesson.noSuchPart", Slip>
  | P<"lesson.unknownLeg", Slip & { readonly part: string; readonly expected: string }>
  | P<"lesson.legTwice", { readonly leg: string; readonly firstLine: number }>
  | P<"lesson.lonelyLeg", { readonly leg: string }>
  | P<"lesson.emptyNet">
  | P<"lesson.joinedLegsApart", { readonly leg: string; readonly other: string; readonly firstLine: number }>
  | P<"lesson.partBridged", { readonly part: string }>
  | P<"lesson.partUnconnected", { readonly part: string }>
  // The rehearsal
  | P<"lesson.emptyStep">
  | P<"lesson.timeMissing">
  | P<"lesson.timesMixed">
  | P<"lesson.beforeStart", { readonly found: string }>
  | P<"lesson.endsBeforeItBegins", { readonly from: string; readonly to: string }>
  | P<"lesson.unknownStimulus", Slip>
  | P<"lesson.unknownState", Slip & { readonly part: string; readonly expected: string }>
  | P<"lesson.stateIsInner", { readonly part: string; readonly state: string }>
  | P<"lesson.unknownExpectation", Slip & { readonly part: string; readonly expected: string }>
  | P<"lesson.nothingToNotice", { readonly part: string }>
  | P<"lesson.unknownLight", Slip & { readonly part: string; readonly expected: string }>
  | P<"lesson.lightMissing", { readonly part: string; readonly expected: string }>
  | P<"lesson.unknownFigure", Slip & { readonly part: string; readonly expected: string }>
  | P<"lesson.emptyExpectation", { readonly part: string; readonly expected: string }>
  // Plan, program, texts
  | P<"lesson.minutesDiffer", { readonly minutes: number; readonly sum: number }>
  | P<"lesson.noteWithoutSection", { readonly note: string }>
  | P<"lesson.programEmpty", { readonly file: string }>
  | P<"lesson.programTooLong", { readonly file: string; readonly most: number; readonly found: number }>
  | P<
      "lesson.programDiffers",
      { readonly expected: string; readonly found: string; readonly original: string; readonly line: number }
    >
  | P<"lesson.textMissing", { readonly folder: string }>
  | P<"lesson.textTooLong", { readonly file: string; readonly most: number; readonly found: number }>
  | P<"lesson.titleMissing">
  | P<"lesson.unknownHeading", Slip & { readonly expected: string }>
  | P<"lesson.headingTwice", { readonly heading: string; readonly firstLine: number }>
  | P<"lesson.headingMissing", { readonly heading: string }>
  | P<"lesson.textOutsideSection", { readonly found: string }>;

/** Collects problems while a lesson is read. */
export type Report = (problem: LessonProblem) => void;
