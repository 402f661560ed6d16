// A class file as it is after reading: one school's classes, dates, cupboard and money.
//
// It is one JSON document that a person can read; times and sums are text there and plain numbers here. Every list keeps
// its order and every entry its id, because commands and papers speak of entries by id.
// Does not know: JSON, how anything is computed from it.
import type { Day, Money } from "../../base/index.ts";

/** An item of stock as text: kind and what tells it apart, "resistor 220", "led red", "servo". Made by `itemKey` of bench/parts. */
export type ItemKey = string;

export interface Pupil {
  readonly id: string;
  readonly name: string;
  /** Any column that teams should be balanced on: "reads": 2. */
  readonly marks: Readonly<Record<string, number>>;
}

export interface LessonDate {
  readonly lesson: string;
  readonly date: Day;
  /** Minutes after midnight. */
  readonly start: number;
  /** Ids of pupils known to be away. */
  readonly absent: readonly string[];
}

export interface ClassGroup {
  readonly id: string;
  readonly name: string;
  readonly teamSize: number;
  readonly pupils: readonly Pupil[];
  /** Pairs of pupil ids that must not be in one team. */
  readonly apart: readonly (readonly [string, string])[];
  /** Groups that stay in one team. */
  readonly together: readonly (readonly string[])[];
  /** Column of `marks` that teams are balanced on, or null. */
  readonly balance: string | null;
  readonly lessons: readonly LessonDate[];
}

export interface KitCount {
  readonly kit: string;
  readonly count: number;
}

export interface StockLine {
  readonly item: ItemKey;
  readonly count: number;
  /** Where it lies, such as "box 3, a7"; empty if nobody said. */
  readonly box: string;
}

/** What came, went, broke or was found, after the stock lines were counted. */
export interface Movement {
  readonly date: Day;
  readonly item: ItemKey;
  /** Positive for what came. */
  readonly change: number;
  readonly why: "bought" | "lost" | "broken" | "found" | "lent" | "returned" | "corrected";
  readonly note: string;
}

export interface Offer {
  readonly id: string;
  /** What one packet holds: either so many of an item, or one kit. */
  readonly contains:
    | { readonly kind: "item"; readonly item: ItemKey; readonly count: number }
    | { readonly kind: "kit"; readonly kit: string };
  readonly price: Money;
  /** Most packets to be had, or null. */
  readonly available: number | null;
}

export interface Supplier {
  readonly id: string;
  readonly name: string;
  readonly shipping: Money;
  /** Orders from this sum on are sent free, or null. */
  readonly freeFrom: Money | null;
  /** Days from order to delivery. */
  readonly days: number;
  readonly offers: readonly Offer[];
}

export interface Computer {
  readonly id: string;
  readonly works: boolean;
  /** Minutes that it was seen to run on its battery; 0 if it only runs on mains; null if nobody tried. */
  readonly batteryMinutes: number | null;
  /** mA that each USB port gives (500 for USB 2.0, 900 for USB 3). */
  readonly usbMilliamps: number;
  readonly usbPorts: number;
  readonly note: string;
}

/** A board or a cable, counted one by one because single ones go bad. */
export interface Device {
  readonly id: string;
  readonly works: boolean;
  /** Pins of a board that are dead: "D5". */
  readonly deadPins: readonly string[];
  readonly note: string;
}

/** A supply that the school owns: "power-bank", "adapter 1000mA", "battery-9v". */
export interface SupplyLine {
  readonly item: ItemKey;
  readonly count: number;
  readonly box: string;
}

/** A stretch without mains that is known beforehand. Minutes after midnight. */
export interface PowerCut {
  readonly date: Day;
  readonly from: number;
  readonly to: number;
}

/** A count after a lesson: how many of an item were handed out, came back whole, came back broken. */
export interface CountIn {
  readonly date: Day;
  readonly class: string;
  readonly lesson: string;
  readonly item: ItemKey;
  readonly out: number;
  readonly back: number;
  readonly broken: number;
}

/** Something the teacher settled. */
export type Decision =
  | { readonly kind: "substitute"; readonly lesson: string; readonly part: string; readonly item: ItemKey; readonly date: Day }
  | { readonly kind: "supply"; readonly lesson: string; readonly item: ItemKey; readonly date: Day }
  | { readonly kind: "skip"; readonly lesson: string; readonly class: string; readonly date: Day };

export interface LogEntry {
  readonly date: Day;
  readonly class: string;
  readonly lesson: string;
  readonly team: number | null;
  /** Code of what happened, such as wire-wrong-row, led-turned, charge-only-cable; free text in `note`. */
  readonly what: string;
  readonly note: string;
}

/** A thing that the teacher has prepared for a meeting. */
export interface Prepared {
  /** "<class>/<lesson>/<date>". */
  readonly sitting: string;
  /** Code of the preparation and, where there are several, its place in the list: "set-out-trays", "charge 2". */
  readonly what: string;
}

export interface ClassFile {
  readonly format: "benchday-class/1";
  readonly about: string;
  /** Where lessons and kits lie, relative to this file; null for those that come with Benchday. */
  readonly lessonFolder: string | null;
  readonly kitFolder: string | null;
  readonly language: string;
  /** ISO 4217. */
  readonly currency: string;
  readonly decimals: number;
  /** Chance wanted that every team works in a lesson, 0 to 1. */
  readonly chance: number;
  readonly budget: Money | null;
  readonly room: { readonly name: string; readonly sockets: number; readonly lux: number | null };
  readonly classes: readonly ClassGroup[];
  readonly kits: readonly KitCount[];
  readonly stock: readonly StockLine[];
  readonly movements: readonly Movement[];
  readonly suppliers: readonly Supplier[];
  readonly computers: readonly Computer[];
  readonly boards: readonly Device[];
  readonly cables: readonly Device[];
  readonly supplies: readonly SupplyLine[];
  readonly powerCuts: readonly PowerCut[];
  readonly decisions: readonly Decision[];
  /** What was ticked off before a meeting; not there where nothing was. */
  readonly prepared?: readonly Prepared[];
  readonly counts: readonly CountIn[];
  readonly log: readonly LogEntry[];
}

/** What a shop sells as a box. */
export interface Kit {
  readonly format: "benchday-kit/1";
  readonly id: string;
  readonly name: string;
  /** Item to count. A board and a cable in the box stand here too: "board", "usb-cable", "breadboard", "wire". */
  readonly contents: ReadonlyMap<ItemKey, number>;
  readonly note: string;
  /** Who sells it, and for how much, where its author knew; what a class pays stands in the offers of its class file. */
  readonly supplier?: string;
  readonly price?: { readonly sum: Money; readonly currency: string };
}
