// What solving a circuit gives: an answer with its evidence, or a named reason why there is none.
//
// Never NaN, never a thrown error, never a convenient zero (a floating node has no voltage that a person could rely on).
// Does not know: how it was solved.
import type { NodeName } from "./netlist.ts";

/** The voltages and currents of one operating point. */
export interface OperatingPoint {
  /** V against ground, for every node of the netlist. */
  volts(node: NodeName): number;
  /**
   * A through an element by id: from `a` to `b`, anode to cathode, into plus (sources; negative while delivering, as in
   * SPICE), into the collector or drain.
   */
  amps(id: string): number;
  /** A into one terminal of an element ("Q1", "base"). Terminals are the node fields of the netlist types. */
  terminalAmps(id: string, terminal: string): number;
  /** W taken up by an element (negative: delivered). */
  watts(id: string): number;
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
  /** Voltage sources (or inductors) form a loop that they disagree about, or that leaves its current open. */
  | { readonly status: "sourceLoop"; readonly elements: readonly string[] }
  /** Current sources alone feed a node. */
  | { readonly status: "currentWithoutPath"; readonly node: NodeName }
  /** An element with a value that no part has: 0 Ω, a negative capacitor, NaN. */
  | { readonly status: "badElement"; readonly id: string; readonly field: string; readonly value: number };

export interface DcOptions {
  /** °C of all junctions. SPICE's 27 unless told otherwise. */
  readonly celsius?: number;
  /** S across every junction, SPICE's 1e-12. */
  readonly gmin?: number;
  /** Start from this answer instead of from nothing: a circuit changed by one part needs two or three passes. */
  readonly from?: OperatingPoint;
}
