// A circuit as the solver sees it: elements between named nodes.
//
// Node "0" is ground, as in SPICE. Everything is plain SI. A part of the catalogue (bench/parts) becomes one or several of
// these; ids of elements are then "R1", "LED1", "Q1" or "SERVO1.motor", so that a current can be told by part.
// Does not know: parts, pins, lessons.
import type { Waveform } from "./waveform.ts";

/** Name of a node; "0" is ground. */
export type NodeName = string;

export interface Resistor {
  readonly kind: "resistor";
  readonly id: string;
  readonly a: NodeName;
  readonly b: NodeName;
  readonly ohms: number;
}

/** Keeps V(plus) − V(minus) = volts at any current. Its current counts positive when it flows into plus, as in SPICE. */
export interface VoltageSource {
  readonly kind: "voltageSource";
  readonly id: string;
  readonly plus: NodeName;
  readonly minus: NodeName;
  readonly volts: number;
  /** Over time; `volts` is then only its value at an operating point. */
  readonly wave?: Waveform;
}

/** Drives `amps` from `from` through itself to `to`. */
export interface CurrentSource {
  readonly kind: "currentSource";
  readonly id: string;
  readonly from: NodeName;
  readonly to: NodeName;
  readonly amps: number;
  /** Over time; `amps` is then only its value at an operating point. */
  readonly wave?: Waveform;
}

/** I = IS·(exp((V − I·RS)/(N·VT)) − 1); with `breakdownVolts`, conducts backwards beyond it (Zener). `seriesOhms` may be 0. */
export interface Diode {
  readonly kind: "diode";
  readonly id: string;
  readonly anode: NodeName;
  readonly cathode: NodeName;
  readonly saturationAmps: number;
  readonly emission: number;
  readonly seriesOhms: number;
  readonly breakdownVolts?: number;
  /** Current at the breakdown voltage, A (SPICE's IBV). */
  readonly breakdownAmps?: number;
  /** Capacitance of the junction at 0 V, F (SPICE's CJO with VJ = 1 V, M = 0.5). It plays no part at an operating point. */
  readonly junctionFarads?: number;
  /** How long the carriers of the forward current stay, s (SPICE's TT). */
  readonly transitSeconds?: number;
}

/**
 * Ebers–Moll, the SPICE level-1 model without roll-off. As in ngspice a leak of gmin stands across both junctions and
 * from the collector (npn) or base (pnp) to ground, where SPICE keeps the chip's substrate.
 */
export interface BipolarTransistor {
  readonly kind: "npn" | "pnp";
  readonly id: string;
  readonly collector: NodeName;
  readonly base: NodeName;
  readonly emitter: NodeName;
  readonly saturationAmps: number;
  readonly forwardGain: number;
  readonly reverseGain: number;
  readonly baseOhms?: number;
  readonly collectorOhms?: number;
  readonly emitterOhms?: number;
  /** Early voltages forward and in reverse (SPICE's VAF and VAR); none or 0 for no such effect. */
  readonly earlyVolts?: number;
  readonly reverseEarlyVolts?: number;
}

/**
 * Shichman–Hodges level 1 without channel-length modulation unless given; bulk joined to source, so that the body diode
 * (1e-14 A, SPICE's default) conducts when the drain goes below the source.
 */
export interface Mosfet {
  readonly kind: "nmos" | "pmos";
  readonly id: string;
  readonly drain: NodeName;
  readonly gate: NodeName;
  readonly source: NodeName;
  /** SPICE's VTO: positive for an enhancement nmos, negative for an enhancement pmos. */
  readonly thresholdVolts: number;
  /** KP·W/L, A/V². */
  readonly transconductance: number;
  readonly lambda?: number;
}

/**
 * A source of `volts` that gives at most `limitAmps`: above that it becomes a current source of `limitAmps` (a USB port's
 * over-current limit, a bench supply, a regulator's limit). Takes no current back (a diode would be drawn if it did).
 */
export interface LimitedSource {
  readonly kind: "limitedSource";
  readonly id: string;
  readonly plus: NodeName;
  readonly minus: NodeName;
  readonly volts: number;
  readonly ohms: number;
  readonly limitAmps: number;
}

