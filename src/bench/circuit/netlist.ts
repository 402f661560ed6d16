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
 * Ebers–Moll, the SPICE level-1 model without Early effect. As in ngspice a leak of gmin stands across both junctions and
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
  | Inductor;

export interface Netlist {
  readonly elements: readonly Element[];
}
