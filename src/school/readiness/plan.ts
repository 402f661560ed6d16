// The plan: for each lesson of each class on its day, whether it can be held, why not, what helps, and what to prepare.
//
// Does not know: words, papers, how it was found.
import type { Day } from "../../base/index.ts";
import type { ReadinessWord, RehearsalResult } from "../../bench/rehearsal/index.ts";
import type { Rota, Team } from "../classroom/index.ts";
import type { ItemKey } from "../file/index.ts";
import type { SittingStock } from "../stock/index.ts";

/** The figures behind a code. A list is a list of its kind: teams, parts, items. */
export type Figures = Readonly<Record<string, string | number | readonly (string | number)[]>>;

/** Why a verdict is what it is, as a code with its figures. The figures that each code carries stand behind it. */
export type ReasonCode =
  /** hazard, part, value, limit, unit */
  | "hazard"
  /** line, expected, seen: how many checks fail with the parts on hand */
  | "checks-fail"
  /** nets: what nobody can foresee */
  | "checks-undetermined"
  /** team, part, item, insteadOf: the parts on hand together fail */
  | "combination-fails"
  /** supply: the usual one, why it does not do, count: of those that do, teams */
  | "no-supply-fits"
  /** item, count, wanted */
  | "part-short"
  /** device, count, wanted: boards, data cables or computers that work */
  | "device-short"
  /**
   * minutes, fromClock, toClock, computers that work, tried and untried on battery, count: those that last through a power cut;
   * some team has none even if two share
   */
  | "battery-short"
  /** count: computers that work, teams: that use them, two at one where they must */
  | "computers-shared"
  /** the same, where two teams at one computer are enough */
  | "battery-shared"
  /** lesson: the folder is not there or has errors */
  | "lesson-unreadable"
  /** class: nobody is on its list, so nobody can say what is needed */
  | "no-pupils"
  /** part: how it behaves in time is not modelled */
  | "not-modelled"
  /** chance, wanted */
  | "chance-low"
  /** part, item, insteadOf, teams: stands in, proven by rehearsal */
  | "substitute-used"
  /** supplies: others than the usual port are used and fit */
  | "other-supply-used"
  /** classes: others that meet at the same time and take from the same cupboard; what all need is added up */
  | "cupboard-shared-at-once"
  /** lesson: an earlier lesson that this one builds on has no date before it */
  | "earlier-lesson-missing"
  /** lesson, verdict: an earlier lesson that this one builds on cannot be held as things are */
  | "earlier-lesson-not-ready"
  /** hazard, part, value, limit, unit */
  | "caution"
  /** the same, where enough machines last */
  | "power-cut";

export interface Reason {
  /** The verdict that this reason alone would give; "ready" for what is only worth knowing. */
  readonly verdict: ReadinessWord;
  readonly code: ReasonCode;
  readonly data: Figures;
}

/** What helps. `by` is the last day on which it helps. */
export type RemedyCode =
  /** item, count */
  | "order"
  /** item, count: to reach the chance that the class file asks for */
  | "order-spares"
  /** supply, count */
  | "get-supply"
  /** part, item */
  | "find-other-value"
  /** lesson: teach it first */
  | "hold-earlier-lesson"
  /** device, count */
  | "mend-or-borrow"
  /** date */
  | "move-away-from-cut"
  /** teams */
  | "share-computers"
  /** lesson */
  | "mend-lesson";

export interface Remedy {
  readonly code: RemedyCode;
  readonly data: Figures;
  readonly by: Day | null;
}

/** One thing to do before a lesson, in the order in which to do it. */
export type PreparationCode =
  /** lesson: build it once yourself */
  | "try-it-yourself"
  /** what is to be bought must be ordered by this day: item, count */
  | "order-by"
  /** device: boards and cables to look at, count */
  | "check-devices"
  /** what, count, minutes */
  | "charge"
  /** team papers: count */
  | "print-papers"
  /** trays: count */
  | "set-out-trays"
  /** cautions */
  | "read-cautions"
  /** item, part, teams: say it to the teams */
  | "tell-substitutes";

export interface Preparation {
  readonly sitting: string;
  /** The day on which to do it at the latest. */
  readonly date: Day;
  readonly code: PreparationCode;
  readonly data: Figures;
}

export interface TrayItem {
  readonly item: ItemKey;
  readonly count: number;
  /** Part names in the circuit; empty for board, breadboard, wires. */
  readonly parts: readonly string[];
  /** The item that the lesson asks for, if this one stands in. */
  readonly insteadOf: ItemKey | null;
  readonly box: string;
}

export interface Tray {
  readonly team: number;
  readonly items: readonly TrayItem[];
  readonly missing: readonly { readonly item: ItemKey; readonly count: number; readonly parts: readonly string[] }[];
}

export interface PlannedLesson {
  /** "7b/barrier/2027-03-04". */
  readonly id: string;
  readonly class: string;
  readonly lesson: string;
  readonly date: Day;
  /** Minutes after midnight. */
  readonly start: number;
  readonly verdict: ReadinessWord;
  readonly reasons: readonly Reason[];
  readonly remedies: readonly Remedy[];
  /** Chance that every team works in the lesson: has all of set, board, cable, computer, supply and parts working. */
  readonly chance: number;
  readonly short: readonly { readonly part: ItemKey; readonly count: number }[];
  readonly teams: readonly Team[];
  readonly moved: readonly string[];
  readonly trays: readonly Tray[];
  readonly stock: SittingStock;
  /** Null where the lesson could not be read. */
  readonly rehearsal: RehearsalResult | null;
  /** Item of the supply that the teams use, or null where none on hand fits. */
  readonly supply: ItemKey | null;
}

export interface Plan {
  readonly lessons: readonly PlannedLesson[];
  readonly prepare: readonly Preparation[];
  /** The rota of each class, one entry a lesson in the order of their dates. */
  readonly rotas: readonly { readonly class: string; readonly rota: Rota }[];
}
