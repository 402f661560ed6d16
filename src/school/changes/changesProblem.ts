// Why a change cannot be done, and what a change brought with it, as codes with data.
//
// A change that does not fit the class file is refused whole. What it drags along (wishes of a pupil who left, ticks of a lesson
// that moved) is told as effects, so that nothing vanishes unseen.
// Does not know: any language, screens.
import type { ProblemBase } from "../../base/index.ts";

type Why<Code extends string, Data extends object = object> = ProblemBase<Code, Data>;
interface Found {
  readonly found: string;
}
interface FoundNear extends Found {
  readonly near: string | null;
}

export type ChangesProblem = NotFound | BadValue | DoesNotFit;

type NotFound =
  | Why<"changes.unknownClass", FoundNear>
  | Why<"changes.unknownPupil", FoundNear & { readonly class: string }>
  | Why<"changes.unknownSitting", { readonly sitting: string }>
  | Why<"changes.unknownLesson", FoundNear>
  | Why<"changes.unknownKit", FoundNear>
  | Why<"changes.unknownItem", FoundNear>
  | Why<"changes.unknownMark", FoundNear & { readonly class: string }>
  /** What should be taken away is not in the class file. */
  | Why<"changes.notThere", Found>;

type BadValue =
  /** The change itself has not the shape of one: a fault of ours, or a damaged undo list. `found` is the place in it. */
  | Why<"changes.badChange", Found>
  | Why<"changes.emptyName">
  | Why<"changes.longText", { readonly most: number }>
  | Why<"changes.badId", Found>
  | Why<"changes.badCount", Found>
  | Why<"changes.badNumber", Found>
  | Why<"changes.badChance", Found>
  | Why<"changes.badTeamSize", Found & { readonly least: number; readonly most: number }>
  | Why<"changes.badSum", Found>
  | Why<"changes.badDay", Found>
  | Why<"changes.badTime", Found>
  | Why<"changes.badMark", Found>
  | Why<"changes.badPin", Found>
  | Why<"changes.badLanguage", Found>
  | Why<"changes.badCurrency", FoundNear>
  | Why<"changes.timesBackwards", { readonly fromClock: number; readonly toClock: number }>
  | Why<"changes.noMovement", { readonly item: string }>
  | Why<"changes.wrongSign", { readonly item: string; readonly why: string; readonly expected: "+" | "-" }>
  | Why<
      "changes.moreBackThanOut",
      { readonly item: string; readonly out: number; readonly back: number; readonly broken: number }
    >
  | Why<"changes.noPorts", { readonly computer: string }>
  | Why<"changes.notASupply", { readonly item: string }>;

type DoesNotFit =
  | Why<"changes.alreadyThere", Found>
  /** A class file holds at least one class. */
  | Why<"changes.lastClass", { readonly class: string }>
  | Why<"changes.pupilTwice", { readonly pupil: string }>
  | Why<"changes.apartAndTogether", { readonly pupils: readonly string[] }>
  | Why<"changes.togetherTooMany", { readonly pupils: readonly string[]; readonly most: number }>
  /** A new order must name each lesson of the class once. */
  | Why<"changes.notAllLessons", { readonly class: string }>
  | Why<
      "changes.lessonsOverlap",
      { readonly class: string; readonly date: string; readonly lesson: string; readonly other: string }
    >
  /** More would go from the cupboard than is there on that day. */
  | Why<"changes.takesTooMany", { readonly item: string; readonly count: number }>
  | Why<"changes.tooMany", { readonly most: number }>
  /** The class file would be larger than Benchday reads. */
  | Why<"changes.fileTooLarge">;

/** What a change brought with it. */
export type ChangeEffect =
  /** The id that something new was given. */
  | { readonly code: "idGiven"; readonly id: string; readonly name: string }
  | { readonly code: "rosterTaken"; readonly kept: number; readonly added: number; readonly left: number }
  | { readonly code: "wishesDropped"; readonly count: number }
  | { readonly code: "absencesDropped"; readonly count: number }
  | { readonly code: "balanceDropped"; readonly class: string }
  | { readonly code: "decisionsMoved"; readonly count: number }
  | { readonly code: "decisionsDropped"; readonly count: number }
  | { readonly code: "ticksMoved"; readonly count: number }
  | { readonly code: "ticksDropped"; readonly count: number }
  /** Sums were rounded to what the new currency can pay. */
  | { readonly code: "sumsRounded"; readonly count: number };
