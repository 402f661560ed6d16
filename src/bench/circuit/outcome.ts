// What solving a circuit gives: an answer with its evidence, or a named reason why there is none.
//
// Never NaN, never a thrown error, never a convenient zero (a floating node has no voltage that a person could rely on).
// Does not know: how it was solved.
import type { NodeName } from "./netlist.ts";

/**
 * The voltages and currents of one operating point. A node, element or terminal that the netlist does not have is a bug of the
 * caller and throws a RangeError.
 */
export interface OperatingPoint {
  /** V against ground, for every node of the netlist and for "0". */
  volts(node: NodeName): number;
  /**
   * A through an element by id, positive when it flows from `a` to `b`, from anode to cathode, into plus (sources; negative
   * while delivering, as in SPICE), from → to (current source), into the collector, the drain or a regulator's output
   * (negative while delivering).
   */
  amps(id: string): number;
  /**
   * A into one terminal of an element ("Q1", "base"). Terminals are the node fields of the netlist types. Over all elements
   * the currents into a node's terminals add up to zero.
   */
  terminalAmps(id: string, terminal: string): number;
  /** W taken up by an element (negative: delivered): the sum over its terminals of voltage times current. */
  watts(id: string): number;
  /** How an element stands that can stand in several ways: 1 for a closed switch or a tripped fuse, a battery's charge, rad/s. */
  state(id: string): number;
}

export type DcOutcome =
  | {
      readonly status: "solved";
      readonly point: OperatingPoint;
      /** Newton passes. */
      readonly passes: number;
      /** The largest current that does not add up at a node, A. */
      readonly residualAmps: number;
      /** Nodes that nothing fixes: no path for current to ground. Their voltages in `point` mean nothing. */
      readonly floating: readonly NodeName[];
    }
  | { readonly status: "notConverged"; readonly worstNode: NodeName; readonly passes: number; readonly residualAmps: number }
  /** Ideal voltage sources or inductors form a loop: they disagree about it, or they leave its current open. */
  | { readonly status: "sourceLoop"; readonly elements: readonly string[] }
  /** Current sources alone (or supplies at their limit) feed a node and whatever hangs on it. */
  | { readonly status: "currentWithoutPath"; readonly node: NodeName }
  /** An element with a value that no part has: 0 Ω, a negative capacitor, NaN; field "id" when an earlier element has the same. */
  | { readonly status: "badElement"; readonly id: string; readonly field: string; readonly value: number };

export interface DcOptions {
  /** °C of all junctions, for kT/q only: saturation currents are taken as given for this temperature. SPICE's 27 unless told otherwise. */
  readonly celsius?: number;
  /** S across every junction, SPICE's 1e-12. */
  readonly gmin?: number;
  /**
   * Start from this answer of solveDc or a prepared circuit instead of from nothing: a circuit changed by one part needs two
   * or three passes. Nodes are matched by name; those that the answer does not have start at 0 V.
   */
  readonly from?: OperatingPoint;
}

/** Why a circuit did not get further in time than `seconds`. */
export type TransientFailure = (
  | Exclude<DcOutcome, { status: "solved" }>
  /** The steps that may be spent are spent. */
  | { readonly status: "tooManySteps"; readonly steps: number }
) & { readonly seconds: number };

export interface TransientSample {
  readonly seconds: number;
  readonly point: OperatingPoint;
}

/** Samples are at exactly the instants that were asked for; where it failed, those before `seconds`. */
export type TransientOutcome = (
  | {
      readonly status: "solved";
      /** Steps accepted and rejected, and Newton passes. */
      readonly steps: number;
      readonly rejected: number;
      readonly passes: number;
      /** The largest current that did not add up at a node in any step, A. */
      readonly residualAmps: number;
      /** Nodes that nothing fixes, not even through a capacitor. Their voltages mean nothing. */
      readonly floating: readonly NodeName[];
    }
  | TransientFailure
) & { readonly samples: readonly TransientSample[] };

export interface TransientOptions extends Omit<DcOptions, "from"> {
  /**
   * Begin with what capacitors and inductors are said to keep (`initialVolts`, `initialAmps`, else nothing) instead of at the
   * operating point: SPICE's "uic".
   */
  readonly fromInitial?: boolean;
  /**
   * Begin with what capacitors, inductors and motors keep at this point of this or another circuit: nodes and elements are matched
   * by name; what it does not have begins at rest. Goes before `fromInitial`.
   */
  readonly from?: OperatingPoint;
  /** Share of the largest value so far that one step may be wrong by; 1e-5 unless told otherwise. */
  readonly accuracy?: number;
  /** Steps after which a circuit is given up; 2,000,000 unless told otherwise. */
  readonly mostSteps?: number;
}
