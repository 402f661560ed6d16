// A circuit over time, looked at where the caller wants to see it.
//
// Does not know: how a step is made (prepareTransient.ts).
import type { Netlist } from "./netlist.ts";
import type { TransientOptions, TransientOutcome, TransientSample } from "./outcome.ts";
import { prepareTransient } from "./prepareTransient.ts";

export interface TransientRequest extends TransientOptions {
  /** s. Everything after it is not computed. */
  readonly untilSeconds: number;
  /** Instants to look at, s, in order, between 0 and untilSeconds; only the end without them. */
  readonly sampleSeconds?: readonly number[];
}

/**
 * Solves a circuit from 0 to `untilSeconds`. Never throws; what is wrong is the outcome.
 *
 * @param netlist elements between named nodes, SI; "0" is ground. Sources with a `wave` follow it.
 * @returns at each sampled instant all voltages and currents, those of a jump as they were before it; agrees with ngspice
 * (reference/circuits).
 */
export function solveTransient(netlist: Netlist, request: TransientRequest): TransientOutcome {
  const circuit = prepareTransient(netlist, request);
  const samples: TransientSample[] = [];
  const instants = request.sampleSeconds ?? [request.untilSeconds];
  for (const seconds of [...instants, request.untilSeconds]) {
    const failure = circuit.advanceTo(seconds);
    if (failure) return { ...failure, samples };
    if (samples.length < instants.length) samples.push({ seconds, point: circuit.point() });
  }
  const { steps, rejected, passes, residualAmps, floating } = circuit;
  return { status: "solved", samples, steps, rejected, passes, residualAmps, floating };
}
