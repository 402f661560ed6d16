// What the catalogue knows of one kind of part.
//
// One file a kind, so that a part is added by adding a file and a line in the list. Electrical truth is a function from
// values and state to circuit elements; everything else is data. Each figure names its source beside it.
// Does not know: lessons, classes, programs, where a part is placed.
import type { Unit } from "../../base/index.ts";
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
  readonly unit: Unit | "word";
  /**
   * What a number without a unit counts in a file, where the parameter's name says so: 0.001 for `milliamps: 500`. Inside,
   * `values.milliamps` is 0.5 like every other ampere.
   */
  readonly bare?: number;
  readonly words?: readonly string[];
  /** Other spellings of a word: LR6 for alkaline. */
  readonly synonyms?: Readonly<Record<string, string>>;
  /** Used when a lesson names none; null means that a lesson must name it. */
  readonly usual: Sourced<number | string> | null;
  readonly least?: number;
  readonly most?: number;
  /**
   * Two parts that differ in it are two items of stock: "resistor 220", "led red". With "unlessUsual" the item's key names
   * it only where it is not the usual one: "battery-9v", "battery-9v 6F22".
   */
  readonly tellsApart?: true | "unlessUsual";
  /** Share by which real parts differ from the printed value, 0.05 for ±5 %. A lesson's own `tolerance` goes before. */
  readonly tolerance?: Sourced<number>;
}

/** What a stimulus can set on a part ("B1.pressed: true"), with the state it has before any is set. */
export interface StateSpec {
  readonly unit: Unit | "yes-no" | "position";
  readonly atFirst: number | boolean;
  readonly least?: number;
  readonly most?: number;
  /** Follows from what happens in the circuit (a relay's coil), so that no stimulus may set it. */
  readonly inner?: true;
}

/**
 * Holes that legs need, in rows (down) and columns (across) of 2.54 mm from the first leg.
 * free: bent to any two rows; fixed: all legs in one column; ditch: over the ditch, 3 columns from e to f; beside: stands
 * beside the breadboard and is joined to it by wires.
 */
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
  /** What follows the part's name in the element's id ("a" for SEG1.a); left out for the part's own id. See `elementId`. */
  readonly element?: string;
}

/** What a person can notice at a part, judged by the rehearsal. `element` as in Limit. */
export type Noticing =
  | {
      readonly sense: "light";
      readonly element?: string;
      /** Below `dimAmps` dark, then dim, from `litAmps` lit, from `tooBrightAmps` too bright. */
      readonly dimAmps: number;
      readonly litAmps: number;
      readonly tooBrightAmps: number;
      readonly source: string;
    }
  /** `own`: sounds by itself when it has `leastVolts`; otherwise it needs a changing voltage of that size. */
  | {
      readonly sense: "sound";
      readonly own: boolean;
      readonly element?: string;
      readonly leastVolts: number;
      /** Hz between which it resonates and is about ten times as strong; a part that sounds by itself always does. */
      readonly resonance?: readonly [from: number, to: number];
      readonly source: string;
    }
  | { readonly sense: "angle"; readonly source: string }
  /** Turns from `startAmps` on, backwards if the current is negative; stalled where its state `held` is true. */
  | { readonly sense: "turning"; readonly element?: string; readonly startAmps: number; readonly source: string }
  /** A rotor that goes step by step, as its `logic` tells. */
  | { readonly sense: "steps"; readonly source: string }
  /** On when the element has `pullInVolts`, off again below `dropOutVolts`; in between it stays. Drives the state `pulled`. */
  | {
      readonly sense: "contact";
      readonly element?: string;
      readonly pullInVolts: number;
      readonly dropOutVolts: number;
      readonly source: string;
    };

/** What a part with a memory sees of the circuit when something has changed. */
export interface LogicView {
  /** V of a leg against the part's own GND or minus; against the circuit's where it has none. */
  volts(leg: LegName): number;
  /** s since the run began. */
  readonly now: number;
  readonly state: PartState;
}

