// The operating point of a circuit: every voltage and current once everything has settled.
//
// One solve of a prepared circuit; whoever solves variations of one circuit keeps the prepared one (prepareCircuit.ts).
// Does not know: parts, time.
import type { Netlist } from "./netlist.ts";
import type { DcOptions, DcOutcome } from "./outcome.ts";
import { prepareCircuit } from "./prepareCircuit.ts";

/**
 * Solves a circuit at DC: capacitors are open, inductors are wires. Never throws; what is wrong is the outcome.
 *
 * @param netlist elements between named nodes, SI; "0" is ground.
 * @returns V and A within about 1e-10 V of the equations' solution; agrees with ngspice (reference/circuits).
 */
export function solveDc(netlist: Netlist, options: DcOptions = {}): DcOutcome {
  return prepareCircuit(netlist, options).solve();
}
