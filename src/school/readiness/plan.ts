// The plan: for each lesson of each class on its day, whether it can be held, why not, what helps, and what to prepare.
//
// Does not know: words, papers.
import type { Day } from "../../base/index.ts";
import type { ReadinessWord, RehearsalResult } from "../../bench/rehearsal/index.ts";
import type { Team } from "../classroom/index.ts";
import type { ItemKey } from "../file/index.ts";
import type { SittingStock } from "../stock/index.ts";

/** Why a verdict is what it is: a code with its figures. */
export interface Reason {
  readonly verdict: ReadinessWord;
  /** hazard, check-failed, check-undetermined, supply-does-not-fit, part-short, chance-too-low, computer-short, battery-too-short, substitute-used … */
  readonly code: string;
  readonly data: Readonly<Record<string, string | number>>;
}

/** What helps: a code with its figures; `by` is the last day on which it helps. */
export interface Remedy {
  /** order, use-substitute, use-supply, borrow, charge, move-lesson, read-cautions … */
  readonly code: string;
  readonly data: Readonly<Record<string, string | number>>;
  readonly by: Day | null;
}

/** One thing to do before the lesson. */
export interface Preparation {
  readonly sitting: string;
  readonly date: Day;
  /** order, charge, print, check-boards, set-out-trays, try-it-yourself, read-cautions */
  readonly code: string;
  readonly data: Readonly<Record<string, string | number>>;
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
  readonly chance: number;
  readonly short: readonly { readonly part: ItemKey; readonly count: number }[];
  readonly teams: readonly Team[];
  readonly moved: readonly string[];
  readonly trays: readonly Tray[];
  readonly stock: SittingStock;
  readonly rehearsal: RehearsalResult;
  /** Item of the supply that the teams use. */
  readonly supply: ItemKey | null;
}

export interface Plan {
  readonly lessons: readonly PlannedLesson[];
  readonly prepare: readonly Preparation[];
  /** For each class: lessons without a pair twice, and the bound. */
  readonly rotas: readonly { readonly class: string; readonly fresh: number; readonly bound: number }[];
}