/** A step that a rotor was told: where it then stands, in half steps, and how many it has lost so far. */
export interface RotorStep {
  readonly at: number;
  readonly halfSteps: number;
  readonly lost: number;
}

/**
 * The memory of one part in one run: a chip's bits, a rotor. It is asked after each change of the circuit and answers with the
 * states that are new, and when something will change by itself.
 */
export interface PartLogic {
  look(view: LogicView): { readonly state?: PartState; readonly wakeAt?: number };
  /** Of a rotor only. */
  steps?(): readonly RotorStep[];
}

/** How hot a part gets to the touch: K that its surface rises for each W that it turns into heat, and what it is made of. */
export interface Warming {
  readonly kelvinPerWatt: Sourced<number>;
  /** Bare metal burns a finger sooner than lacquer or plastic of the same temperature. */
  readonly surface: "plastic" | "metal";
}

/** Values of one part in one circuit: numbers in SI, words as text. */
export type PartValues = Readonly<Record<string, number | string>>;
/** State that stimuli set, such as pressed or lux. */
export type PartState = Readonly<Record<string, number | boolean>>;

/**
 * How the part looks to the circuit now. Element ids are `elementId(name, …)`: the part's name, or `name.something`. Inner
 * nodes are named the same way. `node` gives every leg a node, joined legs the same one, and a leg that nothing is joined to
 * one of its own.
 */
export type ElectricalModel = (
  name: string,
  node: (leg: LegName) => NodeName,
  values: PartValues,
  state: PartState,
) => readonly Element[];

/** @returns the id of a part's element: "LED1", or "SEG1.a". */
export function elementId(name: string, element?: string): string {
  return element === undefined ? name : `${name}.${element}`;
}

/** @returns the holes that a part with these values needs. */
export function footprintOf(kind: PartKind, values: PartValues): Footprint {
  return kind.footprintsByType?.[String(values.type)] ?? kind.footprint;
}

/** What a supply gives, and for how long. */
export interface SupplyFacts {
  /** Where it is joined to the board. */
  readonly into: "USB" | "VIN" | "5V";
  /** V without load: the least, the usual, the most that one meets. */
  readonly volts: Sourced<readonly [least: number, usual: number, most: number]>;
  readonly ohms: Sourced<number>;
  /** A that it gives at most before it folds back or switches off; null where only its resistance limits it. */
  readonly limitAmps: Sourced<number> | null;
  /** Ah until it is empty, at the board's side; null for what does not empty. */
  readonly ampHours: Sourced<number> | null;
  /** Switches itself off when less than this is drawn for `offAfterSeconds`; null for what does not. */
  readonly offBelowAmps: Sourced<number> | null;
  readonly offAfterSeconds: Sourced<number> | null;
}

export type PriceClass = "a" | "b" | "c" | "d" | "e" | "f";
/** Loss a school year: L0 < 1 %, L1 1–3 %, L2 3–10 %, L3 10–25 %, L4 > 25 %. */
export type LossClass = "L0" | "L1" | "L2" | "L3" | "L4";

/** What a thing is for: in the circuit, feeding it, the board, what circuits are built with, or a help for people. */
export type PartRole = "circuit" | "supply" | "board" | "building" | "tool";

/** Hazards that belong to handling a part. `language` has a sentence for each. */
export type PartCaution =
  | "small-parts"
  | "eyes-bright"
  | "eyes-invisible"
  | "eyes-splinters"
  | "bursts-when-reversed"
  | "hot-when-reversed"
  | "hot-case"
  | "hot-when-stalled"
  | "moving-parts"
  | "loud"
  | "glass"
  | "mercury"
  | "magnets"
  | "cadmium"
  | "button-cell"
  | "shorted-battery"
  | "power-bank-care"
  | "mains-adapter"
  | "no-mains"
  | "meter-fuse"
  | "no-flames"
  | "water";