/**
 * Linear regulator: holds its output at min(volts, V(input) − dropoutVolts) against ground, behind outputOhms. What it gives
 * is taken from the input; it takes no current back. Its own quiescent current flows from input to ground and shrinks in
 * proportion when the input is below volts + dropoutVolts, so that a regulator without supply draws nothing.
 */
export interface Regulator {
  readonly kind: "regulator";
  readonly id: string;
  readonly input: NodeName;
  readonly output: NodeName;
  readonly ground: NodeName;
  readonly volts: number;
  /** V lost at least between input and output. */
  readonly dropoutVolts: number;
  readonly outputOhms: number;
  readonly quiescentAmps: number;
  /** Above this it becomes a current source; without it there is no limit. */
  readonly limitAmps?: number;
}

/** An element that keeps energy. At an operating point a capacitor is open and an inductor is a wire. */
export interface Capacitor {
  readonly kind: "capacitor";
  readonly id: string;
  readonly a: NodeName;
  readonly b: NodeName;
  readonly farads: number;
  readonly initialVolts?: number;
}
export interface Inductor {
  readonly kind: "inductor";
  readonly id: string;
  readonly a: NodeName;
  readonly b: NodeName;
  readonly henries: number;
  readonly initialAmps?: number;
}

/**
 * A contact: `closed` 1 or 0, with `onOhms` and `offOhms` (1 GΩ). It turns over when `closed` is set, at the instants in
 * `turns` (bounce), and, as the contact of a relay, with the current through its coil. At an operating point it stands as
 * `closed` says.
 */
export interface Switch {
  readonly kind: "switch";
  readonly id: string;
  readonly a: NodeName;
  readonly b: NodeName;
  readonly closed: number;
  readonly onOhms: number;
  readonly offOhms?: number;
  /** s, in order; over time only. */
  readonly turns?: readonly number[];
  /** Id of the element whose current, in either direction, pulls it in above `pullInAmps` and lets it go below `dropOutAmps`. */
  readonly coil?: string;
  readonly pullInAmps?: number;
  readonly dropOutAmps?: number;
  /** 1 for a contact that is closed while the relay is let go. */
  readonly opensWhenPulled?: number;
}

/**
 * A resettable fuse. It warms by its own power and cools with `coolSeconds`; at warmth 1, which `holdAmps` just reach after
 * ever so long, it trips to `trippedOhms`, and below `resetWarmth` it is back at `ohms`. At an operating point it stands as
 * `tripped` says.
 */
export interface Fuse {
  readonly kind: "fuse";
  readonly id: string;
  readonly a: NodeName;
  readonly b: NodeName;
  readonly ohms: number;
  readonly trippedOhms: number;
  readonly holdAmps: number;
  readonly coolSeconds: number;
  /** Share of the tripping warmth at which it resets; 0.5 unless given. */
  readonly resetWarmth?: number;
  /** 1 or 0, and the warmth that it begins with. */
  readonly tripped?: number;
  readonly warmth?: number;
}

/** Voltage falls and resistance rises in a straight line from full (`charge` 1) to empty (0). Its current counts as a source's. */
export interface Battery {
  readonly kind: "battery";
  readonly id: string;
  readonly plus: NodeName;
  readonly minus: NodeName;
  readonly volts: number;
  readonly emptyVolts: number;
  readonly ohms: number;
  readonly emptyOhms: number;
  readonly ampHours: number;
  readonly charge: number;
}

/**
 * A small DC motor with a permanent magnet: V = ohms·I + henries·dI/dt + k·ω, and inertia·dω/dt = k·I − drag·ω − friction
 * against the motion. `stalled` 1 holds its shaft.
 */
export interface Motor {
  readonly kind: "motor";
  readonly id: string;
  readonly a: NodeName;
  readonly b: NodeName;
  readonly ohms: number;
  readonly henries: number;
  /** V·s/rad, which is N·m/A. */
  readonly k: number;
  /** kg·m². */
  readonly inertia: number;
  /** N·m·s/rad. */
  readonly drag: number;
  /** N·m, of the bearings and of what it drives. */
  readonly friction: number;
  readonly stalled?: number;
}

export type Element =
  | Resistor
  | VoltageSource
  | CurrentSource
  | Diode
  | BipolarTransistor
  | Mosfet
  | LimitedSource
  | Regulator
  | Capacitor
  | Inductor
  | Switch
  | Fuse
  | Battery
  | Motor;

export interface Netlist {
  readonly elements: readonly Element[];
}
