// What may be done to a class file: every act of a teacher as a named change with its data.
//
// One union, so that the page, an undo list and a merge of two copies speak of the same acts, and so that a sentence for each
// is demanded by the compiler. A change says what is wanted, not how the file looks after it.
// Does not know: screens, how an act is shown, where it is kept.
import type { Day, Money } from "../../base/index.ts";
import type {
  ClassFile,
  Computer,
  CountIn,
  Decision,
  Device,
  ItemKey,
  LogEntry,
  Movement,
  PowerCut,
  Pupil,
  StockLine,
  Supplier,
  SupplyLine,
} from "../file/index.ts";

/** Which meeting: class, lesson, day. */
export interface SittingRef {
  readonly class: string;
  readonly lesson: string;
  readonly date: Day;
}

export type Change =
  // the whole
  | { readonly kind: "set-about"; readonly about: string }
  | { readonly kind: "set-language"; readonly language: string }
  | { readonly kind: "set-currency"; readonly currency: string; readonly decimals: number }
  | { readonly kind: "set-chance"; readonly chance: number }
  | { readonly kind: "set-budget"; readonly budget: Money | null }
  | { readonly kind: "set-room"; readonly room: ClassFile["room"] }
  /** The whole class as it was at a moment, or as a copy of that name and it make together. The undo list keeps no `file`. */
  | { readonly kind: "restore-day"; readonly date: Day; readonly clock: number; readonly file?: ClassFile }
  | { readonly kind: "join-copy"; readonly name: string; readonly file?: ClassFile }
  // pupils and classes
  | { readonly kind: "add-class"; readonly id: string; readonly name: string; readonly teamSize: number }
  | { readonly kind: "rename-class"; readonly class: string; readonly name: string }
  | { readonly kind: "remove-class"; readonly class: string }
  | { readonly kind: "set-team-size"; readonly class: string; readonly teamSize: number }
  | { readonly kind: "set-balance"; readonly class: string; readonly balance: string | null }
  | { readonly kind: "take-roster"; readonly class: string; readonly pupils: readonly Pupil[] }
  | { readonly kind: "add-pupil"; readonly class: string; readonly name: string }
  | { readonly kind: "rename-pupil"; readonly class: string; readonly pupil: string; readonly name: string }
  /** Takes the pupil out of the whole file: lists, wishes, absences. */
  | { readonly kind: "remove-pupil"; readonly class: string; readonly pupil: string }
  | { readonly kind: "keep-apart"; readonly class: string; readonly pupils: readonly [string, string] }
  | { readonly kind: "keep-together"; readonly class: string; readonly pupils: readonly string[] }
  | { readonly kind: "drop-wish"; readonly class: string; readonly pupils: readonly string[] }
  // lessons
  | { readonly kind: "add-lesson"; readonly sitting: SittingRef; readonly start: number }
  | { readonly kind: "move-lesson"; readonly sitting: SittingRef; readonly date: Day; readonly start: number }
  | { readonly kind: "remove-lesson"; readonly sitting: SittingRef }
  /** The lessons of a class keep their days and change their order: `lessons` names them all. */
  | { readonly kind: "order-lessons"; readonly class: string; readonly lessons: readonly string[] }
  | { readonly kind: "mark-absent"; readonly sitting: SittingRef; readonly pupils: readonly string[] }
  | { readonly kind: "mark-present"; readonly sitting: SittingRef; readonly pupils: readonly string[] }
  | { readonly kind: "decide"; readonly decision: Decision }
  | { readonly kind: "undecide"; readonly decision: Decision }
  /** Things prepared for a meeting, by the code of the preparation and its place in the list. */
  | { readonly kind: "tick"; readonly sitting: string; readonly what: string }
  | { readonly kind: "untick"; readonly sitting: string; readonly what: string }
  // cupboard
  | { readonly kind: "set-kit"; readonly kit: string; readonly count: number }
  | { readonly kind: "set-stock"; readonly line: StockLine }
  | { readonly kind: "remove-stock"; readonly item: ItemKey; readonly box: string }
  /** A list that was pasted or opened: "replace" takes it as the whole stock, "add" counts it on top, "update" sets what it names. */
  | { readonly kind: "take-stock"; readonly lines: readonly StockLine[]; readonly how: "replace" | "add" | "update" }
  | { readonly kind: "move-stock"; readonly movement: Movement }
  | { readonly kind: "set-computer"; readonly computer: Computer }
  | { readonly kind: "remove-computer"; readonly id: string }
  | { readonly kind: "set-device"; readonly what: "boards" | "cables"; readonly device: Device }
  | { readonly kind: "remove-device"; readonly what: "boards" | "cables"; readonly id: string }
  /** So many alike at once, for who does not number them: those that are there stay, new ones get free ids. */
  | { readonly kind: "count-devices"; readonly what: "boards" | "cables" | "computers"; readonly count: number }
  | { readonly kind: "set-supply"; readonly line: SupplyLine }
  | { readonly kind: "remove-supply"; readonly item: ItemKey; readonly box: string }
  | { readonly kind: "add-power-cut"; readonly cut: PowerCut }
  | { readonly kind: "remove-power-cut"; readonly cut: PowerCut }
  // money
  | { readonly kind: "set-supplier"; readonly supplier: Supplier }
  | { readonly kind: "remove-supplier"; readonly id: string }
  /** What was ordered has come: one movement a line. */
  | { readonly kind: "order-came"; readonly movements: readonly Movement[] }
  // afterwards
  | { readonly kind: "count-in"; readonly counts: readonly CountIn[] }
  | { readonly kind: "log"; readonly entry: LogEntry }
  | { readonly kind: "take-back-log"; readonly entry: LogEntry };

export type ChangeKind = Change["kind"];