/** How a part is tested with a meter, out of the circuit and without power unless the sentence says otherwise. */
export type MeterTest =
  | "resistance"
  | "wiper-moves"
  | "falls-when-lit"
  | "falls-when-warm"
  | "capacitor-charges"
  | "contact-when-pressed"
  | "contact-by-position"
  | "contact-when-tilted"
  | "contact-with-magnet"
  | "key-resistance"
  | "diode-lights"
  | "diode-lights-strong-meter"
  | "diode-infrared"
  | "diode-segments"
  | "diode-drop"
  | "junctions"
  | "body-diode"
  | "coil-resistance"
  | "buzzes-on-5-volts"
  | "crackles"
  | "idle-current"
  | "motor-resistance"
  | "supply-voltage"
  | "output-voltage"
  | "rails-and-rows"
  | "bends-and-holds"
  | "loaded-voltage"
  | "known-pin";

export interface PartKind {
  /** As lessons write it: "resistor", "led". */
  readonly id: string;
  readonly role: PartRole;
  /** Types that are this kind with certain values: "BC547" is an npn. The parameter `type` then has their names as words. */
  readonly types?: Readonly<Record<string, PartValues>>;
  /** Lessons may also write it as another kind with this `type`: an electrolytic as a capacitor. */
  readonly typeOf?: { readonly kind: string; readonly type: string };
  readonly legs: readonly LegName[];
  /** Other names that lessons may use for a leg: "+" for plus. */
  readonly alsoCalled?: Readonly<Record<string, LegName>>;
  /** Legs that are joined inside: a button's "1" and "1b". */
  readonly joined?: readonly (readonly LegName[])[];
  /** The leg that matters when it is put in, or null if it may be turned round. */
  readonly markedLeg: LegName | null;
  readonly parameters: Readonly<Record<string, ParameterSpec>>;
  /**
   * Figures that differ from one part to the next and that no lesson writes, as [least, usual, most]: the forward voltage of an
   * LED. The model takes them from its values where they are there.
   */
  readonly spreads?: (values: PartValues) => Readonly<Record<string, Sourced<readonly [number, number, number]>>>;
  readonly states: Readonly<Record<string, StateSpec>>;
  readonly footprint: Footprint;
  /** Where types have their legs in another order: the footprint by `type`. See `footprintOf`. */
  readonly footprintsByType?: Readonly<Record<string, Footprint>>;
  /** Figures of the model and of the part's behaviour that no parameter holds, in SI. */
  readonly figures: Readonly<Record<string, Sourced<number>>>;
  readonly model: ElectricalModel;
  /**
   * The same where the circuit is followed in time, with what the part keeps (a coil's current, a motor's speed). Left out where
   * `model` already says it. Ids stay the same, so that currents are told alike.
   */
  readonly inTime?: ElectricalModel;
  /** What it does by logic; each call begins a run. Its model follows from the inner states that this sets. */
  readonly logic?: (values: PartValues) => PartLogic;
  /** What it does in time or by logic is not modelled: a rehearsal that needs it answers "not rehearsed yet". */
  readonly notModelled?: true;
  readonly limits: (values: PartValues) => readonly Limit[];
  readonly noticed: (values: PartValues) => readonly Noticing[];
  /** Other items that may be tried in its place; a rehearsal has to prove each. Text is read by people who add parts. */
  readonly standIns: readonly { readonly part: string; readonly when: string; readonly source: string }[];
  /** A drawn from plus to minus beside the model, by what it is doing: a servo's idle, moving, start and stalled current. */
  readonly draws?: (values: PartValues) => Readonly<Record<string, Sourced<number>>>;
  /** H of a coil that kicks back when its current is cut: it needs a diode. */
  readonly coilHenries?: (values: PartValues) => Sourced<number>;
  /** Left out for what never gets warm in class. */
  readonly warming?: (values: PartValues) => Warming;
  readonly supply?: (values: PartValues) => SupplyFacts;
  readonly price: PriceClass;
  readonly loss: LossClass;
  readonly cautions: readonly PartCaution[];
  readonly meterTest: MeterTest | null;
  readonly source: string;
}
