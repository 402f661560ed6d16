// What the catalogue knows of one kind of part.
//
// One file a kind, so that a part is added by adding a file and a line in the list. Electrical truth is a function from
// values and state to circuit elements; everything else is data. Each figure names its source beside it.
// Does not know: lessons, classes, programs, where a part is placed.
import type { Element, NodeName } from "../circuit/index.ts";

/** A leg as lessons write it: "anode", "1", "wiper". */
export type LegName = string;

/** Where a figure comes from: a data sheet, a standard, "common practice, no source", or "from memory". */
export interface Sourced<Value> {
  readonly value: Value;
  readonly source: string;
}

export interface ParameterSpec {
  /** Unit of the number inside; "1" is a bare number, "word" one of `words`. */
  readonly unit: import("../../base/index.ts").Unit | "word";
  readonly words?: readonly string[];
  /** Used when a lesson names none; null means that a lesson must name it. */
  readonly usual: Sourced<number | string> | null;
  readonly least?: number;
  readonly most?: number;
  /** Two parts that differ in it are two items of stock: "resistor 220", "led red". */
  readonly tellsApart?: boolean;
  /** Share by which real parts differ from the printed value, 0.05 for ±5 %. */
  readonly tolerance?: Sourced<number>;
}

/** What a stimulus can set on a part ("B1.pressed: true"), with the state it has before any is set. */
export interface StateSpec {
  readonly unit: import("../../base/index.ts").Unit | "yes-no" | "position";
  readonly atFirst: number | boolean;
  readonly least?: number;
  readonly most?: number;
}

/** Holes that legs need, in rows (down) and columns (across) of 2.54 mm from the first leg. `free`: bent to any two rows. */
export interface Footprint {
  readonly style: "free" | "fixed" | "ditch" | "beside";
  readonly legs: readonly { readonly leg: LegName; readonly row: number; readonly column: number }[];
  readonly source: string;
}

/** A limit of the data sheet. Caution: over what is recommended or tested; unsafe: over an absolute maximum. */
export interface Limit {
  readonly what: "amps" | "watts" | "reverseVolts" | "volts";
  readonly caution?: Sourced<number>;
  readonly unsafe?: Sourced<number>;
  /** The element whose figure is judged; the part's own id where it is left out. */
  readonly element?: string;
}

/** What a person can notice at a part, judged by the rehearsal. */
export type Noticing =
  | {
      readonly sense: "light";
      readonly element: string;
      readonly dimAmps: number;
      readonly litAmps: number;
      readonly tooBrightAmps: number;
      readonly source: string;
    }
  | { readonly sense: "sound"; readonly own: boolean }
  | { readonly sense: "angle" }
  | { readonly sense: "turning"; readonly element: string; readonly startAmps: number }
  | { readonly sense: "contact"; readonly element: string; readonly pullInVolts: number; readonly dropOutVolts: number };

/** Values of one part in one circuit: numbers in SI, words as text. */
export type PartValues = Readonly<Record<string, number | string>>;
/** State that stimuli set, such as pressed or lux. */
export type PartState = Readonly<Record<string, number | boolean>>;

/** How the part looks to the circuit now. Element ids start with the part's name: `name` or `name.something`. */
export type ElectricalModel = (
  name: string,
  node: (leg: LegName) => NodeName,
  values: PartValues,
  state: PartState,
) => readonly Element[];

export type PriceClass = "a" | "b" | "c" | "d" | "e" | "f";
/** Loss a school year: L0 < 1 %, L1 1–3 %, L2 3–10 %, L3 10–25 %, L4 > 25 %. */
export type LossClass = "L0" | "L1" | "L2" | "L3" | "L4";

export interface PartKind {
  /** As lessons write it: "resistor", "led". */
  readonly id: string;
  /** Types that are this kind with certain values: "BC547" is an npn. */
  readonly types?: Readonly<Record<string, PartValues>>;
  readonly legs: readonly LegName[];
  /** Legs that are joined inside: a button's "1" and "1b". */
  readonly joined?: readonly (readonly LegName[])[];
  /** The leg that matters when it is put in, or null if it may be turned round. */
  readonly markedLeg: LegName | null;
  readonly parameters: Readonly<Record<string, ParameterSpec>>;
  readonly states: Readonly<Record<string, StateSpec>>;
  readonly footprint: Footprint;
  readonly model: ElectricalModel;
  readonly limits: readonly Limit[];
  readonly noticed: readonly Noticing[];
  /** Other items that may be tried in its place; a rehearsal has to prove each. Text is read by people who add parts. */
  readonly standIns: readonly { readonly part: string; readonly when: string; readonly source: string }[];
  /** Current drawn outside its legs' resistive model, in A: a servo's idle, moving and stalled current. */
  readonly draws?: Readonly<Record<string, Sourced<number>>>;
  readonly price: PriceClass;
  readonly loss: LossClass;
  /** Codes of hazards that belong to handling, spoken by `language`: "shorted-battery", "button-cell", "hot-when-reversed". */
  readonly cautions: readonly string[];
  /** Codes of the tests with a meter, spoken by `language`. */
  readonly meterTest: string | null;
  readonly source: string;
}
